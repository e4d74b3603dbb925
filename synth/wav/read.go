package wav

import (
	"encoding/binary"
	"fmt"
	"io"
	"math"
)

// Longest is how many seconds of a file are read at most; what comes after them
// is left. One frame more is read, so that too long a recording is seen to be.
const Longest = 60

// mostRead bounds the channels that are read.
const mostRead = 8

// Read reads a file of 1 to 8 channels at 8 to 192 kHz and beyond: PCM of up to
// 8 bits without and of up to 32 bits with a sign, float of 32 and 64 bits. A
// recorder that writes into a pipe cannot know how long its file will be: a
// length of nothing or of 2 GiB and more is read to the end. What is not a WAV
// file, is damaged or cut off, or holds another format is refused with one of
// the errors of this package. Memory is taken only for samples that are there,
// whatever the headers say.
func Read(r io.Reader) (*Sound, error) {
	var riff [12]byte
	n, err := io.ReadFull(r, riff[:])
	if err != nil && n < len(riff) {
		if err = cut(err); err != ErrCutOff {
			return nil, err
		}
	}
	if err := greet(riff[:n]); err != nil {
		return nil, err
	}
	file := reader{Reader: r, at: 12, claims: binary.LittleEndian.Uint32(riff[4:])}
	return file.chunks()
}

// A reader reads the chunks of a file.
type reader struct {
	io.Reader
	at     int64  // bytes read
	claims uint32 // bytes after the first eight, as the file says
}

func (r *reader) Read(b []byte) (int, error) {
	n, err := r.Reader.Read(b)
	r.at += int64(n)
	return n, err
}

func (r *reader) chunks() (*Sound, error) {
	var l *layout
	for {
		id, size, err := r.chunk()
		if err != nil {
			return nil, err
		}
		switch {
		case id == "fmt " && l != nil:
			return nil, fmt.Errorf("%w (two format chunks)", ErrDamaged)
		case id == "fmt ":
			if l, err = r.format(size); err != nil {
				return nil, err
			}
		case id == "data" && l == nil:
			return nil, fmt.Errorf("%w (data before its format)", ErrDamaged)
		case id == "data":
			return r.samples(size, l)
		default:
			if err := r.skip(int64(size)); err != nil {
				return nil, err
			}
		}
		if err := r.skip(int64(size % 2)); err != nil { // chunks start at even places
			return nil, err
		}
	}
}

// chunk reads the head of a chunk.
func (r *reader) chunk() (id string, size uint32, err error) {
	var head [8]byte
	if _, err := io.ReadFull(r, head[:]); err != nil {
		return "", 0, cut(err)
	}
	return string(head[:4]), binary.LittleEndian.Uint32(head[4:]), nil
}

func (r *reader) skip(n int64) error {
	if _, err := io.CopyN(io.Discard, r, n); err != nil {
		return cut(err)
	}
	return nil
}

// streamed is the length from which on it is a recorder's "not known": 0xFFFFFFFF
// of some, a little under 0x7FFFF000 of sox (seen in files of sox 14.4.2).
const streamed = 0x7FFF0000

// samples reads the body of a data chunk.
func (r *reader) samples(size uint32, l *layout) (*Sound, error) {
	frame := l.width * l.channels
	most := int64(l.rate*Longest+1) * int64(frame)
	known := size > 0 && size < streamed
	if known {
		if size%uint32(frame) != 0 {
			return nil, fmt.Errorf("%w (%d bytes of data do not fill %d channels)", ErrDamaged, size, l.channels)
		}
		most = min(most, int64(size))
	}
	start := r.at
	s := &Sound{Rate: l.rate, Channels: l.channels, Samples: []float32{}}
	body := io.LimitReader(r, most)
	buffer := make([]byte, frame*1024)
	for {
		n, err := io.ReadFull(body, buffer)
		n -= n % frame // a stream may end within a frame
		for i := 0; i < n; i += l.width {
			x := l.decode(buffer[i:])
			if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
				return nil, fmt.Errorf("%w (sample %d is not a number)", ErrDamaged, len(s.Samples))
			}
			s.Samples = append(s.Samples, x)
		}
		if err == io.EOF || err == io.ErrUnexpectedEOF {
			break
		}
		if err != nil {
			return nil, cut(err)
		}
	}
	switch read := r.at - start; {
	case known && read < most:
		return nil, fmt.Errorf("%w (%d of %d bytes of sound are there)", ErrCutOff, read, size)
	case size == 0 && r.claims > 0 && r.at-8 == int64(r.claims):
		s.Samples = s.Samples[:0] // the length is true: other chunks follow
	}
	return s, nil
}
