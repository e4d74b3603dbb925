package game

import (
	"fmt"
	"math"
	"strings"

	"partialcredit/game/ui"
)

const (
	takeHelp  = "One note of an instrument, held for a second or two: match it on the bench, or hand it in as the answer to an exercise. It stays on this device and is gone when you leave this page."
	takeAsk   = "Do not record people without asking them. Nothing sounds from here while it records."
	takeKept  = "The marks of a recording stand on no slip, and the recording stays on this device: show your teacher this page."
	takeOwn   = "These marks are kept nowhere, and the recording is gone when you leave."
	takeOther = "The marks count in your progress. The recording stays on this device and is gone when you leave."
)

// layTake lays out the page for a recording: how to come by one, or the note in it.
func (g *Game) layTake(p *paper) {
	if g.taking.take != nil {
		g.layFrame(p, g.foundFrame())
		return
	}
	d := &g.taking.device
	title := g.t("Recording")
	text := g.t(takeHelp)
	if g.taking.answers {
		title = g.t("Answer with a recording")
	}
	area := g.head(p, p.plain(), title, text)
	area.W = min(area.W, 50*p.body)
	said, ink := g.t(takeAsk), Black
	buttons := []ui.Widget{g.takeBack(), {ID: "open take", Label: g.t("Open a WAV file"), Face: g.t("Open")}, {ID: "record", Label: g.t("Record up to %d seconds", LongestRecording), Face: g.t("Record"), Primary: true}}
	switch {
	case g.taking.soon != nil:
		said, buttons = g.taking.waits, buttons[:1]
	case d.on && !d.running:
		said = g.t("Waiting for the input of the device: allow it in the browser's question.")
	case d.on:
		said = g.t("Recording: play the note now, then stop. %d of %d seconds.", int(d.seconds), LongestRecording)
	case g.taking.wrong != "":
		said, ink = g.taking.wrong, Red
	case g.silentDevice() != "":
		said += " " + g.silentDevice()
	}
	if d.on {
		buttons = []ui.Widget{{ID: "another", Label: g.t("Stop without listening to it"), Face: g.t("Cancel")}, {ID: "stop recording", Label: g.t("Stop recording"), Face: g.t("Stop"), Primary: true, Disabled: !d.running}}
	}
	g.scene.Body += " " + said
	bottom, area := area.CutBottom(p.button, p.gap)
	area, _ = p.paragraph(area, said, p.body, ink == Red, ink)
	if d.on {
		_, area = area.CutTop(0, p.gap)
		g.layMeter(p, area)
	} else if ink == Red {
		p.paragraph(area, g.t(takeAsk), p.body, false, Faint)
	}
	p.buttons(bottom, buttons...)
}

// layMeter shows how loud what comes in is, on a scale of decibels.
func (g *Game) layMeter(p *paper, r ui.Rect) {
	d := &g.taking.device
	words := g.t("very quiet")
	db := 20 * math.Log10(max(d.peak, 1e-6))
	switch {
	case db > -1:
		words = g.t("too loud: it clips")
	case db > -40:
		words = g.t("good")
	}
	text := g.t("Level: %s, %s.", fmt.Sprintf("%.0f dB", max(meterFloor, db)), words)
	r, _ = p.paragraph(r, text, p.body, false, Black)
	_, r = r.CutTop(0, p.gap/2)
	r.W, r.H = min(r.W, 30*p.body), 16
	p.Meter = Meter{Rect: r, Level: max(0, 1-db/meterFloor)}
	d.peak = 0
}

// meterFloor is the low end of the meter, in dB re full scale.
const meterFloor = -60

// takeBack leads to where the page was opened from.
func (g *Game) takeBack() ui.Widget {
	switch g.taking.from {
	case working:
		return ui.Widget{ID: numberedID("exercise", g.at.exercise), Label: g.t("Back to the exercise"), Face: g.t("Back")}
	case benchPage:
		return ui.Widget{ID: "bench", Label: g.t("Back to the bench"), Face: g.t("Back")}
	}
	return ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"}
}

// foundText is the note that was found.
func (g *Game) foundText() string {
	t := g.taking.take
	seconds := fmt.Sprintf("%.1f s", t.Seconds)
	note, cents, ok := t.Note()
	if !ok {
		return g.t("No one pitch, %s.", seconds)
	}
	return g.t("%s %s, %s, %s.", plainly(noteName(note)), fmt.Sprintf("%+.0f cents", cents), fmt.Sprintf("%.1f Hz", t.Hz), seconds)
}

