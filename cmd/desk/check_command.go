package main

import (
	"encoding/json"
	"fmt"
	"io"
	"runtime"
	"sync"

	"partialcredit/game/advice"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

var checkCommand = command{
	name:    "check",
	summary: "check sheets: their format, and how they will be to work",
	words:   "SHEET...",
	help: `
SHEET is a file with a sheet (JSON), a link that holds one (…#sheet=…), or - for
what is piped in. What is not as the format has it is named. Of every exercise the
sounds are rendered and marked with the strictness of the sheet, to find out

  unheard     a control that cannot be heard in this sound
  another     another setting that earns nearly full marks, and which
  met         a target that is met at the start, or a drawn one that is
  rises       a range in which marks rise on the way away from the target
  alike       answers, or sounds said to differ, that cannot be told apart
  told        sounds said to be the same that are not
  threshold   a limit that begins or ends where it should not
  low, high   what small loudspeakers or the ear will not give
  loud        what comes out softer, for the limit of the output
  silent      what is not heard at all
  difficulty  how hard it will be, in just-noticeable steps

A mistake is an exercise that cannot be worked as it stands; a warning is probably
not what you meant; a note is good to know. It takes some seconds an exercise.

Exit status: 0 where there are notes only; 1 where a sheet cannot be read or used, or
has a mistake or a warning (with -lenient: or a mistake); 2 for a command line
that cannot be understood.`,
	examples: []example{
		{"desk check tuesday.json", "all advice on a sheet"},
		{"desk check -quiet sheets/*.json", "mistakes and warnings only, of many"},
		{"desk check -json - <tuesday.json >advice.json", "for another program"},
		{"desk check -format tuesday.json", "only whether it can be read, at once"},
	},
	run: runCheck,
}

// checked is what is said of one sheet.
type checked struct {
	Sheet     string            `json:"sheet"`
	Title     string            `json:"title,omitempty"`
	Error     string            `json:"error,omitempty"`
	Exercises []checkedExercise `json:"exercises,omitempty"`
}

type checkedExercise struct {
	ID     string        `json:"id"`
	Kind   sheet.Kind    `json:"kind"`
	Title  string        `json:"title"`
	Advice []checkedWord `json:"advice"`
}

type checkedWord struct {
	Weight   advice.Weight `json:"weight"`
	Rule     advice.Rule   `json:"rule"`
	Control  string        `json:"control,omitempty"`  // its label
	Settings []float64     `json:"settings,omitempty"` // of the controls, in their order
	Text     string        `json:"text"`
}

func runCheck(d *desk, args []string) error {
	flags := newFlags("check")
	asJSON := flags.Bool("json", false, "write JSON")
	quiet := flags.Bool("quiet", false, "leave out the notes")
	lenient := flags.Bool("lenient", false, "exit with 0 in spite of warnings")
	format := flags.Bool("format", false, "check the format only")
	names, err := parseWords(flags, args)
	if err != nil {
		return err
	}
	if len(names) == 0 {
		return misuse("name the sheets to check, for example: desk check sheet.json")
	}
	all := make([]checked, len(names))
	counts := map[advice.Weight]int{}
	bad := 0
	for i, name := range names {
		all[i].Sheet = name
		s, err := d.readSheet(name)
		if err != nil {
			all[i].Error = err.Error()
			bad++
			continue
		}
		all[i].Title = s.Title
		advise := advise
		if *format {
			advise = func(*desk, *sheet.Sheet, string) [][]advice.Advice { return make([][]advice.Advice, len(s.Exercises)) }
		}
		for j, found := range advise(d, s, "Checking "+called(name)) {
			e := &s.Exercises[j]
			one := checkedExercise{ID: e.ID, Kind: e.Kind, Title: e.Title, Advice: []checkedWord{}}
			for _, a := range found {
				counts[a.Weight]++
				if *quiet && a.Weight == advice.Note {
					continue
				}
				word := checkedWord{Weight: a.Weight, Rule: a.Rule, Settings: a.Settings, Text: a.Say(words.English)}
				if a.Control >= 0 {
					word.Control = e.Controls[a.Control].Label
				}
				one.Advice = append(one.Advice, word)
			}
			all[i].Exercises = append(all[i].Exercises, one)
		}
	}
	write := func(w io.Writer) error { return writeChecked(w, all) }
	if *asJSON {
		write = func(w io.Writer) error {
			e := json.NewEncoder(w)
			e.SetEscapeHTML(false)
			e.SetIndent("", "  ")
			return e.Encode(all)
		}
	}
	if err := buffered(d.out, write); err != nil {
		return err
	}
	if mistakes, warnings := counts[advice.Mistake], counts[advice.Warning]; bad+mistakes > 0 || warnings > 0 && !*lenient {
		return fmt.Errorf("not all is well: sheets that cannot be used: %d, mistakes: %d, warnings: %d", bad, mistakes, warnings)
	}
	return nil
}

func writeChecked(w io.Writer, all []checked) error {
	for i, s := range all {
		if i > 0 {
			fmt.Fprintln(w)
		}
		if s.Error != "" {
			fmt.Fprintf(w, "%s\n  cannot be used: %s\n", called(s.Sheet), s.Error)
			continue
		}
		fmt.Fprintf(w, "%s: %s\n", called(s.Sheet), s.Title)
		for j, e := range s.Exercises {
			fmt.Fprintf(w, "  %d. %s (%s): %s\n", j+1, e.ID, e.Kind, e.Title)
			for _, a := range e.Advice {
				fmt.Fprintf(w, "     %-8s %-10s %s\n", a.Weight, a.Rule, a.Text)
			}
		}
	}
	return nil
}

// advise works out the advice on all exercises of a sheet, as many at once as there
// are processors.
func advise(d *desk, s *sheet.Sheet, what string) [][]advice.Advice {
	found := make([][]advice.Advice, len(s.Exercises))
	p := d.progress(what, len(found))
	defer p.end()
	next, done := make(chan int), make(chan struct{})
	var workers sync.WaitGroup
	for range runtime.NumCPU() {
		workers.Go(func() {
			for i := range next {
				found[i] = advice.Advise(s, i)
				done <- struct{}{}
			}
		})
	}
	go func() {
		for i := range found {
			next <- i
		}
		close(next)
		workers.Wait()
		close(done)
	}()
	n := 0
	p.at(n)
	for range done {
		n++
		p.at(n)
	}
	return found
}
