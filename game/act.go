package game

import (
	"fmt"
	"strings"

	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// act does what a widget is for. Widgets that there are several of carry
// their number in their name: "control 0".
func (g *Game) act(a ui.Action) {
	name, n := a.Widget, 0
	if kind, number, ok := strings.Cut(a.Widget, " "); ok {
		if _, err := fmt.Sscan(number, &n); err == nil {
			name = kind
		}
	}
	if g.trial.on && name == "course" {
		name = "untry" // there is no way to the course but that
	}
	if g.actOnSound(name, n, a) || g.actOnQuestion(name, n) || g.turn(name, n) || g.adjust(name, a) ||
		g.actOnGiving(name, n, a) || g.actOnSlip(name, n, a) || g.actOnWriting(name, n, a) || g.actOnBook(name, n, a) || g.actOnTake(name, n, a) {
		return
	}
}

// actOnSound is for what is set and heard.
func (g *Game) actOnSound(name string, n int, a ui.Action) bool {
	switch name {
	case "target":
		g.play(toTarget)
	case "yours":
		g.play(toYours)
	case "turn":
		g.play(inTurn)
	case "control":
		g.touch(n, a.Value)
	case "less":
		g.nudge(n, -1)
	case "more":
		g.nudge(n, 1)
	case "sweep":
		g.startSweep(n)
	case "uncover":
		g.work.uncovered, g.dirty = true, true
		g.keep()
	case "hand in":
		g.handIn()
	case "again":
		g.repeat()
	case "slow":
		g.bench.slow, g.bench.last, g.dirty = !g.bench.slow, g.in.Now, true
		g.work.mine.still(g.work.yours)
	case "moment":
		g.bench.moment, g.bench.shown, g.dirty = a.Value, -1, true
	case "link":
		g.giveSound()
	case "fresh":
		g.lay(benchStart())
	case "part":
		g.bench.part, g.dirty = n, true
	default:
		return false
	}
	return true
}

// actOnQuestion is for what is answered.
func (g *Game) actOnQuestion(name string, n int) bool {
	switch name {
	case "listen":
		g.listen()
	case "answer":
		g.choose(n)
	case "proceed":
		g.proceed()
	default:
		return false
	}
	return true
}

// turn is for what turns pages.
func (g *Game) turn(name string, n int) bool {
	switch name {
	case "next":
		g.next()
	case "contents":
		g.leave()
		g.session = session{}
		g.show(sheetPage)
	case "course":
		g.leave()
		g.session = session{}
		g.show(contents)
	case "sheet":
		g.leave()
		g.at = place{n, 0}
		g.show(sheetPage)
	case "exercise":
		g.session = session{}
		g.open(place{g.at.sheet, n})
	case "go on":
		g.open(place{g.at.sheet, g.firstOpen()})
	case "earlier":
		g.part, g.dirty = g.part-1, true
	case "later":
		g.part, g.dirty = g.part+1, true
	case "bench":
		g.openBench()
	case "practice":
		g.show(practicePage)
	case "begin":
		g.beginPractice()
	case "end":
		g.endPractice()
	case "progress":
		g.show(progressPage)
	case "view":
		g.view = n
		g.part, g.dirty = 0, true
	case "help":
		g.openHelp()
	default:
		return false
	}
	return true
}

// adjust is for the settings of the device and for what lies over the page.
func (g *Game) adjust(name string, a ui.Action) bool {
	switch name {
	case "volume":
		g.kept.Volume = a.Value
	case "theme":
		g.kept.Theme = g.kept.Theme.next()
	case "language":
		g.kept.Language = g.otherLanguage().Tag
		g.chooseLanguage()
		g.say = g.t("The language is English now.")
	case "letters":
		g.kept.Keyless = !g.kept.Keyless
	case "comfortable":
		g.over, g.kept.Hinted = noOverlay, true
		g.playing.since = g.in.Now
	case "erase":
		g.over = eraseQuestion
	case "keep", "understood":
		g.over, g.offered = noOverlay, nil
	case "erase all":
		g.erase()
	case "export":
		g.export()
	case "import":
		g.wish(Wish{Kind: OpenFile, Purpose: "import", Accept: ".json,application/json", Most: MostImported})
	case "replace":
		g.takeOffered()
	case "renew":
		g.wish(Wish{Kind: Renew})
	default:
		return false
	}
	g.dirty = true
	g.keep()
	return true
}

// touch sets a control by hand, which ends its being swept.
func (g *Game) touch(control int, v float64) {
	if g.sweep.on && g.sweep.control == control {
		g.sweep = sweep{}
	}
	g.set(control, v)
}

// nudge moves a control by one fine step.
func (g *Game) nudge(control int, steps float64) {
	r := g.ruler(control)
	g.touch(control, r.Stepped(steps))
}

// repeat does the exercise again.
func (g *Game) repeat() {
	if g.page == marked {
		g.again()
		return
	}
	g.openRun()
}

// otherLanguage is the one that the switch leads to.
func (g *Game) otherLanguage() *words.Language {
	all := words.Languages()
	for i, l := range all {
		if l == g.lang {
			return all[(i+1)%len(all)]
		}
	}
	return words.English
}

func (t Theme) next() Theme {
	switch t {
	case AsSystem:
		return Paper
	case Paper:
		return Blackboard
	}
	return AsSystem
}

// shortcuts are the keys that press a button wherever the focus is: the first of
// the widgets that is on the screen.
var shortcuts = map[string][]string{
	"t": {"target"}, "y": {"yours"}, "i": {"turn"}, "u": {"uncover"}, "h": {"hand in", "mark take", "answer take"}, "a": {"again", "set on"},
	"n": {"next", "proceed", "go on", "begin"}, "c": {"contents", "course", "untry", "back to it"}, "l": {"listen"}, "s": {"sweep"}, "m": {"slow"},
	"1": {"answer 0"}, "2": {"answer 1"}, "3": {"answer 2"}, "4": {"answer 3"}, "5": {"answer 4"}, "6": {"answer 5"},
}

// shortcut lets a key press a button that is on the screen.
func (g *Game) shortcut(e ui.Event) bool {
	if g.writing(e.Widget) {
		return false // what is written are letters
	}
	if e.Key == "Escape" {
		g.escape()
		return true
	}
	if g.kept.Keyless {
		return false // WCAG 2.2, 2.1.4: keys of one character can be turned off
	}
	for _, id := range shortcuts[strings.ToLower(e.Key)] {
		for i := range g.scene.Widgets {
			w := &g.scene.Widgets[i]
			if first, _, _ := strings.Cut(w.ID, " "); w.ID != id && !(id == "sweep" && first == "sweep") {
				continue
			}
			a, ok := g.hands.Take(ui.Event{Kind: ui.Press, Widget: w.ID}, g.scene.Widgets)
			if ok {
				g.act(a)
			}
			return ok
		}
	}
	return false
}

// writing reports whether a widget is a text field.
func (g *Game) writing(id string) bool {
	for i := range g.scene.Widgets {
		if w := &g.scene.Widgets[i]; w.ID == id {
			return w.Role == ui.Written
		}
	}
	return false
}

// escape puts away what lies over the page, or stops the sound.
func (g *Game) escape() {
	switch g.over {
	case noOverlay:
		g.stop()
		if g.large {
			g.large, g.dirty = false, true
		}
		if g.sweep.on {
			g.sweep, g.dirty = sweep{}, true
		}
	case volumeHint:
		g.act(ui.Action{Widget: "comfortable"})
	default:
		g.act(ui.Action{Widget: "keep"})
	}
}
