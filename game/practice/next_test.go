package practice

import (
	"math/rand/v2"
	"testing"
	"time"
)

// shares is how much of [0, 1) leads to each key.
func shares(b Boxes, c *Confusion, now Moment) map[string]float64 {
	const n = 12000
	got := map[string]float64{}
	for i := range n {
		key, _ := b.Next(c, now, (float64(i)+0.5)/n)
		got[key] += 1.0 / n
	}
	return got
}

func TestNextShares(t *testing.T) {
	// a is due in box 1, b in box 2, c in box 3; d and e are not yet due.
	b := Boxes{"a": {1, 9}, "b": {2, 10}, "c": {3, 2}, "d": {1, 11}, "e": {4, 12}}
	var none Confusion
	var some Confusion // one time in ten a and b, a and e
	some.add("a", "a", 7)
	some.add("a", "b", 2)
	some.add("a", "e", 1)
	some.add("b", "b", 10)
	some.add("e", "e", 9)
	some.add("e", "a", 1)
	var often Confusion
	often.add("a", "e", 5)
	var gone Confusion // with what is no longer practised
	gone.add("a", "z", 5)
	for _, tt := range []struct {
		name  string
		boxes Boxes
		table *Confusion
		last  string
		want  map[string]float64
	}{
		{"weights of 1, 1/2 and 1/3", b, &none, "", map[string]float64{"a": 6. / 11, "b": 3. / 11, "c": 2. / 11}},
		{"not the last", b, &none, "a", map[string]float64{"b": 3. / 5, "c": 2. / 5}},
		{"a last that is not due", b, &none, "d", map[string]float64{"a": 6. / 11, "b": 3. / 11, "c": 2. / 11}},
		{"0.1 and 0.1 confused, so 0.8, so one half", b, &some, "a", map[string]float64{"b": .25 + .3, "c": .2, "e": .25}},
		{"confused from the other side: 0.1, so 0.4", b, &some, "e", map[string]float64{"a": .4 + .6*6/11, "b": .6 * 3 / 11, "c": .6 * 2 / 11}},
		{"not confused with the last", b, &some, "c", map[string]float64{"a": 2. / 3, "b": 1. / 3}},
		{"always confused, yet no more than half", b, &often, "a", map[string]float64{"e": .5, "b": .3, "c": .2}},
		{"confused with what is gone", b, &gone, "a", map[string]float64{"b": 3. / 5, "c": 2. / 5}},
		{"nothing else due", Boxes{"a": {1, 9}, "d": {1, 11}, "e": {4, 12}}, &none, "a", map[string]float64{"d": .8, "e": .2}},
		{"nothing due", Boxes{"d": {1, 11}, "e": {4, 12}}, &none, "", map[string]float64{"d": .8, "e": .2}},
		{"only one", Boxes{"a": {1, 9}}, &none, "a", map[string]float64{"a": 1}},
		{"nothing at all", nil, &none, "", map[string]float64{"": 1}},
		{"nothing at all, after something", Boxes{}, &none, "a", map[string]float64{"": 1}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := shares(tt.boxes, tt.table, Moment{Day: 10, Last: tt.last})
			for key := range got {
				if _, ok := tt.want[key]; !ok {
					t.Errorf("%q comes", key)
				}
			}
			for key, want := range tt.want {
				if !near(got[key], want, 1e-3) {
					t.Errorf("%q with %.4f, want %.4f", key, got[key], want)
				}
			}
		})
	}
}

// A quotient of random numbers may round up to 1.
func TestPickAtOne(t *testing.T) {
	if got := pick([]string{"a", "b"}, []float64{1, 0}, 1); got != "a" {
		t.Errorf("%q, which has no weight", got)
	}
}

// Molloy et al. 2012 as hearing 4 has it: about 8 minutes, 10 at most.
func TestNextRests(t *testing.T) {
	due, done := Boxes{"a": {1, 5}}, Boxes{"a": {2, 6}}
	for _, tt := range []struct {
		boxes Boxes
		spent time.Duration
		want  bool
	}{
		{due, 0, false},
		{done, 0, false},
		{done, 8*time.Minute - 1, false},
		{done, 8 * time.Minute, true},
		{due, 8 * time.Minute, false},
		{due, 10*time.Minute - 1, false},
		{due, 10 * time.Minute, true},
		{done, 10 * time.Minute, true},
	} {
		key, rest := tt.boxes.Next(&Confusion{}, Moment{Day: 5, Spent: tt.spent}, 0.5)
		if rest != tt.want || key != "a" {
			t.Errorf("due %v, after %v: rest is %v, want %v; key %q", tt.boxes.Due(5), tt.spent, rest, tt.want, key)
		}
	}
}

// A simulated learner who tells everything apart but two sounds, question by
// question, 15 seconds each: no item twice in a row, the set ends in time, and
// the two sounds follow each other more often than chance has it.
func TestASet(t *testing.T) {
	names := []string{"pulse", "saw", "sine", "square", "triangle", "wide"}
	boxes := Boxes{}
	for _, n := range names {
		boxes[n] = Item{}
	}
	rng := rand.New(rand.NewPCG(9, 10))
	var table Confusion
	now := Moment{Day: 1}
	other := map[string]string{"sine": "triangle", "triangle": "sine"}
	var after, met, questions int
	for ; now.Day <= 20; now.Day++ {
		now.Spent, now.Last = 0, ""
		for {
			key, rest := boxes.Next(&table, now, rng.Float64())
			if rest {
				break
			}
			if key == now.Last {
				t.Fatalf("day %d, %v: %s twice in a row", now.Day, now.Spent, key)
			}
			if partner, ok := other[now.Last]; ok {
				after++
				if key == partner {
					met++
				}
			}
			answer := key
			if partner, ok := other[key]; ok && rng.Float64() < 0.4 {
				answer = partner
			}
			table.Add(key, answer)
			boxes.Answer(key, answer == key, now.Day)
			now.Last = key
			now.Spent += 15 * time.Second
			questions++
		}
		if now.Spent < Shortest || now.Spent > Longest {
			t.Errorf("day %d: a set of %v", now.Day, now.Spent)
		}
	}
	if share := float64(met) / float64(after); share < 0.5 {
		t.Errorf("of the two confused sounds one followed the other %.2f of the time, want at least half", share)
	}
	for _, n := range names {
		if table.played(n) < questions/20 {
			t.Errorf("%s came only %d times of %d", n, table.played(n), questions)
		}
	}
	if b := boxes["saw"].Box; b != 5 {
		t.Errorf("what was always right is in box %d after %d days, want 5", b, now.Day)
	}
}
