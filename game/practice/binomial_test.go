package practice

import (
	"math/big"
	"testing"
)

// The whole table of hearing 3; its row of 16 at ½ is that of published tables
// for ABX tests (hearing, source 59).
func TestLeastRight(t *testing.T) {
	type cell struct{ at05, at01 int }
	for n, row := range map[int][]cell{
		10: {{9, 10}, {7, 8}, {6, 7}, {5, 6}, {5, 6}},
		12: {{10, 11}, {8, 9}, {7, 8}, {6, 7}, {5, 6}},
		16: {{12, 14}, {9, 11}, {8, 9}, {7, 8}, {6, 8}},
		20: {{15, 16}, {11, 13}, {9, 11}, {8, 9}, {7, 9}},
		25: {{18, 19}, {13, 15}, {11, 13}, {9, 11}, {8, 10}},
		40: {{26, 28}, {19, 21}, {16, 18}, {13, 15}, {12, 14}},
	} {
		for i, want := range row {
			m := i + 2
			if got := (cell{LeastRight(n, m, 0.05), LeastRight(n, m, 0.01)}); got != want {
				t.Errorf("%d questions of %d answers: %v, want %v", n, m, got, want)
			}
		}
	}
	for _, tt := range []struct {
		n, m int
		p    float64
		want int
	}{
		{4, 2, 0.05, 5}, // four of four: 1/16
		{5, 2, 0.05, 5}, // five of five: 1/32
		{0, 3, 0.05, 1},
		{3, 2, 1, 0},
	} {
		if got := LeastRight(tt.n, tt.m, tt.p); got != tt.want {
			t.Errorf("LeastRight(%d, %d, %v) = %d, want %d", tt.n, tt.m, tt.p, got, tt.want)
		}
	}
}

// Probabilities named in hearing 3.
func TestAtLeast(t *testing.T) {
	for _, tt := range []struct {
		right, n int
		want     float64
	}{{12, 16, 0.0384}, {9, 10, 0.0107}, {8, 10, 0.0547}, {15, 20, 0.0207}} {
		if got := AtLeast(tt.right, tt.n, 2); !near(got, tt.want, 5e-5) {
			t.Errorf("%d of %d by guessing: %.5f, want %v", tt.right, tt.n, got, tt.want)
		}
	}
}

// Against whole numbers: of the mⁿ equally likely ways to guess, count those with
// k or more right.
func TestAtLeastAgainstCounting(t *testing.T) {
	for _, n := range []int{0, 1, 7, 40, 300} {
		for _, m := range []int{2, 3, 6} {
			ways := new(big.Int)
			all := new(big.Int).Exp(big.NewInt(int64(m)), big.NewInt(int64(n)), nil)
			for k := n; k >= 0; k-- {
				wrong := new(big.Int).Exp(big.NewInt(int64(m-1)), big.NewInt(int64(n-k)), nil)
				ways.Add(ways, wrong.Mul(wrong, new(big.Int).Binomial(int64(n), int64(k))))
				want, _ := new(big.Rat).SetFrac(ways, all).Float64()
				if got := AtLeast(k, n, m); !near(got, want, 1e-10*want) || got > 1 {
					t.Fatalf("%d of %d among %d: %v, want %v", k, n, m, got, want)
				}
			}
			if got := AtLeast(-1, n, m); !near(got, 1, 1e-10) {
				t.Errorf("-1 of %d among %d: %v, want 1", n, m, got)
			}
			if got := AtLeast(n+1, n, m); got != 0 {
				t.Errorf("%d of %d among %d: %v, want 0", n+1, n, m, got)
			}
		}
	}
}

// Hearing 3, and the examples of Newcombe 1998, Stat. Med. 17:857, table I,
// method 3 (from memory).
func TestWilson(t *testing.T) {
	for _, tt := range []struct {
		right, n        int
		low, high, unit float64
	}{
		{8, 10, 0.490, 0.943, 1e-3},
		{81, 263, 0.2553, 0.3662, 1e-4},
		{15, 148, 0.0624, 0.1605, 1e-4},
		{0, 20, 0, 0.1611, 1e-4},
		{1, 29, 0.0061, 0.1718, 1e-4},
		{20, 20, 1 - 0.1611, 1, 1e-4},
	} {
		low, high := Wilson(tt.right, tt.n)
		if !near(low, tt.low, tt.unit/2) || !near(high, tt.high, tt.unit/2) {
			t.Errorf("%d of %d: %.5f to %.5f, want %v to %v", tt.right, tt.n, low, high, tt.low, tt.high)
		}
	}
	if low, high := Wilson(0, 0); low != 0 || high != 1 {
		t.Errorf("of nothing: %v to %v", low, high)
	}
}
