package speaker

import (
	"math"
	"testing"
	"time"

	"partialcredit/synth"
)

// The whole way with the real engine: what the ear hears of a program is what
// a player gives for it.
func TestTheEarHearsThePlayer(t *testing.T) {
	p := synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.2}}}
	s := newSimulation(synth.NewPlayer(Rate), 4096)
	s.announces, s.state = true, "running"
	s.deck.SetVolume(0.5)
	s.advance(time.Second) // the volume has come up
	rendered := s.deck.memory.rendered
	s.deck.Play(p)
	s.advance(time.Second)

	want := make([]float32, Rate/2)
	reference := synth.NewPlayer(Rate)
	reference.Render(make([]float32, rendered), nil)
	reference.Play(p)
	reference.Render(want, nil)
	ear := s.ear()[rendered:]
	peak := 0.0
	for i, v := range want[:min(len(want), len(ear))] {
		peak = math.Max(peak, math.Abs(float64(v)))
		if ear[i] != v/2 {
			t.Fatalf("sample %d is %v, want %v", i, ear[i], v/2)
		}
	}
	if peak < 0.01 || len(ear) < Rate/2 {
		t.Errorf("%d samples with a peak of %v: nothing was compared", len(ear), peak)
	}
	w := newWindow(1000)
	s.deck.Heard(w)
	if w.Item != 0 || w.Seconds < 0.5 || w.Seconds > 1 {
		t.Errorf("item %d for %v s", w.Item, w.Seconds)
	}
}
