package game

import (
	"fmt"
	"math"
	"strings"

	"partialcredit/game/ui"
)

// layout lays the page out anew.
func (g *Game) layout() {
	g.dirty = false
	g.revision++
	g.layouts++
	g.scene = Scene{Focus: g.focus, Say: g.say}
	p := newPaper(&g.scene, g.in.W, g.in.H, g.measure)
	if g.page == contents {
		g.layContents(p)
	} else {
		g.layExercise(p)
		g.refreshPictures()
		g.putPictures()
	}
	if g.over != noOverlay {
		g.layOverlay(p)
	}
}

// layExercise lays out an exercise, at work or marked.
func (g *Game) layExercise(p *paper) {
	e := g.exercise()
	g.scene.Title = fmt.Sprintf("%d. %s", g.current+1, e.Title)
	g.scene.Body = e.Task
	if g.page == marked {
		g.scene.Body = g.verdict()
	}
	area := ui.Rect{X: p.pad, Y: p.pad, W: p.W - 2*p.pad, H: p.H - 2*p.pad}
	switch {
	case p.short:
		left, right := area.CutLeft(math.Round(area.W*0.46), 2*p.gap)
		left = g.layHeader(p, left)
		g.layPlots(p, left.Rows(2, p.gap))
		bottom, rest := right.CutBottom(p.button, p.gap)
		listen, rest := rest.CutBottom(p.button, p.gap)
		g.layMiddle(p, rest)
		g.layListening(p, listen)
		g.layBottom(p, bottom)
	case p.wide:
		area = g.layMargin(p, area)
		rest := g.layHeader(p, area)
		bottom, rest := rest.CutBottom(p.button, p.gap)
		plots, rest := rest.CutTop(math.Round(rest.H*g.plotShare(p, rest.H)), p.gap)
		g.layPlots(p, plots.Columns(2, 2*p.gap))
		columns := rest.Columns(2, 2*p.gap)
		if g.page == marked {
			listen, above := columns[1].CutBottom(p.button, p.gap)
			g.layMarks(p, ui.Rect{X: rest.X, Y: rest.Y, W: rest.W, H: above.H})
			g.layListening(p, listen)
		} else {
			g.layRulers(p, columns[0])
			listen, below := columns[1].CutTop(p.button, p.gap)
			g.layListening(p, listen)
			p.paragraph(below, g.hint(), p.body, false, Faint)
		}
		g.layBottom(p, bottom)
	default:
		rest := g.layHeader(p, area)
		bottom, rest := rest.CutBottom(p.button, p.gap)
		listen, rest := rest.CutBottom(p.button, p.gap)
		plots, rest := rest.CutTop(math.Round(rest.H*g.plotShare(p, rest.H)), p.gap)
		g.layPlots(p, plots.Rows(2, p.gap))
		g.layMiddle(p, rest)
		g.layListening(p, listen)
		g.layBottom(p, bottom)
	}
}

// leastPicture is the least height of a picture that can still be read; the
// rulers shrink first.
const leastPicture = 64

// plotShare is how much of the height the pictures get: what the rulers or the
// marks leave.
func (g *Game) plotShare(p *paper, height float64) float64 {
	if g.page == marked {
		if p.wide {
			return 0.58
		}
		return 0.5
	}
	need, least, most := g.rulersHeight(p), 2*leastPicture+p.gap, 0.8
	if p.wide {
		need, most = max(need, p.button+p.gap+3*p.body*leading), 0.62
	}
	return min(most, max(least, height-need-p.gap)/height)
}

