package ask

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"partialcredit/game/chance"
	"partialcredit/game/sheet"
	"partialcredit/synth"
)

func parse(t *testing.T, exercise string) *sheet.Exercise {
	t.Helper()
	s, err := sheet.Parse([]byte(`{"version": 1, "title": "T", "exercises": [` + exercise + `]}`))
	if err != nil {
		t.Fatal(err)
	}
	return &s.Exercises[0]
}

const naming4 = `{"id": "x", "kind": "name", "title": "Q?", "task": "T.", "teach": "T.", "questions": 12, "notes": [45, 69], "answers": [
	{"name": "Sine", "cue": "C.", "sound": {"version": 1, "a": {"shape": "sine"}}},
	{"name": "Triangle", "cue": "C.", "sound": {"version": 1, "a": {"shape": "triangle"}}},
	{"name": "Pulse", "cue": "C.", "sound": {"version": 1, "a": {"shape": "pulse"}}, "vary": [{"set": ["a.duty"], "between": [0.1, 0.2]}]},
	{"name": "Sawtooth", "cue": "C.", "sound": {"version": 1}}]}`

const comparing2 = `{"id": "x", "kind": "same", "title": "Q?", "task": "T.", "teach": "T.", "questions": 8, "notes": [45, 57], "pairs": [
	{"name": "same", "same": true, "why": "W.", "one": {"version": 1}, "other": {"version": 1, "a": {"shape": "falling sawtooth"}}},
	{"name": "octave", "why": "W.", "one": {"version": 1, "note": 50}, "other": {"version": 1, "note": 62}}]}`

const limiting1 = `{"id": "x", "kind": "limit", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1, "a": {"shape": "pulse", "duty": 0.3}},
	"quantity": {"name": "Duty", "set": ["a.duty"], "start": 0.2, "least": 0.001, "most": 0.4}}`

func TestNaming(t *testing.T) {
	e := parse(t, naming4)
	r := Run{Seed: 5}
	asked := map[string]int{}
	notes := map[float64]bool{}
	quiet := 0.0
	for !r.Done(e) {
		q := r.Question(e, len(r.Answers))
		if again := r.Question(e, len(r.Answers)); !cmp.Equal(q, again) {
			t.Fatal("the question is another one when it is asked again")
		}
		asked[q.Item]++
		s := q.Sounds[0]
		notes[s.Note] = true
		if s.Note < 45 || s.Note > 69 || s.Note != math.Trunc(s.Note) {
			t.Errorf("note %v", s.Note)
		}
		if q.Item == "Pulse" && (s.A.Duty < 0.1 || s.A.Duty > 0.2) {
			t.Errorf("duty %v", s.A.Duty)
		}
		if q.Louder[0] > 0 || q.Louder[0] < -Rove {
			t.Errorf("%v dB louder", q.Louder[0])
		}
		quiet = min(quiet, q.Louder[0])
		other, _ := q.Compared(e, (q.Right+2)%4)
		if !cmp.Equal(other, s) {
			t.Error("not what was asked is compared")
		}
		if _, other := q.Compared(e, (q.Right+2)%4); other.Note != s.Note || other.A.Shape != e.Answers[(q.Right+2)%4].Sound.A.Shape {
			t.Errorf("compared with %v", other)
		}
		if !r.Answer(e, q.Right) {
			t.Error("the right answer is wrong")
		}
	}
	if want := map[string]int{"Sine": 3, "Triangle": 3, "Pulse": 3, "Sawtooth": 3}; !cmp.Equal(asked, want) {
		t.Errorf("asked after %v", asked)
	}
	if len(notes) < 6 || quiet > -2 {
		t.Errorf("%d notes of 25, at most %.1f dB quieter", len(notes), -quiet)
	}
	if r.Marks(e) != 100 || r.Answer(e, 0) || len(r.Answers) != 12 {
		t.Errorf("%v marks after all right; %d answers", r.Marks(e), len(r.Answers))
	}
	if got := r.Table(e).Transmitted(); math.Abs(got-2) > 1e-9 { // identity of four: 2 bits (hearing.md 8(c) 25)
		t.Errorf("%v bits, want 2", got)
	}
}

