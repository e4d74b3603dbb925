package figure

import (
	"strings"
	"unicode/utf8"
)

var signs = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// Escape makes text safe in elements of XML and HTML and in attributes between quotes. What XML 1.0
// cannot hold (its production 2, Char) is replaced.
func Escape(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\t', r == '\n', r == '\r':
			return ' '
		case r < ' ', r == 0xFFFE, r == 0xFFFF:
			return utf8.RuneError
		}
		return r
	}, strings.ToValidUTF8(s, string(utf8.RuneError)))
	return signs.Replace(s)
}
