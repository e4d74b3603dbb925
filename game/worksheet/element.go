package worksheet

import "partialcredit/game/figure"

func escape(s string) string { return figure.Escape(s) }

// element is text in an element of a class; of none where class is empty.
func element(name, class, text string) string {
	if class != "" {
		class = ` class="` + class + `"`
	}
	return "<" + name + class + ">" + escape(text) + "</" + name + ">\n"
}
