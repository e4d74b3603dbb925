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

	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// sayers are the functions and methods, by name, that are given English to be
// said, and which of their arguments it is. Their English must stand in the
// call: what is handed on in a variable is found where it was given to another
// sayer.
var sayers = map[string][]int{"Say": {0}, "say": {0}, "t": {0}, "more": {2, 3}}

// spoken finds every text that the code says, and where. It reads the files
// for every system, not only for this one.
func spoken(t *testing.T) map[string]string {
	found := map[string]string{}
	for _, root := range []string{"..", "../../cmd/partialcredit"} {
		walk(t, root, ".go", func(path string, data []byte) {
			if strings.HasSuffix(path, "_test.go") || filepath.Dir(path) == filepath.Join("..", "words") {
				return
			}
			files := token.NewFileSet()
			file, err := parser.ParseFile(files, path, data, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(file, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				for _, i := range sayers[called(call)] {
					if i >= len(call.Args) {
						continue
					}
					if text, ok := literal(call.Args[i]); ok && text != "" {
						at := files.Position(call.Pos())
						found[text] = filepath.ToSlash(at.Filename) + ":" + strconv.Itoa(at.Line)
					}
				}
				return true
			})
		})
	}
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

// sounds are the names and units of the description of a sound, and of the
// differences between two.
func sounds() map[string]string {
	found := map[string]string{}
	for _, f := range synth.Fields() {
		found[f.Label] = f.Name
		for _, c := range f.Choices {
			found[c] = f.Name
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
