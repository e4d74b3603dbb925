package game

import (
	"fmt"
	"strings"
	"unicode"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
)

// openSlip shows the slip for the open sheet, after the name where there is none.
func (g *Game) openSlip() {
	s := g.own()
	switch {
	case s == nil:
		g.show(contents)
	case s.Name == "":
		g.askName(naming{exercise: -1, slip: true})
	default:
		g.leave()
		g.show(slipPage)
	}
}

// makeSlip is the slip for what was handed in on the open sheet by whoever works on it
// now. What does not fit the sheet, because what was kept has been damaged, is left out.
func (g *Game) makeSlip() *slip.Slip {
	s := g.own()
	all := &slip.Slip{Version: slip.Version, Name: s.Name, Sheet: s.print, Title: shortened(s.sheet.Title), Minute: max(0, g.in.Date.Unix()/60)}
	for i := range s.sheet.Exercises {
		w := g.kept.Log[s.id(s.sheet.Exercises[i].ID)]
		if w == nil || w.Tries == 0 {
			continue
		}
		one := *all
		one.Work = []slip.Work{*w}
		one.Work[0].ID = s.sheet.Exercises[i].ID
		read, err := slip.Read(one.Fragment())
		if err != nil || read.Fits(s.sheet) != nil {
			continue
		}
		if s.sheet.Vary {
			unseeded(&read.Work[0])
		}
		all.Work = append(all.Work, read.Work[0])
	}
	return all
}

// unseeded leaves out the seeds, which follow from the name: the slip is shorter.
func unseeded(w *slip.Work) {
	if w.First.Run != nil {
		w.First.Run.Seed = 0
	}
	if w.Best != nil && w.Best.Run != nil {
		w.Best.Run.Seed = 0
	}
}

// laySlip lays out the slip that a learner hands in.
func (g *Game) laySlip(p *paper) {
	s := g.own()
	if s == nil {
		g.bare(p, g.t("Your slip"))
		return
	}
	if g.slip == nil {
		g.slip = g.makeSlip()
	}
	h := handing{title: g.t("Your slip"), text: g.t("%s · %s", plainly(s.Name), plainly(s.sheet.Title))}
	back := []ui.Widget{{ID: "contents", Label: g.t("Back to the sheet"), Face: g.t("Back"), Keys: "C"}, {ID: "name it", Label: g.t("Another name"), Face: g.t("Name")}}
	if len(g.slip.Work) == 0 {
		nothing := g.t("Nothing has been handed in on this sheet under this name. Work an exercise first.")
		h.rows = [][]ui.Widget{back}
		h.body = func(p *paper, r ui.Rect) { g.nothing(p, r, " "+nothing) }
		g.layHanding(p, h)
		return
	}
	h.code = g.in.Address + "#" + g.slip.Fragment()
	copied := ui.Widget{ID: "copy", Label: g.t("Copy the slip as a link"), Face: g.t("Copy")}
	if g.handout.copied {
		copied.Face = g.t("Copied")
	}
	if c, _ := g.codeOf(h.code); c.Size > 0 {
		back = append(back, ui.Widget{ID: "large", Label: g.t("Show the code large"), Face: g.t("Large")})
	}
	h.rows = [][]ui.Widget{
		{copied, {ID: "share", Label: g.t("Share the slip"), Face: g.t("Share")}, {ID: "file", Label: g.t("Save the slip as a file"), Face: g.t("File")}},
		back,
	}
	h.body = g.laySummary
	g.layHanding(p, h)
}

// slipHolds says what a slip tells whoever gets it.
const slipHolds = "It holds the name, your answers, times and replays. Nothing is sent by itself: show the code, or send the link or the file."

