package browser

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"partialcredit/game"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// A page is a DOM that takes the edits of a mirror.
type page struct {
	t                     *testing.T
	title, body, announce string
	elements              []*node
}

type node struct {
	id, name, text, value string
	attrs                 map[string]string
	rect                  ui.Rect
}

func (p *page) at(id string) int {
	return slices.IndexFunc(p.elements, func(e *node) bool { return e.id == id })
}

func (p *page) apply(edits []edit) {
	for _, x := range edits {
		i := p.at(x.id)
		before := len(p.elements)
		if x.value != "" && (x.do == insert || x.do == move) {
			if before = p.at(x.value); before < 0 {
				p.t.Fatalf("%+v: there is nothing of that name to come before", x)
			}
		}
		if i < 0 && x.do != insert && x.id != "" {
			p.t.Fatalf("%+v: there is no such element", x)
		}
		switch x.do {
		case insert:
			if i >= 0 {
				p.t.Fatalf("%+v: it is there already", x)
			}
			p.elements = slices.Insert(p.elements, before, &node{id: x.id, name: x.name, attrs: map[string]string{}})
		case move:
			e := p.elements[i]
			p.elements = slices.Delete(p.elements, i, i+1)
			if i < before {
				before--
			}
			p.elements = slices.Insert(p.elements, before, e)
		case remove:
			p.elements = slices.Delete(p.elements, i, i+1)
		case setAttr:
			p.elements[i].attrs[x.name] = x.value
		case removeAttr:
			if _, ok := p.elements[i].attrs[x.name]; !ok {
				p.t.Fatalf("%+v: there is no such attribute", x)
			}
			delete(p.elements[i].attrs, x.name)
		case setValue:
			p.elements[i].value = x.value
		case setText:
			p.elements[i].text = x.value
		case place:
			p.elements[i].rect = x.rect
		case setTitle:
			p.title = x.value
		case setBody:
			p.body = x.value
		case setAnnounce:
			p.announce = x.value
		}
	}
}

// String describes the whole page.
func (p *page) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n%s\n! %s\n", p.title, p.body, p.announce)
	for _, e := range p.elements {
		fmt.Fprintf(&b, "%s %s %q value %s %v %v\n", e.id, e.name, e.text, e.value, e.attrs, e.rect)
	}
	return b.String()
}

func button(id string) ui.Widget {
	return ui.Widget{ID: id, Label: "Button " + id, Rect: ui.Rect{X: 1, Y: 2, W: 44, H: 44}}
}

func ruled(id string, value float64) ui.Widget {
	return ui.Widget{ID: id, Role: ui.Ruled, Label: "Ruler " + id, Rect: ui.Rect{W: 200, H: 44},
		Ruler: ui.Ruler{Max: 10, Step: 1, Value: value, Text: fmt.Sprint(value, " cm")}}
}

func TestMirrorSaysWhatTheSceneShows(t *testing.T) {
	off := button("gone")
	off.Disabled, off.NoTab, off.Keys = true, true, "G"
	list := button("entry")
	list.Note = "87 marks"
	number := button("7")
	number.Round, number.On, number.Ticked = true, true, true
	p := &page{t: t}
	var m mirror
	p.apply(m.update(&game.Scene{Title: "T", Body: "B", Say: "S", Widgets: []ui.Widget{ruled("r", 3), off, list, number}}))
	want := `# T
B
! S
r range "" value 3 map[aria-label:Ruler r aria-valuetext:3 cm max:10] {0 0 200 44}
gone button "Button gone" value  map[aria-keyshortcuts:G disabled: tabindex:-1] {1 2 44 44}
entry button "Button entry, 87 marks" value  map[] {1 2 44 44}
7 button "Button 7, marked" value  map[aria-current:true] {1 2 44 44}
`
	if got := p.String(); got != want {
		t.Errorf("the page says\n%s\nwant\n%s", got, want)
	}
}

