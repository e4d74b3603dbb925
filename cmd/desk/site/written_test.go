package site

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The app is built without text/template, which Ebiten's own sources import.
func TestTheAppHasNoTemplates(t *testing.T) {
	root, err := FindRoot()
	if err != nil {
		t.Fatal(err)
	}
	arguments, err := withWrittenShaders(t.Context(), root, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	packages := func(arguments ...string) []string {
		list := exec.Command("go", append(append([]string{"list", "-deps"}, arguments...), "./cmd/partialcredit")...)
		list.Dir, list.Env = root, append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		return strings.Fields(string(out))
	}
	if with := packages(); !slices.Contains(with, "text/template") {
		t.Error("Ebiten has no need of text/template any more: cmd/desk/site/written.go can go")
	}
	if without := packages(arguments...); slices.Contains(without, "text/template") || !slices.Contains(without, ebitenModule+"/internal/builtinshader") {
		t.Error("the app is built with text/template, or without Ebiten's shaders")
	}
}

// What is filled in are shaders: of each choice the one that Ebiten's template describes, told by the
// functions of the shading language that it calls.
func TestShadersAreFilledIn(t *testing.T) {
	root, err := FindRoot()
	if err != nil {
		t.Fatal(err)
	}
	dir, err := moduleDir(t.Context(), root)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range templated {
		source, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(p), "shader.go"))
		if err != nil {
			t.Fatal(err)
		}
		written, err := writeOut(source)
		if err != nil {
			t.Fatalf("%s: %v", p, err)
		}
		for what, want := range map[string]int{
			"{{": 0, "func Fragment(dstPos": 9, "mod(p - origin": 3, "imageSrc0UnsafeAt(src0Pos)": 1, "imageSrc0UnsafeAt(p0)": 2,
			"imageSrc0At(p0)": 4, "dfdx(src0Pos.x)": 3, "rate := fract(p1)": 3, "text/template": 0,
		} {
			if got := strings.Count(string(written), what); got != want {
				t.Errorf("%s: %q stands there %d times, want %d", p, what, got, want)
			}
		}
	}
	if _, err := writeOut([]byte("package builtinshader\n")); err == nil {
		t.Error("a source without a template is taken")
	}
}
