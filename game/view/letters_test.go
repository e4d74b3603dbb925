package view

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"golang.org/x/text/unicode/bidi"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// A scribe letters natively: every code point but a mark is half an em wide, and drawn as a box.
// What it letters of emoji is red.
type scribe struct {
	measured, drawn int
}

func (s *scribe) Advance(text string, bold, leftwards bool) float64 {
	s.measured++
	return s.ems(text)
}

func (s *scribe) ems(text string) (sum float64) {
	for range text {
		sum += 0.5
	}
	return sum
}

func (s *scribe) Draw(text string, em float64, bold, leftwards bool, slant, shift float64) *image.RGBA {
	s.drawn++
	if text == "\u200B" {
		return nil
	}
	r := image.Rect(0, -int(0.7*em), int(math.Ceil(s.ems(text)*em+shift)), int(0.2*em))
	drawn := image.NewRGBA(r)
	ink := color.RGBA{255, 255, 255, 255}
	if strings.ContainsRune(text, '🎹') {
		ink = color.RGBA{200, 0, 0, 255}
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			drawn.SetRGBA(x, y, ink)
		}
	}
	return drawn
}

func withScribe(t *testing.T) *scribe {
	s := &scribe{}
	SetLetterer(s)
	t.Cleanup(func() { letters = lettering{} })
	return s
}

// shown writes pieces down: those of the fonts one after the other, each that is lettered in brackets,
// with < where it reads from right to left.
func shown(s string) string {
	var b strings.Builder
	glyphs := map[glyphID]rune{}
	for _, r := range ahead + "«»“” " {
		g, _ := regular.glyph(r)
		glyphs[g] = r
	}
	for _, p := range letters.lay(s, false) {
		switch {
		case p.text == "":
			b.WriteRune(glyphs[p.glyph])
		case p.leftwards:
			fmt.Fprintf(&b, "[<%s]", p.text)
		default:
			fmt.Fprintf(&b, "[%s]", p.text)
		}
	}
	return b.String()
}

func TestWhatIsLetteredTogether(t *testing.T) {
	withScribe(t)
	for _, tt := range []struct{ name, text, want string }{
		{"Latin is the fonts' own", "Hand in: 5 %", "Hand in: 5 %"},
		{"Cyrillic and Greek stand letter by letter", "Яна γ", "[Я][н][а] [γ]"},
		{"so does Chinese, Japanese and Korean", "小林 하나", "[小][林] [하][나]"},
		{"marks stay with their letter", "e\u0301tude й", "[e\u0301]tude [й]"},
		{"an emoji is one", "a👩🏽‍🚀b🇩🇪🇯🇵1\uFE0F\u20E3", "a[👩🏽‍🚀]b[🇩🇪][🇯🇵][1\uFE0F\u20E3]"},
		{"words that need their neighbours stay whole", "शक्ति सुनो ok", "[शक्ति] [सुनो] ok"},
		{"what reads from right to left is set word by word from the right", "a: مريم تسمع ok", "a: [<تسمع] [<مريم] ok"},
		{"a number before it stays", "3. مريم", "3. [<مريم]"},
		{"one after it goes along", "Sheet الدرس 1.2 ok", "Sheet [<1.2] [<الدرس] ok"},
		{"but not what the app says of a name", "Ada, مريم: 90", "Ada, [<مريم]: 90"},
		{"quotes of ours stay where they are", "“مريم”, once", "“[<مريم]”, once"},
		{"a line of nothing else reads from the right", "مريم!", "[<مريم!]"},
		{"an emoji is apart", "مريم🎹 علي", "[<علي] [<🎹][<مريم]"},
		{"Hebrew as well", "by שרה", "by [<שרה]"},
	} {
		if got := shown(tt.text); got != tt.want {
			t.Errorf("%s: %q is set as %q, want %q", tt.name, tt.text, got, tt.want)
		}
	}
}

