package main

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/wav"
)

func TestDrawWritesPictures(t *testing.T) {
	folder := t.TempDir()
	pulse := filepath.Join(folder, "pulse.json")
	if err := os.WriteFile(pulse, []byte(`{"version": 1, "a": {"shape": "pulse", "duty": 0.25}}`), 0o644); err != nil {
		t.Fatal(err)
	}
	recording := filepath.Join(folder, "recording.wav")
	if err := runRender(&desk{out: io.Discard}, []string{pulse, "-rate", "44100", "-bits", "16", "-o", recording}); err != nil {
		t.Fatal(err)
	}
	link := "https://example.invalid/#" + sheet.SoundFragment(synth.Default())
	for _, c := range []struct {
		args, in string
		w, h     int
	}{
		{pulse + " -o FILE.png", "", 1920, 1080},
		{pulse + " -with " + link + " -what partials -size thumbnail -ground blackboard -o FILE.png", "", 1280, 720},
		{link + " -what trace -size square -ground transparent -o FILE.png", "", 1080, 1080},
		{"- -what sweep -size 400x300 -o FILE.png", `{"version": 1, "seconds": 0.2}`, 400, 300},
		{"- -what trace -size 400x300 -o FILE.png", link + "\n", 400, 300},
		{recording + " -with " + pulse + " -size 400x300 -o FILE.png", "", 400, 300},
		{recording + " -what sweep -size 400x300 -o FILE.png", "", 400, 300},
		{pulse + " -what sweep -field a.duty -from 0.1 -to 0.5 -size 200x200 -title Ширина,εύρος -o FILE.png", "", 200, 200},
	} {
		file := filepath.Join(t.TempDir(), "a.png")
		var out, problems bytes.Buffer
		args := strings.Fields(strings.Replace(c.args, "FILE.png", file, 1))
		if code := run(append([]string{"draw"}, args...), &desk{strings.NewReader(c.in), &out, &problems}); code != 0 {
			t.Errorf("%s: %s", c.args, problems.String())
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		if b := img.Bounds(); b.Dx() != c.w || b.Dy() != c.h {
			t.Errorf("%s: %v, want %d by %d", c.args, b, c.w, c.h)
		}
		if _, _, _, alpha := img.At(1, 1).RGBA(); (alpha == 0) != strings.Contains(c.args, "transparent") {
			t.Errorf("%s: the corner has an alpha of %d", c.args, alpha)
		}
	}
	var out bytes.Buffer
	if err := runDraw(&desk{out: &out}, []string{pulse, "-o", "-", "-title", "A & B, 矩形波"}); err != nil {
		t.Fatal(err)
	}
	if err := xml.Unmarshal(out.Bytes(), new(struct{})); err != nil || !strings.Contains(out.String(), "A &amp; B, 矩形波") {
		t.Errorf("the output is no SVG: %v", err)
	}
}

func TestDrawSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	good := filepath.Join(folder, "good.json")
	taken := filepath.Join(folder, "taken.svg")
	if err := errors.Join(os.WriteFile(good, []byte(`{"version": 1}`), 0o644), os.WriteFile(taken, nil, 0o644)); err != nil {
		t.Fatal(err)
	}
	recording, page := filepath.Join(folder, "r.wav"), filepath.Join(folder, "sheet.json")
	silence := wav.Sound{Rate: 48000, Channels: 1, Samples: make([]float32, 48000)}
	var file bytes.Buffer
	if err := errors.Join(wav.Write(&file, &silence, wav.PCM16), os.WriteFile(recording, file.Bytes(), 0o644), os.WriteFile(page, []byte(twoExercises), 0o644)); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, want string }{
		{recording + " -o a.svg", "it is silent"},
		{page + " -o a.svg", "is a sheet, not a sound"},
		{page + " -what sweep -o a.svg", "is a sheet, not a sound"},
		{"GOOD -with " + page + " -o a.svg", "is a sheet, not a sound"},
		{"GOOD", "name the file to write"},
		{"GOOD -o a.gif", "neither in .svg nor in .png"},
		{"-o a.svg", "draws one sound, but was given 0"},
		{"GOOD GOOD -o a.svg", "was given 2"},
		{"GOOD -o a.svg -what picture", "one of trace, partials, both, sweep"},
		{"GOOD -o a.svg -field a.duty", "Add -what sweep"},
		{"GOOD -o a.svg -what sweep -from 1", "Name it with -field"},
		{"GOOD -o a.svg -what sweep -with GOOD", "shows one sound"},
		{"GOOD -o a.svg -what sweep -field duty", `no field "duty"`},
		{"GOOD -o a.svg -what sweep -field a.shape", "is chosen, not moved"},
		{"GOOD -o a.svg -what sweep -field a.duty -from 3", "a.duty is 3; it must lie between"},
		{"GOOD -o a.svg -what sweep -field note -from 40.5", "must be a whole number"},
		{"GOOD -o a.svg -what sweep -field a.duty -from 0.5 -to 0.5", "different values"},
		{"GOOD -o a.svg -size big", "must be slide"},
		{"GOOD -o a.svg -ground grass", "must be one of paper"},
		{"GOOD -o a.png -title 矩形波", "no '矩'. Write an .svg"},
		{"GOOD -o " + taken, "add -force"},
		{"none.json -o a.svg", "there is no such file"},
		{"#sound=1.x -o a.svg", "This link is damaged"},
		{"- -o a.svg", "what is piped in: the sound is not JSON"},
	} {
		args := strings.Fields(strings.ReplaceAll(c.args, "GOOD", good))
		err := runDraw(&desk{strings.NewReader("{"), io.Discard, io.Discard}, args)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got %v, want %q", c.args, err, c.want)
		}
	}
	for _, name := range []string{"a.svg", "a.png"} {
		if _, err := os.Stat(name); err == nil {
			t.Errorf("%s was written all the same", name)
		}
	}
}
