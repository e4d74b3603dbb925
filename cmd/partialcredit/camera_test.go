//go:build !js

package main_test

import (
	"bytes"
	"context"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	_ "image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"partialcredit/game/code"
	"partialcredit/game/scan"
)

// decodeQR reads the code in a PNG or JPEG, as gozxing does.
func decodeQR(t testing.TB, data []byte) string {
	t.Helper()
	m, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	text, found := scan.Read(greyOf(m))
	if !found {
		t.Fatal("no code was found in the picture")
	}
	return text
}

func greyOf(m image.Image) scan.Picture {
	grey := image.NewGray(m.Bounds())
	draw.Draw(grey, grey.Rect, m, m.Bounds().Min, draw.Src)
	return scan.Picture{W: grey.Rect.Dx(), H: grey.Rect.Dy(), Grey: grey.Pix}
}

// cameraText is what the camera of the tests sees, as long as a link to an exercise is.
var cameraText = "https://example.org/#sheet=1." + strings.Repeat("Sägezahn-4711_", 12)

// turnedCode is a picture of a code on grey, turned by some degrees.
func turnedCode(t testing.TB, text string, w, h int, module, degrees float64) *image.Gray {
	t.Helper()
	c, err := code.Encode(text, code.Auto)
	if err != nil {
		t.Fatal(err)
	}
	m := image.NewGray(image.Rect(0, 0, w, h))
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	for i := range m.Pix {
		x, y := float64(i%w-w/2)/module, float64(i/w-h/2)/module
		col, row := int(math.Floor(cos*x+sin*y+float64(c.Side())/2)), int(math.Floor(cos*y-sin*x+float64(c.Side())/2))
		switch {
		case min(col, row) < 0 || max(col, row) >= c.Side():
			m.Pix[i] = 120
		case !c.At(col-code.Quiet, row-code.Quiet):
			m.Pix[i] = 235
		default:
			m.Pix[i] = 30
		}
	}
	return m
}

// browserWithCamera has a camera that sees cameraText, and allows it.
var browserWithCamera = sync.OnceValues(func() (context.Context, error) {
	folder, err := os.MkdirTemp("", "partialcredit-camera-")
	if err != nil {
		return nil, err
	}
	later(func() { os.RemoveAll(folder) })
	const w, h = 640, 480
	film := filepath.Join(folder, "camera.y4m") // YUV4MPEG2, as mjpegtools' yuv4mpeg(5) describes it
	var data bytes.Buffer
	fmt.Fprintf(&data, "YUV4MPEG2 W%d H%d F10:1 Ip A1:1 C420jpeg\n", w, h)
	grey := bytes.Repeat([]byte{128}, w*h/2)
	for _, degrees := range []float64{4, 5, 6, 5} {
		data.WriteString("FRAME\n")
		data.Write(turnedCode(panics{}, cameraText, w, h, 5, degrees).Pix)
		data.Write(grey)
	}
	if err := os.WriteFile(film, data.Bytes(), 0o644); err != nil {
		return nil, err
	}
	return startBrowser("document-user-activation-required",
		chromedp.Flag("use-fake-device-for-media-stream", true),
		chromedp.Flag("use-fake-ui-for-media-stream", true),
		chromedp.Flag("use-file-for-fake-video-capture", film))
})

// panics stands in for a test where none is running.
type panics struct{ testing.TB }

func (panics) Helper()           {}
func (panics) Fatal(args ...any) { panic(fmt.Sprint(args...)) }

// scanFor starts the camera and waits for the first code or the first failure.
const scanFor = `new Promise(done => partialCredit.scan.start({ x: 20, y: 30, w: 300, h: 200 }, text => done("found " + text), what => done("failed " + what)))`

