package game

import (
	"math"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layQuestion lays out a question: what to do, what sounds now, the answers.
func (g *Game) layQuestion(p *paper) {
	a := &g.asking
	f := g.asked()
	g.scene.Title, g.scene.Body = f.title, f.task+" "+f.place
	area := g.layMargin(p, p.inner())
	rest := g.layHeader(p, area, f)
	bottom, rest := rest.CutBottom(p.button, p.gap)
	listen := ui.Widget{ID: "listen", Label: g.t("Listen"), On: g.playing.what == toQuestion, Primary: !a.heard, Keys: "L"}
	if a.heard {
		listen.Label = g.t("Listen again")
	}
	back, onward := p.apart(bottom)
	p.buttons(back, f.back)
	if h := g.silentDevice(); h != "" {
		rest, _ = p.paragraph(rest, h, p.body, true, Red)
	}
	now, rest := rest.CutTop(3*p.title, p.gap)
	g.laySounds(p, now)
	p.buttons(onward, listen)
	g.layAnswers(p, rest)
}

// asked is the frame of a question.
func (g *Game) asked() frame {
	e := g.exercise()
	f := g.placed(frame{title: g.numbered(), task: g.t(e.Task)})
	if g.session.on {
		return f
	}
	n := len(g.asking.run.Answers) + 1
	if g.page == answered {
		n--
	}
	f.place = g.t("%d/%d", n, e.Questions)
	f.wide = g.t("Question %d of %d", n, e.Questions)
	if e.Kind == sheet.Limit {
		f.place = g.t("Trial %d", n)
		f.wide = g.t("Trial %d: they differ by %s", n, e.Quantity.Format(g.asking.question.Value))
	}
	return f
}

// laySounds numbers the sounds of the question; the one that sounds now stands
// out.
func (g *Game) laySounds(p *paper, r ui.Rect) {
	q := &g.asking.question
	var names []string
	if q.Lead != nil {
		names = append(names, g.t("Reference"))
	}
	switch len(q.Sounds) {
	case 1:
		names = append(names, g.t("This one?"))
	default:
		for i := range q.Sounds {
			names = append(names, g.t(ask.Intervals[i]))
		}
	}
	r.W = min(r.W, 36*p.body)
	for i, c := range r.Columns(len(names), p.gap) {
		now := g.playing.what == toQuestion && g.asking.begun == i+1 && g.in.Heard.Item >= 0
		size, ink := p.title, Faint
		if now {
			ink = Yours
		}
		middle := ui.Rect{X: c.X, Y: c.Y + r.H/2 - size, W: c.W, H: size}
		p.line(middle, names[i], size, now, ink, Middle)
		if now {
			w := p.measure(names[i], size, true)
			p.Strokes = append(p.Strokes, Stroke{Kind: Underline, X: c.X + c.W/2, Y: middle.Y + 1.25*size, R: w / 2})
		}
	}
}

// layAnswers lays the answers out as large buttons.
func (g *Game) layAnswers(p *paper, r ui.Rect) {
	answers := g.asking.question.Answers
	n := len(answers)
	columns := 1
	if n > 3 || p.short || r.H < float64(n)*(finger+p.gap) || p.wide {
		columns = 2
	}
	if n == 3 && (p.wide || p.short) {
		columns = 3
	}
	rows := (n + columns - 1) / columns
	h := math.Min(1.8*p.button, (r.H-float64(rows-1)*p.gap)/float64(rows))
	h = math.Max(finger, h)
	r.W = math.Min(r.W, 60*p.body)
	if !p.wide { // within reach of a thumb
		_, r = r.CutTop(r.H-h*float64(rows)-p.gap*float64(rows-1), 0)
	}
	r.H = h*float64(rows) + p.gap*float64(rows-1)
	for i, row := range r.Rows(rows, p.gap) {
		for j, c := range row.Columns(columns, p.gap) {
			if k := i*columns + j; k < n {
				p.widget(ui.Widget{ID: numberedID("answer", k), Label: g.lang.Value(answers[k]), Rect: c, Keys: g.t("%d", k+1)})
			}
		}
	}
}

// answeredFrame is a question that was answered.
func (g *Game) answeredFrame(p *paper) frame {
	e, a := g.exercise(), &g.asking
	q := &a.question
	f := g.asked()
	f.title, f.task = g.verdictOnAnswer(), ""
	g.scene.Body = g.told()
	f.middle = func(p *paper, r ui.Rect) {
		top, text := r.CutLeft(2.2*p.title, p.gap)
		kind := Cross
		if a.answer == q.Right {
			kind = Tick
		}
		p.Strokes = append(p.Strokes, Stroke{Kind: kind, X: top.X + p.title, Y: top.Y + p.title, R: 0.8 * p.title})
		p.paragraph(text, g.told(), p.body, false, Black)
	}
	f.across = true
	f.height = max(2.2*p.title, p.height(g.told(), p.body, false, p.W-2*p.pad-2.2*p.title-p.gap)) + p.gap
	if p.wide {
		f.height += p.button + p.gap
	}
	proceed := ui.Widget{ID: "proceed", Label: g.t("Next"), Primary: true, Keys: "N"}
	f.onward = []ui.Widget{proceed}
	if e.Kind == sheet.Limit {
		f.plots = func(p *paper, boxes []ui.Rect) { g.layRun(p, joined(boxes), e, &a.run) }
		f.listening = []ui.Widget{{ID: "turn", Label: g.t("Hear both in turn"), On: g.playing.what == inTurn, Keys: "I"}}
		return f
	}
	one, other := g.t("First"), g.t("Second")
	if e.Kind == sheet.Name {
		one, other = g.lang.Value(q.Answers[q.Right]), g.lang.Value(q.Answers[q.Other(a.answer)])
	}
	f.listening = g.listenTo(one, other)
	f.task = g.t("Dashed: %s. Solid: %s.", one, other)
	return f
}

// joined is the rectangle around all.
func joined(boxes []ui.Rect) ui.Rect {
	r, last := boxes[0], boxes[len(boxes)-1]
	r.W, r.H = last.Right()-r.X, last.Bottom()-r.Y
	return r
}

func (g *Game) verdictOnAnswer() string {
	if g.asking.answer == g.asking.question.Right {
		return g.t("Right")
	}
	return g.t("Not this time")
}

// layResult lays out the end of a run.
func (g *Game) layResult(p *paper) {
	e := g.exercise()
	f := g.placed(frame{title: g.numbered()})
	f.task = g.outcome()
	g.scene.Title, g.scene.Body = f.title, f.task+" "+g.t(e.Teach)
	area := g.layMargin(p, p.inner())
	rest := g.layHeader(p, area, f)
	rest, _ = p.paragraph(rest, g.t(e.Teach), p.body, false, Yours)
	_, rest = rest.CutTop(0, p.gap)
	bottom, rest := rest.CutBottom(p.button, p.gap)
	if e.Kind == sheet.Limit {
		g.layRun(p, rest, e, &g.asking.run)
	} else {
		g.layTable(p, rest, g.asking.run.Table(e), "")
	}
	p.buttons(bottom, f.back,
		ui.Widget{ID: "again", Label: g.t("Again"), Keys: "A"},
		ui.Widget{ID: "next", Label: g.t("Next"), Primary: true, Keys: "N"})
}
