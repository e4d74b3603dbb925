// Package cmd holds the check that imports follow the arrows between the rooms of the code.
package cmd

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const (
	module = "partialcredit"
	ebiten = "github.com/hajimehoshi/ebiten/v2"
	oto    = "github.com/ebitengine/oto/v3"
	zxing  = "github.com/makiuchi-d/gozxing"
)

// rooms lists for each room what it may import besides the standard library: other rooms by their
// path below the module, and modules by theirs with all their packages.
var rooms = map[string][]string{
	"synth":          {},
	"synth/exact":    {}, // not even synth: what judges the sound shares no code with it
	"synth/wav":      {},
	"synth/spectrum": {},
	"synth/take":     {"synth", "synth/spectrum"},
	"game":           {"game/ask", "game/chance", "game/code", "game/link", "game/mark", "game/sheet", "game/practice", "game/slip", "game/ui", "game/words", "synth", "game/advice", "game/book", "game/draft", "game/worksheet", "synth/take", "synth/wav"},
	"game/advice":    {"game/mark", "game/sheet", "game/words", "synth", "synth/spectrum"},
	"game/book":      {"game/link", "game/mark", "game/practice", "game/sheet", "game/slip", "game/words", "synth", "game/ask"},
	"game/draft":     {"game/mark", "game/sheet", "game/words", "synth"},
	"game/ask":       {"game/chance", "game/practice", "game/sheet", "synth"},
	"game/code":      {"rsc.io/qr/coding", "game/words"}, // not rsc.io/qr, which brings the packages for pictures
	"game/mark":      {"game/words", "synth", "synth/spectrum", "synth/take"},
	"game/words":     {},
	"game/chance":    {},
	"game/link":      {},
	"game/slip":      {"game/ask", "game/link", "game/mark", "game/practice", "game/sheet", "synth"},
	"game/sheet":     {"game/chance", "game/link", "synth"},
	"game/practice":  {},
	"game/ui":        {},
	"game/plot":      {},
	"game/worksheet": {"game/chance", "game/code", "game/figure", "game/mark", "game/sheet", "game/words", "synth"},
	"game/figure":    {"game/plot", "synth", "synth/spectrum"},
	"game/view":      {ebiten, "golang.org/x/image", "game", "game/code", "game/ui", "game/plot"},
	"game/engine":    {"synth"},
	"game/scan":      {zxing},
	"game/speaker":   {oto, "game/engine", "game/words", "synth"},
	"game/browser":   {"game", "game/engine", "game/ui", "game/words"},
	"cmd/engine":     {"game/engine", "synth"},
	"cmd/scanner":    {"game/scan"},
}

// guarded lists packages that few rooms may import directly, and why.
var guarded = []struct {
	path   string
	rooms  []string
	reason string
}{
	{ebiten, []string{"game/view"}, "only game/view may import Ebiten: its pixels can be read only inside a running game, so decisions stay out of its reach"},
	{oto, []string{"game/speaker"}, "only game/speaker may import Oto: one way of playing sits behind one small interface"},
	{module + "/game/scan", []string{"cmd/scanner", "cmd/desk"}, "the app may not import game/scan: it is a third as large as the app, which most visitors never need (web/scan.js loads it)"},
	{"syscall/js", []string{"game/browser"}, "only game/browser may import syscall/js: everything else runs and is tested without a browser"},
	{"os", nil, "below cmd nothing may import os: a browser has no files, arguments or environment"},
	{"net/http", nil, "below cmd nothing may import net/http: the app is static files and talks to no server"},
	{"math/rand", nil, "below cmd nothing may import math/rand: randomness is an argument, so that play and sound repeat exactly"},
	{"math/rand/v2", nil, "below cmd nothing may import math/rand/v2: randomness is an argument, so that play and sound repeat exactly"},
}

// unreachable lists packages that only these rooms may depend on, through whatever is in between.
var unreachable = []struct {
	path  string
	rooms []string
}{
	{ebiten, []string{"game/view"}},
	{oto, []string{"game/speaker"}},
}

// heavy lists packages that the engine in the audio thread may not depend on at all: each makes it a
// tenth larger or more, and it has no use for them.
var heavy = []string{"os", "fmt", "encoding/json", "reflect"}

// listed is what the rules need of one package in the output of go list.
type listed struct {
	ImportPath string
	Standard   bool
	Imports    []string // direct
	Deps       []string // all
}

