package speaker

import (
	"math"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

// A remote is a [Speaker] whose engine plays in the thread of the audio device.
// The engine numbers its samples as the device does, so that the device's own
// time tells which have reached the ear.
type remote struct {
	device  Device
	line    Line
	program program
	volume  float64
	message []float64 // to be sent
	block   engine.Block
	memory  memory
	heard   int64 // samples that had reached the ear at the last look
	watch   watch
	time    float64 // of the device at the last look
}

var _ Speaker = (*remote)(nil)

func newRemote(d Device, l Line) *remote {
	return &remote{device: d, line: l, memory: newMemory()}
}

// Play implements [Speaker].
func (r *remote) Play(p synth.Program) {
	if r.program.becomes(p) {
		r.message = engine.AppendProgram(r.message[:0], p)
		r.line.Send(r.message)
	}
}

// SetVolume implements [Speaker].
func (r *remote) SetVolume(v float64) {
	if math.IsNaN(v) {
		v = 0
	}
	if v != r.volume {
		r.volume = v
		r.message = engine.AppendVolume(r.message[:0], v)
		r.line.Send(r.message)
	}
}

// Heard implements [Speaker]. The newest block may still be on its way: behind
// a device of less than its 21 ms of latency, the window is that late.
func (r *remote) Heard(w *Window) {
	for r.line.Receive(&r.block) {
		r.keep()
	}
	late := math.Max(0, math.Min(r.device.AudioLatency(), mostLatency))
	if r.device.AudioState() == "running" {
		r.heard = max(r.heard, int64((r.device.AudioTime()-late)*Rate))
	}
	r.memory.copyTo(w, r.heard)
}

// keep remembers the block. Numbers that go back are those of another device.
func (r *remote) keep() {
	for i := range r.block {
		q := &r.block[i]
		if q.Frame < r.memory.rendered {
			r.heard = 0
		}
		r.memory.put(q.Frame, q.Samples[:], q.Cycle[:], sounding{int(q.Item), q.Seconds})
	}
}

// State implements [Speaker].
func (r *remote) State() State {
	if r.line.EngineState() != "ready" {
		return Waiting
	}
	if t := r.device.AudioTime(); t != r.time {
		r.time = t
		r.watch.pulled()
	}
	return r.watch.state(r.device.Now(), r.device.AudioState())
}

// Err implements [Speaker].
func (r *remote) Err() error { return r.watch.err }
