package site

// rare are packages of which the app runs little, and that only while it starts, if at all: Ebiten
// reads and translates its shaders with Go's own parser, printer and templates, and carries a protocol
// that a page never speaks. Compiled without inlining (-gcflags=-l) they are 0.2 MB smaller with brotli
// in every first visit, and the rules of the game by as much again as 0.1 MB: they run when somebody does
// something. What runs for every frame or sample is not among them.
var rare = []string{
	"archive/...", "bufio", "compress/...", "context", "encoding/...", "fmt", "go/...", "hash/...", "internal/bisect",
	"internal/buildcfg", "internal/fmtsort", "internal/godebug", "internal/poll", "internal/syslist", "io/...", "log/...",
	"math/big", "net/...", "os/...", "path/...", "reflect", "regexp/...", "syscall", "text/...", "time", "unicode",
	"bytes", "errors", "image/...", "sort", "strconv", "strings", "rsc.io/qr/...", "golang.org/x/image/font/...", "golang.org/x/text/...",
	ebiten + "builtinshader", ebiten + "colormshader", ebiten + "debug", ebiten + "file", ebiten + "gamepad", ebiten + "gamepaddb",
	ebiten + "legacyshader", ebiten + "png", ebiten + "shader", ebiten + "shaderir/...", ebiten + "thread",
	ebiten + "vmguest", ebiten + "vmprotocol",
	ours + "cmd/partialcredit", ours + "game", ours + "game/advice", ours + "game/ask", ours + "game/book", ours + "game/browser",
	ours + "game/code", ours + "game/draft", ours + "game/figure", ours + "game/link", ours + "game/practice", ours + "game/sheet",
	ours + "game/slip", ours + "game/ui", ours + "game/words", ours + "game/worksheet",
}

const ours = "partialcredit/"

const ebiten = "github.com/hajimehoshi/ebiten/v2/internal/"

// often are packages that a pattern of rare takes in, but that samples go through.
var often = []string{"encoding/binary"}

// withoutInlining are the arguments of go build for rare; the last pattern that fits a package holds.
func withoutInlining() (arguments []string) {
	for _, p := range rare {
		arguments = append(arguments, "-gcflags="+p+"=-l")
	}
	for _, p := range often {
		arguments = append(arguments, "-gcflags="+p+"=")
	}
	return arguments
}
