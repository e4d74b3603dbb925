// Package take finds the note in a recording: where it starts and ends, its
// steady part, its pitch and its level, and says in a sentence why a recording
// cannot be used.
//
// It is generous to one sound and strict to several. Beats, vibrato, falls of
// the pitch, moving pulse widths and ring, amplitude and frequency modulation
// at any ratio are one sound; see [ErrSeveral] for where it cannot tell.
package take

import (
	"errors"
	"math"

	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// Rate is the sample rate of a take in hertz, whatever that of the recording.
const Rate = 48000

// Longest is how many seconds a recording may last.
const Longest = 60

// shortest is how many seconds a note must last: that of a sound of this
// program at the least, less what an onset and a release take from it.
const shortest = 0.08

// What is wrong with a recording, in sentences for whoever made it.
var (
	ErrSilence = errors.New("There is no note in this recording: it is silent, or far too quiet. Raise the level of the input and record again.")
	ErrNoise   = errors.New("There is only noise in this recording, or the noise covers the note. Check the cable and the level, and record again.")
	ErrClipped = errors.New("This recording is clipped: it was too loud for the input. Lower the level and record again.")
	// ErrSeveral is for notes after one another and for chords of harmonic tones.
	// Not told from one sound: a repeated note that never falls silent, a leap by
	// an octave or a twelfth, two pitches in regular turn (a vibrato of the shape
	// of a square), tones a whole tone apart or less, give or take octaves (two
	// detuned oscillators), sines together (sidebands), and just intervals (the
	// partials of one lower tone).
	ErrSeveral = errors.New("There are several notes in this recording. Record one note alone, held for a second or two.")
	ErrShort   = errors.New("The note in this recording is too short. Hold it for a second or two.")
	ErrLong    = errors.New("This recording is too long: a minute is the most. Cut it to the one note.")
	ErrRate    = errors.New("This recording has an unusual sample rate. Save it with 44,100 or 48,000 samples a second.")
	ErrNumbers = errors.New("This recording is damaged: it holds values that are no numbers. Save it once more.")
)

// A Take is the note of a recording.
type Take struct {
	Samples []float32 // at Rate, from the start of the note to its end, without DC, at the level of [synth.Loudness]
	Start   float64   // seconds from the start of the recording to that of the note
	Seconds float64   // length of the note
	From    float64   // seconds from its start to that of its steady part,
	To      float64   // and to the end of it
	Hz      float64   // its pitch; 0 where there is no one pitch
	Clarity float64   // how well it repeats after a period of it, 0 to 1

	noise *quieter // at the level of the samples; nil where none is known
}

// Find finds the note in the samples of a recording at a rate in hertz, 8000 to
// 192000. The error is one of those of this package.
func Find(samples []float32, rate float64) (*Take, error) {
	switch {
	case !(rate >= 8000 && rate <= 192000):
		return nil, ErrRate
	case float64(len(samples)) > Longest*rate:
		return nil, ErrLong
	}
	for _, v := range samples {
		if math.IsNaN(float64(v)) || math.IsInf(float64(v), 0) {
			return nil, ErrNumbers
		}
	}
	x := Resample(samples, rate, Rate)
	s := stretchOf(x)
	switch {
	case s == nil:
		return nil, ErrSilence
	case clipped(samples[int(float64(s.start)/Rate*rate):min(len(samples), int(float64(s.end)/Rate*rate))], rate):
		return nil, ErrClipped
	case s.end-s.start < shortest*Rate:
		return nil, ErrShort
	case s.rests():
		return nil, ErrSeveral
	}
	note, noise := quieten(x, s.start, s.end)
	t := &Take{
		Samples: level(note),
		Start:   float64(s.start) / Rate,
		Seconds: float64(s.end-s.start) / Rate,
	}
	if noise != nil {
		t.noise = noise.times(gainTo(note))
	}
	from, to := s.steady()
	t.From, t.To = float64(from-s.start)/Rate, float64(to-s.start)/Rate
	l := &listener{kit: new(spectrum.Kit), x: t.Samples, from: from - s.start, to: to - s.start}
	p := l.pitch()
	switch {
	case l.noisy(p):
		return nil, ErrNoise
	case l.melody() || l.chord():
		return nil, ErrSeveral
	}
	if p.clarity > sure {
		t.Hz, t.Clarity = p.hz, p.clarity
	}
	return t, nil
}

// Note is the nearest note and how far above it the take lies in cents;
// ok is false where there is no one pitch.
func (t *Take) Note() (number int, cents float64, ok bool) {
	if t.Hz <= 0 {
		return 0, 0, false
	}
	n := 69 + 12*math.Log2(t.Hz/440)
	return int(math.Round(n)), 100 * (n - math.Round(n)), true
}

// level returns samples without DC, brought to [synth.Loudness] and below [synth.PeakLimit]; silence
// stays what it is.
func level(samples []float32) []float32 {
	out := make([]float32, len(samples))
	gain := gainTo(samples)
	mean := meanOf(samples)
	for i, v := range samples {
		out[i] = float32(gain * (float64(v) - mean))
	}
	return out
}

// gainTo is the gain that brings samples to their level.
func gainTo(samples []float32) float64 {
	m := synth.NewMeter(Rate)
	mean := float32(meanOf(samples))
	block := make([]float32, 0, 1024)
	for i, v := range samples {
		if block = append(block, v-mean); len(block) == cap(block) || i == len(samples)-1 {
			m.Write(block)
			block = block[:0]
		}
	}
	if m.Peak() == 0 {
		return 1
	}
	return math.Min(spectrum.Amplitude(synth.Loudness-m.Loudness()), synth.PeakLimit/m.Peak())
}

func meanOf(samples []float32) float64 {
	mean := 0.0
	for _, v := range samples {
		mean += float64(v)
	}
	return mean / float64(max(1, len(samples)))
}
