//go:build !js

package main_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"
	"github.com/google/go-cmp/cmp"

	"partialcredit/cmd/desk/site"
	"partialcredit/game/sheet"
	answers "partialcredit/game/slip"
)

// TestAClassWithoutAServer is what issue 5 is done when: a sheet written on one page is worked on another one,
// a tablet's, under two names, both slips come back, and the mark book has the marks that `desk tally` has. The
// server is gone after the first visit of each.
func TestAClassWithoutAServer(t *testing.T) {
	h := newHost(t, theSite(t))
	contents := Kept{Version: 2, Page: "contents", Volume: 0.3, Hinted: true}
	icon := []string{"/icon.svg"} // which the browser itself may ask the server for, that is gone
	teacher := resume(t, contents, Visit{Keeps: true, Address: h.address, Expected: icon})
	tablet := resume(t, contents, Visit{Keeps: true, Address: h.address, Screen: Screen{1180, 820, 1, true}, Expected: icon})
	teacher.kept()
	tablet.kept()
	teacher.mayCopy()
	tablet.mayCopy()
	h.stop()
	defer func() {
		if t.Failed() {
			teacher.dump()
			tablet.dump()
		}
	}()

	var link, code string
	teacher.step(t, "the sheet is written", teacher.writesASheet)
	teacher.step(t, "the sheet is handed out", func() { link, code = teacher.handsOut() })
	given, err := sheet.ReadFragment(link)
	if err != nil {
		t.Fatalf("the link %q: %v", link, err)
	}
	if same, err := sheet.ReadFragment(code); err != nil || same.Fingerprint() != given.Fingerprint() {
		t.Fatalf("the code holds %q, which is not the sheet of the link: %v", code, err)
	}
	isTheSheet(t, given)

	// Who follows the code with a camera comes to the page by the address in it.
	tablet.do("leaving the page", chromedp.Navigate("about:blank"))
	tablet.do("opening "+code, chromedp.Navigate(code))
	tablet.Started()
	wren, otter := given.For("Wren"), given.For("Otter")
	if w, o := wren.Exercises[0].Target.A.Duty, otter.Exercises[0].Target.A.Duty; w == o {
		t.Fatalf("both learners get the target %v", w)
	}
	var shown [2][]float64
	var slips [2]string
	tablet.step(t, "Wren works", func() {
		tablet.comes("Wren")
		shown[0] = tablet.works(given, "Wren", 0.02, map[int]bool{})
		slips[0] = tablet.copies("the slip is copied")
	})
	if t.Failed() {
		return
	}
	tablet.step(t, "Otter works", func() {
		tablet.uses("name it")
		tablet.comes("Otter")
		shown[1] = tablet.works(given, "Otter", -0.1, map[int]bool{1: true})
		slips[1] = tablet.codeShown()
		audit(tablet.Page, "a slip")
	})
	if t.Failed() {
		return
	}
	teacher.step(t, "the slips come back", func() {
		teacher.uses("taken")
		teacher.uses("teacher")
		teacher.uses("book")
		teacher.writes("slips", slips[0])
		teacher.uses("take slips")
		teacher.WaitText("#mirror p", "The slip of Wren is taken.", limit)
		teacher.do("following the other slip", chromedp.Navigate(slips[1]))
		teacher.WaitText("#mirror p", "The slip of Otter is taken.", limit)
	})
	names := []string{"Otter", "Wren"} // by name, as the book is sorted
	var book [2][]float64
	var table string
	read := func() {
		teacher.uses("leaf 1")
		teacher.Wait(`!document.querySelector("#mirror p").textContent.includes("sounds to go")`, limit)
		for i, name := range names {
			book[i] = teacher.marksOf(i, name)
		}
		table = teacher.savesTable()
	}
	teacher.step(t, "the mark book is read", read)
	audit(teacher.Page, "a class in the mark book")
	first, firstTable := book, table

	for i, of := range []int{1, 0} {
		if diff := cmp.Diff(shown[of], book[i]); diff != "" {
			t.Errorf("%s saw other marks than the mark book has (-learner +book):\n%s", names[i], diff)
		}
	}
	folder, desk := t.TempDir(), builtDesk(t)
	put := func(folder, name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	put(folder, "sheet.json", string(given.Readable()))
	put(folder, "wren.txt", slips[0]+"\n")
	put(folder, "otter.txt", slips[1]+"\n")
	tallied := tally(t, desk, folder)
	t.Logf("desk tally:\n%s", tallied)
	if diff := cmp.Diff(tallied, table); diff != "" {
		t.Errorf("the mark book saves another table than `desk tally` makes (-desk +book):\n%s", diff)
	}
	for i, name := range names {
		marksAgree(t, name, tallied, book[i])
	}
	// The comparison notices one answer that is another one.
	other := t.TempDir()
	put(other, "sheet.json", string(given.Readable()))
	put(other, "wren.txt", slips[0])
	put(other, "otter.txt", otherwise(t, slips[1]))
	if tally(t, desk, other) == table {
		t.Error("a slip with another answer tallies to the same table")
	}

	teacher.step(t, "all is there after a reload", func() {
		teacher.Reload()
		teacher.Started()
		teacher.shows("leaf 1")
		read()
		if book[0] == nil || cmp.Diff(first, book) != "" || firstTable != table {
			teacher.t.Errorf("after a reload the book has %v and\n%s", book, table)
		}
		teacher.uses("teacher")
		teacher.uses("write")
		teacher.uses("give")
		if again, _ := teacher.link(); again != link {
			teacher.t.Errorf("after a reload the link is %q, it was %q", again, link)
		}
	})
}

// isTheSheet compares what was handed out with what was written.
func isTheSheet(t *testing.T, s *sheet.Sheet) {
	t.Helper()
	if s.Title != classTitle || !s.Vary || len(s.Exercises) != 2 {
		t.Fatalf("the sheet is %q with %d exercises, drawn: %v", s.Title, len(s.Exercises), s.Vary)
	}
	match, name := &s.Exercises[0], &s.Exercises[1]
	if match.Kind != sheet.Match || match.Title != classTexts[0] || match.Task != classTexts[1] || match.Teach != classTexts[2] {
		t.Errorf("the first exercise says %q, %q, %q", match.Title, match.Task, match.Teach)
	}
	if a := match.Target.A; len(match.Controls) != 1 || match.Controls[0].Fields[0] != "a.duty" || math.Abs(a.Duty-classDuty) > 0.005 {
		t.Errorf("its controls are %+v, its target %+v", match.Controls, match.Target)
	}
	if name.Kind != sheet.Name || len(name.Answers) != 2 || name.Questions != 4 || name.Answers[1].Cue != classCue {
		t.Errorf("the second exercise is %+v", name)
	}
}

// marksOf reads a learner's best marks in the mark book.
func (l *learner) marksOf(row int, name string) (best []float64) {
	l.t.Helper()
	l.WaitText(widget(fmt.Sprintf("learner %d", row)), name, limit)
	l.uses(fmt.Sprintf("learner %d", row))
	l.WaitText("#mirror p", name+". Handed in:", limit)
	best = numbers(l.body(), regexp.MustCompile(`First marks \d+, best (\d+)\.`))
	l.uses("class")
	l.awaits("csv")
	return best
}

// numbers are what the first group of an expression matches.
func numbers(text string, of *regexp.Regexp) (all []float64) {
	for _, m := range of.FindAllStringSubmatch(text, -1) {
		v, _ := strconv.ParseFloat(m[1], 64)
		all = append(all, v)
	}
	return all
}

// savesTable saves the mark book as CSV and reads the file.
func (l *learner) savesTable() string {
	l.t.Helper()
	folder := l.t.TempDir()
	l.inBrowser("a folder for downloads", func(ctx context.Context, profile cdp.BrowserContextID) error {
		return browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(folder).WithBrowserContextID(profile).Do(ctx)
	})
	l.uses("csv")
	for from := time.Now(); time.Since(from) < limit; time.Sleep(20 * time.Millisecond) {
		if files, _ := filepath.Glob(filepath.Join(folder, "*.csv")); len(files) == 1 {
			if data, err := os.ReadFile(files[0]); err == nil && len(data) > 0 {
				return string(data)
			}
		}
	}
	l.t.Fatal("no table came")
	return ""
}

// builtDesk is the desk as a program.
func builtDesk(t *testing.T) string {
	t.Helper()
	root, err := site.FindRoot()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "desk")
	build := exec.Command("go", "build", "-o", path, "./cmd/desk")
	build.Dir = root
	if said, err := build.CombinedOutput(); err != nil {
		t.Fatalf("building the desk: %v\n%s", err, said)
	}
	return path
}

