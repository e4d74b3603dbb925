package mark

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"partialcredit/synth"
)

// A technique makes random targets and names the controls that are set wrong.
type technique struct {
	name   string
	make   func(r *rand.Rand) synth.Sound
	fields []string
}

func uniform(r *rand.Rand, low, high float64) float64 { return low + (high-low)*r.Float64() }
func even(r *rand.Rand, low, high float64) float64    { return low * math.Pow(high/low, r.Float64()) }

func base(r *rand.Rand, low, high int) synth.Sound {
	s := synth.Default()
	s.Note = float64(low + r.IntN(high-low+1))
	return s
}

var techniques = []technique{
	{"duty", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 76)
		s.A.Shape, s.A.Duty = synth.Pulse, uniform(r, 0.06, 0.48)
		return s
	}, []string{"a.duty"}},
	{"tune", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 76)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.A.Duty = uniform(r, 0.1, 0.5)
		return s
	}, []string{"a.cents", "a.footage"}},
	{"width", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 64)
		s.A.Shape, s.A.Duty = synth.Pulse, uniform(r, 0.3, 0.5)
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Duty = even(r, 0.6, 8), uniform(r, 0.1, 0.4)
		return s
	}, []string{"lfo.hz", "lfo.duty"}},
	{"vibrato", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 76)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Cents, s.LFO.Fade = even(r, 2, 9), even(r, 20, 120), uniform(r, 0, 0.8)
		return s
	}, []string{"lfo.hz", "lfo.cents", "lfo.fade"}},
	{"glide", func(r *rand.Rand) synth.Sound {
		s := base(r, 33, 57)
		s.A.Shape = synth.Shape([]int{0, 1, 4}[r.IntN(3)])
		s.Envelope.A, s.Envelope.Seconds = uniform(r, 5, 36), even(r, 0.03, 0.3)
		if r.IntN(2) == 0 {
			s.Amplitude.Decay, s.Amplitude.Sustain = even(r, 0.2, 0.6), 0
		}
		return s
	}, []string{"envelope.a", "envelope.seconds"}},
	{"beats", func(r *rand.Rand) synth.Sound {
		s := base(r, 40, 69)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.A.Duty = uniform(r, 0.2, 0.5)
		s.B.Shape, s.B.Duty = s.A.Shape, s.A.Duty
		s.Combine.How, s.Combine.Balance = synth.Mix, uniform(r, -0.3, 0.3)
		s.B.Cents = uniform(r, 4, 35)
		return s
	}, []string{"b.cents", "combine.balance"}},
	{"octaves", func(r *rand.Rand) synth.Sound {
		s := base(r, 40, 64)
		s.A.Shape, s.B.Shape = synth.Shape(r.IntN(2)), synth.Shape(r.IntN(2))
		s.B.Footage = []float64{4, 2}[r.IntN(2)]
		s.B.Cents = uniform(r, 0.5, 2)
		s.Combine.How, s.Combine.Balance = synth.Mix, uniform(r, -0.4, 0.4)
		return s
	}, []string{"b.footage", "combine.balance"}},
	{"ring", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 69)
		s.A.Shape, s.B.Shape = synth.Shape([]int{0, 4, 1}[r.IntN(3)]), synth.Sine
		s.Combine.How, s.Combine.Ratio = synth.Ring, even(r, 0.4, 5)
		return s
	}, []string{"combine.ratio"}},
	{"am", func(r *rand.Rand) synth.Sound {
		s := base(r, 57, 76)
		s.A.Shape, s.B.Shape = synth.Shape([]int{0, 4}[r.IntN(2)]), synth.Sine
		s.Combine.How, s.Combine.Ratio, s.Combine.Depth = synth.AM, even(r, 0.26, 3), uniform(r, 0.3, 1)
		return s
	}, []string{"combine.ratio", "combine.depth"}},
	{"tremolo", func(r *rand.Rand) synth.Sound {
		s := base(r, 45, 69)
		s.A.Shape = synth.Shape(r.IntN(5))
		s.LFO.Shape = synth.LFOShape([]int{0, 3}[r.IntN(2)])
		s.LFO.Hz, s.LFO.Level = even(r, 1, 12), uniform(r, 0.3, 0.9)
		return s
	}, []string{"lfo.hz", "lfo.level"}},
	{"fm", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 60)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, uniform(r, 0.8, 5)
		s.Combine.Ratio = []float64{1, 1, 1.41, 2, 2.7, 3, 3.5}[r.IntN(7)]
		return s
	}, []string{"combine.index", "combine.ratio"}},
	{"bell", func(r *rand.Rand) synth.Sound {
		s := base(r, 48, 67)
		s.A.Shape, s.B.Shape = synth.Sine, synth.Sine
		s.Combine.How, s.Combine.Index = synth.FM, uniform(r, 2, 6)
		s.Combine.Ratio = []float64{1, 1.41, 2.7, 3.5}[r.IntN(4)]
		s.Envelope.Seconds, s.Envelope.Depth = even(r, 0.1, 0.6), 1
		s.Amplitude.Decay, s.Amplitude.Sustain = even(r, 0.8, 2), 0
		return s
	}, []string{"envelope.seconds", "combine.index"}},
	{"sync", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 57)
		s.A.Shape, s.B.Shape = synth.Sawtooth, synth.Shape([]int{0, 1, 3, 4}[r.IntN(4)])
		s.B.Duty = 0.5
		s.Combine.How, s.Combine.Ratio = synth.Sync, even(r, 1.2, 5)
		if s.B.Shape == synth.Pulse {
			s.Combine.Ratio = even(r, 2.2, 5) // below 1.5 a restarted square is a pulse, in every way
		}
		return s
	}, []string{"combine.ratio"}},
	{"sync sweep", func(r *rand.Rand) synth.Sound {
		s := base(r, 36, 52)
		s.A.Shape, s.B.Shape = synth.Sawtooth, synth.Sawtooth
		s.Combine.How, s.Combine.Ratio = synth.Sync, even(r, 1.2, 2.2)
		s.Envelope.B, s.Envelope.Seconds = uniform(r, 8, 20), even(r, 0.1, 0.6)
		return s
	}, []string{"envelope.b", "envelope.seconds", "combine.ratio"}},
}

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

