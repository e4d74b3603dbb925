package game

import (
	"fmt"
	"math"
	"strings"
)

const (
	mostDescribed  = 8
	leastDescribed = -50 // dB re the strongest
)

// describe puts the partials that are pictured into words, for those who do not see
// them.
func (g *Game) describe() string {
	if g.scene.Partials == nil || g.scene.Partials.Covered || g.playing.what != silence || g.sweep.on {
		return "" // what moves is heard
	}
	p := g.scene.Partials
	if !g.page.paired() {
		return g.t("Partials: %s.", g.listed(p.Yours))
	}
	target, yours := g.t("Target"), g.t("Yours")
	for _, w := range g.scene.Widgets {
		switch w.ID {
		case "target":
			target = w.Label
		case "yours":
			yours = w.Label
		}
	}
	return g.t("Partials of %s: %s. Partials of %s: %s.", target, g.listed(p.Target), yours, g.listed(p.Yours))
}

// listed lists the lowest of the strong lines: by number where they are partials, by
// frequency otherwise.
func (g *Game) listed(lines []Line) string {
	strongest := math.Inf(-1)
	for _, l := range lines {
		strongest = max(strongest, l.DB)
	}
	var all []string
	for _, l := range lines {
		if l.DB-strongest < leastDescribed || len(all) >= mostDescribed {
			continue
		}
		name := fmt.Sprintf("%.0f Hz", l.Hz)
		if l.Number > 0 {
			name = fmt.Sprint(l.Number)
		}
		all = append(all, g.t("%s at %s", name, fmt.Sprintf("%.0f dB", l.DB)))
	}
	if len(all) == 0 {
		return g.t("none")
	}
	return strings.Join(all, ", ")
}
