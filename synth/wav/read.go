package wav

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
)

// Read reads a file. What is not a WAVE file, is damaged or cut off, or holds
// a format that is not known is refused with the reason. Memory is taken only
// for bytes that are there, whatever the headers say.
func Read(r io.Reader) (*Sound, error) {
	var riff [12]byte
	if _, err := io.ReadFull(r, riff[:]); err != nil {
		return nil, cut(err, "wav: not a WAVE file: too short")
	}
	if string(riff[:4]) != "RIFF" || string(riff[8:]) != "WAVE" {
		return nil, errors.New("wav: not a WAVE file")
	}
	var s *Sound
	var f Format
	for {
		id, size, err := chunk(r)
		if err != nil {
			return nil, err
		}
		switch {
		case id == "fmt " && s != nil:
			return nil, errors.New("wav: damaged: two format chunks")
		case id == "fmt ":
			if s, f, err = format(r, size); err != nil {
				return nil, err
			}
		case id == "data" && s == nil:
			return nil, errors.New("wav: damaged: data before its format")
		case id == "data":
			if s.Samples, err = samples(r, size, s.Channels, f); err != nil {
				return nil, err
			}
			return s, nil
		default:
			if err := skip(r, int64(size)); err != nil {
				return nil, err
			}
		}
		if err := skip(r, int64(size%2)); err != nil { // chunks start at even places
			return nil, err
		}
	}
}

// chunk reads the head of a chunk.
func chunk(r io.Reader) (id string, size uint32, err error) {
	var head [8]byte
	if _, err := io.ReadFull(r, head[:]); err != nil {
		return "", 0, cut(err, "wav: cut off: there is no data chunk")
	}
	return string(head[:4]), binary.LittleEndian.Uint32(head[4:]), nil
}

func skip(r io.Reader, n int64) error {
	if _, err := io.CopyN(io.Discard, r, n); err != nil {
		return cut(err, "wav: cut off within a chunk")
	}
	return nil
}

// cut turns the end of the file into a sentence and keeps other errors.
func cut(err error, sentence string) error {
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		return errors.New(sentence)
	}
	return fmt.Errorf("wav: %w", err)
}

// format reads the body of a format chunk.
func format(r io.Reader, size uint32) (*Sound, Format, error) {
	if size < 16 || size > 1024 {
		return nil, 0, fmt.Errorf("wav: damaged: a format chunk of %d bytes", size)
	}
	b := make([]byte, size)
	if _, err := io.ReadFull(r, b); err != nil {
		return nil, 0, cut(err, "wav: cut off within the format chunk")
	}
	word := func(i int) int { return int(binary.LittleEndian.Uint16(b[i:])) }
	tag, bits := word(0), word(14)
	if tag == tagExtensible && size >= 40 {
		tag = word(24) // the front of the identifier of the real format
	}
	var f Format
	switch {
	case tag == tagPCM && bits == 16:
		f = PCM16
	case tag == tagPCM && bits == 24:
		f = PCM24
	case tag == tagPCM && bits == 32:
		f = PCM32
	case tag == tagFloat && bits == 32:
		f = Float32
	default:
		return nil, 0, fmt.Errorf("wav: format %d with %d bits is not known; PCM of 16, 24 or 32 bits and float of 32 bits are", tag, bits)
	}
	s := &Sound{Channels: word(2), Rate: int(binary.LittleEndian.Uint32(b[4:]))}
	if err := s.check(); err != nil {
		return nil, 0, err
	}
	if align := word(12); align != s.Channels*f.bytes() {
		return nil, 0, fmt.Errorf("wav: damaged: %d bytes for a sample of %d channels with %d bits", align, s.Channels, bits)
	}
	return s, f, nil
}

// samples reads the body of a data chunk.
func samples(r io.Reader, size uint32, channels int, f Format) ([]float32, error) {
	width := f.bytes()
	if size%uint32(width*channels) != 0 {
		return nil, fmt.Errorf("wav: damaged: %d bytes of data do not fill %d channels", size, channels)
	}
	b, err := io.ReadAll(io.LimitReader(r, int64(size)))
	if err != nil {
		return nil, fmt.Errorf("wav: %w", err)
	}
	if uint32(len(b)) != size {
		return nil, fmt.Errorf("wav: cut off: %d of %d bytes of data are there", len(b), size)
	}
	out := make([]float32, len(b)/width)
	for i := range out {
		out[i] = f.decode(b[i*width:])
		if x := float64(out[i]); math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("wav: damaged: sample %d is not a number", i)
		}
	}
	return out, nil
}

func (f Format) decode(b []byte) float32 {
	switch f {
	case PCM16:
		return float32(int16(binary.LittleEndian.Uint16(b))) / (1 << 15)
	case PCM24:
		v := int32(b[0])<<8 | int32(b[1])<<16 | int32(b[2])<<24
		return float32(v>>8) / (1 << 23)
	case PCM32:
		return float32(int32(binary.LittleEndian.Uint32(b))) / (1 << 31)
	}
	return math.Float32frombits(binary.LittleEndian.Uint32(b))
}