// layHeader writes title, place and task, and returns what is left below.
func (g *Game) layHeader(p *paper, r ui.Rect) ui.Rect {
	place := fmt.Sprintf("%d/%d", g.current+1, len(g.sheet.Exercises))
	if p.wide {
		place = fmt.Sprintf("Sheet: %s · %d of %d", g.sheet.Title, g.current+1, len(g.sheet.Exercises))
	}
	w := p.measure(place, p.body, false) + p.gap
	p.line(ui.Rect{X: r.X, Y: r.Y + 0.8*(p.title-p.body), W: r.W, H: p.title}, place, p.body, false, Faint, Right)
	title := ui.Rect{X: r.X, Y: r.Y, W: r.W - w, H: r.H}
	below, _ := p.paragraph(title, g.scene.Title, p.title, true, Black)
	below.W = r.W
	task := g.exercise().Task
	switch {
	case g.page == marked && p.wide:
		task = "Marked. Filled and solid: yours. Open and dashed: the target. A tick is a partial within one just-noticeable step."
	case g.page == marked:
		task = "Solid: yours. Dashed: the target."
	}
	below, _ = p.paragraph(below, task, p.body, false, Faint)
	_, below = below.CutTop(0, p.gap)
	return below
}

// layPlots gives the trace and the partials their boxes and titles.
func (g *Game) layPlots(p *paper, boxes []ui.Rect) {
	names := [2]string{"Trace", "Partials"}
	for i, name := range names {
		if p.wide {
			var title ui.Rect
			title, boxes[i] = boxes[i].CutTop(p.label*leading, 2)
			p.line(title, name, p.label, true, Faint, Left)
			continue
		}
		p.line(ui.Rect{X: boxes[i].X, Y: boxes[i].Y + 4, W: boxes[i].W - 30}, name, 14, false, Faint, Right) // beside the folded corner
	}
	g.scene.Trace = &Trace{Rect: boxes[0]}
	g.scene.Partials = &Partials{Rect: boxes[1]}
}

// layMiddle lays out what stands between the pictures and the buttons.
func (g *Game) layMiddle(p *paper, r ui.Rect) {
	if g.page == marked {
		g.layMarks(p, r)
		return
	}
	g.layRulers(p, r)
}

func (g *Game) layListening(p *paper, r ui.Rect) {
	p.buttons(r,
		ui.Widget{ID: "target", Label: "Target", On: g.playing.what == toTarget, Keys: "T"},
		ui.Widget{ID: "yours", Label: "Yours", On: g.playing.what == toYours, Keys: "Y"},
		ui.Widget{ID: "turn", Label: "In turn", On: g.playing.what == inTurn, Keys: "I"})
}

func (g *Game) layBottom(p *paper, r ui.Rect) {
	back := ui.Widget{ID: "contents", Label: "Contents", Keys: "C"}
	if p.wide { // it stands apart from what goes on
		columns := r.Columns(2, 2*p.gap)
		p.buttons(columns[0].Columns(2, p.gap)[0], back)
		g.layOnward(p, columns[1])
		return
	}
	g.layOnward(p, r, back)
}

// layOnward lays out the buttons that go on with the exercise, after others.
func (g *Game) layOnward(p *paper, r ui.Rect, before ...ui.Widget) {
	if g.page == marked {
		p.buttons(r, append(before,
			ui.Widget{ID: "again", Label: "Again", Keys: "A"},
			ui.Widget{ID: "next", Label: "Next", Primary: true, Keys: "N"})...)
		return
	}
	uncover := ui.Widget{ID: "uncover", Label: fmt.Sprintf("Uncover the target: at most %d marks", UncoveredCap), Face: "Uncover", Keys: "U"}
	if g.work.uncovered {
		uncover.Face, uncover.Label, uncover.Disabled = "Uncovered", "The target is uncovered", true
	}
	p.buttons(r, append(before, uncover, ui.Widget{ID: "hand in", Label: "Hand in", Primary: true, Keys: "H"})...)
}

// hint tells what can be done on this page beside the rulers.
func (g *Game) hint() string {
	s := []string{"Keys: T target, Y yours, I in turn, H hand in; arrow keys move a ruler, with Shift by a fine step."}
	if !g.work.uncovered {
		s = append(s, fmt.Sprintf("Ears first: the target's picture stays covered. Uncovered before handing in, it gives at most %d marks.", UncoveredCap))
	}
	switch g.in.Audio {
	case NoAudio:
		return "This browser plays no sound here: allow sound for this page or try another browser."
	case Suspended:
		return "The sound is paused by the device: touch a button to go on."
	}
	return strings.Join(s, " ")
}
