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

	"partialcredit/cmd/desk/measure/speed"
)

// A pace is how many times faster than they sound voices are rendered, natively and as WebAssembly
// in the browser, and two sawtooth nodes by the browser itself.
type pace struct {
	native, wasm []speed.Result
	nodes        float64
}

// measurePace measures for so many seconds each. root is the folder of the sources.
func (p *page) measurePace(root string, seconds float64) (pace, error) {
	server, err := speedServer(root, seconds)
	if err != nil {
		return pace{}, err
	}
	defer server.Close()
	if err := chromedp.Run(p.context, chromedp.Navigate(server.URL)); err != nil {
		return pace{}, fmt.Errorf("the browser cannot open the page that measures: %w", err)
	}
	r := pace{native: speed.Measure(seconds)}
	var line string
	if err := p.eval("run()", &line); err != nil {
		return pace{}, err
	}
	if err := json.Unmarshal([]byte(line), &r.wasm); err != nil {
		return pace{}, fmt.Errorf("the browser measured %q: %w", line, err)
	}
	return r, p.eval(fmt.Sprintf("nodes(%v)", seconds), &r.nodes)
}

// speedPage runs the program of package speed and renders two sawtooth nodes.
const speedPage = `<!DOCTYPE html><title>Speed</title><script src="wasm_exec.js"></script><script>
async function run() {
	const lines = [], log = console.log;
	console.log = line => lines.push(line);
	const go = new Go();
	go.argv = ["speed", "SECONDS"];
	const {instance} = await WebAssembly.instantiateStreaming(fetch("speed.wasm"), go.importObject);
	await go.run(instance);
	console.log = log;
	return lines.join("\n");
}
async function nodes(seconds) {
	let best = 0;
	for (let i = 0; i < 20; i++) {
		const length = 30 * seconds, context = new OfflineAudioContext(1, 48000 * length, 48000);
		for (const detune of [0, 7]) {
			const osc = context.createOscillator();
			osc.type = "sawtooth"; osc.frequency.value = 220; osc.detune.value = detune;
			osc.connect(context.destination);
			osc.start();
		}
		const start = performance.now();
		await context.startRendering();
		best = Math.max(best, length / (performance.now() - start) * 1000);
	}
	return best;
}
</script>`

// speedServer serves the page with the program compiled for it.
func speedServer(root string, seconds float64) (*httptest.Server, error) {
	folder, err := os.MkdirTemp("", "partialcredit-speed-")
	if err != nil {
		return nil, fmt.Errorf("no folder for the build: %w", err)
	}
	defer os.RemoveAll(folder)
	file := filepath.Join(folder, "speed.wasm")
	build := exec.Command("go", "build", "-o", file, "./cmd/desk/measure/speed/wasm")
	build.Dir = root
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := build.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("the program that measures does not compile: %w\n%s", err, bytes.TrimSpace(out))
	}
	program, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("the go command cannot be run: %w", err)
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, fmt.Errorf("this Go installation lacks its script for WebAssembly: %w", err)
	}
	files := map[string]struct {
		kind string
		data []byte
	}{
		"/":             {"text/html", []byte(strings.Replace(speedPage, "SECONDS", fmt.Sprint(seconds), 1))},
		"/wasm_exec.js": {"text/javascript", script},
		"/speed.wasm":   {"application/wasm", program},
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
