package browser

import (
	"time"

	"partialcredit/game/ui"
)

// A contact is what the page says about one pointer (W3C Pointer Events).
type contact struct {
	at      time.Duration
	id      int
	mouse   bool
	button  int // that changed: 0 is the primary one
	buttons int // that are down: bit 0 is the primary one
	ctrl    bool
	x, y    float64
}

// Pointers turns contacts into events: each finger with its own number, the
// mouse with its primary button only, and every press ended once, by a lift or
// by a cancellation.
type pointers struct {
	q    *queue
	down []contact
}

// press reports whether the contact became a press.
func (p *pointers) press(c contact) bool {
	if c.button != 0 || c.mouse && c.ctrl { // Control and click ask for a menu on some systems
		return false
	}
	p.cancel(c.at, c.id) // a press that was never seen to end
	p.down = append(p.down, c)
	p.q.push(c.event(ui.PointerDown))
	return true
}

// move reports whether an event came of it.
func (p *pointers) move(c contact) bool {
	i := p.find(c.id)
	if i < 0 {
		return false
	}
	if c.mouse && c.buttons&1 == 0 { // the primary button was let go while another was held
		return p.lift(c)
	}
	p.down[i] = c
	p.q.push(c.event(ui.PointerMove))
	return true
}

// lift reports whether an event came of it.
func (p *pointers) lift(c contact) bool { return p.end(c.id, c.event(ui.PointerUp)) }

// cancel ends the press of a pointer that the system took away. It reports
// whether an event came of it.
func (p *pointers) cancel(at time.Duration, id int) bool {
	i := p.find(id)
	if i < 0 {
		return false
	}
	e := p.down[i].event(ui.PointerCancel)
	e.At = at
	return p.end(id, e)
}

// cancelAll ends every press. It reports whether there was one.
func (p *pointers) cancelAll(at time.Duration) bool {
	some := len(p.down) > 0
	for len(p.down) > 0 {
		p.cancel(at, p.down[0].id)
	}
	return some
}

func (p *pointers) end(id int, e ui.Event) bool {
	i := p.find(id)
	if i < 0 {
		return false
	}
	p.down = append(p.down[:i], p.down[i+1:]...)
	p.q.push(e)
	return true
}

func (p *pointers) find(id int) int {
	for i := range p.down {
		if p.down[i].id == id {
			return i
		}
	}
	return -1
}

func (c *contact) event(kind ui.Kind) ui.Event {
	return ui.Event{Kind: kind, At: c.at, Pointer: c.id, X: c.x, Y: c.y}
}