func TestMirrorFollowsEveryChange(t *testing.T) {
	on := button("a")
	on.On = true
	wide := button("b")
	wide.Rect.W = 99
	other := ruled("b", 1)
	scenes := [][]ui.Widget{
		nil,
		{button("a"), button("b"), ruled("r", 1)},
		{on, button("b"), ruled("r", 2)},
		{button("a"), wide, ruled("r", 2)},
		{ruled("r", 2), button("a"), button("b")},
		{button("b"), ruled("r", 2), button("c"), button("a")},
		{button("keep"), button("erase")},
		{button("b"), ruled("r", 2), button("c"), button("a")},
		{ruled("r", 2), other, button("a"), button("a")}, // another role; twice the same name
		{},
	}
	// From any scene to any other, the page is as if it had been mirrored anew, but for aria-pressed,
	// which a button keeps that was on once.
	for i, from := range scenes {
		for j, to := range scenes {
			p := &page{t: t}
			var m mirror
			p.apply(m.update(&game.Scene{Title: fmt.Sprint(i), Widgets: from}))
			s := &game.Scene{Title: fmt.Sprint(j), Widgets: to}
			p.apply(m.update(s))
			fresh := &page{t: t}
			anew := mirror{toggles: m.toggles}
			fresh.apply(anew.update(s))
			if p.String() != fresh.String() {
				t.Errorf("from scene %d to %d the page says\n%s\nwant\n%s", i, j, p, fresh)
			}
			if again := m.update(s); len(again) != 0 {
				t.Errorf("from scene %d to %d, mirrored again: %+v", i, j, again)
			}
		}
	}
}

func TestMirrorTouchesOnlyWhatDiffers(t *testing.T) {
	var m mirror
	m.update(&game.Scene{Widgets: []ui.Widget{button("a"), ruled("r", 3), button("b")}})
	got := m.update(&game.Scene{Widgets: []ui.Widget{button("a"), ruled("r", 4), button("b")}})
	want := []edit{{do: setAttr, id: "r", name: "aria-valuetext", value: "4 cm"}, {do: setValue, id: "r", value: "4"}}
	if !slices.Equal(got, want) {
		t.Errorf("edits %+v, want %+v", got, want)
	}
	got = m.update(&game.Scene{Widgets: []ui.Widget{ruled("r", 4), button("b")}})
	if want := []edit{{do: remove, id: "a"}}; !slices.Equal(got, want) {
		t.Errorf("edits %+v, want %+v", got, want)
	}
}

func TestButtonsThatWereOnSayWhenTheyAreOff(t *testing.T) {
	p := &page{t: t}
	var m mirror
	b := button("a")
	pressed := func(want string) {
		t.Helper()
		p.apply(m.update(&game.Scene{Widgets: []ui.Widget{b}}))
		if got := fmt.Sprint(p.elements[0].attrs); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	pressed("map[]")
	b.On = true
	pressed("map[aria-pressed:true]")
	b.On = false
	pressed("map[aria-pressed:false]")
}

func TestRangeInputFallsBackWhereTheGameRefuses(t *testing.T) {
	var m mirror
	s := &game.Scene{Widgets: []ui.Widget{ruled("r", 3), button("a")}}
	m.update(s)
	if v, ok := m.answer("r", 5); !ok || v != 5 {
		t.Errorf("the ruler goes to %v, %v", v, ok)
	}
	if got, want := m.update(s), (edit{do: setValue, id: "r", value: "3"}); len(got) != 1 || got[0] != want {
		t.Errorf("edits %+v, want %+v", got, want)
	}
	if _, ok := m.answer("a", 5); ok {
		t.Error("a button took a value")
	}
}

func TestWhereTheFocusGoes(t *testing.T) {
	var m mirror
	off, hidden := button("off"), button("hidden")
	off.Disabled, hidden.NoTab = true, true
	m.update(&game.Scene{Widgets: []ui.Widget{off, hidden, button("a"), ruled("r", 1)}})
	if got := m.first(); got != "a" {
		t.Errorf("first is %q", got)
	}
	if got := m.rulerUnder(100, 20); got != "r" {
		t.Errorf("under the finger is %q", got)
	}
	if got := m.rulerUnder(100, 50); got != "" {
		t.Errorf("under the finger is %q", got)
	}
}

// What the mirror adds is in the person's language, also where nothing else of
// a widget changes with it.
func TestMirrorSpeaksTheLanguage(t *testing.T) {
	ticked := button("7")
	ticked.Ticked = true
	p := &page{t: t}
	var m mirror
	show := func(want string) {
		t.Helper()
		p.apply(m.update(&game.Scene{Widgets: []ui.Widget{ticked}}))
		if got := p.elements[0].text; got != want {
			t.Errorf("the button says %q, want %q", got, want)
		}
	}
	show("Button 7, marked")
	m.speak(words.German())
	show("Button 7, bewertet")
	m.speak(words.English)
	show("Button 7, marked")
}
