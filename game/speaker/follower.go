package speaker

import (
	"math"
	"time"
)

// A follower infers how much a pulling device has played, from when it pulls.
//
// The device keeps what it has pulled in a store, and pulls the next chunk when
// less than half a chunk is left there (Oto's worklet: oto v3.5.0,
// driver_js.go). So when a pull is answered, its chunk included in what was
// handed over,
//
//	handed - 3/2 chunk <= played <= handed - chunk
//
// near the lower end when it is answered at once, at the upper end when it is
// answered too late and the device had run dry. Until the next pull the device
// plays Rate samples a second.
//
// Known weakness: it errs to the past by the shortest time an answer takes, a
// few milliseconds. After a device ran dry it may be up to half a chunk ahead,
// until leak has made up for that.
type follower struct {
	chunk int64
	known bool
	count float64       // samples played
	at    time.Duration // when
}

const (
	// leak is how many samples a second the estimate falls behind by itself: more than two clocks
	// differ (100 ppm are 5), so that it does not stay too high.
	leak = 48
	// lost is for how many chunks after a pull the estimate holds: then the device has stood still.
	lost = 3
)

// pulled notes that a chunk was taken, with which handed samples are out of
// hand.
func (f *follower) pulled(now time.Duration, handed int64) {
	low := math.Max(0, float64(handed)-1.5*float64(f.chunk))
	high := math.Max(0, float64(handed-f.chunk))
	count, ok := f.estimate(now)
	if !ok {
		count = low
	}
	count -= leak * (now - f.at).Seconds()
	f.count, f.at, f.known = math.Max(low, math.Min(high, count)), now, true
}

// played is how many of the samples that were handed over the device has
// played; ok is false where that cannot be told.
func (f *follower) played(now time.Duration, handed int64) (count int64, ok bool) {
	e, ok := f.estimate(now)
	return min(int64(e), handed), ok
}

// lose forgets the estimate: the device has stood still.
func (f *follower) lose() { f.known = false }

func (f *follower) estimate(now time.Duration) (count float64, ok bool) {
	passed := (now - f.at).Seconds() * Rate
	return f.count + passed, f.known && passed < lost*float64(f.chunk)
}
