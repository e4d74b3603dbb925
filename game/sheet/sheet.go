// Package sheet knows sheets of exercises: their format and its checks, and the
// sheets that come with the program. A sheet is JSON: a version, a title and
// exercises in the order in which a teacher wants them worked. DEVELOPERS.md
// describes every field.
package sheet

import (
	"encoding/json"
	"fmt"
	"strings"
)

// Version is the version of the format read by this package.
const Version = 1

// MostExercises is the most exercises of one sheet.
const MostExercises = 100

// A Sheet is a list of exercises.
type Sheet struct {
	Version    int        `json:"version"` // always [Version]
	Title      string     `json:"title"`
	Strictness Strictness `json:"strictness"` // of its marks; for experts where it is left out
	Vary       bool       `json:"vary"`       // each learner gets targets of their own, see [Sheet.For]
	Exercises  []Exercise `json:"exercises"`
}

// Parse reads a sheet and checks it. The error names the exercise and the
// field that is wrong.
func Parse(data []byte) (*Sheet, error) {
	var s Sheet
	var raw struct {
		Version    int               `json:"version"`
		Title      string            `json:"title"`
		Strictness Strictness        `json:"strictness"`
		Vary       bool              `json:"vary"`
		Exercises  []json.RawMessage `json:"exercises"`
	}
	if err := strict(data, &raw); err != nil {
		return nil, fmt.Errorf("the sheet cannot be read: %w", err)
	}
	if raw.Version != Version {
		return nil, fmt.Errorf("the sheet has version %d; this program reads version %d", raw.Version, Version)
	}
	s.Version, s.Title, s.Strictness, s.Vary = raw.Version, raw.Title, raw.Strictness, raw.Vary
	for i, data := range raw.Exercises {
		var e Exercise
		if err := strict(data, &e); err != nil {
			return nil, fmt.Errorf("exercise %d: %w", i+1, err)
		}
		s.Exercises = append(s.Exercises, e)
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	return &s, nil
}

func (s *Sheet) check() error {
	if strings.TrimSpace(s.Title) == "" {
		return fmt.Errorf("the sheet has no title")
	}
	if len(s.Exercises) == 0 {
		return fmt.Errorf("the sheet has no exercises")
	}
	if len(s.Exercises) > MostExercises {
		return fmt.Errorf("the sheet has %d exercises; it may have up to %d", len(s.Exercises), MostExercises)
	}
	seen := map[string]bool{}
	for i := range s.Exercises {
		e := &s.Exercises[i]
		if err := e.check(); err != nil {
			return fmt.Errorf("exercise %d: %w", i+1, err)
		}
		if seen[e.ID] {
			return fmt.Errorf("exercise %d: another exercise has the id %q too", i+1, e.ID)
		}
		seen[e.ID] = true
	}
	return nil
}