// By the formula in the comment of Marks: guessing earns nothing, all right all.
func TestMarksTakeGuessingOff(t *testing.T) {
	for _, c := range []struct {
		exercise string
		wrong    int
		want     float64
	}{{naming4, 9, 0}, {naming4, 3, 100 * (0.75 - 0.25) / 0.75}, {naming4, 12, 0}, {comparing2, 4, 0}, {comparing2, 2, 50}} {
		e := parse(t, c.exercise)
		r := Run{Seed: 9}
		for i := 0; !r.Done(e); i++ {
			q := r.Question(e, i)
			answer := q.Right
			if i < c.wrong {
				answer = (answer + 1) % len(q.Answers)
			}
			r.Answer(e, answer)
		}
		if got := r.Marks(e); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%d wrong of %d: %v marks, want %v", c.wrong, len(r.Answers), got, c.want)
		}
	}
}

// 12 of 16 at ½: 0.0384 (hearing.md 8(c) 19).
func TestGuessed(t *testing.T) {
	e := parse(t, comparing2)
	e.Questions = 16
	r := Run{}
	for i := 0; !r.Done(e); i++ {
		q := r.Question(e, i)
		answer := q.Right
		if i < 4 {
			answer = 1 - answer
		}
		r.Answer(e, answer)
	}
	if got := r.Guessed(e); math.Abs(got-0.0384) > 5e-5 {
		t.Errorf("12 of 16 by guessing: %v", got)
	}
}

func TestComparing(t *testing.T) {
	e := parse(t, comparing2)
	first := map[float64]bool{}
	for seed := range uint64(20) {
		r := Run{Seed: seed}
		q := r.Question(e, 0)
		if q.Item == "octave" {
			d := q.Sounds[1].Note - q.Sounds[0].Note
			first[d] = true
			if q.Right != 1 {
				t.Error("an octave is the same")
			}
		} else if q.Right != 0 || q.Sounds[0].Note != q.Sounds[1].Note {
			t.Errorf("%+v", q)
		}
		if q.Louder[0] == q.Louder[1] {
			t.Error("both at one level")
		}
	}
	if want := map[float64]bool{12: true, -12: true}; !cmp.Equal(first, want) {
		t.Errorf("steps of the octave pair: %v", first)
	}
}

// The run of a limit follows the staircase of Levitt 1971: two right halve, one
// wrong doubles, until the second reversal.
func TestLimiting(t *testing.T) {
	e := parse(t, limiting1)
	r := Run{Seed: 3}
	var values []float64
	for _, right := range []bool{true, true, true, true, false} {
		q := r.Question(e, len(r.Answers))
		values = append(values, q.Value)
		for i, s := range q.Sounds {
			want := 0.3
			if i == q.Right {
				want += q.Value
			}
			if math.Abs(s.A.Duty-want) > 1e-12 {
				t.Errorf("sound %d has duty %v, want %v", i, s.A.Duty, want)
			}
		}
		answer := q.Right
		if !right {
			answer = (answer + 1) % 3
		}
		if r.Answer(e, answer) != right {
			t.Error("not the answer that was given")
		}
	}
	values = append(values, r.Question(e, 5).Value)
	if want := []float64{0.2, 0.2, 0.1, 0.1, 0.05, 0.1}; !cmp.Equal(values, want) {
		t.Errorf("asked for %v, want %v", values, want)
	}
}

