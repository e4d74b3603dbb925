package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// workerName is the service worker. It must lie at the site's root, under the same name for ever.
const workerName = "sw.js"

// iconFolder holds pictures for the system that installs the app; the page itself has no use for them.
const iconFolder = "icons/"

// laterPrefix begins the names of what reads QR codes. Most visitors never need it: it is kept once it
// has been used.
const laterPrefix = "scanner."

// The places of the service worker that the build fills in.
const (
	buildMark      = "const build = '';"
	filesMark      = "const files = {};"
	laterMark      = "const later = {};"
	developingMark = "const developing = false;"
)

// fillWorker tells the service worker which files to keep, each with its integrity as a browser checks
// it (W3C Subresource Integrity), and a build id that changes when any of them or the worker does.
func fillWorker(files map[string]File, developing bool) error {
	worker, ok := files[workerName]
	if !ok || worker.Hashed {
		return fmt.Errorf("web/%s is missing, or %s names it in quotes", workerName, Page)
	}
	for _, mark := range []string{buildMark, filesMark, laterMark, developingMark} {
		if bytes.Count(worker.Data, []byte(mark)) != 1 {
			return fmt.Errorf("web/%s does not contain %q once", workerName, mark)
		}
	}
	integrity, later := map[string]string{}, map[string]string{}
	id := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		fmt.Fprintf(id, "%s %s\n", name, files[name].Hash)
		if name != workerName && !strings.HasPrefix(name, iconFolder) {
			sum := sha256.Sum256(files[name].Data)
			list := integrity
			if strings.HasPrefix(name, laterPrefix) {
				list = later
			}
			list[name] = "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
		}
	}
	lists := [2][]byte{}
	for i, names := range []map[string]string{integrity, later} {
		var err error
		if lists[i], err = json.MarshalIndent(names, "", "  "); err != nil {
			return fmt.Errorf("the list of files cannot be written: %w", err)
		}
	}
	text := strings.NewReplacer(
		buildMark, fmt.Sprintf("const build = '%s';", hex.EncodeToString(id.Sum(nil)[:6])),
		filesMark, fmt.Sprintf("const files = %s;", lists[0]),
		laterMark, fmt.Sprintf("const later = %s;", lists[1]),
		developingMark, fmt.Sprintf("const developing = %v;", developing),
	).Replace(string(worker.Data))
	files[workerName] = newFile(workerName, []byte(text))
	return nil
}
