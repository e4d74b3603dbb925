package speaker

// A memory holds the newest samples that were rendered, and what sounded.
// Samples are counted from the first that was rendered, and come in whole
// quanta.
type memory struct {
	samples, cycle []float32
	marks          []sounding // at the end of every quantum
	rendered       int64
}

type sounding struct {
	item    int
	seconds float64
}

// remembered is the length of the memory in samples, a power of two: 1.4 s hold
// the buffers, the longest latency that is believed, and the longest window.
const (
	remembered  = 1 << 16
	mostLatency = 0.7 // seconds; a wireless loudspeaker has up to 0.3
)

func newMemory() memory {
	return memory{
		samples: make([]float32, remembered),
		cycle:   make([]float32, remembered),
		marks:   make([]sounding, remembered/quantum),
	}
}

// put keeps the quantum that begins with sample first, at the end of which that
// item sounds. What was left out before it counts as silence; one that was
// there already begins another count.
func (m *memory) put(first int64, samples, cycle []float32, now sounding) {
	if first < m.rendered {
		m.rendered = 0
	}
	for m.rendered = max(m.rendered, first-remembered); m.rendered < first; m.rendered += quantum {
		at := m.rendered % remembered
		clear(m.samples[at : at+quantum])
		clear(m.cycle[at : at+quantum])
		m.marks[at/quantum] = sounding{item: -1}
	}
	at := first % remembered
	copy(m.samples[at:at+quantum], samples)
	copy(m.cycle[at:at+quantum], cycle)
	m.marks[at/quantum] = now
	m.rendered = first + quantum
}

// copyTo fills w with the samples before end.
func (m *memory) copyTo(w *Window, end int64) {
	w.clear()
	end = min(end, m.rendered)
	first := max(0, m.rendered-remembered, end-int64(len(w.Samples)))
	for at := first; at < end; {
		from := int(at % remembered)
		n := min(int(end-at), remembered-from)
		to := len(w.Samples) - int(end-at)
		copy(w.Samples[to:to+n], m.samples[from:])
		copy(w.Cycle[to:to+n], m.cycle[from:])
		at += int64(n)
	}
	w.Item, w.Seconds = m.soundingAt(end)
}

// soundingAt is what sounds in the last sample before end. Where two notes meet
// within a quantum it may be the later one.
func (m *memory) soundingAt(end int64) (item int, seconds float64) {
	if end <= 0 || end <= m.rendered-remembered {
		return -1, 0
	}
	q := (end - 1) / quantum
	mark := m.marks[q%int64(len(m.marks))]
	if mark.item < 0 {
		return -1, 0
	}
	return mark.item, max(0, mark.seconds-float64((q+1)*quantum-end)/Rate)
}
