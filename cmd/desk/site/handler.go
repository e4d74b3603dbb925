package site

import (
	"context"
	"errors"
	"html/template"
	"net/http"
	"strconv"
	"strings"
)

// Source returns the site to serve. page is true when the page itself was asked for: the moment to
// bring the site up to date.
type Source func(ctx context.Context, page bool) (*Site, error)

// Fixed is the source for a site that does not change.
func Fixed(s *Site) Source {
	return func(context.Context, bool) (*Site, error) { return s, nil }
}

// Handler serves a site: brotli before gzip before uncompressed, as the browser allows. Files whose
// names hold their hash may be kept for ever; all others are asked for again each time.
func Handler(source Source) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "This server only answers GET and HEAD.", http.StatusMethodNotAllowed)
			return
		}
		name := strings.TrimPrefix(r.URL.Path, "/")
		if name == "" {
			name = Page
		}
		s, err := source(r.Context(), name == Page)
		if err != nil {
			serveFailure(w, err)
			return
		}
		f, ok := s.Files[name]
		if !ok {
			w.Header().Set("Cache-Control", "no-store")
			http.Error(w, "There is no file of this name.", http.StatusNotFound)
			return
		}
		serveFile(w, r, f)
	})
}

func serveFile(w http.ResponseWriter, r *http.Request, f File) {
	body, tag := f.Data, f.Hash
	h := w.Header()
	if f.Brotli != nil || f.Gzip != nil {
		h.Set("Vary", "Accept-Encoding")
		header := strings.Join(r.Header.Values("Accept-Encoding"), ",")
		switch {
		case f.Brotli != nil && accepts(header, "br"):
			h.Set("Content-Encoding", "br")
			body, tag = f.Brotli, f.Hash+"-br"
		case f.Gzip != nil && accepts(header, "gzip"):
			h.Set("Content-Encoding", "gzip")
			body, tag = f.Gzip, f.Hash+"-gz"
		}
	}
	h.Set("Content-Type", f.Type)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("ETag", `"`+tag+`"`)
	if f.Hashed {
		h.Set("Cache-Control", "public, max-age=31536000, immutable")
	} else {
		h.Set("Cache-Control", "no-cache")
	}
	if matches(r.Header.Get("If-None-Match"), tag) {
		h.Del("Content-Encoding")
		w.WriteHeader(http.StatusNotModified)
		return
	}
	h.Set("Content-Length", strconv.Itoa(len(body)))
	if r.Method == http.MethodGet {
		w.Write(body)
	}
}

func matches(header, tag string) bool {
	for candidate := range strings.SplitSeq(header, ",") {
		candidate = strings.TrimPrefix(strings.TrimSpace(candidate), "W/")
		if candidate == "*" || candidate == `"`+tag+`"` {
			return true
		}
	}
	return false
}

var failurePage = template.Must(template.New("failure").Parse(`<!doctype html>
<html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Partial Credit: build failed</title>
<body style="font: 16px/1.5 sans-serif; margin: 2em; background: #FBF8EF; color: #222">
<h1 style="color: #B3261E">{{.Title}}</h1>
<pre style="font: 14px/1.5 monospace; white-space: pre-wrap">{{.Detail}}</pre>
<p>Mend it, save, and reload this page.</p>
`))

func serveFailure(w http.ResponseWriter, err error) {
	page := struct{ Title, Detail string }{"The site could not be built", err.Error()}
	var compile *CompileError
	if errors.As(err, &compile) {
		page.Title, page.Detail = "The app does not compile", compile.Output
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.Header().Set("Cache-Control", "no-store")
	w.WriteHeader(http.StatusInternalServerError)
	failurePage.Execute(w, page)
}
