package game

import (
	"bytes"
	"math"
	"strings"
	"testing"
	"time"

	"partialcredit/game/mark"
	"partialcredit/game/sheet"
	"partialcredit/game/ui"
	"partialcredit/game/words"
	"partialcredit/synth"
	"partialcredit/synth/take"
	"partialcredit/synth/wav"
)

// wavOf is a WAV file of 16 bits at 44.1 kHz, with a little silence before the note.
func wavOf(t testing.TB, samples []float32) File {
	t.Helper()
	const rate = 44100
	s := &wav.Sound{Rate: rate, Channels: 1, Samples: append(make([]float32, rate/4), samples...)}
	var b bytes.Buffer
	if err := wav.Write(&b, s, wav.PCM16); err != nil {
		t.Fatal(err)
	}
	return File{Name: "note.wav", Data: b.Bytes()}
}

// recordingOf is a sound as if recorded.
func recordingOf(t testing.TB, s synth.Sound) File {
	return wavOf(t, synth.Render(s, 44100))
}

// settled lets the page say what takes long, and do it.
func (p *player) settled() {
	p.t.Helper()
	for n := 0; p.game.taking.soon != nil; n++ {
		if p.tick(); n > 60 {
			p.t.Fatal("what takes long is never done")
		}
	}
	p.tick()
}

func (p *player) hands(f File) {
	p.t.Helper()
	p.game.Opened("recording", []File{f})
	p.settled()
}

// pulse is the sound of these tests: a narrow pulse a little flat.
func pulse() synth.Sound {
	s := synth.Default()
	s.A.Shape, s.A.Duty, s.A.Cents = synth.Pulse, 0.2, -12
	return s
}

// Marking a recording holds no frame for long: a piece a tick, while the page says so, and
// nothing of it is left where the page is left; what is being marked stays as it is.
func TestMarkingARecordingGoesInPieces(t *testing.T) {
	p := newPlayer(t)
	p.game.kept.Hinted = true
	p.pressID("recording")
	s := pulse()
	s.Combine.How, s.B.Footage = synth.Mix, 4
	p.hands(recordingOf(t, s))
	p.pressID("beside")
	pieces := func() (n int) {
		t.Helper()
		for p.game.taking.soon != nil {
			if g := p.game; g.page != besidePage || g.Idle() || !strings.Contains(g.scene.Body, "Marking") {
				t.Fatalf("while it marks: page %s, idle %v, said %q", pageNames[g.page], g.Idle(), g.scene.Body)
			}
			before := p.game.work.yours
			p.game.set(0, p.game.work.controls[0].Max)
			if p.game.work.yours != before {
				t.Fatal("what is being marked can be set")
			}
			if n++; n > 200 {
				t.Fatal("it is never done")
			}
			p.tick()
		}
		return n
	}
	p.pressID("mark take")
	p.tick()
	least := int(soonAfter/tick) + 10
	if n := pieces(); n < least {
		t.Errorf("only %d ticks, want %d", n, least)
	}
	if p.game.page != takenPage || p.game.work.marks <= 0 {
		t.Errorf("page %s, %v marks", pageNames[p.game.page], p.game.work.marks)
	}
	want := mark.PrepareTake(p.game.taking.take).Mark(p.game.work.yours, 1)
	if p.game.work.result.Marks != want.Marks || len(p.game.work.result.Reasons) != len(want.Reasons) {
		t.Errorf("%v marks, at once %v", p.game.work.result.Marks, want.Marks)
	}
	p.pressID("set on")
	p.pressID("mark take")
	for range int(soonAfter/tick) + 4 {
		p.tick()
	}
	if p.game.taking.soon == nil {
		t.Fatal("it is done already")
	}
	p.game.act(ui.Action{Widget: "back to it"})
	p.tick()
	p.pressID("course")
	for range 20 {
		p.tick()
	}
	if g := p.game; g.taking.soon != nil || g.taking.stop != nil || g.page != contents || !g.Idle() || g.work.marks != 0 {
		t.Errorf("after leaving: page %s, idle %v", pageNames[g.page], g.Idle())
	}
}

