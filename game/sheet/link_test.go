package sheet

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/binary"
	"hash/crc32"
	"os"
	"strings"
	"testing"

	"partialcredit/game/link"
	"partialcredit/synth"
)

func TestSoundFragment(t *testing.T) {
	sounds := []synth.Sound{synth.Default()}
	for _, e := range Matches().Exercises {
		sounds = append(sounds, e.Target, e.Start())
	}
	for _, s := range sounds {
		link := SoundFragment(s)
		if len(link) > 400 || strings.ContainsAny(link, "+/%# ") {
			t.Errorf("%d characters: %s", len(link), link)
		}
		if back, err := ReadSoundFragment("#" + link); err != nil || back != s {
			t.Errorf("%+v comes back as %+v, %v", s, back, err)
		}
	}
}

// Links that were handed out once; they open for ever.
func TestOldLinks(t *testing.T) {
	data, err := os.ReadFile("../../testdata/links/sounds.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(data)) {
		link, description, found := strings.Cut(strings.TrimSpace(line), " ")
		if !found || strings.HasPrefix(line, "//") {
			continue
		}
		n++
		want, err := synth.Parse([]byte(description))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := ReadSoundFragment(link); err != nil || got != want {
			t.Errorf("%s: %+v, %v", link, got, err)
		}
	}
	if n < 16 {
		t.Errorf("only %d links", n)
	}
}

// fragment packs any text as a link does.
func fragment(text string) string {
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestCompression)
	w.Write([]byte(text))
	w.Close()
	sum := binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(packed.Bytes()))
	return "sound=1." + base64.RawURLEncoding.EncodeToString(append(sum, packed.Bytes()...))
}

func TestBadLinks(t *testing.T) {
	good := SoundFragment(synth.Default())
	for fragment, want := range map[string]error{
		"":                                      link.ErrUnknown,
		"sheet=1.abc":                           link.ErrDamaged,
		"sound=":                                link.ErrDamaged,
		"sound=1":                               link.ErrDamaged,
		"sound=2.abc":                           link.ErrNewer,
		good[:len(good)-1]:                      link.ErrDamaged,
		good + "A":                              link.ErrDamaged,
		"sound=1.!!!":                           link.ErrDamaged,
		fragment("[]"):                          link.ErrDamaged,
		fragment(`{"version": 2}`):              link.ErrDamaged,
		fragment(`{"version": 1, "a.duty": 7}`): link.ErrDamaged,
		fragment(`{"version": 1, "x": "` + strings.Repeat("a", 10<<20) + `"}`):      link.ErrLarge, // 10 MB in 10 kB
		strings.Replace(good, "sound=1.", "sound=1."+strings.Repeat("A", 5<<20), 1): link.ErrLarge,
	} {
		if _, err := ReadSoundFragment(fragment); err != want {
			t.Errorf("%.60s: %v, want %v", fragment, err, want)
		}
	}
}
