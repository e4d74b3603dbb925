package speaker

import (
	"math"
	"testing"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

func TestRemoteKeepsTheContract(t *testing.T) {
	for _, latency := range []int{0, 480, 1920, 9600} {
		for _, burst := range []int{1, 4, 16} {
			// Behind by what of a block is not there yet, its way, and a burst.
			lag := max(0, int64(blockLength+96+burst*quantum-latency)) + int64(burst*quantum)
			testContract(t, lag, func() rig {
				a := newAfar(aCount)
				a.latency, a.burst = latency, burst
				return a
			})
		}
	}
}

// The whole way with the real engine: what the ear hears of a program is what a
// player gives for it.
func TestTheEarHearsThePlayerAfar(t *testing.T) {
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.state = "running"
	a.SetVolume(0.5)
	a.advance(time.Second)
	p := synth.Program{Items: []synth.Item{{ID: 7, Sound: synth.Default(), Gain: 0.2}}, Gap: 0.1}
	a.Play(p)
	a.advance(a.way)
	rendered := len(a.played)
	a.advance(time.Second)

	want := make([]float32, Rate/2)
	reference := synth.NewPlayer(Rate)
	reference.Render(make([]float32, rendered), nil)
	reference.Play(p)
	reference.Render(want, nil)
	peak := 0.0
	for i, v := range want {
		peak = math.Max(peak, math.Abs(float64(v)))
		if got := a.played[rendered+i]; got != v/2 {
			t.Fatalf("sample %d is %v, want %v", i, got, v/2)
		}
	}
	if peak < 0.01 {
		t.Errorf("a peak of %v: nothing was compared", peak)
	}
	w := newWindow(1000)
	a.Heard(w)
	if w.Item != 0 || w.Seconds < 0.5 || w.Seconds > 1 {
		t.Errorf("item %d for %v s", w.Item, w.Seconds)
	}
}

func TestSilenceIsToldOnce(t *testing.T) {
	a := newAfar(func() engine.Player { return synth.NewPlayer(Rate) })
	a.state = "running"
	a.SetVolume(1)
	note := synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.2}}}
	w := newWindow(4096)
	for range 2 {
		a.Play(note)
		a.advance(time.Second)
		if a.Heard(w); w.Item != 0 {
			t.Fatalf("item %d while a note sounds", w.Item)
		}
		a.Play(synth.Program{})
		a.advance(4 * time.Second)
		if a.Heard(w); w.Item != -1 {
			t.Errorf("item %d in silence", w.Item)
		}
		for i, v := range w.Samples {
			if v != 0 {
				t.Fatalf("sample %d of silence is %v", i, v)
			}
		}
		a.advance(10 * time.Second)
		if len(a.back) > 0 {
			t.Errorf("%d blocks of silence came back within ten seconds", len(a.back))
		}
	}
}

func TestHeardAfterThePageStoodStill(t *testing.T) {
	a := newAfar(aCount)
	a.state = "running"
	a.SetVolume(1)
	a.advance(time.Second)
	w := newWindow(4096)
	a.Heard(w)
	a.stuck = true
	a.advance(10 * time.Second)
	a.stuck = false
	a.Heard(w)
	for range 100 {
		a.advance(5 * time.Millisecond)
		a.Heard(w)
	}
	end := int64(w.Samples[len(w.Samples)-1])
	if ear := int64(len(a.ear())); end > ear || end < ear-8*quantum {
		t.Errorf("heard up to sample %d, the ear up to %d", end, ear)
	}
	for i, v := range w.Samples {
		if want := float32(end - int64(len(w.Samples)-1-i)); v != want {
			t.Fatalf("sample %d of the window is number %v, want %v", i, v, want)
		}
	}
}

func TestAnotherDeviceBeginsAnew(t *testing.T) {
	a := newAfar(aCount)
	a.state = "running"
	a.SetVolume(1)
	a.advance(5 * time.Second)
	w := newWindow(1)
	a.Heard(w)
	a.renew()
	a.advance(time.Second)
	a.Heard(w)
	if ear := float32(len(a.ear())); w.Samples[0] > ear || w.Samples[0] < ear-8*quantum {
		t.Errorf("heard up to sample %v, the ear up to %v", w.Samples[0], ear)
	}
	if last := a.played[len(a.played)-1]; last != float32(len(a.played)) {
		t.Errorf("the volume did not come along: sample %d is %v", len(a.played), last)
	}
}

func TestStatesOfARemote(t *testing.T) {
	a := newAfar(aCount)
	check := func(what string, want State, fails bool) {
		t.Helper()
		if got, err := a.State(), a.Err(); got != want || (err != nil) != fails {
			t.Errorf("%s: state %d with error %v, want %d", what, got, err, want)
		}
	}
	check("before a gesture", Waiting, false)
	a.state, a.engine = "running", "loading"
	a.advance(10 * time.Second)
	check("while the engine is loading", Waiting, false)
	a.engine = "ready"
	a.advance(time.Second)
	check("running", Running, false)
	a.state = "interrupted"
	check("interrupted", Suspended, false)
	a.state = "running"
	for range 100 { // its clock stands still
		a.now += 50 * time.Millisecond
		a.State()
	}
	check("a device whose clock stands still", Failed, true)
	a.advance(time.Second)
	check("it goes on after all", Running, false)
	a.state = "closed"
	check("closed", Failed, true)
}
