package game

import (
	"math"
	"slices"
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
	t.Parallel()
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
						if off := lufs[k] - synth.Loudness - louder[k]; math.Abs(off) > 0.3 && e.Kind == sheet.Name {
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

// The rove of a sound stays within 6 dB and says nothing of the answer: over many
// runs the correlation of the level with whether an answer is the right one
// (point-biserial: Pearson's r with a variable of 0 and 1) stays below four standard
// deviations, 4/√n, of what chance makes of it.
func TestLevelsGiveNothingAway(t *testing.T) {
	const runs = 1500
	for _, s := range sheet.Course() {
		for i := range s.Exercises {
			e := &s.Exercises[i]
			if e.Kind == sheet.Match || e.Kind == sheet.Show || e.Quantity != nil && e.Quantity.IsLevel() {
				continue
			}
			var levels, steps []float64
			rights := map[int][]float64{}
			for seed := range uint64(runs) {
				run := ask.Run{Seed: seed}
				q := run.Question(e, 0)
				for _, l := range q.Louder {
					if l > 0 || l < -ask.Rove {
						t.Fatalf("%s: %v dB", e.ID, l)
					}
				}
				levels = append(levels, q.Louder[0])
				if len(q.Louder) > 1 {
					steps = append(steps, math.Abs(q.Louder[1]-q.Louder[0]))
				}
				for answer := range q.Answers {
					is := 0.0
					if answer == q.Right {
						is = 1
					}
					rights[answer] = append(rights[answer], is)
				}
			}
			for answer, right := range rights {
				for _, of := range [][]float64{levels, steps} {
					if r := pearson(of, right); of != nil && !(math.Abs(r) < 4/math.Sqrt(runs)) {
						t.Errorf("%s: the level tells answer %d, r = %.3f", e.ID, answer, r)
					}
				}
			}
			if low := quantile(levels, 0.1); low > -4.5 || quantile(levels, 0.9) < -1.5 {
				t.Errorf("%s: a tenth of the levels is below %.1f dB, so they hardly rove", e.ID, low)
			}
		}
	}
	if r := pearson([]float64{1, 2, 3, 4}, []float64{0, 0, 1, 1}); math.Abs(r-0.894) > 0.001 { // 2/√5
		t.Errorf("the measure is wrong: %v", r)
	}
}

func pearson(x, y []float64) float64 {
	var mx, my, xy, xx, yy float64
	for i := range x {
		mx, my = mx+x[i]/float64(len(x)), my+y[i]/float64(len(x))
	}
	for i := range x {
		dx, dy := x[i]-mx, y[i]-my
		xy, xx, yy = xy+dx*dy, xx+dx*dx, yy+dy*dy
	}
	return xy / math.Sqrt(xx*yy)
}

func quantile(x []float64, part float64) float64 {
	sorted := slices.Sorted(slices.Values(x))
	return sorted[int(part*float64(len(x)))]
}
