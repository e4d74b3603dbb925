package browser

import "strings"

// apart takes the style elements out of an HTML document and gives what is in them:
// the page's policy lets no style stand in a document, but one may be handed over.
func apart(document string) (page, styles string) {
	const open, end = "<style>", "</style>"
	var p, s strings.Builder
	for {
		before, rest, found := strings.Cut(document, open)
		p.WriteString(before)
		if !found {
			return p.String(), s.String()
		}
		style, after, _ := strings.Cut(rest, end)
		s.WriteString(style)
		s.WriteByte('\n')
		document = after
	}
}
