// Package ui is the controls without pixels: where widgets stand, which finger
// holds which, what a drag or a key does to a ruler. It knows no device and no
// clock; time and input are arguments.
//
// Lengths are in CSS pixels, from the top left corner.
package ui
