package ui

// A Rect is a rectangle.
type Rect struct{ X, Y, W, H float64 }

// Contains reports whether the point lies in r.
func (r Rect) Contains(x, y float64) bool {
	return x >= r.X && x < r.X+r.W && y >= r.Y && y < r.Y+r.H
}

// Right is the right edge of r.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom is the lower edge of r.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Inset returns r made smaller by d on every side.
func (r Rect) Inset(d float64) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// CutTop splits r into its uppermost h and what lies a gap below it.
func (r Rect) CutTop(h, gap float64) (top, rest Rect) {
	return Rect{r.X, r.Y, r.W, h}, Rect{r.X, r.Y + h + gap, r.W, r.H - h - gap}
}

// CutBottom splits r into its lowest h and what lies a gap above it.
func (r Rect) CutBottom(h, gap float64) (bottom, rest Rect) {
	return Rect{r.X, r.Bottom() - h, r.W, h}, Rect{r.X, r.Y, r.W, r.H - h - gap}
}

// CutLeft splits r into its leftmost w and what lies a gap to the right of it.
func (r Rect) CutLeft(w, gap float64) (left, rest Rect) {
	return Rect{r.X, r.Y, w, r.H}, Rect{r.X + w + gap, r.Y, r.W - w - gap, r.H}
}

// Columns splits r into columns of equal width with a gap between.
func (r Rect) Columns(n int, gap float64) []Rect {
	out := make([]Rect, n)
	w := (r.W - gap*float64(n-1)) / float64(n)
	for i := range out {
		out[i] = Rect{r.X + float64(i)*(w+gap), r.Y, w, r.H}
	}
	return out
}

// Rows splits r into rows of equal height with a gap between.
func (r Rect) Rows(n int, gap float64) []Rect {
	out := make([]Rect, n)
	h := (r.H - gap*float64(n-1)) / float64(n)
	for i := range out {
		out[i] = Rect{r.X, r.Y + float64(i)*(h+gap), r.W, h}
	}
	return out
}
