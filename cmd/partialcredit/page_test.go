//go:build !js

package main_test

import (
	"context"
	_ "embed"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// Screen is the size of a page in CSS pixels, its device pixel ratio, and whether it is touched.
type Screen struct {
	Width, Height int64
	Ratio         float64
	Touch         bool
}

// The sizes at which every screen of the app is looked at.
var (
	Phone   = Screen{390, 844, 2, true}
	Tablet  = Screen{1180, 820, 2, true}
	Desktop = Screen{1440, 900, 1, false}
)

// Visit says how a page is opened. The zero value opens the shared site on a desktop in a browser
// that needs a gesture before sound.
type Visit struct {
	Address  string   // "" for the shared site
	Screen   Screen   // the zero value for Desktop
	Autoplay bool     // sound may start without a gesture
	In       running  // a browser started otherwise; nil for one of those that all tests share
	Before   []string // scripts that run before the page's own, on every load
	Throttle float64  // slows the main thread by this factor; 0 for not at all
	Expected []string // parts of console errors that do not fail the test
	Keeps    bool     // the app is kept on the device, as it always is outside of tests: half a second of processor time
}

// A running browser is started when it is first asked for.
type running = func() (context.Context, error)

// Page is one page in a browser profile of its own: nothing is stored or cached from other tests.
type Page struct {
	t   testing.TB
	ctx context.Context

	mu       sync.Mutex
	problems []string
	requests map[network.RequestID]string
	received map[string]float64

	fingers []*Finger
}

//go:embed testdata/soundtap.js
var soundTap string

// withoutWorker makes the page one that cannot be kept on the device, as where it is not secure.
const withoutWorker = `Object.defineProperty(Navigator.prototype, 'serviceWorker', { get() { return undefined; } });`

// limit is how long any single step may take; starting the app on a busy machine is the slowest.
const limit = 60 * time.Second

// Open opens a page and returns when it has loaded; Started waits for the app. Console errors and
// exceptions fail the test when it ends.
func Open(t testing.TB, v Visit) *Page {
	t.Helper()
	if v.Address == "" {
		v.Address = siteAddress(t)
	}
	if v.Screen == (Screen{}) {
		v.Screen = Desktop
	}
	if v.In == nil {
		v.In = browserNeedsGesture
		if v.Autoplay {
			v.In = browserPlaysAtOnce
		}
	}
	browser, err := v.In()
	if err != nil {
		t.Fatal(err)
	}
	ctx, err := newProfilePage(t, browser)
	if err != nil {
		t.Fatalf("a new page: %v", err)
	}
	p := &Page{t: t, ctx: ctx, requests: map[network.RequestID]string{}, received: map[string]float64{}}
	chromedp.ListenTarget(ctx, p.listen)
	t.Cleanup(func() { p.report(v.Expected) })

	p.do("a new page", network.Enable())
	p.SetScreen(v.Screen)
	if v.Throttle > 0 {
		p.Throttle(v.Throttle)
	}
	scripts := append([]string{soundTap}, v.Before...)
	if !v.Keeps {
		scripts = append(scripts, withoutWorker)
	}
	for _, script := range scripts {
		p.do("a script before the page's own", chromedp.ActionFunc(func(ctx context.Context) error {
			_, err := cdpage.AddScriptToEvaluateOnNewDocument(script).Do(ctx)
			return err
		}))
	}
	p.do("opening "+v.Address, chromedp.Navigate(v.Address))
	return p
}

// newProfilePage opens an empty page in a profile of its own; both end with the test. The library's
// own way opens no window for the profile, which Chromium's new headless mode refuses.
func newProfilePage(t testing.TB, browser context.Context) (context.Context, error) {
	toBrowser := cdp.WithExecutor(browser, chromedp.FromContext(browser).Browser)
	profile, err := target.CreateBrowserContext().Do(toBrowser)
	if err != nil {
		return nil, err
	}
	t.Cleanup(func() {
		if err := target.DisposeBrowserContext(profile).Do(toBrowser); err != nil {
			t.Errorf("closing the page's profile: %v", err)
		}
	})
	window, err := target.CreateTarget("about:blank").WithBrowserContextID(profile).WithNewWindow(true).Do(toBrowser)
	if err != nil {
		return nil, err
	}
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithTargetID(window))
	t.Cleanup(cancel)
	return ctx, nil
}

// do runs browser actions; what names them in the failure.
func (p *Page) do(what string, actions ...chromedp.Action) {
	p.t.Helper()
	if err := p.try(actions...); err != nil {
		p.t.Fatalf("%s: %v", what, err)
	}
}

// try runs browser actions within the limit. The first run creates the page, which must not be tied
// to a context that ends with it.
func (p *Page) try(actions ...chromedp.Action) error {
	if err := chromedp.Run(p.ctx); err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(p.ctx, limit)
	defer cancel()
	return chromedp.Run(ctx, actions...)
}

