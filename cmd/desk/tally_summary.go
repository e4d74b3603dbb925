package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"text/tabwriter"

	"partialcredit/game/book"
	"partialcredit/game/words"
)

// summary says what the class did with each sheet, and what became of the files.
func (t *tally) summary(w io.Writer) {
	for _, sh := range t.book.Sheets() {
		table := t.book.Table(sh.Fingerprint())
		fmt.Fprintf(w, "%s\n%s\n\n", printable(sh.Title), strings.Repeat("=", len([]rune(sh.Title))))
		for _, f := range table.Findings() {
			fmt.Fprintf(w, "- %s\n", printable(words.English.In(f.Text)))
		}
		if len(table.Rows) == 0 {
			fmt.Fprintln(w)
			continue
		}
		fmt.Fprintln(w)
		items(w, table)
		for _, g := range table.Groups() {
			var titles []string
			for _, i := range g.Items {
				titles = append(titles, table.Items[i].Exercise.Title)
			}
			fmt.Fprintf(w, "\nWhat was answered to what (a row for what sounded): %s\n%s", printable(strings.Join(titles, ", ")), g.Table)
		}
		fmt.Fprintln(w)
	}
	t.report(w)
}

// items writes a line for each exercise.
func items(w io.Writer, table *book.Table) {
	tab := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	fmt.Fprintln(tab, "Exercise\tanswered\tfirst marks\tmedian\tbest\tseparates\t")
	for _, item := range table.Items {
		fmt.Fprintf(tab, "%s\t%d\t%s\t%s\t%s\t%s\t\n", printable(item.Exercise.Title), item.Done,
			decimal(item.Mean, 1), decimal(item.Median, 1), decimal(item.Best, 1), decimal(item.Apart, 2))
	}
	tab.Flush()
}

func decimal(v float64, decimals int) string {
	if math.IsNaN(v) {
		return "-"
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// report says what became of the files and the slips in them.
func (t *tally) report(w io.Writer) {
	count := map[book.Fate]int{}
	for _, r := range t.receipts {
		count[r.Fate]++
	}
	fmt.Fprintf(w, "Files: %d. Slips: %d; doubles %d, replaced by later ones %d, damaged %d, of sheets that are not here %d.\n", t.files, len(t.receipts),
		count[book.Double], count[book.Newer]+count[book.Older], count[book.Damaged], count[book.Waiting])
	waiting := map[string]int{}
	var titles []string
	for _, r := range t.receipts {
		switch r.Fate {
		case book.Damaged:
			who := ""
			if r.Name != "" {
				who = ", " + printable(r.Name)
			}
			fmt.Fprintf(w, "  %s, line %d%s: %v\n", printable(r.From), r.Line, who, r.Why)
		case book.Newer, book.Older:
			fmt.Fprintf(w, "  %s, line %d: another slip of %s, handed in %s UTC; the one of %s counts.\n", printable(r.From), r.Line,
				printable(r.Name), r.Entry.When(), latest(r).When())
		case book.Waiting:
			title := r.Entry.Slip.Title
			if title == "" {
				title = r.Entry.Slip.Sheet
			}
			if waiting[title]++; waiting[title] == 1 {
				titles = append(titles, title)
			}
		}
	}
	for _, title := range titles {
		fmt.Fprintf(w, "  Not marked: %d for the sheet “%s”, which is not among those given. Add it with -sheet.\n", waiting[title], printable(title))
	}
	for _, s := range t.skipped {
		fmt.Fprintf(w, "  Skipped: %s\n", printable(s))
	}
	for _, name := range t.empty {
		fmt.Fprintf(w, "  No slip in %s.\n", printable(name))
	}
	for i, sh := range t.found {
		if t.book.Sheet(sh.Fingerprint()) != nil {
			fmt.Fprintf(w, "  The sheet “%s” is in %s.\n", printable(sh.Title), printable(t.from[i]))
		}
	}
}

// latest is the one of two slips of a learner that counts.
func latest(r book.Receipt) *book.Entry {
	if r.Fate == book.Newer {
		return r.Entry
	}
	return r.Other
}

// printable takes out of a text what would move about on a terminal: names come from learners.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r >= 0x7F && r < 0xA0 || r == '\u2028' || r == '\u2029' || r >= '\u202A' && r <= '\u202E' || r >= '\u2066' && r <= '\u2069' {
			return -1
		}
		return r
	}, s)
}
