package browser

import (
	"errors"
	"unicode/utf8"

	"partialcredit/game/words"
)

// A shelf keeps texts on the device, each under its key. What goes wrong is
// said once, then not again until keeping has worked in between.
type shelf struct {
	get  func(key string) (value string, ok bool, err error)
	set  func(key, value string) error
	said bool
}

// The names that the device's storage gives to what goes wrong
// (WHATWG HTML, Web storage).
var (
	errFull   = errors.New("the storage is full")
	errClosed = errors.New("the storage is closed to this page")
)

// load gives what was saved under key; nil where there is nothing to be had.
func (s *shelf) load(key string) []byte {
	value, ok, err := s.get(key)
	if err != nil || !ok {
		return nil
	}
	return []byte(value)
}

// save keeps data, which is text, under key.
func (s *shelf) save(key string, data []byte) error {
	if !utf8.Valid(data) {
		return words.Say("Only text can be kept on this device.")
	}
	err := s.set(key, string(data))
	said := s.said
	s.said = err != nil
	if err == nil || said {
		return nil
	}
	if errors.Is(err, errFull) {
		return words.Say("This browser's storage is full, so your progress cannot be kept. Remove the data of other sites, or go on without.")
	}
	return words.Say("This browser keeps nothing for this page, so your progress ends with this visit. A private window does that, and so does a setting that blocks site data.")
}
