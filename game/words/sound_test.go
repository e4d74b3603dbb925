package words

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// Every field of a sound has its names in German.
func TestGermanOfFields(t *testing.T) {
	for _, f := range synth.Fields() {
		if !German().Has(f.Label) {
			t.Errorf("no German for %q", f.Label)
		}
		for i := range f.Choices {
			if c := f.Format(float64(i)); f.Unit != synth.Feet && !German().Has(c) {
				t.Errorf("no German for %q of %s", c, f.Name)
			}
		}
	}
}

// Every value of every field, and every difference of two, is written as in
// German. The numbers are compared with those of the Unicode CLDR, by way of
// golang.org/x/text, which knows the decimal comma; that the unit follows after
// a space, but ° and ′ without one, is DIN 5008 and ISO 80000-1 (from memory).
func TestGermanValues(t *testing.T) {
	cldr := message.NewPrinter(language.German)
	units := map[string]string{
		" cents": " Cent", " semitones": " Halbtöne", " points": " Prozentpunkte",
		" %": " %", " Hz": " Hz", " s": " s", " ms": " ms", " dB": " dB", "°": "°", "′": "′", "": "",
	}
	check := func(field, english string) {
		got := German().Value(english)
		before, rest := "", english
		for _, sign := range []string{"× ", "+", "−"} {
			if after, ok := strings.CutPrefix(rest, sign); ok {
				before, rest = sign, after
			}
		}
		end := strings.LastIndexAny(rest, "0123456789") + 1
		unit, ok := units[rest[end:]]
		v, err := strconv.ParseFloat(rest[:end], 64)
		if !ok || err != nil {
			t.Fatalf("%s: %q is no quantity", field, english)
		}
		_, decimals, _ := strings.Cut(rest[:end], ".")
		want := before + cldr.Sprint(number.Decimal(v, number.Scale(len(decimals)), number.NoSeparator())) + unit
		if got != want {
			t.Errorf("%s: %q is %q in German, want %q", field, english, got, want)
		}
	}
	for _, f := range synth.Fields() {
		if len(f.Choices) > 0 && f.Unit != synth.Feet {
			continue
		}
		for i := range 201 {
			v := f.Min + (f.Max-f.Min)*float64(i)/200
			if f.Log {
				v = f.Min * math.Pow(f.Max/f.Min, float64(i)/200)
			}
			check(f.Name, f.Format(v))
		}
		if len(f.Choices) == 0 {
			q := sheet.Quantity{Set: []string{f.Name}}
			for v := 0.001; v < 1000; v *= 1.3 {
				check(f.Name, q.Format(v))
			}
		}
	}
	q := sheet.Quantity{Set: []string{"level"}}
	check("level", q.Format(1.5))

	// As the brief of the languages has them.
	for _, c := range []struct {
		field string
		v     float64
		want  string
	}{
		{"a.cents", 7.5, "+7,5 Cent"}, {"a.duty", 0.34, "34,0 %"}, {"a.footage", 2, "8′"}, {"a.shape", 1, "Sägezahn"},
		{"combine.ratio", 2.005, "× 2,005"}, {"envelope.a", -3, "−3,0 Halbtöne"}, {"amplitude.attack", 0.044, "44 ms"}, {"a.phase", 0.25, "90°"},
	} {
		f, _ := synth.FieldByName(c.field)
		if got := German().Value(f.Format(c.v)); got != c.want {
			t.Errorf("%s %v: %q, want %q", c.field, c.v, got, c.want)
		}
	}
}
