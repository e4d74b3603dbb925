package game

import (
	"slices"
	"strings"
	"time"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// bench is what goes on in free play, besides the sound itself.
type bench struct {
	part    int // which of the parts of the voice is on the screen
	touched int // the control that was set last: the one to sweep
	slow    bool
	moment  float64 // of the note, in seconds, that is looked at in slow motion
	shown   float64 // the one that is pictured
	last    time.Duration
	sound   synth.Sound // the one that is pictured
}

// slowness is how many times slower than it sounds a note passes in slow motion: a
// vibrato of 6 Hz then takes about three seconds for one swing.
const slowness = 20

// benchParts are the parts of the voice as they lie on the bench.
var benchParts = []struct {
	name   string
	fields []string
}{
	{"Oscillator A", []string{"a.shape", "a.footage", "a.cents", "a.duty", "a.level", "a.phase"}},
	{"Oscillator B", []string{"b.shape", "b.footage", "b.cents", "b.duty", "b.level", "b.phase"}},
	{"A with B", []string{"combine.how", "combine.balance", "combine.ratio", "combine.depth", "combine.index"}},
	{"LFO", []string{"lfo.shape", "lfo.hz", "lfo.duty", "lfo.cents", "lfo.level", "lfo.fade", "lfo.phase"}},
	{"Fall", []string{"envelope.seconds", "envelope.a", "envelope.b", "envelope.depth"}},
	{"Envelope", []string{"amplitude.attack", "amplitude.decay", "amplitude.sustain", "amplitude.release"}},
	{"Note", []string{"note", "seconds", "character", "seed"}},
}

// heardIn says in which ways to combine a field does anything; fields that are
// missing always do.
var heardIn = map[string][]synth.How{
	"combine.balance": {synth.Mix},
	"combine.ratio":   {synth.Ring, synth.AM, synth.FM, synth.Sync},
	"combine.depth":   {synth.AM},
	"combine.index":   {synth.FM},
	"envelope.depth":  {synth.AM, synth.FM},
}

// mostSeed bounds the ruler of the seed, whose whole range no finger could set.
const mostSeed = 99

// benchControls is a control for every field, in the order of the parts.
func benchControls() (controls []sheet.Control) {
	for _, part := range benchParts {
		for _, name := range part.fields {
			if f, ok := synth.FieldByName(name); ok {
				c := sheet.FieldControl(f)
				if name == "seed" {
					c.Max = mostSeed
				}
				controls = append(controls, c)
			}
		}
	}
	return controls
}

// benchStart is what lies on the bench at first: two sawtooths that beat slowly.
func benchStart() synth.Sound {
	s := synth.Default()
	s.Combine.How, s.B.Cents, s.Seconds = synth.Mix, 7, 4
	return s
}

// openBench lays the bench out as it was left.
func (g *Game) openBench() {
	g.leave()
	s := benchStart()
	if g.kept.Bench != nil {
		s = *g.kept.Bench
	}
	g.lay(s)
}

// lay puts a sound on the bench.
func (g *Game) lay(s synth.Sound) {
	g.endTrial()
	g.cabinet.Desk.Slot = ""
	s.Seed = min(s.Seed, mostSeed)
	g.show(benchPage)
	g.bench = bench{part: g.bench.part}
	g.work = compare(s, s, benchControls())
	g.playing.loud = g.alone(s)
	g.kept.Bench = &s
	g.keep()
}

// onBench keeps what was set.
func (g *Game) onBench(control int) {
	g.bench.touched = control
	s := g.work.yours
	g.kept.Bench = &s
	g.work.target = s // it has none: the axis of the partials is its own
}

// benchRulers are the controls of a part that do something in the present sound.
func (g *Game) benchRulers(part int) (controls []int) {
	for i := range g.work.controls {
		c := &g.work.controls[i]
		for _, name := range benchParts[part].fields {
			if name == c.Fields[0] && g.matters(name) {
				controls = append(controls, i)
			}
		}
	}
	return controls
}

func (g *Game) matters(name string) bool {
	s := &g.work.yours
	if strings.HasPrefix(name, "b.") || name == "envelope.b" {
		return s.Combine.How != synth.OnlyA
	}
	switch name {
	case "a.duty":
		return s.A.Shape == synth.Pulse
	case "seed":
		return s.Character > 0
	}
	ways, some := heardIn[name]
	return !some || slices.Contains(ways, s.Combine.How)
}

// pass lets time pass in slow motion.
func (g *Game) pass() {
	b := &g.bench
	if g.page != benchPage || !b.slow || g.over != noOverlay {
		return
	}
	b.moment += (g.in.Now - b.last).Seconds() / slowness
	b.last = g.in.Now
	if b.moment > g.work.yours.Seconds {
		b.moment = 0
	}
	if b.due() {
		g.dirty = true // its ruler moves too
	}
}

// momentEvery is how far apart the moments are that are pictured, in seconds.
const momentEvery = 1.0 / 20 / slowness

// due says that the moment has moved on from the one that is pictured.
func (b *bench) due() bool { return b.moment < b.shown || b.moment-b.shown >= momentEvery }

// refreshMoment pictures the present moment of slow motion.
func (g *Game) refreshMoment() bool {
	b := &g.bench
	if b.sound == g.work.yours && !b.due() {
		return false
	}
	b.shown, b.sound = b.moment, g.work.yours
	g.work.mine.moment(b.moment)
	return true
}

// Follow opens what a link leads to: the fragment of the page's address.
func (g *Game) Follow(fragment string) {
	if strings.TrimPrefix(fragment, "#") == "" {
		return
	}
	kind, data, err := link.Unpack(fragment)
	switch {
	case kind == link.Slip || err != nil && g.holdsSlips(fragment):
		g.takeSlip(fragment)
	case err != nil:
		g.Tell(err.Error())
	case kind == link.Sheet:
		g.followToSheet(data)
	default:
		s, err := sheet.ReadSoundFragment(fragment)
		if err != nil {
			g.Tell(err.Error())
			return
		}
		g.leave()
		g.session = session{}
		g.lay(s)
	}
}

func (g *Game) followToSheet(data []byte) {
	s, err := sheet.Parse(data)
	if err != nil {
		g.Tell(g.t("The sheet in this link cannot be used: %s. Tell whoever gave it to you.", plainly(g.wrong(err))))
		return
	}
	g.receive(s)
}
