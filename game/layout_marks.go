package game

import (
	"fmt"
	"math"
	"strings"

	"partialcredit/game/mark"
	"partialcredit/game/ui"
)

// verdict is what the marks say, in words.
func (g *Game) verdict() string {
	e := g.exercise()
	s := []string{g.t("%.0f marks of 100.", g.shownMarks())}
	if capped := g.work.result.Marks > g.work.marks; capped {
		s = append(s, g.capText(g.work.result.Marks))
	}
	for _, r := range g.work.result.Reasons {
		s = append(s, g.reason(r))
	}
	s = append(s, g.settings(), g.t(e.Teach))
	return strings.Join(s, " ")
}

// shownMarks are the marks as a whole number. Only a full match shows 100.
func (g *Game) shownMarks() float64 { return math.Floor(g.work.marks + 0.05) }

// reason puts a reason into words.
func (g *Game) reason(r mark.Reason) string { return g.lang.In(r.Text) }

func (g *Game) capText(marks float64) string {
	return g.t("The sound earned %.0f; the target was uncovered before it was handed in.", math.Floor(marks+0.05))
}

// settings compares what was set with the target's settings. The marks do not
// look at them.
func (g *Game) settings() string {
	var parts []string
	for i := range g.work.controls {
		c := &g.work.controls[i]
		f := c.Field()
		parts = append(parts, g.t("%s: yours %s, the target %s.", c.Label, f.Format(c.Get(&g.work.yours)), f.Format(c.Get(&g.work.target))))
	}
	return strings.Join(parts, " ")
}

// layMarks writes the figure and the reasons.
func (g *Game) layMarks(p *paper, r ui.Rect) {
	size := max(40, min(3.2*p.title, r.H*0.5))
	figure := fmt.Sprintf("%.0f", g.shownMarks())
	w := p.measure(figure, size, true) * 1.1
	p.put(Text{X: r.X + 4, Y: r.Y + size*0.85, String: figure, Size: size, Bold: true, Slant: true, Ink: Red})
	p.Strokes = append(p.Strokes, Stroke{Kind: Underline, X: r.X + 4 + w/2, Y: r.Y + size, R: w / 2})
	p.put(Text{X: r.X + 4 + w + p.gap, Y: r.Y + size*0.85, String: g.t("of 100"), Size: p.body, Ink: Faint})
	var text ui.Rect
	if p.wide {
		side := w + p.measure(g.t("of 100"), p.body, false) + 3*p.gap
		_, text = r.CutLeft(max(side, r.W*0.2), 2*p.gap)
		text.W = min(text.W, 46*p.body)
	} else {
		_, text = r.CutTop(size*1.15, p.gap/2)
	}
	g.writeReasons(p, text)
}

// writeReasons writes the most costly reason, the lesson, then what else there
// is room for; the room is given in that order and the lines stand in another.
func (g *Game) writeReasons(p *paper, r ui.Rect) {
	type block struct {
		text string
		ink  Ink
		bold bool
		rank int
	}
	var blocks []block
	if g.work.result.Marks > g.work.marks {
		blocks = append(blocks, block{g.capText(g.work.result.Marks), Black, false, 0})
	}
	for i, reason := range g.work.result.Reasons {
		rank := 1
		if i > 0 {
			rank = 3 + i
		}
		blocks = append(blocks, block{g.reason(reason), Black, i == 0, rank})
	}
	if g.page == takenPage {
		blocks = append(blocks, block{g.takenNote(), Faint, false, 1})
	} else {
		blocks = append(blocks, block{g.settings(), Faint, false, 3})
	}
	if g.page != takenPage || g.taking.answers {
		blocks = append(blocks, block{g.t(g.exercise().Teach), Yours, false, 2})
	}
	room := r.H + 0.3*p.body
	fits := make([]bool, len(blocks))
	for rank := 0; rank < 8; rank++ {
		for i, b := range blocks {
			h := p.height(b.text, p.body, b.bold, r.W) + 0.3*p.body
			if b.rank == rank && h <= room {
				fits[i], room = true, room-h
			}
		}
	}
	for i, b := range blocks {
		if fits[i] {
			r, _ = p.paragraph(r, b.text, p.body, b.bold, b.ink)
			_, r = r.CutTop(0, 0.3*p.body)
		}
	}
}
