package practice

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"
)

// Leitner 1972: right, one box up; wrong, back to the first. The days are those
// that hearing 3 gives for SM-2 (a miss comes back the same day) and for boxes of
// 1, 3 and 5 days; 10 is ours.
func TestAnswerMoves(t *testing.T) {
	b := Boxes{}
	day := 100
	for i, tt := range []struct {
		right bool
		box   int
		days  int
	}{
		{false, 1, 0},
		{true, 2, 1},
		{true, 3, 3},
		{true, 4, 5},
		{true, 5, 10},
		{true, 5, 10},
		{false, 1, 0},
		{true, 2, 1},
	} {
		b.Answer("saw", tt.right, day)
		if want := (Item{tt.box, day + tt.days}); b["saw"] != want {
			t.Fatalf("answer %d: %+v, want %+v", i+1, b["saw"], want)
		}
		if tt.days > 0 && slices.Contains(b.Due(day+tt.days-1), "saw") {
			t.Errorf("answer %d: due a day early", i+1)
		}
		day += tt.days
		if !slices.Contains(b.Due(day), "saw") {
			t.Errorf("answer %d: not due %d days later", i+1, tt.days)
		}
	}
}

func TestANewItemMovesUp(t *testing.T) {
	b := Boxes{"saw": {}}
	b.Answer("saw", true, 0)
	b.Answer("sine", true, 0) // put in by the answer
	if want := (Boxes{"saw": {2, 1}, "sine": {2, 1}}); !maps.Equal(b, want) {
		t.Errorf("%v, want %v", b, want)
	}
}

func TestAnEarlyAnswer(t *testing.T) {
	b := Boxes{"saw": {3, 12}}
	b.Answer("saw", true, 11)
	if want := (Item{3, 12}); b["saw"] != want {
		t.Errorf("right too early: %+v, want %+v", b["saw"], want)
	}
	b.Answer("saw", false, 11)
	if want := (Item{1, 11}); b["saw"] != want {
		t.Errorf("wrong too early: %+v, want %+v", b["saw"], want)
	}
}

func TestDue(t *testing.T) {
	b := Boxes{"d": {2, 50}, "c": {1, 50}, "b": {1, 49}, "late": {1, 51}, "new": {}, "high": {9, 20}, "low": {-9, 20}, "top": {5, 20}}
	want := []string{"b", "c", "low", "new", "d", "high", "top"}
	if got := b.Due(50); !slices.Equal(got, want) {
		t.Errorf("due %v, want %v", got, want)
	}
}

// A clock that once ran ahead hides nothing for longer than the last box does.
func TestDueAfterAWrongClock(t *testing.T) {
	b := Boxes{"saw": {2, 20_000 + 1}, "sine": {5, 60}, "pulse": {5, 61}}
	if got, want := b.Due(50), []string{"saw", "pulse"}; !slices.Equal(got, want) {
		t.Errorf("due %v, want %v", got, want)
	}
}

func TestBoxesAsJSON(t *testing.T) {
	b := Boxes{"saw, low": {3, 20123}, "sine": {}}
	data, err := json.Marshal(b)
	if want := `{"saw, low":{"box":3,"due":20123},"sine":{}}`; err != nil || string(data) != want {
		t.Errorf("%s, %v; want %s", data, err, want)
	}
	var back Boxes
	if err := json.Unmarshal(data, &back); err != nil || !maps.Equal(b, back) {
		t.Errorf("%v comes back as %v, %v", b, back, err)
	}
}
