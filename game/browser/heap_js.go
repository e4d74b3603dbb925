package browser

import (
	"runtime"
	"syscall/js"
)

// showHeap lets a test ask how many bytes the app still holds after a
// collection: its linear memory only ever grows and says less. Nothing in the
// page calls it.
func (p *Page) showHeap() {
	p.global.Get("partialCredit").Set("heap", js.FuncOf(func(js.Value, []js.Value) any {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return float64(m.HeapAlloc)
	}))
}
