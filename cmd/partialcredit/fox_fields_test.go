//go:build !js

package main_test

import (
	"testing"
	"time"
)

// printsInTheFrame keeps what a frame would print, in its place.
const printsInTheFrame = `
const inside = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, "contentWindow").get;
Object.defineProperty(HTMLIFrameElement.prototype, "contentWindow", { get() {
	const w = inside.call(this);
	w.print = function () { window.printed = getComputedStyle(w.document.querySelector("p")).color; };
	return w;
} });`

// TestFirefoxWritesText writes into a text field in Firefox, leaves it, has a file dropped and something
// printed.
func TestFirefoxWritesText(t *testing.T) {
	f := openFox(t, Screen{390, 844, 1, true}, slip().script(), printsInTheFrame)
	f.started()
	f.Tap("name")
	for _, key := range []string{"t", "h", "c"} {
		f.Press(key)
	}
	f.Wait(keptName+` === "thc"`, 5*time.Second)
	f.Wait(`document.querySelector('`+widget("name")+`').value === "thc" && document.querySelector('`+widget("name")+`') === document.activeElement`, 5*time.Second)
	f.Press("\uE00C") // Escape, as WebDriver names it
	f.Wait(`document.querySelector('`+widget("name")+`') !== document.activeElement`, 5*time.Second)

	f.Eval(dropping("notes.txt", "nothing that is known"), nil)
	f.Tap("understood")
	var colour string
	f.Eval(`new Promise(said => partialCredit.files.print("<!doctype html><p>On paper.</p>", "p { color: rgb(1, 2, 3) }", said)).then(() => window.printed)`, &colour)
	if colour != "rgb(1, 2, 3)" {
		t.Errorf("on paper the text is %q", colour)
	}
	f.Press("c")
	f.Wait(`document.querySelector('`+widget("slip")+`')`, 5*time.Second)
}
