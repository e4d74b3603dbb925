package words

import (
	"slices"
	"strings"
)

// A form is a sentence with gaps, in English cut at them, and in a language.
type form struct {
	pieces []string
	own    string
}

// formed makes the forms of a table, those that begin with words before those that begin
// with a gap, and the longest first: what is said of a part stands in a gap of its whole.
func formed(texts map[string]string) (all []form) {
	for english, own := range texts {
		all = append(all, form{strings.Split(english, "%s"), own})
	}
	slices.SortFunc(all, func(a, b form) int {
		if open := (a.pieces[0] == "") != (b.pieces[0] == ""); open {
			return len(b.pieces[0]) - len(a.pieces[0])
		}
		if n := len(strings.Join(b.pieces, "")) - len(strings.Join(a.pieces, "")); n != 0 {
			return n
		}
		return strings.Compare(a.own, b.own)
	})
	return all
}

// Refusal puts into the language what a room that knows no languages says is wrong: an
// English sentence, put together already. It is known by its form, and so is what stands in
// the gaps; names, numbers and what has no form stay as they are.
func (l *Language) Refusal(english string) string {
	if s, ok := l.texts[english]; ok {
		return s
	}
	for _, f := range l.forms {
		if values, ok := f.values(english); ok {
			for i, v := range values {
				values[i] = l.inside(v.(string))
			}
			return English.Say(f.own, values...)
		}
	}
	return english
}

// inside is [Language.Refusal] for what stands in a gap: a sentence, or a name that looks
// like a word of the tables.
func (l *Language) inside(english string) string {
	if !strings.Contains(english, " ") {
		return english
	}
	return l.Refusal(english)
}

// values are what a sentence of the form has in its gaps. One that begins the sentence is a
// name, without spaces.
func (f form) values(english string) (values []any, ok bool) {
	rest, ok := strings.CutPrefix(english, f.pieces[0])
	if !ok {
		return nil, false
	}
	for i, piece := range f.pieces[1:] {
		at := strings.Index(rest, piece)
		if i == len(f.pieces)-2 {
			if at = len(rest) - len(piece); !strings.HasSuffix(rest, piece) {
				at = -1
			}
		}
		if at < 0 || i == 0 && f.pieces[0] == "" && strings.Contains(rest[:at], " ") {
			return nil, false
		}
		values, rest = append(values, rest[:at]), rest[at+len(piece):]
	}
	return values, rest == ""
}
