package game

import (
	"strings"
	"testing"

	"partialcredit/game/sheet"
)

// A colon follows no sign that closes a sentence (from memory: Duden, rules for the colon;
// the Chicago Manual of Style has it so for question and exclamation marks).
func TestHeaded(t *testing.T) {
	for _, c := range []struct{ heading, want string }{
		{"1. What is it?", "1. What is it? 62"}, {"1. Beats", "1. Beats: 62"}, {"Listen!", "Listen! 62"}, {"And now …", "And now … 62"},
		{"Is it “a duty?”", "Is it “a duty?” 62"}, {"Is it „eine Pulsbreite?“", "Is it „eine Pulsbreite?“ 62"}, {"Listen (why?)", "Listen (why?) 62"},
		{"The “duty”", "The “duty”: 62"}, {"First: ", "First: 62"}, {"", "62"}, {"?", "? 62"},
	} {
		if got := headed(c.heading, "62"); got != c.want {
			t.Errorf("%q: %q, want %q", c.heading, got, c.want)
		}
	}
}

// No list of the mark book, of its paper or of a slip has a colon behind a question: the
// exercises of these sheets are questions.
func TestNoColonFollowsAQuestion(t *testing.T) {
	seen := 0
	look := func(name, drawn string) {
		t.Helper()
		seen += strings.Count(drawn, "?")
		for _, bad := range []string{"?:", "!:", "?.", ".:"} {
			if i := strings.Index(drawn, bad); i >= 0 {
				t.Errorf("%s: %q", name, drawn[max(0, i-40):i+2])
			}
		}
	}
	w := keeper(t)
	w.Pasted(strings.Join(class(homework(), 2), "\n") + " #" + homework().Fragment())
	for leaf := range leaves {
		w.press(numberedID("leaf", leaf))
		look("the book", everyWord(w.Scene()))
	}
	table := w.bookTable()
	look("the book on paper", w.bookDocument(table, table.View(w.marks.view)))
	w.press("leaf 1")
	w.press("learner 0")
	look("a learner", everyWord(w.Scene()))

	g := New(sheet.Course(), nil, roughly)
	g.kept.Hinted = true
	handPages(g, func(name string) {
		g.dirty = true
		g.Update(Input{W: 1180, H: 820, Heard: Heard{Item: -1}, Address: g.in.Address})
		look(name, everyWord(g.Scene()))
	})
	if seen < 50 {
		t.Errorf("only %d questions were looked at", seen)
	}
}
