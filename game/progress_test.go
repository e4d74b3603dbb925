package game

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"partialcredit/synth"
)

func TestDamagedProgressStartsAnewAndSaysSo(t *testing.T) {
	for _, saved := range []string{"{", "[]", `"x"`, `{"version": 99}`, "\x00\x01"} {
		g := New(sixteen(t), []byte(saved), roughly)
		if g.at != (place{}) || g.page != contents || !strings.Contains(g.say, "could not be read") {
			t.Errorf("%q: exercise %v, page %v, said %q", saved, g.at, g.page, g.say)
		}
	}
}

func FuzzProgress(f *testing.F) {
	f.Add(`{"version": 1, "exercise": "duty", "page": "marked", "settings": [0.25], "volume": 0.5, "marks": {"duty": {"best": 97, "last": 40, "tries": 3}}}`)
	f.Add(`{"version": 1, "exercise": "duty", "page": "work", "settings": [1e300], "volume": -3, "theme": "neon", "marks": {"x": {"best": -5}}}`)
	f.Add(`{"version": 1, "exercise": "octaves", "page": "work", "settings": [7, -9], "uncovered": true, "marks": null}`)
	f.Fuzz(func(t *testing.T, saved string) {
		g := New(sixteen(t), []byte(saved), roughly)
		g.Update(Input{W: 390, H: 844, Heard: Heard{Item: -1}})
		if v := g.Volume(); !(v >= 0 && v <= 1) {
			t.Errorf("volume %v", v)
		}
		if err := g.work.yours.Validate(); g.page.pictured() && err != nil {
			t.Error(err)
		}
		for id, r := range g.kept.Marks {
			if !(r.Best >= 0 && r.Best <= 100) {
				t.Errorf("%s: best %v", id, r.Best)
			}
		}
		g.Save()
	})
}

// Both sounds of every exercise are brought to one loudness, and neither rises
// above -6 dBFS, the headroom this project sets itself.
func TestBothSoundsAreEquallyLoud(t *testing.T) {
	t.Parallel()
	for i, e := range sixteen(t)[0].Exercises {
		g := New(sixteen(t), fmt.Appendf(nil, `{"version": 1, "exercise": %q, "page": "work"}`, e.ID), roughly)
		if g.at.exercise != i {
			t.Fatalf("%s is not open", e.ID)
		}
		target, yours := g.playing.loud.gains()
		var levels [2]float64
		for j, c := range []struct {
			sound synth.Sound
			gain  float64
		}{{e.Target, target}, {g.work.yours, yours}} {
			samples := synth.Render(c.sound, Rate)
			for k := range samples {
				samples[k] *= float32(c.gain)
			}
			m := synth.NewMeter(Rate)
			m.Write(samples)
			levels[j] = m.Loudness()
			if m.Peak() > 0.5 {
				t.Errorf("%s: a peak of %.3f is above -6 dBFS", e.ID, m.Peak())
			}
		}
		if math.Abs(levels[0]-levels[1]) > 0.1 || levels[0] < synth.Loudness-6 {
			t.Errorf("%s: target %.2f LKFS, yours %.2f LKFS, wanted %v", e.ID, levels[0], levels[1], synth.Loudness)
		}
	}
}
