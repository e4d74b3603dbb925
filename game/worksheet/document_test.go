package worksheet

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"partialcredit/game/scan"
	"partialcredit/game/sheet"
	"partialcredit/game/words"
)

const address = "https://example.org/credit/"

// nodes are the elements below n of which all of want are true.
func nodes(n *html.Node, want func(*html.Node) bool) (found []*html.Node) {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		if c.Type == html.ElementNode && want(c) {
			found = append(found, c)
		}
		found = append(found, nodes(c, want)...)
	}
	return found
}

func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func tag(name string) func(*html.Node) bool {
	return func(n *html.Node) bool { return n.Data == name }
}

func class(name string) func(*html.Node) bool {
	return func(n *html.Node) bool { return strings.Contains(" "+attribute(n, "class")+" ", " "+name+" ") }
}

// text is all that is read of n, but for what pictures say of themselves.
func text(n *html.Node) string {
	var b strings.Builder
	var read func(*html.Node)
	read = func(n *html.Node) {
		if n.Type == html.TextNode {
			b.WriteString(n.Data)
		}
		if n.Type == html.ElementNode && (n.Data == "style" || n.Data == "svg") {
			return
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			read(c)
		}
	}
	read(n)
	return b.String()
}

// parsed is a document as HTML (golang.org/x/net/html, after the WHATWG's algorithm), which must be
// plain, and well-formed as XML (encoding/xml).
func parsed(t *testing.T, document string) *html.Node {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(document)); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("as XML: %v", err)
		}
	}
	root, err := html.Parse(strings.NewReader(document))
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range nodes(root, func(*html.Node) bool { return true }) {
		for _, a := range n.Attr {
			if a.Key == "style" || strings.HasPrefix(a.Key, "on") {
				t.Errorf("<%s> has the attribute %s", n.Data, a.Key)
			}
		}
		if n.Data == "script" || n.Data == "link" || n.Data == "img" {
			t.Errorf("there is an element <%s>", n.Data)
		}
		if n.Data == "svg" && (attribute(n, "role") != "img" || len(nodes(n, tag("title"))) != 1) {
			t.Error("a picture has no title")
		}
	}
	if len(nodes(root, tag("style"))) != 1 || len(nodes(root, tag("title"))) < 1 || attribute(nodes(root, tag("html"))[0], "lang") == "" {
		t.Error("there is no style, no title or no language")
	}
	return root
}

// every is a sheet with every kind of exercise, and text that HTML means something by.
const awkward = `A <b>"bold"</b> & 'odd' 🎹 question </style> &amp;`

func every(t *testing.T) *sheet.Sheet {
	t.Helper()
	s := &sheet.Sheet{Version: 1, Title: awkward, Strictness: sheet.Beginner}
	kinds := map[sheet.Kind]int{}
	for _, from := range sheet.Course() {
		for _, e := range from.Exercises {
			if kinds[e.Kind]++; kinds[e.Kind] == 1 || e.Kind == sheet.Match && kinds[e.Kind] == 4 {
				s.Exercises = append(s.Exercises, e)
			}
		}
	}
	if len(kinds) != 5 {
		t.Fatalf("the course has %d kinds of exercises", len(kinds))
	}
	return s
}

