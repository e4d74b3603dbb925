package figure

// A Ground is what a picture is drawn on, and with it the colours of what is drawn.
type Ground int

// The grounds.
const (
	Paper       Ground = iota // squared paper
	Blackboard                // squared too
	White                     // squares on white, for printing
	Transparent               // nothing, under the inks of the paper: for light backgrounds
	Chalk                     // nothing, under the chalk of the blackboard: for dark backgrounds
)

// GroundNames are the grounds as they are written on command lines, in their order.
var GroundNames = []string{"paper", "blackboard", "white", "transparent", "chalk"}

// A palette is the colours by their meaning; they are those of the app (look of the exercise book).
type palette struct {
	ground, square, fifth       uint32
	bare                        bool // nothing is drawn behind
	black, faint, yours, target uint32
}

func (g Ground) palette() palette {
	p := palette{
		ground: 0xFBF8EF, square: 0xD5E4E8, fifth: 0xB9D2D9,
		black: 0x22262B, faint: 0x50555B, yours: 0x0B4F8A, target: 0x4A4A4A,
	}
	if g == Blackboard || g == Chalk {
		p = palette{
			ground: 0x13201B, square: 0x1B2C26, fifth: 0x2A4239,
			black: 0xF1F0E6, faint: 0xB9C2BA, yours: 0xF2DC7D, target: 0xD8DDD6,
		}
	}
	if g == White {
		p.ground = 0xFFFFFF
	}
	p.bare = g == Transparent || g == Chalk
	return p
}
