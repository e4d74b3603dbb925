// Package engine plays programs in the thread of the audio device, which waits
// for nobody: controls reach it as short messages, and what it has played goes
// back in blocks. It knows nothing of how either travels.
package engine

import "partialcredit/synth"

// Quantum is how many samples are rendered at a time, as in the Web Audio API.
const Quantum = 128

// A Player renders a program. [synth.Player] is the one that is used.
type Player interface {
	Play(synth.Program)
	Render(dst, cycle []float32)
	Sounding() (item int, seconds float64)
}

// An Engine is a player at the far end of a line. Render allocates nothing, and
// neither does Take once a message as long has come before.
type Engine struct {
	player  Player
	program synth.Program
	volume  Volume
	inbox   []float64

	out   [Quantum]float32
	block Block
	used  int // quanta of the block
	quiet int // quanta since something sounded
}

// New makes an engine that is silent until the first messages.
func New(p Player) *Engine { return &Engine{player: p, quiet: rests} }

// Inbox is where the next message of n numbers is to be put, before Take.
func (e *Engine) Inbox(n int) []float64 {
	if n > cap(e.inbox) {
		e.inbox = make([]float64, n)
	}
	e.inbox = e.inbox[:n]
	return e.inbox
}

// Take obeys the message in the inbox. What is no message changes nothing.
func (e *Engine) Take() {
	if v, ok := readVolume(e.inbox); ok {
		e.volume.To(v)
	}
	if readProgram(e.inbox, &e.program) {
		e.player.Play(e.program)
	}
}

// Render makes the next samples, at [Engine.Out]. The frame counts those of the
// device. Where full is true, [Engine.Block] is to be sent back before the next
// call.
func (e *Engine) Render(frame int64) (full bool) {
	q := &e.block[e.used]
	q.Frame = frame
	e.player.Render(q.Samples[:], q.Cycle[:])
	item, seconds := e.player.Sounding()
	q.Item, q.Seconds = int64(item), seconds
	for i, s := range &q.Samples {
		e.out[i] = s * e.volume.Next()
	}
	e.quiet++
	if item >= 0 {
		e.quiet = 0
	}
	e.used = (e.used + 1) % len(e.block)
	return e.used == 0 && e.quiet <= rests
}

// Out is what was rendered last, for both channels.
func (e *Engine) Out() *[Quantum]float32 { return &e.out }

// Block is what was played last, once it is full.
func (e *Engine) Block() *Block { return &e.block }
