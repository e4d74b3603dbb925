package game

import "partialcredit/game/practice"

// A practiceSet is what is kept of a set of practice, so that it ends when it should though
// the page is loaded anew. What is asked in it follows from the boxes.
type practiceSet struct {
	Day     int     `json:"day"`     // since 1970-01-01, on which alone it goes on
	Seconds float64 `json:"seconds"` // that it has lasted
	Asked   int     `json:"asked"`
	Right   int     `json:"right"`
	Last    string  `json:"last"` // what was asked last, by its key in the boxes
}

// keptSet is the set to go on with; nil where there is none.
func (g *Game) keptSet() *practiceSet {
	if k := g.kept.Set; k != nil && k.Day == g.today() {
		return k
	}
	return nil
}

// setToKeep is the set as it stands, with a match that was marked and not yet counted; nil
// where nothing was asked in it.
func (g *Game) setToKeep() *practiceSet {
	s := g.session
	if g.page == marked {
		s.count(g.work.marks >= matched)
	}
	if s.asked == 0 {
		return nil
	}
	return &practiceSet{Day: g.today(), Seconds: (g.in.Now - s.began).Seconds(), Asked: s.asked, Right: s.right, Last: s.last}
}

// mostAsked is more than any set asks.
const mostAsked = 10000

// tidy mends a set; nil where nothing is left of it.
func (k *practiceSet) tidy() *practiceSet {
	if k == nil || k.Asked < 1 || k.Asked > mostAsked {
		return nil
	}
	k.Right = max(0, min(k.Asked, k.Right))
	k.Seconds = max(0, min(practice.Longest.Seconds(), k.Seconds))
	return k
}
