package game

import (
	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// add keeps the marks of one hand-in.
func (k *progress) add(id string, day int, marks float64) {
	r := k.Marks[id]
	k.Marks[id] = record{Best: max(r.Best, marks), Last: marks, Tries: r.Tries + 1}
	k.History = append(k.History, handIn{day, id, marks})
	k.History = k.History[max(0, len(k.History)-longHistory):]
}

// limit keeps what a run of a limit found.
func (k *progress) limit(id string, r limitRun) {
	k.Marks[id] = record{Tries: k.Marks[id].Tries + 1}
	runs := append(k.Limits[id], r)
	k.Limits[id] = runs[max(0, len(runs)-longLimits):]
}

// seen keeps that a demonstration was looked at.
func (k *progress) seen(id string) { k.Marks[id] = record{Tries: k.Marks[id].Tries + 1} }

// review moves what was answered through the boxes.
func (k *progress) review(key string, right bool, day int) { k.Boxes.Answer(key, right, day) }

// tally counts an answer in the table of its exercise.
func (k *progress) tally(e *sheet.Exercise, q *ask.Question, answer int) {
	if k.Tables[e.ID] == nil {
		k.Tables[e.ID] = &practice.Confusion{}
	}
	k.Tables[e.ID].Add(q.Answers[q.Right], q.Answers[answer])
}

// recall counts an answer in the boxes and among what is confused.
func (k *progress) recall(e *sheet.Exercise, q *ask.Question, answer, day int) {
	asked := key(e, q.Item)
	k.review(asked, answer == q.Right, day)
	if e.Kind == sheet.Name {
		k.Confused.Add(asked, key(e, q.Answers[answer]))
	}
}

// forget takes out of the boxes what the course no longer has.
func (k *progress) forget(gone func(key string) bool) {
	for key := range k.Boxes {
		if gone(key) {
			delete(k.Boxes, key)
		}
	}
}
