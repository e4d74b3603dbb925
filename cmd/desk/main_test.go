package main

import (
	"bytes"
	"net"
	"strconv"
	"strings"
	"testing"
)

func TestCommandLine(t *testing.T) {
	tests := []struct {
		args     string
		code     int
		out      string
		problems string
	}{
		{"", 2, "", "Usage: desk"},
		{"help", 0, "serve", ""},
		{"paint", 2, "", `no command "paint"`},
		{"serve -h", 0, "-port", ""},
		{"serve -port nine", 2, "", "port"},
		{"serve -port 70000", 2, "", "between 0 and 65535"},
		{"serve now", 2, "", "flags only"},
		{"site", 2, "", "name the folder"},
		{"measure -h", 0, "-quick", ""},
		{"help measure", 0, "desk measure -quick", ""},
		{"help paint", 2, "", `no command "paint"`},
	}
	for _, tt := range tests {
		t.Run(tt.args, func(t *testing.T) {
			var out, problems bytes.Buffer
			code := run(strings.Fields(tt.args), &desk{strings.NewReader(""), &out, &problems})
			if code != tt.code {
				t.Errorf("exit code %d, want %d", code, tt.code)
			}
			if !strings.Contains(out.String(), tt.out) {
				t.Errorf("output %q does not contain %q", out.String(), tt.out)
			}
			if tt.out == "" && out.Len() > 0 {
				t.Errorf("output %q, want none", out.String())
			}
			if !strings.Contains(problems.String(), tt.problems) {
				t.Errorf("problems %q do not contain %q", problems.String(), tt.problems)
			}
		})
	}
}

func TestMeasureWithoutABrowserSaysWhatToDo(t *testing.T) {
	t.Setenv("BROWSER", "/nowhere/chromium")
	var out, problems bytes.Buffer
	if code := run([]string{"measure", "-quick"}, &desk{strings.NewReader(""), &out, &problems}); code != 1 || out.Len() > 0 {
		t.Errorf("exit code %d with output %q, want 1 with none", code, out.String())
	}
	for _, want := range []string{"/nowhere/chromium", "make chromium", "BROWSER="} {
		if !strings.Contains(problems.String(), want) {
			t.Errorf("%q does not contain %q", problems.String(), want)
		}
	}
}

func TestTakenPortSaysWhatToDo(t *testing.T) {
	first, err := listen("localhost", 0)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	port := first.Addr().(*net.TCPAddr).Port
	second, err := listen("localhost", port)
	if err == nil {
		second.Close()
		t.Fatal("a taken port was opened a second time")
	}
	for _, want := range []string{strconv.Itoa(port) + " is already taken", "PORT=", "make run"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q does not contain %q", err, want)
		}
	}
}

func TestListensOnThisMachineOnly(t *testing.T) {
	l, err := listen("localhost", 0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if ip := l.Addr().(*net.TCPAddr).IP; !ip.IsLoopback() {
		t.Errorf("listens on %v, want a loopback address", ip)
	}
}
