package game

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"partialcredit/game/ask"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// practiser is a game in which some things have been met, and a clock.
type practiser struct {
	*Game
	now    time.Duration
	day    time.Time
	random uint64
}

func newPractiser() *practiser {
	p := &practiser{Game: New(sheet.Course(), nil, roughly), random: 9, day: time.Date(2026, 3, 2, 17, 0, 0, 0, time.UTC)}
	p.gauge, p.kept.Hinted = unheard, true
	p.pass(0)
	return p
}

// pass lets time pass.
func (p *practiser) pass(d time.Duration) {
	p.now += d
	p.random = p.random*6364136223846793005 + 1442695040888963407
	p.Update(Input{Now: p.now, W: 390, H: 844, Heard: Heard{Item: -1}, Random: p.random, Date: p.day})
}

// meet puts things into the boxes: missed, or known since yesterday.
func (p *practiser) meet(missed, known []string) {
	for _, k := range missed {
		p.kept.review(k, false, p.today())
	}
	for _, k := range known {
		p.kept.review(k, true, p.today())
	}
}

// answer answers what lies open, rightly or not, and goes on.
func (p *practiser) answer(right bool) {
	q := &p.asking.question
	answer := q.Right
	if !right {
		answer = (answer + 1) % len(q.Answers)
	}
	p.choose(answer)
	p.proceed()
}

var (
	shapes = []string{"four-shapes/Sine", "four-shapes/Triangle", "four-shapes/Square", "four-shapes/Sawtooth"}
	feet   = []string{"footage-five/32′", "footage-five/16′", "footage-five/8′", "footage-five/4′", "footage-five/2′"}
)

// What was missed is asked first, before anything that is known.
func TestPracticeBeginsWithWhatWasMissed(t *testing.T) {
	p := newPractiser()
	p.meet(shapes, feet)
	p.beginPractice()
	var asked []string
	for len(asked) < 6 {
		asked = append(asked, p.session.last)
		p.answer(true)
		p.pass(5 * time.Second)
	}
	first := slices.Sorted(slices.Values(asked[:4]))
	if !slices.Equal(first, slices.Sorted(slices.Values(shapes))) {
		t.Errorf("asked first: %v", asked)
	}
	if !strings.HasPrefix(asked[4], "footage") && !strings.HasPrefix(asked[5], "footage") {
		t.Errorf("and then: %v", asked)
	}
}

// What was taken for another thing comes side by side with it: after one of the two
// the other is next in about half of the cases (the bound of practice.Next), though
// eight other things are as due.
func TestPracticeSetsTheConfusedSideBySide(t *testing.T) {
	p := newPractiser()
	p.meet(append(shapes, feet...), nil)
	e := &p.course[2].Exercises[4]
	if e.ID != "four-shapes" {
		t.Fatal(e.ID)
	}
	p.at, _ = p.find(e.ID)
	for range 4 { // a triangle was taken for a sine
		p.session = session{on: true}
		q, _ := ask.About(e, "Triangle", p.random)
		p.asking = asking{}
		p.ask(q)
		p.choose(slices.Index(q.Answers, "Sine"))
	}
	if n := p.kept.Confused.Count("four-shapes/Triangle", "four-shapes/Sine"); n != 4 {
		t.Fatalf("confused %d times", n)
	}
	const times = 300
	beside, other := 0, 0
	for range times {
		p.session = session{on: true, began: p.now, last: "four-shapes/Triangle"}
		p.page = practicePage
		p.practise()
		switch p.session.last {
		case "four-shapes/Sine":
			beside++
		case "four-shapes/Square":
			other++
		case "four-shapes/Triangle":
			t.Fatal("the same again")
		}
		p.pass(time.Millisecond)
	}
	// half, and an eighth of the other half: 0.56 ± 0.03; another 0.06
	if beside < times*45/100 || beside > times*67/100 || other > times*13/100 {
		t.Errorf("of %d the confused one comes %d times, another %d times", times, beside, other)
	}
}

// A set ends after 8 minutes where nothing is due any more, after 10 in any case,
// with the advice to rest; and it counts.
func TestASetOfPracticeEnds(t *testing.T) {
	for _, c := range []struct {
		right bool
		least time.Duration
		most  time.Duration
	}{{true, practice.Shortest, practice.Shortest + 20*time.Second}, {false, practice.Longest, practice.Longest + 20*time.Second}} {
		p := newPractiser()
		p.meet(shapes, feet)
		p.beginPractice()
		n := 0
		for ; p.session.on; n++ {
			p.pass(12 * time.Second)
			p.answer(c.right)
		}
		if p.now < c.least || p.now > c.most || p.page != practicePage {
			t.Errorf("right %v: ended after %v on the page %s", c.right, p.now, pageNames[p.page])
		}
		p.pass(0)
		body := p.Scene().Body
		right := 0
		if c.right {
			right = n
		}
		if want := fmt.Sprintf("%d of %d right. Ears learn between sets", right, n); !strings.Contains(body, want) || !strings.Contains(body, "rest now") {
			t.Errorf("it says %q, want %q", body, want)
		}
		if len(p.kept.History) != 0 || len(p.kept.Runs) != 0 {
			t.Error("practice gives marks")
		}
	}
}

// Practice asks after nothing that the course no longer has.
func TestPracticeForgetsWhatIsGone(t *testing.T) {
	p := newPractiser()
	p.meet([]string{"four-shapes/Noise", "gone/Sine", "gone", "limit-duty", "duty", "show-duty"}, nil)
	p.beginPractice()
	if len(p.kept.Boxes) != 1 || p.page != working || p.exercise().ID != "duty" {
		t.Errorf("%v, page %s", p.kept.Boxes, pageNames[p.page])
	}
}

// Where a match is all there is to practise, it comes again from its start.
func TestTheOnlyMatchComesAgainFromItsStart(t *testing.T) {
	p := newPractiser()
	p.meet([]string{"duty"}, nil)
	p.beginPractice()
	for range 2 {
		if p.page != working || p.work.yours != p.exercise().Start() {
			t.Errorf("page %s, duty %v", pageNames[p.page], p.work.yours.A.Duty)
		}
		p.set(0, 0.4)
		p.handIn()
		p.next()
	}
	if p.session.asked != 2 {
		t.Errorf("%d asked", p.session.asked)
	}
}
