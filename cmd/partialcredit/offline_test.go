//go:build !js

package main_test

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"maps"
	"net"
	"net/http"
	"net/http/httptest"
	"path"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	cdpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"

	"partialcredit/cmd/desk/site"
)

// A host publishes builds of the site below a sub-path, and counts.
type host struct {
	*httptest.Server
	address string
	shown   atomic.Pointer[site.Site]
	wire    atomic.Int64 // bytes sent, with everything that belongs to HTTP

	mu    sync.Mutex
	asked map[string]int // how often, by file
}

const folder = "/courses/sound/"

func newHost(t *testing.T, s *site.Site) *host {
	t.Helper()
	h := &host{asked: map[string]int{}}
	h.shown.Store(s)
	files := site.Handler(func(context.Context, bool) (*site.Site, error) { return h.shown.Load(), nil })
	mux := http.NewServeMux()
	mux.Handle(folder, http.StripPrefix(strings.TrimSuffix(folder, "/"), http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h.mu.Lock()
		h.asked[path.Base(r.URL.Path)]++
		h.mu.Unlock()
		files.ServeHTTP(w, r)
	})))
	h.Server = httptest.NewUnstartedServer(mux)
	h.Listener = meter{h.Listener, &h.wire}
	h.Start()
	h.address = h.URL + folder
	t.Cleanup(h.stop)
	return h
}

// stop cuts the network.
func (h *host) stop() {
	h.CloseClientConnections()
	h.Close()
}

// visits returns how often each file was asked for, and forgets it.
func (h *host) visits() map[string]int {
	h.mu.Lock()
	defer h.mu.Unlock()
	asked := h.asked
	h.asked = map[string]int{}
	return asked
}

type meter struct {
	net.Listener
	sent *atomic.Int64
}

func (m meter) Accept() (net.Conn, error) {
	c, err := m.Listener.Accept()
	return metered{c, m.sent}, err
}

type metered struct {
	net.Conn
	sent *atomic.Int64
}

func (m metered) Write(b []byte) (int, error) {
	n, err := m.Conn.Write(b)
	m.sent.Add(int64(n))
	return n, err
}

// kept waits until the device has a whole build.
func (p *Page) kept() {
	p.t.Helper()
	p.Wait(`navigator.serviceWorker`, time.Second)
	p.Eval(`navigator.serviceWorker.ready.then(r => new Promise(done => {
		const look = () => r.active.state === 'activated' ? done() : setTimeout(look, 20);
		look();
	}))`, nil)
}

// caches returns the names of what is kept on the device.
func (p *Page) caches() (names []string) {
	p.t.Helper()
	p.Eval(`caches.keys()`, &names)
	return names
}

// published is the build that the page on the screen belongs to, as the test changes it.
func (p *Page) published() (build string) {
	p.t.Helper()
	p.Eval(`document.documentElement.dataset.build || "one"`, &build)
	return build
}

// second is another build of the site: its page says so, and its engine has another name. The worker's
// list and integrity are made here anew, apart from cmd/desk/site.
func second(t *testing.T) *site.Site {
	t.Helper()
	next := &site.Site{Files: maps.Clone(theSite(t).Files)}
	page, worker := next.Files[site.Page], next.Files["sw.js"]
	engine := nameLike(t, next, "engine.", ".wasm")
	renamed := "engine.0123456789ab.wasm"
	digest := func(b []byte) string {
		sum := sha256.Sum256(b)
		return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
	}
	text := strings.ReplaceAll(string(page.Data), engine, renamed)
	text = strings.Replace(text, "<html", `<html data-build="two"`, 1)
	list := strings.ReplaceAll(string(worker.Data), engine, renamed)
	list = strings.Replace(list, digest(page.Data), digest([]byte(text)), 1)
	list = strings.Replace(list, "const build = '", "const build = 'two", 1)
	f := next.Files[engine]
	f.Name = renamed
	delete(next.Files, engine)
	next.Files[renamed] = f
	next.Files[site.Page] = plain(page, text)
	next.Files["sw.js"] = plain(worker, list)
	return next
}

func plain(f site.File, text string) site.File {
	f.Data, f.Brotli, f.Gzip, f.Hash = []byte(text), nil, nil, f.Hash+"two"
	return f
}

func nameLike(t *testing.T, s *site.Site, prefix, suffix string) string {
	t.Helper()
	for name := range s.Files {
		if strings.HasPrefix(name, prefix) && strings.HasSuffix(name, suffix) {
			return name
		}
	}
	t.Fatalf("the site has no file %s*%s", prefix, suffix)
	return ""
}

