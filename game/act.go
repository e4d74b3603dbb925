package game

import (
	"fmt"
	"strings"

	"partialcredit/game/ui"
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
	switch name {
	case "target":
		g.play(toTarget)
	case "yours":
		g.play(toYours)
	case "turn":
		g.play(inTurn)
	case "control":
		g.set(n, a.Value)
	case "less":
		g.nudge(n, -1)
	case "more":
		g.nudge(n, 1)
	case "uncover":
		g.work.uncovered, g.dirty = true, true
		g.keep()
	case "hand in":
		g.handIn()
	case "again":
		g.again()
	case "next":
		g.next()
	case "contents":
		g.contents()
	case "exercise":
		g.open(n)
	case "earlier":
		g.pager, g.dirty = g.pager-1, true
	case "later":
		g.pager, g.dirty = g.pager+1, true
	case "volume":
		g.kept.Volume, g.dirty = a.Value, true
		g.keep()
	case "theme":
		g.kept.Theme, g.dirty = g.kept.Theme.next(), true
		g.keep()
	case "comfortable":
		g.over, g.kept.Hinted, g.dirty = noOverlay, true, true
		g.keep()
	case "erase":
		g.over, g.dirty = eraseQuestion, true
	case "keep", "understood":
		g.over, g.dirty = noOverlay, true
	case "erase all":
		g.erase()
	}
}

// nudge moves a control by one fine step.
func (g *Game) nudge(control int, steps float64) {
	r := g.ruler(control)
	g.set(control, r.Stepped(steps))
}

// erase forgets all marks and settings, but for the volume.
func (g *Game) erase() {
	volume := g.kept.Volume
	g.restore(nil)
	g.kept.Volume, g.kept.Hinted = volume, true
	g.over = noOverlay
	g.say = "All marks are erased from this device."
	g.contents()
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

// shortcuts are the keys that press a button wherever the focus is.
var shortcuts = map[string]string{
	"t": "target", "y": "yours", "i": "turn", "u": "uncover", "h": "hand in",
	"a": "again", "n": "next", "c": "contents",
}

// shortcut lets a key press a button that is on the screen.
func (g *Game) shortcut(e ui.Event) bool {
	if e.Key == "Escape" {
		switch {
		case g.over == eraseQuestion || g.over == note:
			g.over, g.dirty = noOverlay, true
		case g.over == volumeHint:
			g.act(ui.Action{Widget: "comfortable"})
		default:
			g.stop()
		}
		return true
	}
	id, ok := shortcuts[strings.ToLower(e.Key)]
	if !ok {
		return false
	}
	_, ok = g.hands.Take(ui.Event{Kind: ui.Press, Widget: id}, g.scene.Widgets)
	if ok {
		g.act(ui.Action{Widget: id})
	}
	return ok
}
