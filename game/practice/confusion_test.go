package practice

import (
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// table makes a table from rows of counts, labelled a, b, c …
func table(rows ...[]int) *Confusion {
	var c Confusion
	for i, row := range rows {
		for j, n := range row {
			if n > 0 {
				c.add(string(rune('a'+i)), string(rune('a'+j)), n)
			}
		}
	}
	return &c
}

func TestCounts(t *testing.T) {
	var c Confusion
	if right, all := c.Right(); right != 0 || all != 0 || len(c.Labels()) != 0 || len(c.Pairs()) != 0 {
		t.Errorf("the empty table has %d of %d right, labels %v, pairs %v", right, all, c.Labels(), c.Pairs())
	}
	for _, answer := range strings.Fields("sine:sine sine:triangle triangle:sine saw:saw saw:saw saw:saw saw:pulse") {
		played, answered, _ := strings.Cut(answer, ":")
		c.Add(played, answered)
	}
	if right, all := c.Right(); right != 4 || all != 7 {
		t.Errorf("%d of %d right, want 4 of 7", right, all)
	}
	if n := c.Count("saw", "saw"); n != 3 {
		t.Errorf("saw for saw %d times, want 3", n)
	}
	if n := c.Count("pulse", "saw"); n != 0 {
		t.Errorf("saw for pulse %d times, want 0", n)
	}
	if want := []string{"pulse", "saw", "sine", "triangle"}; !slices.Equal(c.Labels(), want) {
		t.Errorf("labels %v, want %v", c.Labels(), want)
	}
	want := []Pair{{"sine", "triangle", 2, 3}, {"pulse", "saw", 1, 4}}
	if got := c.Pairs(); !slices.Equal(got, want) {
		t.Errorf("pairs %v, want %v", got, want)
	}
	if p, q := c.Pair("triangle", "sine"), c.Pair("sine", "triangle"); p != q || p.Share() != 2.0/3 {
		t.Errorf("pair %v one way, %v the other; want a share of 2/3", p, q)
	}
	if s := c.Pair("x", "y").Share(); s != 0 {
		t.Errorf("share of a pair never played: %v", s)
	}
}

func TestPairsGoByTimesThenByShare(t *testing.T) {
	got := table([]int{18, 2}, []int{0, 20}, []int{0, 0, 3, 2}, []int{0, 0, 0, 5}, []int{0, 0, 0, 0, 0, 1}).Pairs()
	want := []Pair{{"c", "d", 2, 10}, {"a", "b", 2, 40}, {"e", "f", 1, 1}}
	if !slices.Equal(got, want) {
		t.Errorf("pairs %v, want %v", got, want)
	}
}

func TestMerge(t *testing.T) {
	c := table([]int{1, 2}, []int{0, 3})
	c.Merge(table([]int{4, 0, 5}, nil, []int{0, 6, 7}))
	if want := table([]int{5, 2, 5}, []int{0, 3}, []int{0, 6, 7}); !reflect.DeepEqual(c, want) {
		t.Errorf("\n%vwant\n%v", c, want)
	}
	var empty Confusion
	empty.Merge(table([]int{1}))
	if want := table([]int{1}); !reflect.DeepEqual(&empty, want) {
		t.Errorf("into an empty table:\n%vwant\n%v", &empty, want)
	}
	other := table([]int{1})
	empty.Merge(other)
	if other.Count("a", "a") != 1 {
		t.Error("merging changed the table that was merged")
	}
}

func TestConfusionAsText(t *testing.T) {
	var c Confusion
	c.add("sine", "sine", 8)
	c.add("sine", "triangle", 12)
	c.add("triangle", "triangle", 9)
	want := "" +
		"            sine  triangle\n" +
		"      sine     8        12\n" +
		"  triangle     0         9\n"
	if got := c.String(); got != want {
		t.Errorf("\n%swant\n%s", got, want)
	}
}

func TestConfusionAsJSON(t *testing.T) {
	type kept struct {
		Table Confusion `json:"table"`
	}
	k := kept{*table([]int{8, 2}, []int{0, 3})}
	data, err := json.Marshal(&k)
	if want := `{"table":{"a":{"a":8,"b":2},"b":{"b":3}}}`; err != nil || string(data) != want {
		t.Errorf("%s, %v; want %s", data, err, want)
	}
	back := kept{*table([]int{99})}
	if err := json.Unmarshal(data, &back); err != nil || !reflect.DeepEqual(k, back) {
		t.Errorf("%v comes back as %v, %v", k.Table, back.Table, err)
	}
	if data, err := json.Marshal(&Confusion{}); err != nil || string(data) != "{}" {
		t.Errorf("the empty table is %s, %v", data, err)
	}
	for _, bad := range []string{`{"a":{"b":-1}}`, `{"a":{"b":1.5}}`, `{"a":{"b":9e18}}`, `{"a":{"b":2000000000}}`, `[1]`, `{"a":3}`} {
		c := table([]int{1})
		if err := json.Unmarshal([]byte(bad), c); err == nil {
			t.Errorf("%s is taken", bad)
		}
		if !reflect.DeepEqual(c, table([]int{1})) {
			t.Errorf("%s is refused, but the table is now\n%v", bad, c)
		}
	}
}
