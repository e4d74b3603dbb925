package measure

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"time"
)

// A Machine is where and when something was measured.
type Machine struct {
	date      time.Time
	processor string
	cores     int
	system    string
	browser   string
}

// ThisMachine is here and now, with the version of the browser that took part, if any.
func ThisMachine(browser string) Machine {
	m := Machine{date: time.Now(), processor: "an unknown processor", cores: runtime.NumCPU(), system: runtime.GOOS, browser: browser}
	if name := lineOf("/proc/cpuinfo", "model name", ":"); name != "" {
		m.processor = name
	}
	if name := strings.Trim(lineOf("/etc/os-release", "PRETTY_NAME", "="), `"`); name != "" {
		m.system = name
	}
	return m
}

// lineOf returns what follows the separator on the first line of a file that starts with a key.
func lineOf(file, key, separator string) string {
	data, err := os.ReadFile(file)
	if err != nil {
		return ""
	}
	for line := range strings.Lines(string(data)) {
		if before, after, ok := strings.Cut(line, separator); ok && strings.TrimSpace(before) == key {
			return strings.TrimSpace(after)
		}
	}
	return ""
}

func (m Machine) String() string {
	text := fmt.Sprintf("%s: %s (%s), %d cores, %s, %s",
		m.date.Format(time.DateOnly), m.processor, runtime.GOARCH, m.cores, m.system, runtime.Version())
	if m.browser != "" {
		text += ", " + m.browser
	}
	return text
}
