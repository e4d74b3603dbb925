package credit

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"partialcredit/game/mark"
	"partialcredit/synth"
)

// Write writes the table as Markdown: what made it and where, a summary, and
// everything measured.
func (t *Table) Write(w io.Writer, command string, where fmt.Stringer) {
	fmt.Fprintf(w, "# The marks, measured\n\nMade by `%s` on %s.\n\n", command, where)
	t.writeSummary(w)
	t.writeSweeps(w)
	t.writeReasons(w)
	t.writePairs(w)
	t.writeWorst(w)
	writeSteps(w)
}

func (t *Table) writeSummary(w io.Writer) {
	s := t.Summary()
	fmt.Fprintf(w, "## Summary\n\n%d targets of %d techniques (seed %d), %d sweeps of one control in one direction.\n\n",
		s.Targets, len(Techniques), t.Seed, s.Sweeps)
	row := func(what, wanted, got string) { fmt.Fprintf(w, "| %s | %s | %s |\n", what, wanted, got) }
	row("what", "wanted", "measured")
	row("---", "---", "---")
	row("sweeps without a rise above 2 marks, or a return above 40 after 30", "97 %", percent(s.Steady, s.Sweeps))
	row("of those of 16 steps and more, steady and below 30", "", percent(s.Gone, s.Long))
	row("least marks at one step", number("%.0f", atOne), fmt.Sprintf("%.1f", s.AtOne))
	row("steps at which half the marks are gone, by control, medians", "5 to 10", fmt.Sprintf("%.1f to %.1f", s.HalfLow, s.HalfHigh))
	row("least marks of settings that sound alike", "98", fmt.Sprintf("%.1f", s.Alike))
	row("confused shapes and techniques, mean", "under 30", fmt.Sprintf("%.1f", s.Confused))
	row("random settings of the exercise's controls, mean", "under 30", fmt.Sprintf("%.1f", s.Guesses))
	row("first reason names the control's effect and its direction", "95 %", percent(s.Reasons.Right, s.Reasons.Cases))
	row("a reason says the opposite", "0 %", percent(s.Reasons.Contradicting, s.Reasons.Cases))
	if t.Tries > 0 {
		row("most different setting with more than 90 marks", fmt.Sprintf("under %.1f dB", plainly), fmt.Sprintf("%.1f dB", s.Ear))
	}
}

func (t *Table) writeSweeps(w io.Writer) {
	fmt.Fprintf(w, "\n## Marks by error\n\nMedians over the sweeps of a control, at errors in just-noticeable steps. Half: the error at which half the marks are gone, least, median and greatest. Ear: the rms difference of the excitation at one step, in dB (1 dB is the working unit of what is just heard); it does not hear rates. Sounds: the steps that the sounds alone would say at 8.\n\n")
	fmt.Fprint(w, "| technique | control | sweeps | steady |")
	for _, e := range Errors {
		fmt.Fprintf(w, " %g |", e)
	}
	fmt.Fprintf(w, " half | ear | sounds |\n|%s\n", strings.Repeat(" --- |", 4+len(Errors)+3))
	names, of := t.rows()
	for _, name := range names {
		courses := of[name]
		steady := 0
		for _, c := range courses {
			if ok, _ := c.Falls(); ok {
				steady++
			}
		}
		fmt.Fprintf(w, "| %s | %s | %d | %d |", name[0], name[1], len(courses), steady)
		at := func(i int, of func(*Course) float64) float64 {
			var v []float64
			for _, c := range courses {
				if len(c.Results) > i {
					v = append(v, of(c))
				}
			}
			return median(v)
		}
		for i := range Errors {
			fmt.Fprintf(w, " %s |", number("%.0f", at(i, func(c *Course) float64 { return c.Results[i].Marks })))
		}
		half := "–"
		if h := halves(courses); len(h) > 0 {
			half = fmt.Sprintf("%s, %s, %s", number("%.1f", slices.Min(h)), number("%.1f", median(h)), number("%.1f", slices.Max(h)))
		}
		one, eight := index(1), index(8)
		fmt.Fprintf(w, " %s | %s | %s |\n", half,
			number("%.1f", at(one, func(c *Course) float64 { return c.Ear[one] })),
			number("%.1f", at(eight, func(c *Course) float64 { return c.Results[eight].Heard })))
	}
	t.list(w, "Sweeps that rise or return", func(c *Course) bool {
		steady, _ := c.Falls()
		return !steady
	})
	t.list(w, fmt.Sprintf("Sweeps with less than %.0f marks at one step", atOne), func(c *Course) bool {
		return c.Results[index(1)].Marks < atOne
	})
}

