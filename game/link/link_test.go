package link

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/binary"
	"hash/crc32"
	"os"
	"strings"
	"testing"
)

// naive packs as the package's comment says, with nothing of its code.
func naive(t testing.TB, key string, dictionary, data []byte) string {
	t.Helper()
	var packed bytes.Buffer
	w, err := flate.NewWriterDict(&packed, flate.DefaultCompression, dictionary)
	if err != nil {
		t.Fatal(err)
	}
	w.Write(data)
	w.Close()
	sum := binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(packed.Bytes()))
	return key + base64.RawURLEncoding.EncodeToString(append(sum, packed.Bytes()...))
}

func TestUnpack(t *testing.T) {
	dictionary, err := os.ReadFile("dictionary.txt")
	if err != nil {
		t.Fatal(err)
	}
	text := []byte(`{"version":1,"title":"Beats"}`)
	good := naive(t, "sheet=1.", dictionary, text)
	for name, link := range map[string]string{
		"a fragment": good, "with its sign": "#" + good, "a whole link": "https://example.org/toy/#" + good,
		"broken into lines by a mail": " " + good[:20] + "\r\n  " + good[20:] + "\n", "our own": Pack(Sheet, text),
		"from a code": ForCode(good), "from a scanned code": "https://example.org/#" + ForCode(Pack(Sheet, text)),
	} {
		k, data, err := Unpack(link)
		if err != nil || k.Name != "sheet" || string(data) != string(text) {
			t.Errorf("%s: %v %q %v", name, k.Name, data, err)
		}
	}
}

func TestRefusedLinks(t *testing.T) {
	good := Pack(Slip, []byte(`{"version":1,"name":"Wren"}`))
	bomb := naive(t, "slip=1.", words, bytes.Repeat([]byte("a"), 10<<20)) // 10 MB in 10 kB
	for name, c := range map[string]struct {
		link string
		want error
	}{
		"empty":                  {"", ErrUnknown},
		"another page's":         {"#chapter-2", ErrUnknown},
		"a key that is not ours": {"#tune=1.AAAA", ErrUnknown},
		"cut after the version":  {"#slip=1.", ErrDamaged},
		"without its version":    {"#slip=", ErrDamaged},
		"cut":                    {good[:len(good)-7], ErrDamaged},
		"longer":                 {good + "A", ErrDamaged},
		"one letter changed":     {strings.Replace(good, "1.", "1.B", 1), ErrDamaged},
		"not base64url":          {"#slip=1.%%%%", ErrDamaged},
		"of a newer version":     {strings.Replace(good, "1.", "2.", 1), ErrNewer},
		"a code that was cut":    {ForCode(good)[:30], ErrDamaged},
		"a newer code":           {strings.Replace(ForCode(good), "1:", "2:", 1), ErrNewer},
		"a bomb":                 {bomb, ErrLarge},
		"too long":               {"#slip=1." + strings.Repeat("A", MostFragment), ErrLarge},
		"a checksum over noise":  {naive(t, "slip=1.", nil, nil)[:10] + "////", ErrDamaged},
	} {
		if _, _, err := Unpack(c.link); err != c.want {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
}

// Every single letter of a link that is changed is noticed.
func TestEveryLetterCounts(t *testing.T) {
	text := `{"version":1,"title":"Beats and more beats"}`
	good := Pack(Sheet, []byte(text))
	for i := range good {
		for _, letter := range "Aq_" {
			bad := good[:i] + string(letter) + good[i+1:]
			if bad == good {
				continue
			}
			if _, data, err := Unpack(bad); err == nil && string(data) != text { // the last letter has bits to spare
				t.Errorf("letter %d: %s is read as %q", i, bad, data)
			}
		}
	}
}

// FuzzUnpack reads any text as a link: it is refused, or packs again into what is read
// as the same.
func FuzzUnpack(f *testing.F) {
	for _, k := range kinds {
		f.Add(Pack(k, []byte(`{"version":1}`)))
	}
	f.Add("#sheet=1.AAAAAAAA")
	f.Add("#" + ForCode(Pack(Slip, []byte(`{"version":1}`))))
	f.Fuzz(func(t *testing.T, link string) {
		k, data, err := Unpack(link)
		if err != nil {
			return
		}
		if len(data) > k.Most {
			t.Errorf("%d bytes unpacked", len(data))
		}
		if _, again, err := Unpack(Pack(k, data)); err != nil || !bytes.Equal(again, data) {
			t.Errorf("%q comes back as %q, %v", data, again, err)
		}
	})
}
