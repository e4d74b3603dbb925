//go:build !js

package main_test

import (
	"context"
	"fmt"
	"math"
	"regexp"
	"strings"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// What the teacher of TestAClassWithoutAServer writes.
const (
	classTitle = "Pulses & shapes, Tuesday"
	classDuty  = 0.2
	classCue   = "It has no overtones at all."
)

var classTexts = []string{"How wide is this pulse?", "Set the duty until yours is as thin as the target.", "The narrower, the thinner: “nasal”, some say."}

// uses presses a button with the mouse or a finger, once it is there and stands still.
func (l *learner) uses(id string) {
	l.t.Helper()
	l.awaits(id)
	l.settle()
	if at := l.Middle(widget(id)); l.keyboard {
		l.Click(at)
	} else {
		l.Tap(at)
	}
}

// writes puts a text into a field in the place of what is in it, as an input method does.
func (l *learner) writes(id, text string) {
	l.t.Helper()
	l.uses(id)
	field := `document.querySelector('` + widget(id) + `')`
	l.Wait(`document.activeElement === `+field, limit)
	l.Eval(field+`.select()`, nil)
	l.do("writing", input.InsertText(text))
	l.Wait(fmt.Sprintf(`%s.value === %q`, field, text), limit)
}

// slides moves a ruler as an assistive device does, to a place between 0 and 1.
func (l *learner) slides(id string, place float64) {
	l.t.Helper()
	l.awaits(id)
	l.Eval(fmt.Sprintf(`(e => { e.value = Math.round(%v * e.max); e.dispatchEvent(new Event("input", { bubbles: true })); })(document.querySelector('%s'))`, place, widget(id)), nil)
}

// along is where a value lies on the ruler of a field, 0 to 1.
func along(f *synth.Field, low, high, v float64) float64 {
	if f.Log && low > 0 {
		return math.Log(v/low) / math.Log(high/low)
	}
	return (v - low) / (high - low)
}

// bench sets a field of the sound on the bench, of a part of it.
func (l *learner) bench(part, control int, name string, v float64) {
	l.t.Helper()
	f, ok := synth.FieldByName(name)
	if !ok {
		l.t.Fatalf("a sound has no %s", name)
	}
	l.uses(fmt.Sprintf("part %d", part))
	id := fmt.Sprintf("control %d", control)
	l.slides(id, along(f, f.Min, f.Max, v))
	if got, want := l.attribute(id, "aria-valuetext"), f.Format(v); got != want {
		l.t.Errorf("on the bench %s is %q, want %q", name, got, want)
	}
}

// dump logs what the page shows, for whoever looks into a failure.
func (l *learner) dump() {
	var all string
	if err := l.eval(`[...document.querySelectorAll("#mirror h1, #mirror p, #mirror [role=status], [data-widget]")].map(e => (e.dataset.widget || e.tagName) + (e.disabled ? " (off)" : "") + ": " + (e.value || e.textContent)).join("\n")`, &all); err == nil {
		l.t.Logf("the page shows\n%s", all)
	}
	l.Screenshot(fmt.Sprintf("class, %v.png", l.keyboard))
}

// body is what the page says beside its widgets.
func (l *learner) body() (text string) {
	l.t.Helper()
	l.settle()
	l.Eval(`document.querySelector("#mirror p").textContent`, &text)
	return text
}

// writesASheet makes a match of a short pulse, and a naming of it and a sine.
func (l *learner) writesASheet() {
	l.uses("bench")
	l.bench(0, 0, "a.shape", float64(synth.Pulse))
	l.bench(0, 3, "a.duty", classDuty)
	l.bench(2, 12, "combine.how", float64(synth.OnlyA))
	l.bench(6, 33, "seconds", 0.5)
	l.uses("make")
	l.uses("make it")
	l.uses("tab 1")
	for i, id := range []string{"title", "task text", "teach"} {
		l.writes(id, classTexts[i])
	}
	l.takesAdvice()
	l.uses("sheet page")
	l.uses("add")
	l.uses("tab 0")
	l.uses("kind 1")
	l.uses("tab 3")
	l.slides("questions", 0)
	l.uses("sheet page")
	l.uses("teacher")
	l.uses("course")
	l.uses("bench")
	l.bench(0, 0, "a.shape", float64(synth.Sine))
	l.uses("course")
	l.uses("teacher")
	l.uses("write")
	l.uses("edit")
	l.uses("tab 2")
	l.uses("more answers")
	l.writes("cue", classCue)
	l.uses("sheet page")
	l.uses("side 1")
	l.writes("sheet title", classTitle)
	l.uses("vary")
	l.WaitText("#mirror p", "so that neighbours cannot copy", limit)
}

// takesAdvice has the target met at the start, is told so, and follows the advice.
func (l *learner) takesAdvice() {
	f, _ := synth.FieldByName("a.duty")
	l.uses("tab 3")
	l.slides("start", along(f, f.Min, f.Max, classDuty))
	l.uses("tab 4")
	l.awaits("follow 0")
	met := l.body()
	l.uses("follow 0")
	l.Wait(`!document.querySelector('`+widget("follow 0")+`') && !document.querySelector("#mirror p").textContent.includes("worked through")`, limit)
	after := l.body()
	if !strings.Contains(met, "start") || strings.Contains(after, "Mistake") {
		l.t.Errorf("the advice is %q, and once it is followed %q", met, after)
	}
	l.t.Logf("advised %q, and then %q", met, after)
}

// mayCopy allows the page the clipboard.
func (l *learner) mayCopy() {
	l.t.Helper()
	l.inBrowser("allowing the clipboard", func(ctx context.Context, profile cdp.BrowserContextID) error {
		return browser.GrantPermissions([]browser.PermissionType{browser.PermissionTypeClipboardReadWrite, browser.PermissionTypeClipboardSanitizedWrite}).WithBrowserContextID(profile).Do(ctx)
	})
	l.do("being in front", emulation.SetFocusEmulationEnabled(true))
}

// copies presses the button for it and takes what is on the clipboard then.
func (l *learner) copies(said string) (link string) {
	l.t.Helper()
	l.Eval(`navigator.clipboard.writeText("nothing")`, nil)
	l.uses("copy")
	l.Wait(fmt.Sprintf(`document.querySelector("#mirror [role=status]").textContent.toLowerCase().includes(%q)`, said), limit)
	l.Eval("navigator.clipboard.readText()", &link)
	return link
}

// codeShown reads the QR code in a screenshot.
func (l *learner) codeShown() string {
	l.t.Helper()
	l.awaits("large")
	l.settle()
	var png []byte
	l.do("a screenshot", chromedp.CaptureScreenshot(&png))
	return decodeQR(l.t, png)
}

// link copies what is handed out.
func (l *learner) link() (link, code string) {
	l.t.Helper()
	return l.copies("the link is copied"), l.codeShown()
}

// handsOut gives the sheet, and takes its link and its code.
func (l *learner) handsOut() (link, code string) {
	l.uses("give")
	return l.link()
}

// comes writes who works, where the page asks for it.
func (l *learner) comes(name string) {
	l.t.Helper()
	if !l.isThere("name") {
		l.uses("exercise 0")
	}
	l.writes("name", name)
	l.uses("use name")
	l.Wait(`!document.querySelector('`+widget("name")+`')`, limit)
}

func (l *learner) isThere(id string) (there bool) {
	l.t.Helper()
	l.settle()
	l.Eval(`!!document.querySelector('`+widget(id)+`')`, &there)
	return there
}

// works does both exercises of a sheet under a name: the ruler is set so far beside the target, the questions
// whose numbers are named are answered wrong. It ends on the slip, and gives the marks that stand there.
func (l *learner) works(s *sheet.Sheet, name string, beside float64, wrong map[int]bool) []float64 {
	l.t.Helper()
	own := s.For(name)
	match, naming := &own.Exercises[0], &own.Exercises[1]
	for _, id := range []string{"contents", "exercise 0"} {
		if !l.isThere("control 0") {
			l.uses(id)
		}
	}
	c := &match.Controls[0]
	at := along(c.Field(), c.Min, c.Max, c.Get(&match.Target)) + beside
	if at < 0 || at > 1 {
		at -= 2 * beside
	}
	l.slides("control 0", at)
	l.uses("hand in")
	l.WaitText(`#mirror [role=status]`, "marks of 100", limit)
	marked := l.marks()
	l.uses("contents")
	l.uses("exercise 1")
	run := ask.Run{Seed: s.Seed(name, naming.ID, 0)}
	for i := range naming.Questions {
		q := run.Question(naming, i)
		answer := q.Right
		if wrong[i] {
			answer = 1 - answer
		}
		l.uses(fmt.Sprintf("answer %d", answer))
		l.awaits("proceed")
		if said := l.says(); strings.HasPrefix(said, "Right: ") == wrong[i] {
			l.t.Errorf("%s, question %d of those that were drawn natively: the page says %q", name, i+1, said)
		}
		run.Answer(naming, answer)
		l.uses("proceed")
		l.Wait(`!document.querySelector('`+widget("proceed")+`')`, limit)
	}
	l.awaits("again")
	l.uses("contents")
	l.uses("slip")
	l.awaits("copy")
	summed := numbers(l.body(), regexp.MustCompile(`[:?] (\d+) marks, 1 try\.`))
	if len(summed) != 2 || summed[0] != marked {
		l.t.Fatalf("%s was given %v marks for the match, and the slip says %q", name, marked, l.body())
	}
	l.t.Logf("%s: %v marks", name, summed)
	return summed
}
