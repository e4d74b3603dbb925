package wav

import (
	"encoding/binary"
	"fmt"
	"io"
	"math"
)

// A layout is how the samples of a file lie.
type layout struct {
	rate, channels int
	width          int // bytes of a sample
	float          bool
}

// format reads the body of a format chunk.
func (r *reader) format(size uint32) (*layout, error) {
	if size < 16 || size > 1024 {
		return nil, fmt.Errorf("%w (a format chunk of %d bytes)", ErrDamaged, size)
	}
	b := make([]byte, size)
	if _, err := io.ReadFull(r, b); err != nil {
		return nil, cut(err)
	}
	word := func(i int) int { return int(binary.LittleEndian.Uint16(b[i:])) }
	tag, bits, align := word(0), word(14), word(12)
	if tag == tagExtensible && size >= 40 {
		tag = word(24) // the front of the identifier of the real format
	}
	if tag != tagPCM && tag != tagFloat {
		return nil, fmt.Errorf("%w (%s)", ErrCompressed, formatName(tag))
	}
	l := &layout{channels: word(2), rate: int(binary.LittleEndian.Uint32(b[4:])), float: tag == tagFloat}
	switch {
	case l.channels < 1 || l.channels > mostRead:
		return nil, fmt.Errorf("%w (%d channels)", ErrChannels, l.channels)
	case l.rate < 1 || l.rate > maxRate:
		return nil, fmt.Errorf("%w (a sample rate of %d Hz)", ErrDamaged, l.rate)
	case l.float && bits != 32 && bits != 64 || bits < 1 || !l.float && bits > 32:
		return nil, fmt.Errorf("%w (%d bits)", ErrDepth, bits)
	}
	// Fewer bits than a whole number of bytes lie at the top of them.
	l.width = (bits + 7) / 8
	if align != l.channels*l.width {
		return nil, fmt.Errorf("%w (%d bytes for a sample of %d channels with %d bits)", ErrDamaged, align, l.channels, bits)
	}
	return l, nil
}

// decode reads a sample: -1 to 1, and beyond only where it is a float.
func (l *layout) decode(b []byte) float32 {
	le := binary.LittleEndian
	switch {
	case l.float && l.width == 8:
		return float32(math.Float64frombits(le.Uint64(b)))
	case l.float:
		return math.Float32frombits(le.Uint32(b))
	case l.width == 1: // without a sign
		return (float32(b[0]) - 1<<7) / (1 << 7)
	case l.width == 2:
		return float32(int16(le.Uint16(b))) / (1 << 15)
	case l.width == 3:
		v := int32(b[0])<<8 | int32(b[1])<<16 | int32(b[2])<<24
		return float32(v>>8) / (1 << 23)
	}
	return float32(int32(le.Uint32(b))) / (1 << 31)
}

// formatName names the formats that are met in files of this kind (registered
// wave format numbers, RFC 2361, appendix A).
func formatName(tag int) string {
	switch tag {
	case 0x02, 0x11:
		return "ADPCM"
	case 0x06:
		return "A-law"
	case 0x07:
		return "µ-law"
	case 0x31:
		return "GSM 6.10"
	case 0x50:
		return "MPEG"
	case 0x55:
		return "MP3"
	}
	return fmt.Sprintf("format %d", tag)
}
