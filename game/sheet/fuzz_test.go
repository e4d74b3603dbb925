package sheet

import (
	"testing"

	"partialcredit/synth"
)

// FuzzParse reads any text as a sheet: it is refused, or every sound that it can come
// to is one that can be played.
func FuzzParse(f *testing.F) {
	files, err := course.ReadDir("course")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		data, err := course.ReadFile("course/" + file.Name())
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`{"version": 1, "title": "T", "exercises": [{"id": "x", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1}, "controls": [{"set": ["a.cents"]}]}]}`))
	f.Add([]byte(`{"version": 1, "title": "T", "exercises": [{"id": "x", "kind": "limit", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1}, "quantity": {"name": "Q", "set": ["a.cents"], "start": 9, "least": 1e-300, "most": 90}}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Parse(data)
		if err != nil {
			return
		}
		for i := range s.Exercises {
			e := &s.Exercises[i]
			for name, sound := range sounds(e) {
				if err := sound.Validate(); err != nil {
					t.Errorf("%s: %s: %v", e.ID, name, err)
				}
			}
		}
	})
}

// sounds are the outermost ones that an exercise can come to.
func sounds(e *Exercise) map[string]synth.Sound {
	all := map[string]synth.Sound{}
	switch e.Kind {
	case Match, Show:
		all["target"], all["start"] = e.Target, e.Start()
	case Limit:
		most := e.Target
		e.Quantity.Apply(&most, e.Quantity.Most)
		all["target"], all["most"] = e.Target, most
	}
	for _, a := range e.Answers {
		for name, at := range map[string]float64{" from": 0, " to": 1} {
			s := a.Sound
			for i := range a.Vary {
				a.Vary[i].Apply(&s, at)
			}
			all[a.Name+name] = s
		}
	}
	for _, p := range e.Pairs {
		for name, at := range map[string]float64{" from": 0, " to": 1} {
			one, other := p.One, p.Other
			for i := range p.Vary {
				p.Vary[i].Apply(&one, at)
				p.Vary[i].Apply(&other, at)
			}
			all[p.Name+name], all[p.Name+" other"+name] = one, other
		}
	}
	return all
}
