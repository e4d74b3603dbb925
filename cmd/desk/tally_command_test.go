package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// deskSays runs the desk and gives its exit code and both outputs.
func deskSays(in string, args ...string) (code int, out, problems string) {
	var o, p bytes.Buffer
	code = run(args, &desk{strings.NewReader(in), &o, &p})
	return code, o.String(), p.String()
}

func write(t *testing.T, folder, name, text string) string {
	t.Helper()
	path := filepath.Join(folder, name)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func utf16Text(s string) string {
	var b bytes.Buffer
	b.Write([]byte{0xFF, 0xFE})
	for _, u := range utf16.Encode([]rune(s)) {
		b.Write([]byte{byte(u), byte(u >> 8)})
	}
	return b.String()
}

// A folder with everything that can go wrong: what is good is marked all the same.
func TestABadSlipNeverStopsTheRest(t *testing.T) {
	sh, other := classSheet(t, "duty", "footage-three"), classSheet(t, "duty")
	slips := class(sh, 5, 3)
	folder := t.TempDir()
	page := "https://example.org/#"
	write(t, folder, "a.txt", page+slips[0].Fragment())
	write(t, folder, "b/two in one.txt", "Hello,\n"+page+slips[1].Fragment()+"\n\n"+slips[0].Fragment()+"\n")
	later := *slips[1]
	later.Minute += 10
	write(t, folder, "c later.txt", later.Fragment())
	write(t, folder, "d damaged.txt", slips[2].Fragment()[:80]+"\n\n"+page+slips[3].Fragment())
	write(t, folder, "e other.txt", class(other, 1, 4)[0].Fragment())
	write(t, folder, "f windows.txt", utf16Text(slips[4].Fragment()+"\r\n"))
	write(t, folder, "g nothing.txt", "No slip is in here.")
	write(t, folder, "h picture.png", "\x89PNG\r\n\x1a\n\x00\x00")
	write(t, folder, ".hidden", "slip=1.hidden")
	huge, err := os.Create(filepath.Join(folder, "i huge.txt"))
	if err != nil {
		t.Fatal(err)
	}
	huge.Truncate(mostText + 1)
	huge.Close()
	if err := os.Symlink(filepath.Join(folder, "gone"), filepath.Join(folder, "j leads nowhere.txt")); err != nil {
		t.Fatal(err)
	}
	file := write(t, t.TempDir(), "sheet.json", string(sh.Readable()))
	marks := filepath.Join(t.TempDir(), "marks.csv")

	code, out, problems := deskSays("", "tally", folder, filepath.Join(folder, "no such"), "-sheet", file, "-o", marks)
	if code != 0 || problems != "" {
		t.Errorf("exit status %d, problems %q", code, problems)
	}
	for _, want := range []string{
		"Learners: 4.", "Slips: 8; doubles 1, replaced by later ones 1, damaged 1, of sheets that are not here 1.",
		"d damaged.txt, line 1: " + slip.ErrDamaged.Error(), "c later.txt, line 1: another slip of Learner 0001",
		"Not marked: 1 for the sheet “What do you hear?”", "No slip in " + filepath.Join(folder, "g nothing.txt"),
		"h picture.png: it is no text", "i huge.txt is larger than", "j leads nowhere.txt cannot be read", "no such cannot be read",
	} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not said in:\n%s", want, out)
		}
	}
	if strings.Contains(out, "hidden") {
		t.Error("a hidden file is read")
	}

	// The marks are those of the slip's own rules.
	data, err := os.ReadFile(marks)
	if err != nil {
		t.Fatal(err)
	}
	records, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(records) != 1+4*2 {
		t.Fatalf("%d records, %v", len(records), err)
	}
	var m slip.Marker
	checked := 0
	for _, r := range records[1:] {
		for _, s := range slips {
			if r[1] != s.Name {
				continue
			}
			for i := range s.Work {
				if s.Work[i].ID != r[3] {
					continue
				}
				o := s.Work[i].Outcome(slip.Exercise(sh.For(s.Name), r[3]), sh.Strictness.Times(), &m)
				if want := strconv.FormatFloat(o.First, 'f', 1, 64); r[6] != want {
					t.Errorf("%s, %s: first marks %s, want %s", r[1], r[3], r[6], want)
				}
				if want := strconv.FormatFloat(o.Best, 'f', 1, 64); r[7] != want {
					t.Errorf("%s, %s: best marks %s, want %s", r[1], r[3], r[7], want)
				}
				checked++
			}
		}
	}
	if checked != 8 {
		t.Errorf("%d lines were compared, want 8", checked)
	}

	if code, _, problems := deskSays("", "tally", folder, "-sheet", file, "-strict"); code != 1 || !strings.Contains(problems, "could not be used") {
		t.Errorf("-strict: exit status %d, problems %q", code, problems)
	}
	if code, _, problems := deskSays("", "tally", folder, "-sheet", file, "-o", marks); code != 1 || !strings.Contains(problems, "exists already") {
		t.Errorf("over a file that exists: exit status %d, problems %q", code, problems)
	}
}

