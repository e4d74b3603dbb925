// Package view draws the scene: paper, strokes, text, colours. It alone imports
// Ebiten. It decides nothing: what stands where comes with the scene, and what
// people do never passes through here.
//
// All drawing is triangles from one texture, which holds a white dot and the
// glyphs. What rarely changes (paper, texts, widgets) is kept in an image of the
// screen, so that a moving trace costs a copy of its box and one strip.
package view
