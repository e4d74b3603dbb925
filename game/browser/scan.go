package browser

import "partialcredit/game/words"

// scanTrouble is the sentence for what web/scan.js says is wrong; none where nothing is.
func scanTrouble(what string) words.Message {
	switch what {
	case "":
		return words.Message{}
	case "insecure":
		return words.Say("The camera works only on a page that is opened over https. Open this one that way, or choose a picture of the code as a file.")
	case "denied":
		return words.Say("The camera is not allowed on this page. Allow it in the browser's settings for this page, or choose a picture of the code as a file.")
	case "none":
		return words.Say("There is no camera that this page can use. Choose a picture of the code as a file.")
	case "reader":
		return words.Say("What reads codes could not be loaded. Connect to the network and try again: from then on it stays on this device.")
	case "unreadable":
		return words.Say("This browser cannot read this picture. Choose a PNG or a JPEG.")
	case "nothing":
		return words.Say("No code was found in this picture. Take the picture in good light and from nearer, with all of the code and its white edge in view.")
	}
	return words.Say("The camera cannot be had at the moment. Close other programs that use it, or choose a picture of the code as a file.")
}