// atOne are the marks wanted at one step.
const atOne = 95.0

// list writes the marks of the sweeps that are such, one a line.
func (t *Table) list(w io.Writer, title string, such func(*Course) bool) {
	fmt.Fprintf(w, "\n%s:\n\n", title)
	none := true
	for _, c := range t.Courses {
		if !such(c) {
			continue
		}
		none = false
		var marks []string
		for _, r := range c.Results {
			marks = append(marks, fmt.Sprintf("%.0f", r.Marks))
		}
		f, _ := synth.FieldByName(c.Field)
		fmt.Fprintf(w, "- %s, %s from %s to %s: %s\n", c.Technique, c.Field, f.Format(f.Get(&c.Target)), f.Format(c.Values[len(c.Values)-1]), strings.Join(marks, " "))
	}
	if none {
		fmt.Fprintln(w, "- none")
	}
}

func (t *Table) writeReasons(w io.Writer) {
	fmt.Fprintf(w, "\n## Reasons\n\nOf all settings with less than %.0f marks, and of the other choices: the first reason names the control's effect and its direction; any says the opposite; any speaks of what the control cannot have caused.\n\n| technique | control | cases | right | opposite | stray |\n| --- | --- | --- | --- | --- | --- |\n", spoken)
	for _, c := range append(t.Reasons, total(t.Reasons)) {
		share := func(n int) string { return fmt.Sprintf("%.1f %%", 100*float64(n)/float64(max(1, c.Cases))) }
		name, field := c.Technique, c.Field
		if name == "" {
			name, field = "all", "all"
		}
		fmt.Fprintf(w, "| %s | %s | %d | %s | %s | %s |\n", name, field, c.Cases, share(c.Right), share(c.Contradicting), share(c.Stray))
	}
}

func (t *Table) writePairs(w io.Writer) {
	for _, list := range []struct {
		title string
		pairs []Compared
	}{{"Settings that sound alike", t.Alike}, {"Confused shapes and techniques", t.Confused}} {
		fmt.Fprintf(w, "\n## %s\n\nMarks at notes %v.\n\n| what | for | marks |\n| --- | --- | --- |\n", list.title, notes)
		for i := 0; i < len(list.pairs); i += len(notes) {
			var marks []string
			for _, p := range list.pairs[i : i+len(notes)] {
				marks = append(marks, fmt.Sprintf("%.0f", p.Marks))
			}
			p := list.pairs[i]
			fmt.Fprintf(w, "| %s | `%s` | %s |\n", p.Name, p.B, strings.Join(marks, ", "))
		}
	}
}

func (t *Table) writeWorst(w io.Writer) {
	if t.Tries == 0 {
		return
	}
	fmt.Fprintf(w, "\n## Counterexamples\n\nThe most different setting with more than %.0f marks that %d steps of a search found, for every fourth target.\n\n| technique | rms difference of excitation | marks | target | yours |\n| --- | --- | --- | --- | --- |\n", flattered, t.Tries)
	for _, c := range t.Worst {
		if c.Ear == 0 {
			continue // nothing but the target itself earned so much
		}
		from, to := differences(c.Target, c.Yours)
		fmt.Fprintf(w, "| %s | %.1f dB | %.0f | %s | %s |\n", c.Technique, c.Ear, c.Marks, from, to)
	}
}

// differences lists the fields in which two sounds differ.
func differences(a, b synth.Sound) (from, to string) {
	var x, y []string
	for _, f := range synth.Fields() {
		if v, u := f.Get(&a), f.Get(&b); v != u {
			x = append(x, f.Name+" "+f.Format(v))
			y = append(y, f.Format(u))
		}
	}
	return strings.Join(x, ", "), strings.Join(y, ", ")
}

func writeSteps(w io.Writer) {
	fmt.Fprintf(w, "\n## Step sizes\n\n| field | one step | source |\n| --- | --- | --- |\n")
	for _, s := range mark.StepSizes {
		fmt.Fprintf(w, "| `%s` | %s | %s |\n", s.Field, s.Size, s.Source)
	}
}

func percent(n, of int) string {
	if of == 0 {
		return "–"
	}
	return fmt.Sprintf("%.1f %% (%d of %d)", 100*float64(n)/float64(of), n, of)
}

// number formats a value, a dash where there is none.
func number(format string, v float64) string {
	switch {
	case math.IsNaN(v):
		return "–"
	case math.IsInf(v, 1):
		return "∞"
	}
	return fmt.Sprintf(format, v)
}
