package figure

import (
	"math"
	"strings"

	"partialcredit/synth"
)

// Along is what a sweep goes along: a quantity from one value to another.
type Along struct {
	Name     string // the quantity, and its unit where the texts have none
	From, To float64
	Log      bool                 // equal ratios are equal lengths; both ends are above 0 then
	Text     func(float64) string // a value as it stands on the axis
}

// AlongField goes along a field of a sound.
func AlongField(f *synth.Field, from, to float64) Along {
	return Along{Name: f.Label, From: from, To: to, Log: f.Log, Text: func(v float64) string { return short(f.Format(v)) }}
}

// AlongTime goes along the time of a note, in seconds.
func AlongTime(seconds float64, w Words) Along {
	w = w.whole()
	return Along{Name: w.Time, To: seconds, Text: func(v float64) string { return w.number(v, 3) + " s" }}
}

// Value is the value at a place, 0 to 1.
func (a *Along) Value(place float64) float64 {
	if a.Log {
		return a.From * math.Pow(a.To/a.From, place)
	}
	return a.From + place*(a.To-a.From)
}

// place is where a value is.
func (a *Along) place(v float64) float64 {
	if a.Log {
		return math.Log(v/a.From) / math.Log(a.To/a.From)
	}
	return (v - a.From) / (a.To - a.From)
}

// ticks are round values on the axis, most or fewer, in rising order; the ends alone where it is too
// short for them.
func (a *Along) ticks(most int) []float64 {
	lo, hi := min(a.From, a.To), max(a.From, a.To)
	var out []float64
	if a.Log && hi/lo > 8 {
		for _, multiples := range [][]float64{{1, 2, 5}, {1, 3}, {1}} {
			out = out[:0]
			for decade := math.Pow(10, math.Floor(math.Log10(lo))); decade <= hi; decade *= 10 {
				for _, m := range multiples {
					if v := decade * m; v >= lo*(1-1e-9) && v <= hi*(1+1e-9) {
						out = append(out, v)
					}
				}
			}
			if len(out) <= most {
				break
			}
		}
		return out
	}
	step := math.Pow(10, math.Floor(math.Log10(hi-lo)))
	for _, m := range [...]float64{0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5} {
		if (hi-lo)/(m*step) <= float64(most) {
			step *= m
			break
		}
	}
	for n := math.Ceil(lo/step - 1e-9); n*step <= hi+1e-9*step; n++ {
		out = append(out, n*step)
	}
	if len(out) < 2 {
		out = []float64{lo, hi}
	}
	return out
}

// FieldAt returns the sound at each place of a sweep along a field.
func FieldAt(s synth.Sound, f *synth.Field, a Along) func(place float64) Signal {
	return func(place float64) Signal {
		f.Set(&s, f.Clamp(a.Value(place)))
		return OfSound(s)
	}
}

// Note is a whole note from its start to the end of its release.
func Note(s synth.Sound) Signal {
	return Signal{Samples: synth.Render(s, Rate), Rate: Rate, Hz: fundamental(&s)}
}

// moment is how much of a note is measured at once: twenty periods, so that the lines of the
// window, four bins to either side, keep apart from the next partial; within bounds that keep a
// swift change visible (design choice).
func moment(hz float64) (seconds float64) {
	return max(0.06, min(0.25, 20/max(hz, 1)))
}

// NoteAt returns the part of a note around each place of a sweep along its time.
func NoteAt(note Signal) func(place float64) Signal {
	n := int(moment(note.Hz) * note.Rate)
	return func(place float64) Signal {
		part := note
		part.Cycle = nil
		from := int(place*float64(len(note.Samples))) - n/2
		part.Samples = make([]float32, n)
		for i := range part.Samples {
			if at := from + i; at >= 0 && at < len(note.Samples) {
				part.Samples[i] = note.Samples[at]
			}
		}
		return part
	}
}

// short takes the noughts off the end of the decimals of a number that stands in a text.
func short(s string) string {
	point := strings.IndexByte(s, '.')
	if point < 0 {
		return s
	}
	end := point + 1
	for end < len(s) && s[end] >= '0' && s[end] <= '9' {
		end++
	}
	return strings.TrimRight(strings.TrimRight(s[:end], "0"), ".") + s[end:]
}
