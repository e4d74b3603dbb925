package speaker

import (
	"math"
	"testing"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// A rig is a speaker in a world whose time a test moves. Its samples are those
// of a [counting] player: sample n of what reaches the ear is n times the
// volume.
type rig interface {
	speaker() Speaker
	advance(time.Duration)
	suspend(bool)   // the system takes the device, or gives it back
	ear() []float32 // everything that has reached the ear; the same in both channels
}

func (s *simulation) speaker() Speaker { return s.deck }

func (s *simulation) suspend(on bool) {
	s.state = "running"
	if on {
		s.state = "suspended"
	}
}

func newWindow(n int) *Window {
	return &Window{Samples: make([]float32, n), Cycle: make([]float32, n)}
}

// inOrder checks that no sample was left out or came twice, once the volume
// has come up.
func inOrder(t *testing.T, ear []float32) {
	t.Helper()
	const settled = Rate / 2
	for i, v := range ear[settled:] {
		if v != float32(settled+i+1) {
			t.Fatalf("sample %d is that with number %v", settled+i+1, v)
		}
	}
}

// testContract checks the numbered contract of [Speaker]. How far Heard may
// lag behind the ear is the caller's to say, in samples.
func testContract(t *testing.T, lag int64, open func() rig) {
	start := func(t *testing.T) (rig, Speaker) {
		r := open()
		s := r.speaker()
		s.SetVolume(1)
		r.suspend(false)
		r.advance(2 * time.Second)
		return r, s
	}

	t.Run("1 every sample once", func(t *testing.T) {
		r, _ := start(t)
		ear := r.ear()
		if len(ear) < Rate {
			t.Fatalf("%d samples in two seconds", len(ear))
		}
		inOrder(t, ear)
	})

	t.Run("2 the same program changes nothing", func(t *testing.T) {
		_, s := start(t)
		p := synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 1}}, Gap: 1}
		s.Play(p)
		if n := testing.AllocsPerRun(100, func() { s.Play(p) }); n != 0 {
			t.Errorf("playing it again allocates %v times", n)
		}
	})

	t.Run("3 the volume moves within bounds", func(t *testing.T) {
		for _, v := range []float64{0, 0.25, 1, 7, -3, math.Inf(1), math.NaN()} {
			r, s := start(t)
			s.SetVolume(v)
			r.advance(time.Second)
			ear := r.ear()
			want := math.Max(0, math.Min(1, v))
			if math.IsNaN(v) {
				want = 0
			}
			if last := float64(ear[len(ear)-1]); math.Abs(last/float64(len(ear))-want) > 1e-6 {
				t.Errorf("volume %v: the ear hears %v of the sample", v, last/float64(len(ear)))
			}
			for i := 1; i < len(ear); i++ {
				a, b := float64(ear[i-1])/float64(i), float64(ear[i])/float64(i+1)
				if math.Abs(a-b) > 1.001/engine.Glide {
					t.Fatalf("volume %v: from %v to %v within a sample", v, a, b)
				}
			}
		}
	})

	t.Run("4 heard what the ear has heard", func(t *testing.T) {
		r, s := start(t)
		s.SetVolume(0.5)
		w := newWindow(5000)
		before := int64(0)
		for range 500 {
			r.advance(7 * time.Millisecond)
			s.Heard(w)
			end, ear := int64(w.Samples[len(w.Samples)-1]), int64(len(r.ear()))
			if end > ear+quantum || end < ear-lag { // the rig plays whole quanta
				t.Fatalf("heard up to sample %d, the ear up to %d", end, ear)
			}
			if end < before {
				t.Fatalf("went back from sample %d to %d", before, end)
			}
			before = end
			for i := range w.Samples {
				if n := max(0, end-int64(len(w.Samples)-1-i)); w.Samples[i] != float32(n) || w.Cycle[i] != -float32(n) {
					t.Fatalf("sample %d of the window is %v, cycle %v, want number %d", i, w.Samples[i], w.Cycle[i], n)
				}
			}
		}
	})

	t.Run("4 zeros before anything was heard", func(t *testing.T) {
		r := open()
		w := newWindow(100)
		for i := range w.Samples {
			w.Samples[i], w.Cycle[i] = 9, 9
		}
		r.speaker().Heard(w)
		for i := range w.Samples {
			if w.Samples[i] != 0 || w.Cycle[i] != 0 {
				t.Fatalf("sample %d is %v, cycle %v", i, w.Samples[i], w.Cycle[i])
			}
		}
		if w.Item != -1 || w.Seconds != 0 {
			t.Errorf("item %d for %v s", w.Item, w.Seconds)
		}
		r.suspend(false)
		for range 100 { // the beginning comes in at the end of the window
			r.advance(time.Millisecond)
			r.speaker().Heard(newWindow(100))
		}
		r.speaker().Heard(newWindow(0))
	})

	t.Run("5 stands still and goes on", func(t *testing.T) {
		r, s := start(t)
		w := newWindow(1)
		for i := range 20 {
			r.advance(37 * time.Millisecond)
			s.Heard(w)
			before := w.Samples[0]
			r.suspend(true)
			if s.State() != Suspended {
				t.Fatalf("state %d", s.State())
			}
			for range 1 + 15*(i%3) { // for a moment and for seconds
				r.advance(100 * time.Millisecond)
				s.Heard(w)
				if w.Samples[0] != before {
					t.Fatalf("went on to sample %v from %v", w.Samples[0], before)
				}
			}
			r.suspend(false)
			for range 20 {
				r.advance(5 * time.Millisecond)
				s.Heard(w)
				if n := int64(len(r.ear())); int64(w.Samples[0]) > n+quantum {
					t.Fatalf("heard sample %v, the ear %d", w.Samples[0], n)
				}
			}
			if s.State() != Running {
				t.Fatalf("state %d", s.State())
			}
		}
		inOrder(t, r.ear())
	})

	t.Run("6 what sounds at the end", func(t *testing.T) {
		r, s := start(t)
		w := newWindow(10)
		for range 300 {
			r.advance(3 * time.Millisecond)
			s.Heard(w)
			end := int64(w.Samples[9])
			item, seconds := countedItem(end)
			if edge := end % itemLength; edge < quantum || edge > itemLength-quantum {
				continue
			}
			if w.Item != item || math.Abs(w.Seconds-seconds) > 1e-9 {
				t.Fatalf("at sample %d: item %d for %v s, want %d for %v s", end, w.Item, w.Seconds, item, seconds)
			}
		}
	})

	t.Run("7 allocates nothing", func(t *testing.T) {
		_, s := start(t)
		w := newWindow(4096)
		if n := testing.AllocsPerRun(100, func() { s.Heard(w) }); n != 0 {
			t.Errorf("Heard allocates %v times", n)
		}
	})

	t.Run("8 waits, then runs", func(t *testing.T) {
		r := open()
		s := r.speaker()
		r.advance(10 * time.Second)
		if s.State() != Waiting || s.Err() != nil {
			t.Errorf("state %d, error %v", s.State(), s.Err())
		}
		if len(r.ear()) != 0 {
			t.Error("something was heard before the first gesture")
		}
		r.suspend(false)
		r.advance(time.Second)
		if s.State() != Running || s.Err() != nil {
			t.Errorf("state %d, error %v", s.State(), s.Err())
		}
	})
}

func TestDeckKeepsTheContract(t *testing.T) {
	for _, chunk := range []int{1024, 3000, 4096} {
		for _, announces := range []bool{false, true} {
			// Behind by the answer's time, a quantum, and what leaks in the chunk.
			lag := int64(4 * quantum)
			testContract(t, lag, func() rig {
				s := newSimulation(&counting{}, chunk)
				s.announces = announces
				return s
			})
		}
	}
}
