package game

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// TestPlays replays the scripts of testdata/play; see its README.
func TestPlays(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../testdata/play/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatalf("no play scripts: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			f, err := os.Open(file)
			if err != nil {
				t.Fatal(err)
			}
			defer f.Close()
			p := newPlayer(t)
			for n, lines := 1, bufio.NewScanner(f); lines.Scan(); n++ {
				if line := strings.TrimSpace(lines.Text()); line != "" && line[0] != '#' {
					p.where = fmt.Sprintf("%s:%d: %s", filepath.Base(file), n, line)
					p.do(line)
				}
			}
		})
	}
}

// player is a learner with a screen, a finger, a keyboard and ears.
type player struct {
	t       *testing.T
	where   string
	game    *Game
	w, h    float64
	now     time.Duration
	speaker *synth.Player
	program synth.Program
	heard   Heard
	date    time.Time
	random  uint64
	course  []*sheet.Sheet
	kept    remembered
}

// sixteen is a course of one sheet of sixteen matches, which scripts and tests can
// rely on.
func sixteen(t testing.TB) []*sheet.Sheet {
	t.Helper()
	data, err := os.ReadFile("../testdata/sheets/sixteen.json")
	if err != nil {
		t.Fatal(err)
	}
	s, err := sheet.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return []*sheet.Sheet{s}
}

const tick = time.Second / 60

// roughly measures text without a font: the Go fonts are about this wide.
func roughly(s string, size float64, bold bool) float64 {
	return 0.56 * size * float64(len([]rune(s)))
}

func newPlayer(t *testing.T) *player {
	return newPlayerOf(t, sixteen(t))
}

func newPlayerOf(t *testing.T, course []*sheet.Sheet) *player {
	p := &player{t: t, w: 1180, h: 820, speaker: synth.NewPlayer(Rate), course: course, random: 1}
	p.date = time.Date(2026, 3, 2, 17, 0, 0, 0, time.UTC)
	p.heard = Heard{Samples: make([]float32, Window), Cycle: make([]float32, Window), Item: -1}
	p.game = New(p.course, nil, roughly)
	p.game.gauge = gaugeOnce
	p.tick()
	return p
}

var gauged sync.Map // of what gauge has found, by the sound

// gaugeOnce is gauge, which takes longest of all that a page does, once for all tests and players: the
// loudness of a sound is that of the sound alone.
func gaugeOnce(s synth.Sound) level {
	l, ok := gauged.Load(s)
	if !ok {
		l, _ = gauged.LoadOrStore(s, gauge(s))
	}
	return l.(level)
}

func (p *player) tick(events ...ui.Event) {
	for i := range events {
		events[i].At = p.now
	}
	p.random = p.random*6364136223846793005 + 1442695040888963407
	p.game.Update(Input{Now: p.now, Date: p.date, Random: p.random, W: p.w, H: p.h, Events: events, Heard: p.heard, Audio: Running})
	p.now += tick
}

// listen lets the speaker play one tick.
func (p *player) listen() {
	const n = Rate / 60
	p.speaker.Play(p.game.Program())
	copy(p.heard.Samples, p.heard.Samples[n:])
	copy(p.heard.Cycle, p.heard.Cycle[n:])
	p.speaker.Render(p.heard.Samples[Window-n:], p.heard.Cycle[Window-n:])
	p.heard.Item, _ = p.speaker.Sounding()
}

func (p *player) widget(label string) ui.Widget {
	p.t.Helper()
	for _, w := range p.game.Scene().Widgets {
		if (w.Label == label || w.Face == label) && !w.NoTab {
			return w
		}
	}
	for _, w := range p.game.Scene().Widgets {
		if w.Label == label {
			return w
		}
	}
	p.t.Fatalf("%s: nothing on the screen is called %q", p.where, label)
	return ui.Widget{}
}

