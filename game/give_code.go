package game

import (
	"slices"
	"strings"

	"partialcredit/game/code"
	"partialcredit/game/link"
	"partialcredit/game/ui"
)

// coded is the code of a text, which takes a moment to make.
type coded struct {
	text string
	code code.Code
	err  error
}

// codeOf makes the code of a text, and a sentence where it is of little use.
func (g *Game) codeOf(text string) (c code.Code, warning string) {
	k := &g.coded
	if k.text != text {
		k.text = text
		if address, fragment, ok := strings.Cut(text, "#"); ok {
			text = address + "#" + link.ForCode(fragment)
		}
		k.code, k.err = code.Encode(text, code.Auto)
	}
	switch {
	case text == "":
		return code.Code{}, ""
	case k.err != nil:
		return code.Code{}, g.t(k.err.Error())
	case !k.code.ForCamera():
		return k.code, g.t("This code is too fine for most cameras. Use the link or the file.")
	}
	return k.code, ""
}

// A handing is a page that hands something over: a code, something to read beside it,
// and buttons.
type handing struct {
	title, text string
	code        string // the text of it; none where empty
	body        func(p *paper, r ui.Rect)
	rows        [][]ui.Widget // of buttons
}

func (g *Game) layHanding(p *paper, h handing) {
	c, warning := g.codeOf(h.code)
	if g.large && c.Size > 0 {
		g.layLarge(p, h, c)
		return
	}
	area := p.plain()
	var at ui.Rect
	beside := c.Size > 0 && (p.wide || p.short)
	if beside {
		at, area = area.CutLeft(min(area.H, 0.46*area.W), 2*p.gap)
	}
	last := len(h.rows) - 1
	switch {
	case p.short && beside: // what leads back stands below the code
		var row ui.Rect
		row, at = at.CutBottom(p.button, p.gap)
		defer p.buttons(row, h.rows[last]...)
		h.rows = h.rows[:last]
	case p.short && last > 0:
		h.rows = [][]ui.Widget{slices.Concat(h.rows[:last]...), h.rows[last]}
	}
	area = g.head(p, area, h.title, h.text)
	rows := make([]ui.Rect, len(h.rows))
	for i := len(rows) - 1; i >= 0; i-- {
		rows[i], area = area.CutBottom(p.button, p.gap)
	}
	if c.Size > 0 && !beside {
		at, area = area.CutBottom(min(area.W, max(leastCode, 0.5*area.H)), p.gap)
	}
	if warning != "" {
		area, _ = p.paragraph(area, warning, p.body, true, Black)
		_, area = area.CutTop(0, p.gap/2)
		g.scene.Body += " " + warning
	}
	h.body(p, area)
	if c.Size > 0 {
		p.Code = &Code{Rect: at, Code: c}
		g.scene.Body += " " + g.t("A code to scan holds the link.")
	}
	for i, row := range h.rows {
		p.buttons(rows[i], row...)
	}
}

// leastCode is the least side of a code beside other things, in CSS pixels.
const leastCode = 120

// layLarge lays the code out alone, for a wall or across a table.
func (g *Game) layLarge(p *paper, h handing, c code.Code) {
	area := p.inner()
	g.scene.Title, g.scene.Body = h.title, g.t("A code to scan holds the link.")
	p.line(area, p.cut(h.text, p.body, false, area.W), p.body, false, Faint, Left)
	_, area = area.CutTop(lines(1, p.body), p.gap/2)
	bottom, area := area.CutBottom(finger, p.gap/2)
	p.Code = &Code{Rect: area, Code: c}
	p.buttons(bottom, ui.Widget{ID: "small", Label: g.t("Show small"), Keys: "Escape"})
}