func TestLimitOfLevel(t *testing.T) {
	e := parse(t, `{"id": "x", "kind": "limit", "title": "Q?", "task": "T.", "teach": "T.", "target": {"version": 1},
		"quantity": {"name": "Level", "set": ["level"], "start": 6, "least": 0.1, "most": 12}}`)
	r := Run{Seed: 4}
	q := r.Question(e, 0)
	for i, louder := range q.Louder {
		if want := map[bool]float64{true: 6}[i == q.Right]; louder != want {
			t.Errorf("sound %d is %v dB louder, want %v", i, louder, want)
		}
	}
	if q.Sounds[0] != q.Sounds[1] || q.Sounds[1] != q.Sounds[2] {
		t.Error("the sounds differ in more than level")
	}
}

// A listener who is right with the probability ⅓ + ⅔ Φ-like Weibull (hearing.md 3:
// slope 1.5, 2 % lapses) around a threshold of one point of duty; the geometric mean
// of 500 runs recovers it within 7 % (hearing.md 8(c) 24).
func TestSimulatedListenerIsRecovered(t *testing.T) {
	e := parse(t, limiting1)
	const threshold, slope, lapse = 0.01, 1.5, 0.02
	// the scale at which the listener is right in 70.71 % (Levitt 1971)
	scale := threshold / math.Pow(-math.Log(1-(math.Sqrt2/2-1.0/3)/(2.0/3-lapse)), 1/slope)
	ears := chance.From(99)
	sum, runs := 0.0, 0
	for seed := range uint64(500) {
		r := Run{Seed: seed}
		for !r.Done(e) {
			q := r.Question(e, len(r.Answers))
			p := 1.0/3 + (2.0/3-lapse)*(1-math.Exp(-math.Pow(q.Value/scale, slope)))
			answer := q.Right
			if ears.Part() >= p {
				answer = (answer + 1) % 3
			}
			r.Answer(e, answer)
		}
		s := r.Staircase(e)
		if v, _, ok := s.Threshold(); ok {
			sum += math.Log(v)
			runs++
		}
	}
	mean := math.Exp(sum / float64(runs))
	t.Logf("%d runs: %.5f, %.1f %% off", runs, mean, 100*(mean/threshold-1))
	if runs < 480 || math.Abs(math.Log(mean/threshold)) > math.Log(1.07) {
		t.Errorf("%d runs with a mean of %v, want %v within 7 %%", runs, mean, threshold)
	}
}

func TestValid(t *testing.T) {
	e := parse(t, naming4)
	for answers, want := range map[string]bool{`[0, 1, 3]`: true, `[4]`: false, `[-1]`: false, `[0,0,0,0,0,0,0,0,0,0,0,0,0]`: false, `null`: true} {
		var r Run
		if err := json.Unmarshal([]byte(`{"seed": 1, "answers": `+answers+`}`), &r); err != nil {
			t.Fatal(err)
		}
		if got := r.Valid(e); got != want {
			t.Errorf("%s: %v", answers, got)
		}
	}
}

func TestAbout(t *testing.T) {
	e := parse(t, naming4)
	for _, item := range Items(e) {
		q, ok := About(e, item, 8)
		if !ok || q.Item != item || q.Answers[q.Right] != item || q.Cue(e) == "" {
			t.Errorf("%s: %+v, %v", item, q, ok)
		}
	}
	if _, ok := About(e, "Noise", 8); ok {
		t.Error("asked after what is no answer")
	}
}

func TestReferenceSharesTheNote(t *testing.T) {
	e := parse(t, `{"id": "x", "kind": "name", "title": "Q?", "task": "T.", "teach": "T.", "notes": [45, 57], "reference": {"version": 1}, "answers": [
		{"name": "8", "cue": "C.", "sound": {"version": 1}}, {"name": "4", "cue": "C.", "sound": {"version": 1, "a": {"footage": 4}}}]}`)
	r := Run{Seed: 2}
	q := r.Question(e, 0)
	if q.Lead == nil || q.Lead.Note != q.Sounds[0].Note || q.Lead.A != (synth.Default()).A {
		t.Errorf("%+v", q)
	}
}
