package credit

import (
	"math"
	"regexp"

	"partialcredit/synth"
)

// A rule says which sentences name the audible effect of a control above and
// below the target, and which may follow from it at all.
type rule struct{ above, below, own *regexp.Regexp }

func (r rule) side(above bool) *regexp.Regexp {
	if above {
		return r.above
	}
	return r.below
}

var says = regexp.MustCompile

// brightness follows from whatever moves partials, and only there may it be
// spoken of.
const brightness = `|brighter|duller|bright|dull`

var rules = map[string]rule{
	"shape/a.shape": {own: says(`^Yours has`)},
	"duty/a.duty": {
		above: says(`pulse is wider|yours is wider|of half duty; the target`),
		below: says(`pulse is narrower|yours is narrower|target has odd partials only`),
		own:   says(`pulse` + brightness)},
	"tune/a.cents":   {says(`sharp|too high`), says(`flat|too low`), says(`sharp|flat|semitones`)},
	"tune/a.footage": {says(`higher than the target`), says(`lower than the target`), says(`octave`)},

	"width/lfo.hz":   {says(`FASTER|target moves more slowly`), says(`SLOWER|yours moves more slowly`), says(`swell|moves more slowly`)},
	"width/lfo.duty": {says(`moves further|the target stands still`), says(`moves less|yours stands still`), says(`width|swell|pulse` + brightness)},
	"width/a.duty":   {says(`wider on the whole`), says(`narrower on the whole`), says(`width|swell|pulse` + brightness)},

	"vibrato/lfo.hz":    {says(`vibrato of yours is faster`), says(`vibrato of yours is slower|needs vibrato`), says(`vibrato|swings`)},
	"vibrato/lfo.cents": {says(`vibrato of yours is wider`), says(`vibrato of yours is narrower|needs vibrato`), says(`vibrato|swings`)},
	"vibrato/lfo.fade":  {says(`yours (is fully there later|grows)`), says(`yours is fully there sooner|the target's grows`), says(`vibrato`)},

	"tremolo/lfo.hz":    {says(`FASTER|target moves more slowly`), says(`SLOWER|yours moves more slowly`), says(`swells|moves`)},
	"tremolo/lfo.level": {says(`swings further`), says(`swings less|yours stands still`), says(`swings|swells`)},

	"glide/envelope.a":       {says(`HIGHER`), says(`LOWER|yours stands still`), says(`semitones above|glides|falls`)},
	"glide/envelope.seconds": {says(`falls more slowly`), says(`falls faster|yours stands still`), says(`falls|glides`)},

	"beats/b.cents": {
		above: says(`FASTER|target moves more slowly|the target stands still`),
		below: says(`SLOWER|yours moves more slowly|yours stands still`),
		own:   says(`beats|swells|sharp|flat`)}, // the pitch lies between the two tones
	"beats/combine.balance": {
		above: says(`deeper|swings further`), // beats of two sines are a tremolo
		below: says(`shallower|swings less|yours stands still`),
		own:   says(`beats|stands still|swells|swings|sharp|flat|two tones`)},
	"octaves/b.footage":       {own: says(`octave|yours beats|Yours beats`)}, // in unison with A it beats
	"octaves/combine.balance": {says(`above (the pitch )?is stronger`), says(`above (the pitch )?is weaker`), says(`octave` + brightness)},
	"octaves/b.level":         {says(`above (the pitch )?is stronger`), says(`above (the pitch )?is weaker`), says(`octave` + brightness)},
	"two pulses/a.duty":       {says(`lower tone is wider`), says(`lower tone is narrower`), says(`lower tone|octave` + brightness)},
	"two pulses/b.duty":       {says(`upper tone is wider`), says(`upper tone is narrower`), says(`upper tone|octave` + brightness)},

	"ring/combine.ratio": {says(`ratio is higher`), says(`ratio is lower`), says(`ratio|sums` + brightness)},
	// Where the sums and differences cannot be followed, one by one, what is heard
	// of them is how the brightness starts, falls and comes to rest: the same three.
	"ring sweep/combine.ratio":    {says(`ratio is higher|comes to rest brighter`), says(`ratio is lower|comes to rest duller`), says(`ratio|sums` + brightness)},
	"ring sweep/envelope.b":       {says(`start too high|starts brighter`), says(`start too low|starts duller`), says(`sums` + brightness)},
	"ring sweep/envelope.seconds": {says(`fall more slowly|bright longer`), says(`fall faster|bright less long`), says(`sums` + brightness)},
	"am/combine.ratio":            {says(`ratio is higher`), says(`ratio is lower`), says(`ratio` + brightness)},
	"am/combine.depth":            {says(`sidebands of yours are stronger`), says(`sidebands of yours are weaker`), says(`sidebands`)},
	// Of a small index only the first pair of sidebands is heard, and then it is
	// as amplitude modulation: stronger is then what a higher index is.
	"fm/combine.index": {says(`reach higher|spread further|sidebands of yours are stronger`), says(`reach less high|spread less|sidebands of yours are weaker`), says(`index|sidebands` + brightness)},
	"fm/combine.ratio": {says(`ratio is higher`), says(`ratio is lower`), says(`ratio|beats|swell` + brightness)},

	"bell/envelope.seconds": {says(`bright longer`), says(`bright less long|dull from the start`), says(`bright|dull`)},
	// A higher index starts brighter and, falling, stays bright longer.
	"bell/combine.index": {says(`further|brighter|bright longer`), says(`less far|duller|bright less long|dull from the start`), says(`bright|dull|index`)},
	// The less of it falls away the less is heard of a fall at all.
	"bell/envelope.depth": {never, says(`falls less far|that of yours hardly changes`), says(`bright|index|dull`)},

	"sync/combine.ratio":          {says(`ratio is higher`), says(`ratio is lower`), says(`ratio` + brightness)},
	"sync sweep/envelope.b":       {says(`starts too high`), says(`starts too low`), says(`peak`)},
	"sync sweep/envelope.seconds": {says(`falls more slowly|bright longer`), says(`falls faster|falls too fast|bright less long`), says(`peak` + brightness)}, // as with the ring sweep
	"sync sweep/combine.ratio":    {says(`ratio is higher|too high`), says(`ratio is lower|too low`), says(`peak|ratio`)},

	"loudness/amplitude.attack":  {says(`rises more slowly`), says(`rises faster`), says(`rises`)},
	"loudness/amplitude.decay":   {says(`dies away more slowly`), says(`dies away faster`), says(`dies away`)},
	"loudness/amplitude.sustain": {says(`holds a higher`), says(`holds a lower`), says(`holds`)},
}

