package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"partialcredit/synth/wav"
)

func TestRenderWritesWhatCanBeReadAgain(t *testing.T) {
	folder := t.TempDir()
	description, file := filepath.Join(folder, "a4.json"), filepath.Join(folder, "a4.wav")
	text := `{"version": 1, "note": 69, "seconds": 1, "a": {"shape": "sine"}}`
	if err := os.WriteFile(description, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := runRender(&desk{out: &out}, []string{"-sound", description, "-o", file, "-rate", "44100"}); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, err := wav.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	crossings, most := 0, 0.0
	for i, v := range s.Samples[:44100] {
		most = math.Max(most, math.Abs(float64(v)))
		if i > 0 && s.Samples[i-1] < 0 && v >= 0 {
			crossings++
		}
	}
	// A4 = 440 Hz (ISO 16:1975).
	if s.Rate != 44100 || crossings < 439 || crossings > 441 || math.Abs(most-peak) > 0.001 {
		t.Errorf("%d Hz, %d periods in a second, peak %.4f; want 44100, 440 and %v", s.Rate, crossings, most, peak)
	}
}

func TestRenderSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	bad := filepath.Join(folder, "bad.json")
	if err := os.WriteFile(bad, []byte(`{"version": 1, "a": {"duty": 7}}`), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, want string }{
		{"", "name the file to write"},
		{"-o x.wav", "name either a description"},
		{"-o x.wav -exercise duty -sound y", "name either a description"},
		{"-o x.wav -exercise duty -rate 3", "the rate is 3"},
		{"-o x.wav -exercise nothing", `no exercise "nothing"`},
		{"-o x.wav -sound " + filepath.Join(folder, "none.json"), "cannot be read"},
		{"-o x.wav -sound " + bad, "a.duty is 7; it must lie between"},
		{"-o " + filepath.Join(folder, "no", "x.wav") + " -exercise duty", "cannot be written"},
	} {
		err := runRender(&desk{out: &bytes.Buffer{}}, strings.Fields(c.args))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %q", c.args, err, c.want)
		}
	}
}
