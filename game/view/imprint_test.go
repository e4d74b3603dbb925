package view

import (
	"testing"

	"partialcredit/game"
	"partialcredit/game/ui"
)

// The game may write its next chart over the last one; and looking whether one
// has changed leaves nothing to the collector.
func TestStillPageKeepsItsOwnCharts(t *testing.T) {
	s := &game.Scene{Charts: []game.Chart{aChart(ui.Rect{W: 300, H: 200})}, Tables: []game.Table{aTable(ui.Rect{W: 300, H: 200})}}
	points := s.Charts[0].Series[0].Points
	var k still
	k.update(s, &paper, 1, axis{})
	if n := testing.AllocsPerRun(20, func() {
		if k.update(s, &paper, 1, axis{}) {
			t.Fatal("nothing changed, and the page was drawn anew")
		}
	}); n != 0 {
		t.Errorf("%v allocations to see that nothing changed", n)
	}
	for name, change := range map[string]func(){
		"a dot":   func() { points[1].Y++ },
		"a level": func() { s.Charts[0].Levels[0].Dashed = true },
		"a tick":  func() { s.Charts[0].X.Ticks[0].At++ },
		"a count": func() { s.Tables[0].Counts[0][0]++ },
		"a name":  func() { s.Tables[0].Rows[0] = "?" },
	} {
		if change(); !k.update(s, &paper, 1, axis{}) {
			t.Errorf("%s changed in place, and the page was not drawn anew", name)
		}
	}
}
