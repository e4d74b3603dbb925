package game

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// studied is a game with some progress on every page of it.
func studied(t testing.TB) *Game {
	t.Helper()
	g := New(sheet.Course(), study(), roughly)
	g.gauge = unheard
	look(g)
	return g
}

// unheard stands for the loudness of sounds where it does not matter: it takes time
// to measure.
func unheard(synth.Sound) level { return level{lkfs: synth.Loudness, peak: 0.3, known: true} }

// study is what that progress is kept as.
var study = sync.OnceValue(func() []byte {
	g := New(sheet.Course(), nil, roughly)
	g.gauge = unheard
	look(g)
	for _, id := range []string{"four-shapes", "same-looks", "limit-detune"} {
		at, _ := g.find(id)
		g.open(at)
		for n := 0; g.page != result && n < 60; n++ {
			g.choose(n % len(g.asking.question.Answers))
			g.proceed()
		}
	}
	at, _ := g.find("beats")
	g.open(at)
	g.set(0, 12)
	g.handIn()
	g.act(ui.Action{Widget: "contents"})
	return g.Save()
})

func look(g *Game) {
	g.dirty = true
	g.Update(Input{W: 390, H: 844, Heard: Heard{Item: -1}, Random: 7, Date: time.Date(2026, 3, 2, 17, 0, 0, 0, time.UTC)})
}

// Files that are damaged, foreign, newer or huge are refused with a sentence, and
// nothing is lost.
func TestBadFilesLoseNothing(t *testing.T) {
	good := studied(t).Save()
	newer := bytes.Replace(good, []byte(`"version":2`), []byte(`"version":3`), 1)
	huge := append(bytes.Clone(good[:len(good)-1]), []byte(`,"x":"`+strings.Repeat("a", MostImported)+`"}`)...)
	exercises, err := os.ReadFile("../testdata/sheets/sixteen.json")
	if err != nil {
		t.Fatal(err)
	}
	for name, file := range map[string][]byte{
		"nothing": nil, "no file": []byte(""), "a picture": []byte("\x89PNG\r\n\x1a\n"), "half": good[:len(good)/2],
		"newer": newer, "huge": huge, "a sheet": exercises, "a sound": []byte(`{"version": 1, "a": {"shape": "pulse"}}`),
		"a list": []byte("[]"), "null": []byte("null"), "a number": []byte("7"), "a text": []byte("marks: 100"),
		"other types": []byte(`{"version": 2, "page": "contents", "marks": [1, 2]}`),
		"two":         append(bytes.Clone(good), good...),
		"an old word": []byte(`{"version": 2, "page": "stage", "marks": {}}`),
	} {
		g := studied(t)
		before := g.Save()
		g.Import(file)
		look(g)
		if g.over != note || !strings.Contains(g.Scene().Body, "no progress that this program can read") {
			t.Errorf("%s: %q", name, g.Scene().Body)
		}
		g.act(ui.Action{Widget: "understood"})
		if !bytes.Equal(g.Save(), before) || g.over != noOverlay {
			t.Errorf("%s: something has changed", name)
		}
		g.act(ui.Action{Widget: "replace"}) // nothing is offered
		if !bytes.Equal(g.Save(), before) {
			t.Errorf("%s: replaced by what was refused", name)
		}
	}
}

// checkWhole looks at every page that shows what is kept.
func checkWhole(t *testing.T, g *Game) {
	t.Helper()
	for _, id := range []string{"course", "practice", "begin", "end", "course", "bench", "course", "progress", "view 1", "later", "view 2", "later", "view 0", "course", "contents"} {
		g.act(ui.Action{Widget: id})
		g.over = noOverlay
		look(g)
		for _, text := range g.Scene().Texts {
			if strings.Contains(text.String, "NaN") || strings.Contains(text.String, "Inf") {
				t.Errorf("%s: %q", id, text.String)
			}
		}
	}
	if err := g.work.yours.Validate(); g.page.pictured() && err != nil {
		t.Error(err)
	}
	if v := g.Volume(); !(v >= 0 && v <= 1) {
		t.Errorf("volume %v", v)
	}
	again := New(sheet.Course(), g.Save(), roughly)
	if again.over == note {
		t.Errorf("what was kept cannot be read again: %s", again.say)
	}
}

// FuzzImport has any file offered as progress: it is taken or refused with a
// sentence, and every page can be looked at afterwards.
func FuzzImport(f *testing.F) {
	good := studied(f).Save()
	f.Add(good)
	f.Add(good[:len(good)/2])
	f.Add([]byte(`{"version": 2, "page": "contents", "history": [{"day": 9000000000000000, "exercise": "tune", "marks": 1e300}], "marks": {"tune": {"best": 7, "tries": -4}}}`))
	f.Add([]byte(`{"version": 2, "page": "progress", "limits": {"limit-duty": [{"day": -5, "value": 1e308, "found": true}, {"value": 1e-300}]}}`))
	f.Add([]byte(`{"version": 2, "page": "question", "exercise": "four-shapes", "runs": {"four-shapes": {"seed": 1, "answers": [9, -1]}}}`))
	f.Add([]byte(`{"version": 2, "page": "answer", "exercise": "limit-duty", "runs": {"limit-duty": {"seed": 1, "answers": [0, 7]}}}`))
	f.Add([]byte(`{"version": 2, "page": "practice", "boxes": {"four-shapes/Sine": {"box": -3, "due": 1000000000}, "tune": {}}, "confused": {"a": {"b": 3}}}`))
	f.Add([]byte(`{"version": 1, "page": "marked", "exercise": "duty", "settings": [1e300]}`))
	f.Fuzz(func(t *testing.T, file []byte) {
		g := studied(t)
		before := g.Save()
		g.Import(file)
		switch g.over {
		case note:
			g.act(ui.Action{Widget: "understood"})
			if !bytes.Equal(g.Save(), before) {
				t.Error("refused, and something has changed")
			}
		case importQuestion:
			g.act(ui.Action{Widget: "replace"})
		}
		checkWhole(t, g)
	})
}

