package game

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"partialcredit/game/book"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/ui"
)

// bookPages turns to every page of the mark book, empty and full.
func bookPages(g *Game, look func(name string)) {
	press := func(id string) { g.act(ui.Action{Widget: id}) }
	turns := func(name string) {
		look(name)
		for range 4 {
			press("later")
			look(name + ", later")
		}
	}
	press("teacher")
	press("book")
	for leaf := range leaves {
		press(fmt.Sprintf("leaf %d", leaf))
		look(fmt.Sprintf("book %d, empty", leaf))
	}
	g.in.Address = "https://partial-credit.example/some/where/"
	links := classOf30()
	g.Pasted(strings.Join(links, "\n"))
	look("book, slips that wait")
	press("leaf 5")
	turns("book, aside")
	other := sheet.Course()[1]
	g.Pasted(damaged(links[0]) + "\n" + slipOf(other, "Wren", 0.5, 29000000).Fragment() + " #" + homework().Fragment())
	look("book, opened")
	press("scan")
	look("book, scanning")
	g.Scanned(links[3])
	look("book, a code")
	press("stop")
	look("book, stopped")
	press("leaf 1")
	look("book, marking")
	for g.marks.book.Step() {
	}
	g.marks.table = nil
	for leaf := range leaves {
		press(fmt.Sprintf("leaf %d", leaf))
		turns(fmt.Sprintf("book %d", leaf))
	}
	press("leaf 1")
	press("sort 1")
	press("columns 3")
	look("book, sorted")
	press("learner 0")
	turns("book, a learner")
	for _, id := range []string{"remove slip", "close sheet", "remove aside"} {
		press(id)
		look("book, " + id)
		press("keep")
	}
	press("class")
	g.act(ui.Action{Widget: "find", Typed: true, Text: "nobody"})
	look("book, nobody found")
	g.act(ui.Action{Widget: "find", Typed: true, Text: ""})
	press("other sheet")
	for leaf := range leaves {
		press(fmt.Sprintf("leaf %d", leaf))
		turns(fmt.Sprintf("book %d of another sheet", leaf))
	}
	press("teacher")
	press("course")
}

// The mark book fits on every screen in every language.
func TestTheMarkBookFits(t *testing.T) {
	t.Parallel()
	for _, language := range []string{"en", "de"} {
		g := New(sheet.Course(), nil, roughly)
		g.Speak([]string{language})
		g.kept.Hinted = true
		bookPages(g, func(name string) {
			t.Helper()
			for _, s := range screens {
				g.dirty = true
				g.Update(Input{W: s.w, H: s.h, Heard: Heard{Item: -1}, Random: 5, Address: g.in.Address})
				at := fmt.Sprintf("%s %vx%v %s", language, s.w, s.h, name)
				checkScene(t, at, g.Scene())
				checkPressable(t, at, g.Scene())
				checkBookScene(t, at, g.Scene())
			}
		})
	}
}

// checkBookScene checks what [checkScene] does not: charts, tables and the camera.
func checkBookScene(t *testing.T, name string, s *Scene) {
	t.Helper()
	var boxes []ui.Rect
	for _, c := range s.Charts {
		boxes = append(boxes, c.Rect)
	}
	for _, c := range s.Tables {
		boxes = append(boxes, c.Rect)
	}
	if s.Camera.W > 0 {
		boxes = append(boxes, s.Camera)
	}
	if s.Panel.W > 0 {
		return
	}
	for _, r := range boxes {
		if r.W < 250 || r.H < 90 || !inside(r, ui.Rect{W: s.W, H: s.H}) {
			t.Errorf("%s: a picture has only %v", name, r)
		}
		for _, w := range s.Widgets {
			if overlap(r, w.Rect) {
				t.Errorf("%s: %s lies over a picture", name, w.Label)
			}
		}
		for _, text := range s.Texts {
			if overlap(r, box(text)) {
				t.Errorf("%s: %q lies over a picture", name, text.String)
			}
		}
	}
}

// keeper is a teacher with the mark book open.
func keeper(t testing.TB) *writer {
	w := newWriter(t)
	w.press("teacher")
	w.press("book")
	return w
}

// allMarked waits until all marks are made.
func (w *writer) allMarked() {
	w.t.Helper()
	for n := 0; !w.Idle(); n++ {
		if n > 5000 {
			w.t.Fatal("the marks are never done")
		}
		w.pass()
	}
}

