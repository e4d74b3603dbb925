package main

import (
	"slices"
	"time"

	"partialcredit/game"
	"partialcredit/game/browser"
	"partialcredit/game/sheet"
	"partialcredit/game/speaker"
	"partialcredit/game/view"
	"partialcredit/synth"
)

// storageKey is where the progress is kept on the device.
const storageKey = "progress"

// saveEvery is how often a change is written to the device at most.
const saveEvery = 300 * time.Millisecond

// app joins the game with the page, the speaker and the view.
type app struct {
	game    *game.Game
	page    *browser.Page
	speaker speaker.Speaker
	window  speaker.Window

	program  synth.Program
	ticks    int
	failed   bool
	mirrored int
	saved    int
	savedAt  time.Duration
}

func newApp(page *browser.Page, out speaker.Speaker) *app {
	return &app{
		game: game.New(sheet.Builtin(), page.Load(storageKey), view.Measure()),
		page: page, speaker: out,
		window: speaker.Window{Samples: make([]float32, game.Window), Cycle: make([]float32, game.Window)},
	}
}

// Update is one tick.
func (a *app) Update(w, h float64) error {
	if a.ticks++; a.ticks == 2 { // the first picture has been drawn
		a.page.Started()
	}
	now := a.page.Now()
	a.speaker.Heard(&a.window)
	a.game.Update(game.Input{
		Now: now, W: w, H: h, Events: a.page.Events(),
		Heard: game.Heard{Samples: a.window.Samples, Cycle: a.window.Cycle, Item: a.window.Item},
		Audio: audio(a.speaker.State()),
	})
	if p := a.game.Program(); p.Gap != a.program.Gap || !slices.Equal(p.Items, a.program.Items) {
		a.program = p
		a.speaker.Play(p)
	}
	a.speaker.SetVolume(a.game.Volume())
	if err := a.speaker.Err(); err != nil && !a.failed {
		a.failed = true
		a.game.Tell(err.Error())
	}
	if rev := a.game.Layout(); rev != a.mirrored {
		a.mirrored = rev
		a.page.Mirror(a.game.Scene())
	}
	if now-a.savedAt > saveEvery {
		a.save()
	}
	return nil
}

// save keeps what has changed since the last time.
func (a *app) save() {
	rev := a.game.Kept()
	if rev == a.saved {
		return
	}
	a.saved, a.savedAt = rev, a.page.Now()
	if err := a.page.Save(storageKey, a.game.Save()); err != nil {
		a.game.Tell(err.Error())
	}
}

// onEvent wakes the view; a page that is being left may never tick again.
func (a *app) onEvent() {
	view.Wake()
	if a.page.Hidden() {
		a.save()
	}
}

// Scene is what the view draws.
func (a *app) Scene() *game.Scene { return a.game.Scene() }

// Revision changes with the scene.
func (a *app) Revision() int { return a.game.Revision() }

// Idle lets the view rest.
func (a *app) Idle() bool { return a.game.Idle() && a.game.Kept() == a.saved }

// Dark tells which theme to draw.
func (a *app) Dark() bool {
	switch a.game.Theme() {
	case game.Paper:
		return false
	case game.Blackboard:
		return true
	}
	return a.page.Dark()
}

func audio(s speaker.State) game.Audio {
	switch s {
	case speaker.Running:
		return game.Running
	case speaker.Suspended:
		return game.Suspended
	case speaker.Failed:
		return game.NoAudio
	}
	return game.Waiting
}
