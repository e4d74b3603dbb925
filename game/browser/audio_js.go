package browser

import (
	"syscall/js"
	"time"
)

// An audio is what web/audio.js tells of the page's audio context.
type audio struct {
	source  js.Value
	states  []string
	values  []js.Value // the states as the browser has them, to compare without making strings
	latency float64
	asked   time.Duration // when the latency was last asked for
}

// latencyHolds is for how long a latency is believed: it changes when the
// learner changes headphones, and asking takes time.
const latencyHolds = 500 * time.Millisecond

func (p *Page) openAudio() {
	a := &p.audio
	a.source = p.global.Get("partialCredit").Get("audio")
	a.states = []string{"running", "suspended", "none", "interrupted", "closed"}
	for _, s := range a.states {
		a.values = append(a.values, js.ValueOf(s))
	}
	a.asked = -latencyHolds
}

// AudioState is the state of the page's audio context: "none" before there is
// one, then "suspended", "running", "interrupted" or "closed" (W3C Web Audio).
func (p *Page) AudioState() string {
	now := p.audio.source.Call("state")
	for i, v := range p.audio.values {
		if v.Equal(now) {
			return p.audio.states[i]
		}
	}
	return now.String()
}

// AudioLatency is the time in seconds from handing samples to the browser until
// they are heard, as far as the browser knows it.
func (p *Page) AudioLatency() float64 {
	if now := p.Now(); now >= p.audio.asked+latencyHolds {
		p.audio.asked, p.audio.latency = now, p.audio.source.Call("latency").Float()
	}
	return p.audio.latency
}

// AudioTime is how many seconds of sound the page's audio context has computed.
func (p *Page) AudioTime() float64 { return p.audio.source.Call("time").Float() }

// OnPull has f called before the browser takes samples from Oto. Goroutines
// that f wakes have run when it does.
func (p *Page) OnPull(f func()) {
	p.audio.source.Call("onPull", js.FuncOf(func(js.Value, []js.Value) any {
		f()
		return nil
	}))
}