func (w *writer) news(want string) {
	w.t.Helper()
	w.pass()
	if len(w.marks.news) == 0 || !strings.Contains(w.marks.news[0], want) {
		w.t.Errorf("news %q, want %q", w.marks.news, want)
	}
	if w.Scene().Say != w.marks.news[0] {
		w.t.Errorf("said %q", w.Scene().Say)
	}
}

func (w *writer) names() (all []string) {
	for _, x := range w.scene.Widgets {
		if strings.HasPrefix(x.ID, "learner ") {
			all = append(all, x.Face)
		}
	}
	return all
}

// means are the marks that stand beside the names.
func (w *writer) means() (all []int) {
	for _, x := range w.scene.Widgets {
		if strings.HasPrefix(x.ID, "learner ") {
			_, marks, _ := strings.Cut(x.Label, ": ")
			n := -1
			fmt.Sscan(marks, &n)
			all = append(all, n)
		}
	}
	return all
}

// Slips are pasted, come twice, newer, damaged, and before their sheet; what became of
// each is said.
func TestSlipsAreCollected(t *testing.T) {
	w := keeper(t)
	sh := homework()
	wren, later := slipOf(sh, "Wren", 0.5, 29000000), slipOf(sh, "wren", 0.9, 29000100)
	w.typed("slips", "https://example.org/#"+wren.Fragment())
	w.press("take slips")
	w.news("answers a sheet that this device does not have: “" + shortened(sh.Title) + "”")
	if w.marks.pasted != "" || len(waitingSlips(w.marks.book)) != 1 {
		t.Error("the field is not empty, or the slip does not wait")
	}
	w.press("leaf 5")
	if body := w.Scene().Body; !strings.Contains(body, "The slip of Wren answers a sheet") {
		t.Errorf("aside: %q", body)
	}
	w.Follow("#" + sh.Fragment()) // the sheet's link is opened, as by a learner
	w.pass()
	w.press("course")
	w.press("teacher")
	w.press("book")
	if n := len(waitingSlips(w.marks.book)); n != 0 {
		t.Errorf("%d slips wait still", n)
	}
	w.press("leaf 0")
	w.Pasted("#" + wren.Fragment())
	w.news("is in the book already")
	w.Follow("#" + later.Fragment())
	w.news("newer than the one in the book")
	w.Pasted(damaged("#" + later.Fragment()))
	w.news("This slip is damaged")
	w.Dropped([]File{{Name: "all.txt", Data: []byte(strings.Join(classOf30()[:5], "\r\n"))}, {Name: "no.txt", Data: []byte("hello")}})
	w.news("Slips read: 5. New: 5.")
	if !strings.Contains(w.marks.news[1], "no slip in the file “no.txt”") {
		t.Errorf("news %q", w.marks.news)
	}
	unfit := slipOf(sh, "Finch", 0.5, 29000000)
	unfit.Work[0].ID = "no-such-exercise"
	w.Pasted("#" + unfit.Fragment())
	w.news("This slip is damaged")
	w.marks.book.DiscardAside(1)
	w.Pasted("nothing slip=of the kind")
	w.news("There is no slip in this text")
	if n := len(w.marks.book.Asides()); n != 1 {
		t.Errorf("%d kept aside", n)
	}

	// Codes: the same twice in a row counts once.
	w.press("scan")
	if w.Scene().Camera.W == 0 {
		t.Error("no camera")
	}
	robin := "https://example.org/#" + slipOf(sh, "Robin", 0.8, 29000050).Fragment()
	w.Scanned(robin)
	w.news("Code 1: The slip of Robin is taken.")
	w.Scanned(robin)
	if w.marks.scanned != 1 {
		t.Errorf("%d codes", w.marks.scanned)
	}
	w.Scanned("https://example.org/")
	w.news("Code 2: This code holds no slip.")
	w.press("stop")
	if w.Scene().Camera.W != 0 {
		t.Error("the camera is on")
	}
}

