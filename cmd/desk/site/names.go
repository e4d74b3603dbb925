package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path"
	"strings"
)

// sizeMark is the attribute of index.html that receives the raw size of the app. A browser cannot
// know it: Content-Length is the compressed size, while the bytes it counts are decompressed.
const sizeMark = `data-bytes="0"`

// nameFiles puts the content's hash into the name of every script, style sheet and WebAssembly
// module that index.html names in quotes, and changes index.html to match. Any other file keeps its
// name: something else refers to it.
func nameFiles(contents map[string][]byte) (map[string]File, error) {
	page, ok := contents[Page]
	if !ok {
		return nil, fmt.Errorf("web/%s is missing", Page)
	}
	for _, needed := range []string{`"` + appName + `"`, `"` + engineName + `"`, `"` + scannerName + `"`, `"` + startName + `"`, sizeMark} {
		if !bytes.Contains(page, []byte(needed)) {
			return nil, fmt.Errorf("web/%s does not contain %s", Page, needed)
		}
	}
	page = bytes.ReplaceAll(page, []byte(sizeMark), fmt.Appendf(nil, `data-bytes="%d"`, len(contents[appName])))
	files := map[string]File{}
	for name, data := range contents {
		if name == Page {
			continue
		}
		f := newFile(name, data)
		quoted := []byte(`"` + name + `"`)
		if hashable(name) && bytes.Contains(page, quoted) {
			f.Name = withHash(name, f.Hash)
			f.Hashed = true
			page = bytes.ReplaceAll(page, quoted, []byte(`"`+f.Name+`"`))
		}
		files[f.Name] = f
	}
	files[Page] = newFile(Page, page)
	return files, nil
}

func newFile(name string, data []byte) File {
	sum := sha256.Sum256(data)
	return File{Name: name, Type: kindOf(name).contentType, Hash: hex.EncodeToString(sum[:6]), Data: data}
}

func hashable(name string) bool {
	switch path.Ext(name) {
	case ".js", ".css", ".wasm":
		return true
	}
	return false
}

func withHash(name, hash string) string {
	ext := path.Ext(name)
	return strings.TrimSuffix(name, ext) + "." + hash + ext
}
