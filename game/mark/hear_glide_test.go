package mark

import (
	"math"
	"testing"
)

// A track that rises to the end of the sound fits a glide towards a pitch that
// nobody could hear: it is none.
func TestGlideTowardsNowhere(t *testing.T) {
	tr := &track{hop: 0.005, base: 200}
	for i := range 400 {
		x := float64(i) / 400
		tr.cents = append(tr.cents, 6000*(1-math.Exp(-1.2*x))/(1-math.Exp(-1.2)))
		tr.clarity = append(tr.clarity, 1)
	}
	p := &pitch{hz: 200, ok: true}
	g, _ := readTrack(tr, p)
	if g.ok || !(p.hz > 100 && p.hz < highestHz) {
		t.Errorf("a glide of %.1f semitones to %.0f Hz, ok %v", g.semitones, p.hz, g.ok)
	}
}