// What was collected survives a reload, with its marks made anew; the CSV is the book's.
func TestTheMarkBookIsKept(t *testing.T) {
	t.Parallel()
	w := keeper(t)
	w.kept.Given = append(w.kept.Given, given{Link: homework().Fragment()})
	w.unpack()
	w.Pasted(strings.Join(classOf30()[:12], "\n") + "\n" + damaged(classOf30()[12]))
	w.allMarked()
	again := newWriter(t)
	if !again.Unfile(w.File()) {
		t.Fatal("what was kept cannot be read")
	}
	again.press("teacher")
	again.press("book")
	again.press("leaf 1")
	if again.Idle() {
		t.Error("no marks are made")
	}
	again.allMarked()
	var theirs book.Book
	theirs.Open(homework())
	theirs.Add(strings.Join(classOf30()[:12], " "), "")
	theirs.MarkAll(1, nil)
	table := theirs.Table(homework().Fingerprint())
	again.Wishes()
	again.press("csv")
	again.press("wide")
	wishes := again.Wishes()
	if len(wishes) != 2 || wishes[0].Text != table.CSV(table.View(book.View{})) || wishes[1].Text != table.Wide(table.View(book.View{})) {
		t.Errorf("CSV is not the book's: %v", wishes)
	}
	if strings.Count(wishes[1].Text, "\r\n") != 13 {
		t.Errorf("%q", wishes[1].Text)
	}
	if n := len(again.marks.book.Asides()); n != 1 {
		t.Errorf("%d kept aside", n)
	}

	// And all of it as a file, on another device.
	again.press("leaf 0")
	again.press("save slips")
	file := again.Wishes()[0]
	other := keeper(t)
	other.Opened("slips", []File{{Name: file.Name, Data: []byte(file.Text)}})
	other.press("leaf 1")
	other.allMarked()
	other.Wishes()
	other.press("csv")
	if got := other.Wishes(); got[0].Text != wishes[0].Text || len(other.marks.book.Asides()) != 1 {
		t.Error("the slips of the file give another table")
	}
}

// Rows are sorted and looked for, and one is opened and removed.
func TestTheClassIsSorted(t *testing.T) {
	t.Parallel()
	w := keeper(t)
	w.w, w.h = 1180, 820
	w.kept.Given = append(w.kept.Given, given{Link: homework().Fragment()})
	w.unpack()
	w.Pasted(strings.Join(classOf30()[:8], "\n"))
	w.press("leaf 1")
	w.allMarked()
	if got := w.names(); len(got) != 8 || got[0] != "Learner 00" {
		t.Errorf("by name: %q", got)
	}
	w.press("sort 1")
	descending := w.means()
	if !slices.IsSortedFunc(descending, func(a, b int) int { return b - a }) || descending[0] == descending[7] {
		t.Errorf("by marks: %v", descending)
	}
	w.press("sort 1")
	if ascending := w.means(); !slices.IsSorted(ascending) || len(ascending) != 8 {
		t.Errorf("by marks, turned: %v", ascending)
	}
	w.press("sort 2")
	if got := w.names(); got[0] != "Learner 07" {
		t.Errorf("by time: %q", got)
	}
	w.typed("find", "03")
	w.pass()
	if got := w.names(); len(got) != 1 || got[0] != "Learner 03" {
		t.Errorf("found %q", got)
	}
	w.press("learner 0")
	if body := w.Scene().Body; !strings.Contains(body, "Learner 03. Handed in: 2025-02-19 21:23 UTC.") {
		t.Errorf("the learner: %q", body)
	}
	w.press("remove slip")
	w.press("remove it")
	w.typed("find", "")
	w.pass()
	if got := w.names(); len(got) != 7 {
		t.Errorf("after one was removed: %q", got)
	}
	w.press("leaf 4")
	w.press("print")
	for _, wish := range w.Wishes() {
		if wish.Kind == Print && (strings.Contains(wish.Text, "<b>") || !strings.Contains(wish.Text, "Homework &lt;b&gt;&amp;amp; beats")) {
			t.Errorf("printed: %s", wish.Text)
		}
	}
	w.press("close sheet")
	w.press("keep")
	if len(w.marks.book.Entries()) != 7 {
		t.Error("removed though kept")
	}
	w.press("close sheet")
	w.press("remove it")
	if len(w.marks.book.Entries()) != 0 {
		t.Error("not removed")
	}
}

// A sheet that is handed out is remembered: its slips find it though it was changed.
func TestSlipsFindTheSheetThatWasHandedOut(t *testing.T) {
	w := newWriter(t)
	w.press("teacher")
	s := *homework()
	w.newSheet(s)
	w.pass()
	w.show(writePage)
	w.pass()
	w.press("give")
	handed, err := sheet.ReadFragment(w.giveLink())
	if err != nil {
		t.Fatal(err)
	}
	w.Written()
	w.Pasted("#" + slipOf(handed, "Wren", 0.7, 29000000).Fragment())
	w.news("The slip of Wren is taken.")
	w.Pasted("#" + slipOf(handed.Only(1), "Robin", 0.7, 29000000).Fragment())
	w.news("The slip of Robin is taken.")
}

