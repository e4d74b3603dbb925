package mark

import "fmt"

var familyNames = [families]string{"", "a sine", "a triangle", "a sawtooth", "a pulse", "a synced sawtooth",
	"a synced triangle", "a synced sine", "a synced square", "frequency modulation", "frequency modulation by twice", "frequency modulation by three times", "frequency modulation by half"}

// String writes what was heard, for those who look into a mark.
func (h *heard) String() string {
	if h.silent {
		return "silence"
	}
	s := fmt.Sprintf("%.2fs f0 %.2fHz clear %.3f filled %.2f inharm %.3f cam %.2f", h.seconds, h.pitch.hz, h.pitch.clarity, h.pitch.filled, h.inharmonic, h.cam)
	if h.glide.ok {
		s += fmt.Sprintf(" glide %.1fst %.3fs", h.glide.semitones, h.glide.seconds)
	}
	if h.vibrato.ok {
		s += fmt.Sprintf(" vib %.2fHz %.1fc fade %.2f", h.vibrato.hz, h.vibrato.cents, h.vibrato.fade)
	}
	m := h.motion
	s += fmt.Sprintf(" motion %d %.2fHz depth %.2f sure %.2f", m.kind, m.hz, m.depth, m.sure)
	p := h.shape
	s += fmt.Sprintf(" shape(%v) %s %.3f [%.3f %.3f] left %.2f", p.ok, familyNames[p.family], p.value, p.low, p.high, p.left)
	if p.fall.ok {
		s += fmt.Sprintf(" fall %.2f->%.2f %.3fs", p.fall.from, p.fall.to, p.fall.seconds)
	}
	if h.sweep.ok {
		s += fmt.Sprintf(" sweep %.1f->%.1f %.3fs", h.sweep.from, h.sweep.to, h.sweep.seconds)
	}
	t := h.tones
	s += fmt.Sprintf(" tones(%v) %d a %.1f b %.1f share %.2f n %d", t.ok, t.how, t.a, t.b, t.share, len(t.lines))
	if h.octave.ok {
		s += fmt.Sprintf(" octave %d %.1f", h.octave.times, h.octave.class)
	}
	if l := h.loudness; l.ok {
		s += fmt.Sprintf(" loud %.3fs %.3fs %.2f", l.attack, l.decay, l.held)
	}
	return s
}
