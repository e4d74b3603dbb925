package speaker

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"partialcredit/synth"
)

func TestReadGivesTheSameForAnySizes(t *testing.T) {
	read := func(sizes ...int) []byte {
		d := newDeck(&simulation{}, &counting{}, 2048)
		d.SetVolume(1)
		var out []byte
		for i := 0; len(out) < 40000; i++ {
			dst := make([]byte, sizes[i%len(sizes)])
			n, err := d.Read(dst)
			if n != len(dst) || err != nil {
				t.Fatalf("read %d of %d bytes, error %v", n, len(dst), err)
			}
			out = append(out, dst...)
		}
		return out[:40000]
	}
	want := read(16384)
	for i := 2000; i < 40000/bytesPerFrame; i++ { // the volume has come up
		for channel := range 2 {
			got := math.Float32frombits(binary.LittleEndian.Uint32(want[bytesPerFrame*i+4*channel:]))
			if got != float32(i+1) {
				t.Fatalf("channel %d of sample %d is %v", channel, i+1, got)
			}
		}
	}
	for _, sizes := range [][]int{{1}, {7}, {8}, {1023, 0, 1}, {1025, 3}, {20000}} {
		if !bytes.Equal(read(sizes...), want) {
			t.Errorf("reading %v bytes at a time gives something else", sizes)
		}
	}
}

func TestReadAllocatesNothing(t *testing.T) {
	s := newSimulation(synth.NewPlayer(Rate), 4096)
	s.deck.Play(synth.Program{Items: []synth.Item{{Sound: synth.Default(), Gain: 0.1}}})
	dst := make([]byte, 4096*bytesPerFrame)
	for name, read := range map[string]func(){
		"ungated": func() { s.deck.Read(dst) },
		"gated":   func() { s.deck.read(dst, pullComes) },
	} {
		if n := testing.AllocsPerRun(20, read); n != 0 {
			t.Errorf("%s, a read allocates %v times", name, n)
		}
	}
}

func TestGateHoldsReadUntilThePull(t *testing.T) {
	g := newGate(time.Minute)
	if got := g.wait(); got != pullWas {
		t.Errorf("before any announcement: %v, want no waiting", got)
	}
	g.announce() // nobody waits: it must not either
	got := make(chan reason)
	go func() { got <- g.wait() }()
	for done := false; !done; {
		select {
		case why := <-got:
			if why != pullComes {
				t.Errorf("%v, want the pull", why)
			}
			done = true
		default:
			g.announce()
		}
	}
	g.most = time.Millisecond
	if why := g.wait(); why != noPull {
		t.Errorf("%v, want to go on without a pull", why)
	}
}

// The numbers are those of the simulation: half of a chunk and an answer's time
// from the pull on, up to a chunk before it, and the way from there to the ear.
func TestControlToEar(t *testing.T) {
	for _, tt := range []struct {
		announces  bool
		low, high  float64 // chunks
		whatItIsOf string
	}{
		{true, 0.5, 1.5, "made at the last moment"},
		{false, 1.5, 2.5, "made a chunk ahead"},
	} {
		const chunk = 4096
		least, most := math.Inf(1), 0.0
		for i := range 40 {
			s := newSimulation(&counting{}, chunk)
			s.announces, s.state = tt.announces, "running"
			s.advance(time.Second + time.Duration(i)*3*time.Millisecond)
			at := s.deck.player.(*counting).n // the next sample to be rendered is the first with the change
			start := len(s.played)
			for len(s.played) < int(at) {
				s.advance(time.Millisecond)
			}
			took := float64(len(s.played)-start) / chunk
			least, most = min(least, took), max(most, took)
		}
		const slack = 3.0 * quantum / chunk
		if least < tt.low-slack || most > tt.high+slack {
			t.Errorf("%s: from control to worklet's output %.2f to %.2f chunks, want %v to %v", tt.whatItIsOf, least, most, tt.low, tt.high)
		}
	}
}

