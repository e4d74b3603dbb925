package browser

import "partialcredit/game/words"

// Languages are the tags (BCP 47) of the languages that a person prefers, the
// most preferred first: what was chosen here, then what the browser is set to.
func (p *Page) Languages() []string {
	tags := p.global.Get("partialCredit").Get("words").Call("preferred")
	all := make([]string, tags.Length())
	for i := range all {
		all[i] = tags.Index(i).String()
	}
	return all
}

// SetLanguage has the page say in which language it is, by its tag, and keeps it
// for the next visit where the browser would have chosen another.
func (p *Page) SetLanguage(tag string) {
	p.global.Get("partialCredit").Get("words").Call("choose", tag)
	p.mirror.speak(words.Choose([]string{tag}))
}
