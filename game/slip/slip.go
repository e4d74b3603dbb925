// Package slip knows what a learner hands in: a slip of answers, without marks. Marks
// are made anew from the answers by whoever reads it, and never believed.
package slip

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"partialcredit/game/ask"
	"partialcredit/game/link"
	"partialcredit/game/sheet"
)

// Version is the version of the format read by this package.
const Version = 1

// A Slip is what one learner did with one sheet.
type Slip struct {
	Version int    `json:"version"`         // always [Version]
	Name    string `json:"name"`            // chosen by the learner
	Sheet   string `json:"sheet"`           // the fingerprint of it, [sheet.Sheet.Fingerprint]
	Title   string `json:"title,omitempty"` // of the sheet, for whoever does not have it
	Minute  int64  `json:"minute"`          // when it was handed in, in minutes since 1970-01-01 UTC
	Work    []Work `json:"work"`
}

// Work is what was done in one exercise.
type Work struct {
	ID      string   `json:"id"`                // of the exercise
	Tries   int      `json:"tries"`             // how many times it was handed in
	Seconds int      `json:"seconds,omitempty"` // spent on it
	Replays int      `json:"replays,omitempty"` // how many times a sound of it was started
	First   Attempt  `json:"first"`
	Best    *Attempt `json:"best,omitempty"` // where it is another one
}

// An Attempt is one answer to an exercise.
type Attempt struct {
	Settings  []float64 `json:"settings,omitempty"`  // of a match: the values of its controls
	Uncovered bool      `json:"uncovered,omitempty"` // the target was uncovered before
	Run       *ask.Run  `json:"run,omitempty"`       // of the others
	Try       int       `json:"try,omitempty"`       // which of the learner's runs, from 0: its seed, where the sheet varies
}

// Bounds of what a slip may say (design choices): more is nothing that a learner does.
const (
	MostName    = 40 // runes
	MostTries   = 10000
	MostSeconds = 7 * 24 * 3600
	MostReplays = 100000
	lastMinute  = 115200000 // in the year 2189
)

// What can be wrong with a slip.
var (
	ErrDamaged = errors.New("This slip is damaged: a part of it is missing or changed. Ask for it again.")
	ErrNewer   = errors.New("This slip was made by a newer version of the program. Get that version, then open the slip again.")
	ErrNoSlip  = errors.New("This is no slip.")
)

// Fragment is the slip as the fragment of a link, without the # sign: text that can be
// sent, shown as a code or kept in a file.
func (s *Slip) Fragment() string {
	data, err := json.Marshal(s)
	if err != nil {
		panic("slip: " + err.Error()) // texts and finite numbers
	}
	return link.Pack(link.Slip, data)
}

// Read reads a slip from a fragment or a whole link. The error is a sentence for
// whoever collects slips.
func Read(text string) (*Slip, error) {
	kind, data, err := link.Unpack(text)
	switch {
	case errors.Is(err, link.ErrUnknown) || err == nil && kind != link.Slip:
		return nil, ErrNoSlip
	case errors.Is(err, link.ErrNewer):
		return nil, ErrNewer
	case err != nil:
		return nil, ErrDamaged
	}
	var s Slip
	if err := json.Unmarshal(data, &s); err != nil {
		return nil, ErrDamaged
	}
	if s.Version > Version {
		return nil, ErrNewer
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	return &s, nil
}

func (s *Slip) check() error {
	switch {
	case s.Version != Version || s.Sheet == "" || s.Minute < 0 || s.Minute > lastMinute || !utf8.ValidString(s.Name):
		return ErrDamaged
	case strings.TrimSpace(s.Name) == "":
		return errors.New("This slip has no name on it.")
	case utf8.RuneCountInString(s.Name) > MostName || len(s.Work) > sheet.MostExercises:
		return ErrDamaged
	}
	seen := map[string]bool{}
	for i := range s.Work {
		w := &s.Work[i]
		if seen[w.ID] || !w.plausible() {
			return ErrDamaged
		}
		seen[w.ID] = true
	}
	return nil
}

func (w *Work) plausible() bool {
	return w.Tries >= 1 && w.Tries <= MostTries && w.Seconds >= 0 && w.Seconds <= MostSeconds &&
		w.Replays >= 0 && w.Replays <= MostReplays && w.First.plausible() && (w.Best == nil || w.Best.plausible())
}

func (a *Attempt) plausible() bool {
	return a.Try >= 0 && a.Try <= MostTries && len(a.Settings) <= sheet.MaxControls && (a.Run == nil || len(a.Run.Answers) <= mostAnswers)
}

// mostAnswers is more than any run has: a limit ends long before.
const mostAnswers = 500

// Fits says whether the slip answers the sheet, drawn for its learner where it varies.
// The error is a sentence for whoever collects slips.
func (s *Slip) Fits(sh *sheet.Sheet) error {
	d := sh.Drawing()
	_, err := s.Drawn(&d)
	return err
}

// Drawn is [Slip.Fits] for whoever has many slips of one sheet, and gives the sheet as it
// was drawn for the learner.
func (s *Slip) Drawn(d *sheet.Drawing) (*sheet.Sheet, error) {
	if s.Sheet != d.Fingerprint {
		return nil, fmt.Errorf("This slip of %s belongs to another sheet, or to another version of it.", s.Name)
	}
	drawn := d.For(s.Name)
	for i := range s.Work {
		w := &s.Work[i]
		e := Exercise(drawn, w.ID)
		if e == nil || e.Kind == sheet.Show {
			return nil, ErrDamaged
		}
		for _, a := range w.attempts() {
			if !a.fits(e, d, s.Name) {
				return nil, ErrDamaged
			}
		}
	}
	return drawn, nil
}

// attempts are the first and, where it is another, the best.
func (w *Work) attempts() []*Attempt {
	if w.Best == nil {
		return []*Attempt{&w.First}
	}
	return []*Attempt{&w.First, w.Best}
}

// fits says whether an attempt can be one at the exercise, and gives its run the seed
// that the sheet draws for the learner.
func (a *Attempt) fits(e *sheet.Exercise, d *sheet.Drawing, name string) bool {
	if e.Kind != sheet.Match {
		if a.Run == nil || a.Settings != nil {
			return false
		}
		if d.Sheet.Vary {
			a.Run.Seed = d.Seed(name, e.ID, a.Try)
		}
		return a.Run.Valid(e) && a.Run.Done(e)
	}
	if a.Run != nil || len(a.Settings) != len(e.Controls) {
		return false
	}
	for i, v := range a.Settings {
		if c := &e.Controls[i]; !(v >= c.Min && v <= c.Max) {
			return false
		}
	}
	return true
}

// Exercise finds an exercise of a sheet by its id; nil where there is none.
func Exercise(sh *sheet.Sheet, id string) *sheet.Exercise {
	for i := range sh.Exercises {
		if sh.Exercises[i].ID == id {
			return &sh.Exercises[i]
		}
	}
	return nil
}
