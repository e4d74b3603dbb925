package words

import "testing"

// The decimal comma and the space before the unit are those of DIN 1333 and DIN
// 1301-1 (from memory), which ISO 80000-1 allows too.
func TestGermanQuantities(t *testing.T) {
	l := &Language{decimal: ",", texts: map[string]string{"cents": "Cent", "sawtooth": "Sägezahn", "%s of %s": "%[2]s: %[1]s"}}
	for _, c := range []struct{ english, want string }{
		{"+7.5 cents", "+7,5 Cent"},
		{"34.0 %", "34,0 %"},
		{"× 2.005", "× 2,005"},
		{"8′", "8′"},
		{"sawtooth", "Sägezahn"},
		{"no such word", "no such word"},
		{"1.", "1."},
	} {
		if got := l.Value(c.english); got != c.want {
			t.Errorf("%q: %q, want %q", c.english, got, c.want)
		}
		if got := English.Value(c.english); got != c.english {
			t.Errorf("English changes %q to %q", c.english, got)
		}
	}
	if got := l.In(Say("%s of %s", "sawtooth", Say("%d %s", 3, "cents"))); got != "3 Cent: Sägezahn" {
		t.Errorf("got %q", got)
	}
}

// Tags as browsers give them: BCP 47, the most preferred first.
func TestChoose(t *testing.T) {
	for _, c := range []struct {
		preferred []string
		want      string
	}{
		{nil, "en"}, {[]string{"de"}, "de"}, {[]string{"de-CH", "en"}, "de"}, {[]string{"en-GB", "de"}, "en"},
		{[]string{"xx", "DE-at"}, "de"}, {[]string{"xx", "den"}, "en"},
	} {
		if got := Choose(c.preferred).Tag; got != c.want {
			t.Errorf("%v: %s, want %s", c.preferred, got, c.want)
		}
	}
}