func TestTheWorksheetAsksAndDoesNotTell(t *testing.T) {
	s := every(t)
	root := parsed(t, Print(s, Options{Address: address}))
	sections := nodes(root, tag("section"))
	if len(sections) != len(s.Exercises) || len(nodes(root, tag("h2"))) != len(s.Exercises)+1 { // and one over the codes
		t.Fatalf("%d sections, %d headings, %d exercises", len(sections), len(nodes(root, tag("h2"))), len(s.Exercises))
	}
	if got := text(nodes(root, tag("h1"))[0]); got != awkward {
		t.Errorf("the title reads %q", got)
	}
	for i, e := range s.Exercises {
		all, read := sections[i], text(sections[i])
		pictures := len(nodes(all, tag("svg")))
		if !strings.Contains(read, e.Title) || !strings.Contains(read, e.Task) {
			t.Errorf("%s: the title or the task is missing", e.ID)
		}
		if strings.Contains(read, e.Teach) {
			t.Errorf("%s: the teaching sentence tells too much", e.ID)
		}
		switch e.Kind {
		case sheet.Match:
			lines := nodes(all, class("control"))
			if len(lines) != len(e.Controls) || pictures != 2 {
				t.Fatalf("%s: %d lines for %d controls, %d pictures", e.ID, len(lines), len(e.Controls), pictures)
			}
			for j, c := range e.Controls {
				line := text(lines[j])
				if len(nodes(lines[j], class("blank"))) != 1 {
					t.Errorf("%s: %q has no blank", e.ID, line)
				}
				f := c.Field()
				if v := f.Format(c.Get(&e.Target)); len(f.Choices) == 0 && strings.Contains(line, v) {
					t.Errorf("%s: %q tells %s", e.ID, line, v)
				}
				number, _, _ := strings.Cut(f.Format(c.Max), " ")
				number = strings.TrimSuffix(number, ".0")
				if !strings.Contains(line, number) {
					t.Errorf("%s: %q does not say the range up to %s", e.ID, line, number)
				}
			}
		case sheet.Name:
			for _, a := range e.Answers {
				if !strings.Contains(text(nodes(all, class("names"))[0]), a.Name) {
					t.Errorf("%s: %s is not offered", e.ID, a.Name)
				}
			}
			if blanks := nodes(all, class("blank")); len(blanks) != len(e.Answers)+1 {
				t.Errorf("%s: %d blanks for %d names and the count", e.ID, len(blanks), len(e.Answers))
			}
			for _, row := range nodes(all, class("row")) {
				for _, a := range e.Answers {
					if strings.Contains(inner(row), a.Name) {
						t.Errorf("%s: a picture is called %s", e.ID, a.Name)
					}
				}
			}
			for _, a := range e.Answers {
				if strings.Contains(read, a.Cue) {
					t.Errorf("%s: tells %q", e.ID, a.Cue)
				}
			}
		case sheet.Same:
			if boxes := nodes(all, class("box")); len(boxes) != 2*len(e.Pairs) || pictures != 2*len(e.Pairs) {
				t.Errorf("%s: %d boxes and %d pictures for %d pairs", e.ID, len(boxes), pictures, len(e.Pairs))
			}
			for _, p := range e.Pairs {
				if strings.Contains(inner(all), p.Why) || strings.Contains(inner(all), p.Name) {
					t.Errorf("%s: tells %q", e.ID, p.Why)
				}
			}
			if strings.Contains(read, "×") {
				t.Errorf("%s: a box is ticked", e.ID)
			}
		case sheet.Limit:
			if len(nodes(all, class("blank"))) != 1 || pictures != 2 || strings.Contains(read, "Published") {
				t.Errorf("%s: %q", e.ID, read)
			}
		}
	}
}

// inner is all text in n, with what pictures say of themselves.
func inner(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data + " "
	}
	all := ""
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		all += inner(c)
	}
	return all
}

func TestTheKeyTells(t *testing.T) {
	s := every(t)
	root := parsed(t, Print(s, Options{Key: true, Address: address}))
	for i, all := range nodes(root, tag("section")) {
		e, read := s.Exercises[i], text(all)
		if !strings.Contains(read, e.Teach) || len(nodes(all, class("blank"))) > 0 {
			t.Errorf("%s: the teaching sentence is missing, or there is a blank", e.ID)
		}
		for j := range e.Controls {
			c := &e.Controls[j]
			if e.Kind == sheet.Match && !strings.Contains(text(nodes(all, class("control"))[j]), c.Field().Format(c.Get(&e.Target))) {
				t.Errorf("%s: the target is missing: %q", e.ID, read)
			}
		}
		told := map[string]bool{}
		for _, row := range nodes(all, class("row")) {
			for _, a := range e.Answers {
				if strings.Contains(text(row), a.Name) && strings.Contains(text(row), a.Cue) {
					told[a.Name] = true
				}
			}
			for _, p := range e.Pairs {
				if strings.Contains(text(row), p.Name+": "+p.Why) {
					told[p.Name] = true
					if strings.Contains(text(row), "×same") != p.Same || strings.Contains(text(row), "×different") == p.Same {
						t.Errorf("%s: %s is ticked wrongly: %q", e.ID, p.Name, text(row))
					}
				}
			}
		}
		if len(told) != len(e.Answers)+len(e.Pairs) {
			t.Errorf("%s: only %v are told", e.ID, told)
		}
		if e.Kind == sheet.Limit && e.Quantity.Published != nil && !strings.Contains(read, e.Quantity.Published.Source) {
			t.Errorf("%s: the source is missing", e.ID)
		}
	}
}

// The letters of the key are those of the worksheet: under each stands the same picture.
func TestWorksheetAndKeyHaveTheSameLetters(t *testing.T) {
	s := every(t)
	sheets := parsed(t, Print(s, Options{}))
	keys := parsed(t, Print(s, Options{Key: true}))
	a, b := nodes(sheets, tag("section")), nodes(keys, tag("section"))
	for i, e := range s.Exercises {
		if e.Kind != sheet.Name && e.Kind != sheet.Same {
			continue
		}
		rows, others := nodes(a[i], class("row")), nodes(b[i], class("row"))
		for j := range rows {
			if traceOf(rows[j]) != traceOf(others[j]) {
				t.Errorf("%s: picture %d is another in the key", e.ID, j+1)
			}
		}
	}
}

func traceOf(row *html.Node) (all string) {
	for _, path := range nodes(row, tag("path")) {
		if attribute(path, "stroke") != "" {
			all += attribute(path, "d")
		}
	}
	return all
}

