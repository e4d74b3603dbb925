package speaker

import (
	"encoding/binary"
	"io"
	"math"
	"sync"
	"time"

	"partialcredit/game/engine"
	"partialcredit/synth"
)

const quantum = engine.Quantum

// bytesPerFrame is the size of one sample in both channels, 32-bit floats.
const bytesPerFrame = 8

// A deck is a [Speaker] for a device that pulls: it takes samples, a chunk at a
// time, and puts each chunk behind what it has not played yet.
type deck struct {
	device  Device
	gate    *gate
	waiting func() int // bytes that were read but not yet pulled

	mu       sync.Mutex // the device reads in its own goroutine
	player   engine.Player
	program  program
	memory   memory
	follower follower
	volume   engine.Volume
	samples  [quantum]float32
	cycle    [quantum]float32
	bytes    [quantum * bytesPerFrame]byte
	left     []byte // of bytes, not yet read
	given    int64  // bytes read so far
	heard    int64  // samples that had reached the ear at the last look
	watch    watch
	err      error
}

var _ Speaker = (*deck)(nil)
var _ io.Reader = (*deck)(nil)

// newDeck makes a deck for a device that pulls chunks of so many samples.
func newDeck(d Device, p engine.Player, chunk int) *deck {
	return &deck{
		device:   d,
		waiting:  func() int { return 0 },
		player:   p,
		memory:   newMemory(),
		follower: follower{chunk: int64(chunk)},
		gate:     newGate(time.Second * lost * time.Duration(chunk) / Rate),
	}
}

// Play implements [Speaker].
func (d *deck) Play(p synth.Program) {
	if !d.program.becomes(p) {
		return
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	d.player.Play(p)
}

// SetVolume implements [Speaker].
func (d *deck) SetVolume(v float64) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.volume.To(v)
}

// Read gives the next samples to the device, as little-endian 32-bit floats,
// the left and the right channel in turn. It fills all of dst, of any length,
// and never fails. Where the device announces its pulls it waits for the next,
// in the goroutine of Oto that does nothing else.
func (d *deck) Read(dst []byte) (int, error) {
	return d.read(dst, d.gate.wait()), nil
}

func (d *deck) read(dst []byte, why reason) int {
	d.mu.Lock()
	defer d.mu.Unlock()
	handed := d.handed()
	if why == pullComes {
		handed += int64(len(dst)) / bytesPerFrame
	}
	if why != noPull && handed > 0 {
		d.follower.pulled(d.device.Now(), handed)
		d.watch.pulled()
	}
	n := len(dst)
	for len(dst) > 0 {
		if len(d.left) == 0 {
			d.render()
		}
		k := copy(dst, d.left)
		dst, d.left = dst[k:], d.left[k:]
	}
	d.given += int64(n)
	return n
}

// handed is how many samples the device has pulled.
func (d *deck) handed() int64 { return (d.given - int64(d.waiting())) / bytesPerFrame }

// render makes the next quantum.
func (d *deck) render() {
	d.player.Render(d.samples[:], d.cycle[:])
	item, seconds := d.player.Sounding()
	d.memory.put(d.memory.rendered, d.samples[:], d.cycle[:], sounding{item, seconds})
	for i, s := range &d.samples {
		bits := math.Float32bits(s * d.volume.Next())
		binary.LittleEndian.PutUint32(d.bytes[bytesPerFrame*i:], bits)
		binary.LittleEndian.PutUint32(d.bytes[bytesPerFrame*i+4:], bits)
	}
	d.left = d.bytes[:]
}

// Heard implements [Speaker].
func (d *deck) Heard(w *Window) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.device.AudioState() == "running" {
		if played, ok := d.follower.played(d.device.Now(), d.handed()); ok {
			late := int64(math.Max(0, math.Min(d.device.AudioLatency(), mostLatency)) * Rate)
			d.heard = max(d.heard, played-late)
		}
	} else {
		d.follower.lose()
	}
	d.memory.copyTo(w, d.heard)
}

// State implements [Speaker].
func (d *deck) State() State {
	d.mu.Lock()
	defer d.mu.Unlock()
	s := d.watch.state(d.device.Now(), d.device.AudioState())
	if d.err != nil {
		return Failed
	}
	return s
}

// Err implements [Speaker].
func (d *deck) Err() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.err != nil {
		return d.err
	}
	return d.watch.err
}
