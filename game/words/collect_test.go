package words

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/take"
	"partialcredit/synth/wav"
)

// sayers are the functions and methods, by name, that are given English to be
// said, and which of their arguments it is. It must stand in the call, or in
// a constant or a variable of a package, of which every text is taken; what is
// handed on in another variable is found where it was given to another sayer.
var sayers = map[string][]int{"Say": {0}, "say": {0}, "t": {0}, "Tell": {0}, "more": {2, 3}}

// spoken finds every text that the code says, and where. It reads the files
// for every system, not only for this one.
func spoken(t *testing.T) map[string]string {
	code := token.NewFileSet()
	var files []*ast.File
	for _, root := range []string{"..", "../../cmd/partialcredit"} {
		walk(t, root, ".go", func(path string, data []byte) {
			if strings.HasSuffix(path, "_test.go") || filepath.Dir(path) == filepath.Join("..", "words") {
				return
			}
			file, err := parser.ParseFile(code, filepath.ToSlash(path), data, 0)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, file)
		})
	}
	named := map[string][]string{}
	for _, file := range files {
		for _, d := range file.Decls {
			declared(d, func(name string, values []string) { named[file.Name.Name+"."+name] = values })
		}
	}
	found := map[string]string{}
	for _, file := range files {
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			for _, i := range sayers[called(call)] {
				if i >= len(call.Args) {
					continue
				}
				said := named[name(call.Args[i], file.Name.Name)]
				if text, ok := literal(call.Args[i]); ok {
					said = []string{text}
				}
				for _, text := range said {
					at := code.Position(call.Pos())
					found[text] = at.Filename + ":" + strconv.Itoa(at.Line)
				}
			}
			return true
		})
	}
	delete(found, "")
	return found
}

// called is the name of the function or method that is called.
func called(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// literal is the text of literals, joined or not.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			s, err := strconv.Unquote(e.Value)
			return s, err == nil
		}
	case *ast.ParenExpr:
		return literal(e.X)
	case *ast.BinaryExpr:
		a, okA := literal(e.X)
		b, okB := literal(e.Y)
		return a + b, okA && okB && e.Op == token.ADD
	}
	return "", false
}

// name is that of the constant or variable that a text is taken from, with its
// package: "game.howTo" for howTo, "game.parts" for parts[i].name.
func name(e ast.Expr, here string) string {
	switch e := e.(type) {
	case *ast.Ident:
		return here + "." + e.Name
	case *ast.IndexExpr:
		return name(e.X, here)
	case *ast.SelectorExpr:
		if _, indexed := e.X.(*ast.IndexExpr); indexed {
			return name(e.X, here)
		}
		if p, ok := e.X.(*ast.Ident); ok {
			return p.Name + "." + e.Sel.Name
		}
	}
	return ""
}

// declared gives the constants and variables of a declaration with the texts
// in them.
func declared(d ast.Decl, f func(name string, values []string)) {
	general, ok := d.(*ast.GenDecl)
	if !ok {
		return
	}
	for _, spec := range general.Specs {
		v, ok := spec.(*ast.ValueSpec)
		if !ok || len(v.Values) != len(v.Names) {
			continue
		}
		for i, value := range v.Values {
			var texts []string
			if text, ok := literal(value); ok {
				texts = []string{text}
			} else if list, ok := value.(*ast.CompositeLit); ok {
				ast.Inspect(list, func(n ast.Node) bool {
					if e, ok := n.(ast.Expr); ok {
						if text, ok := literal(e); ok {
							if _, field := synth.FieldByName(text); !field { // which nobody reads
								texts = append(texts, text)
							}
							return false
						}
					}
					return true
				})
			}
			f(v.Names[i].Name, texts)
		}
	}
}

// texts are the fields of a sheet that people read.
var texts = map[string]bool{"title": true, "task": true, "teach": true, "label": true, "name": true, "cue": true, "why": true, "source": true}

