package site

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"text/template"
)

// Ebiten makes the sources of its shaders with text/template while it runs. That package finds methods
// by their names, for which the linker must keep every exported method of every type: a tenth of the
// app. So the app is built with a copy of Ebiten in which the two packages hold what their templates
// give, filled in here, with the same template package.
const ebitenModule = "github.com/hajimehoshi/ebiten/v2"

// templated are the packages, below the module.
var templated = []string{"internal/builtinshader", "internal/colormshader"}

// filterNames and addressNames are the choices that both packages know, in the order of their constants.
var filterNames, addressNames = []string{"Nearest", "Linear", "Pixelated"}, []string{"Unsafe", "ClampToZero", "Repeat"}

// withWrittenShaders makes the copy below the root, where it stays, and returns the arguments of go
// build that use it.
func withWrittenShaders(ctx context.Context, root, temporary string) ([]string, error) {
	dir, err := moduleDir(ctx, root)
	if err != nil {
		return nil, err
	}
	written := map[string][]byte{}
	sum := sha256.New()
	for _, p := range templated {
		file := filepath.Join(filepath.FromSlash(p), "shader.go")
		source, err := os.ReadFile(filepath.Join(dir, file))
		if err != nil {
			return nil, err
		}
		if written[file], err = writeOut(source); err != nil {
			return nil, fmt.Errorf("%s of Ebiten is not as it was: %w; see cmd/desk/site/written.go", file, err)
		}
		sum.Write(written[file])
	}
	// The path stands in the build information of the app: it is the same for the same content.
	name := filepath.Join(".build", fmt.Sprintf("ebiten-%s-%x", strings.TrimPrefix(filepath.Base(dir), "v2@"), sum.Sum(nil)[:6]))
	if err := copyOnce(filepath.Join(root, name), dir, written); err != nil {
		return nil, fmt.Errorf("a copy of Ebiten for the build: %w", err)
	}
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		return nil, err
	}
	mod = fmt.Appendf(mod, "\nreplace %s => ./%s\n", ebitenModule, filepath.ToSlash(name))
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		return nil, err
	}
	alternative := filepath.Join(temporary, "go.mod")
	for file, data := range map[string][]byte{alternative: mod, filepath.Join(temporary, "go.sum"): sums} {
		if err := os.WriteFile(file, data, 0o644); err != nil {
			return nil, err
		}
	}
	return []string{"-modfile=" + alternative}, nil
}

// moduleDir is where Ebiten's sources are, which are downloaded where they are missing.
func moduleDir(ctx context.Context, root string) (string, error) {
	download := exec.CommandContext(ctx, "go", "mod", "download", "-json", ebitenModule)
	download.Dir = root
	out, err := download.Output()
	var module struct{ Dir, Error string }
	if json.Unmarshal(out, &module) != nil || module.Dir == "" {
		return "", fmt.Errorf("Ebiten's sources cannot be had: %s %w", module.Error, err)
	}
	return module.Dir, nil
}

// writeOut puts what the template of a shader package gives in its place.
func writeOut(source []byte) ([]byte, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "shader.go", source, 0)
	if err != nil {
		return nil, err
	}
	var text string
	var cuts [][2]int // what is left out
	at := func(p token.Pos) int { return files.Position(p).Offset }
	cut := func(n ast.Node) { cuts = append(cuts, [2]int{at(n.Pos()), at(n.End())}) }
	var body [2]int
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.GenDecl:
			if d.Tok == token.IMPORT {
				cut(d)
			}
			if len(d.Specs) != 1 {
				continue
			}
			if v, ok := d.Specs[0].(*ast.ValueSpec); ok && v.Names[0].Name == "tmpl" {
				ast.Inspect(v, func(n ast.Node) bool {
					if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING && strings.HasPrefix(l.Value, "`") {
						text, _ = strconv.Unquote(l.Value)
					}
					return true
				})
				cut(d)
			}
		case *ast.FuncDecl:
			if d.Name.Name == "ShaderSource" {
				body = [2]int{at(d.Body.Pos()), at(d.Body.End())}
			}
		}
	}
	// The mutex and the slice that held what was made go with the template.
	if text == "" || body == [2]int{} || len(cuts) != 2 || !bytes.Contains(source, []byte("shadersM sync.Mutex")) {
		return nil, fmt.Errorf("its template or the function that fills it in was not found")
	}
	filled, err := fillIn(text)
	if err != nil {
		return nil, err
	}
	var out strings.Builder
	out.Write(source[:cuts[0][0]])
	out.WriteString("import \"sync\"")
	out.Write(source[cuts[0][1]:cuts[1][0]])
	out.WriteString("var written = [FilterCount][AddressCount]string{\n" + filled + "}\n")
	out.Write(source[cuts[1][1]:body[0]])
	out.WriteString("{\n\tshadersM.Lock()\n\tdefer shadersM.Unlock()\n\tif shaders[filter][address] == nil {\n" +
		"\t\tshaders[filter][address] = []byte(written[filter][address])\n\t}\n\treturn shaders[filter][address]\n}")
	out.Write(source[body[1]:])
	return format.Source([]byte(out.String()))
}

// fillIn fills the template in for every filter and address, as lines of Go.
func fillIn(text string) (string, error) {
	t, err := template.New("shader").Option("missingkey=error").Parse(text)
	if err != nil {
		return "", err
	}
	values := map[string]int{}
	for i, n := range filterNames {
		values["Filter"+n] = i
	}
	for i, n := range addressNames {
		values["Address"+n] = i
	}
	var out strings.Builder
	for f := range filterNames {
		out.WriteString("\t{\n")
		for a := range addressNames {
			values["Filter"], values["Address"] = f, a
			var shader strings.Builder
			if err := t.Execute(&shader, values); err != nil {
				return "", err
			}
			fmt.Fprintf(&out, "\t\t%q,\n", shader.String())
		}
		out.WriteString("\t},\n")
	}
	return out.String(), nil
}

// copyOnce copies a module to a folder, unless it is there, with other content for some of the files.
// Its tests, examples and hidden files are left out.
func copyOnce(to, from string, other map[string][]byte) error {
	if _, err := os.Stat(to); err == nil {
		return nil
	}
	if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
		return err
	}
	draft, err := os.MkdirTemp(filepath.Dir(to), "copy-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(draft)
	err = filepath.WalkDir(from, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		if d.IsDir() {
			if base := d.Name(); name != "." && (strings.HasPrefix(base, ".") || base == "testdata" || name == "examples" || name == "skills") {
				return filepath.SkipDir
			}
			return os.MkdirAll(filepath.Join(draft, name), 0o755)
		}
		if strings.HasSuffix(name, "_test.go") {
			return nil
		}
		data, changed := other[name]
		if !changed {
			if data, err = os.ReadFile(path); err != nil {
				return err
			}
		}
		return os.WriteFile(filepath.Join(draft, name), data, 0o644)
	})
	if err != nil {
		return err
	}
	if err := os.Chmod(draft, 0o755); err != nil {
		return err
	}
	if err := os.Rename(draft, to); err != nil {
		if _, there := os.Stat(to); there == nil {
			return nil // another build was faster
		}
		return err
	}
	return nil
}