// Words of one letter are thrown together, and stand in the order that UAX #9 gives them in a line from left
// to right, as golang.org/x/text has it.
func TestOrderIsThatOfUnicode(t *testing.T) {
	withScribe(t)
	random := rand.New(rand.NewPCG(3, 4))
	words := []string{"a", "б", "音", "ש", "م", "ذ", "ब"}
	turned := 0
	for range 2000 {
		list := []string{"x"} // else the line might read from the right
		for range random.IntN(7) {
			list = append(list, words[random.IntN(len(words))])
		}
		s := strings.Join(list, " ")
		var p bidi.Paragraph
		if _, err := p.SetString(s, bidi.DefaultDirection(bidi.LeftToRight)); err != nil {
			t.Fatal(err)
		}
		order, err := p.Order()
		if err != nil {
			t.Fatal(err)
		}
		want := ""
		for i := range order.NumRuns() {
			run := order.Run(i)
			text := run.String()
			if run.Direction() == bidi.RightToLeft {
				text = bidi.ReverseString(text)
				turned++
			}
			want += text
		}
		got := strings.NewReplacer("[<", "", "[", "", "]", "").Replace(shown(s))
		if got != want {
			t.Fatalf("%q stands as %q, want %q", s, got, want)
		}
	}
	if turned < 1000 {
		t.Errorf("only %d runs were turned round", turned)
	}
}

// Every letter of every script is told apart as Unicode does (DerivedBidiClass.txt, by way of golang.org/x/text).
func TestLeftwardsAreTheLettersThatUnicodeSaysSo(t *testing.T) {
	n := 0
	for r := rune(0); r <= 0x10FFFF; r++ {
		p, size := bidi.LookupString(string(r))
		if size == 0 {
			continue
		}
		if c := p.Class(); c == bidi.R || c == bidi.AL {
			if n++; !isLeftwards(r) {
				t.Errorf("%U reads from right to left", r)
			}
		} else if c == bidi.L && isLeftwards(r) {
			t.Errorf("%U reads from left to right", r)
		}
	}
	if n < 1000 {
		t.Errorf("only %d letters read from right to left", n)
	}
}

// Whatever the fonts have stands by itself, so that no lettering changes a line that they can set.
func TestFontsHaveNothingThatJoins(t *testing.T) {
	for r := rune(' '); r <= 0xFFFF; r++ {
		if g, _ := regular.glyph(r); g == 0 {
			continue
		}
		if s := "a" + string(r); ui.Cluster(s) != 1 || isLeftwards(r) || ui.Joins(r) {
			t.Errorf("%q (%U) joins its neighbours", r, r)
		}
	}
}

const mixed = "小林 Ольга مريم 🎹, शक्ति e\u0301 and Ada"

// A line is drawn from where it begins to where its width ends, at every size.
func TestWidthIsWhatIsDrawn(t *testing.T) {
	withScribe(t)
	for _, scale := range []float64{1, 1.5, 3} {
		for _, size := range []float64{14, 15, 26} {
			c := testCanvas(scale)
			c.set("小林 Ольга 林", 20, 50, size, false, false, game.Left, c.inks[game.Black])
			e, w := c.extent(), width("小林 Ольга 林", size, false)
			if math.Abs(e.X-20) > 1/scale || math.Abs(e.Right()-20-w) > 1.5/scale {
				t.Errorf("%v px at %v: %v wide, drawn from %v to %v", size, scale, w, e.X, e.Right())
			}
		}
	}
	if got, want := width(mixed, 16, false), width("小林 Ольга مريم 🎹, ", 16, false)+width("शक्ति e\u0301 and Ada", 16, false); math.Abs(got-want) > 1e-9 {
		t.Errorf("the whole is %v wide, its parts %v", got, want)
	}
	short := fit(mixed, 16, false, 70)
	if width(short, 16, false) > 70 || !strings.HasPrefix(short, "小林") || !strings.HasSuffix(short, "…") {
		t.Errorf("shortened to %q", short)
	}
}

