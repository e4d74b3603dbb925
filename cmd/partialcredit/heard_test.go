//go:build !js

package main_test

import (
	"math"
	"time"

	"partialcredit/game/ask"
	"partialcredit/synth"
)

// silenceBetween parts the sounds of a question: they stand 0.4 s apart (game/playing.go).
const silenceBetween = 0.4

// parted are the stretches of sound between silences of 0.25 s and more, at 48 kHz.
func parted(x []float32) (sounds [][]float32, pauses []float64) {
	const least = 12000
	from, last := -1, -1
	for i, v := range x {
		if v == 0 {
			continue
		}
		if from >= 0 && i-last > least {
			sounds = append(sounds, x[from:last+1])
			pauses = append(pauses, float64(i-last)/48000)
			from = i
		}
		if from < 0 {
			from = i
		}
		last = i
	}
	if from >= 0 {
		sounds = append(sounds, x[from:last+1])
	}
	return sounds, pauses
}

// residual is what is left in decibels when as much of one sound as there is in the other is taken from it.
func residual(got, sound []float32) float64 {
	n := min(len(got), len(sound))
	var gg, gs, ss float64
	for i := range n {
		g, s := float64(got[i]), float64(sound[i])
		gg, gs, ss = gg+g*g, gs+g*s, ss+s*s
	}
	return 10 * math.Log10((gg-gs*gs/ss)/gg+1e-12)
}

// alone is a sound as the player plays it once.
func alone(s synth.Sound) []float32 {
	p := synth.NewPlayer(48000)
	p.Play(synth.Program{Items: []synth.Item{{Sound: s, Gain: 1}}, Once: true})
	x := make([]float32, int(48000*(s.Seconds+s.Amplitude.Release+0.1)))
	p.Render(x, nil)
	sounds, _ := parted(x)
	return sounds[0]
}

// hearsQuestion listens to a question with the button and compares what leaves the audio graph, sound by
// sound, with the native rendering of what is asked: each sound is itself and none of the others, there
// is silence between them, and by the loudness of ITU-R BS.1770-4 (synth.Meter; its tests hold it to that
// recommendation) they differ by what the question wants and no more.
func (l *learner) hearsQuestion(q ask.Question) {
	l.t.Helper()
	sounds, louder := q.Sounds, q.Louder
	if q.Lead != nil {
		sounds, louder = append([]synth.Sound{*q.Lead}, sounds...), append([]float64{0}, louder...)
	}
	l.Wait("soundTap.counts().rate === 48000", 10*time.Second)
	l.ForgetSound()
	l.press("listen")
	l.WaitText(widget("listen"), "again", 30*time.Second)
	frames := min(l.SoundCounts().Frames, 20*48000)
	got, pauses := parted(l.newest(frames, 48000).Left)
	if len(got) != len(sounds) {
		l.t.Errorf("%d sounds were heard with pauses of %.2f s, want %d", len(got), pauses, len(sounds))
		return
	}
	for _, p := range pauses {
		if math.Abs(p-silenceBetween) > 0.02 {
			l.t.Errorf("pauses of %.3f s between the sounds, want %v s", pauses, silenceBetween)
		}
	}
	native := make([][]float32, len(sounds))
	for i, s := range sounds {
		native[i] = alone(s)
	}
	level := func(x []float32) float64 {
		m := synth.NewMeter(48000)
		m.Write(x)
		return m.Loudness()
	}
	first := level(got[0]) - louder[0]
	alike := q.Answers[0] == ask.Comparison[0] && q.Right == 0 // it may be one wave by two descriptions
	for i := range got {
		if off := math.Abs(level(got[i]) - louder[i] - first); off > 0.5 {
			l.t.Errorf("sound %d of the question is %.2f LU off", i+1, off)
		}
		own := residual(got[i], native[i])
		l.t.Logf("sound %d: %.1f LKFS of which %+.1f are wanted; %.0f dB are left of it without what was computed natively", i+1, level(got[i]), louder[i], own)
		if own > -40 {
			l.t.Errorf("sound %d of the question is not what is asked: %.1f dB are left", i+1, own)
		}
		for j := range native {
			if sounds[j] != sounds[i] && !alike && residual(got[i], native[j]) < own+6 {
				l.t.Errorf("sound %d of the question cannot be told from sound %d", i+1, j+1)
			}
		}
	}
}
