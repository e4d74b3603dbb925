package game

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
)

// nth is which of the exercises of a sheet has an id.
func nth(s *sheet.Sheet, id string) int {
	return slices.IndexFunc(s.Exercises, func(e sheet.Exercise) bool { return e.ID == id })
}

// small is a sheet of one match, named by a number.
func small(n int) *sheet.Sheet {
	all := assignment(false)
	s := *all.Only(nth(all, "duty"))
	s.Title = fmt.Sprintf("Sheet %d", n)
	return &s
}

func TestLinksToSheetsThatAreRefused(t *testing.T) {
	good := assignment(true).Fragment()
	for _, c := range []struct{ link, want, german string }{
		{good[:len(good)/2], "damaged", "beschädigt"},
		{good[:70] + "A" + good[72:], "damaged", "beschädigt"},
		{strings.Replace(good, "=1.", "=2.", 1), "newer version", "neueren"},
		{link.Pack(link.Sheet, []byte(`{"version":1,"title":"A 100 %s sheet","exercises":[{"id":"a"}]}`)), "cannot be used: exercise 1: title is missing.", "Aufgabe 1: title fehlt."},
		{link.Pack(link.Sheet, make([]byte, 1<<20)), "more than any sheet", "mehr"},
		{"sheet=", "damaged", "beschädigt"},
	} {
		for _, language := range []string{"en", "de"} {
			g := New(sheet.Course(), nil, roughly)
			g.Speak([]string{language})
			g.Follow("#" + c.link)
			look(g)
			want := c.want
			if language == "de" {
				want = c.german
			}
			if g.over != note || !strings.Contains(g.Scene().Body, want) || len(g.kept.Given) != 0 || g.page != contents {
				t.Errorf("%.30s: %q, want %q", c.link, g.Scene().Body, want)
			}
		}
	}
}

// A teacher's texts stand there as they are, whatever signs and words are in them.
func TestATeachersTextsAreShownAsTheyAre(t *testing.T) {
	s := small(1)
	s.Title, s.Exercises[0].Title, s.Exercises[0].Task = "100 %d 1.5 beats", "Level 2.5 beats", "Hear 50 %s of it."
	p := newPlayerOf(t, sheet.Course())
	p.game.Speak([]string{"de"})
	p.given(s)
	for range 2 {
		for _, want := range []string{"100 %d 1.5 beats", "1. Level 2.5 beats"} {
			if !strings.Contains(p.drawn(), want) {
				t.Errorf("not drawn: %q in %s", want, p.drawn())
			}
		}
		p.call("50 % wren")
	}
	p.pressID("exercise 0")
	p.pressID("hand in")
	if d := p.drawn(); !strings.Contains(d, "1. Level 2.5 beats") {
		t.Error(d)
	}
	p.pressID("contents")
	p.pressID("slip")
	if d := p.drawn(); !strings.Contains(d, "50 % wren") || !strings.Contains(d, "1. Level 2.5 beats") {
		t.Error(d)
	}
	p.pressID("file")
	if w := p.game.Wishes(); len(w) != 1 || w[0].Name != "slip-50-wren-100-d-1-5-beats.txt" {
		t.Errorf("%+v", w)
	} else if back, err := slip.Read(w[0].Text); err != nil || back.Name != "50 % wren" {
		t.Error(err)
	}
}

// A sheet that draws targets asks for the name before the first exercise; each name has
// its own, the same every time.
func TestAVaryingSheetAsksForTheName(t *testing.T) {
	t.Parallel()
	s := assignment(true)
	p := newPlayerOf(t, sheet.Course())
	p.given(s)
	match := nth(s, "duty")
	p.pressID(numberedID("exercise", match))
	if p.game.page != namePage {
		t.Fatalf("page %s", pageNames[p.game.page])
	}
	p.tick(ui.Event{Kind: ui.Typed, Widget: "name", Text: " \t "})
	if p.has("use name") {
		t.Error("no name can be used")
	}
	target := func(name string) string {
		p.call(name)
		if p.game.page != working {
			p.pressID(numberedID("exercise", match))
		}
		sound := p.game.work.target
		p.pressID("contents")
		if want := s.For(name).Exercises[match].Target; sound != want {
			t.Errorf("%s works at %v, want %v", name, sound.A.Duty, want.A.Duty)
		}
		return fmt.Sprint(sound)
	}
	wren := target("wren")
	if target("robin") == wren {
		t.Error("robin can copy from wren")
	}
	p.reload()
	if target("  WREN ") != wren {
		t.Error("wren has another target now")
	}
	at := nth(s, "four-shapes")
	seed := func() uint64 {
		p.pressID(numberedID("exercise", at))
		return p.game.asking.run.Seed
	}
	for try := range 2 {
		if got, want := seed(), s.Seed("wren", s.Exercises[at].ID, try); got != want {
			t.Errorf("try %d has the seed %d, want %d", try, got, want)
		}
		p.answer("right")
		p.pressID("proceed")
		p.reload() // a run goes on
		if n := len(p.game.asking.run.Answers); n != 1 || p.game.asking.run.Seed != s.Seed("wren", s.Exercises[at].ID, try) {
			t.Errorf("%d answers after a reload", n)
		}
		for p.game.page != result {
			p.answer("right")
			p.pressID("proceed")
		}
		p.pressID("contents")
	}
}

