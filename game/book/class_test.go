package book

import (
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// testSheet has a match, two namings with the same answers, a comparison, a limit and a
// demonstration of the course.
func testSheet(t testing.TB, vary bool) *sheet.Sheet {
	sh := &sheet.Sheet{Version: sheet.Version, Title: "A class", Strictness: sheet.Practised, Vary: vary}
	for _, id := range []string{"show-duty", "duty", "four-shapes", "same-looks", "limit-duty"} {
		for _, s := range sheet.Course() {
			if e := slip.Exercise(s, id); e != nil {
				sh.Exercises = append(sh.Exercises, *e)
			}
		}
	}
	again := sh.Exercises[2]
	again.ID, again.Title = "shapes-again", "And now?"
	sh.Exercises = append(sh.Exercises, again)
	sh, err := sheet.Parse(sh.JSON())
	if err != nil {
		t.Fatal(err)
	}
	return sh
}

// answers makes a run: right as often as asked, from the first question on, and wrong by
// the answer that stands next.
func answers(x *sheet.Exercise, seed uint64, right int) slip.Attempt {
	run := &ask.Run{Seed: seed}
	for i := 0; !run.Done(x); i++ {
		q := run.Question(x, i)
		answer := q.Right
		if i >= right && x.Kind != sheet.Limit || x.Kind == sheet.Limit && q.Value < x.Quantity.Start/3 {
			answer = (q.Right + 1) % len(q.Answers)
		}
		run.Answer(x, answer)
	}
	return slip.Attempt{Run: run}
}

// testSlip is a slip of a learner who sets the duty and is right so often in a naming.
func testSlip(sh *sheet.Sheet, name string, minute int64, duty float64, right int) *slip.Slip {
	s := &slip.Slip{Version: slip.Version, Name: name, Sheet: sh.Fingerprint(), Title: sh.Title, Minute: minute}
	drawn := sh.For(name)
	s.Work = []slip.Work{
		{ID: "duty", Tries: 1, Seconds: 90, Replays: 4, First: slip.Attempt{Settings: []float64{duty}}},
		{ID: "four-shapes", Tries: 1, Seconds: 60, Replays: 12, First: answers(slip.Exercise(drawn, "four-shapes"), sh.Seed(name, "four-shapes", 0), right)},
	}
	return s
}

// fates adds a text and says what became of what is in it.
func fates(b *Book, text string) string {
	var all []string
	for _, r := range b.Add(text, "a test") {
		all = append(all, [...]string{"taken", "double", "newer", "older", "waiting", "damaged", "sheet"}[r.Fate])
	}
	return strings.Join(all, " ")
}