// foldedRules hold where the moving pulse passes a half, beyond which it sounds
// as it did before: between its thinnest and a half, a wider centre cannot be
// told from a smaller movement.
var foldedRules = map[string]rule{
	"width/a.duty":   {says(`wider on the whole|moves less`), says(`narrower on the whole|moves further`), rules["width/a.duty"].own},
	"width/lfo.duty": {says(`moves further|narrower on the whole`), says(`moves less|wider on the whole`), rules["width/lfo.duty"].own},
}

func folds(s synth.Sound) bool { return s.A.Duty+s.LFO.Duty > 0.5 }

// otherShape is what is said of two shapes. The two sawtooths sound alike.
func otherShape(target, yours synth.Sound) string {
	names := []string{"a triangle", "a sawtooth", "a sawtooth", "a pulse of half duty", "a sine"}
	return "^Yours has .*" + names[yours.A.Shape] + "; the target has .*" + names[target.A.Shape]
}

// otherOctave is what is said where B, an octave or two above A in the target,
// is put at another footage.
func otherOctave(target, yours synth.Sound) string {
	name := map[float64]string{4: "one octave", 2: "two octaves"}
	switch yours.B.Footage {
	case 32:
		return "two octaves lower"
	case 16:
		return "an octave lower"
	case 8:
		return name[target.B.Footage] + " above (the pitch )?is weaker"
	}
	return "second tone of yours lies " + name[yours.B.Footage] + " above the pitch, the target's " + name[target.B.Footage]
}

// fainterDB is how far the fainter of two mixed tones is under the other.
func fainterDB(s synth.Sound) float64 {
	b := s.Combine.Balance
	return math.Abs(20 * math.Log10((1+b)/(1-b)))
}

// beatsOnly says whether the ratio of yours is so near to the whole one of the
// target that its lines fall together into partials that beat, fewer than 20
// times a second (slower than roughness; hearing.md 1.5): those are heard, and
// they are the same on either side.
func (s *Sweep) beatsOnly(yours synth.Sound) bool {
	whole := math.Round(2 * s.Target.Combine.Ratio)
	if 2*s.Target.Combine.Ratio != whole {
		return false
	}
	a, b := yours.Hz()
	k := math.Max(1, math.Round(2*a/b))
	return math.Abs(2*a-k*b) < 20
}
