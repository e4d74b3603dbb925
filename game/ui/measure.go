package ui

import "strings"

// A Measure gives the width of a line of text set at a size.
type Measure func(s string, size float64, bold bool) float64

// Wrap breaks text into lines no wider than width: at spaces, between the letters of scripts that
// write none, and within a word that alone is wider. Only a single character may stand out.
func (m Measure) Wrap(s string, size float64, bold bool, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		for gap := " "; word != ""; gap = "" {
			n := breakable(word)
			longer := word[:n]
			if line != "" {
				longer = line + gap + longer
			}
			if m(longer, size, bold) > width {
				if line != "" {
					lines = append(lines, line)
					longer = word[:n]
				}
				for m(longer, size, bold) > width {
					k := m.fills(longer, size, bold, width)
					if k == len(longer) {
						break
					}
					lines = append(lines, longer[:k])
					longer = longer[k:]
				}
			}
			line, word = longer, word[n:]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// fills is how many bytes of s, whole characters and one at least, fill a line.
func (m Measure) fills(s string, size float64, bold bool, width float64) int {
	n := Cluster(s)
	for n < len(s) {
		next := n + Cluster(s[n:])
		if m(s[:next], size, bold) > width {
			break
		}
		n = next
	}
	return n
}

// Fit shortens a text, with an ellipsis, to what the width holds.
func (m Measure) Fit(s string, size float64, bold bool, width float64) string {
	if m(s, size, bold) <= width {
		return s
	}
	var ends []int // of its characters, but for the last
	for n := Cluster(s); n < len(s); n += Cluster(s[n:]) {
		ends = append(ends, n)
	}
	best, from, to := "…", 0, len(ends)
	for from < to {
		middle := (from + to) / 2
		if short := s[:ends[middle]] + "…"; m(short, size, bold) <= width {
			best, from = short, middle+1
		} else {
			to = middle
		}
	}
	return best
}
