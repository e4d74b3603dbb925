package main

import (
	"math/rand/v2"
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

// asideKey is where progress is set aside that this version cannot read.
const asideKey = "progress.aside"

// teacherKey is where what a teacher keeps is kept.
const teacherKey = "teacher"

// teacherAsideKey is where that is set aside that this version cannot read.
const teacherAsideKey = "teacher.aside"

// saveEvery is how often a change is written to the device at most.
const saveEvery = 300 * time.Millisecond

// app joins the game with the page, the speaker and the view.
type app struct {
	game    *game.Game
	page    *browser.Page
	speaker speaker.Speaker
	window  speaker.Window

	w, h     float64
	program  synth.Program
	ticks    int
	busy     bool
	failed   bool
	language string // BCP 47, that the page was told
	mirrored int
	saved    int
	filed    int
	savedAt  time.Duration
}

func newApp(page *browser.Page, out speaker.Speaker) *app {
	a := &app{
		game: game.New(sheet.Course(), page.Load(storageKey), view.Measure()),
		page: page, speaker: out,
		window: speaker.Window{Samples: make([]float32, game.Window), Cycle: make([]float32, game.Window)},
	}
	if old := a.game.Unread(); old != nil {
		page.Save(asideKey, old) // what cannot be kept aside is lost: the learner is told of the rest
	}
	if old := page.Load(teacherKey); !a.game.Unfile(old) {
		page.Save(teacherAsideKey, old)
	}
	a.game.Speak(page.Languages())
	a.game.Follow(page.Fragment())
	page.OnFragment(a.game.Follow)
	return a
}

// Update is one tick.
func (a *app) Update(w, h float64) error {
	a.busy = true // what the page does below comes back as events
	defer func() { a.busy = false }()
	if a.ticks++; a.ticks == 2 { // the first picture has been drawn
		a.page.Started()
	}
	a.w, a.h = w, h
	a.obey()
	if err := a.speaker.Err(); err != nil && !a.failed {
		a.failed = true
		a.game.Tell(err.Error())
	}
	if tag := a.game.Language(); tag != a.language {
		a.language = tag
		a.page.SetLanguage(tag)
	}
	if rev := a.game.Layout(); rev != a.mirrored {
		a.mirrored = rev
		a.page.Mirror(a.game.Scene())
	}
	if a.page.Now()-a.savedAt > saveEvery {
		a.save()
	}
	return nil
}

// obey hands what people did to the game, and what follows from it to the
// speaker.
func (a *app) obey() {
	a.speaker.Heard(&a.window)
	a.game.Update(game.Input{
		Now: a.page.Now(), Date: time.Now(), Random: rand.Uint64(), W: a.w, H: a.h, Events: a.page.Events(),
		Heard: game.Heard{Samples: a.window.Samples, Cycle: a.window.Cycle, Item: a.window.Item},
		Audio: audio(a.speaker.State()), Update: a.page.UpdateReady(),
	})
	a.grant()
	if p := a.game.Program(); p.Gap != a.program.Gap || p.Once != a.program.Once || !slices.Equal(p.Items, a.program.Items) {
		a.program = p
		a.speaker.Play(p)
	}
	a.speaker.SetVolume(a.game.Volume())
}

// grant does what the game wishes of the page.
func (a *app) grant() {
	for _, w := range a.game.Wishes() {
		switch w.Kind {
		case game.Copy:
			a.page.Copy(a.page.Address()+w.Text, func(ok bool) {
				if !ok {
					a.page.SetFragment(w.Text)
				}
				a.game.Copied(ok)
			})
		case game.Download:
			a.page.Download(w.Name, w.Text)
		case game.OpenFile:
			a.page.OpenFile(".json,application/json", game.MostImported, a.game.Import)
		case game.Renew:
			a.save()
			a.page.Update()
		}
	}
}

// save keeps what has changed since the last time.
func (a *app) save() {
	a.keep(&a.saved, a.game.Kept(), storageKey, a.game.Save)
	a.keep(&a.filed, a.game.Filed(), teacherKey, a.game.File)
}

func (a *app) keep(saved *int, now int, key string, data func() []byte) {
	if *saved == now {
		return
	}
	*saved, a.savedAt = now, a.page.Now()
	if err := a.page.Save(key, data()); err != nil {
		a.game.Tell(err.Error())
	}
}

// onEvent has heard at once what people do, and seen with the next tick, for
// which it wakes the view. A page that is being left may never tick again.
func (a *app) onEvent() {
	if a.ticks > 0 && !a.busy && a.page.Urgent() {
		a.obey()
	}
	view.Wake()
	if a.page.Hidden() {
		a.save()
	}
}

// Scene is what the view draws.
func (a *app) Scene() *game.Scene { return a.game.Scene() }

// Revision changes with the scene.
func (a *app) Revision() int { return a.game.Revision() }

// Layout changes when more of the scene has changed than its pictures.
func (a *app) Layout() int { return a.game.Layout() }

// Strong tells whether to draw with strong contrast.
func (a *app) Strong() bool { return a.page.Contrast() }

// Reduced tells whether to move little.
func (a *app) Reduced() bool { return a.page.Reduced() }

// Idle lets the view rest.
func (a *app) Idle() bool { return a.game.Idle() && a.game.Kept() == a.saved && a.game.Filed() == a.filed }

// Frames has the browser give frames or none.
func (a *app) Frames(on bool) { a.page.Frames(on) }

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
