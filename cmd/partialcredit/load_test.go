//go:build !js

package main_test

import (
	"fmt"
	"math"
	"net/http"
	"net/http/httptest"
	"path"
	"regexp"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"partialcredit/cmd/desk/site"
)

// mostBytes is what a first visit may transfer with brotli, the engine for the audio thread included:
// a design choice. Issue 2, "Done when" 4, allows 3 MB without.
const mostBytes = 3_200_000

// watchLoading keeps every text that the loading panel shows, and whether a progress bar was with it.
const watchLoading = `
window.loadingSeen = [];
new MutationObserver(() => {
  const text = document.getElementById('loading-text'), bar = document.getElementById('loading-bar');
  if (text && text.isConnected && bar && bar.getBoundingClientRect().width > 100) {
    const last = loadingSeen[loadingSeen.length - 1];
    if (!last || last.text !== text.textContent) loadingSeen.push({ text: text.textContent, value: bar.value });
  }
}).observe(document, { childList: true, subtree: true, characterData: true });`

func TestPageLoads(t *testing.T) {
	for _, tt := range []struct {
		name   string
		screen Screen
	}{{"phone", Phone}, {"tablet", Tablet}, {"desktop", Desktop}} {
		t.Run(tt.name, func(t *testing.T) {
			p := Open(t, Visit{Screen: tt.screen, Before: []string{watchLoading}})
			took := p.Started()
			checkProgress(t, p)
			p.Wait(`document.getElementById("loading") === null`, time.Second)
			files, sum := p.Received()
			t.Logf("transferred %d bytes with brotli in %d files; from navigation to a running app %v", sum, len(files), took.Round(time.Millisecond))
			if sum > mostBytes {
				t.Errorf("transferred %d bytes, at most %d are allowed: %v", sum, mostBytes, files)
			}
			// A measurement that misses the app would pass for small.
			if sum < 1_000_000 {
				t.Errorf("transferred %d bytes only, so the app was not counted: %v", sum, files)
			}
			p.Screenshot("started-" + tt.name + ".png")
		})
	}
}

func checkProgress(t *testing.T, p *Page) {
	t.Helper()
	var seen []struct {
		Text  string
		Value float64
	}
	p.Eval("loadingSeen", &seen)
	total := fmt.Sprintf("%.1f", float64(len(appFile(t).Data))/1e6)
	pattern := regexp.MustCompile(`^Loading (\d+\.\d) of (\d+\.\d) MB$`)
	last, steps := 0.0, 0
	for _, s := range seen {
		m := pattern.FindStringSubmatch(s.Text)
		if m == nil {
			continue
		}
		steps++
		if m[2] != total {
			t.Errorf("%q names a size other than %s MB", s.Text, total)
		}
		at, err := strconv.ParseFloat(m[1], 64)
		if err != nil || at < last {
			t.Errorf("%q comes after %.1f MB", s.Text, last)
		}
		if want := at / (float64(len(appFile(t).Data)) / 1e6); math.Abs(s.Value-want) > 0.02 {
			t.Errorf("at %q the bar stands at %.3f, want %.3f", s.Text, s.Value, want)
		}
		last = at
	}
	if steps < 3 || fmt.Sprintf("%.1f", last) != total {
		t.Errorf("the bar was seen %d times and ended at %.1f of %s MB: %v", steps, last, total, seen)
	}
}

func appFile(t *testing.T) site.File {
	t.Helper()
	for name, f := range theSite(t).Files {
		if isApp(name) {
			return f
		}
	}
	t.Fatal("the site has no app")
	return site.File{}
}

func isApp(name string) bool {
	return strings.HasPrefix(name, "app.") && strings.HasSuffix(name, ".wasm")
}

func TestMissingAbilitiesAreNamed(t *testing.T) {
	tests := []struct {
		name, script string
		want         []string
	}{
		{"WebAssembly", `delete globalThis.WebAssembly`, []string{"no WebAssembly"}},
		{"WebGL 2 disabled", `const get = HTMLCanvasElement.prototype.getContext;
			HTMLCanvasElement.prototype.getContext = function (kind) { return kind === 'webgl2' ? null : get.apply(this, arguments) }`, []string{"no WebGL 2", "hardware acceleration"}},
		{"WebGL 2", `delete globalThis.WebGL2RenderingContext`, []string{"no WebGL 2"}},
		{"audio", `delete globalThis.AudioContext; delete globalThis.webkitAudioContext`, []string{"no Web Audio"}},
		{"computed audio", `delete BaseAudioContext.prototype.audioWorklet; delete BaseAudioContext.prototype.createScriptProcessor`,
			[]string{"takes no sound that a page computes itself"}},
		{"two at once", `delete globalThis.WebAssembly; delete globalThis.AudioContext; delete globalThis.webkitAudioContext`,
			[]string{"no WebAssembly", "no Web Audio"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			p := Open(t, Visit{Screen: Phone, Before: []string{tt.script}})
			for _, want := range tt.want {
				p.WaitText("#loading-problem", want, 5*time.Second)
			}
			var sentences int
			p.Eval(`document.querySelectorAll("#loading-problem p").length`, &sentences)
			if want := strings.Count(tt.name, "two") + 1; sentences != want {
				t.Errorf("%d sentences, want %d", sentences, want)
			}
			var progress bool
			p.Eval(`document.getElementById("loading-bar").getBoundingClientRect().width > 0`, &progress)
			if progress {
				t.Error("the progress bar still shows, though nothing will load")
			}
			if files, _ := p.Received(); len(files) > 0 {
				for address := range files {
					if strings.HasSuffix(address, ".wasm") {
						t.Error("the app was loaded, though it cannot run")
					}
				}
			}
			p.Screenshot("missing-" + strings.ReplaceAll(tt.name, " ", "-") + ".png")
		})
	}
}

