package site

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
	"sync"
)

// Fresh builds the site again when its sources have changed since the last build.
type Fresh struct {
	root  string
	build func(context.Context) (*Site, error)

	mu    sync.Mutex
	stamp string
	site  *Site
	err   error
}

// NewFresh watches the sources below root for the site that build makes. Nothing is built yet.
func NewFresh(root string, build func(context.Context) (*Site, error)) *Fresh {
	return &Fresh{root: root, build: build}
}

// Site is a Source: it builds when the page is asked for and a source has changed. A failure is
// returned again, without another build, until the sources change.
func (f *Fresh) Site(ctx context.Context, page bool) (*Site, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	if !page && f.site != nil {
		return f.site, nil
	}
	stamp, err := sourceStamp(f.root)
	if err != nil {
		return nil, err
	}
	if stamp == f.stamp {
		return f.site, f.err
	}
	// A browser that gives up waiting must not leave a half-made build behind as the result.
	built, err := f.build(context.WithoutCancel(ctx))
	f.stamp, f.err = stamp, err
	if err != nil {
		return nil, err
	}
	f.site = built
	return built, nil
}

// sourceStamp changes whenever a file that can take part in the build is added, removed or written.
func sourceStamp(root string) (string, error) {
	sum := sha256.New()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		// Editors write short-lived files beside the sources: one that vanished meanwhile does not matter.
		if errors.Is(err, fs.ErrNotExist) && path != root {
			return nil
		}
		if err != nil {
			return err
		}
		name := d.Name()
		if path != root && (strings.HasPrefix(name, ".") || name == "testdata") {
			if d.IsDir() {
				return filepath.SkipDir
			}
			return nil
		}
		if d.IsDir() || strings.HasSuffix(name, "_test.go") || strings.HasSuffix(name, ".md") {
			return nil
		}
		info, err := d.Info()
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil {
			return err
		}
		fmt.Fprintf(sum, "%s %d %d\n", path, info.Size(), info.ModTime().UnixNano())
		return nil
	})
	if err != nil {
		return "", fmt.Errorf("the sources cannot be looked through: %w", err)
	}
	return fmt.Sprintf("%x", sum.Sum(nil)), nil
}
