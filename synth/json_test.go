package synth

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestEmptyDescriptionIsTheDefault(t *testing.T) {
	got, err := Parse([]byte(`{"version": 1}`))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(Default(), got); diff != "" {
		t.Error(diff)
	}
	if err := got.Validate(); err != nil {
		t.Error(err)
	}
}

func TestDescriptionSurvivesJSON(t *testing.T) {
	for _, f := range Fields() {
		for _, v := range []float64{f.Min, f.Max} {
			want := Default()
			f.Set(&want, v)
			data, err := json.Marshal(want)
			if err != nil {
				t.Fatalf("%s = %v: %v", f.Name, v, err)
			}
			got, err := Parse(data)
			if err != nil {
				t.Fatalf("%s = %v: %v", f.Name, v, err)
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%s = %v: %s", f.Name, v, diff)
			}
		}
	}
}

func TestBadDescriptionsAreRefusedByName(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		{`[]`, "must be a JSON object"},
		{`{"a":`, "not JSON"},
		{`{"version": 1} 2`, "not JSON: something follows"},
		{`{}`, "version is missing"},
		{`{"version": 2}`, "version is 2"},
		{`{"version": 1, "a": {"dutty": 0.5}}`, "unknown field a.dutty"},
		{`{"version": 1, "a": 3}`, "a must be a JSON object"},
		{`{"version": 1, "a": {"duty": 0.98}}`, "a.duty is 0.98; it must lie between 0.03 and 0.97"},
		{`{"version": 1, "a": {"duty": "wide"}}`, "a.duty must be a number"},
		{`{"version": 1, "a": {"duty": 1e999}}`, "a.duty is 1e999, which is too large"},
		{`{"version": 1, "a": {"footage": 5}}`, "a.footage must be one of 32, 16, 8, 4, 2"},
		{`{"version": 1, "b": {"shape": "square"}}`, "b.shape must be one of triangle"},
		{`{"version": 1, "b": {"shape": 1}}`, "b.shape must be one of triangle"},
		{`{"version": 1, "combine": {"how": null}}`, "combine.how must be one of"},
		{`{"version": 1, "note": 60.5}`, "note is 60.5; it must be a whole number"},
		{`{"version": 1, "note": 97}`, "note is 97; it must lie between 24 and 96"},
	} {
		_, err := Parse([]byte(c.in))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.in, err, c.want)
		}
	}
}

func TestValidateNamesTheField(t *testing.T) {
	for _, f := range Fields() {
		for _, v := range []float64{f.Min - 1, f.Max + 1, math.NaN()} {
			if len(f.Choices) > 0 && math.IsNaN(v) {
				continue // a choice is stored as an integer
			}
			s := Default()
			f.Set(&s, v)
			if err := s.Validate(); err == nil || !strings.HasPrefix(err.Error(), f.Name) {
				t.Errorf("%s = %v: got %v", f.Name, v, err)
			}
		}
	}
}

// Pitches of the equal-tempered scale: ISO 16:1975 for A4; the others follow
// from 440·2^((m-69)/12), common practice. Footage: an octave per doubling,
// higher footage is lower pitch, common practice.
func TestFrequencies(t *testing.T) {
	for _, c := range []struct{ note, footage, want float64 }{
		{69, 8, 440}, {57, 8, 220}, {60, 8, 261.6256}, {36, 8, 65.4064}, {48, 8, 130.8128},
		{69, 16, 220}, {69, 32, 110}, {69, 4, 880}, {69, 2, 1760},
	} {
		s := Default()
		s.Note, s.A.Footage = c.note, c.footage
		if a, _ := s.Hz(); math.Abs(a-c.want) > 5e-5 {
			t.Errorf("note %v at %v feet: %v Hz, want %v", c.note, c.footage, a, c.want)
		}
	}
}
