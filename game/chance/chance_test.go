package chance

import (
	"hash/fnv"
	"testing"
)

// The first numbers of the authors' C program for the seed 1234567 (from memory;
// they stand in many collections of worked examples).
func TestSplitMix64(t *testing.T) {
	s := From(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := s.next(); got != want {
			t.Errorf("number %d: %d, want %d", i+1, got, want)
		}
	}
}

// The hash is the one of the standard library.
func TestSeedOfTexts(t *testing.T) {
	h := fnv.New64a()
	h.Write([]byte("sheet\x00Wren\x00"))
	s := From(h.Sum64())
	if got, want := Seed("sheet", "Wren"), s.next(); got != want {
		t.Errorf("%d, want %d", got, want)
	}
	if Seed("ab", "c") == Seed("a", "bc") {
		t.Error("where one text ends makes no difference")
	}
}

// Every order of four comes up about equally often: χ² of 23 degrees of freedom
// is below 49.7 in 999 of 1000 cases (handbook tables).
func TestOrder(t *testing.T) {
	s := From(1)
	counts := map[[4]int]int{}
	const n = 24000
	for range n {
		counts[[4]int(s.Order(4))]++
	}
	chi := 0.0
	for _, k := range counts {
		d := float64(k) - n/24
		chi += d * d / (n / 24)
	}
	if len(counts) != 24 || chi > 49.7 {
		t.Errorf("%d orders, χ² %.1f", len(counts), chi)
	}
}

func TestBelow(t *testing.T) {
	s := From(7)
	var counts [3]int
	for range 30000 {
		counts[s.Below(3)]++
	}
	for i, k := range counts { // binomial: a standard deviation is 82
		if k < 9600 || k > 10400 {
			t.Errorf("%d came %d times of 30000", i, k)
		}
	}
}
