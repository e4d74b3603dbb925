package engine

import "partialcredit/synth"

// A message is a list of numbers: what it is, and what that needs.
//
//	volume:  0, linear gain
//	program: 1, gap in seconds, 1 where it is played once, else 0, then for each
//	         item its ID, its gain and the fields of its sound in the order of
//	         [synth.Fields]
//
// Both ends are made from the same sources, so that nothing tells the version.
const (
	isVolume = iota
	isProgram
)

var fields = synth.Fields()

// itemLength is how many numbers an item takes.
var itemLength = 2 + len(fields)

// AppendVolume appends to m the message that sets the volume.
func AppendVolume(m []float64, v float64) []float64 { return append(m, isVolume, v) }

// AppendProgram appends to m the message that has a program played.
func AppendProgram(m []float64, p synth.Program) []float64 {
	once := 0.0
	if p.Once {
		once = 1
	}
	m = append(m, isProgram, p.Gap, once)
	for i := range p.Items {
		item := &p.Items[i]
		m = append(m, float64(item.ID), item.Gain)
		for j := range fields {
			m = append(m, fields[j].Get(&item.Sound))
		}
	}
	return m
}

func readVolume(m []float64) (v float64, ok bool) {
	if len(m) != 2 || m[0] != isVolume {
		return 0, false
	}
	return m[1], true
}

// readProgram reads a message into p, whose items it uses again.
func readProgram(m []float64, p *synth.Program) bool {
	const head = 3
	if len(m) < head || m[0] != isProgram || (len(m)-head)%itemLength != 0 {
		return false
	}
	p.Gap, p.Once, p.Items = m[1], m[2] != 0, p.Items[:0]
	for m = m[head:]; len(m) > 0; m = m[itemLength:] {
		p.Items = append(p.Items, synth.Item{ID: int(m[0]), Gain: m[1], Sound: synth.Sound{Version: synth.Version}})
		sound := &p.Items[len(p.Items)-1].Sound // in its place: Set moves what it is given to the heap
		for j := range fields {
			fields[j].Set(sound, m[2+j])
		}
	}
	return true
}
