package synth

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestFieldsAreDocumented holds DEVELOPERS.md to the table of fields. After a
// change of the table, paste what the test prints.
func TestFieldsAreDocumented(t *testing.T) {
	data, err := os.ReadFile("../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	if want := fieldTable(); !strings.Contains(string(data), want) {
		t.Errorf("DEVELOPERS.md does not have this table:\n%s", want)
	}
}

func fieldTable() string {
	var b strings.Builder
	b.WriteString("| field | unit | range | default | what it is |\n| --- | --- | --- | --- | --- |\n")
	for _, f := range Fields() {
		span := number(f.Min) + " to " + number(f.Max)
		value := number(f.Default)
		if len(f.Choices) > 0 {
			span, value = strings.Join(f.Choices, ", "), f.Choices[int(f.Default)]
		}
		unit := string(f.Unit)
		if f.Whole && len(f.Choices) == 0 {
			unit = strings.TrimSpace(unit + " (whole)")
		}
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s | %s |\n", f.Name, unit, span, value, f.Doc)
	}
	return b.String()
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
