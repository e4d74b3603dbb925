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
	name := filepath.Base(found[0])
	write := func(what []byte) {
		if err := os.WriteFile(found[0], what, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	marked := append([]byte("kept"), seal(name, []byte("kept"))...)
	write(marked)
	if second, err := c.compress(data, how); err != nil || string(second) != "kept" {
		t.Errorf("second call gave %d bytes (%v), want what was kept", len(second), err)
	}
	if other, err := c.compress(append(data, 'x'), how); err != nil || string(other) == "kept" {
		t.Errorf("other content gave the same result (%v)", err)
	}
	if other, err := c.compress(data, gzipMethod(FastBrotli)); err != nil || string(other) == "kept" || bytes.Equal(other, first) {
		t.Errorf("another method gave the same result (%v)", err)
	}
	// What is damaged, half written, empty, without a seal or from another file is made anew, and kept.
	damaged := append([]byte("kelt"), marked[4:]...)
	foreign := append([]byte("kept"), seal("another", []byte("kept"))...)
	for _, bad := range [][]byte{damaged, marked[:len(marked)-1], {}, []byte("kept"), foreign} {
		write(bad)
		if again, err := c.compress(data, how); err != nil || !bytes.Equal(again, first) {
			t.Errorf("%q is taken for a kept result (%v)", bad, err)
		}
		if mended, err := os.ReadFile(found[0]); err != nil || !bytes.HasPrefix(mended, first) || len(mended) != len(first)+32 {
			t.Errorf("%q stays (%v)", bad, err)
		}
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