// FuzzFollow has any address opened, and any text packed as a sheet: a sound lies on the
// bench then, a sheet is open and can be worked, or there is a sentence over the page.
func FuzzFollow(f *testing.F) {
	f.Add("")
	f.Add("#" + sheet.SoundFragment(benchStart()))
	for _, e := range sheet.Matches().Exercises[:3] {
		f.Add("#" + sheet.SoundFragment(e.Target))
	}
	f.Add("#sound=2.abc")
	f.Add("#sound=1.AAAAAA")
	f.Add("#top")
	for _, vary := range []bool{false, true} {
		f.Add("#" + assignment(vary).Fragment())
		f.Add(string(assignment(vary).Only(1).JSON()))
		f.Add(string(assignment(vary).Only(2).JSON()))
	}
	f.Add("#slip=1.AAAA")
	f.Fuzz(func(t *testing.T, text string) {
		follow(t, text)
		follow(t, link.Pack(link.Sheet, []byte(text)))
	})
}

func follow(t *testing.T, fragment string) {
	g := New(sheet.Course(), nil, roughly)
	g.gauge = unheard
	look(g)
	g.Follow(fragment)
	look(g)
	switch {
	case g.over == note:
		if len(g.say) < 20 || g.page != contents && g.own() == nil {
			t.Errorf("page %s: %q", pageNames[g.page], g.say)
		}
	case g.page == benchPage:
		if err := g.work.yours.Validate(); err != nil {
			t.Error(err)
		}
		if back, err := sheet.ReadSoundFragment(sheet.SoundFragment(g.work.yours)); err != nil || back != g.work.yours {
			t.Errorf("the link does not hold what it opens: %v", err)
		}
	case g.page == sheetPage:
		workGiven(t, g)
	case g.page == bookPage: // with what is damaged too
	case strings.TrimPrefix(fragment, "#") != "":
		t.Errorf("nothing happens at %q", fragment)
	}
}

// workGiven works the first exercises of a sheet that was given, hands the slip in and
// takes all of it over a reload.
func workGiven(t *testing.T, g *Game) {
	press := func(id string) { g.act(ui.Action{Widget: id}); look(g) }
	press("name it")
	g.act(ui.Action{Widget: "name", Typed: true, Text: "wren"})
	press("use name")
	for i := range min(3, len(g.sheet().Exercises)) {
		press(numberedID("exercise", i))
		for n := 0; g.page == questionPage && n < 5; n++ {
			press("answer 0")
			press("proceed")
		}
		if g.page == working && g.work.target.Seconds < 3 { // longer ones take long to mark
			press("hand in")
		}
		press("contents")
	}
	press("slip")
	s := g.makeSlip()
	if err := s.Fits(g.own().sheet); err != nil {
		t.Error(err)
	}
	again := New(sheet.Course(), g.Save(), roughly)
	again.gauge = unheard
	look(again)
	if again.own() == nil || again.page != slipPage || again.makeSlip().Fragment() != s.Fragment() {
		t.Errorf("after a reload the page is %s", pageNames[again.page])
	}
}

// The name of the file has the day where the learner is.
func TestExportedFileHasItsDay(t *testing.T) {
	g := studied(t)
	g.in.Date = time.Date(2026, 12, 31, 23, 30, 0, 0, time.FixedZone("", 13*60*60))
	g.act(ui.Action{Widget: "export"})
	w := g.Wishes()
	if len(w) != 1 || w[0].Name != "partial-credit-2026-12-31.json" || w[0].Kind != Download {
		t.Errorf("%s", fmt.Sprint(w))
	}
}

// A run with answers that nobody can have given is begun anew.
func TestRunsThatCannotBeAreBegunAnew(t *testing.T) {
	for _, run := range []string{`"four-shapes": {"seed": 1, "answers": [0, 9]}`, `"four-shapes": {"seed": 1, "answers": [-1]}`,
		`"four-shapes": {"seed": 1, "answers": [` + strings.Repeat("0,", 40) + `0]}`, `"limit-duty": {"seed": 1, "answers": [3]}`} {
		id := strings.Split(run, `"`)[1]
		g := New(sheet.Course(), fmt.Appendf(nil, `{"version": 2, "page": "question", "exercise": %q, "runs": {%s}}`, id, run), roughly)
		look(g)
		if g.page != questionPage || g.exercise().ID != id || len(g.asking.run.Answers) != 0 {
			t.Errorf("%s: page %s, %d answers", run, pageNames[g.page], len(g.asking.run.Answers))
		}
	}
}
