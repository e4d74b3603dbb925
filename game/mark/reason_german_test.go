package mark

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"partialcredit/game/words"
)

var word = regexp.MustCompile(`\pL+`)

// onlyEnglish are the words of the English reasons that no German reason has.
func onlyEnglish(t *testing.T) map[string]bool {
	data, err := os.ReadFile("../words/german/marks.json")
	if err != nil {
		t.Fatal(err)
	}
	var table map[string]string
	if err := json.Unmarshal(data, &table); err != nil {
		t.Fatal(err)
	}
	found := map[string]bool{}
	for english := range table {
		for _, w := range word.FindAllString(english, -1) {
			found[w] = true
		}
	}
	for _, german := range table {
		for _, w := range word.FindAllString(german, -1) {
			delete(found, w)
		}
	}
	for _, w := range []string{"the", "of", "yours", "Yours", "target", "than"} {
		if !found[w] {
			t.Fatalf("%q is not among the English words", w)
		}
	}
	return found
}

var (
	pointed = regexp.MustCompile(`[0-9]\.[0-9]`)
	broken  = regexp.MustCompile(`%!|%[a-z[]|  | [.,;:]|[.,;:][.,;]`)
)

// inGerman checks that nothing English is left of reasons in German, and that
// what is put together is a sentence.
func inGerman(t *testing.T, english map[string]bool, reasons []Reason) {
	for _, r := range reasons {
		said := words.German().In(r.Text)
		for _, w := range word.FindAllString(said, -1) {
			if english[w] {
				t.Errorf("%q is said in German as %q: %q is English", r.Text, said, w)
			}
		}
		for _, s := range []string{said, r.Text.String()} {
			if broken.MatchString(s) || !strings.HasSuffix(s, ".") {
				t.Errorf("%q is no sentence", s)
			}
		}
		if pointed.MatchString(said) {
			t.Errorf("%q has a point within a number", said)
		}
	}
}
