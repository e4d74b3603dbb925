package main

import (
	"fmt"
	"io"
	"os"
	"time"
)

// progress is a line that says how far long work has come. It stands on the terminal only, so
// that nothing of it gets into files and logs.
type progress struct {
	w     io.Writer // nil where there is no terminal
	what  string
	total int
	shown time.Time
}

// progress begins a line: "Tallying slips: 120 of 1000".
func (d *desk) progress(what string, total int) *progress {
	p := &progress{what: what, total: total}
	if f, ok := d.problems.(*os.File); ok {
		if info, err := f.Stat(); err == nil && info.Mode()&os.ModeCharDevice != 0 {
			p.w = f
		}
	}
	return p
}

// at says how much is done. It may be called as often as one likes.
func (p *progress) at(done int) {
	if p.w == nil || time.Since(p.shown) < 100*time.Millisecond && done < p.total {
		return
	}
	p.shown = time.Now()
	fmt.Fprintf(p.w, "\r%s: %d of %d", p.what, done, p.total)
}

// end takes the line away.
func (p *progress) end() {
	if p.w != nil && !p.shown.IsZero() {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}
