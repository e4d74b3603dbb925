package book

import (
	stdcsv "encoding/csv"
	"math"
	"strings"
	"testing"

	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

var names = []string{
	"Kite", `the "best"`, "a, b", "two\nlines", "line\r\nof Windows", "🦊🏽 Füchsin", "שלום", "\u202eright to left", " blanks ", "semi;colon", "tab\tin it", "'quoted'", `"`, "a\rb",
}

// Names that a spreadsheet would take for formulas, and what stands in the cell (OWASP,
// CSV Injection).
var formulas = map[string]string{
	"=1+1":                "'=1+1",
	"+49":                 "'+49",
	"-x":                  "'-x",
	"@SUM(A1)":            "'@SUM(A1)",
	"\t=1":                "'\t=1",
	"  =1":                "'  =1",
	"＝1":                  "'＝1",
	`=HYPERLINK("http:")`: `'=HYPERLINK("http:")`,
	"a=1":                 "a=1",
}

// encoding/csv reads back what was written. (It takes CR LF within quotes for LF, as its
// documentation says.)
func TestCSVIsReadBack(t *testing.T) {
	table := made([][]float64{{50.04, math.NaN()}})
	row := &table.Rows[0]
	check := func(name, want string) {
		row.Entry.Slip.Name = name
		for _, text := range []string{table.CSV([]*Row{row, row}), table.Wide([]*Row{row, row})} {
			records, err := stdcsv.NewReader(strings.NewReader(text)).ReadAll() // refuses lines of other lengths
			if err != nil {
				t.Fatalf("%q: %v", name, err)
			}
			for _, r := range records[1:] {
				if r[1] != strings.ReplaceAll(want, "\r\n", "\n") {
					t.Errorf("%q is read as %q, want %q", name, r[1], want)
				}
			}
			if n := strings.Count(text, "\n") - strings.Count(text, "\r\n") - strings.Count(strings.ReplaceAll(name, "\r\n", ""), "\n")*(len(records)-1); n != 0 {
				t.Errorf("%q: %d lines do not end with CR LF", name, n)
			}
		}
	}
	for _, name := range names {
		check(name, name)
	}
	for name, want := range formulas {
		check(name, want)
	}
	if text := table.Wide([]*Row{row}); !strings.Contains(text, ",50.0") && !strings.Contains(text, ",55.0") {
		t.Errorf("marks are not written with a decimal point: %q", text)
	}
}

func TestCSVOfALimit(t *testing.T) {
	sh := testSheet(t, false)
	s := testSlip(sh, "Kite", 29500000, 0.3, 8)
	s.Work = append(s.Work, slip.Work{ID: "limit-duty", Tries: 2, Seconds: 90, First: answers(slip.Exercise(sh, "limit-duty"), 3, 0)})
	b := &Book{}
	b.Open(sh)
	b.Add(s.Fragment(), "")
	b.MarkAll(1, nil)
	table := b.Table(sh.Fingerprint())
	records, err := stdcsv.NewReader(strings.NewReader(table.CSV(table.View(View{})))).ReadAll()
	if err != nil || len(records) != 1+len(table.Items) {
		t.Fatalf("%d records, %v", len(records), err)
	}
	columns := map[string]int{}
	for i, name := range records[0] {
		columns[name] = i
	}
	for i, want := range map[int]map[string]string{
		1: {"exercise": "duty", "kind": "match", "minutes": "1.5", "replays": "4", "handed in (UTC)": "2026-02-02 02:40", "limit": "", "target uncovered": "no"},
		3: {"exercise": "same-looks", "first marks": "", "tries": "", "minutes": ""},
		4: {"kind": "limit", "first marks": "", "unit": "points", "tries": "2"},
	} {
		for name, v := range want {
			if got := records[i][columns[name]]; got != v {
				t.Errorf("line %d, %s: %q, want %q", i, name, got, v)
			}
		}
	}
	o := table.Rows[0].Cells[3]
	x := slip.Exercise(sh, "limit-duty")
	if got, want := records[4][columns["limit"]]+" "+records[4][columns["unit"]], x.Quantity.Format(o.Limit); got != want || x.Kind != sheet.Limit {
		t.Errorf("the limit is %q, want %q", got, want)
	}
}
