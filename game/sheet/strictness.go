package sheet

import (
	"encoding/json"
	"fmt"
)

// A Strictness says for whom a sheet is marked. Nothing but the marks changes
// with it.
type Strictness int

// The strictnesses; a sheet that says none is marked for experts.
const (
	Expert Strictness = iota
	Practised
	Beginner
)

var strictnesses = []struct {
	name  string
	whom  string
	times float64
}{
	{"expert", "experts", 1},
	{"practised", "the practised", 2},
	{"beginner", "beginners", 4},
}

// Times is how many times larger every just-noticeable step is taken: 1 for
// experts, 2 for the practised, 4 for beginners, whose thresholds are larger by
// about as much (hearing.md 8(a) of the project's references).
func (s Strictness) Times() float64 { return strictnesses[s].times }

// Whom says for whom the sheet is marked, to follow "for".
func (s Strictness) Whom() string { return strictnesses[s].whom }

// String is the name in the format of a sheet.
func (s Strictness) String() string { return strictnesses[s].name }

// UnmarshalJSON reads a name.
func (s *Strictness) UnmarshalJSON(data []byte) error {
	var name string
	if err := json.Unmarshal(data, &name); err == nil {
		for i, known := range strictnesses {
			if name == known.name {
				*s = Strictness(i)
				return nil
			}
		}
	}
	return fmt.Errorf("strictness is %s; it must be \"expert\", \"practised\" or \"beginner\"", data)
}

// MarshalJSON writes the name.
func (s Strictness) MarshalJSON() ([]byte, error) { return json.Marshal(s.String()) }
