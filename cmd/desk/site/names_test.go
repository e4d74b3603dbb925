package site

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
)

func TestNamesInThePage(t *testing.T) {
	s := testSite(t)
	page := string(s.Files[Page].Data)
	want := fmt.Sprintf(`<script src="%s" data-app="%s" data-bytes="%d"></script><script src="%s" data-engine="%s" data-scanner="%s"></script>`,
		nameOf(t, s, "boot", ".js"), nameOf(t, s, "app", ".wasm"), len(testApp), nameOf(t, s, "wasm_exec", ".js"), nameOf(t, s, "engine", ".wasm"), nameOf(t, s, "scanner", ".wasm"))
	if page != want {
		t.Errorf("page:\n%s\nwant:\n%s", page, want)
	}
	for _, name := range []string{"boot.js", "app.wasm", "engine.wasm", "scanner.wasm", "wasm_exec.js"} {
		if _, ok := s.Files[name]; ok {
			t.Errorf("%s is still there under its own name", name)
		}
	}
	if f, ok := s.Files["sw.js"]; !ok || f.Hashed {
		t.Errorf("sw.js is not named by the page, so it must keep its name")
	}
}

func TestHashFollowsContent(t *testing.T) {
	name := func(app string) string {
		files, err := nameFiles(map[string][]byte{Page: []byte(testPage), appName: []byte(app), engineName: nil, scannerName: nil, startName: nil})
		if err != nil {
			t.Fatal(err)
		}
		return nameOf(t, &Site{Files: files}, "app", ".wasm")
	}
	if name("one") != name("one") || name("one") == name("two") {
		t.Errorf("names %s, %s, %s: want the same for the same content only", name("one"), name("one"), name("two"))
	}
}

func TestPageMustNameTheApp(t *testing.T) {
	for _, cut := range []string{`"app.wasm"`, `"engine.wasm"`, `"scanner.wasm"`, `"wasm_exec.js"`, `data-bytes="0"`} {
		_, err := nameFiles(map[string][]byte{Page: []byte(strings.ReplaceAll(testPage, cut, "")), appName: nil, engineName: nil, scannerName: nil, startName: nil})
		if err == nil || !strings.Contains(err.Error(), cut) {
			t.Errorf("without %s: error %v, want one that names it", cut, err)
		}
	}
	if _, err := nameFiles(map[string][]byte{appName: nil}); err == nil {
		t.Error("a site without a page was accepted")
	}
}

func TestCompressedFormsOnlyWhereTheyPay(t *testing.T) {
	s := testSite(t)
	if f := s.Files["tiny.txt"]; f.Brotli != nil || f.Gzip != nil {
		t.Error("a file of one byte was made larger by compression")
	}
	for _, name := range slices.Sorted(maps.Keys(s.Files)) {
		f := s.Files[name]
		if name == "tiny.txt" || name == Page {
			continue
		}
		if f.Brotli == nil || f.Gzip == nil {
			t.Errorf("%s has no compressed form", name)
		}
	}
}
