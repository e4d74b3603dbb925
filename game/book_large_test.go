package game

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// A thousand slips fit on the device: the storage of a page holds 5 MB (the WHATWG HTML
// standard, section on local storage, suggests 5 MB per origin).
func TestAThousandSlipsAreKept(t *testing.T) {
	t.Parallel()
	sh := assignment(false) // else each slip is to be worked for itself, which takes long
	var answers []*slip.Slip
	for i := range 10 {
		answers = append(answers, slipOf(sh, "Learner", float64(i)/10, 29000000))
	}
	began := time.Now()
	lap := func(what string) {
		t.Logf("%s: %d ms", what, time.Since(began).Milliseconds())
		began = time.Now()
	}
	links := make([]string, 1000)
	for i := range links {
		s := *answers[i%10]
		s.Name, s.Minute = fmt.Sprintf("Learner %04d of a large school", i), s.Minute+int64(i)
		links[i] = "https://example.org/#" + s.Fragment()
	}
	all := strings.Join(links, "\n")
	t.Logf("%d bytes a slip", len(all)/len(links))
	w := keeper(t)
	w.kept.Given = append(w.kept.Given, given{Link: sh.Fragment()})
	w.unpack()
	lap("made")
	w.Pasted(all)
	lap("pasted")
	w.news("Slips read: 1000. New: 1000.")
	lap("laid out")
	file := w.File()
	lap("filed")
	w.File()
	lap("filed again")
	if len(file) > 2<<20 {
		t.Errorf("%d bytes", len(file))
	}
	again := New(sheet.Course(), nil, roughly)
	if !again.Unfile(file) {
		t.Fatal("what was kept cannot be read")
	}
	lap("unfiled")
	if n := len(again.openBook().Entries()); n != 1000 {
		t.Errorf("%d slips", n)
	}
	lap("opened")
	left := again.marks.book.Left()
	for range 50 {
		again.marks.book.Step()
	}
	lap(fmt.Sprintf("50 of %d marks", left))
	again.marks.book.Table(sh.Fingerprint())
	lap("a table")
	t.Logf("%d bytes kept", len(file))
}