// What was done before there was a name becomes the first name's, and stays it.
func TestWorkWithoutANameBecomesTheFirstNames(t *testing.T) {
	t.Parallel()
	s := assignment(false)
	p := newPlayerOf(t, sheet.Course())
	p.given(s)
	p.work(true)
	p.pressID("slip")
	if p.game.page != namePage {
		t.Fatalf("page %s", pageNames[p.game.page])
	}
	p.call("wren")
	if p.game.page != slipPage {
		t.Fatalf("page %s", pageNames[p.game.page])
	}
	checkSlip(t, p.game, p.slip(), s, 1)
	p.call("robin")
	if n := len(p.game.makeSlip().Work); n != 0 {
		t.Errorf("robin has %d works", n)
	}
	p.call("wren")
	checkSlip(t, p.game, p.slip(), s, 1)
}

// Time counts between what a person does, up to a bound; sounds count when they start.
func TestTimeAndReplaysAreCounted(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	p.given(small(1))
	p.call("wren")
	p.pressID("exercise 0")
	w := p.game.logged()
	from := w.Seconds
	for range 3 {
		p.now += 10 * time.Second
		p.pressID("target")
		p.pressID("target") // stops it
	}
	if got := w.Seconds - from; got < 30 || got > 31 || w.Replays != 3 {
		t.Errorf("%d s, %d replays", got, w.Replays)
	}
	from = w.Seconds
	p.now += time.Hour
	p.pressID("hand in")
	if got := w.Seconds - from; got < 119 || got > 121 {
		t.Errorf("an hour away counts %d s", got)
	}
	p.pressID("contents")
	from = w.Seconds
	p.now += time.Minute
	p.pressID("course")
	if w.Seconds != from {
		t.Error("the contents count")
	}
	p.game.beginPractice()
	if p.game.session.on {
		t.Error("what was given is practised")
	}
}

// There is room for so many sheets; what nothing was done in makes room, and says so.
func TestGivenSheetsAreBounded(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	course := len(p.game.course)
	for n := range MostGiven {
		p.given(small(n))
		if n < 2 {
			p.call("wren")
			p.pressID("exercise 0")
			p.pressID("hand in")
		}
	}
	p.given(small(2)) // again: it is used last
	if n := len(p.game.kept.Given); n != MostGiven || p.game.sheet().Title != "Sheet 2" {
		t.Fatalf("%d sheets, %s", n, p.game.sheet().Title)
	}
	p.given(small(100))
	if n := len(p.game.kept.Given); n != MostGiven || len(p.game.course) != course+n || p.game.over != note || !strings.Contains(p.game.say, "“Sheet 3” made room") {
		t.Errorf("%d sheets; %q", n, p.game.say)
	}
	p.pressID("understood")
	if p.game.sheet().Title != "Sheet 100" {
		t.Errorf("%s is open", p.game.sheet().Title)
	}
	for i := range p.game.kept.Given {
		s := &p.game.kept.Given[i]
		p.game.kept.seen(s.prefix("wren") + "x") // something was done in each
	}
	before := string(p.game.Save())
	p.given(small(101))
	if len(p.game.kept.Given) != MostGiven || p.game.over != note || !strings.Contains(p.game.say, "as there is room for") {
		t.Errorf("%q", p.game.say)
	}
	p.pressID("understood")
	if k, _ := read([]byte(before)); len(k.Marks) != len(p.game.kept.Marks) {
		t.Error("something is lost")
	}
	p.reload()
	if len(p.game.kept.Given) != MostGiven || len(p.game.course) != course+MostGiven {
		t.Errorf("%d after a reload", len(p.game.kept.Given))
	}
}

