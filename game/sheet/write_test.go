package sheet

import (
	"bufio"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"partialcredit/synth"
)

// What is written is read as the same again, also as people edit it and from a link.
func TestWrittenSheets(t *testing.T) {
	for _, s := range Course() {
		for how, data := range map[string][]byte{"short": s.JSON(), "readable": s.Readable()} {
			back, err := Parse(data)
			if err != nil {
				t.Errorf("%s, %s: %v", s.Title, how, err)
				continue
			}
			if d := cmp.Diff(s, back, cmp.AllowUnexported(Control{}), cmp.Comparer(func(a, b *synth.Field) bool { return a.Name == b.Name })); d != "" {
				t.Errorf("%s, %s: %s", s.Title, how, d)
			}
		}
		back, err := ReadFragment("https://example.org/#" + s.Fragment())
		if err != nil || string(back.JSON()) != string(s.JSON()) {
			t.Errorf("%s: from its link: %v", s.Title, err)
		}
	}
}

// A fingerprint stays: slips carry it. The file was written when sheets got them.
func TestFingerprints(t *testing.T) {
	file, err := os.Open("../../testdata/links/fingerprints.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	n := 0
	for lines := scan(file); lines.Scan(); {
		print, fragment, found := strings.Cut(lines.Text(), " ")
		if !found || strings.HasPrefix(print, "//") {
			continue
		}
		n++
		s, err := ReadFragment(fragment)
		if err != nil {
			t.Errorf("%s: %v", print, err)
			continue
		}
		if got := s.Fingerprint(); got != print {
			t.Errorf("%s: the fingerprint is %s, and was %s", s.Title, got, print)
		}
	}
	if n < 14 {
		t.Errorf("only %d sheets", n)
	}
}

// scan reads lines as long as links are.
func scan(r io.Reader) *bufio.Scanner {
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 1<<20)
	return lines
}
