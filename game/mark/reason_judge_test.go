package mark

import (
	"fmt"
	"math"
	"regexp"

	"partialcredit/synth"
)

// names say which sentences name the audible effect of a control, above and
// below the target; own which sentences may follow from it at all.
var names = map[string]struct{ above, below, own string }{
	"duty/a.duty":             {`pulse is wider|yours is wider|of half duty; the target`, `pulse is narrower|yours is narrower|target has odd partials only`, `pulse`},
	"tune/a.cents":            {`sharp`, `flat`, `sharp|flat|semitones`},
	"tune/a.footage":          {`higher than the target`, `lower than the target`, `octave`},
	"width/lfo.hz":            {`FASTER|target moves more slowly`, `SLOWER|yours moves more slowly`, `swell|moves more slowly`},
	"width/lfo.duty":          {`moves further|the target stands still`, `moves less|yours stands still`, `width|swell`},
	"vibrato/lfo.hz":          {`vibrato of yours is faster`, `vibrato of yours is slower|needs vibrato`, `vibrato|swings`},
	"vibrato/lfo.cents":       {`vibrato of yours is wider`, `vibrato of yours is narrower|needs vibrato`, `vibrato|swings`},
	"vibrato/lfo.fade":        {`yours (is fully there after|grows)`, `yours is fully there after`, `vibrato`},
	"glide/envelope.a":        {`HIGHER`, `LOWER|yours stands still`, `semitones above|glides`},
	"glide/envelope.seconds":  {`falls more slowly`, `falls faster|yours stands still`, `falls|glides`},
	"beats/b.cents":           {``, ``, `beats|swells|detune|sharp|flat`},
	"beats/combine.balance":   {``, ``, `beats|stands still|swells|sharp|flat|two tones`},
	"octaves/b.footage":       {``, ``, `octave`},
	"octaves/combine.balance": {`above (the pitch )?is stronger`, `above (the pitch )?is weaker`, `octave`},
	"ring/combine.ratio":      {`ratio is higher`, `ratio is lower`, `ratio|sums`},
	"am/combine.ratio":        {`ratio is higher`, `ratio is lower`, `ratio`},
	"am/combine.depth":        {`sidebands of yours are stronger`, `sidebands of yours are weaker`, `sidebands`},
	"tremolo/lfo.hz":          {`FASTER|target moves more slowly`, `SLOWER|yours moves more slowly`, `swells|moves`},
	"tremolo/lfo.level":       {`swings further`, `swings less|yours stands still`, `swings|swells`},
	"fm/combine.index":        {`reach higher|spread further`, `reach less high|spread less`, `index`},
	"fm/combine.ratio":        {`ratio is higher`, `ratio is lower`, `ratio`},
	"bell/envelope.seconds":   {`bright longer`, `bright less long|dull from the start`, `bright`},
	// A higher index starts brighter and, falling, stays bright longer.
	"bell/combine.index":          {`further|brighter|bright longer`, `less far|duller|bright less long|dull from the start`, `bright|dull|index`},
	"sync/combine.ratio":          {`ratio is higher`, `ratio is lower`, `ratio`},
	"sync sweep/envelope.b":       {`starts too high`, `starts too low`, `peak`},
	"sync sweep/envelope.seconds": {`falls more slowly`, `falls faster|falls too fast`, `peak`},
	"sync sweep/combine.ratio":    {`ratio is higher|too high`, `ratio is lower|too low`, `peak|ratio`},
}

var saidFall = regexp.MustCompile(`falls from ([0-9.]+) semitones above, the target from ([0-9.]+)`)

// annotate adds to a sentence the direction that its numbers give.
func annotate(said string) string {
	add := func(re *regexp.Regexp, up, down string) {
		if m := re.FindStringSubmatch(said); m != nil {
			value := func(s string) (v float64) {
				switch s {
				case "once":
					return 1
				case "twice":
					return 2
				}
				fmt.Sscan(s, &v)
				return
			}
			if value(m[1]) > value(m[2]) {
				said += " " + up
			} else if value(m[1]) < value(m[2]) {
				said += " " + down
			}
		}
	}
	add(saidRates, "FASTER", "SLOWER")
	add(saidFall, "HIGHER", "LOWER")
	return said
}

// opposed says whether a sentence about control name says the wrong direction,
// right whether it says the right one, related whether it is about the control
// at all.
func judge(name string, target, yours synth.Sound, at, v float64, said string) (right, opposed, related bool) {
	n := names[name]
	said = annotate(said)
	matches := func(re string) bool { return re != "" && regexp.MustCompile(re).MatchString(said) }
	above, below := n.above, n.below
	switch name {
	case "beats/b.cents":
		a, b := math.Abs(at), math.Abs(v)
		if math.Abs(a-b) < 1.5 {
			above, below = `sharp`, `flat`
		} else if above, below = `FASTER|nearer to zero|target moves more`, `SLOWER|further from zero|yours stands still|yours moves more`; b < a != (v < at) {
			above, below = below, above
		}
	case "beats/combine.balance":
		above, below = `deeper`, `shallower|yours stands still`
		if math.Abs(v) > math.Abs(at) == (v > at) {
			above, below = below, above
		}
	case "octaves/b.footage":
		return octavesRight(target, yours, said), false, matches(n.own)
	}
	if v < at {
		above, below = below, above
	}
	return matches(above), matches(below) && !matches(above), matches(n.own)
}

func octavesRight(target, yours synth.Sound, said string) bool {
	matches := func(re string) bool { return regexp.MustCompile(re).MatchString(said) }
	name := map[float64]string{4: "one octave", 2: "two octaves"}
	switch yours.B.Footage {
	case 32:
		return matches("two octaves lower")
	case 16:
		return matches("an octave lower")
	case 8:
		return matches(name[target.B.Footage] + " above (the pitch )?is weaker")
	}
	return matches("second tone of yours lies " + name[yours.B.Footage] + " above the pitch, the target's " + name[target.B.Footage])
}
