package measure

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/chromedp/chromedp"
)

// RunInBrowser compiles the program of a package, a path below root, as
// WebAssembly, runs it in headless Chromium and returns what it prints.
func RunInBrowser(root, program string, args ...string) (string, error) {
	p, err := openPage()
	if err != nil {
		return "", err
	}
	defer p.stop()
	server, err := programServer(root, program, args, "")
	if err != nil {
		return "", err
	}
	defer server.Close()
	if err := p.open(server.URL); err != nil {
		return "", err
	}
	var printed string
	err = p.eval("run()", &printed)
	return printed, err
}

// programPage runs a program and returns its lines.
const programPage = `<!DOCTYPE html><title>Measuring</title><script src="wasm_exec.js"></script><script>
async function run() {
	const lines = [], log = console.log;
	console.log = line => lines.push(line);
	const go = new Go();
	go.argv = ARGUMENTS;
	const {instance} = await WebAssembly.instantiateStreaming(fetch("program.wasm"), go.importObject);
	await go.run(instance);
	console.log = log;
	return lines.join("\n");
}
SCRIPT
</script>`

// programServer serves the page that runs a program compiled for it, with more
// of a script.
func programServer(root, program string, args []string, script string) (*httptest.Server, error) {
	compiled, err := compile(root, program)
	if err != nil {
		return nil, err
	}
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("the go command cannot be run: %w", err)
	}
	runner, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, fmt.Errorf("this Go installation lacks its script for WebAssembly: %w", err)
	}
	arguments, err := json.Marshal(append([]string{"program"}, args...))
	if err != nil {
		return nil, err
	}
	page := strings.NewReplacer("ARGUMENTS", string(arguments), "SCRIPT", script).Replace(programPage)
	files := map[string]struct {
		kind string
		data []byte
	}{
		"/":             {"text/html", []byte(page)},
		"/wasm_exec.js": {"text/javascript", runner},
		"/program.wasm": {"application/wasm", compiled},
	}
	return httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		f, ok := files[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		w.Header().Set("Content-Type", f.kind)
		w.Write(f.data)
	})), nil
}

func compile(root, program string) ([]byte, error) {
	folder, err := os.MkdirTemp("", "partialcredit-program-")
	if err != nil {
		return nil, fmt.Errorf("no folder for the build: %w", err)
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "program.wasm")
	build := exec.Command("go", "build", "-ldflags=-s -w", "-o", file, program)
	build.Dir = root
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the program %s does not compile: %w\n%s", program, err, bytes.TrimSpace(out))
	}
	return os.ReadFile(file)
}

// open goes to a page.
func (p *page) open(url string) error {
	if err := chromedp.Run(p.context, chromedp.Navigate(url)); err != nil {
		return fmt.Errorf("the browser cannot open the page that measures: %w", err)
	}
	return nil
}
