package site

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
)

var (
	testPage = `<script src="boot.js" data-app="app.wasm" data-bytes="0"></script><script src="wasm_exec.js" data-engine="engine.wasm" data-scanner="scanner.wasm"></script>`
	testApp  = bytes.Repeat([]byte("stands in for the app "), 100)
)

// testSite returns a small site made by the real naming and compressing.
func testSite(t *testing.T) *Site {
	t.Helper()
	files, err := nameFiles(map[string][]byte{
		Page:                   []byte(testPage),
		appName:                testApp,
		engineName:             bytes.Repeat([]byte("stands in for the engine "), 100),
		startName:              bytes.Repeat([]byte("start();\n"), 50),
		scannerName:            bytes.Repeat([]byte("stands in for the scanner "), 100),
		"boot.js":              bytes.Repeat([]byte("boot();\n"), 50),
		"sw.js":                bytes.Repeat([]byte("keep();\n"), 50),
		"manifest.webmanifest": []byte(`{"name": "` + strings.Repeat("long ", 50) + `"}`),
		"tiny.txt":             []byte("a"),
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := compressAll(files, cache{t.TempDir()}, FastBrotli); err != nil {
		t.Fatal(err)
	}
	return &Site{Files: files}
}

// nameOf returns the name that a file received.
func nameOf(t *testing.T, s *Site, stem, ext string) string {
	t.Helper()
	for name := range s.Files {
		if strings.HasPrefix(name, stem+".") && strings.HasSuffix(name, ext) {
			return name
		}
	}
	t.Fatalf("no file %s*%s", stem, ext)
	return ""
}

func get(h http.Handler, method, path string, header http.Header) *http.Response {
	r := httptest.NewRequest(method, path, nil)
	if header != nil {
		r.Header = header
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func body(t *testing.T, r io.Reader) []byte {
	t.Helper()
	b, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestTypesAndFreshness(t *testing.T) {
	s := testSite(t)
	h := Handler(Fixed(s))
	const forever, ask = "public, max-age=31536000, immutable", "no-cache"
	tests := []struct{ path, contentType, cacheControl string }{
		{"/", "text/html; charset=utf-8", ask},
		{"/index.html", "text/html; charset=utf-8", ask},
		{"/" + nameOf(t, s, "app", ".wasm"), "application/wasm", forever},
		{"/" + nameOf(t, s, "boot", ".js"), "text/javascript; charset=utf-8", forever},
		{"/" + nameOf(t, s, "wasm_exec", ".js"), "text/javascript; charset=utf-8", forever},
		{"/sw.js", "text/javascript; charset=utf-8", ask},
		{"/manifest.webmanifest", "application/manifest+json", ask},
		{"/tiny.txt", "text/plain; charset=utf-8", ask},
	}
	for _, tt := range tests {
		r := get(h, "GET", tt.path, nil)
		if r.StatusCode != http.StatusOK {
			t.Errorf("%s: status %d", tt.path, r.StatusCode)
		}
		if got := r.Header.Get("Content-Type"); got != tt.contentType {
			t.Errorf("%s: Content-Type %q, want %q", tt.path, got, tt.contentType)
		}
		if got := r.Header.Get("Cache-Control"); got != tt.cacheControl {
			t.Errorf("%s: Cache-Control %q, want %q", tt.path, got, tt.cacheControl)
		}
		if got := r.Header.Get("X-Content-Type-Options"); got != "nosniff" {
			t.Errorf("%s: X-Content-Type-Options %q, want nosniff", tt.path, got)
		}
	}
}

func TestNegotiation(t *testing.T) {
	s := testSite(t)
	h := Handler(Fixed(s))
	path := "/" + nameOf(t, s, "app", ".wasm")
	plain := func(r io.Reader) io.Reader { return r }
	brotlied := func(r io.Reader) io.Reader { return brotli.NewReader(r) }
	gzipped := func(r io.Reader) io.Reader {
		z, err := gzip.NewReader(r)
		if err != nil {
			t.Fatal(err)
		}
		return z
	}
	tests := []struct {
		accept, want string
		open         func(io.Reader) io.Reader
	}{
		{"gzip, deflate, br, zstd", "br", brotlied},
		{"gzip;q=1.0, br;q=0.5", "br", brotlied},
		{"gzip, deflate", "gzip", gzipped},
		{"br;q=0, gzip", "gzip", gzipped},
		{"identity", "", plain},
		{"", "", plain},
	}
	tags := map[string]string{}
	for _, tt := range tests {
		r := get(h, "GET", path, http.Header{"Accept-Encoding": {tt.accept}})
		if got := r.Header.Get("Content-Encoding"); got != tt.want {
			t.Errorf("Accept-Encoding %q: Content-Encoding %q, want %q", tt.accept, got, tt.want)
			continue
		}
		if got := r.Header.Get("Vary"); got != "Accept-Encoding" {
			t.Errorf("Accept-Encoding %q: Vary %q", tt.accept, got)
		}
		if got := body(t, tt.open(r.Body)); !bytes.Equal(got, testApp) {
			t.Errorf("Accept-Encoding %q: the content came back changed", tt.accept)
		}
		tags[r.Header.Get("ETag")] = tt.want
	}
	if len(tags) != 3 {
		t.Errorf("ETags %v, want one for each of the three forms", tags)
	}
}

func TestRevalidation(t *testing.T) {
	h := Handler(Fixed(testSite(t)))
	br := func(tag string) http.Header {
		return http.Header{"Accept-Encoding": {"br"}, "If-None-Match": {tag}}
	}
	tag := get(h, "GET", "/sw.js", br("")).Header.Get("ETag")
	if tag == "" {
		t.Fatal("no ETag")
	}
	tests := []struct {
		header string
		want   int
	}{
		{tag, 304}, {"W/" + tag, 304}, {`"other", ` + tag, 304}, {"*", 304}, {`"other"`, 200},
	}
	for _, tt := range tests {
		r := get(h, "GET", "/sw.js", br(tt.header))
		if r.StatusCode != tt.want {
			t.Errorf("If-None-Match %s: status %d, want %d", tt.header, r.StatusCode, tt.want)
		}
		if n := len(body(t, r.Body)); tt.want == 304 && n != 0 {
			t.Errorf("If-None-Match %s: %d bytes with a 304", tt.header, n)
		}
	}
	if r := get(h, "GET", "/sw.js", http.Header{"If-None-Match": {tag}}); r.StatusCode != 200 {
		t.Errorf("the tag of the brotli form matched the uncompressed form")
	}
}

func TestMethodsAndUnknownNames(t *testing.T) {
	h := Handler(Fixed(testSite(t)))
	if r := get(h, "POST", "/", nil); r.StatusCode != http.StatusMethodNotAllowed {
		t.Errorf("POST: status %d", r.StatusCode)
	}
	head := get(h, "HEAD", "/sw.js", nil)
	if n := len(body(t, head.Body)); n != 0 || head.ContentLength != 400 {
		t.Errorf("HEAD: %d bytes, Content-Length %d, want 0 and 400", n, head.ContentLength)
	}
	for _, path := range []string{"/nothing", "/app.wasm", "/../go.mod", "/sw.js/"} {
		if r := get(h, "GET", path, nil); r.StatusCode != http.StatusNotFound {
			t.Errorf("%s: status %d, want 404", path, r.StatusCode)
		}
	}
}

func TestFailureIsReadable(t *testing.T) {
	tests := []struct {
		err  error
		want []string
	}{
		{&CompileError{"main.go:3:1: <oops> & more"}, []string{"does not compile", "main.go:3:1: &lt;oops&gt; &amp; more"}},
		{errors.New("the page's files cannot be read"), []string{"could not be built", "files cannot be read"}},
	}
	for _, tt := range tests {
		h := Handler(func(context.Context, bool) (*Site, error) { return nil, tt.err })
		r := get(h, "GET", "/", nil)
		if r.StatusCode != 500 || r.Header.Get("Cache-Control") != "no-store" {
			t.Errorf("status %d, Cache-Control %q", r.StatusCode, r.Header.Get("Cache-Control"))
		}
		text := string(body(t, r.Body))
		for _, want := range tt.want {
			if !strings.Contains(text, want) {
				t.Errorf("the page does not contain %q:\n%s", want, text)
			}
		}
	}
}