func TestTallyFindsSheetsAndStreams(t *testing.T) {
	sh := classSheet(t, "footage-three")
	slips := class(sh, 6, 3)
	var text string
	for _, s := range slips {
		text += s.Fragment() + "\n"
	}
	folder := t.TempDir()
	write(t, folder, "z slips.txt", text)
	if code, _, problems := deskSays("", "tally", folder); code != 1 || !strings.Contains(problems, "there is no sheet") || !strings.Contains(problems, "Not marked: 6") {
		t.Errorf("without a sheet: exit status %d, %q", code, problems)
	}
	write(t, folder, "sheet.json", string(sh.Readable()))
	code, out, problems := deskSays("", "tally", folder)
	if code != 0 || problems != "" || !strings.Contains(out, "Learners: 6.") || !strings.Contains(out, "is in "+filepath.Join(folder, "sheet.json")) || !strings.Contains(out, "of sheets that are not here 0") {
		t.Errorf("with the sheet in the folder: exit status %d, %q\n%s", code, problems, out)
	}
	for _, sheetWord := range []string{"https://example.org/#" + sh.Fragment(), sh.Fragment(), filepath.Join(folder, "sheet.json")} {
		code, out, problems = deskSays(text, "tally", "-", "-sheet", sheetWord, "-wide", "-o", "-")
		records, err := csv.NewReader(strings.NewReader(out)).ReadAll()
		if code != 0 || err != nil || len(records) != 7 || !strings.Contains(problems, "Slips: 6;") || strings.Contains(problems, "Learners") {
			t.Errorf("piped: exit status %d, %d records, %v, problems %q", code, len(records), err, problems)
		}
	}
	if _, _, problems = deskSays(text, "tally", "-", "-sheet", sh.Fragment(), "-o", "-", "-summary"); !strings.Contains(problems, "Learners: 6.") {
		t.Errorf("no summary beside the problems: %q", problems)
	}
	for _, c := range []struct {
		args string
		code int
		want string
	}{
		{"tally", 2, "name a folder or files"},
		{"tally x -sheet " + write(t, folder, "no.json", "{}"), 1, "no.json"},
		{"tally x -sheet nowhere.json", 1, "no such file"},
	} {
		if code, _, problems := deskSays("", strings.Fields(c.args)...); code != c.code || !strings.Contains(problems, c.want) {
			t.Errorf("%s: exit status %d, %q", c.args, code, problems)
		}
	}
}

// Names come from learners: what would move the cursor or turn the line is not printed.
func TestNamesDoNotMoveTheTerminal(t *testing.T) {
	sh := classSheet(t, "footage-three")
	s := class(sh, 1, 1)[0]
	s.Name = "\x1b[2J\u202eevil"
	bad := *s
	bad.Work = []slip.Work{{ID: "nothing", Tries: 1}}
	_, out, _ := deskSays(s.Fragment()+"\n"+bad.Fragment(), "tally", "-", "-sheet", sh.Fragment())
	if !strings.Contains(out, "[2Jevil") || strings.ContainsAny(out, "\x1b\u202e") {
		t.Errorf("printed: %q", out)
	}
}

func TestLinksThereAndBack(t *testing.T) {
	sh := classSheet(t, "duty", "footage-three", "limit-duty")
	folder := t.TempDir()
	file := write(t, folder, "sheet.json", string(sh.Readable()))
	code, link, _ := deskSays("", "link", file, "-address", "https://example.org/app/#old")
	if code != 0 || !strings.HasPrefix(link, "https://example.org/app/#sheet=1.") {
		t.Fatalf("exit status %d, %q", code, link)
	}
	for _, c := range []struct{ in, word string }{{"", strings.TrimSpace(link)}, {link, "-"}, {"", write(t, folder, "link.txt", link)}} {
		if code, out, problems := deskSays(c.in, "link", c.word); code != 0 || out != string(sh.Readable()) {
			t.Errorf("back from %.20q: exit status %d, %s", c.word, code, problems)
		}
	}
	for _, exercise := range []string{"2", "footage-three"} {
		_, out, problems := deskSays("", "link", file, "-exercise", exercise)
		one, err := sheet.ReadFragment(strings.TrimSpace(out))
		if err != nil || len(one.Exercises) != 1 || one.Exercises[0].ID != "footage-three" {
			t.Errorf("exercise %s: %v %s", exercise, err, problems)
		}
	}
	sound := `{"version": 1, "note": 60, "a": {"shape": "pulse", "duty": 0.2}}`
	_, link, _ = deskSays(sound, "link", "-")
	s, err := sheet.ReadSoundFragment(strings.TrimSpace(link))
	if err != nil || s.Note != 60 || s.A.Duty != 0.2 {
		t.Errorf("a sound: %v", err)
	}
	code, out, _ := deskSays("", "link", strings.TrimSpace(link))
	if code != 0 || !strings.Contains(out, `"duty": 0.2`) {
		t.Errorf("a sound from its link: %d %s", code, out)
	}
	if _, out, _ := deskSays("", "link", "#"+class(sh, 1, 1)[0].Fragment()); !strings.Contains(out, `"name": "Learner 0000"`) {
		t.Errorf("a slip from its link: %s", out)
	}
	for _, c := range []struct {
		args string
		code int
		want string
	}{
		{"link", 2, "name one sheet"},
		{"link " + file + " -exercise 4", 2, "1 to 3"},
		{"link " + file + " -address example.org", 2, "https://"},
		{"link " + file + " -o " + file, 1, "exists already"},
		{"link #sheet=1.broken", 1, "damaged"},
		{"link #sheet=9.new", 1, "newer version"},
		{"link https://example.org/", 1, "leads to nothing"},
		{"link nowhere.json", 1, "no such file"},
	} {
		if code, out, problems := deskSays("", strings.Fields(c.args)...); code != c.code || out != "" || !strings.Contains(problems, c.want) {
			t.Errorf("%s: exit status %d, %q", c.args, code, problems)
		}
	}
}
