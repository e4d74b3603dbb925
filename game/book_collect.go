package game

import "partialcredit/game/ui"

// collectFoot are the ways to collect slips, and to keep them elsewhere.
func (g *Game) collectFoot() []ui.Widget {
	scan := ui.Widget{ID: "scan", Label: g.t("Scan the codes of slips"), Face: g.t("Scan"), Primary: true}
	if g.scanning.on {
		scan = ui.Widget{ID: "stop", Label: g.t("Stop scanning"), Face: g.t("Stop"), Primary: true}
	}
	b := g.marks.book
	return []ui.Widget{scan,
		{ID: "open slips", Label: g.t("Open files of slips, or pictures of their codes"), Face: g.t("Open")},
		{ID: "save slips", Label: g.t("Save all slips to a file"), Face: g.t("Save"), Disabled: len(b.Entries())+len(b.Asides()) == 0}}
}

// layCollect lays out the camera or a field to paste slips into, and what became of the
// last slips.
func (g *Game) layCollect(p *paper, r ui.Rect) {
	m := &g.marks
	count := g.t("Slips in the book: %d. Kept aside: %d.", len(m.book.Entries())-len(waitingSlips(m.book)), len(m.book.Asides())+len(waitingSlips(m.book)))
	g.scene.Body += count + " "
	p.line(r, p.cut(count, p.body, true, r.W), p.body, true, Black, Left)
	_, r = r.CutTop(lines(1, p.body), p.gap/2)
	news := r
	switch {
	case g.scanning.on && p.wide:
		g.scene.Camera, news = r.CutLeft(0.55*r.W, 2*p.gap)
	case g.scanning.on:
		g.scene.Camera, news = r.CutTop(r.H-4*lines(1, p.body), p.gap)
	default:
		field := ui.Widget{ID: "slips", Label: g.t("Paste slips here"), Text: ui.Text{Value: m.pasted, Hint: "#slip=1.…", Lines: 3}}
		if p.short {
			field.Text.Lines = 2
		}
		news = p.written(r, field)
		var row ui.Rect
		row, news = news.CutTop(finger, p.gap)
		row.W = min(row.W, 20*p.body)
		p.buttons(row, ui.Widget{ID: "take slips", Label: g.t("Take these slips"), Disabled: m.pasted == ""})
	}
	told := m.news
	if len(told) == 0 {
		told = []string{g.t("Slips come by their codes, as files, or as text: paste them above, or drop their files on this page. Marks are made anew from the answers on them.")}
		if g.scanning.on {
			told = []string{g.t("Hold one code after another before the camera. Each is said when it is taken.")}
		}
	}
	for i, s := range told {
		ink := Faint
		if i == 0 {
			ink = Black
			g.scene.Body += s + " "
		}
		if h := p.height(s, p.body, false, news.W); i == 0 && h > news.H+0.3*p.body {
			g.layNote(p, news, deskPage{note: s, ink: ink})
			break
		}
		var fits bool
		if news, fits = p.paragraph(news, s, p.body, false, ink); !fits {
			break
		}
		_, news = news.CutTop(0, p.gap/2)
	}
}
