package game

import (
	"encoding/json"
	"errors"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/slip"
	"partialcredit/synth"
)

// progress is what stays on the device.
type progress struct {
	Version  int    `json:"version"`
	Exercise string `json:"exercise"` // where the learner is
	Page     string `json:"page"`     // one of pageNames
	attempt
	Left map[string]attempt `json:"left"` // what was left in other exercises, by their ids
	Runs map[string]ask.Run `json:"runs"` // and the runs that have not ended

	Volume   float64 `json:"volume"` // of the ruler, 0 to 1
	Theme    Theme   `json:"theme"`
	Language string  `json:"language"`       // BCP 47; the browser's choice where empty
	Keyless  bool    `json:"keyless"`        // letters press no buttons
	Hinted   bool    `json:"hinted"`         // the hint on the volume was seen
	Name     string  `json:"name,omitempty"` // that was written last, to stand on slips

	Marks    map[string]record              `json:"marks"`           // by the id of the exercise
	History  []handIn                       `json:"history"`         // the oldest first
	Limits   map[string][]limitRun          `json:"limits"`          // by the id of the exercise, the oldest first
	Tables   map[string]*practice.Confusion `json:"tables"`          // what was answered, by the id of the exercise
	Boxes    practice.Boxes                 `json:"boxes"`           // what to ask again, by its key
	Confused practice.Confusion             `json:"confused"`        // what was taken for what, by their keys
	Set      *practiceSet                   `json:"set,omitempty"`   // of practice, which has not ended
	Given    []given                        `json:"given,omitempty"` // sheets that came by a link or as a file
	Log      map[string]*slip.Work          `json:"log,omitempty"`   // what was done in them, for the slips
	Bench    *synth.Sound                   `json:"bench"`           // what lies on the bench
}

// An attempt is what was done to an exercise and not yet handed in.
type attempt struct {
	Settings  []float64 `json:"settings"` // of its controls
	Uncovered bool      `json:"uncovered"`
}

// A record is what was reached in one exercise.
type record struct {
	Best  float64 `json:"best"`
	Last  float64 `json:"last"`
	Tries int     `json:"tries"`
}

// A handIn is the marks of one day's work.
type handIn struct {
	Day      int     `json:"day"` // since 1970-01-01
	Exercise string  `json:"exercise"`
	Marks    float64 `json:"marks"`
}

// A limitRun is what one run of a limit found.
type limitRun struct {
	Day    int     `json:"day"`
	Value  float64 `json:"value"` // in the unit of the quantity; a bound where not found
	Factor float64 `json:"factor"`
	Found  bool    `json:"found"`
}

// A Theme is the look the user asked for.
type Theme string

// The themes.
const (
	AsSystem   Theme = ""
	Paper      Theme = "paper"
	Blackboard Theme = "blackboard"
)

const (
	progressVersion = 2     // 1 knew matches only
	quiet           = 0.45  // the volume ruler at first: 14 dB under full
	longHistory     = 2000  // hand-ins that are kept: a tablet's storage is small
	longLimits      = 100   // and runs of each limit
	lastDay         = 80000 // that can be drawn: in the year 2189
)

// Kept changes when what should be kept on the device has changed.
func (g *Game) Kept() int { return g.saved }

// Save is what should be kept on the device.
func (g *Game) Save() []byte {
	k := g.ownProgress()
	k.Version, k.Exercise, k.Page, k.attempt = progressVersion, g.exercise().ID, pageNames[g.page], g.attempt()
	if t := &g.trial; t.on {
		k.Exercise, k.Page, k.attempt = t.course[t.at.sheet].Exercises[t.at.exercise].ID, pageNames[t.back], attempt{}
	}
	if g.page == givePage && g.giving == nil {
		k.Page = pageNames[benchPage]
	}
	if g.session.on {
		k.Set = g.setToKeep()
		k.Page, k.attempt = pageNames[practicePage], attempt{} // what is asked there follows from the boxes
	}
	data, err := json.Marshal(k)
	if err != nil {
		panic("game: progress: " + err.Error()) // every number in it is finite
	}
	return data
}

