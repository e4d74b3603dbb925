// Package plot turns samples and partials into points and triangles: where a
// trace starts so that a steady sound stands still, what is seen of the samples
// in each column, how a pen line becomes triangles with soft edges, which
// numbers fit on an axis. It draws nothing and knows no colours.
//
// Lengths are in pixels of the device, times in samples.
package plot

// A Point is a place in the picture.
type Point struct{ X, Y float64 }