// laySummary lists what is on the slip.
func (g *Game) laySummary(p *paper, r ui.Rect) {
	holds := g.t(slipHolds)
	r, _ = p.paragraph(r, holds, p.body, false, Faint)
	_, r = r.CutTop(0, p.gap/2)
	g.scene.Body += " " + holds
	row := lines(1, p.body) * 1.15
	n := len(g.slip.Work)
	fit := max(0, int(r.H/row))
	if fit < n {
		var turn ui.Rect
		turn, r = r.CutBottom(finger, p.gap/2)
		fit = max(1, int(r.H/row))
		turn.W = min(turn.W, 30*p.body)
		g.layTurn(p, turn, (n+fit-1)/fit)
	} else {
		g.part = 0
	}
	for i := range g.slip.Work {
		title, note := g.summed(&g.slip.Work[i])
		g.scene.Body += " " + headed(title, note) + "."
		if i < g.part*fit || i >= (g.part+1)*fit {
			continue
		}
		w := p.measure(note, p.body, true)
		p.line(r, p.cut(title, p.body, false, r.W-w-p.gap), p.body, false, Black, Left)
		p.line(r, note, p.body, true, Red, Right)
		_, r = r.CutTop(row, 0)
	}
}

// summed is what the summary says of an exercise: its title, and what was reached in
// how many tries.
func (g *Game) summed(w *slip.Work) (title, note string) {
	for i := range g.sheet().Exercises {
		e := &g.sheet().Exercises[i]
		if original(e.ID) != w.ID {
			continue
		}
		reached := g.reached(e)
		if e.Kind != sheet.Limit {
			reached = g.t("%s marks", reached)
		}
		tries := g.t("1 try")
		if w.Tries != 1 {
			tries = g.t("%d tries", w.Tries)
		}
		return g.exerciseLabel(i), reached + ", " + tries
	}
	return w.ID, ""
}

// actOnSlip is for the name and the slip.
func (g *Game) actOnSlip(name string, n int, a ui.Action) bool {
	switch name {
	case "slip":
		g.openSlip()
		return true
	case "name it":
		g.askName(naming{exercise: -1, slip: g.page == slipPage})
		return true
	case "discard":
		g.over, g.dirty = removeQuestion, true
		return true
	case "discard sheet":
		g.remove()
		return true
	case "name":
		if g.page != namePage || !a.Typed {
			return false
		}
		g.kept.Name, g.dirty = a.Text, true
		g.keep()
		return true
	case "use name":
		g.useName()
		return true
	}
	return g.page == slipPage && g.slip != nil && g.handOver(name)
}

// handOver gives the slip away.
func (g *Game) handOver(name string) bool {
	link := "#" + g.slip.Fragment()
	switch name {
	case "copy":
		g.wish(Wish{Kind: Copy, Link: link, Done: g.t("The slip is copied: paste it into a message to your teacher.")})
	case "share":
		file := g.in.Address + link + "\n"
		g.wish(Wish{Kind: Share, Title: g.t("Slip of %s", plainly(g.slip.Name)), Link: link, Name: g.slipFile(), Type: "text/plain", File: file, Done: g.t("The slip is shared.")})
	case "file":
		g.wish(Wish{Kind: Download, Name: g.slipFile(), Type: "text/plain", Text: g.in.Address + link + "\n"})
	case "large", "small":
		g.large, g.dirty = name == "large", true
	default:
		return false
	}
	return true
}

// slipFile is the name of the slip as a file.
func (g *Game) slipFile() string {
	return fmt.Sprintf("slip-%s-%s.txt", fileName(g.slip.Name), fileName(g.slip.Title))
}

// fileName is a text as a part of the name of a file: letters, digits and hyphens.
func fileName(s string) string {
	const most = 40
	var name strings.Builder
	gap, n := false, 0
	for _, r := range s {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			gap = n > 0
			continue
		}
		if gap {
			name.WriteByte('-')
		}
		name.WriteRune(unicode.ToLower(r))
		if n++; n == most {
			break
		}
		gap = false
	}
	if n == 0 {
		return "x"
	}
	return name.String()
}
