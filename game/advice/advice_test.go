package advice

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

const examples = "../../testdata/advice"

// expected is what each example gives beside its difficulty, and nothing else: so every
// rule has examples that trigger it and many that do not.
var expected = map[string]string{
	"good":                  "",
	"unheard":               "unheard mistake",
	"unheard-in-sum":        "met mistake, unheard mistake",
	"unheard-beside-target": "unheard warning, another note",
	"unheard-at-start":      "unheard note",
	"unheard-in-show":       "unheard mistake",
	"another-duty":          "another note",
	"another-sawtooth":      "another note",
	"another-octave":        "another note, another note",
	"another-all":           "another warning",
	"met":                   "met mistake",
	"rises":                 "rises note",
	"another-in-sum":        "another note",
	"rises-much":            "rises warning",
	"alike-answers":         "alike mistake",
	"alike-answers-varied":  "alike mistake",
	"unlike-answers":        "",
	"told-wrong":            "told mistake, alike mistake",
	"told-right":            "",
	"limit-start":           "threshold mistake",
	"limit-far-below":       "threshold note",
	"limit-ends-early":      "threshold warning, threshold warning",
	"limit-loud":            "loud note",
	"limit-good":            "",
	"low":                   "low warning",
	"low-but-rich":          "",
	"high":                  "high warning",
	"loud":                  "loud note",
	"silent":                "silent mistake",
	"drawn":                 "met warning",
	"drawn-well":            "",
}

func example(t *testing.T, name string) *sheet.Sheet {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(examples, name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	s, err := sheet.Parse(data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return s
}

func TestExamples(t *testing.T) {
	files, err := os.ReadDir(examples)
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(expected) {
		t.Errorf("there are %d examples, and %d are expected", len(files), len(expected))
	}
	for _, f := range files {
		name := strings.TrimSuffix(f.Name(), ".json")
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a := New(example(t, name), 0)
			for !a.Step(1) {
			}
			var got []string
			for _, found := range a.Found() {
				t.Logf("%s %s, control %d: %s", found.Weight, found.Rule, found.Control, found.Say(words.English))
				if found.Rule != Difficulty {
					got = append(got, string(found.Rule)+" "+found.Weight.String())
				}
			}
			t.Logf("%d marks", a.Marks())
			want := strings.Split(expected[name], ", ")
			if expected[name] == "" {
				want = nil
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("it gives %q, want %q", got, want)
			}
			if a.Marks() > MostMarks {
				t.Errorf("it took %d marks, more than %d", a.Marks(), MostMarks)
			}
		})
	}
}

// What is found of a pulse of a quarter is its complement, named by its value.
func TestAnotherIsNamed(t *testing.T) {
	for _, a := range Advise(example(t, "another-duty"), 0) {
		if a.Rule != Another {
			continue
		}
		if got := a.Say(words.English); !strings.Contains(got, "75.0 %") || a.Control != 0 || a.Settings[0] < 0.7495 || a.Settings[0] > 0.7505 {
			t.Errorf("%v: %s", a.Settings, got)
		}
		if got := a.Say(words.German()); !strings.Contains(got, "75,0 %") {
			t.Errorf("in German: %s", got)
		}
		return
	}
	t.Error("it is not found")
}

// A step of the work is no more than one sound rendered and measured.
func TestStepsAreSmall(t *testing.T) {
	a := New(example(t, "good"), 0)
	for before := 0; ; before = a.Marks() {
		done := a.Step(1)
		if n := a.Marks() - before; n > 1 {
			t.Fatalf("one step took %d marks", n)
		}
		if done {
			break
		}
	}
	if len(a.Found()) == 0 || !a.Step(1) {
		t.Error("it has no end, or nothing was found")
	}
	// All at once it is the same.
	b := New(example(t, "good"), 0)
	if !b.Step(10 * MostMarks) {
		t.Error("it has no end")
	}
	if len(b.Found()) != len(a.Found()) || b.Marks() != a.Marks() {
		t.Error("in larger steps something else is found")
	}
}

// What is stopped does nothing more.
func TestStop(t *testing.T) {
	for _, steps := range []int{0, 1, 7} {
		a := New(example(t, "another-duty"), 0)
		a.Step(steps)
		before, found := a.Marks(), len(a.Found())
		a.Stop()
		if !a.Step(1) || a.Marks() > before+1 || len(a.Found()) != found {
			t.Errorf("after %d steps: %d marks and %d advices, before the stop %d and %d", steps, a.Marks(), len(a.Found()), before, found)
		}
	}
}
