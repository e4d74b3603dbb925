//go:build !js

package main_test

import (
	"encoding/base64"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"partialcredit/game/ask"
	"partialcredit/game/book"
	"partialcredit/game/draft"
	"partialcredit/game/sheet"
	answers "partialcredit/game/slip"
	"partialcredit/game/worksheet"
)

// TestReadmePicturesForTheTeacher goes where the README's pictures of the teacher's quarter of an hour are
// taken, with an invented class.
func TestReadmePicturesForTheTeacher(t *testing.T) {
	data, err := os.ReadFile("../../testdata/sheets/tuesday.json")
	if err != nil {
		t.Fatal(err)
	}
	tuesday, err := sheet.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	near, err := sheet.Parse([]byte(strings.Replace(string(data), `"draw": [0.08, 0.28]`, `"draw": [0.1, 0.4]`, 1)))
	if err != nil || near.Fingerprint() == tuesday.Fingerprint() {
		t.Fatalf("no sheet that there is advice on: %v", err)
	}
	class := aClass(t, tuesday)
	l := learner{Page: Open(t, Visit{Screen: Screen{1180, 820, 1, true}})}
	l.Started()
	for _, c := range []struct {
		name           string
		kept, teaching any // on the device
		press          []string
		says           string // in the heading or the text at the end
	}{
		{"writing-tablet", Kept{Version: 2, Exercise: "fm", Page: "draft", Hinted: true},
			map[string]any{"version": 1, "written": []any{draft.New(*near)}, "desk": map[string]any{"tab": 3}},
			nil, "Draw further away"},
		{"handout-tablet", Kept{Version: 2, Exercise: "fm", Page: "write", Hinted: true},
			map[string]any{"version": 1, "written": []any{draft.New(*tuesday)}},
			[]string{"give"}, "holds all of it"},
		{"slip-tablet", worked(tuesday, class[4]), nil, nil, "It holds the name"},
		{"book-tablet", Kept{Version: 2, Exercise: "fm", Page: "book", Hinted: true},
			map[string]any{"version": 1, "handed": []any{tuesday.Fragment()}, "book": bookOf(t, tuesday, class)},
			[]string{"leaf 1"}, "the most marks first"},
	} {
		l.keeps(c.kept, c.teaching)
		for _, id := range c.press {
			l.press(id)
		}
		if c.name == "book-tablet" {
			l.Wait(`document.querySelector('`+widget("csv")+`:not([disabled])')`, limit) // all marks are made
			l.press("sort 1")
		}
		l.Wait(fmt.Sprintf(`document.querySelector("#mirror").textContent.includes(%q)`, c.says), 20*time.Second)
		l.settle()
		l.Screenshot(c.name + ".png")
	}
	paper := worksheet.Print(tuesday, worksheet.Options{Address: "https://example.org/credit/", Names: []string{class[4].Name}})
	l.do("the worksheet", chromedp.Navigate("data:text/html;base64,"+base64.StdEncoding.EncodeToString([]byte(paper))))
	l.SetScreen(Screen{820, 1000, 1, false})
	l.WaitText("body", tuesday.Title, 5*time.Second)
	l.Eval(`document.documentElement.style.overflow = "hidden"`, nil) // no bar to scroll with
	l.Screenshot("worksheet.png")
}

// keeps begins the page anew with what is kept on the device.
func (l *learner) keeps(kept, teaching any) {
	l.t.Helper()
	for key, v := range map[string]any{"progress": kept, "teacher": teaching} {
		data, err := json.Marshal(v)
		if err != nil {
			l.t.Fatal(err)
		}
		if v == nil {
			data = nil
		}
		l.Eval(fmt.Sprintf(`window.addEventListener("pagehide", () => localStorage.setItem("partialcredit.%s", %q), {capture: true})`, key, data), nil)
	}
	l.Reload()
	l.Started()
}

// aClass is what twelve learners hand in, who hear the better the later they stand in the alphabet.
func aClass(t *testing.T, sh *sheet.Sheet) (slips []*answers.Slip) {
	names := []string{"Badger", "Curlew", "Dormouse", "Finch", "Heron", "Lynx", "Marten", "Otter", "Plover", "Robin", "Stoat", "Wren"}
	random := rand.New(rand.NewPCG(5, 12))
	d := sh.Drawing()
	for i, name := range names {
		s := &answers.Slip{Version: answers.Version, Name: name, Sheet: d.Fingerprint, Title: sh.Title, Minute: 29_916_000 + int64(7*i)}
		own := d.For(name)
		hears := 0.45 + 0.5*float64(i*5%12)/11
		for j := range own.Exercises {
			e := &own.Exercises[j]
			w := answers.Work{ID: e.ID, Tries: 1 + random.IntN(3), Seconds: 60 + random.IntN(200), Replays: 4 + random.IntN(20)}
			w.First = answered(e, d.Seed(name, e.ID, 0), hears, random)
			s.Work = append(s.Work, w)
		}
		if err := s.Fits(sh); err != nil {
			t.Fatal(err)
		}
		slips = append(slips, s)
	}
	return slips
}

// answered is an answer of somebody who hears so well, 0 to 1.
func answered(e *sheet.Exercise, seed uint64, hears float64, random *rand.Rand) (a answers.Attempt) {
	for i := range e.Controls {
		c := &e.Controls[i]
		v := c.Get(&e.Target)
		a.Settings = append(a.Settings, max(c.Min, min(c.Max, v+(1-hears)*random.Float64()*(c.Start-v))))
	}
	if e.Kind == sheet.Match {
		return a
	}
	a.Run = &ask.Run{Seed: seed}
	for !a.Run.Done(e) {
		q := a.Run.Question(e, len(a.Run.Answers))
		answer := q.Right
		if random.Float64() > hears {
			answer = (answer + 1) % len(q.Answers)
		}
		a.Run.Answer(e, answer)
	}
	return a
}

// bookOf is the mark book with the slips of a class.
func bookOf(t *testing.T, sh *sheet.Sheet, class []*answers.Slip) *book.Book {
	b := &book.Book{}
	b.Open(sh)
	for _, s := range class {
		for _, r := range b.Add("#"+s.Fragment(), "") {
			if r.Fate != book.Taken {
				t.Fatalf("the slip of %s: %v", s.Name, r.Fate)
			}
		}
	}
	return b
}

// worked is what is kept on the device of a learner who has worked a sheet.
func worked(sh *sheet.Sheet, s *answers.Slip) any {
	log, marks, limits := map[string]answers.Work{}, map[string]any{}, map[string]any{}
	id := func(exercise string) string { return s.Sheet + "\n" + sheet.Learner(s.Name) + "\n" + exercise }
	own := sh.For(s.Name)
	var marker answers.Marker
	for i, w := range s.Work {
		log[id(w.ID)] = w
		o := w.Outcome(&own.Exercises[i], sh.Strictness.Times(), &marker)
		if own.Exercises[i].Kind == sheet.Limit {
			o.Best = 0 // it has none
			limits[id(w.ID)] = []any{map[string]any{"day": 20775, "value": o.Limit, "factor": 1.3, "found": o.Found}}
		}
		marks[id(w.ID)] = map[string]any{"best": o.Best, "last": o.Best, "tries": w.Tries}
	}
	return map[string]any{"version": 2, "hinted": true, "page": "slip", "exercise": id(s.Work[0].ID), "marks": marks, "limits": limits, "log": log,
		"given": []any{map[string]any{"link": sh.Fragment(), "name": s.Name, "used": 1}}}
}