// What is printed as a code is read by gozxing, and leads back to the sheet.
func TestTheCodeLeadsToTheSheet(t *testing.T) {
	for _, at := range []int{2, 5} {
		s := sheet.Course()[at].Only(1)
		root := parsed(t, Print(s, Options{Address: address}))
		codes := nodes(root, class("code"))
		if len(codes) != 1 {
			t.Fatalf("%d codes", len(codes))
		}
		read := scanned(t, codes[0])
		if got, err := sheet.ReadFragment(read); err != nil || got.Fingerprint() != s.Fingerprint() || !strings.HasPrefix(read, address+"#") {
			t.Errorf("the code leads to %q: %v", read, err)
		}
		if href := attribute(nodes(root, tag("a"))[0], "href"); href != read {
			t.Errorf("the link is %q, the code %q", href, read)
		}
	}
}

// Where a sheet is too much for one code, each exercise has its own.
func TestEachExerciseHasACode(t *testing.T) {
	s := every(t)
	root := parsed(t, Print(s, Options{Address: address}))
	codes := nodes(root, class("code"))
	if len(codes) != len(s.Exercises) {
		t.Fatalf("%d codes for %d exercises", len(codes), len(s.Exercises))
	}
	for i, c := range codes {
		read := scanned(t, c)
		if got, err := sheet.ReadFragment(read); err != nil || got.Fingerprint() != s.Only(i).Fingerprint() {
			t.Errorf("code %d leads to %.40q: %v", i+1, read, err)
		}
	}
	if n := len(nodes(parsed(t, Print(s, Options{})), class("code"))); n > 0 {
		t.Errorf("%d codes lead nowhere", n)
	}
}

// scanned is what the code in n holds.
func scanned(t *testing.T, n *html.Node) string {
	t.Helper()
	svg := nodes(n, tag("svg"))
	if len(svg) != 1 {
		t.Fatal("there is no code")
	}
	var x, y, side int
	if _, err := fmt.Sscanf(attribute(svg[0], "viewBox"), "%d %d %d", &x, &y, &side); err != nil {
		t.Fatal(err)
	}
	read, found := scan.Read(filled(t, attribute(nodes(svg[0], tag("path"))[0], "d"), side))
	if !found {
		t.Fatal("the code is not read")
	}
	return read
}

// filled paints the path of a code, which consists of runs of modules.
func filled(t *testing.T, path string, side int) scan.Picture {
	const module = 4
	p := scan.Picture{W: side * module, H: side * module, Grey: make([]byte, side*side*module*module)}
	for i := range p.Grey {
		p.Grey[i] = 255
	}
	for piece := range strings.SplitSeq(strings.TrimSuffix(path, "z"), "z") {
		var x, y, n, back int
		if _, err := fmt.Sscanf(piece, "M%d %dh%dv1h-%d", &x, &y, &n, &back); err != nil {
			t.Fatalf("%q: %v", piece, err)
		}
		for i := range module * module * n {
			p.Grey[(y*module+i/(module*n))*p.W+x*module+i%(module*n)] = 0
		}
	}
	return p
}

func TestGerman(t *testing.T) {
	s := every(t)
	root := parsed(t, Print(s, Options{Address: address, Words: words.German()}))
	read := text(root)
	for _, english := range []string{"Your name", "Date:", "Hear it:", "Marks:", "different", " to "} {
		if strings.Contains(read, english) {
			t.Errorf("%q is English: %.300s", english, read)
		}
	}
	if attribute(nodes(root, tag("html"))[0], "lang") != "de" {
		t.Error("the language is not German")
	}
}

// A sheet that varies has a worksheet for every name and a table of all targets in its key, which are
// those that the sheet draws.
func TestNames(t *testing.T) {
	all := sheet.Matches()
	s := *all.Only(0)
	s.Vary = true
	e := &s.Exercises[0]
	f := e.Controls[0].Field()
	names := []string{"wren", "Red & Fox"}
	papers := nodes(parsed(t, Print(&s, Options{Address: address, Names: names})), class("sheet"))
	if len(papers) != 2 {
		t.Fatalf("%d papers", len(papers))
	}
	for i, p := range papers {
		if got := text(nodes(p, tag("b"))[0]); got != names[i] {
			t.Errorf("the paper of %s is %s's", names[i], got)
		}
	}
	if traceOf(papers[0]) == traceOf(papers[1]) {
		t.Error("both have the same pictures")
	}
	root := parsed(t, Print(&s, Options{Key: true, Names: names}))
	rows := nodes(nodes(root, tag("tbody"))[0], tag("tr"))
	for i, row := range rows {
		drawn := &s.For(names[i]).Exercises[0]
		want := f.Format(drawn.Controls[0].Get(&drawn.Target))
		if got := text(row); !strings.Contains(got, names[i]) || !strings.Contains(got, want) {
			t.Errorf("the key has %q, want %s", got, want)
		}
	}
	if len(rows) != 2 {
		t.Errorf("%d rows", len(rows))
	}
	if said := "those in the app are others"; !strings.Contains(text(parsed(t, Print(&s, Options{}))), said) {
		t.Errorf("it does not say that %s", said)
	}
}
