package ui

import "strings"

// A Measure gives the width of a line of text set at a size.
type Measure func(s string, size float64, bold bool) float64

// Wrap breaks text into lines no wider than width. A single word that is wider
// stands alone on its line.
func (m Measure) Wrap(s string, size float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		longer := word
		if line != "" {
			longer = line + " " + word
		}
		if line != "" && m(longer, size, bold) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