// written finds every text of the course, and in which sheet.
func written(t *testing.T) map[string]string {
	found := map[string]string{}
	walk(t, "../sheet/course", ".json", func(path string, data []byte) {
		var sheet any
		if err := json.Unmarshal(data, &sheet); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		var read func(v any)
		read = func(v any) {
			switch v := v.(type) {
			case []any:
				for _, x := range v {
					read(x)
				}
			case map[string]any:
				for k, x := range v {
					if s, ok := x.(string); ok && texts[k] && s != "" {
						found[s] = filepath.Base(path)
					}
					read(x)
				}
			}
		}
		read(sheet)
	})
	if len(found) == 0 {
		t.Error("the course has no texts")
	}
	return found
}

// handed are the texts that the rules hand on as values.
func handed() map[string]string {
	found := map[string]string{}
	for _, s := range []sheet.Strictness{sheet.Practised, sheet.Beginner} {
		found[s.Whom()] = "sheet.Strictness"
	}
	for _, text := range append(ask.Comparison, ask.Intervals...) {
		found[text] = "ask"
	}
	for _, err := range []error{link.ErrDamaged, link.ErrNewer, link.ErrUnknown, link.ErrLarge} {
		found[err.Error()] = "link"
	}
	for _, err := range []error{wav.ErrNotWAV, wav.ErrCompressed, wav.ErrDamaged, wav.ErrCutOff, wav.ErrChannels, wav.ErrDepth} {
		found[err.Error()] = "wav"
	}
	for _, err := range []error{take.ErrSilence, take.ErrNoise, take.ErrClipped, take.ErrSeveral, take.ErrShort, take.ErrLong, take.ErrRate, take.ErrNumbers} {
		found[err.Error()] = "take"
	}
	return found
}

// refused finds every form in which a room that knows no languages says what is wrong with
// a sheet, a sound or a slip: what is given to fmt.Errorf and errors.New, with %s for
// whatever is put in.
func refused(t *testing.T) map[string]string {
	found := map[string]string{}
	code := token.NewFileSet()
	for _, root := range []string{"../sheet", "../slip", "../../synth/json.go", "../../synth/field.go"} {
		walk(t, root, ".go", func(path string, data []byte) {
			if strings.HasSuffix(path, "_test.go") {
				return
			}
			file, err := parser.ParseFile(code, filepath.ToSlash(path), data, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if call, ok := n.(*ast.CallExpr); ok && (called(call) == "Errorf" || called(call) == "New") && len(call.Args) > 0 {
					if form := formOf(call.Args[0]); form != "%s" {
						found[form] = code.Position(call.Pos()).String()
					}
				}
				return true
			})
		})
	}
	for _, f := range synth.Fields() {
		if f.Unit != synth.NoUnit && len(f.Choices) == 0 {
			found["%s ("+string(f.Unit)+")"] = f.Name
		}
	}
	return found
}

// formOf is a text that is put together, as a form.
func formOf(e ast.Expr) string {
	if text, ok := literal(e); ok {
		return verb.ReplaceAllString(text, "%s")
	}
	if sum, ok := e.(*ast.BinaryExpr); ok && sum.Op == token.ADD {
		return strings.ReplaceAll(formOf(sum.X)+formOf(sum.Y), "%s%s", "%s")
	}
	return "%s"
}

// sounds are the names and units of the description of a sound, and of the
// differences between two.
func sounds() map[string]string {
	found := map[string]string{}
	for _, f := range synth.Fields() {
		found[f.Label] = f.Name
		for i := range f.Choices {
			found[f.Format(float64(i))] = f.Name
		}
		if len(f.Choices) > 0 {
			continue
		}
		difference := sheet.Quantity{Set: []string{f.Name}}
		for _, quantity := range []string{f.Format(f.Default), difference.Format(0.5)} {
			if _, unit, ok := cutLast(quantity, " "); ok && !hasDigit(unit) {
				found[unit] = f.Name
			}
		}
	}
	return found
}

func walk(t *testing.T, root, ext string, f func(path string, data []byte)) {
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ext {
			return err
		}
		data, err := os.ReadFile(path)
		if err == nil {
			f(path, data)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
