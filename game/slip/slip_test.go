package slip

import (
	"bytes"
	"compress/flate"
	"encoding/json"
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"partialcredit/game/ask"
	"partialcredit/game/link"
	"partialcredit/game/mark"
	"partialcredit/game/practice"
	"partialcredit/game/sheet"
)

// ofEveryKind is a sheet with one exercise of every kind.
func ofEveryKind(t testing.TB, vary bool) *sheet.Sheet {
	t.Helper()
	s := &sheet.Sheet{Version: sheet.Version, Title: "Every kind", Strictness: sheet.Practised, Vary: vary}
	have := map[sheet.Kind]bool{}
	for _, c := range sheet.Course() {
		for _, e := range c.Exercises {
			if !have[e.Kind] {
				have[e.Kind] = true
				s.Exercises = append(s.Exercises, e)
			}
		}
	}
	s, err := sheet.Parse(s.JSON())
	if err != nil || len(s.Exercises) != 5 {
		t.Fatal(len(s.Exercises), err)
	}
	return s
}

// answered is a slip of somebody who answers with the first answer always, and leaves
// every ruler at its start, a third of the way, or at the target.
func answered(sh *sheet.Sheet, name string, way float64) *Slip {
	s := &Slip{Version: Version, Name: name, Sheet: sh.Fingerprint(), Title: sh.Title, Minute: 29600000}
	drawn := sh.For(name)
	for i := range drawn.Exercises {
		e := &drawn.Exercises[i]
		a := Attempt{}
		switch e.Kind {
		case sheet.Show:
			continue
		case sheet.Match:
			for j := range e.Controls {
				c := &e.Controls[j]
				v := c.Start + way*(c.Get(&e.Target)-c.Start)
				if c.Field().Whole || len(c.Field().Choices) > 0 {
					v = math.Round(v)
				}
				a.Settings = append(a.Settings, v)
			}
		default:
			a.Run = &ask.Run{Seed: 5}
			if sh.Vary {
				a.Run.Seed = sh.Seed(name, e.ID, 0)
			}
			for !a.Run.Done(e) {
				a.Run.Answer(e, 0)
			}
		}
		s.Work = append(s.Work, Work{ID: e.ID, Tries: 1, Seconds: 61, Replays: 7, First: a})
	}
	return s
}

func TestASlipIsReadAgain(t *testing.T) {
	for _, vary := range []bool{false, true} {
		sh := ofEveryKind(t, vary)
		s := answered(sh, "Wren Ü 2", 0.3)
		want, _ := json.Marshal(s)
		for _, text := range []string{s.Fragment(), "#" + s.Fragment(), "https://example.org/a/?b#" + s.Fragment(), " " + s.Fragment()[:40] + "\r\n" + s.Fragment()[40:] + "\n"} {
			back, err := Read(text)
			if err != nil {
				t.Fatal(err)
			}
			if got, _ := json.Marshal(back); !bytes.Equal(got, want) {
				t.Errorf("read:\n%s\nwritten:\n%s", got, want)
			}
			if err := back.Fits(sh); err != nil {
				t.Error(err)
			}
		}
	}
}

// The marks of a slip are those of the room that marks, and of the runs, whatever else
// the slip says.
func TestMarksAreMadeAnew(t *testing.T) {
	for _, vary := range []bool{false, true} {
		sh := ofEveryKind(t, vary)
		var m Marker
		for _, name := range []string{"wren", "robin"} {
			s := answered(sh, name, 0.6)
			if err := s.Fits(sh); err != nil {
				t.Fatal(err)
			}
			drawn := sh.For(name)
			for i := range s.Work {
				w := &s.Work[i]
				e := Exercise(drawn, w.ID)
				o := w.Outcome(e, drawn.Strictness.Times(), &m)
				switch e.Kind {
				case sheet.Match:
					want := mark.Prepare(e.Target).Mark(w.First.Sound(e), drawn.Strictness.Times()).Marks // how the app marks
					if o.First != want || o.Best != want {
						t.Errorf("%s: %+v, want %v marks", w.ID, o, want)
					}
					w.First.Uncovered = true
					if o := w.Outcome(e, drawn.Strictness.Times(), &m); o.First != math.Min(want, UncoveredCap) {
						t.Errorf("%s uncovered: %v", w.ID, o.First)
					}
				case sheet.Limit:
					stairs := w.First.Run.Staircase(e)
					value, _, found := stairs.Threshold()
					if o.Limit != value || o.Found != found || !math.IsNaN(o.Best) {
						t.Errorf("%s: %+v, want %v", w.ID, o, value)
					}
				default:
					if want := w.First.Run.Marks(e); o.First != want || o.Table == nil {
						t.Errorf("%s: %+v, want %v", w.ID, o, want)
					}
				}
			}
		}
	}
}

