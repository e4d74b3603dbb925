package game

import (
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// What is wrong with a sheet, a slip or a link is said in the language of the app, all of it.
func TestRefusalsAreGerman(t *testing.T) {
	w := newWriter(t)
	w.Speak([]string{"de"})
	said := func(want string) {
		t.Helper()
		if !strings.Contains(w.say, want) {
			t.Errorf("%q, want %q in it", w.say, want)
		}
		w.over = noOverlay
	}
	w.openSheet(File{Name: "x.json", Data: []byte("{\"version\": 1,\n\"title\": \"T\" \"exercises\": []}")})
	said("Zeile 2 ist kein JSON")
	bad := `{"version": 1, "title": "T", "exercises": [{"id": "a", "title": "A?", "task": "A.", "teach": "A.",
		"target": {"version": 1}, "controls": [{"set": ["a.duty"], "max": 2}]}]}`
	w.openSheet(File{Name: "x.json", Data: []byte(bad)})
	said("Aufgabe 1: max eines Reglers: a.duty ist 2; möglich ist 0.03 bis 0.97 (Teil der Periode)")
	w.followToSheet([]byte(bad))
	said("Das Blatt in diesem Link ist nicht zu gebrauchen: Aufgabe 1: max eines Reglers")
	sh := homework()
	other := sheet.Course()[1]
	w.press("teacher")
	w.press("book")
	w.Pasted("#" + slipOf(sh, "Wren", 0.5, 29000000).Fragment() + " #" + sh.Fragment())
	err := (&slip.Slip{Name: "Wren", Sheet: "x"}).Fits(other)
	if got := w.wrong(err); got != "Dieser Zettel von Wren gehört zu einem anderen Blatt oder zu einer anderen Fassung davon." {
		t.Error(got)
	}
}
