package site

import (
	"strconv"
	"strings"
)

// accepts reports whether an Accept-Encoding header allows a content coding (RFC 9110, section 12.5.3):
// it is named or covered by "*", and its weight is not zero.
func accepts(header, coding string) bool {
	star := false
	for part := range strings.SplitSeq(header, ",") {
		name, parameters, _ := strings.Cut(strings.TrimSpace(part), ";")
		name = strings.ToLower(strings.TrimSpace(name))
		allowed := weight(parameters) > 0
		if name == coding {
			return allowed
		}
		if name == "*" {
			star = allowed
		}
	}
	return star
}

// weight reads "q=0.5"; a missing or unreadable weight counts as 1.
func weight(parameters string) float64 {
	for p := range strings.SplitSeq(parameters, ";") {
		key, value, _ := strings.Cut(strings.TrimSpace(p), "=")
		if !strings.EqualFold(strings.TrimSpace(key), "q") {
			continue
		}
		if q, err := strconv.ParseFloat(strings.TrimSpace(value), 64); err == nil {
			return q
		}
	}
	return 1
}
