package view

import (
	"image"
	"image/color"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"partialcredit/game"
)

// An App is what is shown.
type App interface {
	// Update is called once a tick with the size of the screen in CSS pixels.
	Update(w, h float64) error
	// Scene is what to draw. It holds until the next Update.
	Scene() *game.Scene
	// Revision changes whenever the scene has changed.
	Revision() int
	// Layout changes when more of the scene has changed than its pictures.
	Layout() int
	// Dark asks for the blackboard.
	Dark() bool
	// Strong asks for strong contrast.
	Strong() bool
	// Reduced asks that little moves.
	Reduced() bool
}

// Run shows the app until Update fails.
func Run(app App) error {
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetScreenFilterEnabled(false) // the screen is the device's pixels
	ebiten.SetRunnableOnUnfocused(true)
	ebiten.SetTPS(ebiten.SyncWithFPS) // a slow frame must not be followed by a burst of ticks
	s := &screen{app: app}
	s.rest.begin(app)
	return ebiten.RunGame(s)
}

// A screen draws an app when it has changed.
type screen struct {
	app     App
	w, h    float64 // CSS pixels
	scale   float64
	painter *painter
	rest    rest

	drawn   drawn
	drawnAt time.Time
}

// drawn is what the screen showed last.
type drawn struct {
	revision     int
	layout       int
	dark, strong bool
	size         image.Point
	valid        bool
}

// slow is the least time between two pictures of what moves by itself, for
// people who ask that little moves: a design choice.
const slow = 500 * time.Millisecond

// waits reports whether now may wait: nothing but the pictures of what sounds
// has moved since before, and that not long ago.
func (now drawn) waits(before drawn, since time.Duration) bool {
	before.revision = now.revision
	return now == before && since < slow
}

func (s *screen) LayoutF(w, h float64) (float64, float64) {
	s.scale = ebiten.Monitor().DeviceScaleFactor()
	s.w, s.h = w, h
	return w * s.scale, h * s.scale
}

// Layout is for the interface only: LayoutF is called instead.
func (s *screen) Layout(int, int) (int, int) { panic("view: LayoutF is called instead") }

func (s *screen) Update() error {
	if s.rest.early() {
		return nil
	}
	if err := s.app.Update(s.w, s.h); err != nil {
		return err
	}
	warm := s.painter != nil && s.painter.warm()
	s.rest.end(warm)
	return nil
}

func (s *screen) Draw(to *ebiten.Image) {
	now := drawn{s.app.Revision(), s.app.Layout(), s.app.Dark(), s.app.Strong(), to.Bounds().Size(), true}
	if now == s.drawn || s.app.Reduced() && now.waits(s.drawn, time.Since(s.drawnAt)) {
		return
	}
	scene := s.app.Scene()
	if scene == nil {
		return
	}
	if s.painter == nil {
		s.painter = newPainter()
	}
	s.painter.draw(to, scene, themeOf(now.dark, now.strong), s.scale)
	s.drawn, s.drawnAt = now, time.Now()
}

func (t tint) color() color.Color {
	part := func(v float32) uint8 { return uint8(v*255 + 0.5) }
	return color.RGBA{part(t[0]), part(t[1]), part(t[2]), part(t[3])}
}