// violations returns a sentence for each arrow that p breaks.
func violations(p listed) []string {
	room, ours := strings.CutPrefix(p.ImportPath, module+"/")
	if !ours {
		return nil
	}
	command := strings.HasPrefix(room, "cmd/") || room == "cmd"
	allowed, known := rooms[room]
	command = command && !known // a command in the table is small on purpose
	if !known && !command {
		return []string{fmt.Sprintf("%s is not a room of the code: fold it into one, or add it with its arrows to the table in cmd/arch_test.go", p.ImportPath)}
	}
	var found []string
	for _, imported := range p.Imports {
		reason := refusal(room, command, allowed, imported)
		if reason != "" {
			found = append(found, fmt.Sprintf("%s imports %s: %s", p.ImportPath, imported, reason))
		}
	}
	for _, h := range heavy {
		if room == "cmd/engine" && slices.Contains(p.Deps, h) {
			found = append(found, fmt.Sprintf("%s depends on %s, which makes the engine large: leave it out with a build constraint", p.ImportPath, h))
		}
	}
	for _, u := range unreachable {
		if command || slices.Contains(u.rooms, room) {
			continue
		}
		for _, dep := range p.Deps {
			if within(dep, u.path) {
				found = append(found, fmt.Sprintf("%s depends on %s by way of something it imports: only %s may", p.ImportPath, dep, strings.Join(u.rooms, ", ")))
				break
			}
		}
	}
	return found
}

// refusal says why a room may not import a package, or "" when it may.
func refusal(room string, command bool, allowed []string, imported string) string {
	for _, g := range guarded {
		if !within(imported, g.path) || slices.Contains(g.rooms, room) {
			continue
		}
		// Commands own the files and the network; the three borders hold for them too.
		if command && len(g.rooms) == 0 {
			continue
		}
		if !strings.Contains(g.path, ".") && imported != g.path {
			continue // a standard package is guarded alone: os does not stand for os/exec
		}
		return g.reason
	}
	if command {
		return ""
	}
	if other, ours := strings.CutPrefix(imported, module+"/"); ours {
		if slices.Contains(allowed, other) {
			return ""
		}
		return fmt.Sprintf("the arrows from %s lead to %s only", room, list(allowed))
	}
	if standard(imported) {
		return ""
	}
	for _, a := range allowed {
		if within(imported, a) {
			return ""
		}
	}
	return fmt.Sprintf("besides the standard library, %s may import %s only", room, list(allowed))
}

func list(names []string) string {
	if len(names) == 0 {
		return "nothing"
	}
	return strings.Join(names, ", ")
}

func within(path, root string) bool {
	return path == root || strings.HasPrefix(path, root+"/")
}

// standard reports whether an import path belongs to the standard library: its first element has no dot.
func standard(path string) bool {
	first, _, _ := strings.Cut(path, "/")
	return !strings.Contains(first, ".")
}

func TestArrows(t *testing.T) {
	for _, target := range []struct{ goos, goarch string }{{"", ""}, {"js", "wasm"}, {"wasip1", "wasm"}} {
		name := target.goos
		if name == "" {
			name = "native"
		}
		t.Run(name, func(t *testing.T) {
			packages := goList(t, target.goos, target.goarch)
			seen := 0
			for _, p := range packages {
				if within(p.ImportPath, module) {
					seen++
				}
				for _, v := range violations(p) {
					t.Error(v)
				}
			}
			if seen == 0 {
				t.Error("go list showed no package of ours, so nothing was checked")
			}
		})
	}
}

// goList returns our packages and everything they depend on. -e keeps going over a package that does
// not compile at the moment: vet and the build report those.
func goList(t *testing.T, goos, goarch string) []listed {
	t.Helper()
	command := exec.Command("go", "list", "-e", "-deps", "-json=ImportPath,Standard,Imports,Deps", "./...")
	command.Dir = ".."
	command.Env = os.Environ()
	if goos != "" {
		command.Env = append(command.Env, "GOOS="+goos, "GOARCH="+goarch)
	}
	var problems bytes.Buffer
	command.Stderr = &problems
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, problems.String())
	}
	var packages []listed
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		err := d.Decode(&p)
		if err == io.EOF {
			return packages
		}
		if err != nil {
			t.Fatalf("the output of go list cannot be read: %v", err)
		}
		packages = append(packages, p)
	}
}

