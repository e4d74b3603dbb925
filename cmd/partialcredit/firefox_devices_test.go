//go:build !js

package main_test

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Chromium brings a screen and speakers that are none; Firefox wants those of the system, and a machine
// that tests has neither. So each Firefox gets its own.

// startDisplay starts an X display without a screen and returns its name; it ends after the test, and
// after Firefox.
func startDisplay(t testing.TB) string {
	t.Helper()
	told, tell, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer told.Close()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1280x1024x24", "-nolisten", "tcp")
	cmd.ExtraFiles = []*os.File{tell}
	err = cmd.Start()
	tell.Close()
	if err != nil {
		t.Fatalf("Firefox draws on an X display, and there is none without a screen: %v. `make firefox` installs xvfb", err)
	}
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	number, err := bufio.NewReader(told).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb does not start: %v", err)
	}
	return ":" + strings.TrimSpace(number)
}

// startSpeakers starts a sound server that plays to nobody, in real time, and returns its address.
// Without one Firefox's audio contexts stay suspended for ever.
func startSpeakers(t testing.TB) string {
	t.Helper()
	home := t.TempDir()
	socket := filepath.Join(home, "socket")
	cmd := exec.Command("pulseaudio", "-n", "--daemonize=no", "--exit-idle-time=-1", "--disable-shm=true", "--use-pid-file=no",
		"-L", "module-null-sink rate=48000", "-L", "module-native-protocol-unix auth-anonymous=1 socket="+socket)
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_RUNTIME_DIR="+home, "PULSE_RUNTIME_PATH="+home)
	var words strings.Builder
	cmd.Stderr = &words
	if err := cmd.Start(); err != nil {
		t.Fatalf("Firefox plays through PulseAudio, which does not start: %v. `make firefox` installs it", err)
	}
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	for range 500 {
		if _, err := os.Stat(socket); err == nil {
			return "unix:" + socket
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatalf("PulseAudio does not open its socket within ten seconds; it said: %s", words.String())
	return ""
}
