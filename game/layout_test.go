package game

import (
	"fmt"
	"testing"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

var screens = []struct{ w, h float64 }{
	{304, 568}, {320, 568}, {568, 320}, {570, 570}, {590, 410}, {720, 450}, {360, 640}, {390, 844}, {844, 390}, {768, 1024}, {820, 1180},
	{1024, 768}, {1180, 820}, {1280, 720}, {1366, 768}, {1440, 900}, {1920, 1080}, {2560, 1440},
}

// TestEverythingFits lays every page out on every screen: nothing leaves the
// screen, nothing that is touched is smaller than a finger or lies over
// another, no text lies over a widget or is too small to read.
func TestEverythingFits(t *testing.T) {
	t.Parallel()
	s := sixteen(t)[0]
	four := s.Exercises[1]
	for _, i := range []int{7, 3} {
		four.Controls = append(four.Controls, s.Exercises[i].Controls...)
	}
	four.ID = "four"
	four.Title = "Which of the four that can be set is set wrong, and how far?"
	s.Exercises = append(s.Exercises, four)
	reasons := []mark.Reason{
		{Text: words.Say("Yours beats 2.1 times a second, the target 3.4: move the detune further away from zero."), Cost: 4},
		{Text: words.Say("Every fourth partial is missing from the target: a quarter duty; yours misses every third one."), Cost: 2},
	}
	for i := range s.Exercises {
		g := New([]*sheet.Sheet{s}, fmt.Appendf(nil, `{"version": 1, "exercise": %q, "page": "work"}`, s.Exercises[i].ID), roughly)
		for _, page := range []page{contents, sheetPage, working, marked} {
			for _, screen := range screens {
				g.page, g.over, g.dirty = page, noOverlay, true
				g.work.result.Reasons, g.work.marks = reasons, 62
				name := fmt.Sprintf("%vx%v %s %s", screen.w, screen.h, pageNames[page], s.Exercises[i].ID)
				g.Update(Input{W: screen.w, H: screen.h, Heard: Heard{Item: -1}})
				checkScene(t, name, g.Scene())
				if page == working && i == 0 {
					g.over, g.dirty = volumeHint, true
					g.Update(Input{W: screen.w, H: screen.h, Heard: Heard{Item: -1}})
					checkScene(t, name+" hint", g.Scene())
				}
			}
		}
	}
}

func checkScene(t *testing.T, name string, s *Scene) {
	t.Helper()
	screen := ui.Rect{W: s.W, H: s.H}
	for i, w := range s.Widgets {
		if !inside(w.Rect, screen) {
			t.Errorf("%s: %s leaves the screen: %v", name, w.Label, w.Rect)
		}
		if w.Rect.W < finger-0.01 || w.Rect.H < finger-2.01 {
			t.Errorf("%s: %s is smaller than a finger: %v", name, w.Label, w.Rect)
		}
		for _, other := range s.Widgets[:i] {
			if overlap(w.Rect, other.Rect) {
				t.Errorf("%s: %s lies over %s", name, w.Label, other.Label)
			}
		}
	}
	texts := s.Texts
	if s.Panel.W > 0 {
		texts = s.Over
	}
	for i, text := range texts {
		r := box(text)
		if text.Size < 14 {
			t.Errorf("%s: %q is set in %v px", name, text.String, text.Size)
		}
		if !inside(r, screen) {
			t.Errorf("%s: %q leaves the screen: %v", name, text.String, r)
		}
		for _, w := range s.Widgets {
			if overlap(r, w.Rect) {
				t.Errorf("%s: %q lies over %s", name, text.String, w.Label)
			}
		}
		for _, other := range texts[:i] {
			if overlap(r, box(other)) {
				t.Errorf("%s: %q lies over %q", name, text.String, other.String)
			}
		}
	}
	if s.Code != nil {
		if r := s.Code.Rect; !inside(r, screen) || min(r.W, r.H) < leastCode-0.01 {
			t.Errorf("%s: the code has %v", name, r)
		}
		for _, w := range s.Widgets {
			if s.Panel.W == 0 && overlap(s.Code.Rect, w.Rect) {
				t.Errorf("%s: %s lies over the code", name, w.Label)
			}
		}
		for _, text := range s.Texts {
			if overlap(s.Code.Rect, box(text)) {
				t.Errorf("%s: %q lies over the code", name, text.String)
			}
		}
	}
	if s.Trace != nil {
		for _, r := range []ui.Rect{s.Trace.Rect, s.Partials.Rect} {
			if r.W < 100 || r.H < 56 || !inside(r, screen) {
				t.Errorf("%s: a picture has only %v", name, r)
			}
			for _, w := range s.Widgets {
				if s.Panel.W == 0 && overlap(r, w.Rect) {
					t.Errorf("%s: %s lies over a picture", name, w.Label)
				}
			}
		}
	}
}

// box is where a text stands, from the height of capitals to the baseline.
func box(t Text) ui.Rect {
	w := roughly(t.String, t.Size, t.Bold)
	r := ui.Rect{X: t.X, Y: t.Y - 0.72*t.Size, W: w, H: 0.72 * t.Size}
	switch t.Align {
	case Right:
		r.X -= w
	case Middle:
		r.X -= w / 2
	}
	return r
}

func inside(r, screen ui.Rect) bool {
	return r.X >= -0.01 && r.Y >= -0.01 && r.Right() <= screen.Right()+0.01 && r.Bottom() <= screen.Bottom()+0.01
}

func overlap(a, b ui.Rect) bool {
	const touch = 0.01
	return a.X < b.Right()-touch && b.X < a.Right()-touch && a.Y < b.Bottom()-touch && b.Y < a.Bottom()-touch
}
