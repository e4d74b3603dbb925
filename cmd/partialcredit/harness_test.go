//go:build !js

package main_test

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"partialcredit/cmd/desk/measure"
	"partialcredit/cmd/desk/site"
)

func TestMain(m *testing.M) {
	code := m.Run()
	for _, stop := range atExit {
		stop()
	}
	os.Exit(code)
}

// atExit holds what ends the shared server and browsers, which outlive single tests.
var (
	atExit     []func()
	atExitLock sync.Mutex
)

func later(f func()) {
	atExitLock.Lock()
	defer atExitLock.Unlock()
	atExit = append(atExit, f)
}

// builtSite builds the site once, as it would be published.
var builtSite = sync.OnceValues(func() (*site.Site, error) {
	root, err := site.FindRoot()
	if err != nil {
		return nil, err
	}
	return site.Build(context.Background(), site.Options{Root: root, Brotli: site.SmallestBrotli})
})

// theSite returns the site that all tests share.
func theSite(t testing.TB) *site.Site {
	t.Helper()
	s, err := builtSite()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

var sharedServer = sync.OnceValue(func() string {
	s, err := builtSite()
	if err != nil {
		panic(err) // theSite has reported it already
	}
	server := httptest.NewServer(site.Handler(site.Fixed(s)))
	later(server.Close)
	return server.URL + "/"
})

// siteAddress returns the address of the shared site, served with brotli as `desk serve` does.
func siteAddress(t testing.TB) string {
	t.Helper()
	theSite(t)
	return sharedServer()
}

// A running browser per autoplay policy.
var (
	browserNeedsGesture = sync.OnceValues(func() (context.Context, error) {
		return startBrowser("document-user-activation-required")
	})
	browserPlaysAtOnce = sync.OnceValues(func() (context.Context, error) {
		return startBrowser("no-user-gesture-required")
	})
)

func startBrowser(autoplay string, more ...chromedp.ExecAllocatorOption) (context.Context, error) {
	path, err := measure.FindBrowser()
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "partialcredit-profile-")
	if err != nil {
		return nil, err
	}
	// SwiftShader draws WebGL without a graphics card; see "WebGL headless" in the platform notes.
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(), append([]chromedp.ExecAllocatorOption{
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.NoSandbox,
		chromedp.NoFirstRun,
		chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("headless", "new"),
		chromedp.Flag("use-gl", "angle"),
		chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true),
		chromedp.Flag("autoplay-policy", autoplay),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-dev-shm-usage", true),
		chromedp.Flag("disable-background-timer-throttling", true),
		chromedp.Flag("disable-renderer-backgrounding", true),
		chromedp.Flag("disable-backgrounding-occluded-windows", true),
		// Every new window has the address bar's two popups loaded, more than a second of processor time.
		chromedp.Flag("disable-features", "PaintHolding,WebUIOmniboxPopup,WebUIOmniboxAimPopup"),
	}, more...)...)
	// Chromium is newer than the protocol library and sends values it does not know; those messages
	// are not about the app.
	browser, stopBrowser := chromedp.NewContext(allocator, chromedp.WithErrorf(func(string, ...any) {}))
	stop := func() {
		stopBrowser()
		stopAllocator()
		os.RemoveAll(profile)
	}
	if err := chromedp.Run(browser); err != nil {
		stop()
		return nil, fmt.Errorf("the browser %s does not start: %w", path, err)
	}
	later(stop)
	return browser, nil
}
