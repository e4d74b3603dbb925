package game

import (
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
	switch g.page {
	case contents:
		g.layContents(p)
	case sheetPage:
		g.laySheet(p)
	case working:
		g.layFrame(p, g.workingFrame(p))
	case marked:
		g.layFrame(p, g.markedFrame(p))
	case showing:
		g.layFrame(p, g.showingFrame(p))
	case questionPage:
		g.layQuestion(p)
	case answered:
		g.layFrame(p, g.answeredFrame(p))
	case result:
		g.layResult(p)
	case benchPage:
		g.layFrame(p, g.benchFrame(p))
	case practicePage:
		g.layPractice(p)
	case progressPage:
		g.layProgress(p)
	case helpPage:
		g.layHelp(p)
	case teacherPage:
		g.layTeacher(p)
	case writePage:
		g.layWrite(p)
	case draftPage:
		g.layDraft(p)
	case makePage:
		g.layMake(p)
	case givePage:
		g.layGive(p)
	case slipPage:
		g.laySlip(p)
	case bookPage:
		g.layBook(p)
	case takePage:
		g.layTake(p)
	case besidePage:
		g.layFrame(p, g.besideFrame(p))
	case takenPage:
		g.layFrame(p, g.takenFrame(p))
	case namePage:
		g.layName(p)
	}
	g.refreshPictures()
	g.putPictures()
	g.scene.Body = strings.TrimSpace(g.scene.Body + " " + g.describe())
	if g.over != noOverlay {
		g.layOverlay(p)
	}
	g.pointCamera()
}

// A frame is what stands on a page that shows sounds: pictures above, something
// to set or to read below, buttons to listen and buttons that go on.
type frame struct {
	title, place, wide string // the place, and as it is written where there is room
	task               string
	plots              func(p *paper, boxes []ui.Rect) // trace and partials where nil
	middle             func(p *paper, r ui.Rect)       // what is set, or what is read
	height             float64                         // that the middle needs; 0 where it takes what the pictures leave
	across             bool                            // the middle takes the width of the page
	hint               string                          // beside it
	beside             func(p *paper, r ui.Rect)       // what else is beside it
	listening          []ui.Widget
	back               ui.Widget
	onward             []ui.Widget
	extra              ui.Widget // a button where there is room for one more; none without an ID
	least              float64   // height that the middle needs at the least, where there is one
}

func (g *Game) layFrame(p *paper, f frame) {
	g.scene.Title = f.title
	if g.scene.Body == "" {
		g.scene.Body = f.task
	}
	plots := f.plots
	if plots == nil {
		plots = g.layPlots
	}
	area := p.inner()
	switch {
	case p.short:
		left, right := area.CutLeft(math.Round(area.W*0.46), 2*p.gap)
		left = g.layHeader(p, left, f)
		plots(p, left.Rows(2, p.gap))
		bottom, rest := right.CutBottom(p.button, p.gap)
		listen, rest := rest.CutBottom(p.button, p.gap)
		rest = f.more(p, rest, f.least)
		f.middle(p, rest)
		p.buttons(listen, f.listening...)
		p.buttons(bottom, append([]ui.Widget{f.back}, f.onward...)...)
	case p.wide:
		area = g.layMargin(p, area)
		rest := g.layHeader(p, area, f)
		bottom, rest := rest.CutBottom(p.button, p.gap)
		above, rest := rest.CutTop(math.Round(rest.H*f.share(p, rest.H)), p.gap)
		plots(p, above.Columns(2, 2*p.gap))
		columns := rest.Columns(2, 2*p.gap)
		if f.across {
			listen, above := columns[1].CutBottom(p.button, p.gap)
			f.middle(p, ui.Rect{X: rest.X, Y: rest.Y, W: rest.W, H: above.H})
			p.buttons(listen, f.listening...)
		} else {
			f.middle(p, columns[0])
			listen, below := columns[1].CutTop(p.button, p.gap)
			p.buttons(listen, f.listening...)
			if f.beside == nil {
				below = f.more(p, below, 0)
			}
			if f.beside != nil {
				f.beside(p, below)
			}
			p.paragraph(below, f.hint, p.body, false, Faint)
		}
		back, onward := p.apart(bottom)
		p.buttons(back, f.back)
		p.buttons(onward, f.onward...)
	default:
		rest := g.layHeader(p, area, f)
		bottom, rest := rest.CutBottom(p.button, p.gap)
		listen, rest := rest.CutBottom(p.button, p.gap)
		rest = f.more(p, rest, f.least+2*leastPicture+2*p.gap)
		above, rest := rest.CutTop(math.Round(rest.H*f.share(p, rest.H)), p.gap)
		plots(p, above.Rows(2, p.gap))
		f.middle(p, rest)
		p.buttons(listen, f.listening...)
		p.buttons(bottom, append([]ui.Widget{f.back}, f.onward...)...)
	}
}

