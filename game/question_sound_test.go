package game

import (
	"math"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

// asks puts a question of an exercise to a learner, and gives what is played.
func asks(g *Game, e *sheet.Exercise, q ask.Question) synth.Program {
	g.at, _ = g.find(e.ID)
	g.asking = asking{}
	g.ask(q)
	g.listen()
	return g.Program()
}

// heardOf plays a program to its end, and measures each of its sounds by itself as
// ITU-R BS.1770-4 has it (the meter is held to the figures of the ITU in synth).
func heardOf(p synth.Program) (lufs []float64, peak float64) {
	speaker := synth.NewPlayer(Rate)
	speaker.Play(p)
	block := make([]float32, Rate/1000)
	var m *synth.Meter
	item := -1
	for quiet := 0; quiet < 500; quiet++ {
		speaker.Render(block, nil)
		now, _ := speaker.Sounding()
		if now != item && m != nil {
			lufs = append(lufs, m.Loudness())
			peak = max(peak, m.Peak())
			m = nil
		}
		if item = now; item < 0 {
			continue
		}
		if m == nil {
			m = synth.NewMeter(Rate)
		}
		m.Write(block)
		quiet = 0
	}
	return lufs, peak
}

// TestQuestionsAreEquallyLoud listens to a question after each thing that the course
// asks after: all its sounds are equally loud but for the rove, and a limit of level
// has its own difference and no other.
func TestQuestionsAreEquallyLoud(t *testing.T) {
	for i, s := range sheet.Course() {
		t.Run(s.Title, func(t *testing.T) {
			t.Parallel()
			g := New(sheet.Course(), nil, roughly)
			g.kept.Hinted = true
			for j := range s.Exercises {
				e := &s.Exercises[j]
				var questions []ask.Question
				for n, item := range ask.Items(e) {
					q, _ := ask.About(e, item, uint64(1000*i+10*j+n))
					questions = append(questions, q)
				}
				if e.Kind == sheet.Limit { // at its start and at its least
					run := ask.Run{Seed: uint64(100*i + j)}
					questions = append(questions, run.Question(e, 0))
					for !run.Done(e) {
						run.Answer(e, run.Question(e, len(run.Answers)).Right)
					}
					questions = append(questions, run.Question(e, len(run.Answers)-1))
				}
				for _, q := range questions {
					louder := q.Louder
					if q.Lead != nil {
						louder = append([]float64{0}, louder...)
					}
					lufs, peak := heardOf(asks(g, e, q))
					if len(lufs) != len(louder) {
						t.Errorf("%s, %s: %d sounds are heard of %d", e.ID, q.Item, len(lufs), len(louder))
						continue
					}
					for k := range lufs {
						if off := lufs[k] - lufs[0] - (louder[k] - louder[0]); math.Abs(off) > 0.3 {
							t.Errorf("%s, %s: sound %d is %.2f LU louder than it should be", e.ID, q.Item, k, off)
						}
						if e.Kind == sheet.Limit && e.Quantity.IsLevel() {
							if by := lufs[q.Right] - lufs[(q.Right+1+k%2)%3]; math.Abs(by-q.Value) > 0.2 {
								t.Errorf("%s: the right one is %.2f LU louder, want %v", e.ID, by, q.Value)
							}
						}
						if off := lufs[k] - loudness - louder[k]; math.Abs(off) > 0.3 && e.Kind == sheet.Name {
							t.Errorf("%s, %s: %.2f LU off its own level, which tells it from the others", e.ID, q.Item, off)
						}
					}
					if peak > 0.5 {
						t.Errorf("%s, %s: a peak of %.3f is above -6 dBFS", e.ID, q.Item, peak)
					}
				}
			}
		})
	}
}
