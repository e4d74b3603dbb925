package speaker

import "partialcredit/synth"

// A choice plays with the engine in the thread of the audio device, also while
// that is still being loaded. As soon as the engine has failed, it goes over to
// Oto for good.
type choice struct {
	Speaker
	line    Line
	other   func() Speaker
	program synth.Program
	volume  float64
}

// newChoice makes a choice; other opens the other way, once.
func newChoice(d Device, l Line, other func() Speaker) *choice {
	return &choice{Speaker: newRemote(d, l), line: l, other: other}
}

// Play implements [Speaker].
func (c *choice) Play(p synth.Program) {
	c.program = synth.Program{Gap: p.Gap, Once: p.Once, Items: append(c.program.Items[:0], p.Items...)}
	c.Speaker.Play(p)
}

// SetVolume implements [Speaker].
func (c *choice) SetVolume(v float64) {
	c.volume = v
	c.Speaker.SetVolume(v)
}

// State implements [Speaker].
func (c *choice) State() State {
	if c.other != nil && c.line.EngineState() == "failed" {
		c.Speaker, c.other = c.other(), nil
		c.Speaker.Play(c.program)
		c.Speaker.SetVolume(c.volume)
	}
	return c.Speaker.State()
}
