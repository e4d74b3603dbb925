package site

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"

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

// compressed is data in a form of how.
func compressed(data []byte, how method) ([]byte, error) {
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
	return out.Bytes(), nil
}
