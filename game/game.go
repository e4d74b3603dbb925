package game

import (
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// A Game is a learner at work on a sheet.
type Game struct {
	sheet   *sheet.Sheet
	measure ui.Measure

	page     pageKind
	over     overlay
	current  int // which exercise
	work     work
	handedIn bool // the attempt in work
	playing  playing
	kept     progress
	pager    int // which part of the contents is on the screen

	in       Input
	hands    ui.Hands
	focus    string
	last     time.Duration // when a person last did something
	opened   time.Duration // when the exercise was opened
	scene    Scene
	say      string
	dirty    bool // the scene must be laid out anew
	revision int
	layouts  int
	saved    int
	markers  map[int]*mark.Reference
}

type pageKind int

const (
	contents pageKind = iota
	working
	marked
)

// An overlay is what lies over the page.
type overlay int

const (
	noOverlay overlay = iota
	volumeHint
	eraseQuestion
	note // what the learner must be told: say
)

// work is what the learner has done with the current exercise.
type work struct {
	yours     synth.Sound
	uncovered bool // by the learner, before handing in
	result    mark.Result
	marks     float64 // after the cap
	target    picture
	mine      picture
}

// UncoveredCap is the most marks for a target that was uncovered before it was
// handed in.
const UncoveredCap = 80

// New opens a sheet where saved left it. A nil or damaged saved state starts
// anew, and says so where something was damaged.
func New(s *sheet.Sheet, saved []byte, measure ui.Measure) *Game {
	g := &Game{sheet: s, measure: measure, dirty: true, markers: map[int]*mark.Reference{}}
	g.restore(saved)
	return g
}

// Update takes the input of one tick.
func (g *Game) Update(in Input) {
	if in.W != g.in.W || in.H != g.in.H {
		g.dirty = true
		g.hands.LetGo() // what a finger held is elsewhere now
	}
	g.dirty = g.dirty || in.Audio != g.in.Audio
	g.in = in
	for _, e := range in.Events {
		g.last = in.Now
		if g.dirty {
			g.layout() // the next event may concern what the last one changed
		}
		g.event(e)
	}
	g.rest()
	if g.playing.loud.work(workPerTick) {
		g.putPictures() // to the new scale
		g.revision++
	}
	if g.dirty {
		g.layout()
		return
	}
	if g.refreshPictures() {
		g.revision++
	}
	g.prepare()
}

// prepare measures the target once the page stands and nothing sounds, so that
// handing in need not.
func (g *Game) prepare() {
	if g.page == working && g.playing.what == silence && g.in.Heard.Item < 0 && g.in.Now-g.opened > settle {
		g.marker()
	}
}

// settle is how long a page stands before the target is measured, which takes
// longer than a frame: a design choice.
const settle = 250 * time.Millisecond

func (g *Game) event(e ui.Event) {
	switch e.Kind {
	case ui.Focus:
		if g.focus != e.Widget {
			g.focus, g.dirty = e.Widget, true
		}
		return
	case ui.KeyDown:
		if g.shortcut(e) {
			return
		}
	}
	if a, ok := g.hands.Take(e, g.scene.Widgets); ok {
		g.act(a)
	}
}

// Scene is what to draw; it holds until the next Update.
func (g *Game) Scene() *Scene { return &g.scene }

// Revision changes when the scene has changed.
func (g *Game) Revision() int { return g.revision }

// Idle reports that nothing goes on: until a person does something the next
// tick changes nothing.
func (g *Game) Idle() bool {
	return g.playing.what == silence && g.in.Heard.Item < 0 && g.playing.loud.idle() &&
		!g.work.mine.live && !g.work.target.live && !g.dirty && (g.page != working || g.markers[g.current] != nil)
}

// Layout changes when more of the scene has changed than its pictures.
func (g *Game) Layout() int { return g.layouts }

// Tell lays a note over the page: something is wrong, and what to do.
func (g *Game) Tell(s string) {
	g.say, g.over, g.dirty = s, note, true
}

func (g *Game) exercise() *sheet.Exercise { return &g.sheet.Exercises[g.current] }

// open shows an exercise, from its start or from where the learner left it.
func (g *Game) open(i int) {
	g.leave()
	g.handedIn = false
	g.current, g.page, g.opened, g.dirty = i, working, g.in.Now, true
	g.stop()
	e := g.exercise()
	g.work = work{yours: e.Start()}
	g.work.target.still(e.Target)
	g.work.mine.still(g.work.yours)
	g.playing.loud = newLoud(e.Target, g.work.yours)
	g.resume(g.kept.Left[e.ID])
	g.keep()
}

// set moves a control of the learner's sound.
func (g *Game) set(control int, v float64) {
	c := &g.exercise().Controls[control]
	before := c.Get(&g.work.yours)
	c.Set(&g.work.yours, v)
	if c.Get(&g.work.yours) == before {
		return
	}
	g.work.mine.still(g.work.yours)
	g.playing.loud.change(g.work.yours)
	g.dirty = true
	g.keep()
}

// handIn marks the learner's sound and keeps the marks.
func (g *Game) handIn() {
	g.grade()
	g.kept.add(g.exercise().ID, g.work.marks)
	g.say = g.verdict()
	g.keep()
}

// grade marks the learner's sound.
func (g *Game) grade() {
	g.stop()
	g.playing.loud.yours.finish()
	g.work.result = g.marker().Mark(g.work.yours, g.sheet.Strictness.Times())
	g.work.marks = g.work.result.Marks
	if g.work.uncovered {
		g.work.marks = min(g.work.marks, UncoveredCap)
	}
	g.page, g.handedIn, g.dirty = marked, true, true
}

// marker measures the target of the current exercise once.
func (g *Game) marker() *mark.Reference {
	r, ok := g.markers[g.current]
	if !ok {
		r = mark.Prepare(g.exercise().Target)
		g.markers[g.current] = r
	}
	return r
}

// again goes back to work on a marked exercise, from where it was handed in.
func (g *Game) again() {
	g.stop()
	g.work.uncovered, g.handedIn = false, false
	g.page, g.dirty = working, true
	g.keep()
}

// next opens the exercise after this one, or the contents after the last.
func (g *Game) next() {
	if g.current+1 < len(g.sheet.Exercises) {
		g.open(g.current + 1)
		return
	}
	g.contents()
}

func (g *Game) contents() {
	g.stop()
	g.page, g.dirty = contents, true
	g.keep()
}
