package credit

import (
	"partialcredit/game/mark"
	"partialcredit/synth"
)

// A Compared is a pair at one note and the marks of its second for its first.
type Compared struct {
	Pair
	Note  int
	Marks float64
}

// notes are those at which pairs are compared: low, middle and high.
var notes = []int{36, 57, 81}

// markers keep targets that are prepared: many pairs have the same first sound.
type markers map[synth.Sound]*mark.Reference

func (m markers) mark(target, yours synth.Sound) float64 {
	r, ok := m[target]
	if !ok {
		r = mark.Prepare(target)
		m[target] = r
	}
	return r.Mark(yours, 1).Marks
}

// at marks the second of a pair for its first at a note.
func (m markers) at(p Pair, note int) (float64, error) {
	a, b, err := p.At(note)
	if err != nil {
		return 0, err
	}
	return m.mark(a, b), nil
}

// compare marks pairs at every one of the notes.
func (m markers) compare(pairs []Pair) ([]Compared, error) {
	var all []Compared
	for _, p := range pairs {
		for _, note := range notes {
			marks, err := m.at(p, note)
			if err != nil {
				return nil, err
			}
			all = append(all, Compared{p, note, marks})
		}
	}
	return all, nil
}
