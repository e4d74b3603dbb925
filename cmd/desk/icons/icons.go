// Package icons makes the pictures with which a system shows the installed app, from the drawing in
// web/icon.svg. A browser paints them.
package icons

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"partialcredit/cmd/desk/measure"
)

// Icon is one picture.
type Icon struct {
	Name  string
	Size  int     // pixels, both ways
	Scale float64 // of what is drawn on the paper; 0 for the drawing as it is, with round corners
}

// All lists the pictures. A maskable icon fills its square, and what matters of it lies within a circle
// of two fifths of its width (W3C Web Application Manifest, "Icon masks and safe zone"): the drawing's
// furthest point is 31.5 of 64 from the middle. A system that has its own corners needs less.
var All = []Icon{
	{"192.png", 192, 0},
	{"512.png", 512, 0},
	{"maskable-512.png", 512, 0.8},
	{"apple-touch-180.png", 180, 0.9},
}

// Make paints all pictures of a drawing.
func Make(svg string) (map[string]*image.Paletted, error) {
	path, err := measure.FindBrowser()
	if err != nil {
		return nil, err
	}
	profile, err := os.MkdirTemp("", "partialcredit-icons-")
	if err != nil {
		return nil, fmt.Errorf("no folder for the browser: %w", err)
	}
	defer os.RemoveAll(profile)
	allocator, stopAllocator := chromedp.NewExecAllocator(context.Background(),
		chromedp.ExecPath(path), chromedp.UserDataDir(profile),
		chromedp.NoSandbox, chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck,
		chromedp.Flag("headless", "new"),
		chromedp.Flag("disable-gpu", true),
		chromedp.Flag("hide-scrollbars", true),
		chromedp.Flag("disable-dev-shm-usage", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
	)
	defer stopAllocator()
	// Chromium is newer than the protocol library and sends values it does not know.
	tab, stopTab := chromedp.NewContext(allocator, chromedp.WithErrorf(func(string, ...any) {}))
	defer stopTab()
	made := map[string]*image.Paletted{}
	for _, icon := range All {
		drawing := svg
		if icon.Scale != 0 {
			if drawing, err = full(svg, icon.Scale); err != nil {
				return nil, err
			}
		}
		if made[icon.Name], err = paint(tab, drawing, icon.Size); err != nil {
			return nil, fmt.Errorf("the icon %s cannot be painted: %w", icon.Name, err)
		}
	}
	return made, nil
}

// full lets the paper fill the square, and draws what is on it at a scale about the middle.
func full(svg string, scale float64) (string, error) {
	const corners, squares, end, middle = ` rx="8"`, "</g>", "</svg>", 32
	paper, drawing, ok := strings.Cut(svg, squares)
	drawing, _, closed := strings.Cut(drawing, end)
	if !ok || !closed || !strings.Contains(paper, corners) {
		return "", fmt.Errorf("the drawing lacks %q, %q or %q", corners, squares, end)
	}
	at := middle * (1 - scale)
	return fmt.Sprintf(`%s%s<g transform="translate(%g %g) scale(%g)">%s</g>%s`,
		strings.Replace(paper, corners, "", 1), squares, at, at, scale, drawing, end), nil
}

// paint has the browser paint a drawing on nothing.
func paint(tab context.Context, svg string, size int) (*image.Paletted, error) {
	document := fmt.Sprintf(`<!doctype html><style>body { margin: 0 } img { display: block; width: %[1]dpx; height: %[1]dpx }</style><img src="data:image/svg+xml;base64,%[2]s">`,
		size, base64.StdEncoding.EncodeToString([]byte(svg)))
	var shot []byte
	err := chromedp.Run(tab,
		emulation.SetDeviceMetricsOverride(int64(size), int64(size), 1, false),
		chromedp.Navigate("data:text/html;base64,"+base64.StdEncoding.EncodeToString([]byte(document))),
		emulation.SetDefaultBackgroundColorOverride().WithColor(&cdp.RGBA{}),
		chromedp.ActionFunc(func(ctx context.Context) (err error) {
			shot, err = page.CaptureScreenshot().WithFormat(page.CaptureScreenshotFormatPng).Do(ctx)
			return err
		}),
	)
	if err != nil {
		return nil, err
	}
	painted, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		return nil, err
	}
	if painted.Bounds().Size() != image.Pt(size, size) {
		return nil, fmt.Errorf("it came out as %v", painted.Bounds().Size())
	}
	return few(painted), nil
}

// Write paints the drawing in web/icon.svg below root and writes the pictures beside it, into
// web/icons. It returns their names.
func Write(root string) ([]string, error) {
	svg, err := os.ReadFile(filepath.Join(root, "web", "icon.svg"))
	if err != nil {
		return nil, fmt.Errorf("the drawing cannot be read: %w", err)
	}
	made, err := Make(string(svg))
	if err != nil {
		return nil, err
	}
	var names []string
	for _, icon := range All {
		name := filepath.Join(root, "web", "icons", icon.Name)
		var data bytes.Buffer
		small := png.Encoder{CompressionLevel: png.BestCompression}
		if err := small.Encode(&data, made[icon.Name]); err != nil {
			return nil, fmt.Errorf("an icon cannot be written: %w", err)
		}
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			return nil, fmt.Errorf("the folder for the icons cannot be made: %w", err)
		}
		if err := os.WriteFile(name, data.Bytes(), 0o644); err != nil {
			return nil, fmt.Errorf("an icon cannot be written: %w", err)
		}
		names = append(names, name)
	}
	return names, nil
}
