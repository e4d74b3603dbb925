package measure

import (
	"fmt"
	"io"
	"math"
	"strings"

	"partialcredit/synth"
)

// A Report is everything measured in one run.
type Report struct {
	machine  Machine
	scope    scope
	steady   []comparison
	modulate []row
	pace     pace
}

// Run measures. root is the folder of the sources; quickly takes a part that is enough for a test.
func Run(root string, quickly bool) (*Report, error) {
	c := whole
	if quickly {
		c = quick
	}
	p, err := openPage()
	if err != nil {
		return nil, err
	}
	defer p.stop()
	r := &Report{machine: ThisMachine(p.version), scope: c}
	if r.pace, err = p.measurePace(root, c.seconds); err != nil {
		return nil, err
	}
	r.steady = compareAll(c)
	r.modulate = modulated(c)
	return r, p.addOwn(r.steady)
}

// A worst is the worst quality of some measurements, of us and of our rivals.
type worst struct {
	ours, blep, naive, browser Quality
	browserHas                 bool
	count                      int
}

// worstOf takes the worst of the steady waveforms that fit.
func (r *Report) worstOf(fits func(comparison) bool) worst {
	w := worst{ours: perfect, blep: perfect, naive: perfect, browser: perfect}
	for _, c := range r.steady {
		if !fits(c) {
			continue
		}
		w.count++
		w.ours, w.blep, w.naive = w.ours.worse(c.ours), w.blep.worse(c.blep), w.naive.worse(c.naive)
		if c.browserHas {
			w.browser, w.browserHas = w.browser.worse(c.browser), true
		}
	}
	return w
}

const head = "| %s | ours: aliases | partials | polynomial BLEP: aliases | partials | naive: aliases | partials | browser: aliases | partials |\n" +
	"| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n"

func (w worst) write(out io.Writer, name string) {
	fmt.Fprintf(out, "| %s |", name)
	for _, q := range []Quality{w.ours, w.blep, w.naive} {
		fmt.Fprintf(out, " %s | %s |", decibels(q.Alias), partial(q.Partial))
	}
	if w.browserHas {
		fmt.Fprintf(out, " %s | %s |\n", decibels(w.browser.Alias), partial(w.browser.Partial))
	} else {
		fmt.Fprint(out, " – | – |\n")
	}
}

// decibels writes with a true minus sign; what single precision cannot hold is not told apart.
func decibels(x float64) string {
	return strings.Replace(fmt.Sprintf("%.1f", math.Max(x, -300)), "-", "−", 1)
}

// partial says of one that has all but gone that it is missing.
func partial(x float64) string {
	switch {
	case x < 0.1:
		return fmt.Sprintf("%.4f", x)
	case x > 40:
		return "missing"
	}
	return fmt.Sprintf("%.2f", x)
}

// Write prints the report as Markdown. command is what was called.
func (r *Report) Write(out io.Writer, command string) {
	fmt.Fprintf(out, "# The sound, measured\n\nMade by `%s` on %s.\n\n", command, r.machine)
	fmt.Fprintf(out, "Pitches from %.4g to %.4g Hz in half octaves, at %s. Tones are coherent with the transform and\n"+
		"take no window; the voice is rendered as the app renders it, in single precision. Aliases: energy of\n"+
		"all that should not be there below 20 kHz, in dB against the signal; partials: greatest error below 18\n"+
		"kHz in dB against the closed forms of package `synth/exact`, of partials less than 80 dB under the\n"+
		"strongest (of the browser: with the fundamental at its right level, as its waveforms have their own).\n"+
		"Each figure is the worst of all pitches and rates. Naive: the waveform sampled as it is, whose partials\n"+
		"are exact and buried in aliases. A sine by itself has nothing to alias: there the figures are those of\n"+
		"single and double precision. Where a sound has nothing below 20 kHz, aliases are set against a sine at\n"+
		"full level.\n\n",
		r.scope.pitches[0], r.scope.pitches[len(r.scope.pitches)-1], hertz(r.scope.rates))
	r.writeShapes(out)
	r.writeSync(out)
	r.writePitches(out)
	r.writeModulated(out)
	r.writePace(out)
}

func hertz(rates []float64) string {
	var s []string
	for _, x := range rates {
		s = append(s, fmt.Sprintf("%v Hz", x))
	}
	return strings.Join(s, " and ")
}

