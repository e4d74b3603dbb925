package speaker

import (
	"time"

	"partialcredit/game/engine"
)

// An afar is a browser with an engine in the thread of its audio device, which
// renders bursts of quanta; messages and blocks are on their way for a while.
// The rules are those of web/engine.js and web/worklet.js.
type afar struct {
	Speaker
	now     time.Duration
	state   string // of the device
	engine  string // its state
	latency int    // samples from the graph's end to the ear
	burst   int    // quanta at once
	way     time.Duration

	far    *engine.Engine
	make   func() engine.Player
	frame  int64
	kept   [2][]float64
	out    []letter[[]float64]
	back   []letter[engine.Block]
	stuck  bool // the page: it cannot even give back old blocks that nobody takes
	free   int  // blocks that are not on their way
	played []float32
}

type letter[T any] struct {
	what T
	due  time.Duration
}

func newAfar(make func() engine.Player) *afar {
	a := &afar{state: "suspended", engine: "ready", latency: 1920, burst: 4, way: 2 * time.Millisecond, make: make, free: 64}
	a.far = engine.New(make())
	a.Speaker = newRemote(a, a)
	return a
}

func (a *afar) Now() time.Duration    { return a.now }
func (a *afar) AudioState() string    { return a.state }
func (a *afar) AudioTime() float64    { return float64(a.frame) / Rate }
func (a *afar) AudioLatency() float64 { return float64(a.latency) / Rate }
func (a *afar) OnPull(func())         {}
func (a *afar) EngineState() string   { return a.engine }

func (a *afar) Send(m []float64) {
	m = append([]float64(nil), m...)
	a.kept[int(m[0])] = m
	a.out = append(a.out, letter[[]float64]{m, a.now + a.way})
}

func (a *afar) Receive(b *engine.Block) bool {
	if len(a.back) == 0 || a.back[0].due > a.now {
		return false
	}
	*b, a.back = a.back[0].what, a.back[1:]
	a.free++
	return true
}

func (a *afar) speaker() Speaker { return a.Speaker }

func (a *afar) suspend(on bool) {
	a.state = "running"
	if on {
		a.state = "suspended"
	}
}

func (a *afar) ear() []float32 { return a.played[:max(0, len(a.played)-a.latency)] }

func (a *afar) advance(d time.Duration) {
	step := time.Second * quantum * time.Duration(a.burst) / Rate
	for end := a.now + d; a.now < end; a.now += step {
		for len(a.out) > 0 && a.out[0].due <= a.now {
			a.deliver(a.out[0].what)
			a.out = a.out[1:]
		}
		if a.state == "running" {
			for range a.burst {
				a.quantum()
			}
		}
	}
}

func (a *afar) deliver(m []float64) {
	copy(a.far.Inbox(len(m)), m)
	a.far.Take()
}

func (a *afar) quantum() {
	full := a.far.Render(a.frame)
	a.frame += quantum
	a.played = append(a.played, a.far.Out()[:]...)
	if !a.stuck && len(a.back) > queued {
		a.back = a.back[1:]
		a.free++
	}
	if full && a.free > 0 {
		a.free--
		a.back = append(a.back, letter[engine.Block]{*a.far.Block(), a.now + a.way})
	}
}

// renew puts another device in the place of this one.
func (a *afar) renew() {
	a.far = engine.New(a.make())
	a.frame, a.played, a.out, a.back, a.free = 0, nil, nil, nil, 64
	for _, m := range a.kept {
		if m != nil {
			a.deliver(m)
		}
	}
}

// queued is how many blocks web/engine.js keeps for the app.
const queued = 48

func aCount() engine.Player { return &counting{} }

const blockLength = len(engine.Block{}) * quantum
