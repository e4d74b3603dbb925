package speaker

import (
	"testing"
)

func TestWhatWasLostIsSilence(t *testing.T) {
	m := newMemory()
	var ones [quantum]float32
	for i := range ones {
		ones[i] = 1
	}
	put := func(q int64) { m.put(q*quantum, ones[:], ones[:], sounding{item: 3}) }
	quanta := int64(remembered / quantum)
	for q := range quanta {
		put(q)
	}
	put(quanta + 10)
	w := newWindow(12 * quantum)
	m.copyTo(w, m.rendered)
	for i, v := range w.Samples {
		want := float32(0)
		if q := i / quantum; q == 0 || q == 11 {
			want = 1
		}
		if v != want || w.Cycle[i] != want {
			t.Fatalf("sample %d after the loss is %v, cycle %v, want %v", i-quantum, v, w.Cycle[i], want)
		}
	}
	if m.copyTo(w, m.rendered-quantum); w.Item != -1 {
		t.Errorf("item %d in what was lost", w.Item)
	}
	put(100 * quanta)
	m.copyTo(w, m.rendered)
	if w.Samples[11*quantum-1] != 0 || w.Samples[11*quantum] != 1 || w.Item != 3 {
		t.Errorf("after a long loss: %v and %v, item %d", w.Samples[11*quantum-1], w.Samples[11*quantum], w.Item)
	}
}
