package site

import "path"

// kind says how files with one extension are sent. The table is our own because the one of the
// operating system differs from machine to machine.
type kind struct {
	contentType string
	compress    bool
}

var kinds = map[string]kind{
	".css":         {"text/css; charset=utf-8", true},
	".html":        {"text/html; charset=utf-8", true},
	".ico":         {"image/x-icon", false},
	".js":          {"text/javascript; charset=utf-8", true},
	".json":        {"application/json", true},
	".png":         {"image/png", false},
	".svg":         {"image/svg+xml", true},
	".txt":         {"text/plain; charset=utf-8", true},
	".wasm":        {"application/wasm", true},
	".wav":         {"audio/wav", false},
	".webmanifest": {"application/manifest+json", true},
	".woff2":       {"font/woff2", false},
}

func kindOf(name string) kind {
	if k, ok := kinds[path.Ext(name)]; ok {
		return k
	}
	return kind{"application/octet-stream", false}
}