func TestARecordingIsMatched(t *testing.T) {
	p := newPlayer(t)
	p.game.kept.Hinted = true
	before := string(p.game.Save())
	p.pressID("recording")
	p.pressID("open take")
	w := p.game.Wishes()
	if len(w) != 1 || w[0].Kind != OpenFile || w[0].Purpose != "recording" || w[0].Most != MostDropped {
		t.Fatalf("wishes: %+v", w)
	}
	p.hands(recordingOf(t, pulse()))
	if g := p.game; !strings.HasPrefix(g.scene.Title, "A3 -12 cents, 218.5 Hz, 2.0 s") {
		t.Errorf("found %q", g.scene.Title)
	}
	if len(p.game.scene.Trace.Yours.Samples) == 0 || len(p.game.scene.Partials.Yours) < 10 {
		t.Error("the recording is not pictured")
	}
	p.pressID("yours")
	if r, gain := p.game.Recording(); r != p.game.taking.take || gain <= 0 || gain > 1 {
		t.Errorf("it is played with %v", gain)
	}
	if len(p.game.Program().Items) > 0 {
		t.Error("something else is played with it")
	}
	p.pressID("beside")
	if r, _ := p.game.Recording(); r != nil {
		t.Error("it is played on the next page")
	}
	p.pressID("mark take")
	p.settled()
	if far := p.game.work.marks; far > 60 || len(p.game.work.result.Reasons) == 0 {
		t.Errorf("a sawtooth gets %v marks, with the reasons %v", far, p.game.work.result.Reasons)
	}
	p.pressID("set on")
	for name, v := range map[string]float64{"a.shape": float64(synth.Pulse), "a.duty": 0.2, "a.cents": -12} {
		for i := range p.game.work.controls {
			if p.game.work.controls[i].Fields[0] == name {
				p.game.set(i, v)
			}
		}
	}
	p.pressID("mark take")
	if p.tick(); !strings.Contains(p.game.scene.Title+p.game.scene.Body, "Marking") {
		t.Error("the page does not say that it marks")
	}
	p.settled()
	if p.game.work.marks < 90 {
		t.Errorf("the same sound gets %v marks: %v", p.game.work.marks, p.game.work.result.Reasons)
	}
	if len(p.game.scene.Trace.Target.Samples) == 0 || len(p.game.scene.Partials.Marked) == 0 {
		t.Error("the marked page shows no target or no ticks")
	}
	p.pressID("course")
	if p.game.taking.take != nil {
		t.Error("the recording is kept")
	}
	if after := string(p.game.Save()); after != before {
		t.Errorf("something was kept: %s, before %s", after, before)
	}
}

// In turn, the recording sounds first, then what was set, then the recording again.
func TestARecordingSoundsInTurn(t *testing.T) {
	p := newPlayer(t)
	p.game.kept.Hinted = true
	s := pulse()
	s.Seconds = 0.6
	p.hands(recordingOf(t, s))
	p.pressID("beside")
	p.pressID("turn")
	var heard []string
	for range 200 {
		p.listen()
		p.tick()
		r, _ := p.game.Recording()
		now := "nothing"
		switch items := p.game.Program().Items; {
		case r != nil && len(items) > 0:
			now = "both"
		case r != nil:
			now = "recording"
		case len(items) == 1 && items[0].ID == int(toYours):
			now = "yours"
		}
		if len(heard) == 0 || heard[len(heard)-1] != now {
			heard = append(heard, now)
		}
	}
	if got := strings.Join(heard, ", "); !strings.HasPrefix(got, "recording, yours, recording") || strings.Contains(got, "both") || strings.Contains(got, "nothing") {
		t.Errorf("heard: %s", got)
	}
	if len(p.game.work.wanted.samples) == 0 || p.game.work.wanted.live {
		t.Error("the picture of the recording is gone")
	}
}

