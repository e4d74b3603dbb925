// Package draft is a sheet while it is written: what can be done to it, what is still
// missing of it, and what its texts may say at first. A draft may be unfinished at any
// time; it stays one that can be kept and read again, and every change can be undone.
package draft