// TestReasonsOnRandomTargets sets each control of random targets of every
// technique wrong and counts how often the first reason names its effect with
// the right direction, how often any reason says the opposite, and how often
// one speaks of something that the control cannot have caused.
func TestReasonsOnRandomTargets(t *testing.T) {
	// TARGETS=6 of every technique make the table that is reported; two keep the
	// tests short.
	targets := 2
	if n, err := strconv.Atoi(os.Getenv("TARGETS")); err == nil {
		targets = n
	}
	// SEED=n chooses other targets: the thresholds were set while looking at those
	// of seed 7.
	seed := uint64(7)
	if v, err := strconv.ParseUint(os.Getenv("SEED"), 10, 64); err == nil {
		seed = v
	}
	total, right, opposed, stray := 0, 0, 0, 0
	for _, q := range techniques {
		if only := os.Getenv("TECHNIQUE"); only != "" && !strings.Contains(only, q.name) {
			continue
		}
		r := rand.New(rand.NewPCG(seed, uint64(len(q.name)*1000+len(q.fields))))
		count := map[string]*[4]int{}
		for range targets {
			target := q.make(r)
			seconds := listening(target)
			heardTarget := hear(perform(target, seconds), Rate, fundamental(target))
			for _, field := range q.fields {
				f, _ := synth.FieldByName(field)
				name := q.name + "/" + field
				c := count[name]
				if c == nil {
					c = new([4]int)
					count[name] = c
				}
				for _, v := range wrong(f, target) {
					yours := target
					f.Set(&yours, v)
					if name == "beats/combine.balance" && math.Abs(fainterDB(target)-fainterDB(yours)) < 4 {
						continue // hardly another depth: which of the two is the fainter is not heard
					}
					y := hear(perform(yours, seconds), Rate, fundamental(target))
					got := reasons(heardTarget, y)
					first := "(nothing)"
					if len(got) > 0 {
						first = got[0].Text
					}
					ok, _, _ := judge(name, target, yours, f.Get(&target), v, first)
					c[0]++
					if ok {
						c[1]++
					}
					against, strays := 0, 0
					for _, g := range got {
						_, o, related := judge(name, target, yours, f.Get(&target), v, g.Text)
						if o {
							against++
						} else if !related && !regexp.MustCompile(`brighter|duller`).MatchString(g.Text) {
							strays++
						}
					}
					c[2] += min(1, against)
					c[3] += min(1, strays)
					if !ok || against > 0 || strays > 0 {
						t.Logf("%v %v %v %-24s %.4g of %.4g (%.1f steps): %s", map[bool]string{true: "ok", false: "BAD"}[ok], against, strays, name, v, f.Get(&target), Steps(field, target, f.Get(&target), v), texts(got))
						t.Logf("       target %s", heardTarget)
						t.Logf("       yours  %s", y)
					}
				}
			}
		}
		for _, field := range q.fields {
			name := q.name + "/" + field
			c := count[name]
			t.Logf("TABLE %-28s %3d cases, right %5.1f %%, opposed %5.1f %%, stray %5.1f %%", name, c[0],
				100*float64(c[1])/float64(c[0]), 100*float64(c[2])/float64(c[0]), 100*float64(c[3])/float64(c[0]))
			total += c[0]
			right += c[1]
			opposed += c[2]
			stray += c[3]
		}
	}
	t.Logf("TABLE all: %d cases, right %.1f %%, opposed %.1f %%, stray %.1f %%", total, 100*float64(right)/float64(total), 100*float64(opposed)/float64(total), 100*float64(stray)/float64(total))
	if float64(right) < 0.95*float64(total) {
		t.Errorf("the first reason is right in %d of %d cases; wanted 95 %%", right, total)
	}
}

// fainterDB is how far the fainter of two mixed tones is under the other.
func fainterDB(s synth.Sound) float64 {
	b := s.Combine.Balance
	return math.Abs(20 * math.Log10((1+b)/(1-b)))
}

// wrong settings of a field: 4, 8 and 16 steps away on either side, as far as
// it goes, and the other footages.
func wrong(f *synth.Field, target synth.Sound) (v []float64) {
	at := f.Get(&target)
	if len(f.Choices) > 0 {
		for i := range f.Choices {
			if float64(i) != at {
				v = append(v, float64(i))
			}
		}
		return
	}
	far := func(x float64) float64 { return Steps(f.Name, target, at, x) }
	for _, end := range []float64{f.Min, f.Max} {
		if f.Name == "a.duty" {
			end = math.Min(end, 0.5)
		}
		for _, want := range []float64{4, 8, 16} {
			if far(end) < want {
				break
			}
			near, away := at, end
			for range 50 {
				if mid := (near + away) / 2; far(mid) < want {
					near = mid
				} else {
					away = mid
				}
			}
			v = append(v, away)
		}
	}
	return
}
