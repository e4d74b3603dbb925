package wav

// Mono returns one channel of sound: the mean of all channels that are not
// silent. Where they cancel one another, the mean being more than 6 dB below the
// loudest of them (two channels of the same sound in quadrature lose 3 dB, with
// opposite signs everything), it is the loudest channel alone. A channel is
// silent from 40 dB under the loudest on: the crosstalk and noise of an input
// with nothing in it. (Both design choices.)
func (s *Sound) Mono() []float32 {
	if s.Channels == 1 {
		return s.Samples
	}
	frames := len(s.Samples) / s.Channels
	power := make([]float64, s.Channels)
	for i, x := range s.Samples[:frames*s.Channels] {
		power[i%s.Channels] += float64(x) * float64(x)
	}
	loudest := 0
	for c, p := range power {
		if p > power[loudest] {
			loudest = c
		}
	}
	sounding := 0
	out := make([]float32, frames)
	for c, p := range power {
		if p == 0 || p < 1e-4*power[loudest] {
			continue
		}
		sounding++
		for i := range out {
			out[i] += s.Samples[i*s.Channels+c]
		}
	}
	if sounding == 0 {
		return out
	}
	mixed := 0.0
	for i := range out {
		out[i] /= float32(sounding)
		mixed += float64(out[i]) * float64(out[i])
	}
	if mixed >= power[loudest]/4 {
		return out
	}
	for i := range out {
		out[i] = s.Samples[i*s.Channels+loudest]
	}
	return out
}
