package sheet

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestStrictness(t *testing.T) {
	sheet := func(strictness string) string {
		return `{"version": 1, "title": "t", ` + strictness + `"exercises": [{"id": "x", "title": "x?", "task": "x.", "teach": "x.",
			"target": {"version": 1}, "controls": [{"set": ["a.cents"]}]}]}`
	}
	for _, c := range []struct {
		text  string
		want  Strictness
		times float64 // thresholds times 4, 2, 1
	}{
		{"", Expert, 1},
		{`"strictness": "expert", `, Expert, 1},
		{`"strictness": "practised", `, Practised, 2},
		{`"strictness": "beginner", `, Beginner, 4},
	} {
		s, err := Parse([]byte(sheet(c.text)))
		if err != nil {
			t.Fatalf("%s: %v", c.text, err)
		}
		if s.Strictness != c.want || s.Strictness.Times() != c.times {
			t.Errorf("%s: %v, times %v", c.text, s.Strictness, s.Strictness.Times())
		}
		written, err := json.Marshal(s.Strictness)
		var back Strictness
		if err != nil || json.Unmarshal(written, &back) != nil || back != c.want {
			t.Errorf("%s is written as %s, %v", c.text, written, err)
		}
	}
	for _, bad := range []string{`"harsh"`, `2`, `null, "x": 1`} {
		_, err := Parse([]byte(sheet(`"strictness": ` + bad + `, `)))
		if err == nil {
			t.Errorf("strictness %s is read", bad)
		} else if !strings.Contains(err.Error(), "beginner") && !strings.Contains(err.Error(), "unknown field") {
			t.Errorf("strictness %s: %v does not say what is possible", bad, err)
		}
	}
}
