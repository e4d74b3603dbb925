package mark

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/synth"
	"partialcredit/synth/spectrum"
)

// expected says which sentence names the audible effect of a control: for a
// setting above (true) or below the target, what the first reason must say.
// The words are matched as regular expressions, the alternatives all true.
var expected = map[string]struct{ above, below string }{
	"duty/a.duty":             {`pulse (of yours )?is wider`, `pulse (of yours )?is narrower`},
	"width-rate/lfo.hz":       {`faster|FASTER`, `slower|SLOWER|stands still|more slowly`},
	"vibrato/lfo.cents":       {`vibrato of yours is wider`, `vibrato of yours is narrower|needs vibrato`},
	"drum/envelope.a":         {`falls from|starts`, `falls from|yours stands still`},
	"beats/b.cents":           {``, ``}, // see wanted
	"octaves/combine.balance": {`octave.* stronger in yours`, `octave.* weaker in yours`},
	"ring/combine.ratio":      {`ratio is higher`, `ratio is lower`},
	"am/combine.ratio":        {`ratio is higher`, `ratio is lower`},
	"fm/combine.index":        {`reach higher`, `reach less high`},
	"bell/envelope.seconds":   {`bright longer`, `bright less long`},
	"sync/combine.ratio":      {`ratio is higher`, `ratio is lower`},
	"sync-sweep/envelope.b":   {`starts too high`, `starts too low`},
	"tremolo/lfo.hz":          {`FASTER`, `SLOWER|more slowly`},
	"two-at-once/lfo.hz":      {`FASTER`, `SLOWER|more slowly`},
	"two-at-once/lfo.duty":    {`moves further`, `moves less|yours stands still`},
}

var saidRates = regexp.MustCompile(`([0-9.]+|once|twice) times a second, the target ([0-9.]+)`)

func TestReasonsOnTheSheet(t *testing.T) {
	t.Parallel()
	total, right, english := 0, 0, onlyEnglish(t)
	var kit spectrum.Kit // not that of the tests which run one after the other
	for _, e := range Swept() {
		seconds := listening(e.Target)
		target := hear(&kit, perform(e.Target, seconds), Rate, fundamental(e.Target))
		t.Logf("%s: %s", e.ID, target)
		for i := range e.Controls {
			c := &e.Controls[i]
			name := e.ID + "/" + c.Fields[0]
			n, ok := 0, 0
			for _, v := range settings(c, e.Target) {
				yours := e.Target
				c.Set(&yours, v)
				y := hear(&kit, perform(yours, seconds), Rate, fundamental(e.Target))
				got := reasons(target, y)
				inGerman(t, english, got)
				first := "(nothing)"
				if len(got) > 0 {
					first = got[0].Text.String()
				}
				good := wanted(name, c, &e, v, first)
				n++
				mark := "    "
				if good {
					ok++
				} else {
					mark = "BAD "
				}
				t.Logf("%s %-24s %9.4g of %-9.4g (%4.1f steps) %s", mark, name, v, c.Get(&e.Target), Steps(c.Fields[0], e.Target, c.Get(&e.Target), v), texts(got))
				if !good {
					t.Logf("      %s", y)
				}
			}
			t.Logf("%s: %d of %d", name, ok, n)
			total += n
			right += ok
		}
	}
	t.Logf("all: %d of %d = %.1f %%", right, total, 100*float64(right)/float64(total))
	if float64(right) < 0.95*float64(total) {
		t.Errorf("the first reason is right in %d of %d cases; wanted 95 %%", right, total)
	}
}

func texts(r []Reason) string {
	var s []string
	for _, x := range r {
		s = append(s, fmt.Sprintf("[%.1f] %s", x.Cost, x.Text))
	}
	return strings.Join(s, " | ")
}

// settings are wrong settings of a control: 3, 5, 8, 13 and 21 steps away on
// either side as far as the control goes, its ends and its start, and all
// other choices.
func settings(c *sheet.Control, target synth.Sound) (v []float64) {
	f, at := c.Field(), c.Get(&target)
	if len(f.Choices) > 0 {
		for i := range f.Choices {
			if float64(i) != at {
				v = append(v, float64(i))
			}
		}
		return
	}
	far := func(x float64) float64 { return Steps(c.Fields[0], target, at, x) }
	for _, end := range []float64{c.Min, c.Max} {
		for _, want := range []float64{3, 5, 8, 13, 21, 40} {
			if far(end) < want {
				break
			}
			v = append(v, stepsAway(far, want, at, end))
		}
		if far(end) >= 3 {
			v = append(v, end)
		}
	}
	if far(c.Start) >= 3 {
		v = append(v, c.Start)
	}
	return
}

func wanted(name string, c *sheet.Control, e *sheet.Exercise, v float64, said string) bool {
	if m := saidRates.FindStringSubmatch(said); m != nil {
		var y, t float64
		fmt.Sscan(m[1], &y)
		fmt.Sscan(m[2], &t)
		said += map[bool]string{true: " FASTER", false: " SLOWER"}[y > t]
	}
	at := c.Get(&e.Target)
	if name == "duty/a.duty" {
		v = min(v, 1-v) // a duty d sounds like 1 - d
	}
	matches := func(re string) bool { return regexp.MustCompile(re).MatchString(said) }
	switch name {
	case "shape/a.shape":
		shapes := []string{"a triangle", "a sawtooth", "a sawtooth", "a pulse of half duty", "a sine"}
		if shapes[int(v)] == shapes[int(at)] {
			return said == "(nothing)"
		}
		return matches("Yours has .*" + shapes[int(v)] + "; the target has .*" + shapes[int(at)])
	case "footage/a.footage":
		return matches(map[bool]string{true: "higher", false: "lower"}[v > at] + " than the target: its footage")
	case "octaves/b.footage":
		return map[int]func() bool{ // the target's B is at 4'
			0: func() bool { return matches("two octaves lower") },
			1: func() bool { return matches("an octave lower") },
			2: func() bool { return matches("one octave above (the pitch )?is weaker in yours") },
			4: func() bool { return matches("two octaves above the pitch, the target's one") },
		}[int(v)]()
	case "beats/b.cents":
		if math.Abs(math.Abs(v)-math.Abs(at)) < 1 {
			return matches(map[bool]string{true: "sharp", false: "flat"}[v > at])
		}
		if math.Abs(v) > math.Abs(at) {
			return matches("FASTER.*|nearer to zero")
		}
		return matches("SLOWER|further from zero|stands still|more slowly")
	case "drum/envelope.a":
		m := regexp.MustCompile(`from ([0-9.]+) semitones above, the target from ([0-9.]+)`).FindStringSubmatch(said)
		if m == nil {
			return v < at && matches("yours stands still")
		}
		var y, t float64
		fmt.Sscan(m[1], &y)
		fmt.Sscan(m[2], &t)
		return (y > t) == (v > at)
	}
	x, ok := expected[name]
	if !ok {
		return false
	}
	if v > at {
		return matches(x.above)
	}
	return matches(x.below)
}

// stepsAway finds by halving the value between at and end that lies want steps
// from at; far counts them, and end must lie further.
func stepsAway(far func(float64) float64, want, at, end float64) float64 {
	for range 50 {
		if mid := (at + end) / 2; far(mid) < want {
			at = mid
		} else {
			end = mid
		}
	}
	return end
}
