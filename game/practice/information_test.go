package practice

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestTransmitted(t *testing.T) {
	for _, tt := range []struct {
		name           string
		table          *Confusion
		bits, relative float64
		off            float64 // half a unit of the last digit published
	}{
		{"hearing 8(c)25: identity of four", table([]int{5}, []int{0, 5}, []int{0, 0, 5}, []int{0, 0, 0, 5}), 2, 1, 1e-12},
		{"hearing 3", table([]int{8, 2}, []int{2, 8}), 0.278, 0.278, 5e-4},
		{"Shannon 1948, section 12 (from memory): one symbol of two in a hundred wrong, 919 bits of 1000",
			table([]int{99, 1}, []int{1, 99}), 0.919, 0.919, 5e-4},
		{"Cover and Thomas, Elements of Information Theory, example 2.2.1 (from memory): I = 3/8, H = 2 for rows, 7/4 for columns",
			table([]int{4, 2, 1, 1}, []int{2, 4, 1, 1}, []int{2, 2, 2, 2}, []int{8}), 0.375, 0.375 / 2, 1e-12},
		{"the same, played for answered",
			table([]int{4, 2, 2, 8}, []int{2, 4, 2}, []int{1, 1, 2}, []int{1, 1, 2}), 0.375, 0.375 / 1.75, 1e-12},
		{"independent", table([]int{2, 4, 6}, []int{1, 2, 3}, []int{5, 10, 15}), 0, 0, 1e-12},
		{"always right, seven times as often the third: (2 log2 9 + 7 log2 9/7)/9", table([]int{1}, []int{0, 1}, []int{0, 0, 7}), 0.98643, 1, 5e-6},
		{"always swapped", table([]int{0, 7}, []int{7}), 1, 1, 1e-12},
		{"one sound only", table([]int{3, 4}), 0, 0, 1e-12},
		{"nothing", table(), 0, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.table.Transmitted(); !near(got, tt.bits, tt.off) || got < 0 {
				t.Errorf("%.6f bits, want %v", got, tt.bits)
			}
			if got := tt.table.Relative(); !near(got, tt.relative, tt.off) || got < 0 || got > 1 {
				t.Errorf("relative %.6f, want %v", got, tt.relative)
			}
		})
	}
}

// T is also H(played) + H(answered) - H(both): the other way to write it.
func TestTransmittedFromEntropies(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		rows := make([][]int, 5)
		var played, answered [5]float64
		var cells []float64
		for i := range rows {
			rows[i] = make([]int, 5)
			for j := range rows[i] {
				n := rng.IntN(9)
				rows[i][j] = n
				played[i] += float64(n)
				answered[j] += float64(n)
				cells = append(cells, float64(n))
			}
		}
		want := entropy(played[:]) + entropy(answered[:]) - entropy(cells)
		if got := table(rows...).Transmitted(); !near(got, want, 1e-12) {
			t.Errorf("%v: %v bits, want %v", rows, got, want)
		}
	}
}

func entropy(counts []float64) float64 {
	var all, bits float64
	for _, n := range counts {
		all += n
	}
	for _, n := range counts {
		if n > 0 {
			bits += n / all * math.Log2(all/n)
		}
	}
	return bits
}

// Guessers seem to transmit what Miller's formula says, on average.
func TestSpurious(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	var bits, spurious float64
	const learners = 400
	for range learners {
		var c Confusion
		for range 160 {
			c.Add(string(rune('a'+rng.IntN(4))), string(rune('a'+rng.IntN(4))))
		}
		bits += c.Transmitted() / learners
		spurious += c.Spurious() / learners
	}
	if !near(bits/spurious, 1, 0.1) {
		t.Errorf("guessers transmit %.4f bits, the formula says %.4f", bits, spurious)
	}
	if got, want := table([]int{1, 1, 1}, []int{1, 1, 1}).Spurious(), 1/(6*math.Ln2); !near(got, want, 1e-12) {
		t.Errorf("two sounds, three answers, six times: %v, want %v", got, want)
	}
	if got := table().Spurious(); got != 0 {
		t.Errorf("nothing: %v", got)
	}
}
