//go:build !js

package main_test

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// firefoxPrefs let Firefox draw WebGL without a graphics card (Mesa's llvmpipe does, by GLX, for which
// even a headless Firefox wants an X display) and keep it from doing anything but the test. Whether
// sound may start stays as people have it: after a gesture.
const firefoxPrefs = `
user_pref("webgl.force-enabled", true);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("browser.startup.page", 0);
user_pref("browser.aboutConfig.showWarning", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("toolkit.telemetry.enabled", false);
user_pref("app.update.enabled", false);
user_pref("extensions.update.enabled", false);
user_pref("network.captive-portal-service.enabled", false);
user_pref("network.connectivity-service.enabled", false);
user_pref("dom.ipc.processPrelaunch.enabled", false);
`

// A fox is a page in Firefox.
type fox struct {
	t       testing.TB
	bidi    *bidi
	context string

	mu       sync.Mutex
	problems []string
}

// openFox starts Firefox and opens the shared site there, with scripts that run before the page's own.
// Errors that the page logs fail the test when it ends.
func openFox(t *testing.T, s Screen, before ...string) *fox {
	t.Helper()
	f := &fox{t: t}
	address, stop := startFirefox(t)
	t.Cleanup(stop)
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	b, hangUp, err := dialBidi(ctx, address+"/session", f.hear)
	if err != nil {
		t.Fatalf("Firefox cannot be reached: %v", err)
	}
	t.Cleanup(hangUp)
	t.Cleanup(f.report)
	f.bidi = b
	f.do("session.new", obj{"capabilities": obj{}}, nil)
	f.do("session.subscribe", obj{"events": list{"log.entryAdded"}}, nil)
	var tree struct{ Contexts []struct{ Context string } }
	f.do("browsingContext.getTree", obj{}, &tree)
	f.context = tree.Contexts[0].Context
	f.do("browsingContext.setViewport", obj{"context": f.context, "viewport": obj{"width": s.Width, "height": s.Height}, "devicePixelRatio": s.Ratio}, nil)
	for _, script := range append([]string{soundTap}, before...) {
		f.do("script.addPreloadScript", obj{"functionDeclaration": `() => { if (location.href.startsWith("http")) {` + script + "}}"}, nil)
	}
	f.do("browsingContext.navigate", obj{"context": f.context, "url": siteAddress(t), "wait": "complete"}, nil)
	return f
}

type (
	obj  = map[string]any
	list = []any
)

// startFirefox starts a Firefox with a new profile and returns the address at which it is driven.
func startFirefox(t testing.TB) (address string, stop func()) {
	t.Helper()
	path, err := findFirefox()
	if err != nil {
		t.Fatal(err)
	}
	profile := t.TempDir()
	if err := os.WriteFile(filepath.Join(profile, "user.js"), []byte(firefoxPrefs), 0o600); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, "--headless", "--no-remote", "--profile", profile, "--remote-debugging-port=0", "about:blank")
	cmd.Env = append(os.Environ(), "HOME="+profile, "DISPLAY="+startDisplay(t), "PULSE_SERVER="+startSpeakers(t), "LIBGL_ALWAYS_SOFTWARE=1", "MOZ_CRASHREPORTER_DISABLE=1")
	words, err := cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatalf("%s does not start: %v", path, err)
	}
	found := make(chan string, 1)
	var said strings.Builder
	go func() {
		defer close(found)
		lines := bufio.NewScanner(words)
		for lines.Scan() {
			if at, ok := strings.CutPrefix(lines.Text(), "WebDriver BiDi listening on "); ok {
				found <- at
			}
			if said.Len() < 4000 {
				said.WriteString(lines.Text() + "\n")
			}
		}
	}()
	stop = func() {
		cmd.Process.Signal(os.Interrupt) // it ends its own processes
		done := make(chan struct{})
		go func() { cmd.Wait(); close(done) }()
		select {
		case <-done:
		case <-time.After(10 * time.Second):
			cmd.Process.Kill()
			<-done
		}
	}
	select {
	case at, ok := <-found:
		if ok {
			return at, stop
		}
		stop()
		t.Fatalf("%s ended at once and said: %s", path, said.String())
	case <-time.After(limit):
		stop()
		t.Fatalf("%s does not say within %v where it can be driven", path, limit)
	}
	return "", nil
}

