package code

// penalty says how hard a code is to find and to read: runs and squares of one colour, what looks
// like a finder, and too much dark or light (ISO/IEC 18004, 7.8.3.1, with its weights 3, 3, 40, 10).
func penalty(dark []bool, size int) int {
	sum, all, count := 0, size*size, 0
	for a := range size {
		sum += along(dark[a*size:], size, 1)
		sum += along(dark[a:], size, size)
	}
	for i, d := range dark {
		if d {
			count++
		}
		if i >= size && i%size > 0 && d == dark[i-1] && d == dark[i-size] && d == dark[i-size-1] {
			sum += 3
		}
	}
	away := max(2*count-all, all-2*count) // twice the modules away from half
	return sum + 10*(10*away/all)
}

// along is the penalty of one row or column: of size modules, so far apart.
func along(dark []bool, size, apart int) int {
	// A finder is dark 1, light 1, dark 3, light 1, dark 1; four light modules stand before or after.
	const finder, window = 0b1011101, 0b11111111111
	sum, run, seen, before := 0, 0, 0, false
	for i := range size + 4 { // the quiet zone is light
		d := i < size && dark[i*apart]
		if i < size {
			if run++; d != before {
				run = 1
			}
			if run == 5 {
				sum += 3
			} else if run > 5 {
				sum++
			}
			before = d
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
