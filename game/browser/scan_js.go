package browser

import (
	"syscall/js"

	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// A scanner is what web/scan.js is told and tells.
type scanner struct {
	found, failed js.Func // of the camera, while it is on
	on            bool
}

// Scan shows the camera over a rectangle of the page, or moves it there. scanned gets the text of each
// code that comes into view, once; failed gets what is wrong, and the camera is off then. Both may come
// at any time until StopScan.
func (p *Page) Scan(r ui.Rect, scanned func(text string), failed func(why words.Message)) {
	s := &p.scanner
	if !s.on {
		s.on = true
		s.found = js.FuncOf(func(_ js.Value, args []js.Value) any {
			scanned(args[0].String())
			p.wake()
			return nil
		})
		s.failed = js.FuncOf(func(_ js.Value, args []js.Value) any {
			p.StopScan()
			failed(scanTrouble(args[0].String()))
			p.wake()
			return nil
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

// ScanPicture reads the codes in a picture as it lies in a file, and says what is wrong where there are
// none.
func (p *Page) ScanPicture(picture string, read func(texts []string, why words.Message)) {
	var done js.Func
	done = js.FuncOf(func(_ js.Value, args []js.Value) any {
		done.Release()
		texts := make([]string, args[0].Length())
		for i := range texts {
			texts[i] = args[0].Index(i).String()
		}
		read(texts, scanTrouble(args[1].String()))
		p.wake()
		return nil
	})
	p.scan().Call("picture", p.bytes(picture), done)
}

func (p *Page) scan() js.Value { return p.global.Get("partialCredit").Get("scan") }
