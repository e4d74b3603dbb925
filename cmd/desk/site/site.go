// Package site turns the sources of the app into the files that a browser loads, and serves them.
package site

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"sort"
)

// File is one file of the site with its compressed forms.
type File struct {
	Name   string // slash-separated, relative to the site's root
	Type   string // what Content-Type says
	Hash   string // the first twelve hexadecimal digits of the content's SHA-256
	Hashed bool   // the name holds the hash, so the content under this name never changes
	Data   []byte
	Brotli []byte // nil where compression does not pay
	Gzip   []byte // nil where compression does not pay
}

// Site is the finished app: static files whose references to each other are all relative.
type Site struct {
	Files map[string]File
}

// Page is the name of the file that a browser opens first.
const Page = "index.html"

// Sizes returns the sum of all files as they are, and as sent with brotli and with gzip.
func (s *Site) Sizes() (raw, brotli, gzip int) {
	for _, f := range s.Files {
		raw += len(f.Data)
		brotli += smaller(f.Data, f.Brotli)
		gzip += smaller(f.Data, f.Gzip)
	}
	return raw, brotli, gzip
}

func smaller(data, compressed []byte) int {
	if compressed == nil {
		return len(data)
	}
	return len(compressed)
}

// hashedName matches the names that only this package gives.
var hashedName = regexp.MustCompile(`^[A-Za-z0-9_-]+\.[0-9a-f]{12}\.(wasm|js|css)(\.br|\.gz)?$`)

// Write puts the files into folder, each compressed form beside its file. Files of an earlier build
// whose names hold a hash are removed; anything else in the folder is left alone.
func (s *Site) Write(folder string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("the folder for the site cannot be made: %w", err)
	}
	if err := s.removeStale(folder); err != nil {
		return err
	}
	names := make([]string, 0, len(s.Files))
	for name := range s.Files {
		if name != Page && name != workerName {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	// The page, and the worker that lists it too, go last, so that they never refer to a file that is
	// not there yet.
	for _, name := range append(names, Page, workerName) {
		f, ok := s.Files[name]
		if !ok {
			continue
		}
		for suffix, data := range map[string][]byte{"": f.Data, ".br": f.Brotli, ".gz": f.Gzip} {
			if data == nil {
				continue
			}
			path := filepath.Join(folder, filepath.FromSlash(name)+suffix)
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				return fmt.Errorf("a folder of the site cannot be made: %w", err)
			}
			if err := os.WriteFile(path, data, 0o644); err != nil {
				return fmt.Errorf("a file of the site cannot be written: %w", err)
			}
		}
	}
	return nil
}

func (s *Site) removeStale(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fmt.Errorf("the folder for the site cannot be read: %w", err)
	}
	for _, e := range entries {
		if e.IsDir() || !hashedName.MatchString(e.Name()) {
			continue
		}
		if err := os.Remove(filepath.Join(folder, e.Name())); err != nil {
			return fmt.Errorf("a file of an earlier build cannot be removed: %w", err)
		}
	}
	return nil
}
