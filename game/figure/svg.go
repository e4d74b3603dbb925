package figure

import (
	"math"
	"strconv"
	"strings"

	"partialcredit/game/plot"
)

// SVG writes the drawing down (SVG 1.1, W3C 2011).
func (d *Drawing) SVG() string {
	w := &writer{}
	w.put(`<svg xmlns="http://www.w3.org/2000/svg" role="img"`)
	w.attribute("width", float64(d.W))
	w.attribute("height", float64(d.H))
	w.put(` viewBox="0 0 ` + strconv.Itoa(d.W) + " " + strconv.Itoa(d.H) + `">` + "\n")
	w.put("<title>" + Escape(d.Name) + "</title>\n")
	if d.About != "" {
		w.put("<desc>" + Escape(d.About) + "</desc>\n")
	}
	for i := range d.Shapes {
		w.shape(&d.Shapes[i])
		w.put("\n")
	}
	w.put("</svg>\n")
	return w.String()
}

type writer struct{ strings.Builder }

func (w *writer) put(s string) { w.WriteString(s) }

// number writes a length to a hundredth of a pixel.
func (w *writer) number(v float64) {
	v = math.Round(v*100) / 100
	if v == 0 {
		v = 0 // not -0
	}
	var scratch [24]byte
	w.Write(strconv.AppendFloat(scratch[:0], v, 'f', -1, 64))
}

func (w *writer) attribute(name string, v float64) {
	w.put(" " + name + `="`)
	w.number(v)
	w.put(`"`)
}

func (w *writer) pair(x, y float64) {
	w.number(x)
	w.put(" ")
	w.number(y)
}

func (w *writer) shape(s *Shape) {
	switch s.Kind {
	case Line:
		w.put("<path")
		w.line(s.Points)
		w.stroke(s)
		w.put("/>")
	case Dot, Ring:
		w.put("<circle")
		w.attribute("cx", s.Points[0].X)
		w.attribute("cy", s.Points[0].Y)
		w.attribute("r", s.R)
		if s.Kind == Ring {
			w.stroke(s)
		} else {
			w.paint("fill", s)
		}
		w.put("/>")
	case Boxes:
		w.put(`<path shape-rendering="crispEdges" d="`)
		for _, b := range s.Boxes {
			w.put("M")
			w.pair(b.X, b.Y)
			w.put("h")
			w.number(b.W)
			w.put("v")
			w.number(b.H)
			w.put("h")
			w.number(-b.W)
			w.put("z")
		}
		w.put(`"`)
		w.paint("fill", s)
		w.put("/>")
	case Label:
		w.label(s)
	}
}

func (w *writer) line(points []plot.Point) {
	w.put(` d="M`)
	for i, p := range points {
		if i > 0 {
			w.put("L")
		}
		w.pair(p.X, p.Y)
	}
	w.put(`"`)
}

func (w *writer) stroke(s *Shape) {
	w.put(` fill="none"`)
	w.paint("stroke", s)
	w.attribute("stroke-width", s.Width)
	if s.Kind == Line {
		w.put(` stroke-linejoin="round" stroke-linecap="round"`)
	}
	if s.Dash[0] > 0 {
		w.put(` stroke-dasharray="`)
		w.pair(s.Dash[0], s.Dash[1])
		w.put(`"`)
	}
}

func (w *writer) paint(what string, s *Shape) {
	hex := strconv.FormatUint(uint64(s.Colour), 16)
	w.put(" " + what + `="#` + "000000"[min(6, len(hex)):] + hex + `"`)
	if s.Alpha < 1 {
		w.attribute(what+"-opacity", s.Alpha)
	}
}

func (w *writer) label(s *Shape) {
	w.put("<text")
	w.attribute("x", s.Points[0].X)
	w.attribute("y", s.Points[0].Y)
	if s.Turned {
		w.put(` transform="rotate(-90 `)
		w.pair(s.Points[0].X, s.Points[0].Y)
		w.put(`)"`)
	}
	w.put(` font-family="Go, sans-serif"`)
	w.attribute("font-size", s.Size)
	if s.Bold {
		w.put(` font-weight="bold"`)
	}
	switch s.Align {
	case Middle:
		w.put(` text-anchor="middle"`)
	case Right:
		w.put(` text-anchor="end"`)
	}
	w.paint("fill", s)
	w.put(">" + Escape(s.Text) + "</text>")
}
