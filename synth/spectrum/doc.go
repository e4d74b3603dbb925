// Package spectrum measures sound: windows, the discrete Fourier transform,
// lines (partials), levels, and the scales of hearing they are judged on.
//
// Conventions. Frequencies are in hertz, levels in decibels. The amplitude of
// a line is the peak value of its sine: a sine that swings between ±1 has a
// line of amplitude 1 (0 dB) and a power of 1/2. "Cam" is the number of the
// equivalent rectangular bandwidths below a frequency.
package spectrum
