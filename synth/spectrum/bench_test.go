package spectrum

import (
	"fmt"
	"testing"
)

// BenchmarkReal transforms two seconds at 48 kHz and the frame of a low note.
func BenchmarkReal(b *testing.B) {
	for _, n := range []int{96000, 900} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			r, x, w := NewReal(n), make([]float32, n), Hann.Samples(n)
			for i := range x {
				x[i] = float32(i % 7)
			}
			for b.Loop() {
				r.Coefficients(x, w)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/value")
		})
	}
}

// BenchmarkComplex transforms the bands of marking.
func BenchmarkComplex(b *testing.B) {
	for _, n := range []int{256 * 3, 256 * 45} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			c, x := NewComplex(n), make([]complex128, n)
			x[1] = 1
			for b.Loop() {
				c.Backward(x)
				x[0], x[1] = 0, 1
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/value")
		})
	}
}

// BenchmarkNew prepares transforms.
func BenchmarkNew(b *testing.B) {
	for b.Loop() {
		NewReal(96000)
	}
}
