//go:build !js

package main_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/view"
)

// slip is the page with the field for a name, of a sheet that was given.
func slip() Kept {
	s := sheet.Course()[0].Only(0)
	k := at(s.Fingerprint() + "\n\n" + s.Exercises[0].ID)
	k.Version, k.Page = 2, "name"
	k.More = map[string]any{"given": []any{map[string]any{"link": s.Fragment()}}}
	return k
}

// inField is what a text field says of itself.
type inField struct {
	Value          string
	Start, End     int
	Focused        bool
	Size           string
	Height         float64
	Direction, Fix string
}

func (p *Page) field(id string) (f inField) {
	p.t.Helper()
	p.Eval(`(() => {
		const e = document.querySelector('`+widget(id)+`'), s = getComputedStyle(e), r = e.getBoundingClientRect();
		return { Value: e.value, Start: e.selectionStart, End: e.selectionEnd, Focused: document.activeElement === e,
			Size: s.fontSize, Height: r.height, Direction: e.dir, Fix: e.autocomplete };
	})()`, &f)
	return f
}

const keptName = `JSON.parse(localStorage.getItem("partialcredit.progress")).name`

// TestTextIsWritten writes into a text field with a keyboard and with an input method, as the
// protocol's Input domain has them: letters press nothing, what was kept comes back, and the cursor
// stays where it was.
func TestTextIsWritten(t *testing.T) {
	l := resume(t, slip(), Visit{})
	l.shows("name")
	audit(l.Page, "a page with a text field")
	f := l.field("name")
	if f.Size != "16px" || f.Direction != "auto" || f.Fix != "off" || f.Height < 40 {
		t.Errorf("the field is %+v", f)
	}
	l.Click(l.Middle(widget("name")))
	for _, key := range []string{"t", "h", "c", " ", "1"} {
		l.Press(key)
	}
	wrote := func(want string) {
		t.Helper()
		l.Wait(fmt.Sprintf("%s === %q", keptName, want), 5*time.Second)
		l.settle()
		if f := l.field("name"); f.Value != want || !f.Focused || l.heading() != "Your name" {
			t.Errorf("on the page %q the field is %+v, want %q in it", l.heading(), f, want)
		}
	}
	wrote("thc 1")

	l.do("composing", input.ImeSetComposition("に", 1, 1), input.ImeSetComposition("にほん", 3, 3))
	wrote("thc 1にほん")
	l.do("choosing", input.ImeSetComposition("日本", 2, 2), input.InsertText("日本"))
	wrote("thc 1日本")
	l.Press("Home")
	l.Press("x")
	wrote("xthc 1日本")
	if f := l.field("name"); f.Start != 1 || f.End != 1 {
		t.Errorf("the cursor has gone to %d", f.Start)
	}
	l.do("a long text", input.InsertText(strings.Repeat("é", 60))) // of 40 in all
	wrote("x" + strings.Repeat("é", 32) + "thc 1日本")

	l.Press("Escape")
	if f := l.field("name"); f.Focused {
		t.Error("Escape does not leave the field")
	}
	l.drop("notes.txt", "nothing that is known")
	l.shows("understood")
	l.Wait(`!document.querySelector('`+widget("name")+`')`, 5*time.Second)
	l.press("understood")
	l.shows("name")
	l.Reload()
	l.Started()
	l.shows("name")
	if f := l.field("name"); !strings.HasSuffix(f.Value, "thc 1日本") {
		t.Errorf("after a reload the field is %+v", f)
	}
	l.Press("c")
	l.shows("slip")
}

// drop drops a file on the page.
func (p *Page) drop(name, text string) {
	p.t.Helper()
	p.Eval(dropping(name, text), nil)
}

func dropping(name, text string) string {
	return fmt.Sprintf(`(() => {
		const dataTransfer = new DataTransfer();
		dataTransfer.items.add(new File([%q], %q));
		for (const kind of ["dragover", "drop"])
			if (document.body.dispatchEvent(new DragEvent(kind, { dataTransfer, bubbles: true, cancelable: true })))
				throw new Error("the browser would leave the page for the file: " + kind);
	})()`, text, name)
}

