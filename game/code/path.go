package code

import "strconv"

// Side is the length of a code with its quiet zone, in modules: the size of the view box of Path.
func (c Code) Side() int { return c.Size + 2*Quiet }

// Path is the dark modules as the data of an SVG path (SVG 2, 9.3), one unit a module, with the quiet
// zone around them. Fill it black on white; shape-rendering="crispEdges" keeps seams away.
func (c Code) Path() string {
	var d []byte
	c.Runs(func(x, y, n int) {
		d = append(d, 'M')
		d = strconv.AppendInt(d, int64(x+Quiet), 10)
		d = append(d, ' ')
		d = strconv.AppendInt(d, int64(y+Quiet), 10)
		d = append(d, 'h')
		d = strconv.AppendInt(d, int64(n), 10)
		d = append(d, "v1h-"...)
		d = strconv.AppendInt(d, int64(n), 10)
		d = append(d, 'z')
	})
	return string(d)
}

// Runs calls draw for every run of dark modules in a row: where it begins, and how many there are.
func (c Code) Runs(draw func(x, y, n int)) {
	for y := range c.Size {
		for x := 0; x < c.Size; {
			n := 0
			for c.At(x+n, y) {
				n++
			}
			if n > 0 {
				draw(x, y, n)
			}
			x += n + 1
		}
	}
}
