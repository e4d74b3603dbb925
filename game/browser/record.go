package browser

import "partialcredit/game/words"

// recordTrouble is the sentence for what web/record.js says is wrong.
func recordTrouble(what string) words.Message {
	switch what {
	case "insecure":
		return words.Say("Recording works only on a page that is opened over https. Open this one that way, or open a WAV file.")
	case "denied":
		return words.Say("The microphone is not allowed on this page. Allow it in the browser's settings for this page, or open a WAV file.")
	case "none":
		return words.Say("There is no microphone or line input that this page can use. Connect one, or open a WAV file.")
	case "hidden":
		return words.Say("The recording was stopped because the page was out of sight, and nothing of it is kept. Record again with the page in view.")
	case "nothing":
		return words.Say("Nothing has come in from the device yet. Record again, and wait for the level to show.")
	}
	return words.Say("The microphone or line input cannot be had at the moment. Close other programs that use it, or open a WAV file.")
}
