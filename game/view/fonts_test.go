package view

import (
	"encoding/json"
	"go/scanner"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The fonts that are built in are cut from the complete ones of golang.org/x/image: every character
// that is left has the same width and the same outline.
func TestFontsAreThoseTheyWereCutFrom(t *testing.T) {
	for _, tt := range []struct {
		name      string
		cut, full *typeface
	}{{"regular", regular, newTypeface(goregular.TTF)}, {"bold", bold, newTypeface(gobold.TTF)}} {
		if tt.cut.em != tt.full.em {
			t.Fatalf("%s: %v units to the em, want %v", tt.name, tt.cut.em, tt.full.em)
		}
		same := 0
		for r := rune(0); r <= 0xFFFF; r++ {
			g, advance := tt.cut.glyph(r)
			h, want := tt.full.glyph(r)
			if g == 0 {
				if h != 0 && unicode.In(r, unicode.Latin) && r < 0x180 {
					t.Errorf("%s: %q is gone", tt.name, r)
				}
				continue
			}
			outline := slices.Clone(tt.cut.outline(g))
			if advance != want || !slices.Equal(outline, tt.full.outline(h)) {
				t.Errorf("%s: %q is not as in the complete font; %v em wide, want %v", tt.name, r, advance, want)
			}
			same++
		}
		t.Logf("%s: %d characters", tt.name, same)
		if same < 300 { // Latin-1 and Latin Extended-A alone are 319 (Unicode's charts)
			t.Errorf("%s: %d characters only", tt.name, same)
		}
	}
}

// Whatever the app might write is in a string of its sources or in a file that is built in.
func TestEveryCharacterThatIsWrittenHasAGlyph(t *testing.T) {
	seen := map[rune]string{}
	note := func(where, text string) {
		for _, r := range text {
			if !unicode.IsControl(r) && seen[r] == "" {
				seen[r] = where
			}
		}
	}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.Contains(path, "testdata") {
			return err
		}
		switch {
		case strings.HasSuffix(path, "_test.go"), strings.HasSuffix(path, "ui/breaks.go"): // which knows signs that others write
		case strings.HasSuffix(path, ".go"):
			eachLiteral(t, path, note)
		case strings.HasSuffix(path, ".json"):
			eachJSONString(t, path, note)
		case !slices.Contains([]string{".ttf", ".sh"}, filepath.Ext(path)):
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			note(path, string(data))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for r, where := range seen {
		for name, f := range map[string]*typeface{"regular": regular, "bold": bold} {
			if g, _ := f.glyph(r); g == 0 {
				t.Errorf("%s: %q (%U) has no glyph in the %s font; fonts/subset.sh has the list", where, r, r, name)
			}
		}
	}
	// A search that finds nothing would pass for complete.
	if seen['e'] == "" || seen['−'] == "" || len(seen) < 90 {
		t.Errorf("only %d characters were found", len(seen))
	}
}

func eachLiteral(t *testing.T, path string, note func(where, text string)) {
	source, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var s scanner.Scanner
	s.Init(token.NewFileSet().AddFile(path, -1, len(source)), source, nil, 0)
	for {
		switch _, kind, text := s.Scan(); kind {
		case token.EOF:
			return
		case token.STRING:
			text, err := strconv.Unquote(text)
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			if utf8.ValidString(text) { // else it is bytes of a file, and never written
				note(path, text)
			}
		case token.CHAR:
			r, _, _, err := strconv.UnquoteChar(text[1:], '\'')
			if err != nil {
				t.Fatalf("%s: %v", path, err)
			}
			note(path, string(r))
		}
	}
}

func eachJSONString(t *testing.T, path string, note func(where, text string)) {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var content any
	if err := json.Unmarshal(data, &content); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case string:
			note(path, v)
		case []any:
			for _, w := range v {
				walk(w)
			}
		case map[string]any:
			for k, w := range v {
				note(path, k)
				walk(w)
			}
		}
	}
	walk(content)
}
