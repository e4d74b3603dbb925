package mark

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"partialcredit/synth"
	"partialcredit/synth/take"
)

// Marking with pauses gives what it gives without, in many pieces, and ends where a pause
// does, with nothing left behind.
func TestMarkingPauses(t *testing.T) {
	s := synth.Default()
	s.Combine.How, s.B.Footage, s.B.Cents = synth.Mix, 4, 4
	recording, err := take.Find(synth.Render(s, 44100), 44100)
	if err != nil {
		t.Fatal(err)
	}
	other := s
	other.A.Shape = synth.Pulse
	for _, c := range []struct {
		name  string
		mark  func(r *Reference) Result
		r     *Reference
		least int // pieces
	}{
		{"set beside a recording", func(r *Reference) Result { return r.Mark(other, 1) }, PrepareTake(recording), 24},
		{"handed in", func(r *Reference) Result { return r.MarkTake(recording, 2) }, Prepare(other), 24},
		{"two recordings", func(r *Reference) Result { return r.MarkTake(recording, 2) }, PrepareTake(recording), 12},
	} {
		want, pieces := c.mark(c.r), 1
		got := c.mark(c.r.Pausing(func() { pieces++ }))
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		if pieces < c.least {
			t.Errorf("%s: only %d pieces", c.name, pieces)
		}
		for _, at := range []int{1, pieces / 2, pieces - 1} {
			left, n := "left", 0
			func() {
				defer func() {
					if v := recover(); v != left {
						t.Errorf("%s: %v", c.name, v)
					}
				}()
				c.mark(c.r.Pausing(func() {
					if n++; n == at {
						panic(left)
					}
				}))
				t.Errorf("%s: goes on after pause %d", c.name, at)
			}()
		}
		if diff := cmp.Diff(want, c.mark(c.r)); diff != "" {
			t.Errorf("%s, after it was left: %s", c.name, diff)
		}
	}
}
