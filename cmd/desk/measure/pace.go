package measure

import (
	"encoding/json"
	"fmt"

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
	server, err := programServer(root, "./cmd/desk/measure/speed/wasm", []string{fmt.Sprint(seconds)}, nodesScript)
	if err != nil {
		return pace{}, err
	}
	defer server.Close()
	if err := p.open(server.URL); err != nil {
		return pace{}, err
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

// nodesScript renders two of the browser's own sawtooth nodes.
const nodesScript = `
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
}`
