package site

import (
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// realWorker is the page's own worker.
func realWorker(t *testing.T) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "..", "web", workerName))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// filled returns the worker of a small site, its list of files and its build id.
func filled(t *testing.T, boot string, developing bool) (text string, list map[string]string, id string, files map[string]File) {
	t.Helper()
	files, err := nameFiles(map[string][]byte{
		Page: []byte(testPage), appName: testApp, engineName: []byte("engine"), scannerName: []byte("scanner"), startName: []byte("start"),
		"boot.js": []byte(boot), "icon.svg": []byte("<svg/>"), "icons/192.png": []byte("png"), workerName: realWorker(t),
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := fillWorker(files, developing); err != nil {
		t.Fatal(err)
	}
	text = string(files[workerName].Data)
	found := regexp.MustCompile(`(?s)const build = '([0-9a-f]{12})';.*const files = (\{.*?\});`).FindStringSubmatch(text)
	if found == nil {
		t.Fatalf("the worker has no build or no list:\n%s", text)
	}
	if err := json.Unmarshal([]byte(found[2]), &list); err != nil {
		t.Fatal(err)
	}
	return text, list, found[1], files
}

func TestWorkerListsEveryFile(t *testing.T) {
	text, list, _, files := filled(t, "boot", false)
	for name, f := range files {
		integrity, listed := list[name]
		if want := name != workerName && name != "icons/192.png" && !strings.HasPrefix(name, "scanner."); listed != want {
			t.Errorf("%s is in the list: %v, want %v", name, listed, want)
		}
		sum := sha256.Sum256(f.Data)
		if listed && integrity != "sha256-"+base64.StdEncoding.EncodeToString(sum[:]) {
			t.Errorf("%s has the integrity %s", name, integrity)
		}
	}
	if len(list) != len(files)-3 {
		t.Errorf("%d names in the list for %d files", len(list), len(files))
	}
	if later := regexp.MustCompile(`(?s)const later = (\{.*?\});`).FindString(text); strings.Count(later, "sha256-") != 1 || !strings.Contains(later, `"scanner.`) {
		t.Errorf("kept later is %s, want the scanner alone", later)
	}
	if !strings.Contains(text, developingMark) {
		t.Error("the worker of a site to publish is one for developing")
	}
	if text, _, _, _ := filled(t, "boot", true); strings.Contains(text, developingMark) {
		t.Error("the worker for developing is one of a site to publish")
	}
}

func TestBuildIDFollowsEveryFile(t *testing.T) {
	_, _, one, _ := filled(t, "one", false)
	_, _, same, _ := filled(t, "one", false)
	_, _, other, _ := filled(t, "other", false)
	if one != same || one == other {
		t.Errorf("ids %s and %s for the same files, %s for others", one, same, other)
	}
}

func TestWorkerMustHaveItsPlaces(t *testing.T) {
	for _, mark := range []string{buildMark, filesMark, laterMark, developingMark} {
		cut := strings.ReplaceAll(string(realWorker(t)), mark, "")
		err := fillWorker(map[string]File{workerName: newFile(workerName, []byte(cut))}, false)
		if err == nil || !strings.Contains(err.Error(), mark) {
			t.Errorf("without %s: error %v, want one that names it", mark, err)
		}
	}
	if err := fillWorker(map[string]File{}, false); err == nil {
		t.Error("a site without a worker was accepted")
	}
}
