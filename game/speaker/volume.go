package speaker

import "math"

// glide is how many samples the volume takes from 0 to 1: 20 ms.
const glide = Rate / 50

// A volume is a linear gain that moves to its goal without a jump.
type volume struct {
	now, goal float32
}

// to sets the goal, brought into 0 to 1.
func (v *volume) to(goal float64) {
	if math.IsNaN(goal) {
		goal = 0
	}
	v.goal = float32(max(0, min(1, goal)))
}

// next is the gain of the next sample.
func (v *volume) next() float32 {
	if v.now != v.goal {
		const step = float32(1.0 / glide)
		v.now += max(-step, min(step, v.goal-v.now))
	}
	return v.now
}
