package game

import (
	"partialcredit/game/ui"
)

// The usual cautions for listening. "You should still hear someone speak next to
// you" is a rule of thumb, common practice with no source; the levels and times in
// the help are those of WHO and ITU-T H.870 and of NIOSH.
const hintText = "Turn the volume of the device down, then up until the sound is comfortable: you should still hear someone speak next to you. If your ears ring or sounds seem dull, stop and rest."

// layOverlay lays a sheet of paper over the page. Only its own widgets can be
// used while it lies there.
func (g *Game) layOverlay(p *paper) {
	p.Widgets, p.over = nil, true
	w := min(p.W-2*p.pad, 30*p.body)
	var title, text string
	var buttons []ui.Widget
	switch g.over {
	case volumeHint:
		title, text = g.t("A comfortable level"), g.t(hintText)
		buttons = []ui.Widget{{ID: "comfortable", Label: g.t("Comfortable"), Primary: true}}
	case eraseQuestion:
		title, text = g.t("Erase all marks?"), g.t("This takes every mark and setting off this device. It cannot be undone.")
		buttons = []ui.Widget{{ID: "keep", Label: g.t("Keep them")}, {ID: "erase all", Label: g.t("Erase all"), Primary: true}}
	case importQuestion:
		title, text = g.t("Replace what is here?"), g.t("The marks and limits in the file take the place of those on this device. Export those first if you want to keep them.")
		buttons = []ui.Widget{{ID: "keep", Label: g.t("Keep these")}, {ID: "replace", Label: g.t("Replace"), Primary: true}}
	case removeQuestion:
		title, text = g.t("Remove this sheet?"), g.t("The sheet and all work on it, of every name, go from this device. Hand in the slips first. The link brings the sheet back, but not the work.")
		buttons = []ui.Widget{{ID: "keep", Label: g.t("Keep it")}, {ID: "discard sheet", Label: g.t("Remove"), Primary: true}}
	case bookQuestion:
		title, text, buttons = g.bookQuestion()
	case note:
		title, text = g.t("Please note"), g.say
		buttons = []ui.Widget{{ID: "understood", Label: g.t("Understood"), Primary: true}}
	}
	inner := w - 2*p.pad
	h := 2*p.pad + lines(1, p.title) + p.height(text, p.body, false, inner) + p.gap + p.button
	if g.over == volumeHint {
		h += finger + p.gap
	}
	p.Panel = ui.Rect{X: (p.W - w) / 2, Y: (p.H - h) / 2, W: w, H: h}
	r := p.Panel.Inset(p.pad)
	p.line(r, title, p.title, true, Black, Left)
	_, r = r.CutTop(lines(1, p.title), 0)
	r, _ = p.paragraph(r, text, p.body, false, Black)
	bottom, r := r.CutBottom(p.button, p.gap)
	if g.over == volumeHint {
		ruler, _ := r.CutBottom(finger, 0)
		p.ruled("volume", g.t("Volume"), g.volumeRuler(), ruler)
	}
	p.buttons(bottom, buttons...)
	p.Title, p.Body = title, text
}
