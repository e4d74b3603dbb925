package wav

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/go-audio/audio"
	library "github.com/go-audio/wav"
)

// A general-purpose library, github.com/go-audio/wav, writes integers, which are
// read back exactly.
func TestFilesOfALibrary(t *testing.T) {
	for _, bits := range []int{8, 16, 24, 32} {
		for _, channels := range []int{1, 2, 8} {
			for _, rate := range []int{8000, 44100, 96000, 192000} {
				name := filepath.Join(t.TempDir(), "library.wav")
				f, err := os.Create(name)
				if err != nil {
					t.Fatal(err)
				}
				full := math.Ldexp(1, bits-1)
				ints := []int{0, 1, -1, int(full) - 1, -int(full), int(full / 3), -int(full / 7), 2}
				stored := append([]int(nil), ints...)
				if bits == 8 {
					for i := range stored {
						stored[i] += 128
					}
				}
				e := library.NewEncoder(f, rate, bits, channels, 1)
				if err := e.Write(&audio.IntBuffer{Format: &audio.Format{NumChannels: channels, SampleRate: rate}, Data: stored, SourceBitDepth: bits}); err != nil {
					t.Fatal(err)
				}
				if err := e.Close(); err != nil {
					t.Fatal(err)
				}
				f.Close()
				data, err := os.ReadFile(name)
				if err != nil {
					t.Fatal(err)
				}
				s, err := Read(bytes.NewReader(data))
				if err != nil || s.Rate != rate || s.Channels != channels {
					t.Errorf("%d bits, %d channels, %d Hz: %v, %v", bits, channels, rate, s, err)
					continue
				}
				var want []float32
				for _, v := range ints {
					want = append(want, float32(float64(v)/full))
				}
				if fmt.Sprint(s.Samples) != fmt.Sprint(want) {
					t.Errorf("%d bits, %d channels: %v, want %v", bits, channels, s.Samples, want)
				}
			}
		}
	}
}