// The best is the better one, whatever the slip calls so; and both are in the table.
func TestTheBestIsTheBetterOne(t *testing.T) {
	sh := ofEveryKind(t, false)
	good, bad := answered(sh, "wren", 1), answered(sh, "wren", 0)
	var m Marker
	for i := range good.Work {
		e := Exercise(sh, good.Work[i].ID)
		if e.Kind == sheet.Limit {
			continue
		}
		for _, w := range []Work{{First: good.Work[i].First, Best: &bad.Work[i].First}, {First: bad.Work[i].First, Best: &good.Work[i].First}} {
			o := w.Outcome(e, 1, &m)
			want := good.Work[i].Outcome(e, 1, &m)
			if o.Best != want.Best {
				t.Errorf("%s: best %v, want %v", e.ID, o.Best, want.Best)
			}
			if o.Table != nil && total(o.Table) != 2*total(want.Table) {
				t.Errorf("%s: %d answers", e.ID, total(o.Table))
			}
		}
	}
}

// On a sheet that varies, the seed of a run is drawn and not believed; another name has
// other targets.
func TestASlipCannotChooseItsQuestions(t *testing.T) {
	sh := ofEveryKind(t, true)
	s := answered(sh, "wren", 1)
	for i := range s.Work {
		if r := s.Work[i].First.Run; r != nil {
			r.Seed = 0
		}
	}
	if err := s.Fits(sh); err != nil {
		t.Fatal(err)
	}
	var m Marker
	honest, runs := answered(sh, "wren", 1), 0
	for i := range s.Work {
		e := Exercise(sh.For("wren"), s.Work[i].ID)
		got, want := s.Work[i].Outcome(e, 1, &m), honest.Work[i].Outcome(e, 1, &m)
		if e.Kind == sheet.Limit {
			got.First, got.Best, want.First, want.Best = got.Limit, 0, want.Limit, 0
		}
		if got.First != want.First || got.Best != want.Best {
			t.Errorf("%s: %+v, want %+v", e.ID, got, want)
		}
		if s.Work[i].First.Run != nil {
			if runs++; s.Work[i].First.Run.Seed != sh.Seed("wren", e.ID, 0) {
				t.Errorf("%s: a seed of its own", e.ID)
			}
			continue
		}
		other := Exercise(sh.For("robin"), e.ID)
		if o := s.Work[i].Outcome(other, 1, &m); other.Target == e.Target || o.First == 100 {
			t.Errorf("%s: wren's answer gives robin %v marks", e.ID, o.First)
		}
	}
	if runs != 3 {
		t.Errorf("%d runs", runs)
	}
}

