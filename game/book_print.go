package game

import (
	"strings"

	"partialcredit/game/book"
)

var escapeHTML = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// htmlPage is a document that is written piece by piece; what is put in is escaped.
type htmlPage struct{ strings.Builder }

func (h *htmlPage) tag(name, text string) {
	h.WriteString("<" + name + ">" + escapeHTML.Replace(text) + "</" + name + ">\n")
}

func (h *htmlPage) row(cell string, texts ...string) {
	h.WriteString("<tr>")
	for _, s := range texts {
		h.WriteString("<" + cell + ">" + escapeHTML.Replace(s) + "</" + cell + ">")
	}
	h.WriteString("</tr>\n")
}

// bookDocument is the book of a sheet on paper: findings, the class, the confusion
// tables.
func (g *Game) bookDocument(t *book.Table, rows []*book.Row) string {
	h := &htmlPage{}
	h.WriteString("<!DOCTYPE html>\n<html lang=\"" + g.lang.Tag + "\"><head><meta charset=\"utf-8\">\n")
	h.tag("title", g.t(t.Sheet.Title))
	h.WriteString("<style>body{font-family:sans-serif;color:#000;background:#fff;margin:1.5cm}table{border-collapse:collapse;margin:0 0 1em}th,td{border:1px solid #888;padding:.15em .5em;text-align:left}h1,h2,p,th,td{unicode-bidi:plaintext}tr{break-inside:avoid}</style></head><body>\n")
	h.tag("h1", g.t(t.Sheet.Title))
	for _, f := range t.Findings() {
		h.tag("p", g.lang.In(f.Text))
	}
	h.tag("h2", g.t("The class"))
	h.WriteString("<table>\n")
	head := []string{g.t("Learner"), g.t("Mean")}
	for i := range t.Items {
		head = append(head, g.t("%d", i+1))
	}
	h.row("th", append(head, g.t("Tries"), g.t("Minutes"))...)
	for _, r := range rows {
		cells := []string{r.Entry.Slip.Name, g.rowMean(r)}
		for i := range r.Cells {
			cells = append(cells, g.cellText(&r.Cells[i], t.Items[i].Exercise))
		}
		h.row("td", append(cells, g.t("%d", r.Tries), g.lang.Value(oneDecimal(float64(r.Seconds)/60)))...)
	}
	h.WriteString("</table>\n")
	for i := range t.Items {
		h.tag("p", g.itemText(i, &t.Items[i]))
	}
	for _, group := range t.Groups() {
		h.tag("h2", g.t(t.Items[group.Items[0]].Exercise.Title))
		labels := group.Table.Labels()
		head := []string{g.t("played") + " / " + g.t("answered")}
		for _, a := range labels {
			head = append(head, g.lang.Value(a))
		}
		h.WriteString("<table>\n")
		h.row("th", head...)
		for _, a := range labels {
			cells := []string{g.lang.Value(a)}
			for _, b := range labels {
				cells = append(cells, g.t("%d", group.Table.Count(a, b)))
			}
			h.row("td", cells...)
		}
		h.WriteString("</table>\n")
		h.tag("p", g.transmitted(group.Table))
	}
	h.WriteString("</body></html>\n")
	return h.String()
}
