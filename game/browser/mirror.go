package browser

import (
	"math"
	"strconv"

	"partialcredit/game"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// A mirror knows what the page's DOM says of the scene: a heading, the texts, a
// line that is read out when it changes, and an element for every widget, in
// the order of the Tab key.
type mirror struct {
	title, body, say string
	widgets          []ui.Widget
	toggles          map[string]bool // the buttons that have been on: they can be pressed in
	edits            []edit
	language         *words.Language // of what the mirror adds; English where nil
	composing        string          // the text field in which an input method puts letters together; none where empty
}

// speak changes the language. What is added to a widget's own words is said
// anew with the next scene.
func (m *mirror) speak(l *words.Language) {
	m.language = l
	for i := range m.widgets {
		m.widgets[i].Ticked = false
	}
}

// An edit is one change of the DOM.
type edit struct {
	do    verb
	id    string // of a widget
	name  string // of an attribute; for insert, what kind of element
	value string // for insert and move: the widget it comes before, the end where empty
	rect  ui.Rect
}

type verb int

const (
	insert      verb = iota
	move             // to another place in the order
	remove           //
	setAttr          //
	removeAttr       //
	setValue         // of a range input or a text field
	setText          // of a button
	place            // where it lies on the screen
	setTitle         // the heading, to value
	setBody          // the texts, to value
	setAnnounce      // what is read out, to value
)

// update returns the edits that make the DOM say what the scene says: none
// where nothing differs. They hold until the next call.
func (m *mirror) update(s *game.Scene) []edit {
	m.edits = m.edits[:0]
	m.region(setTitle, &m.title, s.Title)
	m.region(setBody, &m.body, s.Body)
	m.removeGone(s.Widgets)
	n := 0
	for i := range s.Widgets {
		if find(m.widgets[:n], s.Widgets[i].ID) < 0 { // a second one of the same name is left out
			m.mirrorAt(n, &s.Widgets[i])
			n++
		}
	}
	m.region(setAnnounce, &m.say, s.Say)
	return m.edits
}

// answer notes that an assistive device has moved a range input to v, and gives
// the ruler's value there.
func (m *mirror) answer(id string, v float64) (value float64, ok bool) {
	i := find(m.widgets, id)
	if i < 0 || m.widgets[i].Role != ui.Ruled {
		return 0, false
	}
	r := &m.widgets[i].Ruler
	r.Value = rulerValue(r, v)
	return r.Value, true
}

// typed notes that a text field has s in it now.
func (m *mirror) typed(id, s string) bool {
	if !m.written(id) {
		return false
	}
	m.widgets[find(m.widgets, id)].Text.Value = s
	return true
}

// compose notes that an input method begins to put letters together in a text
// field, or has ended. Until it has, what the game makes of the text waits.
func (m *mirror) compose(id string) { m.composing = id }

// rulerUnder is the ruler under a point; none where empty.
func (m *mirror) rulerUnder(x, y float64) string {
	for i := range m.widgets {
		if w := &m.widgets[i]; w.Role == ui.Ruled && !w.Disabled && w.Rect.Contains(x, y) {
			return w.ID
		}
	}
	return ""
}

// ruled reports whether a widget is a ruler.
func (m *mirror) ruled(id string) bool {
	i := find(m.widgets, id)
	return i >= 0 && m.widgets[i].Role == ui.Ruled
}

// written reports whether a widget is a text field.
func (m *mirror) written(id string) bool {
	i := find(m.widgets, id)
	return i >= 0 && m.widgets[i].Role == ui.Written
}

// oneLine reports whether a widget is a text field of one line.
func (m *mirror) oneLine(id string) bool {
	return m.written(id) && m.widgets[find(m.widgets, id)].Text.Lines <= 1
}

// first is the widget that takes the focus when the one that had it is gone;
// none where empty.
func (m *mirror) first() string {
	for i := range m.widgets {
		if w := &m.widgets[i]; !w.Disabled && !w.NoTab {
			return w.ID
		}
	}
	return ""
}

func (m *mirror) region(do verb, old *string, now string) {
	if *old != now {
		*old = now
		m.edits = append(m.edits, edit{do: do, value: now})
	}
}

// removeGone removes what is not among the widgets, or is with another kind of
// element.
func (m *mirror) removeGone(widgets []ui.Widget) {
	kept := m.widgets[:0]
	for _, w := range m.widgets {
		if i := find(widgets, w.ID); i >= 0 && element(&widgets[i]) == element(&w) {
			kept = append(kept, w)
		} else {
			m.edits = append(m.edits, edit{do: remove, id: w.ID})
			if m.composing == w.ID {
				m.composing = ""
			}
		}
	}
	m.widgets = kept
}

// mirrorAt brings the element of w to place i and up to date.
func (m *mirror) mirrorAt(i int, w *ui.Widget) {
	if w.On && !w.Round && !m.toggles[w.ID] {
		if m.toggles == nil {
			m.toggles = map[string]bool{}
		}
		m.toggles[w.ID] = true
	}
	if m.composing == w.ID && m.written(w.ID) && w.Role == ui.Written {
		waits := *w
		waits.Text.Value = m.widgets[find(m.widgets, w.ID)].Text.Value
		w = &waits
	}
	if i < len(m.widgets) && m.widgets[i] == *w {
		return
	}
	before := ""
	if i < len(m.widgets) {
		before = m.widgets[i].ID
	}
	var old *ui.Widget
	switch at := find(m.widgets, w.ID); {
	case at < 0:
		m.edits = append(m.edits, edit{do: insert, id: w.ID, name: element(w), value: before})
		m.widgets = append(m.widgets, ui.Widget{})
		copy(m.widgets[i+1:], m.widgets[i:])
	default:
		known := m.widgets[at]
		old = &known
		if at != i {
			m.edits = append(m.edits, edit{do: move, id: w.ID, value: before})
			copy(m.widgets[i+1:at+1], m.widgets[i:at])
		}
	}
	m.widgets[i] = *w
	m.describe(old, w)
}

// describe edits what differs between what the DOM says of a widget and what
// it is.
func (m *mirror) describe(old, w *ui.Widget) {
	var was []property
	if old != nil {
		was = m.properties(old)
	}
	for i, p := range m.properties(w) {
		if was != nil && was[i] == p {
			continue
		}
		do := p.do
		if do == setAttr && p.absent {
			if was == nil || was[i].absent {
				continue
			}
			do = removeAttr
		}
		m.edits = append(m.edits, edit{do: do, id: w.ID, name: p.name, value: p.value})
	}
	if old == nil || bounds(old) != bounds(w) {
		m.edits = append(m.edits, edit{do: place, id: w.ID, rect: bounds(w)})
	}
}

// bounds is where the element of w lies: a text field within the frame that the
// canvas draws.
func bounds(w *ui.Widget) ui.Rect {
	if w.Role == ui.Written {
		return w.Field().Inset(2)
	}
	return w.Rect
}

// A property is one thing that an element says.
type property struct {
	do     verb
	name   string
	value  string
	absent bool // of an attribute: the element does not have it
}

// properties lists everything the element of w says: for every widget of one
// kind of element the same names in the same order.
func (m *mirror) properties(w *ui.Widget) []property {
	common := []property{
		flag("disabled", w.Disabled),
		{do: setAttr, name: "tabindex", value: "-1", absent: !w.NoTab},
		{do: setAttr, name: "aria-keyshortcuts", value: w.Keys, absent: w.Keys == ""},
	}
	if w.Role == ui.Ruled {
		r := rangeOf(&w.Ruler)
		return append(common,
			property{do: setAttr, name: "aria-label", value: w.Label},
			property{do: setAttr, name: "aria-valuetext", value: w.Ruler.Text},
			property{do: setAttr, name: "max", value: number(r.most)},
			property{do: setValue, value: number(r.value)}) // after max, which would bound it
	}
	if w.Role == ui.Written {
		return append(common,
			property{do: setAttr, name: "aria-label", value: w.Label},
			property{do: setAttr, name: "placeholder", value: w.Text.Hint, absent: w.Text.Hint == ""},
			property{do: setAttr, name: "maxlength", value: strconv.Itoa(w.Text.Most), absent: w.Text.Most <= 0},
			property{do: setValue, value: w.Text.Value})
	}
	return append(common,
		property{do: setText, value: m.spoken(w)},
		property{do: setAttr, name: "aria-pressed", value: strconv.FormatBool(w.On), absent: !m.toggles[w.ID]},
		property{do: setAttr, name: "aria-current", value: "true", absent: !(w.Round && w.On)})
}

func flag(name string, on bool) property {
	return property{do: setAttr, name: name, absent: !on}
}

// spoken is what a button says, the signs that are drawn on it included.
func (m *mirror) spoken(w *ui.Widget) string {
	s := w.Label
	if w.Note != "" {
		s += ", " + w.Note
	}
	if w.Ticked && w.Note == "" {
		l := m.language
		if l == nil {
			l = words.English
		}
		s += ", " + l.Say("marked")
	}
	return s
}

// element is what kind of element a widget has: the type of an input, but for
// buttons and for texts of several lines.
func element(w *ui.Widget) string {
	switch {
	case w.Role == ui.Ruled:
		return "range"
	case w.Role == ui.Written && w.Text.Lines > 1:
		return "textarea"
	case w.Role == ui.Written:
		return "text"
	}
	return "button"
}

func number(v float64) string {
	if math.IsNaN(v) {
		v = 0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// find is the index of the widget with that ID; -1 where there is none.
func find(widgets []ui.Widget, id string) int {
	for i := range widgets {
		if widgets[i].ID == id {
			return i
		}
	}
	return -1
}