func (r *Report) writeShapes(out io.Writer) {
	fmt.Fprintf(out, "## Shapes\n\n"+head, "shape")
	for _, s := range shapes {
		r.worstOf(func(c comparison) bool { return c.wave == s }).write(out, s.String())
	}
	fmt.Fprintln(out)
}

func (r *Report) writeSync(out io.Writer) {
	fmt.Fprintf(out, "## Hard sync\n\nThe browser's nodes have none. Worst of all shapes:\n\n"+head, "ratio")
	for _, ratio := range r.scope.ratios {
		r.worstOf(func(c comparison) bool { return c.wave.ratio == ratio }).write(out, fmt.Sprint(ratio))
	}
	fmt.Fprint(out, "\nOurs, aliases by shape and ratio; – where the pulse never falls:\n\n| shape |")
	for _, ratio := range r.scope.ratios {
		fmt.Fprintf(out, " %v |", ratio)
	}
	fmt.Fprintf(out, "\n| --- |%s\n", strings.Repeat(" --- |", len(r.scope.ratios)))
	for _, s := range shapes {
		fmt.Fprintf(out, "| %v |", s)
		for _, s.ratio = range r.scope.ratios {
			if w := r.worstOf(func(c comparison) bool { return c.wave == s }); w.count > 0 {
				fmt.Fprintf(out, " %s |", decibels(w.ours.Alias))
			} else {
				fmt.Fprint(out, " – |")
			}
		}
		fmt.Fprintln(out)
	}
	fmt.Fprintln(out)
}

func (r *Report) writePitches(out io.Writer) {
	fmt.Fprintf(out, "## A sawtooth by pitch\n\n"+head, "pitch, rate")
	saw := wave{shape: synth.Sawtooth}
	for _, c := range r.steady {
		if c.wave == saw {
			same := func(d comparison) bool { return d.wave == saw && d.tone == c.tone }
			r.worstOf(same).write(out, fmt.Sprintf("%.1f Hz, %v Hz", c.tone.hz(), c.tone.rate))
		}
	}
	fmt.Fprintln(out)
}

func (r *Report) writeModulated(out io.Writer) {
	var at []string
	for _, hz := range r.scope.few {
		at = append(at, fmt.Sprint(hz))
	}
	fmt.Fprintf(out, "## Modulation\n\n"+
		"Energy of the difference from the exact lines below 20 kHz, in dB against them; carriers at %s Hz,\n"+
		"pulses with a duty of %v. The browser's nodes have no exact counterpart. Limits:\n\n"+
		"- ring, am: ratios 0.25, 1.37 and 8. Operands are whole up to 20 kHz and have nothing from the sample\n"+
		"  rate less 20 kHz on, which is part of what these sounds are; the exact sum is over such operands.\n"+
		"- fm: ratios 0.25, 1, 2.5 and 8, index 0.5, 2, 5 and 10, at 48 kHz with carrier + (index + 9)·modulator\n"+
		"  below 172 kHz for a sine, with carrier + index·modulator below 38 kHz and the modulator below 3.6 kHz\n"+
		"  for a sawtooth; in proportion at 44.1 kHz.\n"+
		"- pulse width: deviations of 0.1, 0.25 and 0.45. Controls move in straight lines of 16 samples; where that\n"+
		"  cuts the corners of a triangle, it and no alias is the error.\n\n"+
		"| modulation | ours | polynomial BLEP | naive | cases |\n| --- | --- | --- | --- | --- |\n", strings.Join(at, ", "), duty)
	for _, m := range r.modulate {
		fmt.Fprintf(out, "| %s | %s | %s | %s | %d |\n", m.kind, decibels(m.ours), decibels(m.blep), decibels(m.naive), m.cases)
	}
	fmt.Fprintln(out)
}

func (r *Report) writePace(out io.Writer) {
	fmt.Fprint(out, "## Speed\n\nTimes real time at 48 kHz, one thread, the best of forty turns; LFO, envelope and both levels move. The\n"+
		"browser's own nodes, in an OfflineAudioContext, have none of that.\n\n"+
		"| voice | native | WebAssembly in the browser |\n| --- | --- | --- |\n")
	for i, v := range r.pace.native {
		fmt.Fprintf(out, "| %s | %.0f | %.0f |\n", v.Name, v.Times, r.pace.wasm[i].Times)
	}
	fmt.Fprintf(out, "| two of the browser's own sawtooth nodes | – | %.0f |\n", r.pace.nodes)
}
