package measure

import (
	"context"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"strings"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"partialcredit/synth"
)

// A page is an open page of a headless browser.
type page struct {
	context context.Context
	stop    func()
	version string // of the browser
}

// openPage starts Chromium, or the browser that BROWSER names.
func openPage() (*page, error) {
	path, err := FindBrowser()
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "partialcredit-measure-")
	if err != nil {
		return nil, fmt.Errorf("no folder for the browser: %w", err)
	}
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(path), chromedp.UserDataDir(profile),
		chromedp.NoSandbox, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("headless", "new"),
		chromedp.Flag("disable-gpu", true),
		chromedp.Flag("disable-dev-shm-usage", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
	)
	// Chromium is newer than the protocol library and sends values it does not know.
	tab, stopTab := chromedp.NewContext(allocator, chromedp.WithErrorf(func(string, ...any) {}))
	p := &page{context: tab, stop: func() {
		stopTab()
		stopAllocator()
		os.RemoveAll(profile)
	}}
	err = chromedp.Run(tab, chromedp.ActionFunc(func(ctx context.Context) error {
		_, product, _, _, _, err := browser.GetVersion().Do(ctx)
		p.version = strings.Replace(product, "/", " ", 1)
		return err
	}))
	if err != nil {
		p.stop()
		return nil, fmt.Errorf("the browser %s does not start: %w", path, err)
	}
	return p, nil
}

// FindBrowser returns the path of a browser: the one that BROWSER names, or Chromium.
func FindBrowser() (string, error) {
	names := []string{"chromium", "google-chrome", "google-chrome-stable", "chromium-browser"}
	if named := os.Getenv("BROWSER"); named != "" {
		names = []string{named}
	}
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("there is no browser: none of %s can be run. `make chromium` installs one; BROWSER=/path/to/chromium names another", strings.Join(names, ", "))
}

// eval runs an asynchronous expression in the page.
func (p *page) eval(expression string, result any) error {
	await := func(e *runtime.EvaluateParams) *runtime.EvaluateParams { return e.WithAwaitPromise(true) }
	if err := chromedp.Run(p.context, chromedp.Evaluate(expression, result, await)); err != nil {
		return fmt.Errorf("the browser cannot measure: %w", err)
	}
	return nil
}

// ownType is the browser's name of its own waveform, or "".
func ownType(w wave) string {
	switch {
	case w.ratio != 0:
		return ""
	case w.shape == synth.Pulse && w.duty == 0.5:
		return "square"
	case w.shape == synth.Pulse || w.shape == synth.FallingSawtooth:
		return ""
	}
	return w.shape.String()
}

// oscillator plays the browser's own oscillator at a tone, after as many samples again.
func (p *page) oscillator(kind string, t tone) ([]float64, error) {
	var text string
	err := p.eval(fmt.Sprintf(`(async () => {
		const context = new OfflineAudioContext(1, %d, %v), osc = context.createOscillator();
		osc.type = %q;
		osc.frequency.value = %v;
		osc.connect(context.destination);
		osc.start();
		const samples = (await context.startRendering()).getChannelData(0).slice(-%d);
		return btoa(Array.from(new Uint8Array(samples.buffer), b => String.fromCharCode(b)).join(""));
	})()`, 2*t.n, t.rate, kind, t.hz(), t.n), &text)
	if err != nil {
		return nil, err
	}
	data, err := base64.StdEncoding.DecodeString(text)
	if err != nil || len(data) != 4*t.n {
		return nil, fmt.Errorf("the browser returned %d bytes for %d samples (%v)", len(data), t.n, err)
	}
	x := make([]float64, t.n)
	for i := range x {
		x[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(data[4*i:])))
	}
	return x, nil
}

// addOwn measures the browser's own waveforms where it has them.
func (p *page) addOwn(all []comparison) error {
	for i := range all {
		c := &all[i]
		kind := ownType(c.wave)
		if kind == "" {
			continue
		}
		x, err := p.oscillator(kind, c.tone)
		if err != nil {
			return err
		}
		c.browser = judge(x, c.tone, c.wave.exact().Partials(int(aliasTop/c.tone.hz())), true)
		c.browserHas = true
	}
	return nil
}
