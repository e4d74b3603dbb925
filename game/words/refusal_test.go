package words

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/sheet"
)

func TestRefusal(t *testing.T) {
	for _, c := range []struct{ english, want string }{
		{"exercise 3: task is missing", "Aufgabe 3: task fehlt"},
		{"exercise 3: a control: a.duty is 1.5; it must lie between 0.03 and 0.97", "Aufgabe 3: ein Regler: a.duty ist 1.5; möglich ist 0.03 bis 0.97"},
		{"min of a control: a.duty must be a number", "min eines Reglers: a.duty muss eine Zahl sein"},
		{"exercise 1: answer Sine: vary: note is 97; it must lie between 24 and 96 (MIDI note number)", "Aufgabe 1: Antwort Sine: Abwandlung (vary): note ist 97; möglich ist 24 bis 96 (Nummer des Tons in MIDI)"},
		{"exercise 2: answer The 100 % one: cue is missing", "Aufgabe 2: Antwort The 100 % one: cue fehlt"},
		{"This slip of %s, the Wren belongs to another sheet, or to another version of it.", "Dieser Zettel von %s, the Wren gehört zu einem anderen Blatt oder zu einer anderen Fassung davon."},
		{"This slip is damaged: a part of it is missing or changed. Ask for it again.", German().Say("This slip is damaged: a part of it is missing or changed. Ask for it again.")},
		{"This has no form", "This has no form"}, {"", ""}, {"Name", "Name"},
	} {
		if got := German().Refusal(c.english); got != c.want {
			t.Errorf("%q: %q, want %q", c.english, got, c.want)
		}
		if got := English.Refusal(c.english); got != c.english {
			t.Errorf("English changes %q to %q", c.english, got)
		}
	}
}

// Whatever is wrong with a sheet, what is said of it has no English left: every value of an
// exercise of each kind is left out, and replaced by one of every kind of JSON.
func TestRefusedSheetsAreGerman(t *testing.T) {
	english := regexp.MustCompile(`\b(is|must|missing|the|it|has|sets|and|unknown|wrong|are|which|cannot|of|number|line|json|control|answer|exercise)\b`)
	seen := map[string]bool{}
	refused := func(data []byte) {
		_, err := sheet.Parse(data)
		if err == nil {
			return
		}
		said := German().Refusal(err.Error())
		if left := english.FindAllString(said, -1); left != nil {
			t.Errorf("%q: %q of %q", left, said, err)
		}
		seen[regexp.MustCompile(`[\d.]+`).ReplaceAllString(said, "0")] = true
	}
	for _, text := range []string{"", "{", "[]", "7", `{"version": 1,` + "\n" + `"title" "x"}`, `{"version": 2}`, `{"version": 1e999}`, `{"version": 1, "title": "T"}`, `{"version": 1, "title": "T", "what": 1}`} {
		refused([]byte(text))
	}
	kinds := map[sheet.Kind]bool{}
	for _, s := range sheet.Course() {
		for i := range s.Exercises {
			e := s.Exercises[i]
			if kinds[e.Kind] {
				continue
			}
			kinds[e.Kind] = true
			e.ID, e.Title, e.Task, e.Teach = "x", "X?", "X.", "X."
			e.Notes = &sheet.Range{40, 60}
			e.Answers, e.Pairs = slices.Clone(e.Answers), slices.Clone(e.Pairs)
			for j := range e.Answers {
				e.Answers[j].Name, e.Answers[j].Cue = fmt.Sprint("x", j), "X."
			}
			for j := range e.Pairs {
				e.Pairs[j].Name, e.Pairs[j].Why = fmt.Sprint("x", j), "X."
			}
			one := sheet.Sheet{Version: 1, Title: "X", Exercises: []sheet.Exercise{e}}
			for _, data := range changed(t, one.JSON()) {
				refused(data)
			}
		}
	}
	if len(kinds) != 5 || len(seen) < 100 {
		t.Errorf("%d kinds, %d sentences", len(kinds), len(seen))
	}
}

// changed gives a JSON text with each value left out and replaced, one at a time.
func changed(t *testing.T, data []byte) (all [][]byte) {
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	keep := func() {
		out, err := json.Marshal(tree)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, out)
	}
	values := []any{"x", -1.5, 1000.0, true, nil, []any{}, []any{3.0, 2.0, 1.0}, map[string]any{}, map[string]any{"x": 1}}
	var visit func(v any)
	visit = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, before := range v {
				visit(before)
				delete(v, key)
				keep()
				for _, other := range values {
					v[key] = other
					keep()
				}
				v[key] = before
			}
		case []any:
			for i, before := range v {
				visit(before)
				for _, other := range values {
					v[i] = other
					keep()
				}
				v[i] = before
			}
		}
	}
	visit(tree)
	return all
}

// The forms of the table take nothing for one another: each is known as itself, with names
// in its gaps.
func TestFormsAreTold(t *testing.T) {
	for _, f := range German().forms {
		values := make([]any, len(f.pieces)-1)
		for i := range values {
			values[i] = string(rune('p' + i))
		}
		english := strings.Join(f.pieces, "%s")
		if got, want := German().Refusal(English.Say(english, values...)), English.Say(f.own, values...); got != want {
			t.Errorf("%q: %q, want %q", english, got, want)
		}
	}
	if !slices.ContainsFunc(German().forms, func(f form) bool { return len(f.pieces) > 2 }) {
		t.Error("no form has several gaps")
	}
}
