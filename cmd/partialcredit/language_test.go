//go:build !js

package main_test

import (
	"net/http"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"

	"partialcredit/game/words"
)

// The page speaks the language that the browser prefers until a person chooses another, and
// keeps the choice; also when the app does not come. Intl is the browser's own, from the CLDR.
func TestPageSpeaksTheLanguage(t *testing.T) {
	address, _ := ailing(t, http.NotFound)
	p := Open(t, Visit{Address: address, Screen: Phone, Expected: []string{"Failed to load resource"}})
	p.speaks("en", "The app could not be loaded", "Try again", "2.5")

	var agent string
	p.Eval("navigator.userAgent", &agent)
	p.do("preferring French, then German", emulation.SetUserAgentOverride(agent).WithAcceptLanguage("fr,de-CH,en"))
	p.Reload()
	p.speaks("de", "Die App konnte nicht geladen werden", "Noch einmal", "2,5")
	p.WaitText("main p", "Höre einen Zielklang", time.Second)
	p.Screenshot("failed-German.png")

	p.Eval(`partialCredit.words.choose("en")`, nil)
	p.Reload()
	p.speaks("en", "The app could not be loaded", "Try again", "2.5")
}

// The app speaks the language that the page does; its switch changes both and is kept.
func TestAppSpeaksTheLanguage(t *testing.T) {
	p := Open(t, Visit{Screen: Phone, Before: []string{`Object.defineProperty(navigator, 'languages', { get: () => ['de-DE', 'en'] })`}})
	is := func(tag, title, kept string) {
		t.Helper()
		p.Wait(`document.documentElement.lang === '`+tag+`'`, 5*time.Second)
		p.WaitText("#mirror h1", title, 5*time.Second)
		p.Wait(`localStorage.getItem('partialcredit.language') === `+kept, 5*time.Second)
	}
	p.Started()
	is("de", "Höre, was zwei Oszillatoren tun", "null")
	p.Screenshot("contents-German.png")
	p.treeSpeaks("de", "Bench", "Progress", "Help", "Volume")
	p.Eval(`document.querySelector('`+widget("language")+`').click()`, nil)
	is("en", "Hear what two oscillators do", "'en'")
	p.treeSpeaks("en", "Bench", "Progress", "Help", "Volume")
	p.Reload()
	p.Started()
	is("en", "Hear what two oscillators do", "'en'")
	p.Eval(`document.querySelector('`+widget("language")+`').click()`, nil)
	is("de", "Höre, was zwei Oszillatoren tun", "null")
}

// treeSpeaks looks for controls in the accessibility tree by their names in a language, and where that is not
// English for none of their English ones.
func (p *Page) treeSpeaks(tag string, names ...string) {
	p.t.Helper()
	l := words.Choose([]string{tag})
	a, said := ax{p}, map[string]bool{}
	for _, n := range a.nodes() {
		if role := n.Role.String(); role == "button" || role == "slider" {
			said[n.Name.String()] = true
		}
	}
	for _, name := range names {
		if !said[l.Say(name)] {
			p.t.Errorf("the tree has no %q; there are: %s", l.Say(name), a.all())
		}
		if l != words.English && (l.Say(name) == name || said[name]) {
			p.t.Errorf("the tree says %q in English", name)
		}
	}
}

func (p *Page) speaks(tag, problem, again, number string) {
	p.t.Helper()
	p.WaitText("#loading-problem", problem, 20*time.Second)
	p.WaitText("#loading-again", again, time.Second)
	var got struct{ Lang, Number, Intl string }
	p.Eval(`({Lang: document.documentElement.lang, Number: partialCredit.words.number(2.5, 1),
		Intl: new Intl.NumberFormat(document.documentElement.lang).format(2.5)})`, &got)
	if got.Lang != tag || got.Number != number || got.Intl != number {
		p.t.Errorf("the page's language is %q and it writes %q, the browser %q; want %q and %q", got.Lang, got.Number, got.Intl, tag, number)
	}
}
