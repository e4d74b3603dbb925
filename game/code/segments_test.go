package code

import (
	"testing"

	"partialcredit/game/link"
)

// A link in the form for codes takes a fifth less room. Two characters of the
// alphanumeric mode take 11 bits, one of the byte mode 8 (ISO/IEC 18004, 7.4.4 and 7.4.5).
func TestLinksInCodesAreShort(t *testing.T) {
	noise := make([]byte, 700) // as incompressible as what is compressed
	for i := range noise {
		noise[i] = byte(i * i * 7919 >> 5)
	}
	plain := link.Pack(link.Sheet, noise)
	long, err := Encode("https://example.org/#"+plain, L)
	if err != nil {
		t.Fatal(err)
	}
	short, err := Encode("https://example.org/#"+link.ForCode(plain), L)
	if err != nil {
		t.Fatal(err)
	}
	if short.Version() >= long.Version() {
		t.Errorf("version %d, against %d in one piece", short.Version(), long.Version())
	}
	how := segments("https://example.org/#" + link.ForCode(plain))
	if len(how) != 2 {
		t.Fatalf("%d segments", len(how))
	}
	head, tail := len("https://example.org/#sheet="), len(link.ForCode(plain))-len("sheet=")
	// Mode (4 bits), count (16 and 11 bits in versions 10 to 26), characters.
	if got, want := bits(how, 26), 4+16+8*head+4+11+11*(tail/2)+6*(tail%2); got != want {
		t.Errorf("%d bits, want %d", got, want)
	}
}
