// Package browser talks to the page around the app: what people do on it, what
// it remembers, and the mirror of the canvas that assistive devices read. It
// alone imports syscall/js.
//
// The files that end in _js do what only a browser can; everything they decide
// is decided in the others, and tested without a browser.
package browser