// TestFieldsWearTheBook looks at a text field on a phone in all themes, where the system's and the
// learner's choice differ too, and at a name in other scripts that was written there.
func TestFieldsWearTheBook(t *testing.T) {
	k := slip()
	k.Theme = "blackboard"
	l := resume(t, k, Visit{Screen: Phone})
	l.shows("name")
	check := func(when string, dark, strong bool) {
		t.Helper()
		ground, ink, _ := view.Field(dark, strong)
		l.Wait(fmt.Sprintf(`(() => {
			const s = getComputedStyle(document.querySelector('%s')), p = document.createElement("p");
			const is = (a, b) => { p.style.color = a; document.body.append(p); const same = getComputedStyle(p).color === b; p.remove(); return same; };
			return is(%q, s.backgroundColor) && is(%q, s.color);
		})()`, widget("name"), ground, ink), 5*time.Second)
		audit(l.Page, when)
	}
	l.Screenshot("field, blackboard, phone.png")
	check("the blackboard on a light system", true, false)
	l.prefer("prefers-contrast", "more")
	check("the blackboard with more contrast", true, true)
	l.prefer()
	l.Tap(l.Middle(widget("name")))
	l.settle()
	l.Screenshot("field with the focus, blackboard, phone.png")
	if f := l.field("name"); !f.Focused {
		t.Error("a finger does not reach the field")
	}
	l.Tap(Point{200, 600}) // bare paper
	if f := l.field("name"); f.Focused {
		t.Error("a finger beside the field does not leave it")
	}
	l.writes("name", foreign)
	l.uses("use name")
	l.uses("slip")
	l.Screenshot("a name in other scripts, blackboard, phone.png")
	l.showsName(ui.Rect{X: 16, Y: 44, W: 200, H: 24}, 15*Phone.Ratio) // the line below the title begins with it
	var viewport string
	l.Eval(`document.querySelector('meta[name=viewport]').content`, &viewport)
	if !strings.Contains(viewport, "interactive-widget=resizes-visual") {
		t.Errorf("a keyboard on the screen would have the page laid out anew: %q", viewport)
	}
}

// printsWhere has every frame keep what it would print; what the system shares is kept too, and the page has
// no clipboard of the newer kind.
const printsWhere = `
window.print = function () {
	const p = document.querySelector("p");
	top.printed = { text: document.body.textContent, colour: p ? getComputedStyle(p).color : "", frame: window !== top };
};
Object.defineProperty(navigator, "clipboard", { get() {} });
navigator.canShare = what => what.files.length === 1 && what.files[0].type === "text/plain";
navigator.share = async what => {
	if (what.title === "left") throw new DOMException("", "AbortError");
	if (what.title === "refused") throw new DOMException("", "NotAllowedError");
	window.shared = Object.assign({}, what, { files: await Promise.all((what.files || []).map(async f => f.name + ":" + await f.text())) });
};`

// TestEdgesOfThePage prints, shares, drops and pastes within the page's content security policy.
func TestEdgesOfThePage(t *testing.T) {
	l := resume(t, slip(), Visit{Before: []string{printsWhere}})
	l.shows("name")
	var printed struct {
		Text, Colour string
		Frame        bool
	}
	l.Eval(`new Promise(said => partialCredit.files.print("<!doctype html><title>Sheet</title><p>On paper.</p>", "p { color: rgb(1, 2, 3) }", said))`, nil)
	l.Eval("window.printed", &printed)
	if printed.Text != "On paper." || printed.Colour != "rgb(1, 2, 3)" || !printed.Frame {
		t.Errorf("printed: %+v", printed)
	}
	audit(l.Page, "a page that has printed")

	for _, tt := range []struct{ title, kind, want string }{
		{"a", "text/plain", `shared ["s.txt:slip"]`}, {"a", "audio/wav", `shared []`}, {"left", "text/plain", `left []`}, {"refused", "text/plain", "failed []"},
	} {
		var got string
		l.Eval(fmt.Sprintf(`new Promise(said => { window.shared = { files: [] }; partialCredit.files.share({ title: %q }, "s.txt", %q, new TextEncoder().encode("slip"), said) })
			.then(outcome => outcome + " " + JSON.stringify(window.shared.files))`, tt.title, tt.kind), &got)
		if got != tt.want {
			t.Errorf("%+v: %s", tt, got)
		}
	}

	const paste = `(() => {
		const clipboardData = new DataTransfer();
		clipboardData.setData("text/plain", %q);
		return document.querySelector(%q).dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
	})()`
	var left bool
	if l.Eval(fmt.Sprintf(paste, "Ada", widget("name")), &left); !left {
		t.Error("a text field does not get what is pasted into it")
	}
	// Outside of one, what was copied the older way, as where a page is not secure, and comes by the keys.
	var copied bool
	l.do("copying", chromedp.Evaluate(`new Promise(said => partialCredit.files.copy("no link", said))`, &copied,
		func(e *runtime.EvaluateParams) *runtime.EvaluateParams {
			return e.WithAwaitPromise(true).WithUserGesture(true)
		}))
	if !copied {
		t.Error("nothing is copied")
	}
	l.do("pasting", keyEvent(input.KeyRawDown, l.key("v"), []input.Modifier{input.ModifierCtrl}).WithCommands([]string{"paste"}))
	l.KeyUp("v", input.ModifierCtrl)
	l.WaitText("#mirror p", "no use for the text", 5*time.Second)
	l.press("understood")
	k := slip()
	k.Page, k.Name = "contents", "Grace"
	l.drop("progress.json", k.json())
	l.shows("export") // there were no marks to lose
	l.Wait(keptName+` === "Grace"`, 5*time.Second)
}
