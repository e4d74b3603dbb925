package browser

import (
	"syscall/js"

	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// A scanner is what web/scan.js is told and tells.
type scanner struct {
	found, failed js.Func // of the camera; made once
	on            bool
}

// Scan shows the camera over a rectangle of the page, or moves it there. scanned gets the text of each
// code that comes into view, once; failed gets what is wrong, and the camera is off then. Both may come
// at any time until StopScan.
func (p *Page) Scan(r ui.Rect, scanned func(text string), failed func(why words.Message)) {
	s := &p.scanner
	if !s.on {
		s.on = true
		s.found, s.failed = p.scanCalls(scanned, func(why words.Message) {
			p.StopScan()
			failed(why)
		})
	}
	rect := map[string]any{"x": r.X, "y": r.Y, "w": r.W, "h": r.H}
	p.scan().Call("start", rect, s.found, s.failed)
}

// StopScan turns the camera off.
func (p *Page) StopScan() {
	if s := &p.scanner; s.on {
		s.on = false
		p.scan().Call("stop")
		s.found.Release()
		s.failed.Release()
	}
}

// ScanPictures lets people choose pictures and reads the codes in them. What is wrong with one does not
// keep the others.
func (p *Page) ScanPictures(scanned func(text string), failed func(why words.Message)) {
	input := p.document.Call("createElement", "input")
	input.Set("type", "file")
	input.Set("accept", "image/*")
	input.Set("multiple", true)
	var chosen js.Func
	chosen = js.FuncOf(func(js.Value, []js.Value) any {
		chosen.Release()
		found, wrong := p.scanCalls(scanned, failed)
		var done js.Func
		done = js.FuncOf(func(js.Value, []js.Value) any {
			found.Release()
			wrong.Release()
			done.Release()
			return nil
		})
		p.scan().Call("pictures", input.Get("files"), found, wrong).Call("then", done)
		return nil
	})
	input.Call("addEventListener", "change", chosen)
	input.Call("click")
}

func (p *Page) scan() js.Value { return p.global.Get("partialCredit").Get("scan") }

// scanCalls are what web/scan.js calls.
func (p *Page) scanCalls(scanned func(text string), failed func(why words.Message)) (found, wrong js.Func) {
	found = js.FuncOf(func(_ js.Value, args []js.Value) any {
		scanned(args[0].String())
		p.wake()
		return nil
	})
	wrong = js.FuncOf(func(_ js.Value, args []js.Value) any {
		files := ""
		if len(args) > 1 {
			files = args[1].String()
		}
		failed(scanTrouble(args[0].String(), files))
		p.wake()
		return nil
	})
	return found, wrong
}
