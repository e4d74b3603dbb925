package game

import (
	"partialcredit/game/ui"
)

// A helpPart is a page of the help.
type helpPart struct{ title, text string }

func (g *Game) helpParts() []helpPart {
	return []helpPart{
		{g.t("What this is for"), g.t("To learn to hear what two oscillators do: shapes, footage, pulse width, beats, vibrato, ring, amplitude and frequency modulation, hard sync. Each sheet begins with a demonstration. Then you name, compare and match sounds, and find the smallest difference you can hear.")},
		{g.t("The kinds of exercise"), g.t("Match: set the rulers until your sound is like the target, hand it in, read what differed. Name: say which of the answers sounds. Same or different: trust your ears, not the pictures. Limit: three sounds, one is different; two right answers make it harder, one wrong one easier, until your limit is found.")},
		{g.t("Marks"), g.t("In a match, marks count just-noticeable steps: seven steps off leave half of them. In namings and comparisons guessing earns nothing: half right of two answers is no marks. A limit has no marks; it is yours, and goes into your progress.")},
		{g.t("Rulers and keys"), g.t("Drag along a ruler; move the finger away from it to go finer; touch twice to go back to the start. The plus and minus signs and the arrow keys step it, with Shift by a fine step; Home and End go to the ends. Keys: T target, Y yours or play, I in turn, H hand in, L listen, 1 to 6 answer, N next, A again, S sweep, M slow motion, C back, Escape stops the sound.")},
		{g.t("The bench"), g.t("Free play with every control of the voice. The sweep moves the ruler that was set last, there and back, while your hands are free. Slow motion shows the note twenty times slower, so that you see what a modulation does. The link holds the sound itself: send it to anyone.")},
		{g.t("Practice and progress"), g.t("What you missed comes back the same day, then after 1, 3, 5 and 10 days. What you confuse comes side by side. A set lasts eight to ten minutes; then rest your ears. Progress draws your marks, your confusions and your limits. Export it to a file to take it to another device.")},
		{g.t("Your ears"), g.t("Start quiet and keep the level comfortable. For all listening of a week, WHO and ITU (H.870) name 80 dB(A) for 40 hours for adults and 75 dB(A) for 40 hours for children; NIOSH names 85 dB(A) for 8 hours of a working day; 3 dB more halves the time. This page cannot measure what reaches your ear. If your ears ring or sounds seem dull, stop and rest; if it does not pass, ask a doctor. The rules of your school or country come first.")},
		{g.t("Your eyes"), g.t("Nothing on the page flashes. Pictures move only while something sounds or you move it; where your device asks for less motion, they move less. Look switches between paper and blackboard; high contrast follows your device.")},
		{g.t("Private and offline"), g.t("Nothing leaves this device unless you send it. There are no accounts and no cookies. After the first visit the page works without a network, and can be installed from the browser's menu. A new version waits until you touch Update. Erase, under Progress, takes everything off this device.")},
	}
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
	p.paragraph(below, h.text, p.body, false, Black)
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
