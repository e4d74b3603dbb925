package view

// A tracer takes the lines and curves of an outline, in font units, y upwards.
type tracer interface {
	move(x, y float64)
	line(x, y float64)
	curve(cx, cy, x, y float64) // quadratic
	shut()
}

type outlinePoint struct {
	x, y float64
	on   bool
}

// trace walks the outline of a glyph, moved by (dx, dy).
func (f *typeface) trace(g glyphID, dx, dy float64, to tracer) {
	b := f.outline(g)
	if len(b) == 0 {
		return
	}
	contours := i16(b, 0)
	if contours < 0 {
		f.traceParts(b[10:], dx, dy, to)
		return
	}
	count := u16(b, 10+2*(contours-1)) + 1
	points := decode(b[10+2*contours:], count)
	first := 0
	for i := range contours {
		last := u16(b, 10+2*i)
		contour(points[first:last+1], dx, dy, to)
		first = last + 1
	}
}

// decode reads the flags and coordinates that follow the hints.
func decode(b []byte, count int) []outlinePoint {
	b = b[2+u16(b, 0):] // the hints
	points := make([]outlinePoint, count)
	flags := make([]byte, 0, count)
	for len(flags) < count {
		flag := b[0]
		b = b[1:]
		flags = append(flags, flag)
		if flag&8 != 0 { // repeated
			for range b[0] {
				flags = append(flags, flag)
			}
			b = b[1:]
		}
	}
	// A coordinate is one byte and a sign, the same as before, or two bytes.
	read := func(short, same byte, set func(p *outlinePoint, v float64)) {
		v := 0
		for i, flag := range flags {
			switch {
			case flag&short != 0:
				d := int(b[0])
				if flag&same == 0 {
					d = -d
				}
				v, b = v+d, b[1:]
			case flag&same == 0:
				v, b = v+i16(b, 0), b[2:]
			}
			set(&points[i], float64(v))
		}
	}
	read(2, 16, func(p *outlinePoint, v float64) { p.x = v })
	read(4, 32, func(p *outlinePoint, v float64) { p.y = v })
	for i, flag := range flags {
		points[i].on = flag&1 != 0
	}
	return points
}

// contour walks one closed curve. Between two control points lies a point on
// the curve that is not written down: their middle.
func contour(points []outlinePoint, dx, dy float64, to tracer) {
	n := len(points)
	start := points[0]
	if !start.on {
		if start = points[n-1]; !start.on {
			start = middle(points[0], points[n-1])
		}
	}
	to.move(start.x+dx, start.y+dy)
	var control *outlinePoint
	step := func(p outlinePoint) {
		switch {
		case control == nil && p.on:
			to.line(p.x+dx, p.y+dy)
		case control != nil && p.on:
			to.curve(control.x+dx, control.y+dy, p.x+dx, p.y+dy)
			control = nil
		case control == nil:
			control = &p
		default:
			m := middle(*control, p)
			to.curve(control.x+dx, control.y+dy, m.x+dx, m.y+dy)
			control = &p
		}
	}
	for _, p := range points {
		step(p)
	}
	start.on = true
	step(start)
	to.shut()
}

func middle(a, b outlinePoint) outlinePoint {
	return outlinePoint{(a.x + b.x) / 2, (a.y + b.y) / 2, true}
}

// traceParts walks a glyph that is put together from others: a letter and its
// accent. Parts may be moved; the Go fonts neither scale nor turn them.
func (f *typeface) traceParts(b []byte, dx, dy float64, to tracer) {
	for more := true; more; {
		flags, part := u16(b, 0), glyphID(u16(b, 2))
		var x, y int
		if flags&1 != 0 {
			x, y, b = i16(b, 4), i16(b, 6), b[8:]
		} else {
			x, y, b = int(int8(b[4])), int(int8(b[5])), b[6:]
		}
		switch { // skip what scales
		case flags&8 != 0:
			b = b[2:]
		case flags&0x40 != 0:
			b = b[4:]
		case flags&0x80 != 0:
			b = b[8:]
		}
		f.trace(part, dx+float64(x), dy+float64(y), to)
		more = flags&0x20 != 0
	}
}
