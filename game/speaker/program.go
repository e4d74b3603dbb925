package speaker

import (
	"slices"

	"partialcredit/synth"
)

// A program is the one that a speaker was last told to play.
type program struct{ synth.Program }

// becomes makes it p. It reports whether that is another one.
func (o *program) becomes(p synth.Program) bool {
	if p.Gap == o.Gap && p.Once == o.Once && slices.Equal(p.Items, o.Items) {
		return false
	}
	o.Gap, o.Once, o.Items = p.Gap, p.Once, append(o.Items[:0], p.Items...)
	return true
}
