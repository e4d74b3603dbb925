package game

import (
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// A Game is a learner at work on a course of sheets.
type Game struct {
	course    []*sheet.Sheet // and, behind the first built of them, what was given
	built     int
	measure   ui.Measure
	preferred []string // languages of the browser
	lang      *words.Language

	page     page
	over     overlay
	at       place
	work     work
	asking   asking
	session  session
	bench    bench
	sweep    sweep
	playing  playing
	kept     progress
	cabinet  cabinet
	marks    markBook
	making   making
	trial    trial
	advised  advised
	heard    heard
	giving   *sheet.Sheet // what is handed out
	handout  handout
	printing *printing // what is being made for the printer; nil where nothing is
	naming   naming
	slip     *slip.Slip // on its page; nil until it is made
	coded    coded
	large    bool          // the code fills the screen
	spare    time.Duration // spent on an exercise, less than a second

	scanning scanning
	taking   taking
	unread   []byte // progress that could not be read
	offered  []byte // progress from a file, until the learner says what to do with it
	part     int    // of a list or of the help: what is on the screen
	view     int    // of the progress: marks, confusions or limits
	wishes   []Wish

	in       Input
	hands    ui.Hands
	focus    string
	last     time.Duration // when a person last did something
	opened   time.Duration // when the page was opened
	scene    Scene
	say      string
	dirty    bool // the scene must be laid out anew
	revision int
	layouts  int
	saved    int
	filed    int // changes with the cabinet
	serial   int // of questions, since the program started
	markers  map[string]*mark.Reference
	levels   map[synth.Sound]level
	gauge    func(synth.Sound) level
}

// A place is where a learner is in the course.
type place struct{ sheet, exercise int }

// New opens a course where saved left it. A nil or damaged saved state starts
// anew, and says so where something was damaged.
func New(course []*sheet.Sheet, saved []byte, measure ui.Measure) *Game {
	g := &Game{course: course, built: len(course), measure: measure, lang: words.English, dirty: true}
	g.markers, g.levels, g.gauge = map[string]*mark.Reference{}, map[synth.Sound]level{}, gauge
	g.restore(saved)
	return g
}

// Speak chooses the language by what the browser says its user prefers, as long
// as the learner has not chosen another.
func (g *Game) Speak(preferred []string) {
	g.preferred = preferred
	g.chooseLanguage()
}

func (g *Game) chooseLanguage() {
	l := words.Choose(append([]string{g.kept.Language}, g.preferred...))
	g.dirty = g.dirty || l != g.lang
	g.lang = l
}

// Language is the BCP 47 tag of what the game speaks.
func (g *Game) Language() string { return g.lang.Tag }

// t puts a text of the program into the learner's language.
func (g *Game) t(format string, args ...any) string { return g.lang.Say(format, args...) }

// Update takes the input of one tick.
func (g *Game) Update(in Input) {
	if in.W != g.in.W || in.H != g.in.H {
		g.dirty = true
		g.hands.LetGo() // what a finger held is elsewhere now
	}
	g.dirty = g.dirty || in.Audio != g.in.Audio || in.Update != g.in.Update || in.Date.YearDay() != g.in.Date.YearDay()
	g.in = in
	for _, e := range in.Events {
		g.spend(in.Now - g.last)
		g.last = in.Now
		if g.dirty {
			g.layout() // the next event may concern what the last one changed
		}
		g.event(e)
	}
	g.rest()
	g.follow()
	g.move()
	g.pass()
	g.takeTurns()
	g.getOn()
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
	g.advise()
	g.writePaper()
	g.markSlips()
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
		g.dirty = g.dirty || a.Typed // what the game did not take is put right in the field
	}
}

// Scene is what to draw; it holds until the next Update.
func (g *Game) Scene() *Scene { return &g.scene }

// Revision changes when the scene has changed.
func (g *Game) Revision() int { return g.revision }

// Idle reports that nothing goes on: until a person does something the next
// tick changes nothing.
func (g *Game) Idle() bool {
	return g.playing.what == silence && g.in.Heard.Item < 0 && g.playing.loud.idle() && !g.sweep.on && !(g.page == benchPage && g.bench.slow) &&
		!g.work.mine.live && !g.work.wanted.live && !g.dirty && g.printing == nil && g.taking.soon == nil && g.toAdvise() < 0 && !g.toMark() && (g.page != working || g.markers[g.exercise().ID] != nil)
}

// Layout changes when more of the scene has changed than its pictures.
func (g *Game) Layout() int { return g.layouts }

// Tell lays a note over the page: something is wrong, and what to do.
func (g *Game) Tell(s string) {
	g.say, g.over, g.dirty = g.t(s), note, true
}

func (g *Game) sheet() *sheet.Sheet { return g.course[g.at.sheet] }

func (g *Game) exercise() *sheet.Exercise { return &g.sheet().Exercises[g.at.exercise] }

// find looks an exercise up by its id.
func (g *Game) find(id string) (place, bool) {
	for i, s := range g.course {
		for j := range s.Exercises {
			if s.Exercises[j].ID == id {
				return place{i, j}, true
			}
		}
	}
	return place{}, false
}

// show turns to a page.
func (g *Game) show(p page) {
	g.stop()
	g.work.mine.live, g.work.wanted.live = false, false // they are stale, and drawn still when they are seen again
	g.sweep = sweep{}
	g.printing = nil
	g.dropRecording()
	g.forget()
	if !p.ofRecording() {
		g.taking = taking{}
	}
	if p == givePage && g.giving != nil && g.page != givePage {
		g.handout = handout{from: g.page}
	}
	if p == bookPage && g.marks.book != nil {
		if since := g.openKnown(); len(since) > 0 { // a sheet has come
			defer g.tellNews(g.became(since))
		}
	}
	g.page, g.opened, g.dirty, g.part, g.large, g.slip = p, g.in.Now, true, 0, false, nil
	g.keep()
}

// open shows an exercise, from its start or from where the learner left it.
func (g *Game) open(at place) {
	g.leave()
	g.at = at
	if s := g.own(); s != nil {
		if g.touched(); s.Name == "" && s.sheet.Vary {
			g.askName(naming{exercise: at.exercise})
			return
		}
	}
	e := g.exercise()
	switch e.Kind {
	case sheet.Match, sheet.Show:
		g.work = newWork(e)
		if e.Kind == sheet.Show {
			g.playing.loud = g.alone(g.work.yours)
			g.show(showing)
			break
		}
		g.playing.loud = g.pair(e.Target, g.work.yours)
		g.show(working)
		g.resume(g.kept.Left[e.ID])
	default:
		g.openRun()
	}
}

// next opens the exercise after this one, or the sheet after the last; in
// practice, whatever is asked next.
func (g *Game) next() {
	if g.session.on {
		g.practise()
		return
	}
	g.work.heard = true // a demonstration that is passed counts as seen
	if g.at.exercise+1 < len(g.sheet().Exercises) {
		g.open(place{g.at.sheet, g.at.exercise + 1})
		return
	}
	g.leave()
	if g.own() == nil {
		g.at.sheet = min(g.at.sheet+1, min(g.built, len(g.course))-1)
	}
	g.at.exercise = 0
	g.show(sheetPage)
}
