package game

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // where the machine has none

	"github.com/google/go-cmp/cmp"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// A file of version 1 keeps its marks, its settings and its look.
func TestVersion1IsKept(t *testing.T) {
	old, err := os.ReadFile("../testdata/progress/version-1.json")
	if err != nil {
		t.Fatal(err)
	}
	g := New(sheet.Course(), old, roughly)
	look(g)
	if g.over == note || g.page != working || g.exercise().ID != "width-rate" {
		t.Errorf("page %s, exercise %s: %s", pageNames[g.page], g.exercise().ID, g.say)
	}
	if v := g.work.yours.LFO.Hz; v != 0.9 || !g.work.uncovered || g.kept.Theme != Blackboard || g.kept.Volume != 0.3 {
		t.Errorf("%v Hz, uncovered %v, %v, volume %v", v, g.work.uncovered, g.kept.Theme, g.kept.Volume)
	}
	for id, marks := range map[string]float64{"duty": 66, "beats": 88} {
		if r := g.kept.Marks[id]; int(r.Best) != int(marks) || r.Tries != 1 {
			t.Errorf("%s: %+v", id, r)
		}
	}
	g.act(ui.Action{Widget: "course"})
	look(g)
	if body := g.Scene().Body; !strings.Contains(body, "2 of 90 exercises done, 77 marks on average") {
		t.Errorf("the contents say %q", body)
	}
	again := New(sheet.Course(), g.Save(), roughly)
	if r := again.kept.Marks["beats"]; int(r.Best) != 88 {
		t.Errorf("after saving again: %+v", r)
	}
}

// A learner for years: what is kept stays small, and whole.
func TestYearsOfWorkStaySmall(t *testing.T) {
	g := New(sheet.Course(), nil, roughly)
	for i := range 40 {
		for _, s := range g.course {
			for j := range s.Exercises {
				e := &s.Exercises[j]
				day := 20000 + i
				switch e.Kind {
				case sheet.Show:
					g.kept.seen(e.ID)
				case sheet.Limit:
					for range 10 {
						g.kept.limit(e.ID, limitRun{Day: day, Value: 0.123456789012345678, Factor: 1.23456789012345, Found: true})
					}
				default:
					g.kept.add(e.ID, day, 93.33333333333333)
					if e.Kind != sheet.Match {
						for answer := range 2 {
							run := ask.Run{Seed: uint64(i)}
							q := run.Question(e, 0)
							g.kept.tally(e, &q, answer)
							g.kept.recall(e, &q, answer, day)
						}
					}
				}
			}
		}
	}
	data := g.Save()
	t.Logf("%d bytes", len(data))
	if len(data) > 400_000 || len(g.kept.History) != longHistory || len(g.kept.Limits["limit-duty"]) != longLimits {
		t.Errorf("%d bytes, %d hand-ins, %d runs", len(data), len(g.kept.History), len(g.kept.Limits["limit-duty"]))
	}
	if last := g.kept.History[longHistory-1]; last.Day != 20039 {
		t.Errorf("the newest is not kept: %+v", last)
	}
	things := 0
	for _, s := range g.course {
		for j := range s.Exercises {
			things += len(ask.Items(&s.Exercises[j]))
		}
	}
	if n := len(g.kept.Boxes); n > things {
		t.Errorf("%d boxes for %d things", n, things)
	}
}

// answersAt answers, at a time, when "One" is asked after.
func answersAt(g *Game, when time.Time, right bool) {
	at(g, when)
	e := g.exercise()
	q := &g.asking.question
	for q.Item != "One" || g.page != questionPage { // until it is asked after
		g.asking.run.Seed++
		g.ask(g.asking.run.Question(e, len(g.asking.run.Answers)))
	}
	answer := q.Right
	if !right {
		answer = 1 - answer
	}
	g.choose(answer)
}

func at(g *Game, when time.Time) {
	g.Update(Input{W: 390, H: 844, Heard: Heard{Item: -1}, Random: 3, Date: when})
}

func namingGame() *Game {
	g := New(sheet.Course(), nil, roughly)
	g.gauge, g.kept.Hinted = unheard, true
	p, _ := g.find("one-or-two")
	g.open(p)
	return g
}

