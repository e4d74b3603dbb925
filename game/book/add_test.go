package book

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"partialcredit/game/link"
	"partialcredit/game/slip"
)

func TestWhatBecomesOfSlips(t *testing.T) {
	sh := testSheet(t, false)
	other := testSheet(t, true)
	first := testSlip(sh, "Kite", 1000, 0.3, 8)
	later := testSlip(sh, " kite", 1010, 0.28, 10) // the same learner: see sheet.Learner
	unfit := testSlip(sh, "Owl", 1000, 0.3, 8)
	unfit.Work[0].ID = "nothing"
	foreign := testSlip(other, "Fox", 1000, 0.3, 8)
	fragment := first.Fragment()

	for _, c := range []struct{ name, text, want string }{
		{"one", fragment, "taken"},
		{"a link", "https://example.org/app/#" + fragment, "taken"},
		{"from a code", "https://example.org/app/#" + link.ForCode(fragment), "taken"},
		{"from a code and a link", link.ForCode(fragment) + "\n" + fragment, "taken double"},
		{"at the end of a sentence", "Mine is " + fragment + ". Or: " + link.ForCode(fragment) + ": thanks", "taken double"},
		{"the sheet's code", link.ForCode(sh.Fragment()), "sheet"},
		{"the same twice", fragment + "\n\n" + "#" + fragment, "taken double"},
		{"many", strings.Join([]string{fragment, testSlip(sh, "Owl", 1, 0.2, 3).Fragment(), "words between", later.Fragment()}, "\r\n"), "taken taken newer"},
		{"the later one first", later.Fragment() + " " + fragment, "taken older"},
		{"damaged between good ones", fragment[:60] + "\n" + fragment[:50] + "A" + fragment[51:] + "\n" + fragment, "damaged damaged taken"},
		{"of another sheet", foreign.Fragment(), "waiting"},
		{"of no exercise of the sheet", unfit.Fragment(), "damaged"},
		{"from a newer version", strings.Replace(fragment, "slip=1.", "slip=2.", 1), "damaged"},
		{"a sheet", "#" + sh.Fragment(), "sheet"},
		{"nothing", "Dear class, slip=nothing, slips=1.abc, and no more.", ""},
	} {
		b := &Book{}
		b.Open(sh)
		if got := fates(b, c.text); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestMailsBreakLinks(t *testing.T) {
	sh := testSheet(t, false)
	fragment := testSlip(sh, "Kite", 1000, 0.3, 8).Fragment()
	broken := func(width int, start, end string) string {
		var text strings.Builder
		for rest := "https://example.org/#" + fragment; rest != ""; {
			n := min(width, len(rest))
			text.WriteString(start + rest[:n])
			if rest = rest[n:]; rest != "" {
				text.WriteString(end)
			}
		}
		return text.String() + "\nGreetings, Kite\n"
	}
	for _, c := range []struct{ name, text string }{
		{"plain lines", broken(76, "", "\n")},
		{"lines of Windows", broken(60, "", "\r\n")},
		{"quoted", broken(70, "> ", "\n")},
		{"quoted twice, indented", broken(70, " >> ", "\r\n")},
		{"quoted-printable (RFC 2045)", strings.Replace(broken(72, "", "=\r\n"), "slip=", "slip=3D", 1)},
		{"in brackets", "(<https://example.org/#" + fragment + ">)."},
	} {
		b := &Book{}
		b.Open(sh)
		if got := fates(b, "Hello,\n\n"+c.text+"\n"+c.text); got != "taken double" {
			t.Errorf("%s: %q", c.name, got)
		}
		if line := b.Entries()[0].Line; line != 3 {
			t.Errorf("%s: found in line %d", c.name, line)
		}
	}
}

func TestNothingIsLost(t *testing.T) {
	sh := testSheet(t, true)
	slips := []*slip.Slip{testSlip(sh, "Kite", 5, 0.3, 8), testSlip(sh, "Kite", 6, 0.3, 9), testSlip(sh, "Owl", 5, 0.2, 8)}
	unfit := testSlip(sh, "Fox", 5, 0.2, 8)
	unfit.Work[0].First.Settings = []float64{7}
	var text string
	for _, s := range append(slips, unfit) {
		text += s.Fragment() + "\n"
	}
	b := &Book{}
	if got := fates(b, text+text+"slip=1.broken"); got != "waiting waiting waiting waiting double double double double damaged" {
		t.Fatalf("before the sheet is opened: %q", got)
	}
	if len(b.Entries()) != 4 || len(b.Asides()) != 1 || b.Table(sh.Fingerprint()) != nil {
		t.Fatalf("%d slips, %d aside", len(b.Entries()), len(b.Asides()))
	}
	var after []Fate
	for _, r := range b.Open(sh) {
		after = append(after, r.Fate)
	}
	if fmt.Sprint(after) != fmt.Sprint([]Fate{Taken, Newer, Taken, Damaged}) {
		t.Errorf("after the sheet was opened: %v", after)
	}
	a := b.Asides()
	if len(a) != 2 || a[1].Name != "Fox" || a[1].Text != unfit.Fragment() || !errors.Is(a[1].Why, slip.ErrDamaged) || a[0].Text != "slip=1.broken" {
		t.Errorf("aside: %+v", a)
	}
	if got := fates(b, text); got != "double double double damaged" || len(b.Asides()) != 2 {
		t.Errorf("once more: %q, %d aside", got, len(b.Asides()))
	}

	data, err := json.Marshal(b)
	var again Book
	if err == nil {
		err = json.Unmarshal(data, &again)
	}
	if err != nil || len(again.Entries()) != 3 || len(again.Asides()) != 2 || again.Left() != b.Left() || len(again.Sheets()) != 1 {
		t.Fatalf("kept and read again: %v, %d slips, %d aside", err, len(again.Entries()), len(again.Asides()))
	}
	if d, _ := json.Marshal(&again); string(d) != string(data) {
		t.Error("kept twice it is not the same")
	}

	rows := again.Table(sh.Fingerprint()).Rows
	if len(rows) != 2 || rows[0].Entry.Slip.Minute != 6 || rows[0].Kept != 1 || !rows[0].Shared {
		t.Errorf("the rows: %+v", rows)
	}
	again.Discard(rows[0].Entry)
	if rows = again.Table(sh.Fingerprint()).Rows; len(rows) != 2 || rows[0].Entry.Slip.Minute != 5 || rows[0].Kept != 0 {
		t.Errorf("the earlier slip does not count again: %+v", rows)
	}
	again.Close(sh.Fingerprint())
	if len(again.Entries()) != 0 || len(again.Sheets()) != 0 {
		t.Error("a closed sheet leaves something behind")
	}
}

// The order in which slips come makes no difference to which one counts.
func TestTheLatestCountsInAnyOrder(t *testing.T) {
	sh := testSheet(t, false)
	a, b, c := testSlip(sh, "Kite", 5, 0.3, 8), testSlip(sh, "Kite", 5, 0.31, 8), testSlip(sh, "Kite", 5, 0.32, 8)
	c.Work[0].Tries = 2
	for _, order := range [][]*slip.Slip{{a, b, c}, {c, b, a}, {b, c, a}, {a, b}, {b, a}} {
		book := &Book{}
		book.Open(sh)
		for _, s := range order {
			book.Add(s.Fragment(), "")
		}
		got := book.Table(sh.Fingerprint()).Rows[0].Entry.Slip.Work[0].First.Settings[0]
		want := 0.32
		if len(order) == 2 {
			want = 0.3 // equal in all but what is on it: as text, "0.3]" comes after "0.31]"
		}
		if got != want {
			t.Errorf("%v counts, want %v", got, want)
		}
	}
}
