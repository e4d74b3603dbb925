package game

import (
	"encoding/json"
	"math"
	"slices"

	"partialcredit/game/sheet"
)

// progress is what stays on the device.
type progress struct {
	Version  int    `json:"version"`
	Exercise string `json:"exercise"` // where the learner is
	Page     string `json:"page"`     // "contents", "work" or "marked"
	attempt
	Left   map[string]attempt `json:"left"`   // what was left in other exercises, by their ids
	Volume float64            `json:"volume"` // of the ruler, 0 to 1
	Theme  Theme              `json:"theme"`
	Hinted bool               `json:"hinted"` // the hint on the volume was seen
	Marks  map[string]record  `json:"marks"`  // by the id of the exercise
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

// A Theme is the look the user asked for.
type Theme string

// The themes.
const (
	AsSystem   Theme = ""
	Paper      Theme = "paper"
	Blackboard Theme = "blackboard"
)

const (
	progressVersion = 1
	quiet           = 0.45 // the volume ruler at first: 14 dB under full
)

var pageNames = map[pageKind]string{contents: "contents", working: "work", marked: "marked"}

// Kept changes when what should be kept on the device has changed.
func (g *Game) Kept() int { return g.saved }

// Save is what should be kept on the device.
func (g *Game) Save() []byte {
	k := g.kept
	k.Version, k.Exercise, k.Page, k.attempt = progressVersion, g.exercise().ID, pageNames[g.page], g.attempt()
	data, err := json.Marshal(k)
	if err != nil {
		panic("game: progress: " + err.Error()) // every number in it is finite
	}
	return data
}

// Theme is the look the user asked for.
func (g *Game) Theme() Theme { return g.kept.Theme }

func (g *Game) keep() { g.saved++ }

// restore goes on where saved left off.
func (g *Game) restore(saved []byte) {
	fresh := progress{Volume: quiet, Marks: map[string]record{}, Left: map[string]attempt{}}
	g.kept, g.playing.loud = fresh, nil
	if len(saved) > 0 {
		k := fresh
		if err := json.Unmarshal(saved, &k); err != nil || k.Version != progressVersion {
			g.Tell("The progress kept on this device could not be read, so the sheet starts anew.")
		} else {
			g.kept = k
		}
	}
	g.kept.tidy()
	k := g.kept
	at := slices.IndexFunc(g.sheet.Exercises, func(e sheet.Exercise) bool { return e.ID == k.Exercise })
	g.open(max(at, 0))
	if at < 0 {
		return
	}
	g.resume(k.attempt)
	switch k.Page {
	case pageNames[contents]:
		g.page = contents
	case pageNames[marked]:
		g.grade()
	}
}

// attempt is what the learner has done to the current exercise.
func (g *Game) attempt() attempt {
	a := attempt{Uncovered: g.work.uncovered}
	for i := range g.exercise().Controls {
		a.Settings = append(a.Settings, g.exercise().Controls[i].Get(&g.work.yours))
	}
	return a
}

// resume goes on with an attempt at the current exercise.
func (g *Game) resume(a attempt) {
	g.work.uncovered = a.Uncovered
	if len(a.Settings) != len(g.exercise().Controls) {
		return
	}
	for i, v := range a.Settings {
		g.set(i, v)
	}
	g.playing.loud.yours.finish()
}

// leave keeps what was done to the current exercise for when it is opened
// again. What was handed in starts a new attempt there.
func (g *Game) leave() {
	if g.playing.loud == nil {
		return // none was open
	}
	a := g.attempt()
	a.Uncovered = a.Uncovered && !g.handedIn
	g.kept.Left[g.exercise().ID] = a
}

// tidy mends what another version or a person may have left out of range.
func (k *progress) tidy() {
	if math.IsNaN(k.Volume) || k.Volume < 0 || k.Volume > 1 {
		k.Volume = quiet
	}
	if k.Theme != Paper && k.Theme != Blackboard {
		k.Theme = AsSystem
	}
	if k.Marks == nil {
		k.Marks = map[string]record{}
	}
	if k.Left == nil {
		k.Left = map[string]attempt{}
	}
	for id, r := range k.Marks {
		r.Best, r.Last = max(0, min(100, r.Best)), max(0, min(100, r.Last))
		k.Marks[id] = r
	}
}

// add keeps the marks of one hand-in.
func (k *progress) add(id string, marks float64) {
	r := k.Marks[id]
	k.Marks[id] = record{Best: max(r.Best, marks), Last: marks, Tries: r.Tries + 1}
}
