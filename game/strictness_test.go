package game

import (
	"strings"
	"testing"

	"partialcredit/game/sheet"
)

// The same hand-in earns more on a sheet for beginners, for the same reasons;
// the contents say for whom a sheet is marked.
func TestStrictSheets(t *testing.T) {
	hand := func(s sheet.Strictness) *Game {
		b := *sixteen(t)[0]
		b.Strictness = s
		g := New([]*sheet.Sheet{&b}, nil, roughly)
		g.open(place{0, 1}) // the duty of a pulse
		g.set(0, 0.3)
		g.handIn()
		return g
	}
	expert, practised, beginner := hand(sheet.Expert), hand(sheet.Practised), hand(sheet.Beginner)
	if a, b, c := expert.work.marks, practised.work.marks, beginner.work.marks; !(a+10 < b && b+5 < c && c < 99) {
		t.Errorf("%.1f marks for experts, %.1f for the practised, %.1f for beginners", a, b, c)
	}
	if a, b := expert.work.result.Reasons, beginner.work.result.Reasons; len(a) == 0 || len(a) != len(b) || a[0].Text.String() != b[0].Text.String() {
		t.Errorf("reasons for experts %v, for beginners %v", a, b)
	}
	for g, want := range map[*Game]string{expert: "", practised: "Marked for the practised", beginner: "Marked for beginners"} {
		g.show(sheetPage)
		g.Update(Input{W: 1180, H: 820})
		if body := g.Scene().Body; !strings.Contains(body, want) || want == "" && strings.Contains(body, "Marked for") {
			t.Errorf("the contents say %q, want %q", body, want)
		}
	}
}
