package worksheet

import (
	"strings"
	"unicode/utf8"
)

var signs = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;")

// escape makes text safe in elements and in attributes between quotes. What XML 1.0 cannot hold (its
// production 2, Char) is replaced.
func escape(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\t', r == '\n', r == '\r':
			return ' '
		case r < ' ', r == 0xFFFE, r == 0xFFFF:
			return 0xFFFD
		}
		return r
	}, strings.ToValidUTF8(s, string(utf8.RuneError)))
	return signs.Replace(s)
}

// element is text in an element of a class; of none where class is empty.
func element(name, class, text string) string {
	if class != "" {
		class = ` class="` + class + `"`
	}
	return "<" + name + class + ">" + escape(text) + "</" + name + ">\n"
}
