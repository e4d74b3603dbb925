package game

import (
	"partialcredit/game/ui"
)

// The usual cautions for listening, after WHO and ITU-T H.870 (safe listening);
// they give way to local rules and professional advice.
const (
	hintTitle = "A comfortable level"
	hintText  = "Turn the volume of the device down, then up until the sound is comfortable: you should still hear someone speak next to you. If your ears ring or sounds seem dull, stop and rest."
	howTo     = "Listen to the target. Set the rulers until your own sound is like it; hear both in turn. Hand in, and read what was different."
	caution   = "Keep the volume comfortable and rest your ears from time to time; if they ring or sounds seem dull, stop. Rules of your school and a doctor's advice come first. Nothing on the page flashes."
	noteTitle = "Please note"
	eraseAsk  = "Erase all marks?"
	eraseText = "This takes every mark and setting off this device. It cannot be undone."
)

// layOverlay lays a sheet of paper over the page. Only its own widgets can be
// used while it lies there.
func (g *Game) layOverlay(p *paper) {
	p.Widgets, p.over = nil, true
	w := min(p.W-2*p.pad, 30*p.body)
	title, text := hintTitle, hintText
	switch g.over {
	case eraseQuestion:
		title, text = eraseAsk, eraseText
	case note:
		title, text = noteTitle, g.say
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
	switch g.over {
	case volumeHint:
		ruler, _ := r.CutBottom(finger, 0)
		p.ruled("volume", "Volume", g.volumeRuler(), ruler)
		p.buttons(bottom, ui.Widget{ID: "comfortable", Label: "Comfortable", Primary: true})
	case note:
		p.buttons(bottom, ui.Widget{ID: "understood", Label: "Understood", Primary: true})
	default:
		p.buttons(bottom, ui.Widget{ID: "keep", Label: "Keep them"}, ui.Widget{ID: "erase all", Label: "Erase all", Primary: true})
	}
	p.Title, p.Body = title, text
}
