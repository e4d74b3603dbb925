package advice

import (
	"math"
	"slices"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// How wide the search for other right answers is. The marking takes the steps between
// the descriptions within bounds of what the sounds say (mark.go), so an answer that is
// right has either a description that lies near, which is soon computed, or a
// sound that does, which has to be rendered.
const (
	described = 700 // settings whose descriptions are compared
	rendered  = 100 // settings whose sounds are, of two seconds; fewer of longer ones
	refined   = 4   // of these, how many are refined,
	tries     = 24  // with so many renderings each
	looked    = 12  // answers that are rendered because their descriptions lie near
	hopeless  = 25  // steps by the sounds that a few steps on the controls do not make good
	breather  = 100 // descriptions that take about as long as a rendering
)

// A place is a setting and how far it is from right.
type place struct {
	values []float64
	off    float64
}

// byOff is places with the best first. There are few; package slices would make the app
// larger by kilobytes for each type that it sorts.
func byOff(places []place) []place {
	for i := range places {
		for j := i; j > 0 && places[j].off < places[j-1].off; j-- {
			places[j], places[j-1] = places[j-1], places[j]
		}
	}
	return places
}

// candidates are settings far from the target that may be right, refined.
func (m *match) candidates() (all [][]float64) {
	n := 0
	apart := func(values []float64) float64 {
		if n++; n%breather == 0 {
			m.pause()
		}
		return mark.Apart(m.exercise.Target, m.sound(values))
	}
	allowed := m.allowed()
	for _, p := range m.minima(described, 0.5*m.times, apart) {
		if p = m.refine(p, apart, 0.003, 400); p.off < allowed && m.far(p.values) && len(all) < looked && !m.has(all, p.values) {
			all = append(all, p.values)
		}
	}
	if m.ended {
		return nil
	}
	heard := func(values []float64) float64 { return m.count(values).heard }
	places := m.minima(int(rendered*2/m.reference.Seconds()), 4*m.times, heard)
	for _, values := range m.octaves() {
		places = append(places, place{values, heard(values)})
	}
	places = byOff(places)
	for _, p := range places[:min(refined, len(places))] {
		if p.off > hopeless*m.times {
			break
		}
		if p = m.refine(p, heard, 0.1, tries); m.far(p.values) {
			all = append(all, p.values)
		}
	}
	return all
}

// has says that about the same setting is among others.
func (m *match) has(all [][]float64, values []float64) bool {
	return slices.ContainsFunc(all, func(other []float64) bool { return m.near(values, other) })
}

// allowed is how many steps leave nearly full marks.
func (m *match) allowed() float64 {
	steps := 0.0
	for mark.Credit(steps, m.times) >= nearly {
		steps += 0.05
	}
	return steps
}

// far says that a setting is another one: a control stands where it alone would cost
// half the marks, were every step heard.
func (m *match) far(values []float64) bool {
	for i, sc := range m.scales {
		if sc.apart(values[i], m.target[i]) >= m.half() {
			return true
		}
	}
	return false
}

// half is how many steps cost half the marks.
func (m *match) half() float64 { return 7 * m.times }

// minima goes over a grid of at most so many settings, no finer than gap in steps, and
// returns those, far from the target, that are nearer to right than their neighbours,
// the best first.
func (m *match) minima(most int, gap float64, off func([]float64) float64) (all []place) {
	axes := m.axes(most, gap)
	grid := map[string]float64{}
	index := make([]int, len(axes))
	values := func() []float64 {
		v := make([]float64, len(axes))
		for i := range axes {
			v[i] = axes[i][index[i]]
		}
		return v
	}
	key := func() string {
		b := make([]byte, len(index))
		for i, k := range index {
			b[i] = byte(k)
		}
		return string(b)
	}
	each := func(do func()) {
		clear(index)
		for i := 0; i < len(axes); {
			do()
			for i = 0; i < len(axes); i++ {
				if index[i]++; index[i] < len(axes[i]) {
					break
				}
				index[i] = 0
			}
		}
	}
	each(func() { grid[key()] = off(values()) })
	each(func() {
		here := grid[key()]
		for i := range axes {
			if m.scales[i].choices() {
				continue
			}
			for _, by := range []int{-1, 1} {
				index[i] += by
				there, ok := grid[key()]
				index[i] -= by
				if ok && there < here {
					return
				}
			}
		}
		if v := values(); m.far(v) {
			all = append(all, place{v, here})
		}
	})
	return byOff(all)
}

// axes are the values of each control of a grid, more of them where there are more
// steps.
func (m *match) axes(most int, finest float64) [][]float64 {
	n, product := make([]int, len(m.scales)), 1
	for i, sc := range m.scales {
		switch {
		case m.dull[i]:
			n[i] = 1
		case sc.choices():
			n[i] = len(sc.value)
		default:
			n[i] = 2
		}
		product *= n[i]
	}
	for {
		widest, gap := -1, finest
		for i, sc := range m.scales {
			if n[i] < 2 || sc.choices() || product/n[i]*(n[i]+1) > most || n[i] >= 128 {
				continue
			}
			if g := sc.all() / float64(n[i]); g > gap {
				widest, gap = i, g
			}
		}
		if widest < 0 {
			break
		}
		product = product / n[widest] * (n[widest] + 1)
		n[widest]++
	}
	axes := make([][]float64, len(m.scales))
	for i, sc := range m.scales {
		if m.dull[i] {
			axes[i] = []float64{m.target[i]}
		} else {
			axes[i] = sc.spread(n[i])
		}
	}
	return axes
}

// refine goes downhill from a place by one control at a time, in strides that become
// shorter, until they are the finest, in steps, or the tries are used up.
func (m *match) refine(p place, off func([]float64) float64, finest float64, tries int) place {
	for stride := m.half(); stride > finest && tries > 0 && p.off > 1e-3; {
		better := false
		for i, sc := range m.scales {
			if m.dull[i] || sc.choices() {
				continue
			}
			for _, by := range []float64{-stride, stride} {
				v := slices.Clone(p.values)
				v[i] = sc.at(sc.of(v[i]) + by)
				if v[i] == p.values[i] || tries <= 0 {
					continue
				}
				tries--
				if o := off(v); o < p.off {
					p, better = place{v, o}, true
					break
				}
			}
		}
		if !better {
			stride /= 3
		}
	}
	return p
}

// octaves are settings in which one control makes good what another does to the
// pitch, or in which a signed one stands on the other side: a grid would miss them.
func (m *match) octaves() (all [][]float64) {
	for i, sc := range m.scales {
		f := sc.control.Field()
		if m.dull[i] {
			continue
		}
		if f.Min < 0 && math.Abs(m.target[i]) > 0 && -m.target[i] >= sc.control.Min && -m.target[i] <= sc.control.Max {
			all = append(all, m.moved(i, -m.target[i]))
		}
		if f.Unit != synth.Feet {
			continue
		}
		for j, other := range m.scales {
			if other.control.Field().Unit != synth.MIDINote {
				continue
			}
			for _, feet := range sc.value {
				note := m.target[j] - 12*(feet-m.target[i])
				if feet != m.target[i] && note >= other.control.Min && note <= other.control.Max {
					v := m.moved(i, feet)
					v[j] = note
					all = append(all, v)
				}
			}
		}
	}
	return slices.DeleteFunc(all, func(v []float64) bool { return !m.far(v) })
}