func TestARecordingAnswersAnExercise(t *testing.T) {
	p := newPlayerOf(t, sixteen(t))
	p.game.kept.Hinted = true
	p.pressID("sheet 0")
	p.pressID("exercise 0")
	e := p.game.exercise()
	p.pressID("record answer")
	p.hands(recordingOf(t, e.Target))
	p.pressID("answer take")
	p.settled()
	g := p.game
	if g.page != takenPage || g.work.marks < 90 {
		t.Errorf("on page %s the target itself gets %v marks: %v", pageNames[g.page], g.work.marks, g.work.result.Reasons)
	}
	if k := g.kept.Marks[e.ID]; k.Tries != 1 || k.Best != g.work.marks {
		t.Errorf("kept: %+v", k)
	}
	if !strings.Contains(g.scene.Body, takeOther) {
		t.Errorf("said: %s", g.scene.Body)
	}
	p.pressID("target")
	if items := g.Program().Items; len(items) != 1 || items[0].ID != int(toTarget) {
		t.Errorf("the target is played by %v", items)
	}
	p.pressID("yours")
	if r, _ := g.Recording(); r == nil {
		t.Error("the recording is not played")
	}
	p.pressID("exercise 0")
	if g.page != working || g.taking.take != nil {
		t.Errorf("back on %s", pageNames[g.page])
	}
}

// On a sheet that was given no marks are kept: no slip could prove them.
func TestARecordingStandsOnNoSlip(t *testing.T) {
	p := newPlayerOf(t, sixteen(t))
	p.game.kept.Hinted = true
	s := assignment(false)
	p.game.Follow("#" + s.Fragment())
	p.tick()
	for i := range s.Exercises {
		if s.Exercises[i].Kind == sheet.Match {
			p.pressID(numberedID("exercise", i))
			break
		}
	}
	e := p.game.exercise()
	p.pressID("record answer")
	p.hands(recordingOf(t, e.Target))
	p.pressID("answer take")
	p.settled()
	g := p.game
	if g.work.marks < 90 || g.kept.Marks[e.ID].Tries != 0 || len(g.makeSlip().Work) != 0 {
		t.Errorf("%v marks, kept %+v, on the slip %v", g.work.marks, g.kept.Marks[e.ID], g.makeSlip().Work)
	}
	if !strings.Contains(g.scene.Body, takeKept) {
		t.Errorf("said: %s", g.scene.Body)
	}
}

func TestWhatIsNoNoteIsRefused(t *testing.T) {
	p := newPlayer(t)
	p.pressID("recording")
	noise, seed := make([]float32, 44100), uint32(1)
	for i := range noise {
		seed = seed*1664525 + 1013904223 // from Numerical Recipes, from memory
		noise[i] = float32(int32(seed)) / (1 << 33)
	}
	clipped := make([]float32, 44100)
	for i := range clipped {
		clipped[i] = float32(max(-1, min(1, 2*math.Sin(float64(i)/30))))
	}
	brief := synth.Default()
	brief.Seconds = 0.1
	two := append(synth.Render(synth.Default(), 44100), make([]float32, 22050)...)
	two = append(two, synth.Render(synth.Default(), 44100)...)
	cut := recordingOf(t, pulse())
	cut.Data = cut.Data[:len(cut.Data)/2]
	for _, c := range []struct {
		name string
		file File
		want string
	}{
		{"silence", wavOf(t, make([]float32, 44100)), "it is silent"},
		{"noise", wavOf(t, noise), "only noise"},
		{"clipped", wavOf(t, clipped), "clipped"},
		{"brief", wavOf(t, synth.Render(brief, 44100)[:2500]), "too short"},
		{"two", wavOf(t, two), "several notes"},
		{"long", wavOf(t, make([]float32, 61*44100)), "too long"},
		{"MP3", File{"a.mp3", []byte("ID3\x03 and so on, and so on")}, "not a WAV file"},
		{"empty", File{"a.wav", []byte{}}, "not a WAV file"},
		{"cut off", cut, "cut off"},
		{"unreadable", File{"a.wav", nil}, "64 MB"},
		{"large", File{"a.wav", make([]byte, MostDropped+1)}, "64 MB"},
	} {
		p.hands(c.file)
		if g := p.game; g.page != takePage || g.taking.take != nil || !strings.Contains(g.taking.wrong, c.want) || !strings.Contains(g.scene.Body, c.want) || g.say != g.taking.wrong {
			t.Errorf("%s: on %s: %q", c.name, pageNames[g.page], g.taking.wrong)
		}
	}
	p.game.Speak([]string{"de"})
	p.hands(wavOf(t, make([]float32, 44100)))
	if !strings.Contains(p.game.taking.wrong, "Aufnahme") {
		t.Errorf("in German: %q", p.game.taking.wrong)
	}
}

