package words

import (
	"encoding/json"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// alike are the words that are the same in German; what has no word in it is anyway.
var alike = []string{"AM", "FM", "Fall", "LFO", "Link", "Name", "Tremolo", "Vibrato"}

var letters = regexp.MustCompile(`\pL{2}`)

// tables are the files of German, by name.
func tables(t *testing.T) map[string]map[string]string {
	files, err := german.ReadDir("german")
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]map[string]string{}
	for _, f := range files {
		data, err := german.ReadFile(path.Join("german", f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		var texts map[string]string
		if err := json.Unmarshal(data, &texts); err != nil {
			t.Fatalf("%s: %v", f.Name(), err)
		}
		all[f.Name()] = texts
	}
	return all
}

// Everything that is said has its German, with the same values put in.
func TestGermanIsComplete(t *testing.T) {
	said := spoken(t)
	if len(said) < 100 {
		t.Errorf("only %d sentences were found in the code", len(said))
	}
	for text, where := range said {
		if english := verbs(text); len(english) == 0 && strings.Contains(text, "%%") {
			t.Errorf("%s: %q puts nothing in, so its signs are doubled on the screen", where, text)
		}
		if !German().Has(text) && letters.MatchString(text) {
			t.Errorf("%s: no German for %q", where, text)
		}
	}
	for _, more := range []map[string]string{written(t), handed(), refused(t)} {
		for text, where := range more {
			if !German().Has(text) && letters.MatchString(text) {
				t.Errorf("%s: no German for %q", where, text)
			}
		}
	}
}

// No table has a sentence that nobody says, or one twice in different words.
func TestGermanIsUsed(t *testing.T) {
	said := spoken(t)
	for form, where := range refused(t) {
		said[form] = where
	}
	known := maps.Clone(said)
	for _, more := range []map[string]string{written(t), handed(), sounds()} {
		for text, where := range more {
			known[text] = where
		}
	}
	before := map[string]string{}
	for file, texts := range tables(t) {
		for english, german := range texts {
			if _, ok := known[english]; !ok {
				t.Errorf("%s: nobody says %q", file, english)
			}
			if other, ok := before[english]; ok && german != other {
				t.Errorf("%s: the German of %q is %q, and %q elsewhere", file, english, german, other)
			}
			before[english] = german
			if english == german && letters.MatchString(english) && !slices.Contains(alike, english) {
				t.Errorf("%s: %q is still English", file, english)
			}
			if _, put := said[english]; !put {
				continue // nothing is put into it: its signs are signs
			}
			if a, b := verbs(english), verbs(german); !slices.Equal(a, b) {
				t.Errorf("%s: %q takes %q, its German %q", file, english, a, b)
			}
		}
	}
}

// The check of the formats sees what it must.
func TestVerbs(t *testing.T) {
	for _, c := range []struct {
		format string
		want   []string
	}{
		{"50 %", nil}, {"%d %% of %s", []string{"1d", "2s"}}, {"%[2]s, %[1]d", []string{"1d", "2s"}},
		{"%[2]s, %d", []string{"2s", "3d"}}, {"%.1f", []string{"1f"}}, {"%s, %[1]s", []string{"1s"}},
	} {
		if got := verbs(c.format); !slices.Equal(got, c.want) {
			t.Errorf("%q: %q, want %q", c.format, got, c.want)
		}
	}
}

var verb = regexp.MustCompile(`%(%|[-+# 0]*[0-9]*(?:\.[0-9]+)?(?:\[([0-9]+)\])?([a-zA-Z]))`)

// verbs lists what a format puts in, as "1d" for argument 1 as %d, each once and
// in the order of the arguments (package fmt).
func verbs(format string) (all []string) {
	next := 1
	for _, m := range verb.FindAllStringSubmatch(format, -1) {
		if m[1] == "%" {
			continue
		}
		if m[2] != "" {
			next = int(m[2][0] - '0')
		}
		all = append(all, string(rune('0'+next))+m[3])
		next++
	}
	slices.Sort(all)
	return slices.Compact(all)
}
