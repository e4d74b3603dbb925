package browser

import (
	"syscall/js"
	"unsafe"

	"partialcredit/game/engine"
)

// A line is what web/engine.js does: it carries messages to the engine in the
// thread of the audio device, and blocks back.
type line struct {
	source        js.Value
	ready, failed js.Value // the states as the browser has them, to compare without making strings
}

func (p *Page) openLine() {
	p.line.source = p.global.Get("partialCredit").Get("engine")
	p.line.ready, p.line.failed = js.ValueOf("ready"), js.ValueOf("failed")
}

// EngineState is "loading", then "ready" or, for good, "failed".
func (p *Page) EngineState() string {
	switch now := p.line.source.Call("state"); {
	case now.Equal(p.line.ready):
		return "ready"
	case now.Equal(p.line.failed):
		return "failed"
	}
	return "loading"
}

// Send takes a message to the engine.
func (p *Page) Send(message []float64) {
	const size = 8
	bytes := p.global.Get("Uint8Array").New(size * len(message))
	js.CopyBytesToJS(bytes, unsafe.Slice((*byte)(unsafe.Pointer(unsafe.SliceData(message))), size*len(message)))
	p.line.source.Call("send", p.global.Get("Float64Array").New(bytes.Get("buffer")))
}

// Receive takes the next block that has come back from the engine, if any.
func (p *Page) Receive(b *engine.Block) (ok bool) {
	bytes := p.line.source.Call("receive")
	if bytes.IsNull() {
		return false
	}
	js.CopyBytesToGo(unsafe.Slice((*byte)(unsafe.Pointer(b)), unsafe.Sizeof(*b)), bytes)
	return true
}
