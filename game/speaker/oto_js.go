package speaker

import (
	"fmt"
	"log"
	"time"

	"github.com/ebitengine/oto/v3"

	"partialcredit/game/words"
	"partialcredit/synth"
)

// chunk is how many samples Oto's worklet pulls at a time: 85 ms. The main
// thread must answer a pull within half a chunk, or there is a gap; from a
// control to the end of our part of the way it takes 1/2 to 3/2 chunks. A power
// of two, as ScriptProcessorNode wants where there are no worklets.
const chunk = 4096

// playing keeps Oto's player reachable: one that is not is closed, and falls
// silent (oto v3.5.0, player.go).
var playing *oto.Player

// Open starts to play through the browser; call it once. There is always a
// Speaker, be it one in the state Failed.
func Open(p Page) Speaker {
	return newChoice(p, p, func() Speaker { return openOto(p) })
}

// openOto starts to play through Oto.
func openOto(d Device) *deck {
	deck := newDeck(d, synth.NewPlayer(Rate), chunk)
	if err := deck.connect(); err != nil {
		deck.err = words.Say("This browser gives the page no sound. Reload the page, or open it in another browser that is up to date.")
		log.Print("no sound: ", err)
	}
	return deck
}

// connect has Oto read from the deck.
func (d *deck) connect() (err error) {
	defer func() {
		if thrown := recover(); thrown != nil { // what the browser threw
			err = fmt.Errorf("%v", thrown)
		}
	}()

	const slack = time.Second / Rate / 2 // the time is rounded down to samples
	context, _, err := oto.NewContext(&oto.NewContextOptions{
		SampleRate:   Rate,
		ChannelCount: 2,
		Format:       oto.FormatFloat32LE,
		BufferSize:   time.Second*chunk/Rate + slack,
	})
	if err != nil {
		return err
	}
	playing = context.NewPlayer(d)
	d.waiting = playing.BufferedSize
	d.device.OnPull(d.gate.announce)
	playing.SetBufferSize(chunk * bytesPerFrame) // less than a chunk would be filled up with silence
	playing.Play()
	return nil
}
