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
// How it is made. The oscillators run at four times the sample rate; whenever a
// phase crosses a step or a corner, at whatever instant between two samples
// and in either direction, the six samples around it are corrected to what the
// B-spline of degree 5 makes of the discontinuity, and a short filter undoes
// what the spline takes from the treble (blep.go, droop.go). The operands of
// ring and amplitude modulation are then limited to what lies below the sample
// rate less 20 kHz, whole up to 20 kHz, and multiplied at twice the sample
// rate: this limit belongs to what these sounds are. Two linear-phase half-band
// filters lead down to the sample rate. Controls are worked out every 16
// samples, counted from the start of the note, and move in straight lines in
// between. The filters' delay is made up for.
//
// Limits. Frequencies of oscillators stop at 0.45 of the oversampled rate. A
// modulated duty stops at 0 and 1. In frequency modulation at 48 kHz, errors
// stay 80 dB under the sound while carrier + (index + 9)·modulator is below 172
// kHz for sines, and while carrier + index·modulator, the greatest speed of the
// phase, is below 6 kHz for a sawtooth as the carrier.
package synth
