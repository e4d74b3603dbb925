package synth

import (
	"encoding/binary"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"
)

// described reads two bytes a field as where in its range it lies, both ends
// included; what is missing keeps its default. The sound always validates.
func described(data []byte) Sound {
	s := Default()
	for _, f := range Fields() {
		if len(data) < 2 {
			break
		}
		x := float64(binary.BigEndian.Uint16(data)) / math.MaxUint16
		f.Set(&s, f.Clamp(f.Min+x*(f.Max-f.Min)))
		data = data[2:]
	}
	return s
}

// encoded is the other way round, to what two bytes can tell apart.
func encoded(s Sound) []byte {
	var data []byte
	for _, f := range Fields() {
		x := (f.Get(&s) - f.Min) / (f.Max - f.Min)
		data = binary.BigEndian.AppendUint16(data, uint16(math.Round(x*math.MaxUint16)))
	}
	return data
}

// Whatever validates sounds: finite, within full scale, also on the way to
// whatever else validates.
func FuzzSound(f *testing.F) {
	all := func(b byte) []byte { return slices.Repeat([]byte{b}, 2*len(fields)) }
	f.Add([]byte{}, all(255), false)
	f.Add(all(0), all(255), true)
	f.Add(all(128), all(77), false)
	for _, how := range hows { // the loudest there is
		s := oscillators(how, Pulse, 0.03)
		s.Amplitude.Attack = 0.002
		f.Add(encoded(s), encoded(busy(how)), how%2 == 0)
	}
	f.Fuzz(func(t *testing.T, first, second []byte, high bool) {
		a, b := described(first), described(second)
		for _, s := range []Sound{a, b} {
			if err := s.Validate(); err != nil {
				t.Fatalf("%+v does not validate: %v", s, err)
			}
		}
		rate := rates[0]
		if high {
			rate = rates[1]
		}
		play(t, a, b, rate)
	})
}

// Any bytes either are a description that validates and survives being written
// and read again, or are refused with a reason that names what is wrong.
func FuzzDescription(f *testing.F) {
	for _, text := range []string{
		`{"version": 1}`, `{"version": 1} x`, `{"version": 1, "version": 2}`, `{"version": 1.0}`, `{"version": "1"}`, `{}`, `[]`, `1`, ``, `null`,
		`{"version": 1, "note": 60, "seconds": 1e-1, "seed": -0}`, `{"version": 1, "note": 1e400}`, `{"version": 1, "": 1}`,
		`{"version": 1, "a": {"shape": "pulse", "duty": 0.03, "footage": 16}, "b": {"cents": -7.5}}`,
		`{"version": 1, "combine": {"how": "fm", "index": 10}, "lfo": {"hz": 0.05}, "a.duty": 0.5}`,
		`{"version": 1, "a": {"shape": 3}}`, `{"version": 1, "a": {"footage": 8.0}}`, `{"version": 1, "a": []}`, `{"version": 1, "x": {}}`,
		"{\"version\": 1, \"\xff\": 2}",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Parse(data)
		if err != nil {
			if !namesTheProblem(err.Error()) {
				t.Fatalf("%q is refused with %q, which names no field and no problem", data, err)
			}
			return
		}
		if !json.Valid(data) {
			t.Fatalf("%q is not JSON, but was read as %+v", data, s)
		}
		if err := s.Validate(); err != nil {
			t.Fatalf("%q was read, but does not validate: %v", data, err)
		}
		written, err := json.Marshal(s)
		if err != nil {
			t.Fatalf("%q was read, but cannot be written: %v", data, err)
		}
		again, err := Parse(written)
		if err != nil || again != s {
			t.Fatalf("%q was written as %s and read as %+v (%v), at first as %+v", data, written, again, err, s)
		}
	})
}

// namesTheProblem says whether a reason is one of those that [Parse] may give.
func namesTheProblem(reason string) bool {
	for _, start := range []string{"the sound is not JSON: ", "the sound must be a JSON object", "version is ", "unknown field "} {
		if strings.HasPrefix(reason, start) && len(reason) > len("version is ") {
			return true
		}
	}
	for _, f := range fields {
		if strings.HasPrefix(reason, f.Name+" is ") || strings.HasPrefix(reason, f.Name+" must be ") {
			return true
		}
		if group, _, nested := strings.Cut(f.Name, "."); nested && reason == group+" must be a JSON object" {
			return true
		}
	}
	return false
}