// Written changes the sheet that is written.
func (w *writer) Written() {
	w.Game.written().Change("", func(s *sheet.Sheet) { s.Title = "another" })
	w.changed()
}

// A slip that waited and does not fit its sheet is kept aside, and that is said.
func TestASlipThatDoesNotFitItsSheetIsDamaged(t *testing.T) {
	w := keeper(t)
	w.kept.Given = append(w.kept.Given, given{Link: homework().Fragment()})
	w.unpack()
	unfit := slipOf(homework(), "Finch", 0.5, 29000000)
	unfit.Work[0].ID = "no-such-exercise"
	w.Pasted("#" + unfit.Fragment() + "\n" + classOf30()[0])
	w.news("Slips read: 2. New: 1. Damaged and kept aside: 1.")
	w.press("leaf 5")
	if body := w.Scene().Body; !strings.Contains(body, slip.ErrDamaged.Error()) {
		t.Errorf("aside: %q", body)
	}
}

// Nothing that is pressed in any order breaks the mark book.
func TestRandomWalkThroughTheMarkBook(t *testing.T) {
	t.Parallel()
	w := keeper(t)
	random := rand.New(rand.NewPCG(7, 7))
	links := classOf30()
	sizes := screens
	for i := range 1200 {
		if w.page != bookPage {
			w.show(bookPage)
			w.over = noOverlay
			w.pass()
		}
		switch random.IntN(12) {
		case 0:
			w.Pasted(links[random.IntN(len(links))])
		case 1:
			w.Pasted(damaged(links[random.IntN(len(links))]))
		case 2:
			w.Scanned(links[random.IntN(len(links))])
		case 3:
			w.Dropped([]File{{Name: "sheet", Data: homework().JSON()}})
		case 4:
			s := sizes[random.IntN(len(sizes))]
			w.w, w.h = s.w, s.h
		case 5:
			w.act(ui.Action{Widget: "find", Typed: true, Text: fmt.Sprint(random.IntN(30))})
		case 6:
			w.act(ui.Action{Widget: "find", Typed: true})
		case 7:
			for _, id := range []string{"learner 99", "aside 99", "sort 77", "sort -3", "columns 99", "columns -1", "leaf 99", "remove it", "remove slip"} {
				if random.IntN(5) == 0 {
					w.act(ui.Action{Widget: id})
				}
			}
		default:
			if ws := w.scene.Widgets; len(ws) > 0 {
				x := ws[random.IntN(len(ws))]
				if x.ID != "language" && !x.Disabled {
					w.pass(ui.Event{Kind: ui.Press, Widget: x.ID})
				}
			}
		}
		w.pass()
		w.Wishes()
		if i%400 == 399 {
			again := New(sheet.Course(), nil, roughly)
			if !again.Unfile(w.File()) || len(again.openBook().Entries()) != len(w.openBook().Entries()) {
				t.Fatalf("step %d: what is kept is not what there is", i)
			}
		}
	}
}

// Every page of the mark book is German where that is spoken, and comes to rest.
func TestTheMarkBookIsGermanAndRests(t *testing.T) {
	english := englishOnly(t)
	g := New(sheet.Course(), nil, roughly)
	g.gauge = unheard
	g.Speak([]string{"de"})
	g.kept.Hinted = true
	now := time.Duration(0)
	bookPages(g, func(name string) {
		t.Helper()
		g.dirty = true
		in := Input{W: 1180, H: 820, Heard: Heard{Item: -1}, Random: 5, Address: g.in.Address}
		for range 3 {
			now += time.Second
			in.Now = now
			g.Update(in)
		}
		drawn := " " + everyWord(g.Scene()) + " "
		for _, sentence := range english {
			if strings.Contains(drawn, " "+sentence+" ") {
				t.Errorf("%s: %q is English", name, sentence)
			}
		}
		if busy := g.marks.book.Left() > 0 && g.page == bookPage; busy == g.Idle() {
			t.Errorf("%s: idle is %v with %d sounds to mark", name, g.Idle(), g.marks.book.Left())
		} else if n := testing.AllocsPerRun(5, func() { g.Update(in) }); n != 0 && !busy {
			t.Errorf("%s: an idle tick makes %v pieces of garbage", name, n)
		}
	})
}