// TestOfflineAfterOneVisit counts what a first visit transfers in all, the worker's own requests
// included, then stops the server.
func TestOfflineAfterOneVisit(t *testing.T) {
	h := newHost(t, theSite(t))
	l := playing(t, Visit{Keeps: true, Address: h.address})
	l.kept()
	wire, asked := h.wire.Load(), h.visits()
	t.Logf("the first visit transfers %d bytes, headers and the worker's requests included; asked for %v", wire, asked)
	if wire > mostBytes || wire < 1_000_000 {
		t.Errorf("%d bytes on the wire, want at most %d, and the app among them", wire, mostBytes)
	}
	for name, times := range asked {
		if times > 1 && (strings.HasSuffix(name, ".wasm") || strings.HasSuffix(name, ".js")) {
			t.Errorf("%s was transferred %d times", name, times)
		}
	}
	l.step(t, "installable", func() { l.installable(h) })
	h.stop()
	l.Reload()
	t.Logf("without the server the app runs after %v", l.Started().Round(time.Millisecond))
	l.Press("y")
	l.soundsAnew()
	l.playsWith("the engine")
	for _, address := range []string{h.address + "index.html", h.address + "?from=class#x"} {
		l.do("opening "+address, chromedp.Navigate(address))
		l.Started()
	}
}

// TestUpdateWaitsToBeAskedFor publishes a second build, without the first one's engine, and has two pages
// open while one of them goes over to it.
func TestUpdateWaitsToBeAskedFor(t *testing.T) {
	h := newHost(t, theSite(t))
	l := resume(t, at("beats"), Visit{Keeps: true, Address: h.address})
	l.kept()
	first := l.caches()
	if len(first) != 1 || !strings.HasPrefix(first[0], "partialcredit "+h.address+" ") {
		t.Fatalf("kept %q, want one cache of this folder", first)
	}
	l.Eval(`caches.open("another app").then(c => c.put("/x", new Response("theirs")))`, nil)

	h.shown.Store(second(t))
	h.visits()
	l.Reload()
	l.Started()
	l.Wait("partialCredit.offline.ready()", 20*time.Second)
	asked := h.visits()
	t.Logf("the second build transfers %v", asked)
	for name, times := range asked {
		if strings.HasSuffix(name, ".wasm") && name != "engine.0123456789ab.wasm" || times > 2 {
			t.Errorf("%s was transferred %d times for the update", name, times)
		}
	}
	if got := l.published(); got != "one" {
		t.Errorf("the page is of build %s before anybody asked", got)
	}
	// Everything of the first build is still there, though the server has its engine no more.
	l.Reload()
	l.Started()
	l.Press("y")
	l.soundsAnew()
	l.playsWith("the engine")
	if got := l.published(); got != "one" {
		t.Errorf("after a reload the page is of build %s", got)
	}

	other := l.another(h.address)
	other.Started()
	for _, id := range []string{"contents", "course"} {
		l.Wait(`document.querySelector('`+widget(id)+`')`, 10*time.Second)
		l.Eval(`document.querySelector('`+widget(id)+`').click()`, nil)
	}
	l.Wait(`document.querySelector('`+widget("renew")+`') && JSON.parse(localStorage["partialcredit.progress"]).page === "contents"`, 10*time.Second)
	progress := l.progress()
	l.Eval(`window.here = true; document.querySelector('`+widget("renew")+`').click()`, nil)
	l.Wait(`!window.here && document.documentElement.dataset.build === "two"`, 20*time.Second)
	l.Started()
	if got := l.progress(); got != progress {
		t.Errorf("the progress was %s and is %s", progress, got)
	}

	// The other page goes on with its own build, which stays until it is closed.
	if got := other.published(); got != "one" {
		t.Errorf("the other page was changed to build %s", got)
	}
	var status int
	if other.Eval(`fetch(document.querySelector('[data-engine]').dataset.engine, { cache: "no-store" }).then(r => r.status)`, &status); status != 200 {
		t.Errorf("the other page finds its engine with status %d", status)
	}
	other.close()
	h.stop()
	l.Reload()
	l.Started()
	if got := l.published(); got != "two" {
		t.Errorf("without the server the page is of build %s", got)
	}
	l.Eval(`(async () => { while ((await caches.keys()).length > 2) await new Promise(done => setTimeout(done, 50)); })()`, nil)
	now := l.caches()
	if len(now) != 2 || slices.Contains(now, first[0]) || !slices.Contains(now, "another app") {
		t.Errorf("kept %q, want the second build and what belongs to another app", now)
	}
}

// progress is what is kept of the learner's, without the time at which it was.
func (p *Page) progress() (text string) {
	p.t.Helper()
	p.Eval(`localStorage["partialcredit.progress"]`, &text)
	return text
}

// close closes the page and waits until the browser has it no more.
func (p *Page) close() {
	p.t.Helper()
	c := chromedp.FromContext(p.ctx)
	id, browser := c.Target.TargetID, cdp.WithExecutor(p.ctx, c.Browser)
	p.do("closing a page", cdpage.Close())
	for deadline := time.Now().Add(limit); ; time.Sleep(20 * time.Millisecond) {
		open, err := target.GetTargets().Do(browser)
		if err != nil {
			p.t.Fatal(err)
		}
		if !slices.ContainsFunc(open, func(i *target.Info) bool { return i.TargetID == id }) {
			return
		}
		if time.Now().After(deadline) {
			p.t.Fatal("the page that was closed is still there")
		}
	}
}

