package game

import (
	"partialcredit/game/book"
	"partialcredit/game/ui"
)

// layBook lays out the mark book.
func (g *Game) layBook(p *paper) {
	m := &g.marks
	g.openBook()
	t := g.bookTable()
	title := g.t("Mark book")
	if t != nil && m.leaf != leafCollect && m.leaf != leafAside {
		title = g.t(t.Sheet.Title)
	}
	g.scene.Title = title
	area := g.deskTitle(p, p.plain(), title)
	body, foot := g.bookLeaf(p, t)
	tabs := g.leafTabs()
	perRow := len(foot)
	if p.W < 480 && perRow > 4 {
		perRow = 3
	}
	var tabsAt, footAt ui.Rect
	if p.short {
		var left ui.Rect
		left, area = area.CutLeft(0.4*area.W, 2*p.gap)
		if perRow = 2; len(foot) > 4 {
			perRow = 3
		}
		tabsAt, left = left.CutTop(rowsHeight(p, len(tabs), 2, finger), p.gap)
		g.layGrid(p, tabsAt, tabs, 2)
		footAt, _ = left.CutBottom(rowsHeight(p, len(foot), perRow, finger), 0)
	} else {
		columns := len(tabs)
		if p.W < 600 {
			columns = 3
		}
		tabsAt, area = area.CutTop(rowsHeight(p, len(tabs), columns, finger), p.gap)
		g.layGrid(p, tabsAt, tabs, columns)
		footAt, area = area.CutBottom(rowsHeight(p, len(foot), perRow, p.button), p.gap)
	}
	if left := m.book.Left(); left > 0 {
		said := g.t("Marks are being made: %d sounds to go.", left)
		p.line(area, p.cut(said, p.body, false, area.W), p.body, false, Red, Left)
		_, area = area.CutTop(lines(1, p.body), p.gap/2)
	}
	body(area)
	g.layGrid(p, footAt, foot, perRow)
}

func (g *Game) leafTabs() []ui.Widget {
	names := [leaves][2]string{
		{g.t("Collect slips"), g.t("Collect")}, {g.t("The class"), g.t("Class")}, {g.t("The exercises"), g.t("Exercises")},
		{g.t("What was confused"), g.t("Confused")}, {g.t("Findings"), g.t("Findings")}, {g.t("Kept aside"), g.t("Aside")},
	}
	tabs := make([]ui.Widget, leaves)
	for i, name := range names {
		tabs[i] = ui.Widget{ID: numberedID("leaf", i), Label: name[0], Face: name[1], On: i == g.marks.leaf}
	}
	return tabs
}

// bookLeaf is what lays out the leaf that is looked at, and the buttons below it.
func (g *Game) bookLeaf(p *paper, t *book.Table) (body func(ui.Rect), foot []ui.Widget) {
	m := &g.marks
	back := ui.Widget{ID: "teacher", Label: g.t("Back to your sheets"), Face: g.t("Back")}
	switch {
	case m.leaf == leafCollect:
		return func(r ui.Rect) { g.layCollect(p, r) }, append([]ui.Widget{back}, g.collectFoot()...)
	case m.leaf == leafAside:
		none := len(m.book.Asides())+len(waitingSlips(m.book)) == 0
		return func(r ui.Rect) { g.layAside(p, r) }, []ui.Widget{back,
			{ID: "remove aside", Label: g.t("Remove this slip"), Face: g.t("Remove"), Disabled: none}}
	case t == nil:
		return func(r ui.Rect) {
			g.nothing(p, r, g.t("There are no slips for any sheet of this device yet. Collect some: scan their codes, open their files or paste them."))
		}, []ui.Widget{back}
	}
	foot = []ui.Widget{back}
	if len(g.bookPrints()) > 1 {
		foot = append(foot, ui.Widget{ID: "other sheet", Label: g.t("Another sheet"), Face: g.t("Sheet")})
	}
	switch m.leaf {
	case leafItems:
		return func(r ui.Rect) { g.layItems(p, r, t) }, foot
	case leafConfused:
		return func(r ui.Rect) { g.layGroups(p, r, t) }, foot
	case leafFindings:
		return func(r ui.Rect) { g.layFindings(p, r, t) }, append(foot,
			ui.Widget{ID: "print", Label: g.t("Print the book of this sheet"), Face: g.t("Print"), Disabled: t.Left > 0},
			ui.Widget{ID: "close sheet", Label: g.t("Remove all slips of this sheet"), Face: g.t("Remove")})
	}
	if row := g.bookRow(t); row != nil {
		return func(r ui.Rect) { g.layLearner(p, r, t, row) }, []ui.Widget{
			{ID: "class", Label: g.t("Back to the class"), Face: g.t("Back")},
			{ID: "remove slip", Label: g.t("Remove this slip"), Face: g.t("Remove")}}
	}
	return func(r ui.Rect) { g.layClass(p, r, t) }, append(foot,
		ui.Widget{ID: "csv", Label: g.t("Save as CSV, a line for each exercise"), Face: "CSV", Disabled: t.Left > 0},
		ui.Widget{ID: "wide", Label: g.t("Save as CSV, a line for each learner"), Face: g.t("Table"), Disabled: t.Left > 0},
		ui.Widget{ID: "print", Label: g.t("Print the book of this sheet"), Face: g.t("Print"), Disabled: t.Left > 0})
}
