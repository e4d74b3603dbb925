package code

import (
	"fmt"
	"strings"
	"testing"

	"partialcredit/game/scan"
)

// The path is filled here by rectangles and read by gozxing; a browser draws it in cmd/partialcredit.
func TestThePathIsTheCode(t *testing.T) {
	text := letters(200, 3)
	c, err := Encode(text, M)
	if err != nil {
		t.Fatal(err)
	}
	const module = 4
	side := c.Side() * module
	p := scan.Picture{W: side, H: side, Grey: make([]byte, side*side)}
	for i := range p.Grey {
		p.Grey[i] = 255
	}
	for piece := range strings.SplitSeq(strings.TrimSuffix(c.Path(), "z"), "z") {
		var x, y, n, back int
		if _, err := fmt.Sscanf(piece, "M%d %dh%dv1h-%d", &x, &y, &n, &back); err != nil || back != n {
			t.Fatalf("%q: %v", piece, err)
		}
		if x < Quiet || y < Quiet || x+n > c.Side()-Quiet || y >= c.Side()-Quiet {
			t.Fatalf("%q lies in the quiet zone", piece)
		}
		for i := range module * module * n {
			p.Grey[(y*module+i/(module*n))*side+x*module+i%(module*n)] = 0
		}
	}
	if got, found := scan.Read(p); !found || got != text {
		t.Errorf("read %.30q, %v", got, found)
	}
}

// Texts of every kind come back as they were: digits, capitals, and letters beyond ASCII in UTF-8.
func TestTextsOfEveryKindAreReadAgain(t *testing.T) {
	for _, text := range []string{
		"1", "4711", "0123456789012345678901234567890", "HTTPS://EXAMPLE.ORG/AB1", "a", "#slip=1.Ab-_9",
		"Übung für Käthe: Sägezahn ≠ Dreieck, 1,5 ¢", "\x00\x01", strings.Repeat("9", 7089), strings.Repeat("A", 4296),
	} {
		c, err := Encode(text, Auto)
		if err != nil {
			t.Errorf("%.20q: %v", text, err)
			continue
		}
		if got, found := scan.Read(painted(c, 3)); !found || got != text {
			t.Errorf("%.20q in version %d is read as %.20q, %v", text, c.Version(), got, found)
		}
	}
}

func TestLevels(t *testing.T) {
	for _, tt := range []struct {
		bytes   int
		version int
		camera  bool
	}{{14, 1, true}, {997, 25, true}, {998, 22, true}, {1273, 25, true}, {1274, 26, false}, {2953, 40, false}} {
		c, err := Encode(letters(tt.bytes, 1), Auto)
		if err != nil || c.Version() != tt.version || c.ForCamera() != tt.camera {
			t.Errorf("%d bytes: version %d, for a camera %v, %v, want %d and %v", tt.bytes, c.Version(), c.ForCamera(), err, tt.version, tt.camera)
		}
	}
	for _, n := range []int{0, Most + 1} {
		if _, err := Encode(strings.Repeat("a", n), Auto); err == nil {
			t.Errorf("%d bytes made a code", n)
		}
	}
	if (Code{}).ForCamera() || (Code{}).At(0, 0) || (Code{}).Path() != "" {
		t.Error("no code is one")
	}
}

// Of the eight masks the one with the least penalty is taken; the rules are tried on rows made by hand.
func TestPenaltyOfARow(t *testing.T) {
	for row, want := range map[string]int{
		"#.#.#.#.#.#.#.#.#.#.#":     0,
		"#####.#.#.#.#.#.#.#.#":     3,      // a run of five
		"########.#.#.#.#.#.#.":     6,      // of eight
		"..##.#.#.#.##.###.#....":   40,     // a finder before four light ones
		"#.##....#.###.#....##.#.#": 2 * 40, // light on both sides counts twice
	} {
		dark := make([]bool, len(row))
		for i := range row {
			dark[i] = row[i] == '#'
		}
		if got := along(dark, len(row), 1); got != want {
			t.Errorf("%s: %d, want %d", row, got, want)
		}
	}
}

func BenchmarkEncode(b *testing.B) {
	for _, n := range []int{300, 997, Most} {
		b.Run(fmt.Sprint(n, " bytes"), func(b *testing.B) {
			text := letters(n, 1)
			for b.Loop() {
				Encode(text, Auto)
			}
		})
	}
}