// Forged and damaged slips are refused, each with its sentence.
func TestSlipsThatAreRefused(t *testing.T) {
	sh := ofEveryKind(t, false)
	whole := answered(sh, "wren", 1)
	match, name := -1, -1
	for i, w := range whole.Work {
		switch Exercise(sh, w.ID).Kind {
		case sheet.Match:
			match = i
		case sheet.Name:
			name = i
		}
	}
	show := ""
	for _, e := range sh.Exercises {
		if e.Kind == sheet.Show {
			show = e.ID
		}
	}
	for _, c := range []struct {
		name   string
		forge  func(s *Slip)
		reads  bool // it is a slip, but does not fit
		saying string
	}{
		{"no name", func(s *Slip) { s.Name = " \t" }, false, "no name"},
		{"a long name", func(s *Slip) { s.Name = strings.Repeat("ü", MostName+1) }, false, "damaged"},
		{"an old version", func(s *Slip) { s.Version = 0 }, false, "damaged"},
		{"a newer version", func(s *Slip) { s.Version = 2 }, false, "newer version"},
		{"no sheet", func(s *Slip) { s.Sheet = "" }, false, "damaged"},
		{"before its time", func(s *Slip) { s.Minute = -1 }, false, "damaged"},
		{"long after its time", func(s *Slip) { s.Minute = 1 << 40 }, false, "damaged"},
		{"no tries", func(s *Slip) { s.Work[0].Tries = 0 }, false, "damaged"},
		{"many tries", func(s *Slip) { s.Work[0].Tries = 1 << 30 }, false, "damaged"},
		{"negative seconds", func(s *Slip) { s.Work[0].Seconds = -5 }, false, "damaged"},
		{"a year", func(s *Slip) { s.Work[0].Seconds = 365 * 24 * 3600 }, false, "damaged"},
		{"negative replays", func(s *Slip) { s.Work[0].Replays = -5 }, false, "damaged"},
		{"a try before the first", func(s *Slip) { s.Work[0].First.Try = -1 }, false, "damaged"},
		{"twice the same", func(s *Slip) { s.Work = append(s.Work, s.Work[0]) }, false, "damaged"},
		{"endless answers", func(s *Slip) { s.Work[name].First.Run.Answers = make([]int, 501) }, false, "damaged"},
		{"five settings", func(s *Slip) { s.Work[match].First.Settings = make([]float64, 5) }, false, "damaged"},
		{"another sheet", func(s *Slip) { s.Sheet = "AAAAAAAAAAA" }, true, "of wren belongs to another sheet"},
		{"another exercise", func(s *Slip) { s.Work[0].ID = "nothing" }, true, "damaged"},
		{"a demonstration", func(s *Slip) { s.Work[0].ID = show }, true, "damaged"},
		{"out of range", func(s *Slip) { s.Work[match].First.Settings[0] = 1e6 }, true, "damaged"},
		{"no settings", func(s *Slip) { s.Work[match].First.Settings = nil }, true, "damaged"},
		{"no answers", func(s *Slip) { s.Work[name].First.Run = nil }, true, "damaged"},
		{"a run that goes on", func(s *Slip) { r := s.Work[name].First.Run; r.Answers = r.Answers[1:] }, true, "damaged"},
		{"too many answers", func(s *Slip) { r := s.Work[name].First.Run; r.Answers = append(r.Answers, 0) }, true, "damaged"},
		{"an answer that is none", func(s *Slip) { s.Work[name].First.Run.Answers[3] = 6 }, true, "damaged"},
		{"a run in a match", func(s *Slip) { s.Work[match].First.Run = &ask.Run{} }, true, "damaged"},
		{"the best is none", func(s *Slip) { s.Work[match].Best = &Attempt{} }, true, "damaged"},
	} {
		s := answered(sh, "wren", 1)
		c.forge(s)
		back, err := Read(s.Fragment())
		if (err == nil) != c.reads {
			t.Errorf("%s: read: %v", c.name, err)
			continue
		}
		if c.reads {
			err = back.Fits(sh)
		}
		if err == nil || !strings.Contains(err.Error(), c.saying) || !strings.HasSuffix(err.Error(), ".") {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestTextsThatAreNoSlips(t *testing.T) {
	whole := answered(ofEveryKind(t, false), "wren", 1).Fragment()
	for text, want := range map[string]error{
		"": ErrNoSlip, "hello": ErrNoSlip, "#top": ErrNoSlip, "slip": ErrNoSlip,
		ofEveryKind(t, false).Fragment(): ErrNoSlip,
		whole[:len(whole)/2]:             ErrDamaged, changed(whole, 60): ErrDamaged, changed(whole, len(whole)-9): ErrDamaged, "slip=1.": ErrDamaged, "slip=": ErrDamaged,
		strings.Replace(whole, "slip=1.", "slip=2.", 1):        ErrNewer,
		link.Pack(link.Slip, []byte("{")):                      ErrDamaged,
		link.Pack(link.Slip, []byte("[]")):                     ErrDamaged,
		link.Pack(link.Slip, bytes.Repeat([]byte(" "), 1<<20)): ErrDamaged, // a bomb
		strings.Repeat("#slip=1.", 1<<16):                      ErrDamaged,
	} {
		if _, err := Read(text); !errors.Is(err, want) {
			t.Errorf("%.40q: %v, want %v", text, err, want)
		}
	}
}

// A slip is deflated (RFC 1951) JSON: another reader than ours finds the answers in it.
func TestASlipIsDeflatedJSON(t *testing.T) {
	s := answered(ofEveryKind(t, false), "wren", 0)
	_, data, err := link.Unpack(s.Fragment())
	if err != nil {
		t.Fatal(err)
	}
	var any map[string]any
	if err := json.Unmarshal(data, &any); err != nil || any["name"] != "wren" {
		t.Errorf("%v: %v", any, err)
	}
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestCompression)
	w.Write(data)
	w.Close()
	if back, err := io.ReadAll(flate.NewReader(&packed)); err != nil || !bytes.Equal(back, data) {
		t.Error(err)
	}
	t.Logf("%d bytes in %d characters", len(data), len(s.Fragment()))
}

// The slips of testdata/links were handed out: they are read for ever.
func TestOldSlipsAreRead(t *testing.T) {
	data, err := os.ReadFile("../../testdata/links/slips.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); line == "" || line[0] == '#' {
			continue
		}
		fields := strings.Fields(line)
		s, err := Read(fields[1])
		if err != nil || s.Name != fields[0] || len(s.Work) == 0 {
			t.Errorf("%s: %v", fields[0], err)
		}
		n++
	}
	if n == 0 {
		t.Error("no slips")
	}
}

// FuzzRead reads any text, and any JSON packed as a slip: what is read fits a sheet or is
// refused with a sentence, and is marked within 0 to 100.
func FuzzRead(f *testing.F) {
	sheets := []*sheet.Sheet{ofEveryKind(f, false), ofEveryKind(f, true)}
	for _, sh := range sheets {
		s := answered(sh, "wren", 0.4)
		best := s.Work[1].First
		s.Work[1].Best = &best
		data, _ := json.Marshal(s)
		f.Add(string(data))
		f.Add(s.Fragment())
		f.Add("#" + s.Fragment()[:90])
	}
	f.Add("slip=2.AAAA")
	f.Add(`{"version":1,"name":"a","sheet":"x","work":[{"id":"a","tries":1,"first":{"run":{"seed":1,"answers":[9]}}}]}`)
	var m Marker
	f.Fuzz(func(t *testing.T, text string) {
		for _, text := range []string{text, link.Pack(link.Slip, []byte(text))} {
			s, err := Read(text)
			if err != nil {
				if !strings.HasSuffix(err.Error(), ".") {
					t.Errorf("%q is no sentence", err)
				}
				continue
			}
			again, err := Read(s.Fragment())
			if err != nil || again.Name != s.Name || len(again.Work) != len(s.Work) {
				t.Errorf("written and read again: %v", err)
			}
			for _, sh := range sheets {
				s.Sheet = sh.Fingerprint()
				if s.Fits(sh) != nil {
					continue
				}
				drawn := sh.For(s.Name)
				for i := range s.Work {
					e := Exercise(drawn, s.Work[i].ID)
					o := s.Work[i].Outcome(e, drawn.Strictness.Times(), &m)
					if e.Kind != sheet.Limit && !(o.First >= 0 && o.Best >= o.First && o.Best <= 100) {
						t.Errorf("%s: %+v", e.ID, o)
					}
				}
			}
		}
	})
}

func total(c *practice.Confusion) int {
	_, all := c.Right()
	return all
}

// changed has another character in one place.
func changed(s string, i int) string {
	c := "A"
	if s[i] == 'A' {
		c = "B"
	}
	return s[:i] + c + s[i+1:]
}