// Unread is progress that could not be read when the game began, to be set aside;
// nil where there was none.
func (g *Game) Unread() []byte { return g.unread }

// Theme is the look the user asked for.
func (g *Game) Theme() Theme { return g.kept.Theme }

func (g *Game) keep() { g.saved++ }

var errProgress = errors.New("not progress that this program has kept")

// read reads what was kept.
func read(saved []byte) (progress, error) {
	k := progress{Volume: quiet}
	if err := json.Unmarshal(saved, &k); err != nil {
		return k, err
	}
	if k.Version < 1 || k.Version > progressVersion {
		return k, errProgress
	}
	return k, nil
}

// restore goes on where saved left off.
func (g *Game) restore(saved []byte) {
	g.endTrial()
	g.playing.loud = newSilent()
	g.kept = progress{Volume: quiet}
	if len(saved) > 0 {
		if k, err := read(saved); err != nil {
			g.Tell("The progress kept on this device could not be read, so the course starts anew. The old one is set aside, not erased.")
			g.unread = saved
		} else {
			g.kept = k
		}
	}
	g.kept.tidy()
	g.unpack()
	g.chooseLanguage()
	k := g.kept
	at, ok := g.find(k.Exercise)
	if !ok {
		g.at = place{}
		g.show(contents)
		return
	}
	g.at = at
	switch k.Page {
	case pageNames[working], pageNames[marked], pageNames[showing], pageNames[questionPage], pageNames[answered]:
		g.open(at)
		g.resume(k.attempt)
		if k.Page == pageNames[marked] && g.page == working {
			g.grade()
		}
	case pageNames[sheetPage], pageNames[result]:
		g.show(sheetPage)
	case pageNames[slipPage]:
		g.openSlip()
	case pageNames[namePage]:
		g.naming = naming{exercise: -1}
		g.show(namePage) // with what was being written
	case pageNames[benchPage]:
		g.openBench()
	case pageNames[practicePage]:
		g.show(practicePage)
	case pageNames[progressPage]:
		g.show(progressPage)
	case pageNames[helpPage]:
		g.openHelp()
	case pageNames[teacherPage], pageNames[makePage]:
		g.show(teacherPage)
	case pageNames[writePage], pageNames[givePage]:
		g.show(writePage)
	case pageNames[draftPage]:
		g.show(draftPage)
	case pageNames[bookPage]:
		g.show(bookPage)
	default:
		g.show(contents)
	}
}

// attempt is what the learner has done to the current exercise.
func (g *Game) attempt() attempt {
	a := attempt{}
	if g.page != working && g.page != marked && g.page != showing {
		return a
	}
	a.Uncovered = g.work.uncovered
	for i := range g.work.controls {
		a.Settings = append(a.Settings, g.work.controls[i].Get(&g.work.yours))
	}
	return a
}

// resume goes on with an attempt at the current exercise.
func (g *Game) resume(a attempt) {
	if g.page != working && g.page != marked && g.page != showing || len(a.Settings) != len(g.work.controls) {
		return
	}
	g.work.uncovered = a.Uncovered
	for i, v := range a.Settings {
		g.set(i, v)
	}
	g.playing.loud.yours.finish()
}

// leave keeps what was done to the current exercise for when it is opened
// again. What was handed in starts a new attempt there.
func (g *Game) leave() {
	switch g.page {
	case showing:
		if g.work.heard {
			g.kept.seen(g.exercise().ID)
		}
		return
	case answered:
		if !g.session.on && g.asking.run.Done(g.exercise()) {
			delete(g.kept.Runs, g.exercise().ID) // its marks are kept already
		}
		return
	case working, marked:
	default:
		return
	}
	a := g.attempt()
	a.Uncovered = a.Uncovered && !g.work.handedIn
	g.kept.Left[g.exercise().ID] = a
}
