package game

import (
	"fmt"
	"slices"

	"partialcredit/game/sheet"
	"partialcredit/game/ui"
)

// handPages turns to every page of a sheet that was given, and of what is handed out.
func handPages(g *Game, look func(name string)) {
	press := func(id string) { g.act(ui.Action{Widget: id}) }
	g.in.Address = "https://partial-credit.example/some/where/"
	s := assignment(true)
	g.Follow("#" + s.Fragment())
	look("given")
	press("exercise 1")
	look("given, the name")
	g.act(ui.Action{Widget: "name", Typed: true, Text: "Wilhelmina the Forty-Second Wren of All"})
	look("given, a long name")
	press("use name")
	look("given, an exercise")
	press("contents")
	press("slip")
	look("an empty slip")
	g.act(ui.Action{Widget: "contents"})
	for i := range s.Exercises {
		press(fmt.Sprintf("exercise %d", i))
		switch e := g.exercise(); e.Kind {
		case sheet.Show:
		case sheet.Match:
			press("hand in")
			look("given, marked")
		default:
			for n := 0; g.page != result && n < 200; n++ {
				press(fmt.Sprintf("answer %d", n%len(g.asking.question.Answers)))
				press("proceed")
			}
			look("given, a result")
		}
		press("contents")
	}
	look("given, done")
	press("slip")
	look("a slip")
	press("large")
	look("a slip, large")
	press("small")
	press("contents")
	press("discard")
	look("given, the question before it is removed")
	press("keep")
	press("course")
	look("contents with what was given")

	press("bench")
	press("link")
	look("a sound is handed out")
	press("large")
	look("a sound is handed out, large")
	written := *sheet.Course()[2]
	written.Title, written.Exercises = "A title", slices.Clone(written.Exercises)
	written.Exercises[0].Title = "A question that is rather long and asks for much, does it not?"
	g.giving = &written
	g.show(givePage)
	look("a sheet is handed out")
	press("later")
	look("an exercise is handed out")
	press("large")
	look("an exercise is handed out, large")
	long := written
	for _, s := range sheet.Course()[1:] {
		long.Exercises = append(long.Exercises, s.Exercises...)
	}
	g.giving = &long
	g.show(contents)
	g.show(givePage)
	look("more is handed out than a code holds")
	press("course")
}
