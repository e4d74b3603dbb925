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
	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/take"
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
	taken    *take.Take
	takenAt  float64
	ticks    int
	busy     bool
	failed   bool
	language string // BCP 47, that the page was told
	mirrored int
	dressed  look
	address  string
	canShare bool
	saved    int
	filed    int
	savedAt  time.Duration
}

func newApp(page *browser.Page, out speaker.Speaker) *app {
	a := &app{
		game: game.New(sheet.Course(), page.Load(storageKey), view.Measure()),
		page: page, speaker: out,
		address: page.Address(), canShare: page.CanShare(),
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
	page.OnArrival(game.MostDropped, a.game.Dropped, a.game.Pasted)
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
	a.dress()
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
		Address: a.address, CanShare: a.canShare,
	})
	a.grant()
	if p := a.game.Program(); p.Gap != a.program.Gap || p.Once != a.program.Once || !slices.Equal(p.Items, a.program.Items) {
		a.program = p
		a.speaker.Play(p)
	}
	a.speaker.SetVolume(a.game.Volume())
	a.playRecording()
}

// playRecording has a recording played beside the program, or changes its gain.
func (a *app) playRecording() {
	t, gain := a.game.Recording()
	gain *= a.game.Volume()
	switch {
	case t != a.taken && t == nil:
		a.page.PlayRecording(nil, 0, 0)
	case t != a.taken:
		a.page.PlayRecording(t.Samples, take.Rate, gain)
	case t != nil && gain != a.takenAt:
		a.page.RecordingGain(gain)
	}
	a.taken, a.takenAt = t, gain
}

// grant does what the game wishes of the page, and what it wishes then.
func (a *app) grant() {
	for wishes := a.game.Wishes(); len(wishes) > 0; wishes = a.game.Wishes() {
		for _, w := range wishes {
			a.grantOne(w)
		}
	}
}

func (a *app) grantOne(w game.Wish) {
	switch w.Kind {
	case game.Copy:
		a.page.Copy(w.Message(a.address), func(ok bool) {
			if !ok && w.Link != "" {
				a.page.SetFragment(w.Link)
			}
			a.game.Copied(w, ok)
		})
	case game.Share:
		a.share(w)
	case game.Print:
		a.page.Print(w.Text, func(ok bool) { a.game.Printed(w, ok) })
	case game.Download:
		a.page.Download(w.Name, w.Type, w.Text)
	case game.OpenFile:
		a.page.OpenFiles(w.Accept, w.Many, w.Most, func(f []game.File) { a.game.Opened(w.Purpose, f) })
	case game.Scan:
		a.page.Scan(w.Rect, a.game.Scanned, a.game.ScanFailed)
	case game.StopScan:
		a.page.StopScan()
	case game.Record:
		a.page.Record(game.LongestRecording, a.game.RecordingLevel, a.game.Recorded, a.game.RecordFailed)
	case game.StopRecord:
		a.page.StopRecord()
	case game.DropRecord:
		a.page.DropRecord()
	case game.ScanPicture:
		a.page.ScanPicture(w.File, func(texts []string, why words.Message) { a.game.PictureScanned(w.Name, texts, why) })
	case game.Renew:
		a.save()
		a.page.Update()
	}
}

func (a *app) share(w game.Wish) {
	if !a.canShare {
		a.game.Shared(w, false)
		return
	}
	address := ""
	if w.Link != "" {
		address = a.address + w.Link
	}
	a.page.Share(w.Title, w.Text, address, w.Name, w.Type, w.File,
		func() { a.game.Shared(w, true) }, func() { a.game.Shared(w, false) })
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
func (a *app) Idle() bool {
	return a.game.Idle() && a.game.Kept() == a.saved && a.game.Filed() == a.filed
}

// Frames has the browser give frames or none.
func (a *app) Frames(on bool) { a.page.Frames(on) }

// A look is what the colours depend on.
type look struct{ known, dark, strong bool }

// dress gives the page's text fields the colours of the view.
func (a *app) dress() {
	if now := (look{true, a.Dark(), a.Strong()}); now != a.dressed {
		a.dressed = now
		ground, ink, hint := view.Field(now.dark, now.strong)
		a.page.Dress(ground, ink, hint, now.dark)
	}
}

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
