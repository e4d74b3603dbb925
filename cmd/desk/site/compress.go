package site

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sort"

	"github.com/andybalholm/brotli"
)

const (
	// SmallestBrotli is the quality for files to publish: the smallest result, half a minute for the app.
	SmallestBrotli = 11
	// FastBrotli is the quality while developing: well under a second for the app.
	FastBrotli = 3
)

// method is one way to compress; its name tells apart what the cache keeps.
type method struct {
	name string
	open func(io.Writer) (io.WriteCloser, error)
}

func brotliMethod(quality int) method {
	return method{fmt.Sprintf("br%d", quality), func(w io.Writer) (io.WriteCloser, error) {
		// 24 is the largest window that every brotli decoder must accept (RFC 7932, section 9.1).
		return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: quality, LGWin: 24}), nil
	}}
}

func gzipMethod(brotliQuality int) method {
	level := gzip.BestSpeed
	if brotliQuality >= SmallestBrotli {
		level = gzip.BestCompression
	}
	return method{fmt.Sprintf("gz%d", level), func(w io.Writer) (io.WriteCloser, error) {
		return gzip.NewWriterLevel(w, level)
	}}
}

// cache keeps compressed results under the hash of what was compressed.
type cache struct{ folder string }

// kept is how many results prune leaves: a dozen builds or so.
const kept = 96

func (c cache) compress(data []byte, how method) ([]byte, error) {
	sum := sha256.Sum256(data)
	path := filepath.Join(c.folder, hex.EncodeToString(sum[:])+"."+how.name)
	if found, err := os.ReadFile(path); err == nil {
		return found, nil
	}
	var out bytes.Buffer
	w, err := how.open(&out)
	if err != nil {
		return nil, fmt.Errorf("compression cannot start: %w", err)
	}
	if _, err := w.Write(data); err != nil {
		return nil, fmt.Errorf("compression failed: %w", err)
	}
	if err := w.Close(); err != nil {
		return nil, fmt.Errorf("compression failed: %w", err)
	}
	return out.Bytes(), c.keep(path, out.Bytes())
}

// keep writes through a temporary name, so that two builds at once never read half a file.
func (c cache) keep(path string, data []byte) error {
	if err := os.MkdirAll(c.folder, 0o755); err != nil {
		return fmt.Errorf("the folder for compressed files cannot be made: %w", err)
	}
	f, err := os.CreateTemp(c.folder, "new-")
	if err != nil {
		return fmt.Errorf("a compressed file cannot be kept: %w", err)
	}
	_, err = f.Write(data)
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		os.Remove(f.Name())
		return fmt.Errorf("a compressed file cannot be kept: %w", err)
	}
	return nil
}

// prune removes the oldest results. It is housekeeping only, so it does not report failures.
func (c cache) prune() {
	entries, err := os.ReadDir(c.folder)
	if err != nil || len(entries) <= kept {
		return
	}
	age := func(i int) int64 {
		info, err := entries[i].Info()
		if err != nil {
			return 0
		}
		return info.ModTime().UnixNano()
	}
	sort.Slice(entries, func(i, j int) bool { return age(i) > age(j) })
	for _, e := range entries[kept:] {
		os.Remove(filepath.Join(c.folder, e.Name()))
	}
}
