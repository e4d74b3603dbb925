package browser

import (
	"encoding/binary"
	"math"
	"syscall/js"

	"partialcredit/game/words"
)

// A recorder is what web/record.js tells, while it records.
type recorder struct{ level, done, failed js.Func }

func (p *Page) record() js.Value { return p.global.Get("partialCredit").Get("record") }

// Record records from the device's microphone or line input, for at most some seconds.
// level is told the greatest sample of late and the seconds so far; then done gets the
// samples and their rate in hertz, or failed what is wrong. Not before it has ended or
// was dropped again.
func (p *Page) Record(seconds float64, level func(peak, seconds float64), done func(samples []float32, rate float64), failed func(why words.Message)) {
	p.DropRecord()
	r := &p.recorder
	told := func(f func(args []js.Value)) js.Func {
		return js.FuncOf(func(_ js.Value, args []js.Value) any {
			f(args)
			p.wake()
			return nil
		})
	}
	r.level = told(func(args []js.Value) { level(args[0].Float(), args[1].Float()) })
	r.done = told(func(args []js.Value) {
		samples, rate := p.samples(args[0]), args[1].Float()
		p.forget()
		done(samples, rate)
	})
	r.failed = told(func(args []js.Value) {
		why := recordTrouble(args[0].String())
		p.forget()
		failed(why)
	})
	p.record().Call("start", seconds, r.level, r.done, r.failed)
}

// StopRecord ends it.
func (p *Page) StopRecord() { p.record().Call("stop") }

// DropRecord ends it, and forgets what came in.
func (p *Page) DropRecord() {
	p.record().Call("drop")
	p.forget()
}

func (p *Page) forget() {
	for _, f := range []js.Func{p.recorder.level, p.recorder.done, p.recorder.failed} {
		f.Release()
	}
	p.recorder = recorder{}
}

// samples are those in a Float32Array.
func (p *Page) samples(array js.Value) []float32 {
	data := make([]byte, array.Get("byteLength").Int())
	js.CopyBytesToGo(data, p.global.Get("Uint8Array").New(array.Get("buffer"), array.Get("byteOffset"), len(data)))
	out := make([]float32, len(data)/4)
	for i := range out {
		out[i] = math.Float32frombits(binary.LittleEndian.Uint32(data[4*i:]))
	}
	return out
}

// recordingGap is how many seconds of silence lie between two times that a recording is
// played: as between notes.
const recordingGap = 0.25

// PlayRecording plays samples at a rate in hertz with a linear gain, over and over;
// none for silence.
func (p *Page) PlayRecording(samples []float32, rate, gain float64) {
	if len(samples) == 0 {
		p.audio.source.Call("play", js.Null(), rate, recordingGap, gain)
		return
	}
	data := make([]byte, 0, 4*len(samples))
	for _, v := range samples {
		data = binary.LittleEndian.AppendUint32(data, math.Float32bits(v))
	}
	bytes := p.global.Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	p.audio.source.Call("play", p.global.Get("Float32Array").New(bytes.Get("buffer")), rate, recordingGap, gain)
}

// RecordingGain changes the gain of the recording that plays.
func (p *Page) RecordingGain(gain float64) { p.audio.source.Call("playAt", gain) }
