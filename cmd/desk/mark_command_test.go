package main

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/wav"
)

// recording is a sound as a WAV file with a moment of quiet before and after it.
func recording(t *testing.T, s synth.Sound, rate int) []byte {
	t.Helper()
	quiet := make([]float32, rate/4)
	note := synth.Render(s, float64(rate))
	normalize(note)
	var data bytes.Buffer
	all := append(append(append([]float32{}, quiet...), note...), quiet...)
	if err := wav.Write(&data, &wav.Sound{Rate: rate, Channels: 1, Samples: all}, wav.PCM16); err != nil {
		t.Fatal(err)
	}
	return data.Bytes()
}

func TestMark(t *testing.T) {
	folder := t.TempDir()
	path := func(name string, data []byte) {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	path("quarter.json", []byte(`{"version": 1, "a": {"shape": "pulse", "duty": 0.25}}`))
	path("wide.json", []byte(`{"version": 1, "a": {"shape": "pulse", "duty": 0.4}}`))
	quarter := synth.Default()
	quarter.A.Shape, quarter.A.Duty, quarter.A.Phase = synth.Pulse, 0.25, 0.6
	sharp := quarter
	sharp.A.Cents = 30
	path("quarter.wav", recording(t, quarter, 44100))
	path("sharp.wav", recording(t, sharp, 48000))
	path("silence.wav", recording(t, synth.Sound{Version: 1, Note: 57, Seconds: 1}, 44100))
	link := "https://example.invalid/#" + sheet.SoundFragment(quarter)

	for _, c := range []struct {
		args, in    string
		least, most float64
		reason      string // part of the first
	}{
		{"quarter.json quarter.json", "", 100, 100, ""},
		{"quarter.json wide.json", "", 0, 60, "wider"},
		{"quarter.json wide.json -strictness beginner", "", 60, 95, "wider"},
		{"quarter.json quarter.wav", "", 98, 100, ""},
		{"quarter.wav quarter.json", "", 98, 100, ""},
		{"quarter.wav wide.json", "", 0, 60, "wider"},
		{"quarter.wav sharp.wav", "", 0, 60, "30 cents sharp"},
		{"quarter.wav LINK", "", 98, 100, ""},
		{"- quarter.wav", `{"version": 1, "a": {"shape": "pulse", "duty": 0.25}}`, 98, 100, ""},
		{"quarter.json -", string(recording(t, sharp, 96000)), 0, 60, "30 cents sharp"},
	} {
		var args []string
		for _, a := range strings.Fields(c.args) {
			if strings.Contains(a, ".") {
				a = filepath.Join(folder, a)
			}
			args = append(args, strings.Replace(a, "LINK", link, 1))
		}
		var out, problems bytes.Buffer
		if code := run(append([]string{"mark", "-json"}, args...), &desk{strings.NewReader(c.in), &out, &problems}); code != 0 {
			t.Errorf("%s: exit %d: %s", c.args, code, problems.String())
			continue
		}
		var got marked
		if err := json.Unmarshal(out.Bytes(), &got); err != nil {
			t.Fatalf("%s: %v", c.args, err)
		}
		if got.Marks < c.least || got.Marks > c.most {
			t.Errorf("%s: %.1f marks, want %v to %v", c.args, got.Marks, c.least, c.most)
		}
		if c.reason == "" && len(got.Reasons) > 0 || c.reason != "" && (len(got.Reasons) == 0 || !strings.Contains(got.Reasons[0].Text, c.reason)) {
			t.Errorf("%s: %v, want %q first", c.args, got.Reasons, c.reason)
		}
		if strings.HasPrefix(c.args, "quarter.wav") && (got.Target == nil || math.Abs(got.Target.Hz-220) > 0.03 || math.Abs(got.Target.Start-0.25) > 0.005) {
			t.Errorf("%s: the target was heard as %+v", c.args, got.Target)
		}
	}

	for _, c := range []struct {
		args string
		code int
		want string // of the sentence
	}{
		{"quarter.json", 2, "it compares two sounds"},
		{"- -", 2, "only one of the two"},
		{"quarter.json wide.json -strictness mild", 2, "beginner, practised or expert"},
		{"quarter.json silence.wav", 1, "There is no note in this recording"},
		{"quarter.json nowhere.wav", 1, "there is no such file"},
	} {
		args := strings.Fields(c.args)
		for i, a := range args {
			if strings.Contains(a, ".") {
				args[i] = filepath.Join(folder, a)
			}
		}
		var out, problems bytes.Buffer
		if code := run(append([]string{"mark"}, args...), &desk{strings.NewReader(""), &out, &problems}); code != c.code || !strings.Contains(problems.String(), c.want) || out.Len() > 0 {
			t.Errorf("%s: exit %d, %q and %q; want %d, %q", c.args, code, problems.String(), out.String(), c.code, c.want)
		}
	}

	var out, problems bytes.Buffer
	run([]string{"mark", filepath.Join(folder, "quarter.wav"), filepath.Join(folder, "wide.json")}, &desk{strings.NewReader(""), &out, &problems})
	for _, want := range []string{"The target is a recording: 220.0 Hz (A3 +0 cents), from 0.25 s on for 2.0", "marks of 100 (expert; ", "\n- "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q lacks %q", out.String(), want)
		}
	}
}
