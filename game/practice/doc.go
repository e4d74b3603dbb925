// Package practice decides what to ask next and says how well it was answered:
// a staircase that finds a limit, boxes that bring back what was missed, a table
// of what was taken for what, and the odds of guessing.
//
// Everything is plain data and pure rules. The day, the time spent and a random
// number are arguments; the state goes through encoding/json unharmed and bears
// no version of its own: whoever keeps it does.
//
// "hearing" in comments is hearing.md of the project's references.
package practice
