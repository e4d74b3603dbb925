package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"partialcredit/synth"
)

func TestBuiltinSheet(t *testing.T) {
	s := Matches()
	if len(s.Exercises) < 14 {
		t.Errorf("%d exercises, want at least 14", len(s.Exercises))
	}
	for _, e := range s.Exercises {
		if !strings.HasSuffix(e.Title, "?") {
			t.Errorf("%s: the title %q asks no question", e.ID, e.Title)
		}
		for _, text := range []string{e.Task, e.Teach} {
			if strings.Count(text, ". ") > 0 || !strings.HasSuffix(text, ".") {
				t.Errorf("%s: %q is not one sentence", e.ID, text)
			}
		}
		start := e.Start()
		if err := start.Validate(); err != nil {
			t.Errorf("%s: start: %v", e.ID, err)
		}
		if cmp.Equal(start, e.Target) {
			t.Errorf("%s: the learner starts on the target", e.ID)
		}
	}
}

// The techniques of the course, each on the built-in sheet at least once.
func TestBuiltinSheetUsesEveryTechnique(t *testing.T) {
	for name, uses := range map[string]func(*synth.Sound) bool{
		"triangle":         func(s *synth.Sound) bool { return s.A.Shape == synth.Triangle },
		"sawtooth":         func(s *synth.Sound) bool { return s.A.Shape == synth.Sawtooth },
		"pulse":            func(s *synth.Sound) bool { return s.A.Shape == synth.Pulse },
		"sine":             func(s *synth.Sound) bool { return s.A.Shape == synth.Sine },
		"footage":          func(s *synth.Sound) bool { return s.A.Footage != 8 },
		"duty modulation":  func(s *synth.Sound) bool { return s.LFO.Duty > 0 },
		"vibrato":          func(s *synth.Sound) bool { return s.LFO.Cents > 0 },
		"fade-in":          func(s *synth.Sound) bool { return s.LFO.Fade > 0 },
		"tremolo":          func(s *synth.Sound) bool { return s.LFO.Level > 0 },
		"pitch fall":       func(s *synth.Sound) bool { return s.Envelope.A != 0 },
		"modulation fall":  func(s *synth.Sound) bool { return s.Envelope.Depth > 0 },
		"detuned mix":      func(s *synth.Sound) bool { return s.Combine.How == synth.Mix && s.B.Cents > 5 },
		"octave split":     func(s *synth.Sound) bool { return s.Combine.How == synth.Mix && s.A.Footage != s.B.Footage },
		"ring modulation":  func(s *synth.Sound) bool { return s.Combine.How == synth.Ring },
		"am":               func(s *synth.Sound) bool { return s.Combine.How == synth.AM },
		"fm":               func(s *synth.Sound) bool { return s.Combine.How == synth.FM },
		"hard sync":        func(s *synth.Sound) bool { return s.Combine.How == synth.Sync && s.Envelope.B == 0 },
		"hard sync, swept": func(s *synth.Sound) bool { return s.Combine.How == synth.Sync && s.Envelope.B != 0 },
	} {
		found := false
		for _, e := range Matches().Exercises {
			found = found || uses(&e.Target)
		}
		if !found {
			t.Errorf("no exercise uses %s", name)
		}
	}
}

func TestBadSheetsAreRefusedWithAReason(t *testing.T) {
	exercise := func(control string) string {
		return fmt.Sprintf(`{"version": 1, "title": "T", "exercises": [{"id": "x", "title": "Q?", "task": "Do.", "teach": "So.",
			"target": {"version": 1, "a": {"shape": "pulse"}}, "controls": [%s]}]}`, control)
	}
	for _, c := range []struct{ in, want string }{
		{`{`, "cannot be read"},
		{`{"version": 2, "title": "T"}`, "version 2"},
		{`{"version": 1, "exercises": []}`, "no title"},
		{`{"version": 1, "title": "T", "exercises": []}`, "no exercises"},
		{`{"version": 1, "title": "T", "colour": "red", "exercises": []}`, `unknown field "colour"`},
		{exercise(``), "it has 0 controls"},
		{exercise(`{"set": []}`), "sets nothing"},
		{exercise(`{"set": ["a.dutty"]}`), "a.dutty, which is not a field"},
		{exercise(`{"set": ["a.duty", "a.cents"]}`), "not alike"},
		{exercise(`{"set": ["a.duty"], "min": 0.6}`), "must stand in that order"},
		{exercise(`{"set": ["a.duty"], "min": 0.6, "start": 0.7}`), "the target 0.5 lies outside its range"},
		{exercise(`{"set": ["a.duty"], "start": 2}`), "a.duty is 2; it must lie between"},
		{exercise(`{"set": ["a.duty"]}, {"set": ["a.duty"]}`), "two controls set a.duty"},
		{strings.Replace(exercise(`{"set": ["a.duty"]}`), `"pulse"`, `"oblong"`, 1), "exercise 1: a.shape must be one of"},
		{strings.Replace(exercise(`{"set": ["a.duty"]}`), `"Q?"`, `" "`, 1), "title is missing"},
		{strings.Replace(exercise(`{"set": ["a.duty"]}`), `"target": {"version": 1, "a": {"shape": "pulse"}}, `, ``, 1), "target is missing"},
	} {
		_, err := Parse([]byte(c.in))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.in, err, c.want)
		}
	}
}

func TestControlSetsEveryFieldWithinItsRange(t *testing.T) {
	var c Control
	if err := c.UnmarshalJSON([]byte(`{"set": ["envelope.a", "envelope.b"], "min": 0, "max": 24}`)); err != nil {
		t.Fatal(err)
	}
	s := synth.Default()
	c.Set(&s, 30)
	if s.Envelope.A != 24 || s.Envelope.B != 24 {
		t.Errorf("got %v and %v, want 24 twice", s.Envelope.A, s.Envelope.B)
	}
}
