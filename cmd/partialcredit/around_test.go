//go:build !js

package main_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/emulation"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/google/go-cmp/cmp"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// TestAroundTheExercises is at the bench, at practice and at the progress, and turns the letters off, on one
// page.
func TestAroundTheExercises(t *testing.T) {
	name, limit := exerciseOf(t, "higher-lower"), exerciseOf(t, "limit-pitch")
	boxes, table := practice.Boxes{}, practice.Confusion{}
	for _, item := range ask.Items(name) {
		boxes[name.ID+"/"+item] = practice.Item{}
		table.Add(item, name.Answers[0].Name)
	}
	k := Kept{Version: 2, Exercise: name.ID, Page: "contents", Volume: 0.3, Hinted: true, More: map[string]any{
		"boxes": boxes, "tables": map[string]*practice.Confusion{name.ID: &table},
		"marks":   map[string]any{name.ID: map[string]any{"best": 80, "last": 60, "tries": 2}, limit.ID: map[string]any{"tries": 1}},
		"history": []any{map[string]any{"day": 20000, "exercise": name.ID, "marks": 80}, map[string]any{"day": 20001, "exercise": name.ID, "marks": 60}},
		"limits":  map[string]any{limit.ID: []any{map[string]any{"day": 20001, "value": 12.5, "factor": 1.4, "found": true}}},
	}}
	l := resume(t, k, Visit{})
	l.step(t, "letters", l.turnsLettersOff)
	l.step(t, "practice", func() { l.practises(boxes) })
	l.step(t, "progress", func() { l.carriesProgress(limit) })
	l.step(t, "bench", l.worksAtTheBench)
}

// exerciseOf finds an exercise of any kind.
func exerciseOf(t testing.TB, id string) *sheet.Exercise {
	t.Helper()
	in, number := whereIs(t, id)
	return &sheet.Course()[in].Exercises[number]
}

// turnsLettersOff does what WCAG 2.2, 2.1.4 asks for: keys of one character can be turned off.
func (l *learner) turnsLettersOff() {
	l.press("help")
	l.tabTo("letters")
	l.Press("Enter")
	l.WaitText(widget("letters"), "off", 5*time.Second)
	l.Press("c")
	if l.settle(); l.heading() != "Help" {
		l.t.Errorf("with the letters off, C turns to %q", l.heading())
	}
	l.tabTo("letters")
	l.Press("Enter")
	l.WaitText(widget("letters"), "on", 5*time.Second)
	l.Press("c")
	l.awaits("practice")
}

// heading is the page's own.
func (l *learner) heading() (text string) {
	l.t.Helper()
	l.Eval(`document.querySelector('#mirror h1').textContent`, &text)
	return text
}

// stored is a part of what is kept on the device.
func stored[T any](l *learner, name string) (v T) {
	l.t.Helper()
	l.Eval(fmt.Sprintf(`JSON.parse(localStorage.getItem("partialcredit.progress"))[%q]`, name), &v)
	return v
}

// practises answers two questions of a set and ends it.
func (l *learner) practises(before practice.Boxes) {
	l.press("practice")
	l.press("begin")
	right := 0
	for i := range 2 {
		l.press("answer 0")
		l.awaits("proceed")
		was := strings.HasPrefix(l.says(), "Right: ")
		if was {
			right++
		} else if !strings.HasPrefix(l.says(), "It was ") {
			l.t.Errorf("the page says %q of an answer", l.says())
		}
		if i == 0 {
			box := map[bool]int{false: 1, true: 2}[was]
			l.Wait(fmt.Sprintf(`Object.values(JSON.parse(localStorage.getItem("partialcredit.progress")).boxes).filter(b => b.box === %d).length === 1`, box), 5*time.Second)
			if n := len(stored[practice.Boxes](l, "boxes")); n != len(before) {
				l.t.Errorf("%d things lie in the boxes, before %d", n, len(before))
			}
		}
		l.press("proceed")
		l.awaits("answer 0")
	}
	l.press("end")
	l.awaits("course")
	if want := fmt.Sprintf("%d of 2 right.", right); !strings.HasPrefix(l.says(), want) {
		l.t.Errorf("after the set the page says %q, want %q", l.says(), want)
	}
	l.press("course")
	l.awaits("progress")
}

// carriesProgress looks at the progress, exports it to a real file, erases it and imports the file again.
func (l *learner) carriesProgress(limit *sheet.Exercise) {
	l.press("progress")
	for i, want := range []string{"2 hand-ins.", "Higher", limit.Quantity.Format(12.5)} {
		l.press(fmt.Sprintf("view %d", i))
		l.WaitText("#mirror p", want, 5*time.Second)
	}
	folder := l.t.TempDir()
	l.inBrowser("a folder for downloads", func(ctx context.Context, profile cdp.BrowserContextID) error {
		return browser.SetDownloadBehavior(browser.SetDownloadBehaviorBehaviorAllow).WithDownloadPath(folder).WithBrowserContextID(profile).Do(ctx)
	})
	kept := map[string]any{}
	names := []string{"marks", "history", "limits", "tables", "boxes", "confused"}
	for _, name := range names {
		kept[name] = stored[any](l, name)
	}
	l.press("export")
	file := l.downloaded(folder)
	if !strings.HasPrefix(filepath.Base(file), "partial-credit-20") || !strings.HasSuffix(file, ".json") {
		l.t.Errorf("the file is called %s", filepath.Base(file))
	}
	l.press("erase")
	l.press("erase all")
	l.awaits("practice")
	l.Wait(`Object.keys(JSON.parse(localStorage.getItem("partialcredit.progress")).marks).length === 0`, 5*time.Second)
	for _, name := range names {
		if text, _ := json.Marshal(stored[any](l, name)); string(text) != "null" && string(text) != "{}" && string(text) != "[]" {
			l.t.Errorf("erased, the page still keeps %s: %s", name, text)
		}
	}
	l.press("progress")
	l.choosesFile(file)
	l.Wait(`Object.keys(JSON.parse(localStorage.getItem("partialcredit.progress")).marks).length > 0`, 10*time.Second)
	for _, name := range names {
		if diff := cmp.Diff(kept[name], stored[any](l, name)); diff != "" {
			l.t.Errorf("imported, %s differ (-before +after):\n%s", name, diff)
		}
	}
	other := filepath.Join(l.t.TempDir(), "other.json")
	if err := os.WriteFile(other, []byte(`{"version": 99}`), 0o600); err != nil {
		l.t.Fatal(err)
	}
	l.choosesFile(other)
	l.awaits("understood")
	l.press("understood")
	if diff := cmp.Diff(kept["marks"], stored[any](l, "marks")); diff != "" {
		l.t.Errorf("a file that is none of ours changed the marks:\n%s", diff)
	}
	l.press("course")
	l.awaits("bench")
}

