package speaker

import (
	"testing"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

func TestChoiceKeepsTheContract(t *testing.T) {
	t.Run("with the engine", func(t *testing.T) {
		testContract(t, int64(8*quantum), func() rig {
			a := newAfar(aCount)
			a.Speaker = newChoice(a, a, func() Speaker {
				t.Error("the other way was opened")
				return a.Speaker
			})
			return a
		})
	})
	t.Run("without", func(t *testing.T) {
		testContract(t, int64(4*quantum), func() rig {
			s := newSimulation(&counting{}, 4096)
			a := newAfar(aCount)
			a.engine = "failed"
			return &fallen{s, newChoice(s, a, func() Speaker { return s.deck })}
		})
	})
}

// A fallen is a simulation of Oto behind a choice.
type fallen struct {
	*simulation
	choice *choice
}

func (f *fallen) speaker() Speaker {
	f.choice.State()
	return f.choice
}

func TestChoiceTakesAlongWhatPlays(t *testing.T) {
	s := newSimulation(synth.NewPlayer(Rate), 4096)
	s.state = "running"
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.engine = "loading"
	opened := 0
	c := newChoice(s, a, func() Speaker { opened++; return s.deck })
	c.Play(synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.1}}})
	c.SetVolume(0.5)
	if c.State() != Waiting || opened != 0 {
		t.Errorf("while the engine is loading: state %d, Oto opened %d times", c.State(), opened)
	}
	a.engine = "failed"
	for range 3 {
		c.State()
	}
	s.advance(2 * time.Second)
	loudest := float32(0)
	for _, v := range s.ear() {
		loudest = max(loudest, v)
	}
	if c.State() != Running || opened != 1 || loudest == 0 {
		t.Errorf("after the engine has failed: state %d, Oto opened %d times, peak %v", c.State(), opened, loudest)
	}
}
