// Package game is the rules: which page is open, what sounds, what a finger or
// a key changes, what is handed in and kept. [Game.Update] takes the input of
// one tick; [Game.Scene] says what to draw and [Game.Program] what to play.
// It knows no pixels, no devices and no clock.
package game
