package mark

import (
	"math"
	"sync"

	"partialcredit/synth/spectrum"
)

// The axis of pitch is cut into cells of 5 cents, the pitch step of practised
// listeners on bright tones (Moore, Introduction to the Psychology of Hearing,
// from memory).
const (
	cellCents  = 5.0
	lowestHz   = 25.0 // edge of the first cell
	highestHz  = 16000.0
	cellsPer8v = 1200 / cellCents
)

var cells = int(math.Floor(math.Log2(highestHz/lowestHz) * cellsPer8v))

// cellHz is the lower edge of a cell in hertz.
func cellHz(j float64) float64 { return lowestHz * math.Exp2(j/cellsPer8v) }

// edges are the lower edges of all cells, and the upper edge of the last, in
// bins of a transform with the given spacing in hertz.
func edges(spacing float64) []float64 {
	e := make([]float64, cells+1)
	for j := range e {
		e[j] = cellHz(float64(j)) / spacing
	}
	return e
}

// gather sums power given per bin into cells with the given edges: it
// cumulates, interpolates linearly and takes differences. Bin k reaches from
// k-1/2 to k+1/2.
func gather(dst, power, edges []float64) {
	k, below := 0, 0.0 // the sum of all bins under k
	cumulated := func(edge float64) float64 {
		at := edge + 0.5
		for k < len(power) && float64(k+1) <= at {
			below += power[k]
			k++
		}
		if k == len(power) {
			return below
		}
		return below + power[k]*(at-float64(k))
	}
	last := cumulated(edges[0])
	for j := range dst {
		next := cumulated(edges[j+1])
		dst[j] = next - last
		last = next
	}
}

// A kernel is half of a symmetric kernel that sums to 1: kernel[i] is its
// value i places from its middle.
type kernel []float64

// gaussian is a Gaussian kernel, sd in places, cut at three standard
// deviations. The cut matters: without it a loud partial reaches everywhere
// once its tail is raised to a power below 1.
func gaussian(sd float64) kernel {
	k := make(kernel, int(3*sd)+1)
	sum := 0.0
	for i := range k {
		k[i] = math.Exp(-0.5 * float64(i*i) / (sd * sd))
		sum += k[i]
		if i > 0 {
			sum += k[i]
		}
	}
	for i := range k {
		k[i] /= sum
	}
	return k
}

// blur writes the convolution of src with the kernel into dst, zero beyond the
// ends.
func (k kernel) blur(dst, src []float64) {
	reach := len(k) - 1
	padded := make([]float64, len(src)+2*reach)
	copy(padded[reach:], src)
	for i := range dst {
		dst[i] = k.at(padded[i:])
	}
}

// at is the sum of values under the kernel, of which the first lies at its left
// end.
func (k kernel) at(x []float64) float64 {
	reach := len(k) - 1
	before, after := x[:reach], x[reach+1:][:reach]
	sum := x[reach] * k[0]
	for d, w := range k[1:] {
		sum += (before[reach-1-d] + after[d]) * w
	}
	return sum
}

// The bank of auditory filters of the profile: every half Cam.
var profileCentres = spectrum.Centres(1.5, 33, 0.5)

// A filter is an auditory filter as weights of cells.
type filter struct {
	first int // the cell of the first weight
	roex  []float64
}

var profileFilters = sync.OnceValue(func() []filter {
	bank := make([]filter, len(profileCentres))
	for b, c := range profileCentres {
		reach := spectrum.RoexReach * spectrum.ERB(c)
		for j := range cells {
			hz := cellHz(float64(j) + 0.5)
			if math.Abs(hz-c) > reach {
				continue
			}
			if bank[b].roex == nil {
				bank[b].first = j
			}
			bank[b].roex = append(bank[b].roex, spectrum.Roex(hz, c))
		}
	}
	return bank
})

// profile returns the power that each filter lets through of power per cell.
func profile(power []float64) []float64 {
	bank := profileFilters()
	p := make([]float64, len(bank))
	for b, f := range bank {
		for i, r := range f.roex {
			p[b] += r * power[f.first+i]
		}
	}
	return p
}
