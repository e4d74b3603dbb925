package wav

import (
	"bytes"
	"encoding/binary"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	audio "github.com/go-audio/wav"
)

// ramp is a sound with all kinds of values, full scale among them.
func ramp(rate, channels int) *Sound {
	s := &Sound{Rate: rate, Channels: channels}
	for i := range 2000 * channels {
		s.Samples = append(s.Samples, float32(math.Sin(float64(i)*0.37))*float32(i)/float32(2000*channels-1))
	}
	s.Samples[4], s.Samples[5] = -1, 0
	return s
}

// Files read back by github.com/go-audio/wav, which shares no code with ours.
func TestFilesAreReadByAnotherLibrary(t *testing.T) {
	for _, f := range formats {
		for _, rate := range []int{8000, 44100, 192000} {
			want := ramp(rate, 2)
			var file bytes.Buffer
			if err := Write(&file, want, f.format); err != nil {
				t.Fatal(err)
			}
			d := audio.NewDecoder(bytes.NewReader(file.Bytes()))
			if !d.IsValidFile() {
				t.Fatalf("%s, %d Hz: not valid", f.name, rate)
			}
			got, err := d.FullPCMBuffer()
			if err != nil {
				t.Fatal(err)
			}
			if int(d.SampleRate) != rate || d.NumChans != 2 || int(d.BitDepth) != 8*f.format.bytes() || len(got.Data) != len(want.Samples) {
				t.Fatalf("%s, %d Hz: %d Hz, %d channels, %d bits, %d samples", f.name, rate, d.SampleRate, d.NumChans, d.BitDepth, len(got.Data))
			}
			for i, v := range got.Data {
				x := float64(v) / math.Ldexp(1, int(d.BitDepth)-1)
				if f.format == Float32 { // it hands the bits on as a whole number
					x = float64(math.Float32frombits(uint32(int32(v))))
				}
				if off := math.Abs(x - float64(want.Samples[i])); off > f.step/2+1e-12 && want.Samples[i] < 1 {
					t.Fatalf("%s, %d Hz: sample %d is %v, want %v", f.name, rate, i, x, want.Samples[i])
				}
			}
		}
	}
}

// Files read back by SoX.
func TestFilesAreReadBySox(t *testing.T) {
	sox, err := exec.LookPath("sox")
	if err != nil {
		t.Fatal("SoX is missing, with which this test reads files back. Install it: make sox")
	}
	for _, f := range formats {
		for _, rate := range []int{8000, 48000, 192000} {
			want := ramp(rate, 1)
			var file, raw, problems bytes.Buffer
			if err := Write(&file, want, f.format); err != nil {
				t.Fatal(err)
			}
			c := exec.Command(sox, "-V3", "-D", "-t", "wav", "-", "-t", "raw", "-e", "floating-point", "-b", "64", "-L", "-")
			c.Stdin, c.Stdout, c.Stderr = bytes.NewReader(file.Bytes()), &raw, &problems
			if err := c.Run(); err != nil {
				t.Fatalf("%s, %d Hz: %v\n%s", f.name, rate, err, problems.String())
			}
			for _, said := range []string{"Sample Rate    : " + strconv.Itoa(rate), "Channels       : 1"} {
				if !strings.Contains(problems.String(), said) {
					t.Errorf("%s, %d Hz: SoX does not say %q:\n%s", f.name, rate, said, problems.String())
				}
			}
			if strings.Contains(problems.String(), "WARN") {
				t.Errorf("%s, %d Hz: SoX warns:\n%s", f.name, rate, problems.String())
			}
			if raw.Len() != 8*len(want.Samples) {
				t.Fatalf("%s, %d Hz: %d bytes, want %d", f.name, rate, raw.Len(), 8*len(want.Samples))
			}
			// SoX works with whole numbers of 32 bits inside (from memory): floats come back rounded.
			tolerance := math.Max(f.step/2, math.Ldexp(1, -31))
			for i, w := range want.Samples {
				x := math.Float64frombits(binary.LittleEndian.Uint64(raw.Bytes()[8*i:]))
				if math.Abs(x-float64(w)) > tolerance && w < 1 {
					t.Fatalf("%s, %d Hz: sample %d is %v, want %v", f.name, rate, i, x, w)
				}
			}
		}
	}
}
