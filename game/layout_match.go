package game

import (
	"strings"

	"partialcredit/game/ui"
)

func (g *Game) listenTo(target, yours string) []ui.Widget {
	return []ui.Widget{
		{ID: "target", Label: target, On: g.playing.what == toTarget, Keys: "T"},
		{ID: "yours", Label: yours, On: g.playing.what == toYours, Keys: "Y"},
		{ID: "turn", Label: g.t("In turn"), On: g.playing.what == inTurn, Keys: "I"},
	}
}

// workingFrame is a match at work.
func (g *Game) workingFrame(p *paper) frame {
	uncover := ui.Widget{ID: "uncover", Label: g.t("Uncover the target: at most %d marks", UncoveredCap), Face: g.t("Uncover"), Keys: "U"}
	if g.work.uncovered {
		uncover.Face, uncover.Label, uncover.Disabled = g.t("Uncovered"), g.t("The target is uncovered"), true
	}
	f := frame{
		title: g.numbered(), task: g.t(g.exercise().Task), hint: g.hint(),
		middle: func(p *paper, r ui.Rect) { g.layRulers(p, r, g.allControls()) }, height: p.rulersHeight(len(g.work.controls)),
		listening: g.listenTo(g.t("Target"), g.t("Yours")),
		onward:    []ui.Widget{uncover, {ID: "hand in", Label: g.t("Hand in"), Primary: true, Keys: "H"}},
	}
	if g.answerable() {
		n := float64(len(g.work.controls))
		f.extra = ui.Widget{ID: "record answer", Label: g.t("Answer with a recording")}
		f.least = n*finger + (n-1)*p.gap/2
	}
	return g.placed(f)
}

// markedFrame is a match that was handed in.
func (g *Game) markedFrame(p *paper) frame {
	g.scene.Body = g.verdict()
	task := g.t("Solid: yours. Dashed: the target.")
	if p.wide {
		task = g.t("Marked. Filled and solid: yours. Open and dashed: the target. A tick is a partial within one just-noticeable step.")
	}
	return g.placed(frame{
		title: g.numbered(), task: task,
		middle: g.layMarks, across: true,
		listening: g.listenTo(g.t("Target"), g.t("Yours")),
		onward: []ui.Widget{
			{ID: "again", Label: g.t("Again"), Keys: "A"},
			{ID: "next", Label: g.t("Next"), Primary: true, Keys: "N"},
		},
	})
}

// hint tells what can be done on this page beside the rulers.
func (g *Game) hint() string {
	if s := g.silentDevice(); s != "" {
		return s
	}
	var s []string
	if !g.kept.Keyless {
		s = append(s, g.t("Keys: T target, Y yours, I in turn, H hand in; arrow keys move a ruler, with Shift by a fine step."))
	}
	if !g.work.uncovered {
		s = append(s, g.t("Ears first: the target's picture stays covered. Uncovered before handing in, it gives at most %d marks.", UncoveredCap))
	}
	return strings.Join(s, " ")
}

// showingFrame is a demonstration: hear it, see it, sweep it.
func (g *Game) showingFrame(p *paper) frame {
	e := g.exercise()
	g.scene.Body = g.t(e.Task)
	if g.work.heard {
		g.scene.Body += " " + g.t(e.Teach)
	}
	listening := []ui.Widget{{ID: "yours", Label: g.t("Play"), On: g.playing.what == toYours, Keys: "Y"}}
	for i := range g.work.controls {
		face := g.t("Sweep")
		if len(g.work.controls) > 1 {
			face = g.lang.Value(g.work.controls[i].Label)
		}
		listening = append(listening, g.sweepButton(i, face))
	}
	n := len(g.work.controls)
	return g.placed(frame{
		title: g.numbered(), task: g.t(e.Task),
		middle: func(p *paper, r ui.Rect) {
			rulers := p.rulersHeight(n)
			top, below := r.CutTop(rulers, p.gap/2)
			g.layRulers(p, top, g.allControls())
			if g.work.heard {
				p.paragraph(below, g.t(e.Teach), p.body, false, Yours)
			}
		},
		height:    p.rulersHeight(n) + p.gap/2 + p.height(g.t(e.Teach), p.body, false, g.middleWidth(p)),
		hint:      g.showHint(),
		listening: listening,
		onward:    []ui.Widget{{ID: "next", Label: g.t("Next"), Primary: true, Keys: "N"}},
	})
}

func (g *Game) showHint() string {
	if s := g.silentDevice(); s != "" {
		return s
	}
	return g.t("Play it, then move the ruler, or have it swept while you listen. The pictures follow what you hear.")
}

// middleWidth is about how wide the middle of a page is.
func (g *Game) middleWidth(p *paper) float64 {
	switch {
	case p.short:
		return 0.5 * p.W
	case p.wide && p.W >= 900:
		return (p.W-86)/2 - 2*p.pad
	case p.wide:
		return p.W/2 - 2*p.pad
	}
	return p.W - 2*p.pad
}

// sweepButton starts and stops the sweep of a control.
func (g *Game) sweepButton(control int, face string) ui.Widget {
	label := g.t("Sweep: %s", g.work.controls[control].Label)
	return ui.Widget{ID: numberedID("sweep", control), Label: label, Face: face, On: g.sweep.on && g.sweep.control == control, Keys: "S"}
}