func TestTheCameraReadsACode(t *testing.T) {
	h := newHost(t, theSite(t))
	p := Open(t, Visit{In: browserWithCamera, Keeps: true, Address: h.address})
	p.Started()
	p.kept()
	for name := range h.visits() {
		if strings.HasPrefix(name, "scanner.") {
			t.Errorf("%s was loaded before anybody scanned", name)
		}
	}
	var got string
	began := time.Now()
	if p.Eval(scanFor, &got); got != "found "+cameraText {
		t.Errorf("the camera %q, want %q", got, cameraText)
	}
	t.Logf("the first code is read %v after the camera was asked for, the reader loaded meanwhile", time.Since(began).Round(time.Millisecond))
	var place string
	p.Eval(`window.track = document.getElementById("camera").srcObject.getTracks()[0];
		(r => [r.x, r.y, r.width, r.height].join())(document.getElementById("camera").getBoundingClientRect())`, &place)
	if place != "20,30,300,200" {
		t.Errorf("the camera is shown at %s", place)
	}
	state := func(want string) {
		t.Helper()
		var now string
		p.Eval(`track.readyState + (document.getElementById("camera") ? " shown" : "")`, &now)
		if now != want {
			t.Errorf("the camera is %q, want %q", now, want)
		}
	}
	state("live shown")
	// The same code that stays in view does not come again; the camera goes off with the page, and comes back.
	hide := func(hidden string) {
		p.Eval(`Object.defineProperty(document, "hidden", { get: () => `+hidden+`, configurable: true }); document.dispatchEvent(new Event("visibilitychange"))`, nil)
	}
	hide("true")
	state("ended")
	hide("false")
	p.Wait(`document.getElementById("camera") && document.getElementById("camera").videoWidth > 0`, 5*time.Second)
	p.Eval(`window.track = document.getElementById("camera").srcObject.getTracks()[0]`, nil)
	state("live shown")
	p.Eval(`partialCredit.scan.stop()`, nil)
	state("ended")

	p.Eval(`(async () => { while (!(await caches.match(document.querySelector("[data-scanner]").dataset.scanner))) await new Promise(done => setTimeout(done, 20)); })()`, nil)
	h.stop()
	p.Reload()
	p.Started()
	if p.Eval(scanFor, &got); got != "found "+cameraText {
		t.Errorf("without the network the camera %q", got)
	}
	p.Eval(`partialCredit.scan.stop()`, nil)
}

func TestPicturesOfCodesAreRead(t *testing.T) {
	p := Open(t, Visit{})
	p.Started()
	packed := func(m image.Image) []byte {
		var b bytes.Buffer
		if err := png.Encode(&b, m); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	clear := image.NewNRGBA(image.Rect(0, 0, 300, 300)) // dark modules on nothing: a picture saved from a page
	small := turnedCode(t, "see through", 300, 300, 6, 0)
	for i, v := range small.Pix {
		if v < 100 {
			clear.SetNRGBA(i%300, i/300, color.NRGBA{A: 255})
		}
	}
	large := turnedCode(t, cameraText, 1500, 1100, 6, 17) // small within a photo
	for _, tt := range []struct {
		what string
		file []byte
		want string
	}{
		{"a photo", packed(large), cameraText + ","},
		{"dark on nothing", packed(clear), "see through,"},
		{"a grey wall", packed(image.NewGray(image.Rect(0, 0, 200, 200))), ",nothing"},
		{"no picture", []byte("no picture"), ",unreadable"},
	} {
		var got string
		p.Eval(fmt.Sprintf(`new Promise(done => partialCredit.scan.picture(Uint8Array.from(atob("%s"), c => c.charCodeAt(0)), (texts, what) => done(texts + "," + what)))`,
			base64.StdEncoding.EncodeToString(tt.file)), &got)
		if got != tt.want {
			t.Errorf("%s: read %q, want %q", tt.what, got, tt.want)
		}
	}
}

// What keeps the camera from being had has a name each. The shared browser's computer has none.
func TestACameraThatCannotBeHad(t *testing.T) {
	p := Open(t, Visit{})
	for _, tt := range []struct{ before, want string }{
		{``, "failed none"},
		{`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", "NotAllowedError"))`, "failed denied"},
		{`navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException("", "NotReadableError"))`, "failed busy"},
		{`Object.defineProperty(Navigator.prototype, "mediaDevices", { get() { return undefined; } })`, "failed insecure"},
	} {
		p.Eval(tt.before+"; undefined", nil)
		var got string
		if p.Eval(scanFor, &got); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.before, got, tt.want)
		}
	}
}

// A browser that reads codes itself needs no reader.
func TestTheBrowsersOwnReaderIsUsed(t *testing.T) {
	h := newHost(t, theSite(t))
	p := Open(t, Visit{In: browserWithCamera, Address: h.address, Before: []string{`window.BarcodeDetector = class {
		static async getSupportedFormats() { return ['ean_13', 'qr_code']; }
		async detect(source) { return source.videoWidth ? [{ rawValue: 'by the browser' }] : []; }
	};`}})
	var got string
	if p.Eval(scanFor, &got); got != "found by the browser" {
		t.Errorf("the camera %q", got)
	}
	p.Eval(`partialCredit.scan.stop()`, nil)
	for name := range h.visits() {
		if strings.HasPrefix(name, "scanner.") {
			t.Errorf("%s was loaded though the browser reads codes itself", name)
		}
	}
}
