package site

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestWriteLeavesOtherFilesAlone(t *testing.T) {
	folder := t.TempDir()
	write := func(name string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("CNAME")
	write("app.notahash.wasm")
	write("app.0123456789ab.wasm")
	write("app.0123456789ab.wasm.br")
	s := testSite(t)
	if err := s.Write(folder); err != nil {
		t.Fatal(err)
	}
	there := func(name string) bool {
		_, err := os.Stat(filepath.Join(folder, name))
		return err == nil
	}
	app := nameOf(t, s, "app", ".wasm")
	for _, name := range []string{"CNAME", "app.notahash.wasm", Page, app, app + ".br", app + ".gz", "tiny.txt"} {
		if !there(name) {
			t.Errorf("%s is missing", name)
		}
	}
	for _, name := range []string{"app.0123456789ab.wasm", "app.0123456789ab.wasm.br", "tiny.txt.br"} {
		if there(name) {
			t.Errorf("%s is there", name)
		}
	}
}

var (
	pageReference     = regexp.MustCompile(`(?:src|href|data-app|data-engine|data-worklet|data-scanner|data-scanner-thread)="([^"]*)"`)
	manifestReference = regexp.MustCompile(`"(?:src|start_url|scope|id)": "([^"]*)"`)
)

// The page's real files, with a stand-in for the app, so that this needs no long build. The browser
// test loads the finished site below a sub-path too.
func TestReferencesHoldBelowASubPath(t *testing.T) {
	contents, err := readWeb(filepath.Join("..", "..", "..", "web"))
	if err != nil {
		t.Fatal(err)
	}
	contents[appName], contents[engineName], contents[startName] = testApp, testApp, []byte("start();")
	contents[scannerName] = testApp
	files, err := nameFiles(contents)
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := (&Site{Files: files}).Write(folder); err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	mux.Handle("/courses/sound/", http.StripPrefix("/courses/sound/", http.FileServer(http.Dir(folder))))
	server := httptest.NewServer(mux)
	defer server.Close()

	fetch := func(address string) (int, string) {
		r, err := http.Get(address)
		if err != nil {
			t.Fatal(err)
		}
		defer r.Body.Close()
		return r.StatusCode, string(body(t, r.Body))
	}
	base, err := url.Parse(server.URL + "/courses/sound/")
	if err != nil {
		t.Fatal(err)
	}
	check := func(in string, pattern *regexp.Regexp, least int) {
		status, text := fetch(base.JoinPath(in).String())
		if status != 200 {
			t.Fatalf("%s: status %d", in, status)
		}
		found := pattern.FindAllStringSubmatch(text, -1)
		if len(found) < least {
			t.Fatalf("%s: only %d references found: %q", in, len(found), found)
		}
		for _, m := range found {
			reference, err := base.Parse(m[1])
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(reference.String(), base.String()) {
				t.Errorf("%s refers to %s, which leaves the site's folder", in, m[1])
			} else if status, _ := fetch(reference.String()); status != 200 {
				t.Errorf("%s refers to %s, which answers with status %d", in, m[1], status)
			}
		}
	}
	check("", pageReference, 14)
	check("manifest.webmanifest", manifestReference, 4)
}
