package site

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

func TestCacheIsReadByContent(t *testing.T) {
	c := cache{t.TempDir()}
	how := brotliMethod(FastBrotli)
	data := bytes.Repeat([]byte("again and "), 50)
	first, err := c.compress(data, how)
	if err != nil {
		t.Fatal(err)
	}
	found, err := filepath.Glob(filepath.Join(c.folder, "*"))
	if err != nil || len(found) != 1 {
		t.Fatalf("kept %q (%v), want one file", found, err)
	}
	// A marked result shows that the second call reads rather than compresses.
	if err := os.WriteFile(found[0], []byte("kept"), 0o644); err != nil {
		t.Fatal(err)
	}
	if second, err := c.compress(data, how); err != nil || string(second) != "kept" {
		t.Errorf("second call gave %d bytes (%v), want what was kept", len(second), err)
	}
	if other, err := c.compress(append(data, 'x'), how); err != nil || string(other) == "kept" {
		t.Errorf("other content gave the same result (%v)", err)
	}
	if other, err := c.compress(data, gzipMethod(FastBrotli)); err != nil || string(other) == "kept" || bytes.Equal(other, first) {
		t.Errorf("another method gave the same result (%v)", err)
	}
}

func TestPruneLeavesTheNewest(t *testing.T) {
	c := cache{t.TempDir()}
	for i := range kept + 5 {
		if _, err := c.compress(bytes.Repeat([]byte{byte(i)}, 100), gzipMethod(FastBrotli)); err != nil {
			t.Fatal(err)
		}
	}
	c.prune()
	found, err := filepath.Glob(filepath.Join(c.folder, "*"))
	if err != nil || len(found) != kept {
		t.Errorf("%d files left (%v), want %d", len(found), err, kept)
	}
}
