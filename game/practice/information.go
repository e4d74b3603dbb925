package practice

import "math"

// Transmitted is the information, in bits an answer, that the answers carry about
// what was played: with p the proportions of all answers (Miller and Nicely 1955,
// J. Acoust. Soc. Am. 27:338; Shannon 1948),
//
//	T = Σ p(i,j) log2(p(i,j) / (p(i) p(j)))
//
// It is 0 where answers have nothing to do with what is played, and at most the
// entropy of what is played: 2 bits for four sounds played equally often. Which
// name stands for which sound does not matter to it: who always swaps two of them
// tells them apart.
//
// Weakness: few answers seem to carry more than they do. See [Confusion.Spurious].
func (c *Confusion) Transmitted() float64 {
	played, answered, all := c.margins()
	if all == 0 {
		return 0
	}
	var bits float64
	labels := c.Labels()
	for i, a := range labels {
		for j, b := range labels {
			if n := float64(c.Count(a, b)); n > 0 {
				bits += n / all * math.Log2(n*all/(played[i]*answered[j]))
			}
		}
	}
	return bits
}

// Relative is the part, 0 to 1, of the information in what was played that the
// answers carry (Miller and Nicely's relative transmission); 0 where always the
// same sound was played.
func (c *Confusion) Relative() float64 {
	played, _, all := c.margins()
	var entropy float64
	for _, n := range played {
		if n > 0 {
			entropy -= n / all * math.Log2(n/all)
		}
	}
	if entropy <= 0 {
		return 0
	}
	return min(1, c.Transmitted()/entropy)
}

// Spurious is how many bits [Confusion.Transmitted] shows on average, to first
// order, where the answers are mere guesses (Miller 1955, from memory): with r
// sounds played, k answers used and N answers given,
//
//	(r-1)(k-1) / (2 N ln 2)
//
// Below about five answers a cell it is a rough guide only.
func (c *Confusion) Spurious() float64 {
	played, answered, all := c.margins()
	if all == 0 {
		return 0
	}
	return float64((used(played)-1)*(used(answered)-1)) / (2 * all * math.Ln2)
}

// margins are how often each label was played and answered, in their order.
func (c *Confusion) margins() (played, answered []float64, all float64) {
	labels := c.Labels()
	played, answered = make([]float64, len(labels)), make([]float64, len(labels))
	for i, a := range labels {
		for j, b := range labels {
			n := float64(c.Count(a, b))
			played[i] += n
			answered[j] += n
			all += n
		}
	}
	return played, answered, all
}

func used(margin []float64) int {
	k := 0
	for _, n := range margin {
		if n > 0 {
			k++
		}
	}
	return k
}
