package book

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"

	"partialcredit/game/practice"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
	"partialcredit/game/words"
)

// made is a table of first marks, NaN where nothing was answered; best marks are 5 more.
func made(marks [][]float64) *Table {
	t := &Table{Sheet: &sheet.Sheet{Title: "made"}}
	for i := range marks[0] {
		t.Items = append(t.Items, Item{Exercise: &sheet.Exercise{ID: fmt.Sprint(i), Title: fmt.Sprintf("Exercise %d", i+1)}, Chance: 20})
	}
	for i, row := range marks {
		r := Row{Entry: &Entry{Slip: &slip.Slip{Name: fmt.Sprintf("L%d", i)}}}
		for _, v := range row {
			c := Cell{Marked: !math.IsNaN(v), Outcome: slip.Outcome{First: v, Best: v + 5}}
			if c.Marked {
				c.Work = &slip.Work{Tries: 1}
				r.Done++
			}
			r.Cells = append(r.Cells, c)
		}
		t.Rows = append(t.Rows, r)
	}
	for i := range t.Items {
		t.judge(i)
	}
	return t
}

// The slow way: the mean of the others by hand, the correlation by gonum.
func TestHowWellAnExerciseSeparates(t *testing.T) {
	nan := math.NaN()
	marks := [][]float64{{90, 80, 96, 10}, {70, 75, 97, 40}, {50, 40, 99, 60}, {30, 45, 98, 20}, {10, nan, 100, 35}, {20, 10, 95, nan}}
	table := made(marks)
	for i, item := range table.Items {
		var own, others []float64
		for _, row := range marks {
			sum, n := 0.0, 0.0
			for j, v := range row {
				if j != i && !math.IsNaN(v) {
					sum, n = sum+v, n+1
				}
			}
			if !math.IsNaN(row[i]) {
				own, others = append(own, row[i]), append(others, sum/n)
			}
		}
		if want := stat.Correlation(own, others, nil); !near(item.Apart, want, 1e-12) {
			t.Errorf("exercise %d separates by %v, want %v", i, item.Apart, want)
		}
		if !near(item.Mean, stat.Mean(own, nil), 1e-12) || item.Done != len(own) || !near(item.Best, item.Mean+5, 1e-12) {
			t.Errorf("exercise %d: %+v", i, item)
		}
	}
	if i := table.Items; i[0].Hard || i[0].Easy || !i[2].Easy || i[2].Hard || i[3].Easy {
		t.Error("an exercise is wrongly called too hard or too easy")
	}
	few := made(marks[:4])
	if !math.IsNaN(few.Items[0].Apart) || few.Items[2].Easy {
		t.Error("four learners are enough to judge an exercise")
	}
	hard := made([][]float64{{29, 35, 50}, {28, 36, 40}, {31, 33, 60}, {30, 34, 50}, {29, 36, 45}})
	hard.Items[1].Chance = 40
	hard.judge(1)
	if i := hard.Items; !i[0].Hard || !i[1].Hard || i[2].Hard {
		t.Error("an exercise below 30 marks or below guessing is not called too hard, or another is")
	}
}

func TestTableOfAClass(t *testing.T) {
	sh := testSheet(t, false)
	b := &Book{}
	b.Open(sh)
	names := []string{"Kite", "Owl", "Fox", "Wren", "Newt", "Émile"}
	for i, name := range names {
		s := testSlip(sh, name, int64(100+i), 0.25+0.03*float64(i), 12-i)
		for _, id := range []string{"shapes-again", "same-looks", "limit-duty"} {
			if i != 5 {
				s.Work = append(s.Work, slip.Work{ID: id, Tries: 1, First: answers(slip.Exercise(sh, id), uint64(i), 10-i)})
			}
		}
		b.Add(s.Fragment(), "")
	}
	b.MarkAll(2, nil)
	table := b.Table(sh.Fingerprint())
	if len(table.Items) != 5 || len(table.Rows) != 6 || table.Rows[5].Done != 2 || table.Rows[0].Done != 5 || table.Rows[0].Seconds != 150 || table.Rows[0].Replays != 16 {
		t.Fatalf("%d items, rows %+v", len(table.Items), table.Rows)
	}
	groups := table.Groups()
	if len(groups) != 2 || len(groups[0].Items) != 2 || groups[0].Comparison || !groups[1].Comparison {
		t.Fatalf("groups: %+v", groups)
	}
	// 16 questions of six learners who were right 12, 11, … 7 times, and of five who were right 10, 9, … 6 times.
	if right, all := groups[0].Table.Right(); right != 12+11+10+9+8+7+10+9+8+7+6 || all != 16*6+16*5 {
		t.Errorf("%d of %d were right", right, all)
	}
	confused := table.Confused()
	if len(confused) == 0 {
		t.Fatal("nothing is confused")
	}
	for i, c := range confused {
		if low, high := practice.Wilson(c.Times, c.Played); c.Low != low || c.High != high || c.Share() < low || c.Share() > high || i > 0 && low > confused[i-1].Low {
			t.Errorf("%+v", c)
		}
	}
	limit := table.Items[3]
	if limit.Exercise.Kind != sheet.Limit || !math.IsNaN(limit.Mean) || limit.Done != 5 || limit.Found != 5 || !(limit.Limit > 0) {
		t.Errorf("the limit: %+v", limit)
	}
	var said []string
	for _, f := range table.Findings() {
		said = append(said, words.English.In(f.Text))
		if german := words.German().In(f.Text); german == said[len(said)-1] || strings.Contains(german, "%!") || strings.Contains(said[len(said)-1], "%!") {
			t.Errorf("in German: %q", german)
		}
	}
	text := strings.Join(said, "\n")
	for _, want := range []string{"Learners: 6. Of them, answered all of the sheet: 5.", "Taken for each other", "called the same", "separates the class best", "5 of 5 found a limit"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said in:\n%s", want, text)
		}
	}
}

func TestViews(t *testing.T) {
	table := made([][]float64{{50}, {90}, {math.NaN()}, {70}})
	for i, r := range []*Row{&table.Rows[0], &table.Rows[1], &table.Rows[2], &table.Rows[3]} {
		r.Entry.Slip.Name = []string{"wren", "Fox", "Kite", "ox"}[i]
		r.Seconds, r.Best, r.Entry.Slip.Minute = 100-i, r.Cells[0].Best, int64(i%2)
	}
	for _, c := range []struct {
		view View
		want string
	}{
		{View{}, "Fox Kite ox wren"},
		{View{Down: true}, "wren ox Kite Fox"},
		{View{Find: " OX"}, "Fox ox"},
		{View{By: ByMarks}, "wren ox Fox Kite"},
		{View{By: ByMarks, Down: true}, "Fox ox wren Kite"},
		{View{By: ByOneItem, Down: true}, "Fox ox wren Kite"},
		{View{By: ByTime}, "ox Kite Fox wren"},
		{View{By: ByMinute, Down: true}, "Fox ox Kite wren"},
	} {
		var got []string
		for _, r := range table.View(c.view) {
			got = append(got, r.Entry.Slip.Name)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%+v: %v, want %s", c.view, got, c.want)
		}
	}
}
