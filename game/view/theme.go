package view

import "partialcredit/game"

// A tint is a colour with its alpha multiplied in, each part 0 to 1.
type tint [4]float32

// rgb is a colour as it is written in style sheets.
func rgb(hex uint32) tint {
	return tint{float32(hex>>16&255) / 255, float32(hex>>8&255) / 255, float32(hex&255) / 255, 1}
}

// times thins a colour.
func (t tint) times(alpha float32) tint {
	for i := range t {
		t[i] *= alpha
	}
	return t
}

// A theme is the colours by their meaning.
//
// Yours, the target and the marks are blue, grey and red (yellow, white and pink
// on the blackboard): hues that stay apart for the common kinds of colour
// blindness, as blue and vermilion do in the palette of Okabe and Ito (Color
// Universal Design, 2008). They are told apart by shape as well: solid or
// dashed, filled or open, tick or cross.
type theme struct {
	paper, square, fifth, margin tint
	face                         tint    // of a button
	shadow                       tint    // under a sheet that lies over the page
	dense                        float32 // how much of the learner's ink a full cell of a table has: numbers on it must be readable
	inks                         [game.Light + 1]tint
}

var paper = theme{
	paper: rgb(0xFBF8EF), square: rgb(0xD5E4E8), fifth: rgb(0xB9D2D9), margin: rgb(0xE3A9A2),
	face: rgb(0xFFFEFA), shadow: rgb(0x22262B).times(0.22), dense: 0.48,
	inks: [...]tint{
		game.Black: rgb(0x22262B), game.Faint: rgb(0x50555B), game.Yours: rgb(0x0B4F8A),
		game.Target: rgb(0x4A4A4A), game.Red: rgb(0xB3261E), game.Light: rgb(0xFFFFFF),
	},
}

var blackboard = theme{
	paper: rgb(0x13201B), square: rgb(0x1B2C26), fifth: rgb(0x2A4239), margin: rgb(0x6E4650),
	face: rgb(0x182720), shadow: rgb(0x000000).times(0.5), dense: 0.3,
	inks: [...]tint{
		game.Black: rgb(0xF1F0E6), game.Faint: rgb(0xB9C2BA), game.Yours: rgb(0xF2DC7D),
		game.Target: rgb(0xD8DDD6), game.Red: rgb(0xF5A3B5), game.Light: rgb(0x13201B),
	},
}
