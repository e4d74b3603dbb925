// Package words holds the languages of the app. English stands in the code and
// in the sheets, where people read it beside what it is about; every other
// language is a table from the English to its own sentences. What a table lacks
// is said in English; a test sees to it that the tables lack nothing.
package words

import (
	"fmt"
	"strings"
)

// A Message is a sentence of the program, to be said in any language: an
// English format and what to put in. It formats as English, and it can be what
// has gone wrong.
type Message struct {
	Format string
	Args   []any
}

// Say makes a message. Texts among the arguments are put into the language too:
// messages, names out of the table, and quantities as [Language.Value] has it.
// Numbers are taken as they are, so those with decimals are better texts.
func Say(format string, args ...any) Message { return Message{format, args} }

// String is the message in English.
func (m Message) String() string { return English.In(m) }

// Error is the message in English, which is said in a language as any text is:
// a message that is an error has nothing put in.
func (m Message) Error() string { return m.String() }

// A Language says messages.
type Language struct {
	Tag  string // BCP 47: "de"
	Name string // in the language itself

	decimal string // sign
	texts   map[string]string
	forms   []form // of what other rooms say is wrong, see [Language.Refusal]
}

// English needs no table.
var English = &Language{Tag: "en", Name: "English", decimal: "."}

// Languages are all there are, English first.
func Languages() []*Language { return []*Language{English, German()} }

// Choose finds the first language that a person prefers and the app has, by the
// tags of the browser, the most preferred first; English where there is none.
func Choose(preferred []string) *Language {
	for _, tag := range preferred {
		primary, _, _ := strings.Cut(strings.ToLower(tag), "-")
		for _, l := range Languages() {
			if primary == l.Tag {
				return l
			}
		}
	}
	return English
}

// Say puts a format and what belongs into it into the language.
func (l *Language) Say(format string, args ...any) string {
	if len(args) == 0 {
		return l.text(format)
	}
	own := make([]any, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case Message:
			own[i] = l.In(a)
		case string:
			own[i] = l.Value(a)
		default:
			own[i] = a
		}
	}
	return fmt.Sprintf(l.text(format), own...)
}

// In puts a message into the language.
func (l *Language) In(m Message) string { return l.Say(m.Format, m.Args...) }

func (l *Language) text(english string) string {
	if s, ok := l.texts[english]; ok {
		return s
	}
	return english
}

// Has reports whether the language's own table has a text.
func (l *Language) Has(english string) bool {
	_, ok := l.texts[english]
	return ok || l == English
}

// Value puts a name or a quantity into the language: what the table has, else
// with the decimal sign of the language and its word for the unit, which is what
// follows the last space.
func (l *Language) Value(english string) string {
	if s, ok := l.texts[english]; ok || l == English {
		if !ok {
			return english
		}
		return s
	}
	number, unit, found := cutLast(english, " ")
	if !hasDigit(english) {
		return english
	}
	if !found || hasDigit(unit) {
		return l.number(english)
	}
	return l.number(number) + " " + l.text(unit)
}

// number changes the points between digits.
func (l *Language) number(s string) string {
	if l.decimal == "." || !strings.Contains(s, ".") {
		return s
	}
	var b strings.Builder
	for i := range len(s) {
		if s[i] == '.' && i > 0 && i+1 < len(s) && digit(s[i-1]) && digit(s[i+1]) {
			b.WriteString(l.decimal)
			continue
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }
