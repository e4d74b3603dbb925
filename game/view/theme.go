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
	off                          tint    // the words on what cannot be pressed now
	line                         float64 // how wide lines are, 1 being as drawn
	inks                         [game.Light + 1]tint
}

var paper = theme{
	paper: rgb(0xFBF8EF), square: rgb(0xD5E4E8), fifth: rgb(0xB9D2D9), margin: rgb(0xE3A9A2),
	face: rgb(0xFFFEFA), shadow: rgb(0x22262B).times(0.22), dense: 0.48,
	off: rgb(0x50555B).times(0.6), line: 1,
	inks: [...]tint{
		game.Black: rgb(0x22262B), game.Faint: rgb(0x50555B), game.Yours: rgb(0x0B4F8A),
		game.Target: rgb(0x4A4A4A), game.Red: rgb(0xB3261E), game.Light: rgb(0xFFFFFF),
	},
}

var blackboard = theme{
	paper: rgb(0x13201B), square: rgb(0x1B2C26), fifth: rgb(0x2A4239), margin: rgb(0x6E4650),
	face: rgb(0x182720), shadow: rgb(0x000000).times(0.5), dense: 0.3,
	off: rgb(0xB9C2BA).times(0.6), line: 1,
	inks: [...]tint{
		game.Black: rgb(0xF1F0E6), game.Faint: rgb(0xB9C2BA), game.Yours: rgb(0xF2DC7D),
		game.Target: rgb(0xD8DDD6), game.Red: rgb(0xF5A3B5), game.Light: rgb(0x13201B),
	},
}

// The strong variants are for people who ask their system for more contrast, or
// who have it replace the colours of pages: the fine squares are gone, the
// fifth lines stand out from the paper by 3:1, all that is written or drawn by
// 7:1, and every line is half as wide again.
var strongPaper = theme{
	paper: rgb(0xFFFFFF), square: rgb(0xFFFFFF), fifth: rgb(0x949494), margin: rgb(0xB00012),
	face: rgb(0xFFFFFF), shadow: rgb(0x000000).times(0.5),
	dense: 0.3,
	off:   rgb(0x555555), line: 1.5,
	inks: [...]tint{
		game.Black: rgb(0x000000), game.Faint: rgb(0x000000), game.Yours: rgb(0x003A75),
		game.Target: rgb(0x333333), game.Red: rgb(0x970010), game.Light: rgb(0xFFFFFF),
	},
}

var strongBlackboard = theme{
	paper: rgb(0x000000), square: rgb(0x000000), fifth: rgb(0x6E6E6E), margin: rgb(0xFF9DB0),
	face: rgb(0x000000), shadow: rgb(0x000000),
	dense: 0.25,
	off:   rgb(0xA6A6A6), line: 1.5,
	inks: [...]tint{
		game.Black: rgb(0xFFFFFF), game.Faint: rgb(0xFFFFFF), game.Yours: rgb(0xFFE95C),
		game.Target: rgb(0xE0E0E0), game.Red: rgb(0xFF9DB0), game.Light: rgb(0x000000),
	},
}

func themeOf(dark, strong bool) *theme {
	switch {
	case dark && strong:
		return &strongBlackboard
	case strong:
		return &strongPaper
	case dark:
		return &blackboard
	}
	return &paper
}
