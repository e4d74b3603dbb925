package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// tenExercises are of the course: four matches, three namings, two comparisons, one limit.
var tenExercises = []string{"bright-mix", "duty", "beats", "octaves",
	"four-shapes", "footage-three", "technique", "same-looks", "same-detune", "limit-duty"}

// classSheet is a sheet that varies, of exercises of the course.
func classSheet(t testing.TB, ids ...string) *sheet.Sheet {
	sh := &sheet.Sheet{Version: sheet.Version, Title: "What do you hear?", Strictness: sheet.Practised, Vary: true}
	for _, id := range ids {
		for _, s := range sheet.Course() {
			if e := slip.Exercise(s, id); e != nil {
				sh.Exercises = append(sh.Exercises, *e)
			}
		}
	}
	sh, err := sheet.Parse(sh.JSON())
	if err != nil || len(sh.Exercises) != len(ids) {
		t.Fatalf("the sheet of the class: %v", err)
	}
	return sh
}

// class is what n learners hand in. Each hears as well as chance has it, answers every exercise
// and, in three of five, tries again and does better.
func class(sh *sheet.Sheet, n int, seed uint64) []*slip.Slip {
	rng := rand.New(rand.NewPCG(seed, 0))
	slips, drawing := make([]*slip.Slip, n), sh.Drawing()
	for i := range slips {
		s := &slip.Slip{Version: slip.Version, Name: fmt.Sprintf("Learner %04d", i), Sheet: drawing.Fingerprint, Title: sh.Title, Minute: 29500000 + rng.Int64N(1000)}
		drawn := drawing.For(s.Name)
		hears := rng.Float64()
		for j := range drawn.Exercises {
			e := &drawn.Exercises[j]
			w := slip.Work{ID: e.ID, Tries: 1, Seconds: 30 + rng.IntN(200), Replays: 2 + rng.IntN(20), First: attempt(&drawing, e, s.Name, 0, hears, rng)}
			if rng.Float64() < 0.6 {
				w.Tries = 2 + rng.IntN(3)
				best := attempt(&drawing, e, s.Name, w.Tries-1, (1+hears)/2, rng)
				w.Best = &best
			}
			s.Work = append(s.Work, w)
		}
		slips[i] = s
	}
	return slips
}

func attempt(d *sheet.Drawing, e *sheet.Exercise, name string, try int, hears float64, rng *rand.Rand) slip.Attempt {
	if e.Kind == sheet.Match {
		var a slip.Attempt
		for i := range e.Controls {
			c := &e.Controls[i]
			v := c.Get(&e.Target) + (1-hears)*0.3*rng.NormFloat64()*(c.Max-c.Min)
			var s = e.Target
			c.Set(&s, v)
			a.Settings = append(a.Settings, c.Get(&s))
		}
		return a
	}
	run := &ask.Run{Seed: d.Seed(name, e.ID, try)}
	for !run.Done(e) {
		q := run.Question(e, len(run.Answers))
		answer := q.Right
		knows := hears
		if e.Kind == sheet.Limit {
			knows = q.Value / (q.Value + (1-hears)*e.Quantity.Start/4)
		}
		if rng.Float64() > knows {
			answer = rng.IntN(len(q.Answers))
		}
		run.Answer(e, answer)
	}
	return slip.Attempt{Run: run, Try: try}
}

func TestTheClassIsOne(t *testing.T) {
	sh := classSheet(t, tenExercises...)
	counts := map[sheet.Kind]int{}
	for _, e := range sh.Exercises {
		counts[e.Kind]++
	}
	if counts[sheet.Match] != 4 || counts[sheet.Name] != 3 || counts[sheet.Same] != 2 || counts[sheet.Limit] != 1 {
		t.Errorf("the sheet has %v", counts)
	}
	targets := map[string]bool{}
	for _, s := range class(sh, 20, 1) {
		read, err := slip.Read(s.Fragment())
		if err == nil {
			err = read.Fits(sh)
		}
		if err != nil || !slices.Equal(read.Work[0].First.Settings, s.Work[0].First.Settings) {
			t.Fatalf("a slip does not fit: %v", err)
		}
		targets[fmt.Sprint(sh.For(s.Name).Exercises[1].Target)] = true
	}
	if len(targets) < 10 {
		t.Errorf("%d targets for 20 learners", len(targets))
	}
}

// BenchmarkTallyOfAThousand is a class of 1,000 slips, each a file, on a sheet that varies: wanted
// under 60 s on two cores (issue 5).
//
//	go test -run XXX -bench TallyOfAThousand -benchtime 1x -timeout 20m ./cmd/desk
func BenchmarkTallyOfAThousand(b *testing.B) {
	sh, folder := classSheet(b, tenExercises...), b.TempDir()
	for i, s := range class(sh, 1000, 1) {
		if err := os.WriteFile(filepath.Join(folder, fmt.Sprintf("%04d.txt", i)), []byte(s.Fragment()), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	for b.Loop() {
		code, out, problems := deskSays("", "tally", folder, "-sheet", sh.Fragment())
		if code != 0 || !strings.Contains(out, "Learners: 1000.") {
			b.Fatalf("exit status %d: %s", code, problems)
		}
	}
}
