// Package wav reads and writes sound files in the WAVE form of RIFF. It writes
// mono or stereo, PCM of 16, 24 or 32 bits and float of 32 bits, and reads what
// recorders write (see [Read]).
//
// Sources: "Multimedia Programming Interface and Data Specifications 1.0", IBM
// and Microsoft, August 1991, for RIFF, the chunks "fmt " and "data" and PCM;
// "Multimedia Data Standards Update", Microsoft, April 1994, for float and its
// chunk "fact"; "Multiple Channel Audio Data and WAVE Files", Microsoft, for
// the extensible format (all from memory).
package wav

import "fmt"

// A Sound is what a file holds. Samples lie between -1 and 1; those of a
// stereo file alternate, left first.
type Sound struct {
	Rate     int // samples a second of each channel
	Channels int // 1 or 2; up to 8 where it was read
	Samples  []float32
}

// A Format is the way samples are stored.
type Format int

// The formats. PCM is signed, little-endian, full scale 2^(bits-1).
const (
	PCM16 Format = iota
	PCM24
	PCM32
	Float32
)

func (f Format) bytes() int {
	switch f {
	case PCM16:
		return 2
	case PCM24:
		return 3
	}
	return 4
}

// The format tags of the files.
const (
	tagPCM        = 1
	tagFloat      = 3
	tagExtensible = 0xFFFE
)

// maxRate bounds the sample rates that are believed.
const maxRate = 1_000_000

func (s *Sound) check() error {
	switch {
	case s.Channels != 1 && s.Channels != 2:
		return fmt.Errorf("wav: %d channels; only 1 and 2 are known", s.Channels)
	case s.Rate < 1 || s.Rate > maxRate:
		return fmt.Errorf("wav: a sample rate of %d Hz; it must lie between 1 and %d", s.Rate, maxRate)
	case len(s.Samples)%s.Channels != 0:
		return fmt.Errorf("wav: %d samples do not fill %d channels", len(s.Samples), s.Channels)
	}
	return nil
}
