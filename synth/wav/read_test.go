package wav

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func TestBadFilesAreRefusedWithTheReason(t *testing.T) {
	for _, c := range []struct {
		in     []byte
		want   error
		detail string
	}{
		{nil, ErrNotWAV, ""},
		{[]byte("ID3\x04 not a sound of ours"), ErrNotWAV, "MP3"},
		{[]byte("fLaC\x00\x00\x00\x22....."), ErrNotWAV, "FLAC"},
		{[]byte("OggS"), ErrNotWAV, "Ogg"},
		{[]byte("\x00\x00\x00\x1cftypM4A "), ErrNotWAV, "MP4"},
		{[]byte("RF64\xff\xff\xff\xffWAVE"), ErrNotWAV, "RF64"},
		{[]byte("RIFF\x00\x00\x00\x00AVI "), ErrNotWAV, ""},
		{file(), ErrCutOff, ""},
		{file(mono), ErrCutOff, ""},
		{file(mono, part("data", 4, 1, 2)), ErrCutOff, "2 of 4 bytes"},
		{file(mono, part("data", 3, 1, 2, 3, 0)), ErrDamaged, "do not fill"},
		{file(part("data", 2, 1, 2), mono), ErrDamaged, "data before its format"},
		{file(mono, mono, part("data", 2, 1, 2)), ErrDamaged, "two format chunks"},
		{file(part("LIST", 0x7FFFFFFF, 1, 2)), ErrCutOff, ""},
		{file(part("fmt ", 16, 1, 0)), ErrCutOff, ""},
		{file(part("fmt ", 8, 1, 0, 1, 0, 1, 0, 0, 0)), ErrDamaged, "a format chunk of 8 bytes"},
		{file(part("fmt ", 0x7FFFFFFF)), ErrDamaged, "a format chunk of 2147483647 bytes"},
		{file(formatPart(2, 1, 48000, 256, 4)), ErrCompressed, "ADPCM"},
		{file(formatPart(6, 1, 8000, 1, 8)), ErrCompressed, "A-law"},
		{file(formatPart(7, 1, 8000, 1, 8)), ErrCompressed, "µ-law"},
		{file(formatPart(0x55, 2, 48000, 4, 16)), ErrCompressed, "MP3"},
		{file(formatPart(0x161, 2, 48000, 4, 16)), ErrCompressed, "format 353"},
		{file(formatPart(tagPCM, 1, 48000, 5, 40)), ErrDepth, "40 bits"},
		{file(formatPart(tagFloat, 1, 48000, 2, 16)), ErrDepth, "16 bits"},
		{file(formatPart(tagPCM, 0, 48000, 0, 16)), ErrChannels, "0 channels"},
		{file(formatPart(tagPCM, 9, 48000, 18, 16)), ErrChannels, "9 channels"},
		{file(formatPart(tagPCM, 1, 0, 2, 16)), ErrDamaged, "a sample rate of 0 Hz"},
		{file(formatPart(tagPCM, 1, 0xFFFFFFFF, 2, 16)), ErrDamaged, "a sample rate of 4294967295 Hz"},
		{file(formatPart(tagPCM, 2, 48000, 2, 16)), ErrDamaged, "2 bytes for a sample of 2 channels with 16 bits"},
		{file(formatPart(tagFloat, 1, 48000, 4, 32), part("data", 4, 0, 0, 0xC0, 0x7F)), ErrDamaged, "sample 0 is not a number"},
	} {
		_, err := Read(bytes.NewReader(c.in))
		if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.detail) {
			t.Errorf("%.60q: got %v, want %v (%s)", c.in, err, c.want, c.detail)
		}
	}
}

// A recorder that writes into a pipe leaves the lengths open.
func TestStreamsAreReadToTheEnd(t *testing.T) {
	for _, size := range []int{0, 0x7FFFF000, 0xFFFFFFFF} {
		in := file(mono, part("data", size, 0, 0x40, 0, 0xC0, 9)) // the last frame is incomplete
		binary.LittleEndian.PutUint32(in[4:], uint32(size))
		s, err := Read(bytes.NewReader(in))
		if err != nil || fmt.Sprint(s.Samples) != "[0.5 -0.5]" {
			t.Errorf("length %#x: %v, %v", size, s, err)
		}
	}
	s, err := Read(bytes.NewReader(file(mono, part("data", 0), part("LIST", 4, 1, 2, 3, 4))))
	if err != nil || len(s.Samples) != 0 {
		t.Errorf("no sound and another chunk: %v, %v", s, err)
	}
}

func TestLyingHeaderTakesNoMemory(t *testing.T) {
	for _, size := range []int{0x10000000, 0xFFFFFFFE} {
		in := file(mono, part("data", size, 1, 2))
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		Read(bytes.NewReader(in))
		runtime.ReadMemStats(&after)
		// Own bound: a file of 46 bytes, against up to 4 GiB in its header.
		if n := after.TotalAlloc - before.TotalAlloc; n > 1<<16 {
			t.Errorf("%d bytes for a file of %d", n, len(in))
		}
	}
}

func TestNoMoreIsReadThanTheLongest(t *testing.T) {
	in := file(formatPart(tagPCM, 1, 8000, 1, 8), part("data", 100*8000, make([]byte, 100*8000)...))
	s, err := Read(bytes.NewReader(in))
	if err != nil || len(s.Samples) != Longest*8000+1 {
		t.Errorf("%d samples, %v", len(s.Samples), err)
	}
}