// noteName is the name of a note in scientific pitch notation: 60 is C4.
func noteName(note int) string {
	names := [...]string{"C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"}
	return fmt.Sprintf("%s%d", names[(note%12+12)%12], int(math.Floor(float64(note)/12))-1)
}

// foundFrame shows the note in the recording.
func (g *Game) foundFrame() frame {
	f := frame{
		title: g.foundText(), task: g.t("The note of the recording: its steady part, and its partials."),
		listening: []ui.Widget{{ID: "yours", Label: g.t("Play"), On: g.playing.what == toYours, Keys: "Y"}, {ID: "another", Label: g.t("Another recording"), Face: g.t("Another")}},
		back:      g.takeBack(),
	}
	var text string
	matched := ui.Widget{ID: "beside", Label: g.t("Match it on the bench"), Face: g.t("Match it")}
	answer := ui.Widget{ID: "answer take", Label: g.t("Hand it in to exercise %s", g.exerciseLabel(g.at.exercise)), Face: g.t("Hand in"), Keys: "H"}
	switch {
	case g.taking.answers:
		answer.Primary = true
		text = g.t("Hand it in to exercise %s, or match it on the bench.", g.exerciseLabel(g.at.exercise))
		f.onward = []ui.Widget{matched, answer}
	case g.answerable():
		matched.Primary = true
		text = g.t("Match it on the bench, or hand it in to exercise %s.", g.exerciseLabel(g.at.exercise))
		f.onward = []ui.Widget{answer, matched}
	default:
		matched.Primary = true
		f.onward = []ui.Widget{matched}
	}
	if s := g.silentDevice(); s != "" {
		text = s
	}
	if g.taking.soon != nil {
		text, f.onward, f.listening = g.taking.waits, nil, nil
	}
	text = strings.TrimSpace(text + " " + g.t("The recording is gone when you leave."))
	f.middle = func(p *paper, r ui.Rect) {
		g.scene.Body += " " + text
		p.paragraph(r, text, p.body, false, Black)
	}
	return f
}

// besideFrame sets a sound beside the recording.
func (g *Game) besideFrame(p *paper) frame {
	f := g.benchFrame(p)
	f.title = g.t("Match the recording")
	if p.wide {
		f.task = g.t("Dashed: the recording. Solid: yours. Set anything, listen in turn, hand in.")
	}
	g.scene.Body = g.t("Set your sound until it is that of the recording, then hand in.")
	if g.taking.soon != nil {
		f.task = g.taking.waits
		g.scene.Body = f.task
	}
	f.listening = g.listenTo(g.t("Target"), g.t("Yours"))
	f.back = ui.Widget{ID: "back to it", Label: g.t("Back to the recording"), Face: g.t("Back"), Keys: "C"}
	f.onward = []ui.Widget{{ID: "mark take", Label: g.t("Hand in"), Primary: true, Keys: "H", Disabled: g.taking.soon != nil}}
	f.extra = ui.Widget{}
	return f
}

// takenFrame shows the marks where one of two sounds is a recording.
func (g *Game) takenFrame(p *paper) frame {
	g.scene.Body = g.takenVerdict()
	task := g.t("Solid: yours. Dashed: the target.")
	if p.wide {
		task = g.t("Marked. Filled and solid: yours. Open and dashed: the target. A tick is a partial within one just-noticeable step.")
	}
	f := frame{
		title: g.t("The recording"), task: task, middle: g.layMarks, across: true,
		listening: g.listenTo(g.t("Target"), g.t("Yours")),
		back:      g.takeBack(),
		onward:    []ui.Widget{{ID: "another", Label: g.t("Another recording"), Face: g.t("Another")}, {ID: "set on", Label: g.t("Go on setting it"), Face: g.t("Go on"), Primary: true, Keys: "A"}},
	}
	if g.taking.answers {
		f.title = g.numbered()
		f.onward = f.onward[:1]
		f.onward[0].Primary = true
	}
	return f
}

// takenNote says where the marks of a recording go.
func (g *Game) takenNote() string {
	switch {
	case !g.taking.answers || g.trial.on:
		return g.t(takeOwn)
	case g.own() != nil:
		return g.t(takeKept)
	}
	return g.t(takeOther)
}

// takenVerdict is what the marks say, in words.
func (g *Game) takenVerdict() string {
	s := []string{g.t("%.0f marks of 100.", g.shownMarks())}
	if g.work.result.Marks > g.work.marks {
		s = append(s, g.capText(g.work.result.Marks))
	}
	for _, r := range g.work.result.Reasons {
		s = append(s, g.reason(r))
	}
	s = append(s, g.takenNote())
	if g.taking.answers {
		s = append(s, g.t(g.exercise().Teach))
	}
	return strings.Join(s, " ")
}
