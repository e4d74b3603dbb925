package synth

import (
	"errors"
	"math"
	"strconv"
)

// Version is the version of the description written by this package.
const Version = 1

// A Sound describes one note of a two-oscillator voice. [Fields] lists every
// field with its unit, range and default; [Default] has the defaults.
type Sound struct {
	Version   int       `json:"version"`   // always [Version]
	Note      float64   `json:"note"`      // MIDI note number, a whole number; 69 is A4 = 440 Hz
	Seconds   float64   `json:"seconds"`   // from the start of the note to the start of its release
	A         Osc       `json:"a"`         // the first oscillator
	B         Osc       `json:"b"`         // the second oscillator
	Combine   Combine   `json:"combine"`   // how A and B become one sound
	LFO       LFO       `json:"lfo"`       // the slow oscillator
	Envelope  Envelope  `json:"envelope"`  // an exponential fall of pitch or of modulation depth
	Amplitude Amplitude `json:"amplitude"` // how the note starts and ends
	Character float64   `json:"character"` // 0 exact, 1 as bent and unsteady as an old circuit
	Seed      float64   `json:"seed"`      // a whole number; chooses the wander of the character
}

// An Osc is one oscillator.
type Osc struct {
	Shape   Shape   `json:"shape"`
	Footage float64 `json:"footage"` // 32, 16, 8, 4 or 2 feet: 8 is as written, each halving an octave higher
	Cents   float64 `json:"cents"`   // fine detune
	Duty    float64 `json:"duty"`    // of a pulse: the high part as a fraction of the period
	Level   float64 `json:"level"`   // linear
	Phase   float64 `json:"phase"`   // at the start of the note, in cycles
}

// A Combine says how the oscillators are combined. In every way but A and Mix
// the frequency of B is Ratio times what its footage and detune say.
type Combine struct {
	How     How     `json:"how"`
	Balance float64 `json:"balance"` // Mix: -1 only A, 0 both, +1 only B
	Ratio   float64 `json:"ratio"`
	Depth   float64 `json:"depth"` // AM: the carrier A is multiplied by 1 + Depth·B
	Index   float64 `json:"index"` // FM: the peak phase deviation of A in radians
}

// An LFO moves duty, pitch and level slowly. A depth of zero leaves the
// quantity alone, so the zero LFO does nothing.
type LFO struct {
	Shape LFOShape `json:"shape"`
	Hz    float64  `json:"hz"`
	Duty  float64  `json:"duty"`  // peak deviation of the duty, as a fraction of the period
	Cents float64  `json:"cents"` // peak deviation of the pitch: vibrato
	Level float64  `json:"level"` // the level swings between 1 and 1 - Level
	Fade  float64  `json:"fade"`  // seconds from the start of the note until the LFO has its full depth
	Phase float64  `json:"phase"` // at the start of the note, in cycles
}

// An Envelope falls exponentially: exp(-t/Seconds).
type Envelope struct {
	Seconds float64 `json:"seconds"` // time constant
	A       float64 `json:"a"`       // semitones by which A starts away from its pitch
	B       float64 `json:"b"`       // semitones by which B starts away from its pitch
	Depth   float64 `json:"depth"`   // fraction of the modulation depth or index that falls away
}

// An Amplitude shapes the level of the note. Attack and release are raised
// cosines, so that the note starts and ends without a click.
type Amplitude struct {
	Attack  float64 `json:"attack"`  // seconds to full level
	Decay   float64 `json:"decay"`   // time constant in seconds of the fall to Sustain
	Sustain float64 `json:"sustain"` // the level held, as a fraction of the full level
	Release float64 `json:"release"` // seconds to silence
}

// A Shape is the waveform of an oscillator.
type Shape int

// The shapes.
const (
	Triangle Shape = iota
	Sawtooth
	FallingSawtooth
	Pulse
	Sine
)

// An LFOShape is the waveform of the LFO.
type LFOShape int

// The shapes of the LFO.
const (
	LFOTriangle LFOShape = iota
	LFOSawtooth
	LFOSquare
	LFOSine
)

// How is a way to combine the oscillators.
type How int

// The ways to combine the oscillators.
const (
	OnlyA How = iota // A alone
	Mix              // A + B
	Ring             // A · B
	AM               // A · (1 + depth·B)
	FM               // A with its phase moved by index·B
	Sync             // B, restarted by A
)

// Hz returns the steady frequencies of A and B in hertz, before the LFO, the
// envelope and the character move them. A4 = 440 Hz (ISO 16:1975).
func (s *Sound) Hz() (a, b float64) {
	note := 440 * math.Exp2((s.Note-69)/12)
	hz := func(o Osc) float64 { return note * 8 / o.Footage * math.Exp2(o.Cents/1200) }
	a, b = hz(s.A), hz(s.B)
	if s.Combine.How != OnlyA && s.Combine.How != Mix {
		b *= s.Combine.Ratio
	}
	return a, b
}

// Default returns the sound that an empty description stands for: a sawtooth
// at A3 = 220 Hz, two seconds long.
func Default() Sound {
	s := Sound{Version: Version}
	for i := range fields {
		fields[i].Set(&s, fields[i].Default)
	}
	return s
}

// Validate reports the first field that is out of its range, by name.
func (s *Sound) Validate() error {
	if s.Version != Version {
		return errors.New("version is " + strconv.Itoa(s.Version) + "; this program reads version " + strconv.Itoa(Version))
	}
	for i := range fields {
		if err := fields[i].Check(fields[i].Get(s)); err != nil {
			return err
		}
	}
	return nil
}
