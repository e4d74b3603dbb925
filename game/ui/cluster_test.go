package ui

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/clipperhouse/uax29/v2/graphemes"
)

func clusters(s string) (found []string) {
	for len(s) > 0 {
		n := Cluster(s)
		found = append(found, s[:n])
		s = s[n:]
	}
	return found
}

// The lines are those of GraphemeBreakTest.txt, Unicode 17.0, that are not pairs, without prepended signs and
// two lines more (a dingbat that is no emoji, and U+102C that is no mark)
// (https://www.unicode.org/Public/17.0.0/ucd/auxiliary, by way of the tests of github.com/clipperhouse/uax29/v2 2.7.0).
func TestClustersAreThoseOfUnicode(t *testing.T) {
	for _, want := range [][]string{
		{"\r\u000A", "a", "\n", "\u0308"},
		{" \u200D", "\u0646"},
		{"\u0646\u200D", " "},
		{"\uAC00\u11A8", "\u1100"},
		{"\uAC01\u11A8", "\u1100"},
		{"\U0001F1E6\U0001F1E7", "\U0001F1E8", "b"},
		{"a", "\U0001F1E6\U0001F1E7", "\U0001F1E8", "b"},
		{"a", "\U0001F1E6\U0001F1E7\u200D", "\U0001F1E8", "b"},
		{"a", "\U0001F1E6\u200D", "\U0001F1E7\U0001F1E8", "b"},
		{"a", "\U0001F1E6\U0001F1E7", "\U0001F1E8\U0001F1E9", "b"},
		{"a\u0903", "b"},
		{"\U0001F476\U0001F3FF", "\U0001F476"},
		{"a\U0001F3FF", "\U0001F476"},
		{"a\U0001F3FF", "\U0001F476\u200D\U0001F6D1"},
		{"\U0001F476\U0001F3FF\u0308\u200D\U0001F476\U0001F3FF"},
		{"\U0001F6D1\u200D\U0001F6D1"},
		{"a\u200D", "\U0001F6D1"},
		{"a\u200D", "\u2701"},
		{"\u0915\u094D\u0924"},
		{"\u0915\u094D\u094D\u0924"},
		{"\u0915\u094D\u200D\u0924"},
		{"\u0915\u093C\u200D\u094D\u0924"},
		{"\u0915\u093C\u094D\u200D\u0924"},
		{"\u0915\u094D\u0924\u094D\u092F"},
		{"\u0915\u094D", "a"},
		{"a\u094D", "\u0924"},
		{"?\u094D", "\u0924"},
		{"\u0915\u094D\u094D\u0924"},
		{"\u0AB8\u0AFB\u0ACD\u0AB8\u0AFB"},
		{"\u1004\u103A\u1039\u1011\u1039\u1011"},
		{"\u1B12\u1B01", "\u1B32\u1B44\u1B2F", "\u1B32\u1B44\u1B22\u1B44\u1B2C", "\u1B32\u1B44\u1B22\u1B38"},
		{"\u179F\u17D2\u178F\u17D2\u179A\u17B8"},
		{"\u1B26", "\u1B17\u1B44\u1B13"},
		{"\u1B27", "\u1B13\u1B44\u1B0B", "\u1B0B\u1B04"},
		{"\u1795\u17D2\u17AF", "\u1798"},
		{"\u17A0\u17D2\u17AB", "\u1791\u17D0", "\u1799"},
	} {
		if got := clusters(strings.Join(want, "")); !slices.Equal(got, want) {
			t.Errorf("%+q is cut into %+q, want %+q", strings.Join(want, ""), got, want)
		}
	}
}

// What people write is thrown together at random, and cut as another library does. Where a vowel sign
// that takes room of its own follows a virama, which no language writes, it is not.
func TestClustersAgreeWithAnotherLibrary(t *testing.T) {
	alphabet := []rune("ab1 .-é©字かーガ가각힣ก็هـשׁяй️№\r\n\u00AD\u0301\u0308\u200B\u200C\u200D\u200F\u2060\u3099\uFE0F\uFF9E" +
		"न\u094Dत\u0941ষ\u09CDક\u0ACDକ\u0B4Dത\u0D4Dက\u1039ក\u17D2🎹👩🏽🚀❤🏳🌈🇩🇪🇯\U000E0067\U000E007F\u20E3\u1100\u1161\u11A8\uA960\uD7B0\uD7CB〰㊗")
	random := rand.New(rand.NewPCG(1, 2))
	several := 0
	for range 200_000 {
		text := make([]rune, 1+random.IntN(6))
		for i := range text {
			text[i] = alphabet[random.IntN(len(alphabet))]
		}
		s := string(text)
		if strings.Contains(s, "\u200D\u200D") { // which nobody writes either
			continue
		}
		var want []string
		for all := graphemes.FromString(s); all.Next(); {
			want = append(want, all.Value())
		}
		if len(want) < len(text) {
			several++
		}
		if got := clusters(s); !slices.Equal(got, want) {
			t.Fatalf("%+q is cut into %+q, want %+q", s, got, want)
		}
	}
	if several < 50_000 {
		t.Errorf("only %d texts had characters of several code points", several)
	}
}
