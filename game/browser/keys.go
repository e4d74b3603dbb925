package browser

import (
	"unicode"
	"unicode/utf8"
)

// A keystroke is a key that went down (W3C UI Events).
type keystroke struct {
	key             string
	ctrl, meta, alt bool
	composing       bool // part of a letter that is still being put together
}

// ours reports whether the app takes the keystroke. Everything else is left to
// the browser: Tab, its shortcuts, the function keys.
func (k *keystroke) ours() bool {
	if k.ctrl || k.meta || k.alt || k.composing {
		return false
	}
	switch k.key {
	case " ", "Enter", "Escape", "Home", "End", "+", "-", "=":
		return true
	}
	if repeats(k.key) {
		return true
	}
	r, n := utf8.DecodeRuneInString(k.key)
	return n == len(k.key) && (unicode.IsLetter(r) || unicode.IsDigit(r))
}

// repeats reports whether a key that is held down acts again and again. One
// that presses a button acts once.
func repeats(key string) bool {
	switch key {
	case "ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "PageUp", "PageDown", "+", "-", "=":
		return true
	}
	return false
}

// leaves reports whether the keystroke leaves a text field: Escape and, where it has
// but one line, Enter.
func (k *keystroke) leaves(oneLine bool) bool {
	return !k.composing && !k.ctrl && !k.meta && !k.alt && (k.key == "Escape" || k.key == "Enter" && oneLine)
}

// scrolls reports whether the browser scrolls by the key. A page that is larger
// than the window leaves it to it, but on a ruler.
func (k *keystroke) scrolls() bool {
	switch k.key {
	case "ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "PageUp", "PageDown", "Home", "End":
		return true
	}
	return false
}
