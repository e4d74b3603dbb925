package mark

import (
	"fmt"
	"math"
)

// camStep is one just-noticeable step of brightness in Cam: the centroid by 5
// % (hearing.md 1.3, low confidence), which is 0.6 Cam or so at 2 kHz on a
// power scale; the compressed centroid used here moves less (design choice).
const camStep = 0.25

func compareSweep(t, y *heard) (f []finding) {
	a, b := t.sweep, y.sweep
	switch {
	case !a.ok && !b.ok:
		return
	case !b.ok:
		return []finding{{aboutSweep, Reason{fmt.Sprintf("The target grows %s while it sounds; yours hardly changes.", more(a.to, a.from, "brighter", "duller")),
			math.Abs(a.from-a.to) / camStep / 2}}}
	case !a.ok:
		return []finding{{aboutSweep, Reason{fmt.Sprintf("Yours grows %s while it sounds; the target hardly changes.", more(b.to, b.from, "brighter", "duller")),
			math.Abs(b.from-b.to) / camStep / 2}}}
	}
	if (a.from-a.to)*(b.from-b.to) > 0 {
		stays := more(a.from, a.to, "bright", "dull")
		f = append(f, finding{aboutSweep, Reason{fmt.Sprintf("Yours stays %s %s: its brightness changes within %s, the target's within %s.",
			stays, more(b.seconds, a.seconds, "longer", "less long"), duration(b.seconds), duration(a.seconds)),
			math.Abs(math.Log(b.seconds/a.seconds)) / math.Log(1.15)}})
	}
	return append(f, finding{aboutSweep, Reason{fmt.Sprintf("Yours starts %s than the target.", more(b.from, a.from, "brighter", "duller")),
		math.Abs(a.from-b.from) / camStep / 2}})
}

func compareLength(t, y *heard) (f []finding) {
	// A filled interval of a second is told from one 6 % longer (Abel 1972).
	d := math.Abs(y.seconds-t.seconds) / (0.06 * math.Pow(t.seconds, 0.588))
	return []finding{{aboutLength, Reason{fmt.Sprintf("Yours is heard for %s, the target for %s: it dies away %s.",
		duration(y.seconds), duration(t.seconds), more(y.seconds, t.seconds, "later", "sooner")), d / 4}}}
}

func compareTimbre(t, y *heard) (f []finding) {
	d := y.cam - t.cam
	return []finding{{aboutTimbre, Reason{fmt.Sprintf("Yours is %s than the target: its high partials are %s.",
		more(d, 0, "brighter", "duller"), more(d, 0, "stronger", "weaker")), math.Abs(d) / camStep}}}
}
