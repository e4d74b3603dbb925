package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"partialcredit/game/sheet"
)

func TestCheckSaysWhatItFinds(t *testing.T) {
	example := func(name string) string { return filepath.Join("..", "..", "testdata", "advice", name+".json") }
	data, err := os.ReadFile(example("told-right"))
	if err != nil {
		t.Fatal(err)
	}
	good, err := sheet.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	link := "https://example.invalid/#" + good.Fragment()
	for _, c := range []struct {
		args, in string
		code     int
		out      string // part of what is written
		problems string
	}{
		{example("told-right"), "", 0, "note     difficulty", ""},
		{link, "", 0, "note     difficulty", ""},
		{"-", link + "\n", 0, "note     difficulty", ""},
		{"-", string(data), 0, "note     difficulty", ""},
		{link[:len(link)-3], "", 1, "cannot be used", "sheets that cannot be used: 1"},
		{example("told-wrong"), "", 1, "mistake  told", "mistakes: 2"},
		{example("told-wrong") + " -lenient", "", 1, "mistake  told", "mistakes: 2"},
		{example("high"), "", 1, "warning  high", "warnings: 1"},
		{example("high") + " -lenient", "", 0, "warning  high", ""},
		{example("high") + " -format", "", 0, ".json: high", ""},
		{"nowhere.json " + example("told-right"), "", 1, "no such file", "cannot be used: 1"},
		{"-", `{"version": 1, "title": "T", "exercises": [{"id": "a"}]}`, 1, "exercise 1: title is missing", "cannot be used: 1"},
		{"-", `{"version": 1, "tilte": "T"}`, 1, "tilte", "cannot be used: 1"},
		{"", "", 2, "", "name the sheets"},
		{"-strange a.json", "", 2, "", "strange"},
	} {
		var out, problems bytes.Buffer
		code := run(append([]string{"check"}, strings.Fields(c.args)...), &desk{strings.NewReader(c.in), &out, &problems})
		if code != c.code || !strings.Contains(out.String(), c.out) || !strings.Contains(problems.String(), c.problems) {
			t.Errorf("check %s: exit status %d, want %d\n%s\n%s", c.args, code, c.code, out.String(), problems.String())
		}
		if code == 0 && problems.Len() > 0 {
			t.Errorf("check %s: all is well, but %s", c.args, problems.String())
		}
	}
}

func TestCheckWritesJSON(t *testing.T) {
	var out, problems bytes.Buffer
	run([]string{"check", "-json", "-quiet", "nowhere.json", filepath.Join("..", "..", "testdata", "advice", "told-wrong.json")}, &desk{strings.NewReader(""), &out, &problems})
	var all []struct {
		Sheet, Title, Error string
		Exercises           []struct {
			ID     string
			Advice []struct{ Weight, Rule, Text string }
		}
	}
	if err := json.Unmarshal(out.Bytes(), &all); err != nil {
		t.Fatalf("%v\n%s", err, out.String())
	}
	if len(all) != 2 || all[0].Error == "" || len(all[1].Exercises) != 1 || len(all[1].Exercises[0].Advice) != 2 || all[1].Exercises[0].Advice[0].Weight != "mistake" {
		t.Errorf("%s", out.String())
	}
}
