// Package synth makes sound: one note of a voice with two oscillators.
//
// A [Sound] describes the note completely. A [Voice] turns it into samples; a
// [Player] plays one or several sounds in turn, over and over, at a safe level.
// Rendering is a pure function of the description and the sample rate: no
// clock, no global random source, the same bits for any split into blocks.
//
// Conventions, in one place. Phase φ is in cycles and {x} is the fractional
// part of x.
//
//	rising sawtooth   2{φ} - 1
//	falling sawtooth  1 - 2{φ}
//	pulse, duty d     +1 where {φ} < d, else -1, less its mean 2d - 1
//	triangle          odd about φ = 0, rising there, peaks of ±1
//	sine              sin 2πφ
//
// The pulse is AC-coupled, as on a real circuit board: its mean never reaches
// the ear, and taking it off in the oscillator keeps it out of products too.
// Hard sync sends the slave's phase to 0. Frequency modulation is done on the
// phase, so that the modulation index is the peak phase deviation in radians
// and the pitch of the carrier does not drift. Wherever B is an operand, it is
// B times its level.
//
// How it is made. The oscillators run at twice the sample rate; whenever a
// phase crosses a step or a corner, at whatever instant between two samples
// and in either direction, the twelve samples around it are corrected to what
// the B-spline of degree 11 makes of the discontinuity, and a short filter
// undoes what the spline takes from the treble (blep.go, droop.go). The operands
// of ring and amplitude modulation are then limited to what lies below the
// sample rate less 20 kHz, whole up to 20 kHz, and multiplied: this limit
// belongs to what these sounds are. In frequency modulation the oscillators run
// at four times the sample rate. Linear-phase half-band filters lead down to the
// sample rate. Controls are worked out every 16 samples, counted from the start
// of the note, and move in straight lines in between. The filters' delay is made
// up for.
//
// Limits, at 48 kHz; those in hertz go with the sample rate. Oscillators stop at
// 86.4 kHz. A modulated duty stops at 0 and 1. In frequency modulation, errors
// stay 80 dB under the sound while carrier + (index + 9)·modulator is below 172
// kHz for sines; for a sawtooth as the carrier while the modulator, a sine, is
// below 3.6 kHz and carrier + index·modulator, the greatest speed of the phase,
// below 38 kHz. The corners of an LFO are cut to straight lines of 16 samples:
// on the duty, that is an error of 50 to 70 dB under the sound, at worst 26, and
// no alias. testdata/measured/sound.md has the figures, `desk measure` makes
// them.
package synth
