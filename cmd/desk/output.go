package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// open opens what is to be read: a file, or what is piped in where its name is -.
func (d *desk) open(name string) (io.ReadCloser, error) {
	if name == "-" {
		return io.NopCloser(d.in), nil
	}
	f, err := os.Open(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s cannot be read: there is no such file. Check its name and folder", name)
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %w", name, err)
	}
	if info, err := f.Stat(); err == nil && info.IsDir() {
		f.Close()
		return nil, fmt.Errorf("%s cannot be read: it is a folder. Name a file in it", name)
	}
	return f, nil
}

// read reads all of what open opens, and refuses more than most bytes.
func (d *desk) read(name string, most int64) ([]byte, error) {
	f, err := d.open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %w", called(name), err)
	case int64(len(data)) > most:
		return nil, fmt.Errorf("%s is larger than %d bytes, the most that is read here. Check that it is the right file", called(name), most)
	}
	return data, nil
}

// called is what an input is called in a sentence.
func called(name string) string {
	if name == "-" {
		return "what is piped in"
	}
	return name
}

// free says early, before long work, whether a file may be written under this name.
func (d *desk) free(name string, force bool) error {
	if name == "-" || force {
		return nil
	}
	if info, err := os.Stat(name); err == nil && info.Mode().IsRegular() {
		return fmt.Errorf("%s exists already, so nothing was written. Choose another name, or add -force to replace it", name)
	}
	return nil
}

// create has a file written: all of it or, where write fails, none. The name - is the output of
// the desk. A file that exists stays as it is unless force.
func (d *desk) create(name string, force bool, write func(io.Writer) error) error {
	if err := d.free(name, force); err != nil {
		return err
	}
	if name == "-" {
		return buffered(d.out, write)
	}
	info, err := os.Stat(name)
	if err == nil && info.IsDir() {
		return fmt.Errorf("%s cannot be written: it is a folder. Name a file in it", name)
	}
	if err == nil && !info.Mode().IsRegular() { // a pipe, a device: there is nothing to replace
		f, err := os.OpenFile(name, os.O_WRONLY, 0)
		if err != nil {
			return fmt.Errorf("%s cannot be written: %w", name, err)
		}
		return errors.Join(buffered(f, write), f.Close())
	}
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real // replace what a link leads to, not the link
	}
	f, err := besides(name)
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, err)
	}
	defer os.Remove(f.Name()) // has gone already where all went well
	if info != nil {
		f.Chmod(info.Mode().Perm())
	}
	if err := errors.Join(buffered(f, write), f.Close()); err != nil {
		return err
	}
	if err := d.free(name, force); err != nil { // someone else may have written it meanwhile
		return err
	}
	if err := os.Rename(f.Name(), name); err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, err)
	}
	return nil
}

// besides opens a new file next to the one that it will become.
func besides(name string) (*os.File, error) {
	for i := 0; ; i++ {
		part := filepath.Join(filepath.Dir(name), fmt.Sprintf(".%s.%d-%d.part", filepath.Base(name), os.Getpid(), i))
		f, err := os.OpenFile(part, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) || i == 100 {
			return f, err
		}
	}
}

func buffered(w io.Writer, write func(io.Writer) error) error {
	b := bufio.NewWriter(w)
	if err := write(b); err != nil {
		return err
	}
	if err := b.Flush(); err != nil {
		return fmt.Errorf("not everything could be written: %w", err)
	}
	return nil
}
