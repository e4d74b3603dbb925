package game

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// TestEveryPageIsGermanAndRests turns to every page in German: no English sentence
// that has another in German stands on it or is said of it; and once it stands, the
// program has nothing to do and makes no garbage.
func TestEveryPageIsGermanAndRests(t *testing.T) {
	english := englishOnly(t)
	g := New(sheet.Course(), nil, roughly)
	g.gauge = unheard
	g.Speak([]string{"de-CH"})
	g.kept.Hinted = true
	now, pages := time.Duration(0), 0
	everyPage(g, func(name string) {
		t.Helper()
		pages++
		g.dirty = true
		in := Input{W: 1180, H: 820, Heard: Heard{Item: -1}, Random: 5, Update: true}
		for i := 0; i < 3 || !g.playing.loud.idle() && i < 300; i++ { // laid out; stands; measured, a little a tick
			now += time.Second
			in.Now = now
			g.Update(in)
		}
		drawn := " " + everyWord(g.Scene()) + " "
		for _, sentence := range english {
			if strings.Contains(drawn, " "+sentence+" ") {
				t.Errorf("%s: %q is English", name, sentence)
			}
		}
		if slow := g.page == benchPage && g.bench.slow; g.Idle() == slow {
			t.Errorf("%s: idle is %v", name, g.Idle())
		} else if n := testing.AllocsPerRun(20, func() { g.Update(in) }); n != 0 && !slow {
			t.Errorf("%s: an idle tick makes %v pieces of garbage", name, n)
		}
	})
	t.Logf("%d pages, %d sentences", pages, len(english))
}

// everyWord is all that is drawn and said, each text once, with single spaces.
func everyWord(s *Scene) string {
	words := []string{s.Title, s.Body, s.Say}
	for _, text := range s.Texts {
		words = append(words, text.String)
	}
	for _, text := range s.Over {
		words = append(words, text.String)
	}
	for _, w := range s.Widgets {
		words = append(words, w.Label, w.Face, w.Note, w.Ruler.Text, w.Ruler.MinText, w.Ruler.MaxText)
	}
	for _, c := range s.Charts {
		words = append(words, c.Name, c.X.Label, c.Y.Label)
		for _, k := range c.Key {
			words = append(words, k.Text)
		}
		for _, l := range c.Levels {
			words = append(words, l.Text)
		}
	}
	for _, table := range s.Tables {
		words = append(append(words, table.Name, table.RowsTitle, table.ColumnsTitle), table.Rows...)
	}
	return strings.Join(strings.Fields(strings.Join(words, " ")), " ")
}

var put = regexp.MustCompile(`%[-+# 0-9.\[\]]*[a-z]`)

// englishOnly are the English texts of at least two words, and the stretches of as
// many between what is put in, that are not in the German of any text.
func englishOnly(t *testing.T) (sentences []string) {
	t.Helper()
	files, err := filepath.Glob("../words/german/*.json")
	if err == nil && len(files) == 0 {
		files, err = filepath.Glob("words/german/*.json")
	}
	if err != nil || len(files) < 4 {
		t.Fatalf("%d tables of German: %v", len(files), err)
	}
	german := " "
	var all []string
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var texts map[string]string
		if err := json.Unmarshal(data, &texts); err != nil {
			t.Fatal(err)
		}
		for e, d := range texts {
			german += strings.Join(strings.Fields(d), " ") + " "
			all = append(all, e)
		}
	}
	for _, e := range all {
		for _, part := range put.Split(e, -1) {
			part = strings.Trim(strings.Join(strings.Fields(part), " "), " .,:;()")
			if len(strings.Fields(part)) >= 2 && !strings.Contains(german, part) {
				sentences = append(sentences, part)
			}
		}
	}
	if len(sentences) < 500 {
		t.Fatalf("only %d sentences", len(sentences))
	}
	return sentences
}

// A page that is turned while something sounds comes to rest as well.
func TestTurningWhileItSoundsComesToRest(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	p.game.kept.Hinted = true
	rest := func(name string) {
		t.Helper()
		for range 30 {
			p.listen()
			p.tick()
		}
		if !p.game.Idle() {
			t.Errorf("%s: not idle", name)
		}
	}
	p.open("one-or-two")
	p.listenToQuestion()
	rest("a question heard")
	p.answer("wrong")
	for range 20 {
		p.listen()
		p.tick()
	}
	if p.game.Idle() || !p.game.work.wanted.live {
		t.Error("idle while the answers sound")
	}
	p.pressID("proceed")
	p.listenToQuestion()
	rest("the next question heard")
	p.pressID("contents")
	rest("the sheet")
	p.pressID("course")
	p.pressID("bench")
	p.pressID("yours")
	for range 20 {
		p.listen()
		p.tick()
	}
	p.pressID("course")
	rest("the contents")
	p.pressID("bench")
	rest("the bench")
	p.pressID("sweep 0")
	p.tick(ui.Event{Kind: ui.KeyDown, Key: "Escape"})
	rest("a sweep ended")
}

// A device reports what is heard late: what sounded before a question does not end it.
func TestALateReportDoesNotEndAQuestion(t *testing.T) {
	p := newPlayerOf(t, sheet.Course())
	p.game.kept.Hinted = true
	p.open("same-shapes")
	p.pressID("listen")
	for _, item := range []int{1, 1, -1, -1, -1} { // the end of two sounds in turn
		p.heard.Item = item
		p.tick()
	}
	if p.game.playing.what != toQuestion || p.game.asking.heard {
		t.Error("the question has ended before it began")
	}
	p.heard.Item = -1
	p.listenToQuestion()
}
