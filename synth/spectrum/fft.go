package spectrum

import "math"

// An fft is the plan of a transform of n complex values.
//
// It is Stockham's form of the fast transform (C. Van Loan, Computational
// Frameworks for the Fast Fourier Transform, 1992, section 1.7): every pass
// goes from one slice to another, sorts as it goes, and reads and writes in
// runs. FFTPACK's form, as in gonum, takes three to ten times as long in
// WebAssembly.
type fft struct {
	radix []int        // the factors of n, one for each pass
	turn  []complex128 // exp(-2πi·k/n)
}

func newFFT(n int) *fft {
	f := &fft{turn: turns(n, n)}
	left := n
	take := func(p int) {
		for ; left%p == 0; left /= p {
			f.radix = append(f.radix, p)
		}
	}
	take(4) // first, for by4At1
	take(5)
	take(3)
	take(2)
	for p := 7; left > 1; p += 2 {
		take(p)
	}
	return f
}

// turns returns exp(-2πi·k/n) for 0 ≤ k < count, as products of a turn by many
// steps and one by few: sines are most of what a plan costs.
func turns(n, count int) []complex128 {
	turn := func(k int) complex128 {
		s, c := math.Sincos(2 * math.Pi * float64(k) / float64(n))
		return complex(c, -s)
	}
	t := make([]complex128, count)
	few := int(math.Sqrt(float64(count))) + 1
	for k := range min(few, count) {
		t[k] = turn(k)
	}
	for k := few; k < count; k += few {
		many := turn(k)
		for i, w := range t[:min(few, count-k)] {
			t[k+i] = many * w
		}
	}
	return t
}

// forward transforms x; both slices have n values and are overwritten. It
// returns the one of them that holds the result.
func (f *fft) forward(x, y []complex128) []complex128 {
	n, run := len(f.turn), 1
	for _, r := range f.radix {
		n /= r
		switch r {
		case 2:
			f.by2(y, x, n, run)
		case 3:
			f.by3(y, x, n, run)
		case 4:
			if run == 1 {
				f.by4At1(y, x, n)
				break
			}
			f.by4(y, x, n, run)
		case 5:
			f.by5(y, x, n, run)
		default:
			f.by(r, y, x, n, run)
		}
		x, y = y, x
		run *= r
	}
	return x
}

// by makes a pass with any factor r: for each k < n and each place q of a run
//
//	y[q + run·(r·k+j)] = exp(-2πi·j·k/(r·n)) · Σ x[q + run·(k+i·n)]·exp(-2πi·i·j/r)
//
// The others do the same for one factor each.
func (f *fft) by(r int, y, x []complex128, n, run int) {
	for k := range n {
		for j := range r {
			out := y[run*(r*k+j):][:run]
			clear(out)
			for i := range r {
				w := f.turn[run*k*j] * f.turn[i*j%r*(len(f.turn)/r)]
				for q, v := range x[run*(k+i*n):][:run] {
					out[q] += w * v
				}
			}
		}
	}
}

func (f *fft) by2(y, x []complex128, n, run int) {
	for k := range n {
		w := f.turn[run*k]
		in0, in1 := x[run*k:][:run], x[run*(k+n):][:run]
		out0, out1 := y[run*2*k:][:run], y[run*(2*k+1):][:run]
		for q, a := range in0 {
			b := in1[q]
			out0[q] = a + b
			out1[q] = w * (a - b)
		}
	}
}

func (f *fft) by3(y, x []complex128, n, run int) {
	const sin = 0.86602540378443864676 // of 2π/3
	for k := range n {
		w1, w2 := f.turn[run*k], f.turn[run*k*2]
		in0, in1, in2 := x[run*k:][:run], x[run*(k+n):][:run], x[run*(k+2*n):][:run]
		out0, out1, out2 := y[run*3*k:][:run], y[run*(3*k+1):][:run], y[run*(3*k+2):][:run]
		for q, a := range in0 {
			b, c := in1[q], in2[q]
			s, d := b+c, b-c
			even := complex(real(a)-0.5*real(s), imag(a)-0.5*imag(s))
			odd := complex(sin*imag(d), -sin*real(d))
			out0[q] = a + s
			out1[q] = w1 * (even + odd)
			out2[q] = w2 * (even - odd)
		}
	}
}

func (f *fft) by4(y, x []complex128, n, run int) {
	for k := range n {
		w1, w2, w3 := f.turn[run*k], f.turn[run*k*2], f.turn[run*k*3]
		in0, in1, in2, in3 := x[run*k:][:run], x[run*(k+n):][:run], x[run*(k+2*n):][:run], x[run*(k+3*n):][:run]
		out0, out1, out2, out3 := y[run*4*k:][:run], y[run*(4*k+1):][:run], y[run*(4*k+2):][:run], y[run*(4*k+3):][:run]
		for q, a := range in0 {
			b, c, d := in1[q], in2[q], in3[q]
			s, t, u := a+c, b+d, a-c
			v := complex(imag(b)-imag(d), real(d)-real(b))
			out0[q] = s + t
			out1[q] = w1 * (u + v)
			out2[q] = w2 * (s - t)
			out3[q] = w3 * (u - v)
		}
	}
}

// by4At1 is by4 for runs of 1.
func (f *fft) by4At1(y, x []complex128, n int) {
	in0, in1, in2, in3, out := x[:n], x[n:][:n], x[2*n:][:n], x[3*n:][:n], y[:4*n]
	for k, a := range in0 {
		b, c, d := in1[k], in2[k], in3[k]
		s, t, u := a+c, b+d, a-c
		v := complex(imag(b)-imag(d), real(d)-real(b))
		o := out[:4]
		out = out[4:]
		o[0] = s + t
		o[1] = f.turn[k] * (u + v)
		o[2] = f.turn[2*k] * (s - t)
		o[3] = f.turn[3*k] * (u - v)
	}
}

func (f *fft) by5(y, x []complex128, n, run int) {
	const ( // of 2π/5 and 4π/5
		cos1, cos2 = 0.30901699437494742410, -0.80901699437494742410
		sin1, sin2 = 0.95105651629515357212, 0.58778525229247312917
	)
	for k := range n {
		w1, w2, w3, w4 := f.turn[run*k], f.turn[run*k*2], f.turn[run*k*3], f.turn[run*k*4]
		in0, in1, in2, in3, in4 := x[run*k:][:run], x[run*(k+n):][:run], x[run*(k+2*n):][:run], x[run*(k+3*n):][:run], x[run*(k+4*n):][:run]
		out := y[run*5*k:][:run*5]
		out0, out1, out2, out3, out4 := out[:run], out[run:][:run], out[2*run:][:run], out[3*run:][:run], out[4*run:][:run]
		for q, a := range in0 {
			b, c, d, e := in1[q], in2[q], in3[q], in4[q]
			s, t, u, v := b+e, c+d, b-e, c-d
			even1 := complex(real(a)+cos1*real(s)+cos2*real(t), imag(a)+cos1*imag(s)+cos2*imag(t))
			even2 := complex(real(a)+cos2*real(s)+cos1*real(t), imag(a)+cos2*imag(s)+cos1*imag(t))
			odd1 := complex(sin1*imag(u)+sin2*imag(v), -sin1*real(u)-sin2*real(v))
			odd2 := complex(sin2*imag(u)-sin1*imag(v), -sin2*real(u)+sin1*real(v))
			out0[q] = a + s + t
			out1[q] = w1 * (even1 + odd1)
			out2[q] = w2 * (even2 + odd2)
			out3[q] = w3 * (even2 - odd2)
			out4[q] = w4 * (even1 - odd1)
		}
	}
}
