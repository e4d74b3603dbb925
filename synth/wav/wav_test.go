package wav

import (
	"bytes"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"io"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
)

var formats = []struct {
	name   string
	format Format
	step   float64 // of the grid, over which a sample is rounded
}{
	{"16 bits", PCM16, 1.0 / (1 << 15)},
	{"24 bits", PCM24, 1.0 / (1 << 23)},
	{"32 bits", PCM32, 1.0 / (1 << 31)},
	{"float", Float32, 0},
}

func TestWhatIsWrittenIsReadAgain(t *testing.T) {
	for _, f := range formats {
		for _, channels := range []int{1, 2} {
			want := &Sound{Rate: 44100, Channels: channels, Samples: []float32{0, 0.5, -0.5, 1e-3, -1, 1 / 3.0}}
			var file bytes.Buffer
			if err := Write(&file, want, f.format); err != nil {
				t.Fatal(err)
			}
			got, err := Read(iotest.OneByteReader(&file))
			if err != nil {
				t.Fatal(err)
			}
			near := cmp.Comparer(func(a, b float32) bool { return math.Abs(float64(a-b)) <= f.step/2 })
			if diff := cmp.Diff(want, got, near); diff != "" {
				t.Errorf("%s, %d channels: %s", f.name, channels, diff)
			}
		}
	}
}

// The bytes as laid out in "Multimedia Programming Interface and Data
// Specifications 1.0" (1991), WAVE format, worked out by hand; float with the
// extension size and the fact chunk of the "Multimedia Data Standards Update"
// (1994). Both from memory.
func TestBytesOfTheFile(t *testing.T) {
	for _, c := range []struct {
		name   string
		sound  Sound
		format Format
		want   string
	}{
		{"PCM, 16 bits, stereo", Sound{48000, 2, []float32{0.5, -1}}, PCM16,
			"52494646 28000000 57415645" + // RIFF, 40 bytes follow, WAVE
				"666d7420 10000000 0100 0200 80bb0000 00ee0200 0400 1000" +
				"64617461 04000000 0040 0080"},
		{"PCM, 24 bits, mono: an odd chunk is filled up", Sound{44100, 1, []float32{-0.25}}, PCM24,
			"52494646 28000000 57415645" +
				"666d7420 10000000 0100 0100 44ac0000 cc040200 0300 1800" +
				"64617461 03000000 0000e0 00"},
		{"float, mono", Sound{44100, 1, []float32{1}}, Float32,
			"52494646 36000000 57415645" +
				"666d7420 12000000 0300 0100 44ac0000 10b10200 0400 2000 0000" +
				"66616374 04000000 01000000" +
				"64617461 04000000 0000803f"},
	} {
		var file bytes.Buffer
		if err := Write(&file, &c.sound, c.format); err != nil {
			t.Fatal(err)
		}
		want := strings.ReplaceAll(c.want, " ", "")
		if got := hex.EncodeToString(file.Bytes()); got != want {
			t.Errorf("%s:\ngot  %s\nwant %s", c.name, got, want)
		}
	}
}

func TestFullScaleHolds(t *testing.T) {
	var file bytes.Buffer
	if err := Write(&file, &Sound{Rate: 8000, Channels: 1, Samples: []float32{2, -2}}, PCM16); err != nil {
		t.Fatal(err)
	}
	if got := hex.EncodeToString(file.Bytes()[44:]); got != "ff7f0080" {
		t.Errorf("got %s", got)
	}
}

// file builds a file from chunks, for what Write would never write.
func file(chunks ...[]byte) []byte {
	b := append([]byte("RIFF\x00\x00\x00\x00WAVE"), bytes.Join(chunks, nil)...)
	binary.LittleEndian.PutUint32(b[4:], uint32(len(b)-8))
	return b
}

func part(id string, size int, body ...byte) []byte {
	return append(binary.LittleEndian.AppendUint32([]byte(id), uint32(size)), body...)
}

func formatPart(tag, channels uint16, rate uint32, align, bits uint16) []byte {
	le := binary.LittleEndian
	b := le.AppendUint16(nil, tag)
	b = le.AppendUint16(b, channels)
	b = le.AppendUint32(b, rate)
	b = le.AppendUint32(b, rate*uint32(align))
	b = le.AppendUint16(b, align)
	b = le.AppendUint16(b, bits)
	return part("fmt ", 16, b...)
}

var mono = formatPart(tagPCM, 1, 48000, 2, 16)

func TestOtherChunksAreSkipped(t *testing.T) {
	extensible := part("fmt ", 40, append(formatPart(tagExtensible, 1, 48000, 2, 16)[8:],
		22, 0, 16, 0, 4, 0, 0, 0, tagPCM, 0, 0, 0, 0, 0, 16, 0, 128, 0, 0, 170, 0, 56, 155, 113)...)
	for name, in := range map[string][]byte{
		"a list of odd length":  file(part("LIST", 3, 1, 2, 3, 0), mono, part("data", 2, 0, 0x40)),
		"the extensible format": file(extensible, part("data", 2, 0, 0x40)),
		"something afterwards":  file(mono, part("data", 2, 0, 0x40), part("LIST", 99)),
	} {
		got, err := Read(bytes.NewReader(in))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if diff := cmp.Diff(&Sound{48000, 1, []float32{0.5}}, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestErrorsOfTheReaderComeThrough(t *testing.T) {
	broken := errors.New("the cable is out")
	_, err := Read(io.MultiReader(bytes.NewReader(file(mono)), iotest.ErrReader(broken)))
	if !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
}

func TestWriteRefuses(t *testing.T) {
	for _, c := range []struct {
		sound  Sound
		format Format
		want   string
	}{
		{Sound{0, 1, nil}, PCM16, "sample rate"},
		{Sound{48000, 3, nil}, PCM16, "3 channels"},
		{Sound{48000, 2, make([]float32, 3)}, PCM16, "do not fill"},
		{Sound{48000, 1, []float32{float32(math.NaN())}}, PCM16, "sample 0 is not a number"},
		{Sound{48000, 1, nil}, 9, "there is no format 9"},
	} {
		var file bytes.Buffer
		if err := Write(&file, &c.sound, c.format); err == nil || !strings.Contains(err.Error(), c.want) || file.Len() > 0 {
			t.Errorf("%v: got %v and %d bytes, want %q", c.sound, err, file.Len(), c.want)
		}
	}
}

// Whatever the bytes: an error, or a sound that can be written and read again.
func FuzzRead(f *testing.F) {
	for _, c := range formats {
		var b bytes.Buffer
		if err := Write(&b, &Sound{44100, 2, []float32{0.1, -0.2, 0.3, 1}}, c.format); err != nil {
			f.Fatal(err)
		}
		f.Add(b.Bytes())
		f.Add(b.Bytes()[:b.Len()-1])
	}
	f.Add(file(part("LIST", 3, 1, 2, 3, 0), mono, part("data", 2, 0, 0x40)))
	f.Fuzz(func(t *testing.T, in []byte) {
		s, err := Read(bytes.NewReader(in))
		if err != nil {
			return
		}
		s = &Sound{Rate: s.Rate, Channels: 1, Samples: s.Mono()} // more than two channels are not written
		var file bytes.Buffer
		if err := Write(&file, s, Float32); err != nil {
			t.Fatal(err)
		}
		again, err := Read(&file)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(s, again); diff != "" && len(s.Samples) > 0 {
			t.Error(diff)
		}
	})
}
