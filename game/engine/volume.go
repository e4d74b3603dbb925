package engine

import "math"

// Glide is how many samples the volume takes from 0 to 1: 20 ms at 48 kHz.
const Glide = 960

// A Volume is a linear gain that moves to its goal without a jump. It starts
// at 0.
type Volume struct {
	now, goal float32
}

// To sets the goal, brought into 0 to 1, NaN to 0.
func (v *Volume) To(goal float64) {
	if math.IsNaN(goal) {
		goal = 0
	}
	v.goal = float32(max(0, min(1, goal)))
}

// Next is the gain of the next sample.
func (v *Volume) Next() float32 {
	if v.now != v.goal {
		const step = float32(1.0 / Glide)
		v.now += max(-step, min(step, v.goal-v.now))
	}
	return v.now
}
