// Partialcredit is the app: learners match a target sound with their own, in the browser.
package main

import (
	"log"

	"partialcredit/game/browser"
	"partialcredit/game/speaker"
	"partialcredit/game/view"
)

func main() {
	page := browser.Open()
	if letters, ok := page.Letters(); ok {
		view.SetLetterer(letters)
	}
	app := newApp(page, speaker.Open(page))
	page.OnEvent(app.onEvent)
	if err := view.Run(app); err != nil {
		log.Fatal(err)
	}
}