// more puts in the extra button where least is left without it.
func (f *frame) more(p *paper, r ui.Rect, least float64) ui.Rect {
	if f.extra.ID == "" || r.H-finger-p.gap < least {
		return r
	}
	row, rest := r.CutBottom(finger, p.gap)
	if p.wide {
		row, rest = r.CutTop(p.button, p.gap)
	}
	p.buttons(row, f.extra)
	return rest
}

// leastPicture is the least height of a picture that can still be read; the
// rulers shrink first.
const leastPicture = 64

// share is how much of the height the pictures get: what the middle leaves.
func (f *frame) share(p *paper, height float64) float64 {
	if f.height == 0 {
		if p.wide {
			return 0.58
		}
		return 0.5
	}
	need, least, most := f.height, 2*leastPicture+p.gap, 0.8
	if p.wide {
		need, least, most = max(need, p.button+p.gap+3*p.body*leading), leastPicture, 0.62
	}
	return min(most, max(least, height-need-p.gap)/height)
}

// layHeader writes title, place and task, and returns what is left below.
func (g *Game) layHeader(p *paper, r ui.Rect, f frame) ui.Rect {
	place := f.place
	if p.wide && f.wide != "" {
		place = f.wide
	}
	w := 0.0
	if place != "" {
		w = p.measure(place, p.body, false) + p.gap
		p.line(ui.Rect{X: r.X, Y: r.Y + 0.8*(p.title-p.body), W: r.W, H: p.title}, place, p.body, false, Faint, Right)
	}
	title := ui.Rect{X: r.X, Y: r.Y, W: r.W - w, H: r.H}
	below, _ := p.paragraph(title, f.title, p.title, true, Black)
	below.W = r.W
	below, _ = p.paragraph(below, f.task, p.body, false, Faint)
	_, below = below.CutTop(0, p.gap)
	return below
}

// layPlots gives the trace and the partials their boxes and titles.
func (g *Game) layPlots(p *paper, boxes []ui.Rect) {
	names := [2]string{g.t("Trace"), g.t("Partials")}
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

// placed fills in where in the sheet the exercise stands.
func (g *Game) placed(f frame) frame {
	n := len(g.sheet().Exercises)
	f.place = g.t("%d/%d", g.at.exercise+1, n)
	f.wide = g.t("Sheet: %s · %d of %d", g.theirs(g.sheet().Title), g.at.exercise+1, n)
	f.back = ui.Widget{ID: "contents", Label: g.t("Contents"), Keys: "C"}
	if g.session.on {
		f.place = g.t("Practice")
		f.wide = g.t("Practice: %d asked", g.session.asked)
		f.back = ui.Widget{ID: "end", Label: g.t("End the set"), Face: g.t("End")}
	}
	if g.trial.on {
		f.wide = g.t("Tried out: nothing of it is kept · %d of %d", g.at.exercise+1, n)
		f.back = g.untryButton()
	}
	return f
}

// numbered is the title of the current exercise with its number.
func (g *Game) numbered() string { return g.exerciseLabel(g.at.exercise) }

// silentDevice says what is wrong where the device plays nothing.
func (g *Game) silentDevice() string {
	switch g.in.Audio {
	case NoAudio:
		return g.t("This browser plays no sound here: allow sound for this page or try another browser.")
	case Suspended:
		return g.t("The sound is paused by the device: touch a button to go on.")
	}
	return ""
}
