// Package ask puts questions to the ear and counts the answers: the rules of the
// exercises that are answered by choosing, a naming, a comparison and a limit.
//
// A [Run] is a seed and what was answered; every question, what is right and how
// well it went follow from these and the exercise. So a run is kept, sent and
// marked again without anything that could disagree with it.
package ask