// tally is the table of a folder of slips, as `desk tally` makes it.
func tally(t *testing.T, desk, folder string) string {
	t.Helper()
	run := exec.Command(desk, "tally", folder, "-strict", "-o", "-")
	var problems bytes.Buffer
	run.Stderr = &problems
	table, err := run.Output()
	if err != nil {
		t.Fatalf("desk tally: %v\n%s", err, &problems)
	}
	return string(table)
}

// marksAgree compares marks that the page shows as whole numbers with those of a table, to a tenth.
func marksAgree(t *testing.T, name, table string, shown []float64) {
	t.Helper()
	records, err := csv.NewReader(strings.NewReader(table)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var marks []float64
	for _, r := range records {
		if r[1] == name {
			v, err := strconv.ParseFloat(r[7], 64)
			if err != nil || records[0][7] != "best marks" {
				t.Fatalf("%q is no line with best marks: %v", r, err)
			}
			marks = append(marks, v)
		}
	}
	if len(marks) != 2 || len(shown) != 2 {
		t.Fatalf("%s has %v on the page and %v in the table, want two of each", name, shown, marks)
	}
	for i := range marks {
		if math.Floor(marks[i]) != shown[i] { // the page gives 100 for all alone
			t.Errorf("%s has %v marks on the page and %v in the table", name, shown[i], marks[i])
		}
	}
	t.Logf("%s: %v on the page, %v in the table", name, shown, marks)
}

// otherwise is a slip with one setting that is another one.
func otherwise(t *testing.T, text string) string {
	t.Helper()
	s, err := answers.Read(text)
	if err != nil {
		t.Fatal(err)
	}
	s.Work[0].First.Settings[0] += 0.03
	return "#" + s.Fragment()
}
