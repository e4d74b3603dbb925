package game

import (
	"partialcredit/game/ask"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/synth"
)

// A helpPart is a page of the help.
type helpPart struct {
	title, text string
	picture     func(p *paper, r ui.Rect) // drawn where there is room for it; none where nil
}

func (g *Game) helpParts() []helpPart {
	return []helpPart{
		{g.t("What this is for"), g.t("To learn to hear what two oscillators do: shapes, footage, pulse width, beats, vibrato, ring, amplitude and frequency modulation, hard sync. Each sheet begins with a demonstration. Then you name, compare and match sounds, and find the smallest difference you can hear."), g.layExample},
		{g.t("The kinds of exercise"), g.t("Match: set the rulers until your sound is like the target, hand it in, read what differed. Name: say which of the answers sounds. Same or different: trust your ears, not the pictures. Limit: three sounds, one is different; two right answers make it harder, one wrong one easier, until your limit is found."), g.layExampleRun},
		{g.t("Marks"), g.t("In a match, marks count just-noticeable steps: seven steps off leave half of them. In namings and comparisons guessing earns nothing: half right of two answers is no marks. A limit has no marks; it is yours, and goes into your progress."), nil},
		{g.t("Rulers and keys"), g.t("Drag along a ruler; move the finger away from it to go finer; touch twice to go back to the start. The plus and minus signs and the arrow keys step it, with Shift by a fine step; Home and End go to the ends. Keys: T target, Y yours or play, I in turn, H hand in, L listen, 1 to 6 answer, N next, A again, S sweep, M slow motion, C back, Escape stops the sound."), nil},
		{g.t("The bench"), g.t("Free play with every control of the voice. The sweep moves the ruler that was set last, there and back, while your hands are free. Slow motion shows the note twenty times slower, so that you see what a modulation does. Link gives a link that holds the sound itself, and a code of it to scan: copy it, share it, or show it."), nil},
		{g.t("Practice and progress"), g.t("What you missed comes back the same day, then after 1, 3, 5 and 10 days. What you confuse comes side by side. A set lasts eight to ten minutes; then rest your ears. Progress draws your marks, your confusions and your limits. Export it to a file to take it to another device."), g.layExampleTable},
		{g.t("Names, slips and links"), g.t("A sheet that came by a link or a code stands in the contents under “From links”, and works without a network. Write a nickname that your teacher knows, not your full name, and the same one every time. Slip shows what to hand in: its code, or a link or a file that you send. It holds that name, your answers, times and replays."), g.layExampleCode},
		{g.t("For the teacher: a sheet"), g.t("Set a sound on the bench and touch Exercise: what is asked, and on which sheet. Choose what the learner may set; set the ranges, and that which targets are drawn from for each name; let answers vary, put a sound before the questions, or a published threshold beside a limit; write title, task and what to know. Read the advice, try it out, and hand out the sheet: as a link, a code, a file, or on paper with its answer key."), nil},
		{g.t("For the teacher: the class"), g.t("Collect slips in the mark book: scan their codes, open their files, or paste what came by mail. Marks are made anew from the answers. The book shows the class, which exercise was too hard and which separates the class, and what is confused; it saves tables and prints. All of it stays on your device: save the slips to a file, too."), g.layExampleTable},
		{g.t("Recordings"), g.t("Recording takes one note of an instrument, held for a second or two, from a WAV file, a microphone or a line input. Match it on the bench, or answer a match with it. It is drawn and marked like any sound, and gone when you leave the page. Do not record people without asking them."), nil},
		{g.t("Your ears"), g.t("Start quiet and keep the level comfortable. For all listening of a week, WHO and ITU (H.870) name 80 dB(A) for 40 hours for adults and 75 dB(A) for 40 hours for children; NIOSH names 85 dB(A) for 8 hours of a working day; 3 dB more halves the time. This page cannot measure what reaches your ear. If your ears ring or sounds seem dull, stop and rest; if it does not pass, ask a doctor. The rules of your school or country come first."), nil},
		{g.t("Your eyes"), g.t("Nothing on the page flashes. Pictures move only while something sounds or you move it; where your device asks for less motion, they move less. Look switches between paper and blackboard; high contrast follows your device."), nil},
		{g.t("Private and offline"), g.t("Nothing leaves this device unless you send it. There are no accounts and no cookies. After the first visit the page works without a network, and can be installed from the browser's menu. A new version waits until you touch Update. Erase, under Progress, takes all work off this device; sheets that you wrote and the mark book have a Remove of their own."), nil},
	}
}

