// Package view draws the state of the game: strokes, text, colours. It alone imports Ebiten.
package view

import (
	"image/color"

	"github.com/hajimehoshi/ebiten/v2"
)

// RunEmpty runs an app of blank paper, and calls started once it can draw. It stands in until the
// exercises can be shown.
func RunEmpty(started func()) error {
	return ebiten.RunGame(&empty{started: started})
}

type empty struct {
	started func()
	ticks   int
}

func (e *empty) Update() error {
	if e.ticks == 1 {
		e.started()
	}
	e.ticks++
	return nil
}

func (e *empty) Draw(screen *ebiten.Image) {
	screen.Fill(color.RGBA{R: 0xfb, G: 0xf8, B: 0xef, A: 0xff})
}

func (e *empty) Layout(width, height int) (int, int) { return width, height }
