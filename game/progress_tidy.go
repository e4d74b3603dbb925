package game

import (
	"math"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
	"partialcredit/game/words"
)

// tidy mends what another version or a person may have left out of range.
func (k *progress) tidy() {
	if math.IsNaN(k.Volume) || k.Volume < 0 || k.Volume > 1 {
		k.Volume = quiet
	}
	if k.Theme != Paper && k.Theme != Blackboard {
		k.Theme = AsSystem
	}
	if words.Choose([]string{k.Language}).Tag != k.Language {
		k.Language = ""
	}
	k.Marks, k.Left, k.Runs = made(k.Marks), made(k.Left), made(k.Runs)
	k.Limits, k.Tables, k.Boxes = made(k.Limits), made(k.Tables), made(k.Boxes)
	for id, r := range k.Marks {
		r.Best, r.Last = max(0, min(100, r.Best)), max(0, min(100, r.Last))
		k.Marks[id] = r
	}
	k.History = k.History[max(0, len(k.History)-longHistory):]
	for i := range k.History {
		h := &k.History[i]
		h.Marks, h.Day = max(0, min(100, h.Marks)), max(0, min(lastDay, h.Day))
	}
	for id, t := range k.Tables {
		if t == nil || len(t.Labels()) > sheet.MostAnswers {
			delete(k.Tables, id)
		}
	}
	for id, runs := range k.Limits {
		kept := runs[:0]
		for _, r := range runs {
			r.Day = max(0, min(lastDay, r.Day))
			if r.Value > 1e-9 && r.Value < 1e9 && r.Factor >= 0 { // no quantity comes near
				kept = append(kept, r)
			}
		}
		k.Limits[id] = kept[max(0, len(kept)-longLimits):]
	}
	k.Set = k.Set.tidy()
	k.Name = (&ui.Text{Most: slip.MostName}).Fit(k.Name)
	k.Log = made(k.Log)
	for id, w := range k.Log {
		if w == nil || len(k.Log) > mostLogged {
			delete(k.Log, id)
		}
	}
	k.Given = k.Given[:min(len(k.Given), MostGiven)]
	if k.Bench != nil && k.Bench.Validate() != nil {
		k.Bench = nil
	}
}

func made[M ~map[K]V, K comparable, V any](m M) M {
	if m == nil {
		m = M{}
	}
	return m
}
