package game

import (
	"math"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// layMargin draws the margin and, where it is tall enough, the exercises of
// the sheet in it; it returns the page beside it.
func (g *Game) layMargin(p *paper, area ui.Rect) ui.Rect {
	if !p.wide || p.W < 900 {
		return area
	}
	p.Margin = marginWidth
	rest := ui.Rect{X: marginWidth + p.pad, Y: area.Y, W: p.W - marginWidth - 2*p.pad, H: area.H}
	n := len(g.sheet().Exercises)
	step := math.Min(62, (p.H-2*p.gap)/float64(n))
	if step < finger || g.page == benchPage || g.page.ofRecording() && !g.taking.answers || g.session.on {
		return rest
	}
	y := (p.H - step*float64(n)) / 2
	for i := range n {
		p.widget(ui.Widget{
			ID: numberedID("exercise", i), Label: g.exerciseLabel(i), Face: g.t("%d", i+1), Round: true,
			On: i == g.at.exercise, Ticked: g.kept.Marks[g.sheet().Exercises[i].ID].Tries > 0, NoTab: true,
			Rect: ui.Rect{X: marginWidth/2 - finger/2, Y: y + float64(i)*step + (step-finger)/2, W: finger, H: finger},
		})
	}
	return rest
}

const marginWidth = 86

// exerciseLabel is how the sheet names an exercise.
func (g *Game) exerciseLabel(i int) string {
	return g.t("%d. %s", i+1, g.theirs(g.sheet().Exercises[i].Title))
}

// theirs is a text of the open sheet to be put into another: as it is, where a teacher
// wrote it.
func (g *Game) theirs(text string) any {
	if g.own() != nil {
		return plainly(text)
	}
	return text
}

// plain is the page without its margins.
func (p *paper) plain() ui.Rect {
	area := p.inner()
	if p.W >= 900 {
		p.Margin = marginWidth
		_, area = area.CutLeft(marginWidth, 0)
	}
	return area
}

// head writes the title of a page and what stands below it.
func (g *Game) head(p *paper, area ui.Rect, title, text string) ui.Rect {
	g.scene.Title, g.scene.Body = title, text
	area, _ = p.paragraph(area, title, p.title, true, Black)
	area, _ = p.paragraph(area, text, p.body, false, Faint)
	_, area = area.CutTop(0, p.gap)
	return area
}

// layContents lists the sheets of the course.
func (g *Game) layContents(p *paper) {
	done, of, sum, marked := 0, 0, 0.0, 0
	var rows []ui.Widget
	for i, s := range g.course {
		d, n, m, k := g.tally(s)
		row := ui.Widget{ID: numberedID("sheet", i), Label: g.sheetLabel(i), Plain: true, On: i == g.at.sheet}
		switch {
		case i < g.built:
			done, of, sum, marked = done+d, of+n, sum+m, marked+k
		case i == g.built:
			rows = append(rows, ui.Widget{Label: g.t("From links")}) // a heading
		}
		if d > 0 {
			row.Note = g.t("%d/%d", d, n)
		}
		rows = append(rows, row)
	}
	text := g.doneText(done, of, sum, marked)
	area := g.head(p, p.plain(), g.t("Hear what two oscillators do"), text+" "+g.t("Everything stays on this device."))

	settings, list := g.laySettings(p, area)
	where := []ui.Widget{
		{ID: "practice", Label: g.t("Practice")}, {ID: "bench", Label: g.t("Bench")}, {ID: "recording", Label: g.t("Recording")},
		{ID: "progress", Label: g.t("Progress")}, {ID: "help", Label: g.t("Help")},
		{ID: "teacher", Label: g.t("For the teacher"), Face: g.t("Teach")},
	}
	if n := len(g.kept.Boxes.Due(g.today())); n > 0 {
		where[0].Label, where[0].Face = g.t("Practice: %d due", n), g.t("Practice")
	}
	var top ui.Rect
	if p.W < 480 {
		const columns = 3 // of two rows
		top, list = list.CutTop(2*p.button+p.gap, p.gap)
		for i, r := range top.Rows(2, p.gap) {
			p.buttons(r, where[columns*i:min(len(where), columns*(i+1))]...)
		}
	} else {
		top, list = list.CutTop(p.button, p.gap)
		p.buttons(top, where...)
	}
	rest := g.layList(p, list, rows)
	rest.W = min(rest.W, 50*p.body)
	if below, fits := p.paragraph(rest, g.t(howTo), p.body, false, Black); fits {
		_, below = below.CutTop(0, p.gap/2)
		p.paragraph(below, g.t(caution), p.body, false, Faint)
	}
	settings()
}

// sheetLabel is how the contents name a sheet.
func (g *Game) sheetLabel(i int) string {
	if i >= g.built {
		return g.course[i].Title
	}
	return g.t("%d. %s", i+1, g.course[i].Title)
}

// laySettings takes room for the settings at the bottom of a page. They are the
// last for the Tab key, so what lays them out is called last.
func (g *Game) laySettings(p *paper, area ui.Rect) (settings func(), rest ui.Rect) {
	other := g.otherLanguage()
	look := g.t(themeNames[g.kept.Theme])
	buttons := []ui.Widget{
		{ID: "theme", Label: g.t("Look: %s", p.themeFace(look)), Face: p.themeFace(look)},
		{ID: "language", Label: g.t("Language: %s", other.Name), Face: other.Name},
	}
	if g.in.Update {
		buttons = append(buttons, ui.Widget{ID: "renew", Label: g.t("Update: a new version is ready"), Face: g.t("Update"), Primary: true})
	}
	if p.wide || p.short {
		bottom, rest := area.CutBottom(p.button, p.gap)
		return func() {
			parts := bottom.Columns(2, p.gap)
			p.ruled("volume", g.t("Volume"), g.volumeRuler(), parts[0])
			p.buttons(parts[1], buttons...)
		}, rest
	}
	bottom, rest := area.CutBottom(p.button+finger+p.gap/2, p.gap)
	return func() {
		ruler, row := bottom.CutTop(finger, p.gap/2)
		p.ruled("volume", g.t("Volume"), g.volumeRuler(), ruler)
		p.buttons(row, buttons...)
	}, rest
}

const (
	howTo   = "Begin with the first sheet, or with what you want to hear. Ears first: listen, answer or set, and read what to listen for. What you miss comes back in the practice."
	caution = "Keep the volume comfortable and rest your ears from time to time; if they ring or sounds seem dull, stop. Rules of your school and a doctor's advice come first. Nothing on the page flashes."
)

// themeFace is what the button says where there is little room: what a longer
// name comes to.
func (p *paper) themeFace(name string) string {
	for _, long := range []string{"As the device", "Wie das Gerät"} {
		if name == long && !p.wide {
			return "System" // in both languages
		}
	}
	return name
}

var themeNames = map[Theme]string{AsSystem: "As the device", Paper: "Paper", Blackboard: "Blackboard"}

// laySheet lists the exercises of a sheet with what was reached in each.
func (g *Game) laySheet(p *paper) {
	s := g.sheet()
	done, of, sum, marked := g.tally(s)
	text := g.doneText(done, of, sum, marked)
	if s.Strictness != sheet.Expert {
		text += " " + g.t("Marked for %s.", s.Strictness.Whom())
	}
	own := g.own()
	switch {
	case own == nil:
	case own.Name != "":
		text += " " + g.t("Worked by %s.", plainly(own.Name))
	case own.sheet.Vary:
		text += " " + g.t("Each name gets targets of its own.")
	}
	area := g.head(p, p.plain(), g.sheetLabel(g.at.sheet), text)
	bottom, list := area.CutBottom(p.button, p.gap)
	var row ui.Rect
	if own != nil {
		row, list = list.CutBottom(p.button, p.gap)
	}
	var rows []ui.Widget
	for i := range s.Exercises {
		rows = append(rows, ui.Widget{
			ID: numberedID("exercise", i), Label: g.exerciseLabel(i), Plain: true, Note: g.reached(&s.Exercises[i]),
			Ticked: g.kept.Marks[s.Exercises[i].ID].Tries > 0, On: i == g.at.exercise,
		})
	}
	g.layList(p, list, rows)
	if own != nil {
		with := []ui.Widget{{ID: "discard", Label: g.t("Remove this sheet"), Face: g.t("Remove")},
			{ID: "name it", Label: g.t("Your name"), Face: g.t("Name")},
			{ID: "slip", Label: g.t("Hand in the slip"), Face: g.t("Slip")}}
		for i := range with {
			if p.wide && p.W >= 900 {
				with[i].Face = ""
			}
		}
		p.buttons(row, with...)
	}
	back := ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"}
	if g.trial.on {
		back = g.untryButton()
	}
	p.buttons(bottom, back, ui.Widget{ID: "go on", Label: g.t("Go on"), Primary: true, Keys: "N"})
}

// firstOpen is the first exercise of the sheet that was not done yet.
func (g *Game) firstOpen() int {
	for i, e := range g.sheet().Exercises {
		if g.kept.Marks[e.ID].Tries == 0 {
			return i
		}
	}
	return 0
}

// reached is what the sheet says of an exercise that was done.
func (g *Game) reached(e *sheet.Exercise) string {
	k := g.kept.Marks[e.ID]
	switch {
	case k.Tries == 0:
		return ""
	case e.Kind == sheet.Show:
		return g.t("seen")
	case e.Kind != sheet.Limit:
		return g.t("%.0f", math.Floor(k.Best+0.05))
	}
	runs := g.kept.Limits[e.ID]
	if len(runs) == 0 || !runs[len(runs)-1].Found {
		return "–"
	}
	return g.lang.Value(e.Quantity.Format(runs[len(runs)-1].Value))
}

// layList lays rows out in one or two columns, in parts where they do not fit, and
// returns what is left below.
func (g *Game) layList(p *paper, r ui.Rect, rows []ui.Widget) (rest ui.Rect) {
	columns := 1
	if p.wide || p.short || p.W >= 700 {
		columns = 2
	}
	n := len(rows)
	fit := int(r.H/p.row) * columns
	if fit < n {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap)
		fit = max(1, int(r.H/p.row)*columns)
		g.layTurn(p, turn, (n+fit-1)/fit)
	} else {
		g.part = 0
	}
	from, to := g.part*fit, min(n, (g.part+1)*fit)
	perColumn := (to - from + columns - 1) / columns
	row := max(p.row, min(1.4*p.row, (r.H-8*p.body)/float64(perColumn))) // leaving room for the words below
	_, rest = r.CutTop(float64(perColumn)*row, p.gap)
	for c, column := range r.Columns(columns, 2*p.gap) {
		for i := from + c*perColumn; i < min(to, from+(c+1)*perColumn); i++ {
			rows[i].Rect = ui.Rect{X: column.X, Y: column.Y + float64(i-from-c*perColumn)*row, W: column.W, H: row - 2}
			if rows[i].ID == "" {
				p.line(ui.Rect{X: column.X, Y: rows[i].Rect.Y + (row-p.body)/2 - 0.1*p.body, W: column.W}, rows[i].Label, p.body, true, Black, Left)
				continue
			}
			p.widget(rows[i])
		}
	}
	return rest
}

// layTurn lays out the buttons that turn the parts of a page.
func (g *Game) layTurn(p *paper, r ui.Rect, parts int) {
	g.part = max(0, min(parts-1, g.part))
	p.buttons(r,
		ui.Widget{ID: "earlier", Label: g.t("Earlier"), Disabled: g.part == 0},
		ui.Widget{ID: "later", Label: g.t("Later"), Disabled: g.part == parts-1})
}

// doneText says what tally has counted.
func (g *Game) doneText(done, of int, sum float64, marked int) string {
	if marked == 0 {
		return g.t("%d of %d exercises done.", done, of)
	}
	return g.t("%d of %d exercises done, %.0f marks on average.", done, of, sum/float64(marked))
}

// tally counts the exercises of a sheet and what was done of them, and adds up the
// best marks of those that have any. Demonstrations do not count.
func (g *Game) tally(s *sheet.Sheet) (done, of int, sum float64, marked int) {
	for _, e := range s.Exercises {
		if e.Kind == sheet.Show {
			continue
		}
		of++
		k := g.kept.Marks[e.ID]
		if k.Tries == 0 {
			continue
		}
		done++
		if e.Kind != sheet.Limit {
			sum += k.Best
			marked++
		}
	}
	return done, of, sum, marked
}
