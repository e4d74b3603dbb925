package site

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

const (
	appName    = "app.wasm"
	engineName = "engine.wasm"
	startName  = "wasm_exec.js"

	scannerName = "scanner.wasm"
)

// CompileError is what the Go compiler said about sources that it refused.
type CompileError struct{ Output string }

func (e *CompileError) Error() string { return "the app does not compile:\n" + e.Output }

// FindRoot returns the folder of the go.mod that rules the working directory.
func FindRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return "", fmt.Errorf("the go command cannot be run (is Go installed and on PATH?): %w", err)
	}
	file := strings.TrimSpace(string(out))
	if file == "" || file == os.DevNull {
		return "", errors.New("no go.mod was found: run this inside the source folder of Partial Credit")
	}
	return filepath.Dir(file), nil
}

// compileApp returns the app as WebAssembly.
func compileApp(ctx context.Context, root string) ([]byte, error) {
	folder, err := os.MkdirTemp("", "partialcredit-module-")
	if err != nil {
		return nil, fmt.Errorf("no temporary folder for the build: %w", err)
	}
	defer os.RemoveAll(folder)
	arguments, err := withWrittenShaders(ctx, root, folder)
	if err != nil {
		return nil, err
	}
	return compile(ctx, root, "js", append(append(arguments, withoutInlining()...), "./cmd/partialcredit")...)
}

// compileEngine returns the sound engine as WebAssembly: a module that is called, and asks for nothing
// of a browser.
func compileEngine(ctx context.Context, root string) ([]byte, error) {
	return compile(ctx, root, "wasip1", "-buildmode=c-shared", "./cmd/engine")
}

// compileScanner returns what reads QR codes as WebAssembly, in the same way.
func compileScanner(ctx context.Context, root string) ([]byte, error) {
	return compile(ctx, root, "wasip1", "-buildmode=c-shared", "./cmd/scanner")
}

// compile returns a program as WebAssembly for an operating system.
func compile(ctx context.Context, root, system string, what ...string) ([]byte, error) {
	folder, err := os.MkdirTemp("", "partialcredit-build-")
	if err != nil {
		return nil, fmt.Errorf("no temporary folder for the build: %w", err)
	}
	defer os.RemoveAll(folder)
	target := filepath.Join(folder, "built.wasm")
	// Without -buildvcs=false every commit would change the app's hash, and with it what browsers keep.
	arguments := append([]string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", target}, what...)
	build := exec.CommandContext(ctx, "go", arguments...)
	build.Dir = root
	build.Env = append(os.Environ(), "GOOS="+system, "GOARCH=wasm")
	var output bytes.Buffer
	build.Stdout, build.Stderr = &output, &output
	if err := build.Run(); err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) && output.Len() > 0 {
			return nil, &CompileError{Output: output.String()}
		}
		return nil, fmt.Errorf("go build cannot be run: %w", err)
	}
	return os.ReadFile(target)
}

// readStartScript returns Go's own script that starts a WebAssembly program; it must come from the
// same version of Go as the program.
func readStartScript(ctx context.Context, root string) ([]byte, error) {
	env := exec.CommandContext(ctx, "go", "env", "GOROOT")
	env.Dir = root
	out, err := env.Output()
	if err != nil {
		return nil, fmt.Errorf("go env GOROOT cannot be run: %w", err)
	}
	script, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(out)), "lib", "wasm", startName))
	if err != nil {
		return nil, fmt.Errorf("this Go installation lacks its script for WebAssembly: %w", err)
	}
	return script, nil
}
