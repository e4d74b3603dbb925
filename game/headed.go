package game

import (
	"strings"
	"unicode/utf8"
)

// closing are the signs that close a heading, so that no colon follows, and the signs that
// may stand behind them.
const closing, behind = "?!:.…;", ` "'”’“»«)`

// headed puts a heading before what is said under it. Most titles are questions: those
// need no colon.
func headed(heading, said string) string {
	sign := " "
	end, _ := utf8.DecodeLastRuneInString(strings.TrimRight(heading, behind))
	if heading = strings.TrimSpace(heading); heading != "" && !strings.ContainsRune(closing, end) {
		sign = ": "
	}
	return strings.TrimSpace(heading + sign + said)
}
