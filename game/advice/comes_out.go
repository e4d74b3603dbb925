package advice

import (
	"math"

	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// How sounds come out of the app: both of a pair at one loudness, and none with
// a peak above the limit.
const (
	Loudness  = -26.0 // LKFS
	PeakLimit = 0.49  // linear; -6.2 dBFS
)

const (
	smallHz    = 300.0  // below it, loudspeakers of tablets and phones give little (design choice, from memory)
	mostLow    = 0.9    // of the A-weighted power (design choice)
	pitchHz    = 4000.0 // above it, pitch is hardly heard: 4 to 5 kHz (from memory: the limit of musical intervals)
	airHz      = 8000.0 // above it, much is lost on older ears and small loudspeakers (design choice)
	mostHigh   = 0.5    // of the A-weighted power (design choice)
	strong     = 0.1    // of the strongest line's A-weighted power, -10 dB: what may give the pitch (design choice)
	softer     = 1.0    // dB: what is heard of a difference in level (hearing.md 1.2)
	muchSofter = 6.0    // dB (design choice)
	rate       = 48000
	stretch    = 1 << 16 // samples of a spectrum
)

// A band is what a sound has in the parts of the range of hearing.
type band struct {
	low, high float64 // shares of the A-weighted power below smallHz and above airHz
	lowest    float64 // Hz, the lowest of its strong lines
	crest     float64 // dB, peak above loudness
	silent    bool
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
	all, most := 0.0, 0.0
	for k := range x {
		hz := float64(k) * rate / stretch
		if hz < 20 { // the lower limit of hearing
			continue
		}
		re, im := real(x[k]), imag(x[k])
		power[k] = (re*re + im*im) * spectrum.Power(spectrum.AWeight(hz))
		all += power[k]
		most = max(most, power[k])
		if hz < smallHz {
			b.low += power[k]
		} else if hz > airHz {
			b.high += power[k]
		}
	}
	b.low, b.high = b.low/all, b.high/all
	for k := range power {
		if power[k] > strong*most {
			b.lowest = float64(k) * rate / stretch
			break
		}
	}
	return b
}

// comesOut tells how a sound comes out of the app and of a small loudspeaker.
func (a *Adviser) comesOut(s synth.Sound, what words.Message) {
	if a.ended || a.listened[s] {
		return
	}
	if a.listened == nil {
		a.listened = map[synth.Sound]bool{}
	}
	a.listened[s] = true
	b := listen(&a.kit, s)
	a.breathe()
	percent := func(share float64) string { return whole(100*share) + " %" }
	switch {
	case b.silent:
		a.tell(Silent, -1, Mistake, words.Say("%s is silent.", what))
		return
	case b.lowest > pitchHz:
		a.tell(High, -1, Warning, words.Say("%s is very high: its lowest strong tone lies at %s. Above about %s pitch is hardly heard, and few partials are left to tell a shape by.", what, hertz(b.lowest), hertz(pitchHz)))
	case b.high > mostHigh:
		a.tell(High, -1, Warning, words.Say("%s is very high: %s of what is heard of it lies above %s, where small loudspeakers and older ears have little.", what, percent(b.high), hertz(airHz)))
	case b.low > mostLow:
		a.tell(Low, -1, Warning, words.Say("%s is too low for small loudspeakers: %s of what is heard of it lies below %s, where those of tablets and phones give little. Use headphones, or a higher note.", what, percent(b.low), hertz(smallHz)))
	}
	over := b.crest + Loudness - 20*math.Log10(PeakLimit)
	if over < softer {
		return
	}
	weight := Note
	if over >= muchSofter {
		weight = Warning
	}
	a.tell(Loud, -1, weight, words.Say("%s has peaks too high for its loudness: to stay below the limit of the output it comes out %s softer than other sounds.", what, whole(over)+" dB"))
}

func hertz(hz float64) string {
	if hz >= 1000 {
		return words.English.Say("%.1f kHz", hz/1000)
	}
	return words.English.Say("%d Hz", int(math.Round(hz)))
}
