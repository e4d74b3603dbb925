package synth

import (
	"errors"
	"slices"
	"strconv"
	"strings"
)

var (
	shapeNames    = []string{"triangle", "sawtooth", "falling sawtooth", "pulse", "sine"}
	lfoShapeNames = []string{"triangle", "sawtooth", "square", "sine"}
	howNames      = []string{"a", "mix", "ring", "am", "fm", "sync"}
)

func (s Shape) String() string    { return name(shapeNames, int(s)) }
func (s LFOShape) String() string { return name(lfoShapeNames, int(s)) }
func (h How) String() string      { return name(howNames, int(h)) }

// MarshalText writes the name of the shape.
func (s Shape) MarshalText() ([]byte, error) { return text(shapeNames, int(s)) }

// MarshalText writes the name of the shape.
func (s LFOShape) MarshalText() ([]byte, error) { return text(lfoShapeNames, int(s)) }

// MarshalText writes the name of the way to combine.
func (h How) MarshalText() ([]byte, error) { return text(howNames, int(h)) }

func name(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return strconv.Itoa(i) + " is none of " + strings.Join(names, ", ")
	}
	return names[i]
}

func text(names []string, i int) ([]byte, error) {
	if i < 0 || i >= len(names) {
		return nil, errors.New("synth: " + name(names, i))
	}
	return []byte(names[i]), nil
}

// index returns the place of a name, or -1.
func index(names []string, name string) int { return slices.Index(names, name) }
