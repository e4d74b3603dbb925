package advice

import (
	"os"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

func TestTry(t *testing.T) {
	files, _ := os.ReadDir("../../testdata/advice")
	for _, f := range files {
		if only := os.Getenv("ONLY"); only != "" && !strings.HasPrefix(f.Name(), only) {
			continue
		}
		data, _ := os.ReadFile("../../testdata/advice/" + f.Name())
		s, err := sheet.Parse(data)
		if err != nil {
			t.Errorf("%s: %v", f.Name(), err)
			continue
		}
		for i := range s.Exercises {
			a := New(s, i)
			for !a.Step(1) {
			}
			t.Logf("== %s %d marks", f.Name(), a.Marks())
			for _, f := range a.Found() {
				t.Logf("   %-7s %-10s %s", f.Weight, f.Rule, f.Say(words.English))
			}
		}
	}
}
