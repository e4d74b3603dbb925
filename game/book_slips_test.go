package game

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"

	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// homework is a small sheet of every kind that varies.
var homework = sync.OnceValue(func() *sheet.Sheet {
	s := assignment(true)
	s.Title = "Homework <b>&amp; beats, for Tuesday"
	return s
})

// slipOf is what a learner hands in on a sheet who hits a share of it, 0 to 1.
func slipOf(sh *sheet.Sheet, name string, share float64, minute int64) *slip.Slip {
	d := sh.Drawing()
	own := d.For(name)
	random := rand.New(rand.NewPCG(uint64(minute), uint64(len(name))))
	s := &slip.Slip{Version: slip.Version, Name: name, Sheet: d.Fingerprint, Title: sh.Title, Minute: minute}
	for i := range own.Exercises {
		e := &own.Exercises[i]
		if e.Kind == sheet.Show {
			continue
		}
		w := slip.Work{ID: e.ID, Tries: 1, Seconds: 30 + int(60*(1-share)), Replays: 3}
		if e.Kind == sheet.Match {
			for j := range e.Controls {
				c := &e.Controls[j]
				v := c.Get(&e.Target)
				w.First.Settings = append(w.First.Settings, max(c.Min, min(c.Max, v+(1-share)*(c.Start-v))))
			}
		} else {
			run := &ask.Run{Seed: d.Seed(name, e.ID, 0)}
			for !run.Done(e) {
				q := run.Question(e, len(run.Answers))
				answer := q.Right
				if random.Float64() > share {
					answer = (answer + 1) % len(q.Answers)
				}
				run.Answer(e, answer)
			}
			w.First.Run = run
		}
		s.Work = append(s.Work, w)
	}
	if err := s.Fits(sh); err != nil {
		panic(err)
	}
	for i := range s.Work {
		if sh.Vary {
			unseeded(&s.Work[i])
		}
	}
	return s
}

// class is a class that hands a sheet in.
func class(sh *sheet.Sheet, n int) (links []string) {
	for i := range n {
		name := fmt.Sprintf("Learner %02d", i)
		if i == n-1 {
			name = "Wilhelmina the Forty-Second Wren of All"
		}
		links = append(links, "https://example.org/#"+slipOf(sh, name, float64(i%10)/10, 29000000+int64(i)).Fragment())
	}
	return links
}

// classOf30 is that of the homework, made once.
var classOf30 = sync.OnceValue(func() []string { return class(homework(), 30) })

// damaged is a slip of which one letter is another.
func damaged(link string) string {
	b := []byte(link)
	i := len(b) - 20
	b[i] = 'A' + (b[i]-'A'+1)%26
	if b[i] < 'A' || b[i] > 'Z' {
		b[i] = 'Q'
	}
	if slices.Equal(b, []byte(link)) {
		panic("nothing is changed")
	}
	return string(b)
}