// inBrowser does something to the profile of the page.
func (p *Page) inBrowser(what string, do func(ctx context.Context, profile cdp.BrowserContextID) error) {
	p.t.Helper()
	p.do(what, chromedp.ActionFunc(func(ctx context.Context) error {
		this, err := target.GetTargetInfo().Do(ctx)
		if err != nil {
			return err
		}
		return do(cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser), this.BrowserContextID)
	}))
}

// downloaded waits for the one file in a folder to be complete.
func (l *learner) downloaded(folder string) string {
	l.t.Helper()
	for from := time.Now(); time.Since(from) < 20*time.Second; time.Sleep(20 * time.Millisecond) {
		files, err := filepath.Glob(filepath.Join(folder, "*.json"))
		if err == nil && len(files) == 1 {
			if data, err := os.ReadFile(files[0]); err == nil && json.Valid(data) {
				return files[0]
			}
		}
	}
	l.t.Fatal("no file came")
	return ""
}

// choosesFile presses the button for an import and chooses a file in the browser's dialogue.
func (l *learner) choosesFile(path string) {
	l.t.Helper()
	opened := make(chan cdp.BackendNodeID, 1)
	ctx, cancel := context.WithCancel(l.ctx)
	defer cancel()
	chromedp.ListenTarget(ctx, func(event any) {
		if e, ok := event.(*cdpage.EventFileChooserOpened); ok {
			opened <- e.BackendNodeID
		}
	})
	l.do("watching for the dialogue", cdpage.SetInterceptFileChooserDialog(true))
	l.press("import")
	select {
	case node := <-opened:
		l.do("choosing "+path, dom.SetFileInputFiles([]string{path}).WithBackendNodeID(node))
	case <-time.After(20 * time.Second):
		l.t.Fatal("the browser does not ask for a file")
	}
}

// worksAtTheBench sets a sound, has it swept and slowed, and opens its link in another profile.
func (l *learner) worksAtTheBench() {
	l.press("bench")
	l.awaits("control 0")
	l.sweeps("sweep 0", "control 0")
	l.press("slow")
	l.awaits("moment")
	l.Wait(`(window.moments = window.moments || new Set()).add(document.querySelector('`+widget("moment")+`').value).size >= 4`, 15*time.Second)
	l.press("slow")
	l.Wait(`!document.querySelector('`+widget("moment")+`')`, 5*time.Second)
	l.tabTo("part 1")
	l.Press("Enter")
	l.tabTo("control 6") // the shape of B, which the mix is half of
	l.Press("Home")
	l.tabTo("part 0")
	l.Press("Enter")
	l.tabTo("control 0")
	l.Press("End")
	if shape := l.attribute("control 0", "aria-valuetext"); shape != "sine" {
		l.t.Errorf("at its end the shape is %q", shape)
	}
	l.inBrowser("allowing the clipboard", func(ctx context.Context, profile cdp.BrowserContextID) error {
		return browser.GrantPermissions([]browser.PermissionType{browser.PermissionTypeClipboardReadWrite, browser.PermissionTypeClipboardSanitizedWrite}).WithBrowserContextID(profile).Do(ctx)
	})
	l.do("being in front", emulation.SetFocusEmulationEnabled(true))
	l.press("link")
	l.press("copy")
	l.WaitText("#mirror [role=status]", "copied", 5*time.Second)
	var link string
	l.Eval("navigator.clipboard.readText()", &link)
	_, fragment, _ := strings.Cut(link, "#")
	s, err := sheet.ReadSoundFragment("#" + fragment)
	if err != nil || !strings.HasPrefix(link, siteAddress(l.t)) {
		l.t.Fatalf("the link %q: %v", link, err)
	}
	want := synth.Default()
	want.Combine.How, want.B.Cents, want.Seconds = synth.Mix, 7, 4
	want.A.Shape, want.B.Shape = synth.Sine, synth.Triangle
	if s != want {
		l.t.Errorf("the link leads to %+v, want %+v", s, want)
	}
	other := &learner{Page: Open(l.t, Visit{Address: link}), keyboard: true}
	other.Started()
	if h := other.heading(); h != "Bench" {
		l.t.Errorf("the link opens %q", h)
	}
	other.press("yours")
	other.press("comfortable")
	other.hears(want, "the linked sound")
}