// A sheet that is removed leaves nothing, after a question; the others stay.
func TestAGivenSheetIsRemoved(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	p.given(small(1))
	p.call("wren")
	p.work(false)
	p.given(small(2))
	p.call("robin")
	p.work(false)
	print := p.game.own().print
	p.pressID("discard")
	p.pressID("keep")
	if p.game.page != sheetPage || len(p.game.kept.Given) != 2 {
		t.Fatal("it is not kept")
	}
	p.pressID("discard")
	p.pressID("discard sheet")
	if p.game.page != contents || len(p.game.kept.Given) != 1 || strings.Contains(p.drawn(), "Sheet 2") || !strings.Contains(p.drawn(), "Sheet 1") {
		t.Errorf("page %s: %s", pageNames[p.game.page], p.drawn())
	}
	k := p.game.kept
	k.History = nil // marks over time stay
	if k.worked(print) {
		t.Error("work is left")
	}
	p.pressID(numberedID("sheet", p.game.built))
	if n := len(p.game.makeSlip().Work); n != 1 || p.game.own().Name != "wren" {
		t.Errorf("wren has %d works", n)
	}
	p.pressID("course")
	p.game.act(ui.Action{Widget: "erase all"})
	if p.tick(); len(p.game.kept.Given)+len(p.game.kept.Log) != 0 || len(p.game.course) != p.game.built {
		t.Error("something is left after all was erased")
	}
}

// What was kept and has been damaged is left out of a slip, which fits all the same.
func TestDamagedWorkIsLeftOutOfTheSlip(t *testing.T) {
	t.Parallel()
	s := assignment(true)
	for name, damage := range map[string]func(w *slip.Work){
		"settings": func(w *slip.Work) { w.First.Settings = append(w.First.Settings, 7) },
		"a run":    func(w *slip.Work) { w.First.Run = nil },
		"tries":    func(w *slip.Work) { w.Tries = -3 },
		"a best":   func(w *slip.Work) { w.Best = &slip.Attempt{} },
	} {
		p := newPlayerOf(t, sheet.Course())
		p.given(s)
		p.call("wren")
		for _, id := range []string{"duty", "beats"} {
			p.pressID(numberedID("exercise", nth(s, id)))
			p.pressID("hand in")
			p.pressID("contents")
		}
		p.pressID(numberedID("exercise", nth(s, "four-shapes")))
		for p.game.page != result {
			p.answer("right")
			p.pressID("proceed")
		}
		p.pressID("contents")
		id := "duty"
		if name == "a run" {
			id = "four-shapes"
		}
		damage(p.game.kept.Log[p.game.own().id(id)])
		p.reload()
		back := p.slip()
		if err := back.Fits(s); err != nil || len(back.Work) != 2 {
			t.Errorf("%s: %d works: %v", name, len(back.Work), err)
		}
	}
}

// A sheet as a file is opened where it is dropped, or chosen in place of progress.
func TestASheetComesAsAFile(t *testing.T) {
	file := File{"a.json", assignment(true).Readable()}
	for i := range 2 {
		g := studied(t)
		if i == 0 {
			g.Dropped([]File{{"a.png", []byte("\x89PNG")}, file})
		} else {
			g.Opened("import", []File{file})
		}
		look(g)
		if g.page != sheetPage || g.own() == nil || g.own().print != assignment(true).Fingerprint() {
			t.Errorf("page %s: %q", pageNames[g.page], g.say)
		}
	}
}

// A page that is loaded anew has the link in its address still: nothing is turned.
func TestALinkThatIsFollowedAgainTurnsNoPage(t *testing.T) {
	s := small(1)
	p := newPlayerOf(t, sheet.Course())
	p.given(s)
	p.call("wren")
	for _, step := range []struct {
		press string
		page  page
	}{{"exercise 0", working}, {"hand in", marked}, {"contents", sheetPage}, {"slip", slipPage}} {
		p.pressID(step.press)
		p.reload()
		p.given(s)
		if p.game.page != step.page || p.game.over != noOverlay {
			t.Errorf("after %s and a reload the page is %s", step.press, pageNames[p.game.page])
		}
	}
	for _, press := range []string{"contents", "course"} {
		p.pressID(press)
	}
	p.given(s)
	if p.game.page != sheetPage || p.game.own() == nil {
		t.Errorf("from the contents the link leads to %s", pageNames[p.game.page])
	}
}