// findFirefox returns the path of Firefox: the one that FIREFOX names, or Debian's.
func findFirefox() (string, error) {
	names := []string{"firefox-esr", "firefox"}
	if named := os.Getenv("FIREFOX"); named != "" {
		names = []string{named}
	}
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("there is no Firefox: none of %s can be run. `make firefox` installs one; FIREFOX=/path/to/firefox names another", strings.Join(names, ", "))
}

func (f *fox) do(method string, params, result any) {
	f.t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	if err := f.bidi.do(ctx, method, params, result); err != nil {
		f.t.Fatalf("Firefox: %v", err)
	}
}

// hear keeps the errors that the page logs, its exceptions among them.
func (f *fox) hear(method string, params json.RawMessage) {
	var entry struct{ Level, Type, Text string }
	if json.Unmarshal(params, &entry) == nil && method == "log.entryAdded" && entry.Level == "error" {
		f.mu.Lock()
		defer f.mu.Unlock()
		f.problems = append(f.problems, entry.Type+": "+entry.Text)
	}
}

func (f *fox) report() {
	f.mu.Lock()
	defer f.mu.Unlock()
	for _, p := range f.problems {
		f.t.Errorf("Firefox reports: %s", p)
	}
}

// eval evaluates JavaScript, waits for it if it is a promise, and stores the result.
func (f *fox) eval(script string, result any) error {
	var got struct {
		Type             string
		Result           struct{ Value string }
		ExceptionDetails struct{ Text string }
	}
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	err := f.bidi.do(ctx, "script.evaluate", obj{
		"expression": "Promise.resolve(" + script + ").then(v => JSON.stringify(v === undefined ? null : v))",
		"target":     obj{"context": f.context}, "awaitPromise": true, "userActivation": false,
	}, &got)
	switch {
	case err != nil:
		return err
	case got.Type != "success":
		return fmt.Errorf("%s", got.ExceptionDetails.Text)
	case result == nil:
		return nil
	}
	return json.Unmarshal([]byte(got.Result.Value), result)
}

// Eval is eval that must work.
func (f *fox) Eval(script string, result any) {
	f.t.Helper()
	if err := f.eval(script, result); err != nil {
		f.t.Fatalf("Firefox: %s: %v", script, err)
	}
}

// Wait waits until a JavaScript expression is true.
func (f *fox) Wait(condition string, within time.Duration) {
	f.t.Helper()
	deadline := time.Now().Add(within)
	for {
		holds := false
		err := f.eval("Boolean("+condition+")", &holds)
		if holds && err == nil {
			return
		}
		if time.Now().After(deadline) {
			f.mu.Lock()
			defer f.mu.Unlock()
			f.t.Fatalf("Firefox: within %v this did not come true: %s (last error: %v; problems: %q)", within, condition, err, f.problems)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Drag puts a pointer, "touch" or "mouse", down at the first point, moves it through the others and
// lifts it.
func (f *fox) Drag(kind string, through ...Point) {
	f.t.Helper()
	const hold = 50 // ms
	move := func(at Point) obj {
		return obj{"type": "pointerMove", "x": int(at.X), "y": int(at.Y), "duration": 0}
	}
	wait := obj{"type": "pause", "duration": hold}
	actions := list{move(through[0]), obj{"type": "pointerDown", "button": 0}, wait}
	for _, at := range through[1:] {
		actions = append(actions, move(at), wait)
	}
	actions = append(actions, obj{"type": "pointerUp", "button": 0})
	f.do("input.performActions", obj{"context": f.context, "actions": list{
		obj{"type": "pointer", "id": kind, "parameters": obj{"pointerType": kind}, "actions": actions},
	}}, nil)
}

// Tap touches the middle of a widget.
func (f *fox) Tap(id string) {
	f.t.Helper()
	b := f.box(id)
	f.Drag("touch", Point{b.X + b.Width/2, b.Y + b.Height/2})
}

// Press presses and releases a key, named by its character.
func (f *fox) Press(key string) {
	f.t.Helper()
	f.do("input.performActions", obj{"context": f.context, "actions": list{obj{"type": "key", "id": "keys", "actions": list{
		obj{"type": "keyDown", "value": key}, obj{"type": "pause", "duration": 50}, obj{"type": "keyUp", "value": key},
	}}}}, nil)
}

// box is where a widget lies.
func (f *fox) box(id string) (b struct{ X, Y, Width, Height float64 }) {
	f.t.Helper()
	f.Wait(`document.querySelector('`+widget(id)+`')`, 10*time.Second)
	f.Eval(`document.querySelector('`+widget(id)+`').getBoundingClientRect().toJSON()`, &b)
	return b
}
