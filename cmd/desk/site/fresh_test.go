package site

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestFreshBuildsWhenASourceChanges(t *testing.T) {
	root := t.TempDir()
	write := func(name, content string) {
		t.Helper()
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("game/game.go", "one")
	write("web/index.html", "one")
	builds := 0
	var failure error
	f := NewFresh(root, func(context.Context) (*Site, error) {
		builds++
		return &Site{}, failure
	})
	ask := func(page bool) error {
		_, err := f.Site(context.Background(), page)
		return err
	}
	steps := []struct {
		what   string
		change func()
		page   bool
		want   int
	}{
		{"the first request", func() {}, true, 1},
		{"nothing changed", func() {}, true, 1},
		{"a longer source", func() { write("game/game.go", "one two") }, true, 2},
		{"same length, other time", func() {
			later := time.Now().Add(time.Hour)
			if err := os.Chtimes(filepath.Join(root, "web/index.html"), later, later); err != nil {
				t.Fatal(err)
			}
		}, true, 3},
		{"a new file", func() { write("game/sheet/first.json", "{}") }, true, 4},
		{"a change, but only a part of the page is asked for", func() { write("web/boot.js", "1") }, false, 4},
		{"then the page", func() {}, true, 5},
		{"a removed file", func() { os.Remove(filepath.Join(root, "web/boot.js")) }, true, 6},
		{"a test, a text and hidden files", func() {
			write("game/game_test.go", "1")
			write("README.md", "1")
			write(".build/compressed/1.br", "1")
			write(".git/HEAD", "1")
		}, true, 6},
	}
	for _, s := range steps {
		s.change()
		if err := ask(s.page); err != nil {
			t.Fatal(err)
		}
		if builds != s.want {
			t.Fatalf("%s: %d builds so far, want %d", s.what, builds, s.want)
		}
	}

	failure = errors.New("broken")
	write("game/game.go", "broken")
	for range 2 {
		if err := ask(true); !errors.Is(err, failure) {
			t.Fatalf("error %v, want the build's", err)
		}
	}
	if builds != 7 {
		t.Errorf("%d builds, want 7: broken sources are built once only", builds)
	}
	if err := ask(false); err != nil {
		t.Errorf("files of the last good build are gone: %v", err)
	}
	failure = nil
	write("game/game.go", "mended again")
	if err := ask(true); err != nil {
		t.Errorf("after mending: %v", err)
	}
}
