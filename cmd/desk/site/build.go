package site

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
)

// Options says what to build and how hard to compress it.
type Options struct {
	Root   string // the folder with go.mod
	Brotli int    // SmallestBrotli or FastBrotli

	Developing bool // a reload shows what was changed, instead of what the device has kept
}

// Build compiles the app and returns the whole site. The error is a *CompileError when the
// compiler refused the sources.
func Build(ctx context.Context, o Options) (*Site, error) {
	contents, err := readWeb(filepath.Join(o.Root, "web"))
	if err != nil {
		return nil, err
	}
	if err := compileAll(ctx, o.Root, contents); err != nil {
		return nil, err
	}
	files, err := nameFiles(contents)
	if err != nil {
		return nil, err
	}
	if err := fillWorker(files, o.Developing); err != nil {
		return nil, err
	}
	if err := compressAll(files, cache{folder: filepath.Join(o.Root, ".build", "compressed")}, o.Brotli); err != nil {
		return nil, err
	}
	return &Site{Files: files}, nil
}

// compileAll adds the programs to the contents: all at once, for linking keeps a single processor busy.
func compileAll(ctx context.Context, root string, contents map[string][]byte) error {
	parts := []struct {
		name    string
		compile func(context.Context, string) ([]byte, error)
		done    []byte
		err     error
	}{
		{name: appName, compile: compileApp},
		{name: engineName, compile: compileEngine},
		{name: scannerName, compile: compileScanner},
		{name: startName, compile: readStartScript},
	}
	var wait sync.WaitGroup
	for i := range parts {
		p := &parts[i]
		wait.Go(func() { p.done, p.err = p.compile(ctx, root) })
	}
	wait.Wait()
	for _, p := range parts {
		if p.err != nil {
			return p.err
		}
		contents[p.name] = p.done
	}
	return nil
}

// readWeb returns the content of every file below folder; names that start with a dot are left out.
func readWeb(folder string) (map[string][]byte, error) {
	contents := map[string][]byte{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".") {
			return err
		}
		name, err := filepath.Rel(folder, path)
		if err != nil {
			return err
		}
		contents[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("the page's files cannot be read: %w", err)
	}
	return contents, nil
}

// compressAll fills in the compressed forms, as many files at once as there are processors.
func compressAll(files map[string]File, c cache, quality int) error {
	var (
		wait  sync.WaitGroup
		lock  sync.Mutex
		first error
		slots = make(chan struct{}, runtime.NumCPU())
	)
	each := func(name string, data []byte, how method, put func(*File, []byte)) {
		wait.Go(func() {
			slots <- struct{}{}
			defer func() { <-slots }()
			small, err := c.compress(data, how)
			lock.Lock()
			defer lock.Unlock()
			if err != nil && first == nil {
				first = err
			}
			if len(small) < len(data) {
				f := files[name]
				put(&f, small)
				files[name] = f
			}
		})
	}
	// The goroutines write to files, so the loop must not read it any more.
	var todo []File
	for _, f := range files {
		if kindOf(f.Name).compress {
			todo = append(todo, f)
		}
	}
	for _, f := range todo {
		each(f.Name, f.Data, brotliMethod(quality), func(f *File, b []byte) { f.Brotli = b })
		each(f.Name, f.Data, gzipMethod(quality), func(f *File, b []byte) { f.Gzip = b })
	}
	wait.Wait()
	c.prune()
	return first
}
