package site

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"sort"
)

// cache keeps compressed results under the hash of what was compressed.
type cache struct{ folder string }

// kept is how many results prune leaves: a dozen builds or so.
const kept = 96

func (c cache) compress(data []byte, how method) ([]byte, error) {
	sum := sha256.Sum256(data)
	name := hex.EncodeToString(sum[:]) + "." + how.name
	if found, err := os.ReadFile(filepath.Join(c.folder, name)); err == nil {
		if small, ok := unsealed(name, found); ok {
			return small, nil
		}
	}
	small, err := compressed(data, how)
	if err != nil {
		return nil, err
	}
	return small, c.keep(name, small)
}

// seal is a checksum of a result and of the name under which it is kept, so that what is damaged,
// half written or put there by something else is made anew.
func seal(name string, data []byte) []byte {
	sum := sha256.New()
	sum.Write([]byte(name))
	sum.Write(data)
	return sum.Sum(nil)
}

// unsealed takes the seal off the end of a kept file.
func unsealed(name string, file []byte) (data []byte, ok bool) {
	if len(file) < sha256.Size {
		return nil, false
	}
	data, end := file[:len(file)-sha256.Size], file[len(file)-sha256.Size:]
	return data, string(end) == string(seal(name, data))
}

// keep writes through a temporary name, so that two builds at once never read half a file.
func (c cache) keep(name string, data []byte) error {
	if err := os.MkdirAll(c.folder, 0o755); err != nil {
		return fmt.Errorf("the folder for compressed files cannot be made: %w", err)
	}
	f, err := os.CreateTemp(c.folder, "new-")
	if err != nil {
		return fmt.Errorf("a compressed file cannot be kept: %w", err)
	}
	_, err = f.Write(append(data[:len(data):len(data)], seal(name, data)...))
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		err = os.Rename(f.Name(), filepath.Join(c.folder, name))
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
