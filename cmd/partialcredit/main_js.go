// Partialcredit is the app: learners match a target sound with their own, in the browser.
package main

import (
	"log"

	"partialcredit/game/browser"
	"partialcredit/game/view"
)

func main() {
	if err := view.RunEmpty(browser.Started); err != nil {
		log.Fatal(err)
	}
}