// ailing serves the site, but answers requests for the app with sick until heal is called. One bad
// answer would not do: a browser repeats a broken request by itself.
func ailing(t *testing.T, sick http.HandlerFunc) (address string, heal func()) {
	t.Helper()
	whole := site.Handler(site.Fixed(theSite(t)))
	var healed atomic.Bool
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if isApp(path.Base(r.URL.Path)) && !healed.Load() {
			sick(w, r)
			return
		}
		whole.ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	return server.URL + "/", func() { healed.Store(true) }
}

func TestFailedDownloadCanBeTriedAgain(t *testing.T) {
	tests := []struct {
		name string
		sick http.HandlerFunc
		want string
	}{
		{"no connection", func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) }, "could not be loaded. Check the connection"},
		{"not found", http.NotFound, "status 404"},
		{"broken off", func(w http.ResponseWriter, r *http.Request) {
			f := appFile(t)
			w.Header().Set("Content-Type", f.Type)
			w.Header().Set("Content-Length", strconv.Itoa(len(f.Data)))
			w.Write(f.Data[:len(f.Data)/2])
			panic(http.ErrAbortHandler)
		}, "broke off"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			address, heal := ailing(t, tt.sick)
			p := Open(t, Visit{Address: address, Screen: Phone, Expected: []string{"Failed to load resource"}})
			p.WaitText("#loading-problem", tt.want, 20*time.Second)
			p.WaitText("#loading-again", "Try again", time.Second)
			p.Screenshot("failed-" + strings.ReplaceAll(tt.name, " ", "-") + ".png")
			heal()
			p.Tap(p.Middle("#loading-again"))
			p.Wait(`!document.querySelector("#loading-problem p")`, 10*time.Second)
			p.Started()
		})
	}
}

func TestWrongTypeOnlyCostsStreaming(t *testing.T) {
	t.Parallel()
	address, _ := ailing(t, func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "application/octet-stream")
		w.Write(appFile(t).Data)
	})
	p := Open(t, Visit{Address: address})
	p.Started()
}

func TestDamagedAppIsNotMistakenForTheNetwork(t *testing.T) {
	t.Parallel()
	address, _ := ailing(t, func(w http.ResponseWriter, r *http.Request) {
		f := appFile(t)
		w.Header().Set("Content-Type", f.Type)
		w.Write(make([]byte, len(f.Data)))
	})
	p := Open(t, Visit{Address: address})
	p.WaitText("#loading-problem", "cannot start the app", 20*time.Second)
}

func TestBelowASubPath(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	if err := theSite(t).Write(folder); err != nil {
		t.Fatal(err)
	}
	var outside atomic.Int32
	mux := http.NewServeMux()
	mux.Handle("/courses/sound/", http.StripPrefix("/courses/sound/", http.FileServer(http.Dir(folder))))
	mux.HandleFunc("/", func(w http.ResponseWriter, r *http.Request) {
		outside.Add(1)
		http.NotFound(w, r)
	})
	server := httptest.NewServer(mux)
	defer server.Close()
	p := Open(t, Visit{Address: server.URL + "/courses/sound/"})
	p.Started()
	if n := outside.Load(); n > 0 {
		t.Errorf("%d requests left the site's folder", n)
	}
}

func TestLoadingStopsHalfWay(t *testing.T) {
	for _, tt := range []struct {
		name   string
		screen Screen
	}{{"phone", Phone}, {"tablet", Tablet}, {"low", Screen{568, 320, 1, true}}} {
		t.Run(tt.name, func(t *testing.T) {
			t.Parallel()
			goOn := make(chan struct{})
			address, _ := ailing(t, func(w http.ResponseWriter, r *http.Request) {
				f := appFile(t)
				w.Header().Set("Content-Type", f.Type)
				w.Write(f.Data[:len(f.Data)/2])
				w.(http.Flusher).Flush()
				select {
				case <-goOn:
				case <-r.Context().Done():
				}
				w.Write(f.Data[len(f.Data)/2:])
			})
			p := Open(t, Visit{Address: address, Screen: tt.screen})
			half, whole := float64(len(appFile(t).Data))/2e6, float64(len(appFile(t).Data))/1e6
			p.WaitText("#loading-text", fmt.Sprintf("Loading %.1f of %.1f MB", half, whole), 10*time.Second)
			var got struct{ Bar, Left, Right, Width float64 }
			p.Eval(`(() => { const r = document.getElementById('loading-bar').getBoundingClientRect();
				return { bar: document.getElementById('loading-bar').value, left: r.left, right: r.right, width: innerWidth }; })()`, &got)
			if math.Abs(got.Bar-0.5) > 0.01 || got.Left < 0 || got.Right > got.Width {
				t.Errorf("%+v: want the bar at 0.5 and within the screen", got)
			}
			p.Screenshot("loading-" + tt.name + ".png")
			close(goOn)
			p.Started()
		})
	}
}