// What is due follows the days of the place where the device is (Leitner's boxes:
// missed today, then after 1, 3, 5 and 10 days), also where a day has 23 hours or
// another place has another day.
func TestDueDaysFollowTheCalendar(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	tokyo, _ := time.LoadLocation("Asia/Tokyo")
	newYork, _ := time.LoadLocation("America/New_York")
	const key = "one-or-two/One"
	for _, c := range []struct {
		name   string
		answer time.Time
		early  time.Time // not due yet
		due    time.Time
	}{
		{"an hour over midnight", time.Date(2026, 5, 4, 23, 30, 0, 0, berlin), time.Date(2026, 5, 4, 23, 59, 0, 0, berlin), time.Date(2026, 5, 5, 0, 30, 0, 0, berlin)},
		// EU summer time begins on the last Sunday of March (Directive 2000/84/EC): that day has 23 hours.
		{"the day of 23 hours", time.Date(2026, 3, 28, 23, 30, 0, 0, berlin), time.Date(2026, 3, 28, 23, 59, 0, 0, berlin), time.Date(2026, 3, 29, 0, 15, 0, 0, berlin)},
		{"and its end", time.Date(2026, 3, 29, 0, 15, 0, 0, berlin), time.Date(2026, 3, 29, 23, 45, 0, 0, berlin), time.Date(2026, 3, 30, 0, 15, 0, 0, berlin)},
		{"the day of 25 hours", time.Date(2026, 10, 25, 0, 15, 0, 0, berlin), time.Date(2026, 10, 25, 0, 15, 0, 0, berlin).Add(24 * time.Hour), time.Date(2026, 10, 26, 0, 15, 0, 0, berlin)},
		{"to the east", time.Date(2026, 5, 4, 15, 0, 0, 0, berlin), time.Date(2026, 5, 4, 16, 30, 0, 0, berlin), time.Date(2026, 5, 4, 17, 30, 0, 0, berlin).In(tokyo)},
		{"to the west", time.Date(2026, 5, 5, 7, 0, 0, 0, tokyo), time.Date(2026, 5, 5, 7, 30, 0, 0, tokyo).In(newYork), time.Date(2026, 5, 6, 9, 0, 0, 0, newYork)},
		{"over a year", time.Date(2026, 12, 31, 20, 0, 0, 0, berlin), time.Date(2026, 12, 31, 23, 0, 0, 0, berlin), time.Date(2027, 1, 1, 8, 0, 0, 0, berlin)},
	} {
		g := namingGame()
		answersAt(g, c.answer, true)
		for when, want := range map[time.Time]bool{c.early: false, c.due: true} {
			at(g, when)
			if got := slices.Contains(g.kept.Boxes.Due(g.today()), key); got != want {
				t.Errorf("%s: due at %v: %v", c.name, when, got)
			}
		}
	}
}

// Two days and more of practice: what is answered rightly moves on by 1, 3, 5 and 10
// days, what is missed is due at once.
func TestDaysOfPractice(t *testing.T) {
	g := namingGame()
	const key = "one-or-two/One"
	day := time.Date(2026, 5, 4, 17, 0, 0, 0, time.UTC)
	dueAfter := func() int {
		for n := range 30 {
			at(g, day.AddDate(0, 0, n))
			if slices.Contains(g.kept.Boxes.Due(g.today()), key) {
				return n
			}
		}
		return -1
	}
	for _, want := range []int{1, 3, 5, 10, 10} {
		answersAt(g, day, true)
		if got := dueAfter(); got != want {
			t.Errorf("due after %d days, want %d", got, want)
		}
		day = day.AddDate(0, 0, want)
	}
	answersAt(g, day, false)
	if got := dueAfter(); got != 0 {
		t.Errorf("missed, and due after %d days", got)
	}
}

