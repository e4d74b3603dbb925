package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestPaper(t *testing.T) {
	example := filepath.Join("..", "..", "testdata", "advice", "another-duty.json")
	data, err := os.ReadFile(example)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	there := filepath.Join(dir, "there.html")
	if err := os.WriteFile(there, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		args, in string
		code     int
		out      string // part of what is written
		not      string // and what is not
		problems string
	}{
		{example, "", 0, `class="blank"`, "<a ", ""},
		{"- -address https://example.org/credit/#old", string(data), 0, `<a href="https://example.org/credit/#sheet=1.`, "#old", ""},
		{example + " -key", "", 0, "80 marks are left", `class="blank"`, ""},
		{example + " -language de -name wren -name fox", "", 0, `<html lang="de">`, "Your name", ""},
		{example + " -exercise 1 -name wren", "", 0, "<b>wren</b>", "", ""},
		{example + " -exercise 9", "", 2, "", "<", "no exercise"},
		{example + " -language xx", "", 2, "", "<", "en or de"},
		{example + " -address example.org", "", 2, "", "<", "must begin with https://"},
		{example + " -o " + there, "", 1, "", "<", "exists already"},
		{"nowhere.json", "", 1, "", "<", "no such file"},
		{"", "", 2, "", "<", "name one sheet"},
	} {
		var out, problems bytes.Buffer
		code := run(append([]string{"paper"}, strings.Fields(c.args)...), &desk{strings.NewReader(c.in), &out, &problems})
		if code != c.code || !strings.Contains(out.String(), c.out) || c.not != "" && strings.Contains(out.String(), c.not) || !strings.Contains(problems.String(), c.problems) {
			t.Errorf("paper %s: exit status %d, want %d\n%.400s\n%s", c.args, code, c.code, out.String(), problems.String())
		}
	}
	if kept, _ := os.ReadFile(there); string(kept) != "old" {
		t.Error("the file that was there is another")
	}
}
