package mark

import "math"

// levels are those of the first partials of a sound or of a template, in dB
// under the strongest, cut at floor, and how much each counts.
type levels struct {
	db, weight [templatePartials]float64
	n          int // partials that there are
}

// levelsOf takes the levels from powers.
func levelsOf(power []float64) (l levels) {
	l.n = min(len(power), templatePartials)
	top := floor * 10
	for k, p := range power[:l.n] {
		l.db[k] = 10 * math.Log10(p+1e-20)
		top = math.Max(top, l.db[k])
	}
	l.cut(top)
	return
}

// cut brings the levels to their place under top.
func (l *levels) cut(top float64) {
	for k := range l.n {
		l.db[k] = math.Max(floor, l.db[k]-top)
		l.weight[k] = weightOf(l.db[k])
	}
}

// weightOf a partial grows with its level: 0.1 at the floor, 1 at the top.
func weightOf(db float64) float64 { return 0.1 + 0.9*(1-db/floor) }

// fit finds the member of a family nearest to the levels, and by how much it
// misses them in dB. It starts with the member *start, and leaves there which
// one it was: the one of a frame before is hardly ever far off.
func (l *levels) fit(f family, start *int) (value, misfit float64) {
	list := templates()[f]
	index := *start
	best := l.against(&list[index].levels, math.Inf(1))
	for i := range list {
		if e := l.against(&list[i].levels, best); e < best {
			best, index = e, i
		}
	}
	*start = index
	value = list[index].value
	if index > 0 && index < len(list)-1 {
		a, c := l.against(&list[index-1].levels, math.Inf(1)), l.against(&list[index+1].levels, math.Inf(1))
		if d := a - 2*best + c; d > 0 {
			value += 0.25 * (list[index+1].value - list[index-1].value) * (a - c) / d
		}
	}
	return value, math.Sqrt(best)
}

// against is the weighted mean of the squared differences in dB from a
// template, after the best common shift; +Inf where it would be more than
// most. Each partial weighs as in whichever of the two it is stronger, and
// what is missing in both says nothing.
func (l *levels) against(t *levels, most float64) float64 {
	var sum, weight float64
	var weights [templatePartials]float64
	have := l.db[:min(l.n, templatePartials)]
	for k, v := range have {
		a, b := l.weight[k], t.weight[k]
		w := (a + b + math.Abs(a-b)) / 2 // the greater one, without a branch
		weights[k] = w
		sum += w * (v - t.db[k])
		weight += w
	}
	shift, err := sum/weight, 0.0
	most *= weight
	for k, v := range have {
		e := v - t.db[k] - shift
		if e > 15 || e < -15 {
			e = 15
		}
		if v == floor && t.db[k] == floor {
			continue
		}
		if err += weights[k] * e * e; err > most {
			return math.Inf(1)
		}
	}
	return err / weight
}