func TestADroppedRecordingIsTaken(t *testing.T) {
	p := newPlayer(t)
	p.game.kept.Hinted = true
	p.game.Dropped([]File{recordingOf(t, pulse())})
	p.settled()
	if p.game.page != takePage || p.game.taking.take == nil {
		t.Errorf("on %s: %q", pageNames[p.game.page], p.game.taking.wrong)
	}
}

func TestTheDeviceRecords(t *testing.T) {
	p := newPlayer(t)
	p.game.kept.Hinted = true
	p.pressID("recording")
	wish := func(kind WishKind) {
		t.Helper()
		if w := p.game.Wishes(); len(w) != 1 || w[0].Kind != kind {
			t.Fatalf("wishes %+v, want %v", w, kind)
		}
	}
	p.pressID("record")
	wish(Record)
	p.game.RecordingLevel(0.25, 0.5)
	p.tick()
	if m := p.game.scene.Meter; math.Abs(m.Level-0.8) > 0.01 { // -12 dB of 60
		t.Errorf("the meter shows %v", m.Level)
	}
	p.pressID("stop recording")
	wish(StopRecord)
	p.game.Recorded(synth.Render(pulse(), 44100), 44100)
	p.settled()
	if p.game.taking.take == nil || p.game.scene.Meter.Rect.W > 0 {
		t.Errorf("refused: %q", p.game.taking.wrong)
	}
	p.pressID("another")
	p.pressID("record")
	wish(Record)
	p.game.RecordFailed(words.Say("The page is gone."))
	p.tick()
	if p.game.taking.wrong == "" || p.game.taking.device.on {
		t.Error("a failure is not told")
	}
	p.pressID("record")
	wish(Record)
	p.game.act(ui.Action{Widget: "course"}) // leaving turns it off
	wish(DropRecord)
	p.game.Recorded(synth.Render(pulse(), 44100), 44100)
	if p.tick(); p.game.taking.take != nil || p.game.taking.soon != nil {
		t.Error("what comes after leaving is taken")
	}
	for range 10 {
		p.tick()
	}
	if p.now < time.Second/10 || !p.game.Idle() {
		t.Error("not at rest")
	}
}

// takePages turns to every page that is about a recording.
func takePages(g *Game, look func(name string)) {
	press := func(id string) { g.act(ui.Action{Widget: id}) }
	done := func(t *take.Take) { // without the waiting
		g.forget()
		g.taking.take, g.taking.level = t, levelOf(t)
		g.pictureTake()
	}
	t, err := take.Find(synth.Render(pulse(), Rate), Rate)
	if err != nil {
		panic(err)
	}
	reasons := []mark.Reason{
		{Text: words.Say(take.ErrSeveral.Error()), Cost: 4}, // as long as reasons are
		{Text: words.Say(take.ErrClipped.Error()), Cost: 2},
	}
	press("sheet 1")
	at := 0
	for i, e := range g.sheet().Exercises {
		if e.Kind == sheet.Match {
			at = i
		}
	}
	press(numberedID("exercise", at))
	press("record answer")
	look("a recording as an answer")
	press("record")
	look("a recording is waited for")
	g.RecordingLevel(0.3, 2)
	look("it records")
	g.RecordFailed(words.Say("There is no microphone or line input that this page can use. Connect one, or open a WAV file."))
	look("a recording failed")
	g.refuseTake(g.refusal(wav.ErrCompressed))
	look("a recording refused")
	done(t)
	look("an answer recorded")
	g.page = takenPage
	g.work = compare(g.exercise().Target, g.exercise().Start(), nil)
	g.work.mine.recorded(t)
	g.work.result.Reasons, g.work.marks = reasons, 62
	look("an answer recorded, marked")
	press("course")
	press("recording")
	look("a recording")
	done(t)
	look("a recording found")
	noPitch := *t
	noPitch.Hz = 0
	done(&noPitch)
	look("a recording without a pitch")
	done(t)
	press("beside")
	for part := range benchParts {
		press(numberedID("part", part))
		look("beside a recording " + benchParts[part].name)
	}
	g.soon(g.t("Marking …"), func(func()) func() { return nil })
	g.dirty = true
	g.layout()
	g.forget()
	g.show(takenPage)
	g.work.result.Reasons, g.work.marks = reasons, 62
	look("beside a recording, marked")
	press("course")
}
