package view

import (
	"image"
	"testing"
	"time"
)

func TestWhatWaitsWhereLittleMoves(t *testing.T) {
	before := drawn{revision: 1, layout: 1, size: image.Pt(390, 844), valid: true}
	for _, tt := range []struct {
		name  string
		now   drawn
		since time.Duration
		want  bool
	}{
		{"pictures soon after", drawn{2, 1, false, false, image.Pt(390, 844), true}, 499 * time.Millisecond, true},
		{"pictures half a second later", drawn{2, 1, false, false, image.Pt(390, 844), true}, 500 * time.Millisecond, false},
		{"another page", drawn{2, 2, false, false, image.Pt(390, 844), true}, time.Millisecond, false},
		{"another theme", drawn{2, 1, true, false, image.Pt(390, 844), true}, time.Millisecond, false},
		{"another contrast", drawn{2, 1, false, true, image.Pt(390, 844), true}, time.Millisecond, false},
		{"another size", drawn{2, 1, false, false, image.Pt(844, 390), true}, time.Millisecond, false},
	} {
		if got := tt.now.waits(before, tt.since); got != tt.want {
			t.Errorf("%s: waits is %v", tt.name, got)
		}
	}
	if (drawn{valid: true}).waits(drawn{}, 0) {
		t.Error("the first picture waits")
	}
}
