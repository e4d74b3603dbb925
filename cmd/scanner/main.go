//go:build wasip1

// Scanner reads QR codes as a WebAssembly module of its own, which is loaded when somebody scans:
// web/scanner.js calls it in a thread beside the page. It is built with -buildmode=c-shared and has
// no main to run.
package main

import (
	"unsafe"

	"partialcredit/game/scan"
)

var rgba, found []byte

func main() {}

// inbox is where the next picture of n bytes, RGBA, is to be put.
//
//go:wasmexport inbox
func inbox(n int32) unsafe.Pointer {
	if int(n) > cap(rgba) {
		rgba = make([]byte, n)
	}
	rgba = rgba[:n]
	return unsafe.Pointer(unsafe.SliceData(rgba))
}

// read looks for a code in the picture in the inbox. It returns how many bytes its text has, -1 where
// there is none.
//
//go:wasmexport read
func read(w, h int32) int32 {
	text, ok := scan.Read(scan.GreyOf(rgba, int(w), int(h)))
	if !ok {
		return -1
	}
	found = []byte(text)
	return int32(len(found))
}

// text is where the text is that was read last, UTF-8.
//
//go:wasmexport text
func text() unsafe.Pointer { return unsafe.Pointer(unsafe.SliceData(found)) }