// openHelp opens the help at its beginning.
func (g *Game) openHelp() {
	target, yours := exampleSounds()
	g.work = compare(target, yours, nil)
	g.playing.loud = g.pair(target, yours)
	g.show(helpPage)
}

// layHelp lays out one part of the help, or as many as there is room for.
func (g *Game) layHelp(p *paper) {
	area := g.head(p, p.plain(), g.t("Help"), "")
	bottom, rest := area.CutBottom(p.button, p.gap)
	turn, rest := rest.CutBottom(finger, p.gap)
	rest.W = min(rest.W, 46*p.body)
	parts := g.helpParts()
	g.part = max(0, min(len(parts)-1, g.part))
	h := parts[g.part]
	below, _ := p.paragraph(rest, h.title, p.title, true, Black)
	_, below = below.CutTop(0, p.gap/2)
	below, _ = p.paragraph(below, h.text, p.body, false, Black)
	_, below = below.CutTop(0, p.gap)
	if h.picture != nil && below.H >= leastExample {
		below.H = min(below.H, 26*p.body)
		h.picture(p, below)
	}
	g.scene.Body = h.title + ". " + h.text
	g.layTurn(p, turn, len(parts))
	letters := g.t("Letter keys: on")
	if g.kept.Keyless {
		letters = g.t("Letter keys: off")
	}
	p.buttons(bottom,
		ui.Widget{ID: "course", Label: g.t("All sheets"), Keys: "C"},
		ui.Widget{ID: "letters", Label: letters})
}

// leastExample is the least height of a picture in the help.
const leastExample = 170

// layExample draws a sawtooth beside a pulse.
func (g *Game) layExample(p *paper, r ui.Rect) {
	boxes := r.Rows(2, p.gap)
	if p.wide || p.short {
		boxes = r.Columns(2, 2*p.gap)
	}
	g.layPlots(p, boxes)
}

// exampleSounds are those of layExample.
func exampleSounds() (target, yours synth.Sound) {
	target, yours = synth.Default(), synth.Default()
	yours.A.Shape, yours.A.Duty = synth.Pulse, 0.3
	return target, yours
}

// layExampleRun draws a run of the first limit of the course, by an invented
// listener who hears what is above a limit.
func (g *Game) layExampleRun(p *paper, r ui.Rect) {
	limits := g.exercises(func(e *sheet.Exercise) bool { return e.Kind == sheet.Limit })
	if len(limits) == 0 {
		return
	}
	e := limits[0]
	limit := e.Quantity.Start / 10
	run := ask.Run{Seed: 1}
	for !run.Done(e) {
		q := run.Question(e, len(run.Answers))
		answer := q.Right
		if q.Value < limit {
			answer = (answer + 1) % len(q.Answers)
		}
		run.Answer(e, answer)
	}
	g.layRun(p, r, e, &run)
}

// layExampleCode draws a code. It leads to the page itself, if somebody scans it.
func (g *Game) layExampleCode(p *paper, r ui.Rect) {
	r.W = min(r.W, r.H)
	if c, _ := g.codeOf(g.in.Address); c.Size > 0 {
		p.Code = &Code{Rect: r, Code: c}
	}
}

// layExampleTable draws an invented table: shapes of which two are confused.
func (g *Game) layExampleTable(p *paper, r ui.Rect) {
	names := []string{g.lang.Value("sine"), g.lang.Value("triangle"), g.lang.Value("pulse")}
	r.W = min(r.W, 30*p.body)
	p.Tables = append(p.Tables, Table{
		Rect: r, Rows: names, Columns: names, RowsTitle: g.t("played"), ColumnsTitle: g.t("answered"),
		Counts: [][]int{{9, 3, 0}, {4, 8, 0}, {0, 1, 11}},
	})
}
