package book

import (
	"encoding/json"
	"errors"

	"partialcredit/game/sheet"
)

// kept is a book as it is kept: what came, without what follows from it.
type kept struct {
	Sheets []string    `json:"sheets,omitempty"` // fragments
	Slips  []keptSlip  `json:"slips,omitempty"`
	Aside  []keptAside `json:"aside,omitempty"`
}

type keptSlip struct {
	Text string `json:"slip"`
	From string `json:"from,omitempty"`
	Line int    `json:"line,omitempty"`
}

type keptAside struct {
	Text string `json:"text"`
	From string `json:"from,omitempty"`
	Line int    `json:"line,omitempty"`
	Name string `json:"name,omitempty"`
	Why  string `json:"why"`
}

// MarshalJSON writes all that came. Marks are not among it: they are made anew.
func (b *Book) MarshalJSON() ([]byte, error) {
	var k kept
	for _, o := range b.sheets {
		k.Sheets = append(k.Sheets, o.Sheet.Fragment())
	}
	for _, e := range b.entries {
		k.Slips = append(k.Slips, keptSlip{e.text, e.From, e.Line})
	}
	for _, a := range b.aside {
		k.Aside = append(k.Aside, keptAside{a.Text, a.From, a.Line, a.Name, a.Why.Error()})
	}
	return json.Marshal(k)
}

// UnmarshalJSON replaces the book by the one in data. What cannot be read of it any more
// is kept aside.
func (b *Book) UnmarshalJSON(data []byte) error {
	var k kept
	if err := json.Unmarshal(data, &k); err != nil {
		return err
	}
	*b = Book{}
	for _, text := range k.Sheets {
		sh, err := sheet.ReadFragment(text)
		if err != nil {
			b.setAside(Aside{Text: text, Why: err})
			continue
		}
		b.Open(sh)
	}
	for _, s := range k.Slips {
		for _, f := range find(s.Text) {
			f.line = s.Line
			b.add(f, s.From)
		}
	}
	for _, a := range k.Aside {
		b.setAside(Aside{a.Text, a.From, a.Line, a.Name, errors.New(a.Why)})
	}
	return nil
}