func TestRulesCanFail(t *testing.T) {
	tests := []struct {
		what    string
		room    string
		imports string
		deps    string
		want    string // part of the one violation; "" for none
	}{
		{"maths in the sound", "synth", "math encoding/json", "", ""},
		{"the sound in what judges it", "synth/exact", module + "/synth", "", "the arrows from synth/exact lead to nothing only"},
		{"a transform that is not ours in the measuring", "synth/spectrum", "gonum.org/v1/gonum/dsp/fourier", "", "may import nothing only"},
		{"a transform in the sound", "synth", "gonum.org/v1/gonum/dsp/fourier", "", "may import nothing only"},
		{"pixels in the view", "game/view", ebiten + "/vector golang.org/x/image/font/opentype " + module + "/game/plot", "", ""},
		{"pixels in the rules", "game", ebiten, "", "only game/view may import Ebiten"},
		{"part of Ebiten in the geometry", "game/ui", ebiten + "/inpututil", "", "only game/view may import Ebiten"},
		{"Ebiten by a detour", "game/sheet", "", "fmt " + ebiten + "/vector", "by way of"},
		{"Oto in the view", "game/view", oto, "", "only game/speaker may import Oto"},
		{"Oto in its room", "game/speaker", oto + " io", oto, ""},
		{"Oto by a detour", "game/mark", "", oto, "by way of"},
		{"the page in its room", "game/browser", "syscall/js " + module + "/game", "", ""},
		{"the page in the speaker", "game/speaker", "syscall/js", "", "only game/browser may import syscall/js"},
		{"the page in a command", "cmd/partialcredit", "syscall/js", "", "only game/browser may import syscall/js"},
		{"Ebiten in a command", "cmd/partialcredit", ebiten, "", "only game/view may import Ebiten"},
		{"all rooms in a command", "cmd/desk", "os net/http math/rand " + module + "/synth", ebiten, ""},
		{"files in the marking", "game/mark", "os", "", "below cmd nothing may import os"},
		{"a server in the exercises", "game/sheet", "net/http", "", "below cmd nothing may import net/http"},
		{"dice in the sound", "synth", "math/rand", "", "randomness is an argument"},
		{"newer dice in the practice", "game/practice", "math/rand/v2", "", "randomness is an argument"},
		{"the marking in the sound", "synth", module + "/game/mark", "", "the arrows from synth lead to nothing only"},
		{"the view in the rules", "game", module + "/game/view", "", "the arrows from game lead to"},
		{"the drawing geometry in the rules", "game", module + "/game/plot", "", "the arrows from game lead to"},
		{"a command in the rules", "game", module + "/cmd/desk/site", "", "the arrows from game lead to"},
		{"the exercises in the marking", "game/mark", module + "/game/sheet", "", "the arrows from game/mark lead to"},
		{"the sound in the engine", "cmd/engine", module + "/game/engine " + module + "/synth unsafe runtime", "runtime math", ""},
		{"files in the engine", "cmd/engine", "", "errors io os", "makes the engine large"},
		{"the rules in the engine", "cmd/engine", module + "/game", "", "the arrows from cmd/engine lead to"},
		{"the page in the engine", "cmd/engine", "syscall/js", "", "only game/browser may import syscall/js"},
		{"the speaker in the engine's room", "game/engine", module + "/game/speaker", "", "the arrows from game/engine lead to synth only"},
		{"the reader of codes in the app", "cmd/partialcredit", module + "/game/scan", "", "the app may not import game/scan"},
		{"the reader of codes in its command", "cmd/scanner", "unsafe " + module + "/game/scan", "fmt os", ""},
		{"pictures in the codes", "game/code", "rsc.io/qr", "", "may import rsc.io/qr/coding, game/words only"},
		{"a room nobody planned", "game/helpers", "", "", "not a room"},
	}
	for _, tt := range tests {
		t.Run(tt.what, func(t *testing.T) {
			got := violations(listed{
				ImportPath: module + "/" + tt.room,
				Imports:    strings.Fields(tt.imports),
				Deps:       strings.Fields(tt.deps),
			})
			switch {
			case tt.want == "" && len(got) > 0:
				t.Errorf("violations %q, want none", got)
			case tt.want != "" && (len(got) != 1 || !strings.Contains(got[0], tt.want)):
				t.Errorf("violations %q, want one with %q", got, tt.want)
			}
		})
	}
}

func TestEveryArrowLeadsToARoomOrAModule(t *testing.T) {
	for _, room := range slices.Sorted(maps.Keys(rooms)) {
		for _, to := range rooms[room] {
			if _, known := rooms[to]; !known && standard(to) {
				t.Errorf("the arrow from %s leads to %s, which is neither a room nor a module", room, to)
			}
		}
	}
}
