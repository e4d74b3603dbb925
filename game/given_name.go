package game

import (
	"strings"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
)

// naming is what comes after a name was written.
type naming struct {
	exercise int // to open; -1 none
	slip     bool
}

// mostLogged is how many exercises, each with every name, keep their work for slips.
const mostLogged = 3000

// askName asks who works on the open sheet.
func (g *Game) askName(n naming) {
	g.leave()
	if s := g.own(); s != nil && !n.slip && n.exercise < 0 {
		g.kept.Name = s.Name
	}
	g.naming = n
	g.show(namePage)
}

// layName lays out the question for a name.
func (g *Game) layName(p *paper) {
	s := g.own()
	if s == nil {
		g.bare(p, g.t("Your name"))
		return
	}
	area := g.head(p, p.plain(), g.t("Your name"), g.t("Choose a nickname your teacher knows; do not write your full name."))
	bottom, area := area.CutBottom(p.button, p.gap)
	area.W = min(area.W, 40*p.body)
	field := area
	rest := p.written(field, ui.Widget{ID: "name", Label: g.t("Nickname"),
		Text: ui.Text{Value: g.kept.Name, Hint: g.t("wren"), Lines: 1, Most: slip.MostName}})
	about := g.t("The name stands on your slip. Several names can work on this device, each on its own: whoever writes the same name again finds the work again.")
	if s.sheet.Vary {
		about = g.t("This sheet draws targets for each name, so write the same name every time. Several names can work on this device, each on its own.")
	}
	p.paragraph(rest, about, p.body, false, Black)
	g.scene.Body += " " + about
	p.buttons(bottom, ui.Widget{ID: "contents", Label: g.t("Back to the sheet"), Face: g.t("Back"), Keys: "C"},
		ui.Widget{ID: "use name", Label: g.t("Use this name"), Primary: true, Disabled: sheet.Learner(g.kept.Name) == ""})
}

// useName takes the name that was written. Work without a name becomes that name's;
// the work of another name stays that one's.
func (g *Game) useName() {
	s := g.own()
	name := strings.Join(strings.Fields(g.kept.Name), " ")
	if s == nil || name == "" {
		return
	}
	to := s.prefix(name)
	if sheet.Learner(name) != sheet.Learner(s.Name) && !g.kept.worked(to) && len(g.kept.Log)+len(s.sheet.Exercises) > mostLogged {
		g.Tell("There is no room on this device for the work of another name. Hand in the slips of a sheet and remove it.")
		return
	}
	if s.Name == "" && !s.sheet.Vary && !g.kept.worked(to) {
		g.kept.move(s.prefix(""), to)
	}
	s.Name = name
	g.course[g.at.sheet] = s.drawn()
	switch n := g.naming; {
	case n.slip:
		g.openSlip()
	case n.exercise >= 0 && n.exercise < len(s.sheet.Exercises):
		g.open(place{g.at.sheet, n.exercise})
	default:
		g.show(sheetPage)
	}
}
