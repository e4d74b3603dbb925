// Wasm prints what package speed measures, as JSON on one line: `desk measure` runs it in a browser.
// Its argument is the time for one measurement in seconds.
package main

import (
	"encoding/json"
	"fmt"
	"os"
	"strconv"

	"partialcredit/cmd/desk/measure/speed"
)

func main() {
	seconds, err := strconv.ParseFloat(os.Args[1], 64)
	if err != nil {
		fmt.Println("the time must be a number:", err)
		os.Exit(1)
	}
	out, err := json.Marshal(speed.Measure(seconds))
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	fmt.Println(string(out))
}