// another opens one more page in the profile of this one.
func (p *Page) another(address string) *Page {
	p.t.Helper()
	var window target.ID
	p.do("another page", chromedp.ActionFunc(func(ctx context.Context) error {
		this, err := target.GetTargetInfo().Do(ctx)
		if err != nil {
			return err
		}
		toBrowser := cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser)
		window, err = target.CreateTarget(address).WithBrowserContextID(this.BrowserContextID).WithNewWindow(true).Do(toBrowser)
		return err
	}))
	ctx, cancel := chromedp.NewContext(p.ctx, chromedp.WithTargetID(window))
	p.t.Cleanup(cancel)
	return &Page{t: p.t, ctx: ctx}
}

// TestBrokenBuildIsGivenUp loses a file that neither the device nor the server has any more.
func TestBrokenBuildIsGivenUp(t *testing.T) {
	h := newHost(t, theSite(t))
	p := Open(t, Visit{Keeps: true, Address: h.address, Expected: []string{"Failed to load resource"}})
	p.Started()
	p.kept()
	next := second(t)
	app := nameLike(t, next, "app.", ".wasm")
	moved := next.Files[app]
	delete(next.Files, app)
	moved.Name = "app.0123456789ab.wasm"
	next.Files[moved.Name] = moved
	next.Files[site.Page] = plain(next.Files[site.Page], strings.ReplaceAll(string(next.Files[site.Page].Data), app, moved.Name))
	h.shown.Store(next)
	p.Eval(`caches.keys().then(names => caches.open(names[0])).then(c => c.delete(document.querySelector("[data-app]").dataset.app))`, nil)
	p.do("forgetting what the browser keeps itself", network.ClearBrowserCache())
	p.Reload()
	p.WaitText("#loading-problem", "status 404", 20*time.Second)
	p.Tap(p.Middle("#loading-again"))
	p.Wait(`document.documentElement.dataset.build === "two"`, 20*time.Second)
	p.Started()
}

// installable checks the manifest against the members that installing needs (W3C Web Application
// Manifest; developer.chrome.com, "What does it take to be installable?"), and asks the browser.
func (p *Page) installable(h *host) {
	t := p.t
	t.Helper()
	var problems []*cdpage.InstallabilityError
	var manifest struct {
		Name       string
		ShortName  string `json:"short_name"`
		StartURL   string `json:"start_url"`
		ID, Scope  string
		Display    string
		Icons      []struct{ Src, Sizes, Type, Purpose string }
		Background string `json:"background_color"`
	}
	p.do("asking for the manifest", chromedp.ActionFunc(func(ctx context.Context) (err error) {
		address, mistakes, data, _, err := cdpage.GetAppManifest().Do(ctx)
		if err != nil {
			return err
		}
		if address != h.address+"manifest.webmanifest" || len(mistakes) > 0 {
			t.Errorf("the browser reads %s with mistakes %v", address, mistakes)
		}
		if err := json.Unmarshal([]byte(data), &manifest); err != nil {
			return err
		}
		problems, err = cdpage.GetInstallabilityErrors().Do(ctx)
		return err
	}))
	for _, e := range problems {
		// A profile of its own counts as a private window, in which nothing is installed.
		if e.ErrorID != "in-incognito" {
			t.Errorf("the browser would not install the app: %s %v", e.ErrorID, e.ErrorArguments)
		}
	}
	if manifest.Name == "" || manifest.ShortName == "" || manifest.Display != "standalone" || manifest.Background == "" {
		t.Errorf("%+v: want names, a display of its own and a background", manifest)
	}
	for what, reference := range map[string]string{"id": manifest.ID, "start_url": manifest.StartURL, "scope": manifest.Scope} {
		if reference != "./" {
			t.Errorf("%s is %q, want the folder itself", what, reference)
		}
	}
	needed := []string{"192x192 ", "512x512 ", "512x512 maskable"}
	for _, icon := range manifest.Icons {
		if icon.Type != "image/png" {
			continue
		}
		needed = slices.DeleteFunc(needed, func(s string) bool { return s == icon.Sizes+" "+icon.Purpose })
		var size string
		p.Eval(`(async () => { const i = new Image(); i.src = "`+icon.Src+`"; await i.decode(); return i.naturalWidth + "x" + i.naturalHeight; })()`, &size)
		if size != icon.Sizes {
			t.Errorf("%s is %s pixels, want %s", icon.Src, size, icon.Sizes)
		}
	}
	if len(needed) > 0 {
		t.Errorf("the manifest lacks icons %q", needed)
	}
	var touch string
	p.Eval(`(async () => { const i = new Image(); i.src = document.querySelector("link[rel=apple-touch-icon]").href; await i.decode(); return i.naturalWidth + "x" + i.naturalHeight; })()`, &touch)
	if touch != "180x180" {
		t.Errorf("the touch icon is %s pixels, want 180x180", touch)
	}
}
