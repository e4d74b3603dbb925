package worksheet

import (
	"partialcredit/game/sheet"
)

// style holds for A4 and for Letter: what is printed is 180 mm wide at most, and no height is fixed.
// No text is smaller than 10 points. Ink goes into lines only.
const style = `
@page { margin: 14mm 15mm; }
* { box-sizing: border-box; }
html { background: #fff; color: #000; }
body { margin: 0 auto; max-width: 180mm; font: 11pt/1.35 sans-serif; }
h1 { font-size: 17pt; line-height: 1.2; margin: 0 0 3mm; }
h2 { font-size: 13pt; line-height: 1.25; margin: 0 0 1mm; }
p { margin: 0 0 1.5mm; }
h1, h2, p, li { unicode-bidi: plaintext; }
ul { margin: 0 0 1.5mm; padding: 0 0 0 6mm; }
svg { display: block; max-width: 100%; height: auto; }
a { color: #000; text-decoration: none; overflow-wrap: anywhere; }
.sheet + .sheet { break-before: page; }
header { display: flex; gap: 6mm; justify-content: space-between; border-bottom: .5mm solid #000; padding-bottom: 3mm; margin-bottom: 4mm; }
.code { flex: none; text-align: center; font-size: 10pt; }
.small { font-size: 10pt; line-height: 1.25; }
.lines { display: flex; flex-wrap: wrap; gap: 2mm 6mm; }
.line { display: inline-block; white-space: nowrap; }
.blank { display: inline-block; width: 28mm; border-bottom: .3mm solid #000; margin: 0 1.5mm; }
.name .blank { width: 52mm; }
.answer { margin-top: 2.5mm; line-height: 1.7; }
.exercise { break-inside: avoid; border-bottom: .2mm solid #999; padding-bottom: 3mm; margin-bottom: 4mm; }
.long { break-inside: auto; }
.row { display: flex; gap: 2mm; align-items: center; break-inside: avoid; margin-bottom: 1mm; }
.row svg { flex: none; }
.letter { flex: none; width: 5mm; font-weight: bold; font-size: 13pt; }
.beside { flex: 1; min-width: 0; overflow-wrap: break-word; hyphens: auto; }
.beside p { margin: 0 0 .5mm; }
.beside .blank { width: 100%; margin: 6mm 0 0; }
.names { font-weight: bold; }
.box { display: inline-block; width: 4mm; height: 4mm; line-height: 3.6mm; border: .3mm solid #000; text-align: center; vertical-align: -.5mm; margin: 0 1.5mm 0 0; font-weight: bold; }
.key { font-weight: bold; }
.codes { break-before: page; }
.grid { display: flex; flex-wrap: wrap; gap: 6mm; }
.code svg { margin: 0 auto; }
.grid .code { width: 54mm; break-inside: avoid; }
.teach { border-left: .8mm solid #000; padding-left: 3mm; }
table { border-collapse: collapse; margin-bottom: 1.5mm; }
tr { break-inside: avoid; }
th, td { border: .2mm solid #000; padding: .5mm 2.5mm; text-align: left; font-weight: normal; }
thead th { font-weight: bold; }
@media screen { body { padding: 10mm 4mm; } }
`

// document lays all of the paper out.
func (m *Maker) document() {
	title := m.own(m.sheet.Title)
	if m.o.Key {
		title = m.t("Answer key: %s", verbatim(title))
	}
	m.put("<!DOCTYPE html>\n<html lang=\"", m.words.Tag, "\">\n<head>\n<meta charset=\"utf-8\"/>\n", element("title", "", title), "<style>", style, "</style>\n</head>\n<body>\n")
	switch {
	case m.o.Key || len(m.o.Names) == 0:
		m.one(title, m.sheet, "")
	default:
		for _, name := range m.o.Names {
			m.one(title, m.draw.For(name), name)
		}
	}
	m.put("</body>\n</html>\n")
}

// verbatim is a text that is put into another as it is, and not put into the language as quantities are.
type verbatim string

// one lays out the sheet for one learner, or for nobody in particular.
func (m *Maker) one(title string, s *sheet.Sheet, name string) {
	m.put(`<div class="sheet">`, "\n<header>\n<div>\n", element("h1", "", title))
	if !m.o.Key {
		m.put(`<p class="lines"><span class="line name">`, escape(m.t("Your name")), ":")
		if name != "" {
			m.put(" <b>", escape(name), "</b>")
		} else {
			m.put(blank)
		}
		m.put(`</span> <span class="line">`, escape(m.t("Date:")), blank, "</span></p>\n")
	}
	if m.sheet.Strictness != sheet.Expert && m.o.Key {
		m.put(element("p", "", m.t("Marked for %s.", m.sheet.Strictness.Whom())))
	}
	if m.sheet.Vary {
		m.put(element("p", "small", m.varied(name)))
	}
	if m.linked == "" {
		m.linked = m.link()
	}
	m.put(m.linked, "</header>\n")
	for i := range s.Exercises {
		m.exercise(i, &s.Exercises[i], name)
	}
	if m.apart {
		m.codes()
	}
	m.put("</div>\n")
}

const blank = `<span class="blank"></span>`

// varied says whose targets are on a paper of a sheet that draws them.
func (m *Maker) varied(name string) string {
	switch {
	case name != "":
		return m.t("This sheet draws targets for each name. In the app, write the same name as here.")
	case m.o.Key && len(m.o.Names) > 0:
		return m.t("This sheet draws targets for each name.")
	case m.o.Key:
		return m.t("This sheet draws targets for each name. The answers here are those that stand in the sheet; the program desk prints those of a class: desk paper SHEET -key -name NAME.")
	}
	return m.t("This sheet draws targets for each name, so those in the app are others than these.")
}
