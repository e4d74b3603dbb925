package synth

import "math"

const (
	glideTime = 0.020 // seconds a control takes to reach where it was set
	crossfade = 0.015 // seconds between two settings that have nothing between
)

// A glide takes the controls to where they were set, each in a straight line.
// Choices, length and seed change at once: see [Voice.Set].
type glide struct {
	now     Sound
	goal    Sound
	scratch Sound
	move    [64]float64 // per tick, in the order of the fields
	left    int         // ticks to go
	all     int         // ticks of a whole glide
}

// glides says which fields move in a straight line.
func glides(f *Field) bool {
	return len(f.Choices) == 0 && f.Name != "seconds" && f.Name != "seed"
}

// start puts the controls where s has them.
func (g *glide) start(s Sound, rate float64) {
	*g = glide{goal: s, all: max(1, int(math.Round(glideTime*rate/tick)))}
	clamp(&g.goal)
	g.now = g.goal
}

// set brings goal into its ranges and starts towards it.
func (g *glide) set(goal Sound) {
	g.scratch = goal
	clamp(&g.scratch)
	if g.scratch == g.goal {
		return
	}
	g.goal, g.scratch, g.left = g.scratch, g.now, g.all
	g.now = g.goal
	for i := range fields {
		if f := &fields[i]; glides(f) {
			from := f.Get(&g.scratch)
			g.move[i] = (f.Get(&g.goal) - from) / float64(g.all)
			f.Set(&g.now, from)
		}
	}
}

func (g *glide) advance() {
	switch {
	case g.left == 0:
		return
	case g.left == 1:
		g.now = g.goal
	default:
		for i := range fields {
			if f := &fields[i]; g.move[i] != 0 && glides(f) {
				f.Set(&g.now, f.Get(&g.now)+g.move[i])
			}
		}
	}
	g.left--
}

// clamp brings every field into its range, whatever was there.
func clamp(s *Sound) {
	s.Version = Version
	for i := range fields {
		f := &fields[i]
		f.Set(s, f.Clamp(f.Get(s)))
	}
}

// clampRate returns a sample rate in hertz that filters can be made for.
func clampRate(rate float64) float64 {
	if !(rate >= 8000) { // also NaN
		return 8000
	}
	return math.Min(rate, 768000)
}
