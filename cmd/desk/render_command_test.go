package main

import (
	"bytes"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	audio "github.com/go-audio/wav"

	"partialcredit/game/sheet"
	"partialcredit/synth"
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
	good, page := filepath.Join(folder, "good.json"), filepath.Join(folder, "sheet.json")
	if err := errors.Join(os.WriteFile(good, []byte(`{"version": 1}`), 0o644), os.WriteFile(page, []byte(twoExercises), 0o644)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, want string }{
		{"", "name the file to write"},
		{"-o x.wav", "name a description or a sheet"},
		{"-o x.wav -exercise duty -sound " + good, "is not a sheet"},
		{"-o x.wav a b", "one sound or sheet"},
		{"-o x.wav -exercise duty -rate 3", "the rate is 3"},
		{"-o x.wav -exercise duty -bits 8", "8 bits; it must have 16, 24 or 32"},
		{"-o x.wav -exercise duty -seconds 70", "seconds is 70; it must lie between"},
		{"-o x.wav -exercise nothing", `no exercise "nothing"`},
		{"-o x.wav -sound " + filepath.Join(folder, "none.json"), "there is no such file"},
		{"-o x.wav -sound " + bad, "a.duty is 7; it must lie between"},
		{"-o x.wav https://x.invalid/#sound=1.AAAA", "This link is damaged"},
		{"-o x.wav " + page, "2 sounds, which do not go into one file"},
		{"-o x.wav -exercise none " + page, `no exercise "none"`},
		{"-o " + filepath.Join(folder, "no", "x.wav") + " -exercise duty", "cannot be written"},
		{"-o " + good + " -exercise duty", "add -force"},
	} {
		err := runRender(&desk{out: &bytes.Buffer{}}, strings.Fields(c.args))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %q", c.args, err, c.want)
		}
	}
}

const twoExercises = `{"version": 1, "title": "Two", "exercises": [
	{"id": "Duty, wide", "title": "t", "task": "t", "teach": "t", "target": {"version": 1, "seconds": 0.2, "a": {"shape": "pulse"}},
	 "controls": [{"set": ["a.duty"]}]},
	{"id": "least", "kind": "limit", "title": "t", "task": "t", "teach": "t", "target": {"version": 1, "seconds": 0.2},
	 "quantity": {"name": "Detune", "set": ["b.cents"], "start": 40, "least": 0.1, "most": 80, "published": {"value": 3, "source": "s"}}}]}`

// What is written is as long, as fast and as deep as asked for; a link, a stream and a sheet's link
// are read, too.
func TestRenderAsAsked(t *testing.T) {
	two, err := sheet.Parse([]byte(twoExercises))
	if err != nil {
		t.Fatal(err)
	}
	sound := "https://example.invalid/#" + sheet.SoundFragment(synth.Default())
	for _, c := range []struct {
		args, in          string
		rate, bits, bytes int
	}{
		// Bytes: 44 of header, then half a second and the release of 30 ms, in whole ticks of 16
		// samples of the rate at which the sound is made.
		{"- -seconds 0.5 -bits 16 -rate 8000", `{"version": 1}`, 8000, 16, 44 + 2*4240},
		{sound + " -seconds 0.5 -rate 96000", "", 96000, 24, 44 + 3*50880},
		{"https://example.invalid/#" + two.Fragment() + " -exercise least -seconds 0.5 -bits 32", "", 48000, 32, 58 + 4*25440},
	} {
		var out, problems bytes.Buffer
		args := append([]string{"render", "-o", "-"}, strings.Fields(c.args)...)
		if code := run(args, &desk{strings.NewReader(c.in), &out, &problems}); code != 0 {
			t.Errorf("%.40s: %s", c.args, problems.String())
			continue
		}
		if out.Len() != c.bytes {
			t.Errorf("%.40s: %d bytes, want %d", c.args, out.Len(), c.bytes)
		}
		d := audio.NewDecoder(bytes.NewReader(out.Bytes()))
		d.ReadInfo()
		if int(d.SampleRate) != c.rate || int(d.BitDepth) != c.bits || d.NumChans != 1 || (d.WavAudioFormat == 3) != (c.bits == 32) {
			t.Errorf("%.40s: another library finds %d Hz, %d bits, %d channels, format %d", c.args, d.SampleRate, d.BitDepth, d.NumChans, d.WavAudioFormat)
		}
	}
}

func TestRenderWritesAllSoundsOfASheet(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "sounds")
	render := func() error {
		return runRender(&desk{in: strings.NewReader(twoExercises), out: &bytes.Buffer{}, problems: &bytes.Buffer{}}, []string{"-", "-o", folder, "-bits", "16"})
	}
	if err := render(); err != nil {
		t.Fatal(err)
	}
	files, err := os.ReadDir(folder)
	if err != nil || len(files) != 2 || files[0].Name() != "01-duty-wide.wav" || files[1].Name() != "02-least.wav" {
		t.Errorf("the folder holds %v (%v)", files, err)
	}
	if err := render(); err == nil || !strings.Contains(err.Error(), "add -force") {
		t.Errorf("a second time: %v", err)
	}
}
