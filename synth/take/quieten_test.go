package take

import (
	"math"
	"testing"
)

func rmsDB(x []float32) float64 {
	sum := 0.0
	for _, v := range x {
		sum += float64(v) * float64(v)
	}
	return 10 * math.Log10(sum/float64(len(x)))
}

// Of the 1024 bins of a stretch a sine stands over hiss 43 dB down in some 24, for
// so far the side lobes of a Hann window reach (18 dB an octave, Harris 1978): of
// the hiss 16 dB less is left. Of a sawtooth of 220 Hz, which has a partial every
// nine bins, half the bins: 3 dB. What has no hiss stays as it was. (Own bounds, a
// decibel short of that.)
func TestHissIsTakenFromTheNote(t *testing.T) {
	for _, c := range []struct {
		name       string
		note       []float32
		hiss, left float64
	}{
		{"a sawtooth, no hiss", note(57, 1), 0, -95},
		{"a sawtooth", note(57, 1), 0.001, -62},
		{"a sine", sineOf(220, 1, 0.2), 0.001, -75},
	} {
		clean, in := between(c.note, rate, 0), between(c.note, rate, c.hiss)
		start, end := int(0.3*rate), int(1.3*rate)
		got, _ := quieten(in, start, end)
		left := make([]float32, len(got))
		for i, v := range got {
			left[i] = v - clean[start+i]
		}
		if db := rmsDB(left[rate/10 : len(left)-rate/10]); db > c.left {
			t.Errorf("%s with hiss of %v: %.1f dB are left, want %v", c.name, c.hiss, db, c.left)
		}
	}
}

// The level is that of ITU-R BS.1770-4 at which the app plays. By its formula a
// sine of 997 Hz at full scale on both channels has 0 LKFS, so one at -26 has an
// amplitude of 0.0501.
func TestLevelOfATake(t *testing.T) {
	for _, amplitude := range []float64{0.01, 0.2, 0.9} {
		k, err := Find(between(sineOf(997, 1, amplitude), rate, 0), rate)
		if err != nil {
			t.Fatal(err)
		}
		top := 0.0
		for _, v := range k.Samples {
			top = math.Max(top, math.Abs(float64(v)))
		}
		if math.Abs(top-0.0501) > 0.0006 {
			t.Errorf("a sine of %v is brought to %.4f, want 0.0501", amplitude, top)
		}
		if math.Abs(k.Start-0.3) > 0.003 || math.Abs(k.Seconds-1) > 0.006 || k.From < 0 || k.To > k.Seconds || k.To-k.From < 0.8 {
			t.Errorf("from %v s for %v s, steady from %v to %v", k.Start, k.Seconds, k.From, k.To)
		}
	}
}
