package browser

import (
	"math"

	"partialcredit/game/ui"
)

// A rangeInput is a ruler as an HTML range input: whole steps from 0 to most.
// One step is the ruler's fine step, equal ratios being equal lengths on a
// logarithmic ruler, so that assistive devices step as the arrow keys do.
type rangeInput struct {
	most, value float64
}

func rangeOf(r *ui.Ruler) rangeInput {
	most := math.Round(steps(r))
	return rangeInput{most, math.Round(max(0, min(1, r.Fraction())) * most)}
}

// rulerValue is the value of r where its range input stands at v.
func rulerValue(r *ui.Ruler, v float64) float64 {
	return r.At(v / rangeOf(r).most)
}

func steps(r *ui.Ruler) float64 {
	n := (r.Max - r.Min) / r.Step
	if r.Log {
		n = math.Log(r.Max/r.Min) / math.Log(r.Step)
	}
	if !(n >= 1) || n > 1e6 { // no step given, or none that makes sense
		return 100
	}
	return n
}
