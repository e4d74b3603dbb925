package game

import (
	"math"
	"slices"

	"partialcredit/game/mark"
	"partialcredit/synth"
	"partialcredit/synth/take"
)

// Window is how many samples of sound a picture is made from: a third of a
// second, four periods of the lowest notes.
const Window = 16384

const (
	stillAt    = 0.6 // seconds into the note up to which a silent sound is pictured
	analysed   = 8192
	ticksALine = 5 // ticks between two looks at the partials of a live sound
)

// A picture is the trace and the partials of one sound: live while it can be
// heard, still otherwise.
type picture struct {
	sound          synth.Sound
	tape           *take.Take // the recording instead of the sound
	stale          bool
	samples, cycle []float32
	lines          []mark.Line
	live           bool
	age            int // ticks since the partials of a live sound were measured
	note           wholeNote
}

// wholeNote is all of a note, for looking at its moments one by one.
type wholeNote struct {
	sound          synth.Sound
	samples, cycle []float32
}

// still makes the picture that of a silent sound. It is rendered when needed.
func (p *picture) still(s synth.Sound) { p.sound, p.stale = s, true }

// refresh brings the picture up to date and reports whether it has changed.
func (p *picture) refresh(h Heard, live bool) bool {
	if live && p.tape == nil && len(h.Samples) >= analysed {
		p.samples, p.cycle = append(p.samples[:0], h.Samples...), append(p.cycle[:0], h.Cycle...)
		if p.age++; !p.live || p.age >= ticksALine {
			p.age = 0
			p.analyse()
		}
		p.live, p.stale = true, true
		return true
	}
	if !p.stale && !p.live {
		return false
	}
	p.live, p.stale = false, false
	p.render()
	p.analyse()
	return true
}

// moment makes the picture that of one moment of the note, in seconds from its
// start.
func (p *picture) moment(seconds float64) {
	if p.note.samples == nil || p.note.sound != p.sound {
		n := max(int(p.sound.Seconds*Rate), analysed)
		p.note = wholeNote{p.sound, make([]float32, n), make([]float32, n)}
		synth.NewVoice(p.sound, Rate).Render(p.note.samples, p.note.cycle)
	}
	to := max(analysed, min(int(seconds*Rate), len(p.note.samples)))
	from := max(0, to-Window)
	p.samples, p.cycle = append(p.samples[:0], p.note.samples[from:to]...), append(p.cycle[:0], p.note.cycle[from:to]...)
	p.analyse()
	p.stale, p.live = false, false
}

func (p *picture) render() {
	if p.tape != nil {
		p.steady()
		return
	}
	at := min(stillAt, 0.6*p.sound.Seconds)
	if p.sound.Amplitude.Sustain < 0.5 { // a stroke: while it is still loud
		at = min(at, p.sound.Amplitude.Attack+p.sound.Amplitude.Decay)
	}
	n := max(int(at*Rate), analysed)
	samples, cycle := make([]float32, n), make([]float32, n)
	synth.NewVoice(p.sound, Rate).Render(samples, cycle)
	from := max(0, n-Window)
	p.samples, p.cycle = samples[from:], cycle[from:]
}

func (p *picture) analyse() {
	p.lines = mark.Partials(p.samples[len(p.samples)-analysed:], Rate, p.f0())
}

// f0 is the frequency of partial 1; of a recording without one pitch, that of a
// standard sound.
func (p *picture) f0() float64 {
	if p.tape == nil {
		return fundamental(&p.sound)
	}
	if p.tape.Hz == 0 {
		s := synth.Default()
		return fundamental(&s)
	}
	return p.tape.Hz
}

// fundamental is the frequency of partial 1: that of A, or of B where B is
// heard on its own account an octave or more below.
func fundamental(s *synth.Sound) float64 {
	a, b := s.Hz()
	if s.Combine.How == synth.Mix && b < 0.75*a {
		return b
	}
	return a
}

// wave is what there is to draw of the trace. Live samples carry their gain
// already.
func (p *picture) wave(gain, scale float64) Wave {
	if p.live {
		gain = 1
	}
	return Wave{
		Samples: p.samples, Cycle: p.cycle, Rate: Rate, Period: Rate / p.f0(),
		Scale: gain * scale, Live: p.live,
	}
}

// refreshPictures brings the pictures up to date and reports whether either has
// changed.
func (g *Game) refreshPictures() bool {
	if g.scene.Trace == nil {
		return false
	}
	target, yours := g.sounding()
	changed := false
	switch {
	case g.page == benchPage && g.bench.slow:
		changed = g.refreshMoment()
	default:
		changed = g.work.mine.refresh(g.in.Heard, yours)
	}
	if g.targetShown() && g.work.wanted.refresh(g.in.Heard, target) {
		changed = true
	}
	if changed {
		g.align()
		g.putPictures()
	}
	return changed
}

// putPictures puts the pictures into the scene.
func (g *Game) putPictures() {
	if g.scene.Trace == nil {
		return
	}
	target, yours := g.playing.loud.gains()
	tall := max(target*g.playing.loud.target.peak, yours*g.playing.loud.yours.peak, 1e-6)
	scale := 0.8 / tall
	t, p := g.scene.Trace, g.scene.Partials
	t.Yours, p.Yours = g.work.mine.wave(yours, scale), g.work.mine.lines
	switch p.F0 = fundamental(&g.work.target); {
	case g.page == takePage:
		p.F0 = g.work.mine.f0()
	case g.work.wanted.tape != nil:
		p.F0 = g.work.wanted.f0()
	}
	covered := g.page == working && !g.work.uncovered
	t.Covered, p.Covered = covered, covered
	t.Target, p.Target, p.Marked = Wave{}, nil, nil
	if g.targetShown() {
		t.Target, p.Target = g.work.wanted.wave(target, scale), g.work.wanted.lines
	}
	if g.page == marked || g.page == takenPage {
		p.Marked = g.work.result.Partials
		p.Yours = levelled(p.Yours, p.Marked)
	}
}

// levelled moves lines, which are re the strongest of their own sound, to the
// level that the marks compared: re the target's strongest at equal loudness.
func levelled(lines []Line, marked []Verdict) []Line {
	by := 0.0
	for _, l := range lines {
		for _, m := range marked {
			if l.DB == 0 && math.Abs(m.Hz/l.Hz-1) < 0.03 && m.Yours > -60 {
				by = m.Yours
			}
		}
	}
	moved := slices.Clone(lines)
	for i := range moved {
		moved[i].DB += by
	}
	return moved
}

func (g *Game) targetShown() bool {
	return g.page.paired() && (g.page != working || g.work.uncovered)
}
