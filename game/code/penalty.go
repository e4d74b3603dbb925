package code

// penalty says how hard a code is to find and to read: runs and squares of one colour, what looks
// like a finder, and too much dark or light (ISO/IEC 18004, 7.8.3.1, with its weights 3, 3, 40, 10).
func penalty(c Code) int {
	sum, dark := 0, 0
	for a := range c.Size {
		sum += along(c.Size, func(b int) bool { return c.At(b, a) })
		sum += along(c.Size, func(b int) bool { return c.At(a, b) })
		for b := range c.Size {
			d := c.At(a, b)
			if d {
				dark++
			}
			if a > 0 && b > 0 && d == c.At(a-1, b) && d == c.At(a, b-1) && d == c.At(a-1, b-1) {
				sum += 3
			}
		}
	}
	all := c.Size * c.Size
	away := max(2*dark-all, all-2*dark) // twice the modules away from half
	return sum + 10*(10*away/all)
}

// along is the penalty of one row or column.
func along(size int, dark func(i int) bool) int {
	// A finder is dark 1, light 1, dark 3, light 1, dark 1; four light modules stand before or after.
	const finder, window = 0b1011101, 0b11111111111
	sum, run, seen := 0, 0, 0
	for i := range size + 4 { // the quiet zone is light
		d := i < size && dark(i)
		if i < size {
			if run++; i > 0 && d != dark(i-1) {
				run = 1
			}
			if run == 5 {
				sum += 3
			} else if run > 5 {
				sum++
			}
		}
		seen = seen << 1 & window
		if d {
			seen |= 1
		}
		if seen == finder<<4 || seen == finder {
			sum += 40
		}
	}
	return sum
}