// Ink takes the colour it is given; what has its own keeps it, as dense as the ink.
func TestEmojiKeepTheirColours(t *testing.T) {
	withScribe(t)
	c := testCanvas(2)
	ink := tint{0.1, 0.2, 0.3, 0.5}
	for text, want := range map[string]tint{"林": ink, "🎹": {0.5, 0.5, 0.5, 0.5}} {
		c.vertices = c.vertices[:0]
		c.set(text, 0, 20, 16, false, false, game.Left, ink)
		if len(c.vertices) != 4 {
			t.Fatalf("%q: %d corners", text, len(c.vertices))
		}
		if v := c.vertices[0]; (tint{v.ColorR, v.ColorG, v.ColorB, v.ColorA}) != want {
			t.Errorf("%q is drawn in %v, want %v", text, tint{v.ColorR, v.ColorG, v.ColorB, v.ColorA}, want)
		}
	}
	if coloured([]byte{251, 252, 250, 255, 3, 0, 9, 10}) {
		t.Error("white whose last bits were changed counts as a colour")
	}
}

// What was lettered once is neither lettered nor measured again, and costs the collector nothing.
func TestLetteringIsKept(t *testing.T) {
	s := withScribe(t)
	c := testCanvas(1)
	line := func() {
		width(mixed, 16, false)
		c.set(mixed, 10, 50, 16, false, false, game.Right, c.inks[game.Black])
		c.vertices, c.indices = c.vertices[:0], c.indices[:0]
	}
	line()
	before := *s
	if n := testing.AllocsPerRun(20, line); n > 0 {
		t.Errorf("%v allocations for a line that is known", n)
	}
	if *s != before || s.measured == 0 || s.drawn == 0 {
		t.Errorf("asked %+v, and then %+v", before, *s)
	}
	for i := range 3 * mostAdvances {
		width(string(rune(0x4E00+i)), 16, false)
	}
	if n := len(letters.advances); n > mostAdvances {
		t.Errorf("%d widths are kept", n)
	}
}

// A page with more letters than have room is drawn all the same, and a word that is wider than all of it.
func TestFullAtlas(t *testing.T) {
	s := withScribe(t)
	c := testCanvas(1)
	c.atlas, c.to = newAtlas(1024), newAtlas(16).image
	for i := range 1500 {
		c.set(string(rune(0x4E00+i)), 0, 50, 40, false, false, game.Left, c.inks[game.Black])
	}
	if s.drawn != 1501 || c.atlas.side != mostSide {
		t.Errorf("%d lettered, want each once and one more where it grew to %d", s.drawn, c.atlas.side)
	}
	for i := range 9000 {
		c.set(string(rune(0x4E00+i)), 0, 50, 60, false, false, game.Left, c.inks[game.Black])
	}
	if c.atlas.side != mostSide {
		t.Errorf("the atlas grew to %d", c.atlas.side)
	}
	s.drawn = 0
	c.vertices, c.indices = c.vertices[:0], c.indices[:0]
	c.set("a"+strings.Repeat("م", 20), 0, 50, 400, false, false, game.Left, c.inks[game.Black])
	if e := c.extent(); s.drawn != 2 || e.Right() < mostSide || e.Right() > 1.2*mostSide {
		t.Errorf("a word wider than the atlas: %v drawn, asked %d times", e, s.drawn)
	}
	c.set(strings.Repeat("ब", 500)+"\u200B", 0, 50, 20, true, true, game.Left, c.inks[game.Black])
}

// Without a letterer there is a box for what the fonts lack, as there always was.
func TestBoxesWithoutALetterer(t *testing.T) {
	_, box := regular.glyph('林')
	if got := width("林مa", 10, false); math.Abs(got-10*(2*box+width("a", 1, false))) > 1e-9 {
		t.Errorf("%v wide", got)
	}
}
