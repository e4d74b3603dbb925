package ui

import "testing"

func written(id string, lines, most int) Widget {
	return Widget{ID: id, Role: Written, Rect: Rect{0, 300, 400, TextHeight(lines)}, Text: Text{Lines: lines, Most: most}}
}

func TestTypedTextFitsTheField(t *testing.T) {
	w := []Widget{written("name", 1, 5), written("task", 3, 0)}
	var h Hands
	for _, c := range []struct{ id, typed, want string }{
		{"name", "Ada", "Ada"},
		{"name", "", ""},
		{"name", "ñandúes", "ñandú"}, // characters, not bytes
		{"name", "🎺🎻🥁🎷🎸🪗", "🎺🎻🥁🎷🎸"}, // nor halves of UTF-16
		{"name", "a\r\nb", "a b"},
		{"name", "a\xffb", "ab"},
		{"task", "one\r\ntwo\rthree", "one\ntwo\nthree"},
	} {
		a, ok := h.Take(Event{Kind: Typed, Widget: c.id, Text: c.typed}, w)
		if want := (Action{Widget: c.id, Typed: true, Text: c.want}); !ok || a != want {
			t.Errorf("%q typed: %+v, want %+v", c.typed, a, want)
		}
	}
}

func TestTypedIsForTextFieldsOnly(t *testing.T) {
	off := written("off", 1, 0)
	off.Disabled = true
	w := []Widget{ruled("r", 0, 0), {ID: "b", Rect: Rect{0, 100, 100, 50}}, off}
	var h Hands
	for _, id := range []string{"r", "b", "off", "gone"} {
		if a, ok := h.Take(Event{Kind: Typed, Widget: id, Text: "x"}, w); ok {
			t.Errorf("%s took it: %+v", id, a)
		}
	}
}

func TestTextFieldIsLeftToThePage(t *testing.T) {
	w := []Widget{written("name", 1, 0)}
	var h Hands
	for _, e := range []Event{
		{Kind: KeyDown, Widget: "name", Key: "Enter"}, {Kind: KeyDown, Widget: "name", Key: " "},
		{Kind: KeyDown, Widget: "name", Key: "ArrowLeft"}, {Kind: Press, Widget: "name"},
		{Kind: SetValue, Widget: "name", Value: 1},
		{Kind: PointerDown, X: 50, Y: 350}, {Kind: PointerMove, X: 90, Y: 350}, {Kind: PointerUp, X: 50, Y: 350},
	} {
		if a, ok := h.Take(e, w); ok {
			t.Errorf("%+v did %+v", e, a)
		}
	}
	if f := w[0].Field(); f.H < 44 || f.Bottom() != w[0].Rect.Bottom() {
		t.Errorf("the field %+v is no target for a finger on %+v", f, w[0].Rect)
	}
}
