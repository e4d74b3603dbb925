package browser

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

// SetLanguage keeps the language that a person has chosen, by its tag, and has
// the page say that it is in it. At the start it is already.
func (p *Page) SetLanguage(tag string) {
	p.global.Get("partialCredit").Get("words").Call("choose", tag)
}