func (p *Page) listen(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		p.problems = append(p.problems, "exception: "+e.ExceptionDetails.Error())
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.APITypeError || e.Type == runtime.APITypeAssert {
			var parts []string
			for _, a := range e.Args {
				parts = append(parts, strings.TrimSpace(string(a.Value)+" "+a.Description))
			}
			p.problems = append(p.problems, "console: "+strings.Join(parts, " "))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.LevelError {
			p.problems = append(p.problems, fmt.Sprintf("log: %s (%s)", e.Entry.Text, e.Entry.URL))
		}
	case *network.EventRequestWillBeSent:
		p.requests[e.RequestID] = e.Request.URL
	case *network.EventLoadingFinished:
		if address := p.requests[e.RequestID]; strings.HasPrefix(address, "http") {
			p.received[address] += e.EncodedDataLength
		}
	}
}

func (p *Page) report(expected []string) {
	for _, problem := range p.Problems() {
		known := false
		for _, e := range expected {
			known = known || strings.Contains(problem, e)
		}
		if !known {
			p.t.Errorf("the browser reports: %s", problem)
		}
	}
}

// Problems returns the console errors and exceptions so far.
func (p *Page) Problems() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.problems...)
}

// Received returns how many bytes came over the network so far, by address, and their sum.
func (p *Page) Received() (byAddress map[string]int, sum int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	byAddress = map[string]int{}
	for address, n := range p.received {
		byAddress[address] = int(n)
		sum += int(n)
	}
	return byAddress, sum
}

// Eval evaluates JavaScript, waits for it if it is a promise, and stores the result in result, which
// may be nil.
func (p *Page) Eval(script string, result any) {
	p.t.Helper()
	if err := p.eval(script, result); err != nil {
		p.t.Fatalf("%s: %v", script, err)
	}
}

func (p *Page) eval(script string, result any) error {
	return p.try(chromedp.Evaluate(script, result, func(e *runtime.EvaluateParams) *runtime.EvaluateParams {
		return e.WithAwaitPromise(true)
	}))
}

// Wait waits until a JavaScript expression is true, or fails the test after the time given.
func (p *Page) Wait(condition string, within time.Duration) {
	p.t.Helper()
	deadline := time.Now().Add(within)
	for {
		holds := false
		err := p.eval("Boolean("+condition+")", &holds)
		if holds && err == nil {
			return
		}
		if time.Now().After(deadline) {
			p.t.Fatalf("within %v this did not come true: %s (last error: %v; problems: %q)", within, condition, err, p.Problems())
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// WaitText waits until the text of the first element that matches a selector contains a text.
func (p *Page) WaitText(selector, text string, within time.Duration) {
	p.t.Helper()
	p.Wait(fmt.Sprintf("(document.querySelector(%q)||{textContent:''}).textContent.includes(%q)", selector, text), within)
}

// Started waits until the app can draw and returns the time that took from the navigation on. It
// fails at once when the page says what keeps the app from starting.
func (p *Page) Started() time.Duration {
	p.t.Helper()
	const mark = `performance.getEntriesByName("partialcredit.started")`
	p.Wait(mark+`.length > 0 || document.querySelector("#loading-problem p")`, limit)
	var problem string
	p.Eval(`(document.querySelector("#loading-problem") || { textContent: "" }).textContent`, &problem)
	if problem != "" {
		p.t.Fatalf("the app does not start; the page says: %s", problem)
	}
	var ms float64
	p.Eval(mark+"[0].startTime", &ms)
	return time.Duration(ms * float64(time.Millisecond))
}

// SetScreen changes the size, the device pixel ratio and touch of an open page.
func (p *Page) SetScreen(s Screen) {
	p.t.Helper()
	touch := emulation.SetTouchEmulationEnabled(s.Touch)
	if s.Touch {
		touch = touch.WithMaxTouchPoints(5)
	}
	p.do("setting the screen", emulation.SetDeviceMetricsOverride(s.Width, s.Height, s.Ratio, s.Touch), touch)
}

// Throttle slows the main thread by a factor; 1 is full speed.
func (p *Page) Throttle(factor float64) {
	p.t.Helper()
	p.do("slowing the page", emulation.SetCPUThrottlingRate(factor))
}

// Media sets a media feature such as prefers-color-scheme to a value.
func (p *Page) Media(feature, value string) {
	p.t.Helper()
	p.do("setting "+feature, emulation.SetEmulatedMedia().WithFeatures([]*emulation.MediaFeature{{Name: feature, Value: value}}))
}

// Reload loads the page again and returns when it has loaded.
func (p *Page) Reload() {
	p.t.Helper()
	p.do("loading the page again", chromedp.Reload())
}

// Screenshot writes what the page shows to name in the folder that SCREENSHOTS names, or does
// nothing when it names none.
func (p *Page) Screenshot(name string) {
	p.t.Helper()
	folder := os.Getenv("SCREENSHOTS")
	if folder == "" {
		return
	}
	var png []byte
	p.do("a screenshot", chromedp.CaptureScreenshot(&png))
	if err := os.MkdirAll(folder, 0o755); err != nil {
		p.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, name), png, 0o644); err != nil {
		p.t.Fatal(err)
	}
}