func (p *player) press(w ui.Widget) {
	x, y := w.Rect.X+w.Rect.W/2, w.Rect.Y+w.Rect.H/2
	p.tick(ui.Event{Kind: ui.PointerDown, X: x, Y: y})
	p.tick(ui.Event{Kind: ui.PointerUp, X: x, Y: y})
}

func (p *player) drag(w ui.Widget, v float64) {
	s := w.Ruler.Scale
	y := w.Rect.Y + w.Rect.H/2
	from, to := s.X+w.Ruler.Fraction()*s.W, s.X+w.Ruler.Pos(v)*s.W
	p.tick(ui.Event{Kind: ui.PointerDown, X: from, Y: y})
	for i := 1; i <= 10; i++ {
		p.tick(ui.Event{Kind: ui.PointerMove, X: from + (to-from)*float64(i)/10, Y: y})
	}
	p.tick(ui.Event{Kind: ui.PointerUp, X: to, Y: y})
}

func (p *player) do(line string) {
	p.t.Helper()
	verb, rest, _ := strings.Cut(line, " ")
	switch verb {
	case "screen":
		fmt.Sscan(rest, &p.w, &p.h)
		p.tick()
	case "press":
		p.press(p.widget(rest))
	case "drag":
		label, v, _ := strings.Cut(rest, " to ")
		p.drag(p.widget(label), p.number(v))
	case "key":
		p.key(rest)
	case "wait":
		for n := int(p.number(rest) * 60); n > 0; n-- {
			p.listen()
			p.tick()
		}
	case "reload":
		p.reload()
	case "expect":
		p.expect(rest)
	default:
		p.study(verb, rest)
	}
}

func (p *player) key(rest string) {
	p.t.Helper()
	name, label, _ := strings.Cut(rest, " on ")
	name, times, _ := strings.Cut(name, " x")
	n := 1
	if times != "" {
		n = int(p.number(times))
	}
	e := ui.Event{Kind: ui.KeyDown, Widget: p.widget(label).ID}
	e.Key, e.Shift = strings.TrimPrefix(name, "Shift+"), strings.HasPrefix(name, "Shift+")
	for range n {
		p.tick(e)
	}
}

func (p *player) expect(rest string) {
	p.t.Helper()
	g := p.game
	fail := func(got any) { p.t.Helper(); p.t.Fatalf("%s: got %v", p.where, got) }
	what, value, _ := strings.Cut(rest, " ")
	switch what {
	case "page":
		if pageNames[g.page] != value {
			fail(pageNames[g.page])
		}
	case "exercise":
		if g.exercise().ID != value {
			fail(g.exercise().ID)
		}
	case "marks":
		var from, to float64
		fmt.Sscan(value, &from, &to)
		if m := g.shownMarks(); m < from || m > to {
			fail(m)
		}
	case "reason":
		if len(g.work.result.Reasons) == 0 || !strings.Contains(g.work.result.Reasons[0].Text.String(), value) {
			fail(g.work.result.Reasons)
		}
	case "sound":
		name := map[listening]string{silence: "none", toTarget: "target", toYours: "yours", inTurn: "both", toQuestion: "question"}[g.playing.what]
		if name != value {
			fail(name)
		}
	case "covered", "uncovered":
		if shown := len(g.scene.Trace.Target.Samples) > 0; shown != (what == "uncovered") {
			fail(shown)
		}
	default:
		if p.expectOfCourse(what, value) {
			return
		}
		label, v := rest[:strings.LastIndex(rest, " ")], rest[strings.LastIndex(rest, " ")+1:]
		r := p.widget(label).Ruler
		step := r.Step
		if r.Log {
			step = r.Value * (r.Step - 1)
		}
		if math.Abs(r.Value-p.number(v)) > step*1.01 {
			fail(r.Value)
		}
	}
}

func (p *player) number(s string) float64 {
	p.t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		p.t.Fatalf("%s: %v", p.where, err)
	}
	return v
}
