package wav

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
)

// Write writes a file. PCM is rounded to the nearest step and held at full
// scale beyond it. What cannot be written is refused with the reason before
// anything is.
func Write(w io.Writer, s *Sound, f Format) error {
	if f < PCM16 || f > Float32 {
		return fmt.Errorf("wav: there is no format %d", f)
	}
	if err := s.check(); err != nil {
		return err
	}
	for i, x := range s.Samples {
		if y := float64(x); math.IsNaN(y) || math.IsInf(y, 0) {
			return fmt.Errorf("wav: sample %d is not a number", i)
		}
	}
	width := f.bytes()
	size := int64(len(s.Samples)) * int64(width)
	if size > math.MaxUint32-64 {
		return errors.New("wav: too long: a WAVE file holds no more than 4 GiB")
	}
	b := f.header(s, uint32(size))
	for _, x := range s.Samples {
		b = f.encode(b, x)
	}
	if size%2 != 0 { // chunks have even lengths
		b = append(b, 0)
	}
	_, err := w.Write(b)
	return err
}

// header returns everything before the samples.
func (f Format) header(s *Sound, size uint32) []byte {
	tag, fmtSize, fact := uint16(tagPCM), uint32(16), uint32(0)
	if f == Float32 {
		tag, fmtSize, fact = tagFloat, 18, 12
	}
	align := s.Channels * f.bytes()
	le := binary.LittleEndian
	b := make([]byte, 0, 64+int(size))
	b = append(b, "RIFF"...)
	b = le.AppendUint32(b, 4+8+fmtSize+fact+8+size+size%2)
	b = append(b, "WAVEfmt "...)
	b = le.AppendUint32(b, fmtSize)
	b = le.AppendUint16(b, tag)
	b = le.AppendUint16(b, uint16(s.Channels))
	b = le.AppendUint32(b, uint32(s.Rate))
	b = le.AppendUint32(b, uint32(s.Rate*align))
	b = le.AppendUint16(b, uint16(align))
	b = le.AppendUint16(b, uint16(8*f.bytes()))
	if f == Float32 {
		b = le.AppendUint16(b, 0) // no extension
		b = append(b, "fact"...)
		b = le.AppendUint32(b, 4)
		b = le.AppendUint32(b, uint32(len(s.Samples)/s.Channels))
	}
	b = append(b, "data"...)
	return le.AppendUint32(b, size)
}

func (f Format) encode(b []byte, x float32) []byte {
	if f == Float32 {
		return binary.LittleEndian.AppendUint32(b, math.Float32bits(x))
	}
	bits := 8 * f.bytes()
	full := math.Ldexp(1, bits-1)
	v := int32(math.Max(-full, math.Min(full-1, math.RoundToEven(float64(x)*full))))
	for i := 0; i < bits; i += 8 {
		b = append(b, byte(v>>i))
	}
	return b
}
