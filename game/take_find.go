package game

import (
	"bytes"
	"errors"
	"math"

	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/take"
	"partialcredit/synth/wav"
)

// refusals are the sentences for recordings that cannot be used.
var refusals = []error{
	wav.ErrNotWAV, wav.ErrCompressed, wav.ErrDamaged, wav.ErrCutOff, wav.ErrChannels, wav.ErrDepth,
	take.ErrSilence, take.ErrNoise, take.ErrClipped, take.ErrSeveral, take.ErrShort, take.ErrLong, take.ErrRate, take.ErrNumbers,
}

// isWAV reports whether a file begins as a WAV file does.
func (f File) isWAV() bool {
	return len(f.Data) >= 12 && string(f.Data[:4]) == "RIFF" && string(f.Data[8:12]) == "WAVE"
}

// takeFile reads a recording out of a file.
func (g *Game) takeFile(f File) {
	if g.taking.device.on {
		return // one at a time
	}
	if !g.page.ofRecording() {
		g.openTaking(false)
	}
	g.fresh()
	if f.Data == nil || len(f.Data) > MostDropped {
		g.refuseTake(g.t("The file “%s” could not be read: it is a folder, it is gone, or it is larger than 64 MB. Choose another one.", words.Message{Format: shortened(f.Name)}))
		return
	}
	g.soon(g.t("Looking for the note …"), func(pause func()) func() {
		s, err := wav.Read(bytes.NewReader(f.Data))
		if err != nil {
			return func() { g.refuseTake(g.refusal(err)) }
		}
		pause()
		return g.findNote(s.Mono(), float64(s.Rate), pause)
	})
}

// fresh turns to the page for a recording, without one.
func (g *Game) fresh() {
	if g.page != takePage {
		g.show(takePage)
	}
	g.stop()
	g.taking.take, g.taking.wrong, g.dirty = nil, "", true
	g.pictureTake()
}

// findNote finds the note in samples; what follows is that it is pictured.
func (g *Game) findNote(samples []float32, rate float64, pause func()) (then func()) {
	t, err := take.Find(samples, rate)
	if err != nil {
		return func() { g.refuseTake(g.refusal(err)) }
	}
	pause()
	level := levelOf(t)
	return func() {
		g.taking.take, g.taking.level = t, level
		g.pictureTake()
		g.say, g.dirty = g.foundText(), true
	}
}

func (g *Game) refuseTake(why string) { g.taking.wrong, g.say, g.dirty = why, why, true }

// refusal is the sentence for what is wrong with a recording.
func (g *Game) refusal(err error) string {
	for _, known := range refusals {
		if errors.Is(err, known) {
			return g.t(known.Error())
		}
	}
	return g.t(wav.ErrDamaged.Error())
}

// levelOf measures how loud a take is.
func levelOf(t *take.Take) level {
	m := synth.NewMeter(Rate)
	for x := t.Samples; len(x) > 0; {
		n := min(len(x), workPerTick)
		m.Write(x[:n])
		x = x[n:]
	}
	return level{lkfs: m.Loudness(), peak: m.Peak(), known: true}
}

// likeTake is a plain sound of a recording's note and length: where matching begins.
func likeTake(t *take.Take) synth.Sound {
	s := synth.Default()
	if note, _, ok := t.Note(); ok {
		s.Note = float64(max(24, min(96, note)))
	}
	s.Seconds = math.Round(10*max(0.5, min(10, t.Seconds))) / 10
	return s
}
