package sheet

import (
	"encoding/base64"
	"encoding/binary"
	"encoding/json"

	"partialcredit/game/chance"
	"partialcredit/synth"
)

// JSON writes the sheet in the fewest words: what has its default is left out. The
// same sheet gives the same bytes in every version of the program, which its
// fingerprint rests on.
func (s *Sheet) JSON() []byte {
	text, err := json.Marshal(s.brief())
	if err != nil {
		panic("sheet: " + err.Error()) // texts and finite numbers
	}
	return text
}

// Readable is JSON as people edit it.
func (s *Sheet) Readable() []byte {
	text, err := json.MarshalIndent(s.brief(), "", "  ")
	if err != nil {
		panic("sheet: " + err.Error())
	}
	return append(text, '\n')
}

// Fingerprint tells sheets apart: eleven characters of base64url. Changing a letter of
// a sheet changes it.
func (s *Sheet) Fingerprint() string {
	return base64.RawURLEncoding.EncodeToString(binary.BigEndian.AppendUint64(nil, chance.Seed(string(s.JSON()))))
}

// A written struct has the fields of what it writes in the order of the format; those
// that are left out are empty.
type (
	writtenSheet struct {
		Version    int               `json:"version"`
		Title      string            `json:"title"`
		Strictness Strictness        `json:"strictness,omitempty"`
		Vary       bool              `json:"vary,omitempty"`
		Exercises  []writtenExercise `json:"exercises"`
	}
	writtenExercise struct {
		ID        string           `json:"id"`
		Kind      Kind             `json:"kind,omitempty"`
		Title     string           `json:"title"`
		Task      string           `json:"task"`
		Teach     string           `json:"teach"`
		Target    any              `json:"target,omitempty"`
		Controls  []writtenControl `json:"controls,omitempty"`
		Quantity  *writtenQuantity `json:"quantity,omitempty"`
		Answers   []writtenAnswer  `json:"answers,omitempty"`
		Reference any              `json:"reference,omitempty"`
		Pairs     []writtenPair    `json:"pairs,omitempty"`
		Notes     *Range           `json:"notes,omitempty"`
		Questions int              `json:"questions,omitempty"`
	}
	writtenControl struct {
		Set   []string `json:"set"`
		Label string   `json:"label,omitempty"`
		Min   any      `json:"min,omitempty"`
		Max   any      `json:"max,omitempty"`
		Start any      `json:"start,omitempty"`
		Draw  *[2]any  `json:"draw,omitempty"`
	}
	writtenQuantity struct {
		Name      string     `json:"name"`
		Set       []string   `json:"set"`
		Ratio     bool       `json:"ratio,omitempty"`
		Start     float64    `json:"start"`
		Least     float64    `json:"least"`
		Most      float64    `json:"most"`
		Published *Published `json:"published,omitempty"`
	}
	writtenAnswer struct {
		Name  string      `json:"name"`
		Cue   string      `json:"cue"`
		Sound any         `json:"sound"`
		Vary  []Variation `json:"vary,omitempty"`
	}
	writtenPair struct {
		Name  string      `json:"name"`
		One   any         `json:"one"`
		Other any         `json:"other"`
		Same  bool        `json:"same,omitempty"`
		Why   string      `json:"why"`
		Vary  []Variation `json:"vary,omitempty"`
	}
)

func (s *Sheet) brief() writtenSheet {
	w := writtenSheet{Version: Version, Title: s.Title, Strictness: s.Strictness, Vary: s.Vary, Exercises: []writtenExercise{}}
	for i := range s.Exercises {
		w.Exercises = append(w.Exercises, s.Exercises[i].brief())
	}
	return w
}

func (e *Exercise) brief() writtenExercise {
	w := writtenExercise{ID: e.ID, Kind: e.Kind, Title: e.Title, Task: e.Task, Teach: e.Teach, Notes: e.Notes, Questions: e.Questions}
	if e.Kind == Match {
		w.Kind = ""
	}
	if e.Questions == DefaultQuestions {
		w.Questions = 0
	}
	if e.Target.Version != 0 {
		w.Target = brief(e.Target)
	}
	for i := range e.Controls {
		w.Controls = append(w.Controls, e.Controls[i].brief())
	}
	if q := e.Quantity; q != nil {
		written := writtenQuantity(*q)
		w.Quantity = &written
	}
	for _, a := range e.Answers {
		w.Answers = append(w.Answers, writtenAnswer{a.Name, a.Cue, brief(a.Sound), a.Vary})
	}
	if e.Reference != nil {
		w.Reference = brief(*e.Reference)
	}
	for _, p := range e.Pairs {
		w.Pairs = append(w.Pairs, writtenPair{p.Name, brief(p.One), brief(p.Other), p.Same, p.Why, p.Vary})
	}
	return w
}

func (c *Control) brief() writtenControl {
	w := writtenControl{Set: c.Fields, Label: c.Label}
	if c.Label == c.field.Label {
		w.Label = ""
	}
	for _, v := range []struct {
		value, standard float64
		to              *any
	}{{c.Min, c.field.Min, &w.Min}, {c.Max, c.field.Max, &w.Max}, {c.Start, c.field.Default, &w.Start}} {
		if v.value != v.standard {
			*v.to = written(c.field, v.value)
		}
	}
	if c.Draw != nil {
		w.Draw = &[2]any{written(c.field, c.Draw[0]), written(c.field, c.Draw[1])}
	}
	return w
}

// brief is a sound with only what differs from the default, by the names of the fields.
func brief(s synth.Sound) map[string]any {
	text := map[string]any{"version": synth.Version}
	standard := synth.Default()
	for _, f := range synth.Fields() {
		if v := f.Get(&s); v != f.Get(&standard) {
			text[f.Name] = written(&f, v)
		}
	}
	return text
}

// written is a value of a field as it stands in JSON.
func written(f *synth.Field, v float64) any {
	switch {
	case f.Unit == synth.Feet:
		return json.Number(f.Choices[int(v)])
	case len(f.Choices) > 0:
		return f.Choices[int(v)]
	}
	return v
}
