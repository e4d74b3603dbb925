package draft_test

import (
	"encoding/json"
	"slices"
	"testing"

	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
	"partialcredit/synth"
)

// asked is a sheet with a naming, a comparison and a limit that are finished.
func asked() *draft.Draft {
	d := draft.New(sheet.Sheet{Title: "T"})
	for _, k := range []sheet.Kind{sheet.Name, sheet.Same, sheet.Limit} {
		e := draft.Make(k, pulse(0.2))
		switch k {
		case sheet.Name:
			e.Answers = []sheet.Answer{{Name: "narrow", Cue: "Thin.", Sound: pulse(0.1)}, {Name: "wide", Cue: "Full.", Sound: pulse(0.4)}}
		case sheet.Same:
			e.Pairs = []sheet.Pair{{Name: "two", Why: "They differ.", One: pulse(0.1), Other: pulse(0.4)}}
		}
		draft.Retell(&e, draft.Texts{}, draft.Suggest(&e, words.English))
		d.Add(-1, e)
	}
	return d
}

func field(t *testing.T, name string) *synth.Field {
	f, ok := synth.FieldByName(name)
	if !ok {
		t.Fatal(name)
	}
	return f
}

// What is set of questions makes a sheet that is read again as it was, and undone step by
// step is what it was before: no step changes another.
func TestWhatIsAskedIsKeptAndUndone(t *testing.T) {
	d := asked()
	duty, decay := field(t, "a.duty"), field(t, "amplitude.attack")
	steps := []struct {
		at     int
		change func(e *sheet.Exercise)
	}{
		{0, func(e *sheet.Exercise) { draft.ToggleReference(e, pulse(0.5)) }},
		{0, func(e *sheet.Exercise) { e.Reference.Note = 40 }},
		{0, func(e *sheet.Exercise) { draft.ToggleVary(e, 1, duty) }},
		{0, func(e *sheet.Exercise) { draft.ToggleVary(e, 1, decay) }},
		{0, func(e *sheet.Exercise) { draft.SetVary(e, 1, 0, draft.Lowest, 0.35) }},
		{0, func(e *sheet.Exercise) { draft.SetVary(e, 1, 0, draft.Highest, 0.45) }},
		{0, func(e *sheet.Exercise) { draft.ToggleVary(e, 1, duty) }},
		{1, func(e *sheet.Exercise) { draft.ToggleVary(e, 0, decay) }},
		{1, func(e *sheet.Exercise) { draft.SetVary(e, 0, 0, draft.Highest, 1) }},
		{2, func(e *sheet.Exercise) { draft.TogglePublished(e); e.Quantity.Published.Source = "Someone, 1990" }},
		{2, func(e *sheet.Exercise) { draft.SetPublished(e, 0.0123) }},
		{2, func(e *sheet.Exercise) { draft.TogglePublished(e) }},
	}
	states := []string{string(d.Sheet().JSON())}
	for i, s := range steps {
		d.ChangeExercise(s.at, "", s.change)
		state := string(d.Sheet().JSON())
		if state == states[i] {
			t.Fatalf("step %d changes nothing", i)
		}
		states = append(states, state)
		if _, err := sheet.Parse([]byte(state)); err != nil {
			t.Errorf("step %d: %v", i, err)
		}
		var read draft.Draft
		if err := json.Unmarshal([]byte(state), &read); err != nil || string(read.Sheet().JSON()) != state {
			t.Errorf("step %d is not read as it was kept: %v", i, err)
		}
	}
	for i := len(steps) - 1; i >= 0; i-- {
		d.Undo()
		if got := string(d.Sheet().JSON()); got != states[i] {
			t.Errorf("undone to %d it is otherwise", i)
		}
	}
}

// Variations stay in order and within their field, and lie round the sound.
func TestVariationsStayInOrder(t *testing.T) {
	e := asked().Sheet().Exercises[0]
	for _, f := range draft.CanVary(e.Answers[0].Sound) {
		draft.ToggleVary(&e, 0, f)
		v := e.Answers[0].Vary[0]
		if own := f.Get(&e.Answers[0].Sound); v.Between[0] > own || v.Between[1] < own || v.Between[0] == v.Between[1] || f.Check(v.Between[0]) != nil || f.Check(v.Between[1]) != nil {
			t.Errorf("%s, %v: varies between %v", f.Name, own, v.Between)
		}
		draft.SetVary(&e, 0, 0, draft.Lowest, f.Max)
		draft.SetVary(&e, 0, 0, draft.Highest, f.Min)
		if v := e.Answers[0].Vary[0].Between; v[0] != v[1] {
			t.Errorf("%s: %v", f.Name, v)
		}
		draft.ToggleVary(&e, 0, f)
		if len(e.Answers[0].Vary) != 0 {
			t.Fatalf("%s stays", f.Name)
		}
	}
	draft.SetVary(&e, 0, 9, draft.Lowest, 1)
	draft.SetVary(&e, 9, 0, draft.Lowest, 1)
	draft.ToggleVary(&e, 9, field(t, "a.duty"))
	if slices.ContainsFunc(draft.CanVary(pulse(0.2)), func(f *synth.Field) bool { return f.Name == "note" || len(f.Choices) > 0 }) {
		t.Error("what is no number of its own is offered")
	}
}

// A published threshold without its source cannot be handed out: it is said what is missing.
func TestAPublishedThresholdNeedsItsSource(t *testing.T) {
	d := asked()
	d.ChangeExercise(2, "", func(e *sheet.Exercise) { draft.TogglePublished(e) })
	text, at, ok := d.Missing()
	if ok || at != 2 || text.String() != "The published threshold has no source: write who found it, and with what sounds." {
		t.Errorf("%q, exercise %d, %v", text, at, ok)
	}
	d.ChangeExercise(2, "", func(e *sheet.Exercise) { e.Quantity.Published.Source = "Someone, 1990" })
	if text, _, ok := d.Missing(); !ok {
		t.Error(text)
	}
}
