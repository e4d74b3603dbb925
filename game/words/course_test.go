package words_test

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

// A text of the course and how long its translation may be: it stands in the
// same place as the English, which game/sheet holds to a little less.
func courseTexts() map[string]int {
	texts := map[string]int{}
	for _, s := range sheet.Course() {
		texts[s.Title] = 48
		for _, e := range s.Exercises {
			texts[e.Title], texts[e.Task], texts[e.Teach] = 60, 145, 145
			for _, c := range e.Controls {
				texts[c.Label] = 34
			}
			for _, a := range e.Answers {
				texts[a.Name], texts[a.Cue] = 18, 110
			}
			for _, p := range e.Pairs {
				texts[p.Name], texts[p.Why] = 60, 140
			}
			if q := e.Quantity; q != nil {
				texts[q.Name] = 30
				if q.Published != nil {
					texts[q.Published.Source] = 90
				}
			}
		}
	}
	return texts
}

func TestTheCourseIsGermanToo(t *testing.T) {
	german, texts := words.German(), courseTexts()
	for text, most := range texts {
		if !german.Has(text) {
			t.Errorf("no German for %q", text)
			continue
		}
		own := german.Say(text)
		if n := len([]rune(own)); n > most {
			t.Errorf("%d characters, at most %d: %s", n, most, own)
		}
		if end := text[len(text)-1:]; strings.Contains(".?", end) != strings.Contains(".?", own[len(own)-1:]) {
			t.Errorf("%q ends otherwise than %q", own, text)
		}
	}
	if len(texts) < 600 {
		t.Errorf("the course has %d texts only", len(texts))
	}
}

// What the course says no longer is not kept.
func TestTheTableOfTheCourseHasNothingElse(t *testing.T) {
	data, err := os.ReadFile("german/course.json")
	if err != nil {
		t.Fatal(err)
	}
	var table map[string]string
	if err := json.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	texts := courseTexts()
	for _, text := range slices.Sorted(maps.Keys(table)) {
		if _, used := texts[text]; !used {
			t.Errorf("the course does not say %q", text)
		}
	}
}
