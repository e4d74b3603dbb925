package browser

import (
	"math"
	"testing"

	"partialcredit/game/ui"
)

func TestRangeInput(t *testing.T) {
	tests := []struct {
		name        string
		ruler       ui.Ruler
		most, value float64
		next        float64 // the ruler's value one step on
	}{
		{"per cent", ui.Ruler{Min: 3, Max: 97, Step: 0.5, Value: 50}, 188, 94, 50.5},
		{"whole", ui.Ruler{Min: -2, Max: 2, Step: 1, Whole: true, Value: 0}, 4, 2, 1},
		{"ratios", ui.Ruler{Min: 0.25, Max: 8, Step: math.Pow(2, 1.0/12), Log: true, Value: 1}, 60, 24, math.Pow(2, 1.0/12)},
		{"no step", ui.Ruler{Min: 0, Max: 10, Value: 5}, 100, 50, 5.1},
		{"outside", ui.Ruler{Min: 0, Max: 10, Step: 1, Value: 50}, 10, 10, 10},
	}
	for _, tt := range tests {
		r := rangeOf(&tt.ruler)
		if r.most != tt.most || r.value != tt.value {
			t.Errorf("%s: %v of %v, want %v of %v", tt.name, r.value, r.most, tt.value, tt.most)
		}
		if got := rulerValue(&tt.ruler, r.value+1); math.Abs(got-tt.next) > 1e-9 {
			t.Errorf("%s: a step on is %v, want %v", tt.name, got, tt.next)
		}
	}
}
