package practice

import "math"

// AtLeast is the probability, 0 to 1, that somebody who only guesses among m
// answers, at least 2, gets right or more of n questions right: the upper tail of the binomial
// distribution with p = 1/m, summed term by term.
func AtLeast(right, n, m int) float64 {
	p := 1 / float64(m)
	logFactorial := func(k int) float64 {
		l, _ := math.Lgamma(float64(k + 1))
		return l
	}
	var tail float64
	for k := n; k >= max(right, 0); k-- { // the small terms first
		tail += math.Exp(logFactorial(n) - logFactorial(k) - logFactorial(n-k) +
			float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
	}
	return min(tail, 1)
}

// LeastRight is the least number of right answers out of n that guessing among m
// answers reaches with a probability of at most p: 0.05 or 0.01, say. It is n+1
// where even n would not do.
//
// n is to be fixed before the first question: who stops as soon as the number is
// reached is taken in by chance more often than p (hearing 3).
func LeastRight(n, m int, p float64) int {
	least := n + 1
	for least > 0 && AtLeast(least-1, n, m) <= p {
		least--
	}
	return least
}

// Wilson is the 95 % score interval, 0 to 1, of the proportion behind right
// answers out of n (Wilson 1927, J. Am. Stat. Assoc. 22:209):
//
//	(p + z²/2n ± z √(p(1-p)/n + z²/4n²)) / (1 + z²/n),  p = right/n, z = 1.96
//
// It is 0 to 1 where n is 0.
func Wilson(right, n int) (low, high float64) {
	if n == 0 {
		return 0, 1
	}
	const z = 1.959964
	of := float64(n)
	p := float64(right) / of
	middle := p + z*z/(2*of)
	half := z * math.Sqrt(p*(1-p)/of+z*z/(4*of*of))
	whole := 1 + z*z/of
	return max(0, (middle-half)/whole), min(1, (middle+half)/whole)
}
