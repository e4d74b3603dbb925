package ui

import (
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// inClusters measures one for every character, however many code points it has.
func inClusters(s string, size float64, bold bool) float64 { return size * float64(len(clusters(s))) }

func TestWrap(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"fits", "one two", 7, []string{"one two"}},
		{"spaces", "  one  two three ", 8, []string{"one two", "three"}},
		{"nothing", " ", 8, nil},
		{"a long word", "die Pulsweitenmodulation dann", 10, []string{"die", "Pulsweiten", "modulation", "dann"}},
		{"a long word first, and room after its end", "Pulsweiten an", 6, []string{"Pulswe", "iten", "an"}},
		{"marks stay", "u\u0308u\u0308u\u0308u\u0308u\u0308", 2, []string{"u\u0308u\u0308", "u\u0308u\u0308", "u\u0308"}},
		{"a family stays", "👩‍👩‍👧👩‍👩‍👧", 1, []string{"👩‍👩‍👧", "👩‍👩‍👧"}},
		{"too narrow for anything", "ab", 0.5, []string{"a", "b"}},
		{"Japanese fills the line", "See 矩形波の幅を聞く", 7, []string{"See 矩形波", "の幅を聞く"}},
		// JIS X 4051's signs that begin no line, and end none, as UAX #14 has them in classes CL, NS and OP.
		{"no line begins with a full stop", "幅を聞く。次は", 4, []string{"幅を聞", "く。次は"}},
		{"nor with a long vowel", "シンセサイザー", 6, []string{"シンセサイ", "ザー"}},
		{"none ends with a bracket", "これは「音」だ", 4, []string{"これは", "「音」だ"}},
		{"nor is a number torn", "周波数440Hzで", 5, []string{"周波数", "440Hz", "で"}},
		{"Korean has spaces", "펄스 폭을 듣기", 4, []string{"펄스", "폭을", "듣기"}},
	} {
		got := Measure(inClusters).Wrap(tt.text, 1, false, tt.width)
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s: %q is broken into %q, want %q", tt.name, tt.text, got, tt.want)
		}
	}
}

// Whatever is written, all of it is there in the lines, and they keep to the width.
func TestWrapLosesNothing(t *testing.T) {
	const text = "Кто слушает (тихо) 「矩形波」は、440 Hzのशक्ति สวัสดีครับ مريم تسمع Donaudampfschifffahrt 👩🏽‍🚀🇩🇪!"
	for width := 1.0; width < 50; width++ {
		got := Measure(inClusters).Wrap(text, 1, false, width)
		if strings.ReplaceAll(strings.Join(got, ""), " ", "") != strings.ReplaceAll(text, " ", "") {
			t.Errorf("%v wide: %q", width, got)
		}
		for _, line := range got {
			if n := len(clusters(line)); float64(n) > width || n == 0 {
				t.Errorf("%v wide: %q", width, line)
			}
		}
	}
}

func TestFit(t *testing.T) {
	for _, tt := range []struct {
		text  string
		width float64
		want  string
	}{
		{"narrow", 6, "narrow"},
		{"narrow", 5, "narr…"},
		{"narrow", 1, "…"},
		{"narrow", 0, "…"},
		{"👩‍👩‍👧👩‍👩‍👧👩‍👩‍👧", 2, "👩‍👩‍👧…"},
		{"e\u0301e\u0301e\u0301", 2, "e\u0301…"},
	} {
		if got := Measure(inClusters).Fit(tt.text, 1, false, tt.width); got != tt.want || !utf8.ValidString(got) {
			t.Errorf("%q in %v: %q, want %q", tt.text, tt.width, got, tt.want)
		}
	}
}
