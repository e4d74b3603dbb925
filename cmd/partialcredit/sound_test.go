//go:build !js

package main_test

import (
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"math"
	"time"
)

// Sound is what left the audio graph.
type Sound struct {
	Rate        float64 // frames a second
	Left, Right []float32
	End         float64 // the audio context's time after the last, in seconds
}

// SoundCounts says how much left the audio graph since the last ForgetSound. A quantum is 128 frames.
type SoundCounts struct {
	Rate    float64 `json:"rate"`
	Frames  int     `json:"frames"`  // kept, at most 20 s
	Quanta  int     `json:"quanta"`  // all
	Silent  int     `json:"silent"`  // nothing but zeros
	Longest int     `json:"longest"` // silent ones in a row

	Runs map[int]int `json:"runs"` // how often so many silent ones came between sounds

	Sounding   int     `json:"sounding"`   // since the last pause or, in a pause, 0
	FirstHeard float64 `json:"firstHeard"` // when the first of all that sounded came in, in milliseconds from the navigation
}

// SoundCounts returns the counts of the recorder.
func (p *Page) SoundCounts() SoundCounts {
	p.t.Helper()
	var c SoundCounts
	p.Eval("soundTap.counts()", &c)
	return c
}

// ForgetSound empties the recorder and sets its counts to zero.
func (p *Page) ForgetSound() {
	p.t.Helper()
	p.Eval("soundTap.forget()", nil)
}

// Hear waits until the recorder has so much sound from now on, and returns it: silence counts too,
// but a suspended audio context gives none, which fails the test.
func (p *Page) Hear(length time.Duration) Sound {
	p.t.Helper()
	p.Wait("soundTap.counts().rate > 0", 10*time.Second)
	p.ForgetSound()
	rate := p.SoundCounts().Rate
	frames := int(math.Ceil(length.Seconds() * rate))
	p.Wait(fmt.Sprintf("soundTap.counts().frames >= %d", frames), length+20*time.Second)
	return p.newest(frames, rate)
}

func (p *Page) newest(frames int, rate float64) Sound {
	p.t.Helper()
	var newest recorded
	p.Eval(fmt.Sprintf("soundTap.newest(%d)", frames), &newest)
	s, err := newest.sound(rate)
	if err != nil {
		p.t.Fatal(err)
	}
	return s
}

// recorded is what soundTap.newest gives.
type recorded struct {
	Data string
	End  float64
}

func (r *recorded) sound(rate float64) (Sound, error) {
	data, err := base64.StdEncoding.DecodeString(r.Data)
	if err != nil {
		return Sound{}, fmt.Errorf("the recorded sound cannot be read: %w", err)
	}
	s := Sound{Rate: rate, End: r.End}
	for ; len(data) >= 8; data = data[8:] {
		s.Left = append(s.Left, math.Float32frombits(binary.LittleEndian.Uint32(data)))
		s.Right = append(s.Right, math.Float32frombits(binary.LittleEndian.Uint32(data[4:])))
	}
	return s, nil
}
