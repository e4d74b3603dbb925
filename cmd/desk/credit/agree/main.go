// Agree prints the marks of credit.Agreement as JSON on one line. A test runs it
// as WebAssembly and compares them with the native ones.
package main

import (
	"encoding/json"
	"fmt"
	"os"

	"partialcredit/cmd/desk/credit"
)

func main() {
	marks, err := credit.Agreement()
	if err == nil {
		err = json.NewEncoder(os.Stdout).Encode(marks)
	}
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}
