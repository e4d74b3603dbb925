package worksheet

import (
	"math"
	"strconv"
	"strings"

	"partialcredit/game/code"
)

// mostShown is the longest link that is worth typing, in characters (design choice).
const mostShown = 300

// module is the least side of a module of a printed code in millimetres: what is printed is read from
// as near as one likes, so this is a question of the printer and the focus (design choice).
const module = 0.4

// link closes the left part of the heading with the link in small print and sets the code beside it.
// Where the sheet is too much for a code that a camera reads, each exercise has its own after the last
// one; but not where targets are drawn, which an exercise alone would draw anew.
func (m *Maker) link() string {
	if m.o.Address == "" {
		return "</div>\n"
	}
	link := m.o.Address + "#" + m.sheet.Fragment()
	picture := m.code(link)
	m.apart = picture == "" && len(m.sheet.Exercises) > 1 && !m.sheet.Vary && !m.o.Key
	shown, said := link, ""
	if len(shown) > mostShown {
		shown = m.o.Address
		switch {
		case m.apart:
			said = m.t("The link is too long to be typed and for one code. On the last page there is a code for each exercise.")
		case picture == "":
			said = m.t("The link is too long to be typed and for a code: open it from a file or from a message.")
		default:
			said = m.t("The link is too long to be typed: scan the code with the app or a camera.")
		}
	}
	line := element("p", "small", shown)
	if strings.HasPrefix(link, "https://") || strings.HasPrefix(link, "http://") { // nothing else is followed
		line = `<p class="small"><a href="` + escape(link) + `">` + escape(shown) + "</a></p>\n"
	}
	if said != "" {
		line += element("p", "small", said)
	}
	if picture != "" {
		picture = `<div class="code">` + element("span", "", m.t("Hear it:")) + picture + "</div>\n"
	}
	return line + "</div>\n" + picture
}

// code is the picture of a code that a camera reads; empty where there is none.
func (m *Maker) code(link string) string {
	c, err := code.Encode(link, code.Auto)
	if err != nil || !c.ForCamera() {
		return ""
	}
	side := strconv.Itoa(c.Side())
	mm := strconv.Itoa(int(math.Ceil(max(28, module*float64(c.Side()))))) + "mm"
	return `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="` + mm + `" height="` + mm + `" viewBox="0 0 ` + side + " " + side + `" shape-rendering="crispEdges"><title>` +
		escape(m.t("A code to scan holds the link.")) + `</title><path fill="#000" d="` + c.Path() + `"/></svg>`
}

// codes is a page with the code of each exercise.
func (m *Maker) codes() {
	m.put(`<div class="codes">`, "\n", element("h2", "", m.t("Hear it: a code for each exercise")), `<div class="grid">`, "\n")
	for i := range m.sheet.Exercises {
		m.put(`<div class="code">`)
		m.later(func() (string, bool) {
			picture := m.code(m.o.Address + "#" + m.sheet.Only(i).Fragment())
			if picture == "" {
				picture = element("p", "small", m.t("The link is too long to be typed and for a code: open it from a file or from a message."))
			}
			return picture, true
		})
		m.put(element("p", "small", strconv.Itoa(i+1)+". "+m.own(m.sheet.Exercises[i].Title)), "</div>\n")
	}
	m.put("</div></div>\n")
}
