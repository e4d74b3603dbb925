package words

import (
	"os"
	"regexp"
	"testing"
)

// The page says what it says before the app runs out of a table of its own, in
// web/words.js: complete and used too.
func TestGermanOfThePage(t *testing.T) {
	read := func(name string) string {
		data, err := os.ReadFile("../../web/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	has := map[string]string{}
	for _, m := range regexp.MustCompile(`\n    '([^']+)':\s+'([^']+)'`).FindAllStringSubmatch(read("words.js"), -1) {
		has[m[1]] = m[2]
	}
	said := map[string]bool{}
	for _, sayer := range []struct{ file, pattern string }{
		{"boot.js", `\bsay\(\s*'([^']+)'`},
		{"index.html", `data-words>([^<]+)<`},
		{"index.html", `aria-label="([^"]+)" data-words-label`},
		{"index.html", `<p id="[^"]*" data-words>([^<]+)<`},
		{"index.html", `name="description" content="([^"]+)"`},
	} {
		found := regexp.MustCompile(sayer.pattern).FindAllStringSubmatch(read(sayer.file), -1)
		if len(found) == 0 {
			t.Errorf("nothing in %s is said as in %s", sayer.file, sayer.pattern)
		}
		for _, m := range found {
			said[m[1]] = true
			if has[m[1]] == "" {
				t.Errorf("%s: no German for %q", sayer.file, m[1])
			}
		}
	}
	value := regexp.MustCompile(`%\d`)
	for english, german := range has {
		if !said[english] {
			t.Errorf("words.js: nobody says %q", english)
		}
		if english == german || len(value.FindAllString(english, -1)) != len(value.FindAllString(german, -1)) {
			t.Errorf("words.js: %q is %q in German", english, german)
		}
	}
	// What is put on the page without being said.
	for _, file := range []string{"boot.js", "engine.js", "audio.js", "canvas.js", "files.js"} {
		if m := regexp.MustCompile(`(?:textContent|showProblem\(\[?)\s*=?\s*'[^']`).FindString(read(file)); m != "" {
			t.Errorf("%s shows %q in English only", file, m)
		}
	}
}