func TestMono(t *testing.T) {
	for _, c := range []struct {
		name     string
		channels int
		samples  []float32
		want     float32 // the first sample
	}{
		{"one", 1, []float32{0.5, 0.25}, 0.5},
		{"two alike", 2, []float32{0.5, 0.5, -0.25, -0.25}, 0.5},
		{"two unlike", 2, []float32{0.5, 0.25, -0.25, -0.5}, 0.375},
		{"an input with nothing in it", 2, []float32{0.5, 0, -0.25, 0}, 0.5},
		{"an input with noise in it", 2, []float32{0.5, 0.001, -0.25, 0.002}, 0.5},
		{"two that cancel", 2, []float32{0.5, -0.5, -0.25, 0.25}, 0.5},
		{"the right is louder, and they nearly cancel", 2, []float32{-0.5, 0.6, 0.25, -0.3}, 0.6},
		{"three, one silent", 3, []float32{0.5, 0, 0.25, -0.25, 0, -0.25}, 0.375},
		{"silence", 2, make([]float32, 4), 0},
	} {
		s := &Sound{Rate: 48000, Channels: c.channels, Samples: c.samples}
		if got := s.Mono(); len(got) != len(c.samples)/c.channels || math.Abs(float64(got[0]-c.want)) > 1e-7 {
			t.Errorf("%s: %v, want %v first", c.name, got, c.want)
		}
	}
}

// sox writes what sox can write; the samples read must be those of its sine
// as raw doubles, within a step of the quantisation. With -D it adds no dither,
// with -R it makes the same every time.
func TestFilesOfSox(t *testing.T) {
	if _, err := exec.LookPath("sox"); err != nil {
		t.Fatal("sox is missing, which writes WAV files of all kinds for this test: install it with make sox, or apt-get install sox")
	}
	sox := func(args ...string) []byte {
		t.Helper()
		out, err := exec.Command("sox", args...).Output()
		if err != nil {
			t.Fatalf("sox %s: %v", strings.Join(args, " "), err)
		}
		return out
	}
	for _, c := range []struct {
		args string // how the file is stored
		step float64
	}{
		{"-b 8 -e unsigned-integer", 1.0 / (1 << 7)},
		{"-b 16 -e signed-integer", 1.0 / (1 << 15)},
		{"-b 24 -e signed-integer", 1.0 / (1 << 23)},
		{"-b 32 -e signed-integer", 1.0 / (1 << 24)}, // what a float32 holds
		{"-b 32 -e floating-point", 1.0 / (1 << 24)},
		{"-b 64 -e floating-point", 1.0 / (1 << 24)},
	} {
		for _, rate := range []int{8000, 11025, 22050, 44100, 48000, 88200, 96000, 192000} {
			for _, channels := range []int{1, 2, 6} { // six are written in the extensible format
				if channels > 1 && rate != 44100 {
					continue // each takes a moment
				}
				name := filepath.Join(t.TempDir(), "sox.wav")
				args := append([]string{"-D", "-R", "-n", "-r", fmt.Sprint(rate), "-c", fmt.Sprint(channels)}, strings.Fields(c.args)...)
				sox(append(args, name, "synth", "0.05", "sine", "997", "gain", "-6")...)
				data, err := os.ReadFile(name)
				if err != nil {
					t.Fatal(err)
				}
				s, err := Read(bytes.NewReader(data))
				if err != nil {
					t.Errorf("%s, %d Hz, %d channels: %v", c.args, rate, channels, err)
					continue
				}
				raw := sox("-D", "-R", "-n", "-r", fmt.Sprint(rate), "-c", fmt.Sprint(channels), "-b", "64", "-e", "floating-point", "-t", "raw", "-", "synth", "0.05", "sine", "997", "gain", "-6")
				if s.Rate != rate || s.Channels != channels || len(s.Samples) != len(raw)/8 {
					t.Errorf("%s: %d Hz, %d channels, %d samples; want %d, %d and %d", c.args, s.Rate, s.Channels, len(s.Samples), rate, channels, len(raw)/8)
					continue
				}
				worst := 0.0
				for i, x := range s.Samples {
					want := math.Float64frombits(binary.LittleEndian.Uint64(raw[8*i:]))
					worst = math.Max(worst, math.Abs(float64(x)-want))
				}
				if worst > c.step+1e-7 {
					t.Errorf("%s, %d Hz, %d channels: %g off, the step is %g", c.args, rate, channels, worst, c.step)
				}
			}
		}
	}
	for args, want := range map[string]string{"-e a-law": "A-law", "-e mu-law": "µ-law", "-e ms-adpcm": "ADPCM", "-e ima-adpcm": "ADPCM", "-e gsm-full-rate -r 8000": "GSM"} {
		a := append(append([]string{"-n", "-c", "1"}, strings.Fields(args)...), "-t", "wav", "-", "synth", "0.1", "sine", "997")
		if _, err := Read(bytes.NewReader(sox(a...))); !errors.Is(err, ErrCompressed) || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", args, err)
		}
	}
	s, err := Read(bytes.NewReader(sox("-n", "-r", "48000", "-c", "2", "-b", "24", "-t", "wav", "-", "synth", "0.1", "sine", "997"))) // into a pipe
	if err != nil || len(s.Samples) != 2*4800 {
		t.Errorf("from a pipe: %v", err)
	}
}
