package game

import (
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// handout is how something is handed out, beside [Game.giving].
type handout struct {
	sound  *synth.Sound // instead of a sheet
	from   page         // where it was asked for
	copied bool
}

// giveSound hands out what lies on the bench.
func (g *Game) giveSound() {
	s := g.work.yours
	g.giving, g.handout = nil, handout{sound: &s, from: benchPage}
	g.show(givePage)
}

// handedOut is what the link leads to: the whole sheet, one exercise of it, or nil for a
// sound.
func (g *Game) handedOut() *sheet.Sheet {
	if g.giving == nil {
		return nil
	}
	g.part = max(0, min(len(g.giving.Exercises), g.part))
	if g.part > 0 {
		return g.giving.Only(g.part - 1)
	}
	return g.giving
}

// giveLink is the fragment of the link, with its # sign; empty where there is nothing.
func (g *Game) giveLink() string {
	switch s := g.handedOut(); {
	case s != nil:
		return "#" + s.Fragment()
	case g.handout.sound != nil:
		return "#" + sheet.SoundFragment(*g.handout.sound)
	}
	return ""
}

// layGive lays out how a sheet or a sound is handed out.
func (g *Game) layGive(p *paper) {
	link := g.giveLink()
	if link == "" {
		g.bare(p, g.t("Hand out"))
		return
	}
	address := g.in.Address + link
	h := handing{title: g.t("Hand out"), code: address}
	copied := ui.Widget{ID: "copy", Label: g.t("Copy the link"), Face: g.t("Copy")}
	if g.handout.copied {
		copied.Face = g.t("Copied")
	}
	sharing := []ui.Widget{copied, {ID: "share", Label: g.t("Share the link"), Face: g.t("Share")}}
	back := []ui.Widget{{ID: "taken", Label: g.t("Back"), Keys: "C"}, {ID: "large", Label: g.t("Show the code large"), Face: g.t("Large")}}
	if c, _ := g.codeOf(address); c.Size == 0 {
		back = back[:1]
	}
	if g.giving == nil {
		h.text = g.t("This sound from the bench")
		h.rows = [][]ui.Widget{sharing, back}
	} else {
		h.text = g.giving.Title
		h.rows = [][]ui.Widget{
			append(sharing, ui.Widget{ID: "file", Label: g.t("Save as a file"), Face: g.t("File")}),
			g.paperButtons(),
			back,
		}
	}
	if g.large {
		h.text = g.givenTitle()
	}
	h.body = func(p *paper, r ui.Rect) {
		if g.giving != nil {
			r = g.layChoice(p, r)
		}
		said := g.t("The link has %d characters and holds all of it: no server keeps anything.", len(address))
		if r.H >= lines(1, p.body) {
			p.line(r, p.cut(address, p.body, false, r.W), p.body, false, Target, Left)
			_, r = r.CutTop(lines(1, p.body), 0)
		}
		p.paragraph(r, said, p.body, false, Faint)
		g.scene.Body += " " + said
	}
	g.layHanding(p, h)
}

// layChoice lays out the choice between the whole sheet and one exercise.
func (g *Game) layChoice(p *paper, r ui.Rect) (rest ui.Rect) {
	n := len(g.giving.Exercises)
	said := g.t("The whole sheet: %d exercises.", n)
	if n == 1 {
		said = g.t("The whole sheet: one exercise.")
	}
	if g.part > 0 {
		said = g.t("Only exercise %d: %s", g.part, plainly(g.giving.Exercises[g.part-1].Title))
	}
	p.line(r, p.cut(said, p.body, true, r.W), p.body, true, Black, Left)
	_, r = r.CutTop(lines(1, p.body), p.gap/2)
	turn, rest := r.CutTop(finger, p.gap)
	turn.W = min(turn.W, 30*p.body)
	g.layTurn(p, turn, n+1)
	g.scene.Body += " " + said
	return rest
}

// actOnGiving is for handing out.
func (g *Game) actOnGiving(name string, n int, a ui.Action) bool {
	if g.page != givePage {
		return false
	}
	link := g.giveLink()
	switch name {
	case "copy":
		g.wish(Wish{Kind: Copy, Link: link, Done: g.t("The link is copied: paste it where you want it.")})
	case "share":
		g.wish(Wish{Kind: Share, Title: g.givenTitle(), Link: link, Done: g.t("The link is shared.")})
	case "file":
		if s := g.handedOut(); s != nil {
			g.wish(Wish{Kind: Download, Name: fileName(s.Title) + ".json", Type: "application/json", Text: string(s.Readable())})
		}
	case "worksheet":
		g.printSheet(false)
	case "key":
		g.printSheet(true)
	case "large", "small":
		g.large, g.dirty = name == "large", true
	case "taken":
		g.giveBack()
	case "earlier", "later":
		g.handout.copied, g.printing = false, nil
		return false
	default:
		return false
	}
	return true
}

func (g *Game) givenTitle() string {
	if s := g.handedOut(); s != nil {
		return s.Title
	}
	return g.t("This sound from the bench")
}

// giveBack goes back to where the handing out began.
func (g *Game) giveBack() {
	if g.giving == nil {
		g.openBench()
		return
	}
	g.show(g.handout.from)
}
