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
// and the pitch of the carrier does not drift.
package synth
