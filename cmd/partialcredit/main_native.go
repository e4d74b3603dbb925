//go:build !js

// Partialcredit is the app: learners match a target sound with their own, in the browser.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "Partial Credit runs in a browser: start it with `make run` and open the address it prints.")
	os.Exit(2)
}