// The clock of the device was wrong: nothing is out of reach for longer than the
// longest box, and the progress can be drawn.
func TestTheClockIsSetBack(t *testing.T) {
	const key = "one-or-two/One"
	wrong, right := time.Date(2038, 1, 19, 12, 0, 0, 0, time.UTC), time.Date(2026, 5, 4, 12, 0, 0, 0, time.UTC)
	g := namingGame()
	answersAt(g, wrong, true)
	at(g, right)
	if !slices.Contains(g.kept.Boxes.Due(g.today()), key) {
		t.Error("what was answered in 2038 is not due in 2026")
	}
	for i, when := range []time.Time{wrong, right, right.AddDate(0, 0, 1)} {
		at(g, when)
		g.kept.add("duty", g.today(), 50+float64(i))
		g.kept.limit("limit-duty", limitRun{Day: g.today(), Value: 0.01, Factor: 1.2, Found: true})
	}
	for view := range 3 {
		g.show(progressPage)
		g.view = view
		at(g, right)
		for _, c := range g.Scene().Charts {
			for _, s := range c.Series {
				for i, d := range s.Points {
					if d.X < c.X.Lo || d.X > c.X.Hi || i > 0 && d.X < s.Points[i-1].X {
						t.Errorf("view %d: dot %d at %v is off its axis, %v to %v, or out of order", view, i, date(int(d.X/86400)), c.X.Lo, c.X.Hi)
					}
				}
			}
		}
	}
}

// The page of a limit says what the staircase has found, with its own numbers; the
// bounds where the limit lies beyond them.
func TestLimitsSayWhatTheStaircaseFound(t *testing.T) {
	for _, s := range sheet.Course() {
		for i := range s.Exercises {
			e := &s.Exercises[i]
			if e.Kind != sheet.Limit {
				continue
			}
			for name, hears := range map[string]func(v float64) bool{
				"steady": func(v float64) bool { return v >= e.Quantity.Start/9 },
				"all":    func(float64) bool { return true },
				"none":   func(float64) bool { return false },
			} {
				g := New(sheet.Course(), nil, roughly)
				g.gauge, g.kept.Hinted = unheard, true
				where, _ := g.find(e.ID)
				g.open(where)
				q := e.Quantity
				stairs := practice.Staircase{Start: q.Start, Min: q.Least, Max: q.Most}
				for g.page == questionPage {
					right := hears(stairs.Next())
					if stairs.Next() != g.asking.question.Value {
						t.Fatalf("%s: asked for %v, the staircase for %v", e.ID, g.asking.question.Value, stairs.Next())
					}
					stairs.Answer(right)
					answer := g.asking.question.Right
					if !right {
						answer = (answer + 1) % practice.Intervals
					}
					g.choose(answer)
					g.proceed()
				}
				value, factor, ok := stairs.Threshold()
				want := fmt.Sprintf("Your limit here: about %s, within a factor of %.1f.", q.Format(value), factor)
				switch {
				case name == "all":
					want = "You hear even the smallest difference that is asked here, " + q.Format(q.Least)
				case name == "none":
					want = "Even the largest difference that is asked here, " + q.Format(q.Most)
				case !ok:
					t.Errorf("%s: a steady listener's limit is not found", e.ID)
				}
				g.Update(Input{W: 1180, H: 820, Heard: Heard{Item: -1}})
				body := g.Scene().Body
				if !stairs.Done() || !strings.Contains(body, want) || strings.Contains(body, "marks") {
					t.Errorf("%s, %s: %q, want %q", e.ID, name, body, want)
				}
				if p := q.Published; (p != nil) != strings.Contains(body, "Published: ") || p != nil && !strings.Contains(body, q.Format(p.Value)+" ("+p.Source+")") {
					t.Errorf("%s: published: %q", e.ID, body)
				}
				if r := g.kept.Limits[e.ID]; len(r) != 1 || r[0].Found != ok || r[0].Value != value {
					t.Errorf("%s: kept %+v", e.ID, r)
				}
			}
		}
	}
}

// What version 2 kept once is kept on, every part under its name.
func TestVersion2IsKept(t *testing.T) {
	old, err := os.ReadFile("../testdata/progress/version-2.json")
	if err != nil {
		t.Fatal(err)
	}
	var want, got map[string]any
	g := New(sheet.Course(), old, roughly)
	if err := errors.Join(json.Unmarshal(old, &want), json.Unmarshal(g.Save(), &got)); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if len(g.kept.History) != 3 || len(g.kept.Limits["limit-detune"]) != 1 || len(g.kept.Boxes) < 8 || g.kept.Bench == nil {
		t.Errorf("%+v", g.kept)
	}
}
