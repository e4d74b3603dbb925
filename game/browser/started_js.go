//go:build js

package browser

import "syscall/js"

// Started tells the page that the app can draw: the loading panel goes away.
func Started() {
	js.Global().Get("partialCredit").Call("started")
}
