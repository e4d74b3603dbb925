package advice

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// A small loudspeaker, as in tablets and phones, is taken for a high-pass of the second
// order, as a closed box is below its resonance: |H|² = r⁴/(1 + r⁴), r = f/smallHz (design
// choice, from memory). What loses mostLost, 10 dB, comes out half as loud (Stevens).
const (
	smallHz  = 300.0
	mostLost = 10.0 // dB of the A-weighted power
	muchLost = 20.0 // a quarter as loud
)

const (
	pitchHz    = 4000.0  // above it, pitch is hardly heard: 4 to 5 kHz (from memory: the limit of musical intervals)
	airHz      = 8000.0  // above it, much is lost on older ears and small loudspeakers (design choice)
	mostHigh   = 0.5     // of the A-weighted power (design choice)
	strong     = 0.1     // of the strongest line's A-weighted power, -10 dB: what may give the pitch (design choice)
	softer     = 1.0     // dB: what is heard of a difference in level (hearing.md 1.2)
	muchSofter = 6.0     // dB (design choice)
	rate       = 48000   // Hz
	stretch    = 1 << 16 // samples of a spectrum
)

// A band is what a sound has in the parts of the range of hearing.
type band struct {
	lost   float64 // dB of A-weighted power that a small loudspeaker loses
	high   float64 // share of it above airHz
	lowest float64 // Hz, the lowest of its strong lines
	crest  float64 // dB, peak above loudness
	silent bool
}

// listen renders a sound, two seconds of it at the most.
func listen(kit *spectrum.Kit, s synth.Sound) band {
	s.Seconds = math.Min(s.Seconds, 2)
	samples := synth.Render(s, rate)
	meter := synth.NewMeter(rate)
	meter.Write(samples)
	loudness := meter.Loudness()
	if math.IsInf(loudness, -1) || meter.Peak() < 1e-6 { // -120 dB is silence on any device (game/mark)
		return band{silent: true}
	}
	b := band{crest: 20*math.Log10(meter.Peak()) - loudness}
	x := kit.Real(stretch).Coefficients(samples[:min(len(samples), stretch)], kit.Hann(stretch))
	power := make([]float64, len(x))
	all, left, most := 0.0, 0.0, 0.0
	for k := range x {
		hz := float64(k) * rate / stretch
		if hz < 20 { // the lower limit of hearing
			continue
		}
		re, im := real(x[k]), imag(x[k])
		power[k] = (re*re + im*im) * spectrum.Power(spectrum.AWeight(hz))
		all += power[k]
		most = max(most, power[k])
		r4 := math.Pow(hz/smallHz, 4)
		left += power[k] * r4 / (1 + r4)
		if hz > airHz {
			b.high += power[k]
		}
	}
	b.lost, b.high = spectrum.PowerDB(all/left), b.high/all
	for k := range power {
		if power[k] > strong*most {
			b.lowest = float64(k) * rate / stretch
			break
		}
	}
	return b
}

// comesOut tells how a sound comes out of the app and of a small loudspeaker, and
// whether there was anything to tell.
func (a *Adviser) comesOut(s synth.Sound, what words.Message) (told bool) {
	if a.ended {
		return false
	}
	before := len(a.found)
	b := listen(&a.kit, s)
	a.breathe()
	percent := func(share float64) string { return whole(100*share) + " %" }
	switch {
	case b.silent:
		a.tell(Silent, -1, Mistake, words.Say("%s is silent.", what))
		return true
	case b.lowest > pitchHz:
		a.tell(High, -1, Warning, words.Say("%s is very high: its lowest strong tone lies at %s. Above about %s pitch is hardly heard, and few partials are left to tell a shape by.", what, hertz(b.lowest), hertz(pitchHz)))
	case b.high > mostHigh:
		a.tell(High, -1, Warning, words.Say("%s is very high: %s of what is heard of it lies above %s, where small loudspeakers and older ears have little.", what, percent(b.high), hertz(airHz)))
	case b.lost > mostLost:
		a.low = append(a.low, low{what, b.lost})
		told = true
	}
	over := b.crest + synth.Loudness - 20*math.Log10(synth.PeakLimit)
	weight := Note
	if over >= muchSofter {
		weight = Warning
	}
	if over >= softer {
		a.tell(Loud, -1, weight, words.Say("%s has peaks too high for its loudness: to stay below the limit of the output it comes out %s softer than other sounds.", what, whole(over)+" dB"))
	}
	return told || len(a.found) > before
}

// A low is a sound that small loudspeakers make softer.
type low struct {
	what words.Message
	lost float64 // dB
}

// tellLow tells of all sounds that are too low at once, by the one that is lost most.
func (a *Adviser) tellLow() {
	if len(a.low) == 0 {
		return
	}
	worst := slices.MaxFunc(a.low, func(x, y low) int { return cmp.Compare(x.lost, y.lost) })
	weight := Note
	if worst.lost >= muchLost {
		weight = Warning
	}
	a.tell(Low, -1, weight, words.Say("%s is low for small loudspeakers: those of tablets and phones give little below %s, and it comes out about %s softer there (such sounds: %d). Use headphones, or higher notes.",
		worst.what, hertz(smallHz), whole(worst.lost)+" dB", len(a.low)))
}

func hertz(hz float64) string {
	if hz >= 1000 {
		return strconv.FormatFloat(hz/1000, 'f', 1, 64) + " kHz"
	}
	return whole(hz) + " Hz"
}