func TestFollowerFindsBackAfterGaps(t *testing.T) {
	const chunk = 2048
	s := newSimulation(&counting{}, chunk)
	s.announces, s.state = true, "running"
	s.deck.SetVolume(1)
	s.advance(time.Second)
	w := newWindow(1)
	// The main thread is busy for long, several times: the device runs dry.
	for range 5 {
		s.answer = 150 * time.Millisecond
		s.advance(300 * time.Millisecond)
		s.answer = time.Millisecond
		s.advance(time.Second)
		s.deck.Heard(w)
		if ahead := int(w.Samples[0]) - len(s.ear()); ahead > chunk/2+quantum || ahead < -1000 {
			t.Errorf("a second after gaps it is %d samples ahead", ahead)
		}
	}
	if s.dry == 0 {
		t.Fatal("the device did not run dry")
	}
	s.advance(25 * time.Second) // chunk/2 samples leak in 21 s
	s.deck.Heard(w)
	if ahead := int(w.Samples[0]) - len(s.ear()); ahead > quantum || ahead < -4*quantum {
		t.Errorf("half a minute later it is %d samples ahead", ahead)
	}
}

func TestHeardStopsWhereTheDeviceRanDry(t *testing.T) {
	for _, announces := range []bool{false, true} {
		s := newSimulation(&counting{}, 2048)
		s.announces, s.state, s.latency = announces, "running", 0
		s.deck.SetVolume(1)
		s.advance(time.Second)
		s.answer = 120 * time.Millisecond
		w := newWindow(1)
		for range 100 {
			s.advance(3 * time.Millisecond)
			s.deck.Heard(w)
			if s.dry > 0 && len(s.store) < 2*quantum && s.deck.heard > int64(len(s.played)) {
				t.Fatalf("heard sample %d of %d that the device had", s.deck.heard, len(s.played))
			}
		}
		if s.dry == 0 {
			t.Fatal("the device did not run dry")
		}
	}
}

func TestHeardNeverGoesBack(t *testing.T) {
	s := newSimulation(&counting{}, 2048)
	s.state = "running"
	s.deck.SetVolume(1)
	s.advance(time.Second)
	w := newWindow(1)
	s.deck.Heard(w)
	before := w.Samples[0]
	s.latency += 10000 // another loudspeaker
	s.advance(10 * time.Millisecond)
	s.deck.Heard(w)
	if w.Samples[0] < before {
		t.Errorf("went from sample %v back to %v", before, w.Samples[0])
	}
}

func TestWindowLongerThanTheMemory(t *testing.T) {
	s := newSimulation(&counting{}, 2048)
	s.state = "running"
	s.deck.SetVolume(1)
	s.advance(5 * time.Second)
	w := newWindow(2 * remembered)
	s.deck.Heard(w)
	last := w.Samples[len(w.Samples)-1]
	for i, v := range w.Samples {
		if want := last - float32(len(w.Samples)-1-i); v != want && v != 0 {
			t.Fatalf("sample %d of the window is number %v, want %v or silence", i, v, want)
		}
	}
}

func TestHeardHoldsWhenTheLatencyIsNonsense(t *testing.T) {
	for _, latency := range []int{-100000, 1 << 40} {
		s := newSimulation(&counting{}, 2048)
		s.state, s.latency = "running", 0
		s.deck.SetVolume(1)
		s.advance(5 * time.Second)
		s.latency = latency
		w := newWindow(8192)
		s.deck.Heard(w)
		if last := int(w.Samples[8191]); last > len(s.played) || last < len(s.played)-Rate {
			t.Errorf("latency of %d samples: heard up to %d of %d", latency, last, len(s.played))
		}
	}
}

func TestStates(t *testing.T) {
	s := newSimulation(&counting{}, 2048)
	d := s.deck
	check := func(what string, want State, says string) {
		t.Helper()
		got, err := d.State(), d.Err()
		if got != want || (err == nil) != (says == "") || err != nil && !strings.Contains(err.Error(), says) {
			t.Errorf("%s: state %d with error %v, want %d saying %q", what, got, err, want, says)
		}
	}
	check("before a gesture", Waiting, "")
	s.state = "running"
	s.advance(time.Second)
	check("running", Running, "")
	s.state = "interrupted"
	check("interrupted", Suspended, "")
	s.state = "running"
	s.now += 30 * time.Second // the program itself stood still
	check("after standing still", Running, "")
	for range 10 * Rate / quantum { // a device that runs and takes nothing
		s.now += time.Second * quantum / Rate
		d.State()
	}
	check("a device that takes nothing", Failed, "takes no sound")
	s.advance(time.Second)
	check("it takes sound after all", Running, "")
	s.state = "closed"
	check("closed", Failed, "shut down")
	d.err = errors.New("This browser has no sound.")
	s.state = "none"
	check("not opened", Failed, "has no sound")
}
