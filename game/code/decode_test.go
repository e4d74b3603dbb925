package code

import (
	"math/rand/v2"
	"strings"
	"testing"

	"partialcredit/game/scan"
)

// painted draws a code as a scanner likes it, so many pixels a module.
func painted(c Code, module int) scan.Picture {
	side := c.Side() * module
	p := scan.Picture{W: side, H: side, Grey: make([]byte, side*side)}
	for i := range p.Grey {
		if !c.At(i%side/module-Quiet, i/side/module-Quiet) {
			p.Grey[i] = 255
		}
	}
	return p
}

// letters makes a text of a length as links have them: base64url (RFC 4648).
func letters(n int, seed uint64) string {
	const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
	r := rand.New(rand.NewPCG(seed, 1))
	var b strings.Builder
	for range n {
		b.WriteByte(alphabet[r.IntN(64)])
	}
	return b.String()
}

// The bytes that each version holds at the levels L and M: ISO/IEC 18004, table 7 (from memory).
var capacities = [40][2]int{
	{17, 14}, {32, 26}, {53, 42}, {78, 62}, {106, 84}, {134, 106}, {154, 122}, {192, 152}, {230, 180}, {271, 213},
	{321, 251}, {367, 287}, {425, 331}, {458, 362}, {520, 412}, {586, 450}, {644, 504}, {718, 560}, {792, 624}, {858, 666},
	{929, 711}, {1003, 779}, {1091, 857}, {1171, 911}, {1273, 997}, {1367, 1059}, {1465, 1125}, {1528, 1190}, {1628, 1264}, {1732, 1370},
	{1840, 1452}, {1952, 1538}, {2068, 1628}, {2188, 1722}, {2303, 1809}, {2431, 1911}, {2563, 1989}, {2699, 2099}, {2809, 2213}, {2953, 2331},
}

func TestTheSmallestVersionIsTaken(t *testing.T) {
	for i, row := range capacities {
		for j, level := range []Level{L, M} {
			full, err := Encode(letters(row[j], 1), level)
			if err != nil || full.Version() != i+1 {
				t.Errorf("%d bytes at level %d: version %d, %v, want %d", row[j], level, full.Version(), err, i+1)
			}
			more, err := Encode(letters(row[j]+1, 1), level)
			if i == 39 {
				if err == nil {
					t.Errorf("%d bytes at level %d made a code", row[j]+1, level)
				}
			} else if err != nil || more.Version() != i+2 {
				t.Errorf("%d bytes at level %d: version %d, %v, want %d", row[j]+1, level, more.Version(), err, i+2)
			}
		}
	}
}

// The independent decoder is gozxing, a translation of ZXing.
func TestEveryVersionIsReadAgain(t *testing.T) {
	for i, row := range capacities {
		for j, level := range []Level{L, M} {
			text := letters(row[j], uint64(i))
			c, err := Encode(text, level)
			if err != nil {
				t.Fatal(err)
			}
			for _, module := range []int{2, 3, 4, 8} {
				if module == 8 && i > 9 && i%10 != 9 { // larger ones take long
					continue
				}
				if got, found := scan.Read(painted(c, module)); !found || got != text {
					t.Errorf("version %d, level %d, %d px a module: %.30q, %v", c.Version(), level, module, got, found)
				}
			}
		}
	}
}
