package sheet

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"errors"
	"hash/crc32"
	"io"
	"strings"

	"partialcredit/synth"
)

// A link carries what it shows in its fragment, which no server gets to see:
//
//	#sound=1.…
//
// where 1 is the version and … base64url (RFC 4648, without padding) of the CRC-32
// of the rest, four bytes, the highest first, and the rest: a description of the
// sound as JSON, compressed (RFC 1951).
const (
	soundKey    = "sound="
	linkVersion = "1."
	mostLink    = 64 << 10 // bytes unpacked: no sound comes near
)

// What is wrong with a link, in sentences for whoever has followed it.
var (
	ErrLinkDamaged = errors.New("This link is damaged: a part of it is missing or changed. Copy all of it, or ask for it again.")
	ErrLinkNewer   = errors.New("This link was made by a newer version of the program. Reload the page to get that version, then open the link again.")
	ErrLinkUnknown = errors.New("This link leads to nothing that this program knows. Ask for it again.")
)

// SoundFragment is the fragment of a link to a sound, without the # sign.
func SoundFragment(s synth.Sound) string {
	text := map[string]any{"version": synth.Version}
	standard := synth.Default()
	for _, f := range synth.Fields() {
		v := f.Get(&s)
		switch {
		case v == f.Get(&standard):
		case f.Unit == synth.Feet:
			text[f.Name] = json.Number(f.Choices[int(v)])
		case len(f.Choices) > 0:
			text[f.Name] = f.Choices[int(v)]
		default:
			text[f.Name] = v
		}
	}
	data, err := json.Marshal(text)
	if err != nil {
		panic("sheet: a sound as a link: " + err.Error()) // names and finite numbers
	}
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.BestCompression) // the level is valid
	w.Write(data)                                           // into memory: no errors
	w.Close()
	sum := binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(packed.Bytes()))
	return soundKey + linkVersion + base64.RawURLEncoding.EncodeToString(append(sum, packed.Bytes()...))
}

// ReadSoundFragment reads the fragment of a link to a sound, with or without the #
// sign. The error is a sentence for whoever has followed the link.
func ReadSoundFragment(fragment string) (synth.Sound, error) {
	body, ok := strings.CutPrefix(strings.TrimPrefix(fragment, "#"), soundKey)
	if !ok {
		return synth.Sound{}, ErrLinkUnknown
	}
	version, packed, found := strings.Cut(body, ".")
	switch {
	case !found || version == "":
		return synth.Sound{}, ErrLinkDamaged
	case version+"." != linkVersion:
		return synth.Sound{}, ErrLinkNewer
	}
	data, err := base64.RawURLEncoding.DecodeString(packed)
	if err != nil || len(data) < 5 || binary.BigEndian.Uint32(data) != crc32.ChecksumIEEE(data[4:]) {
		return synth.Sound{}, ErrLinkDamaged
	}
	text, err := io.ReadAll(io.LimitReader(flate.NewReader(bytes.NewReader(data[4:])), mostLink+1))
	if err != nil || len(text) > mostLink {
		return synth.Sound{}, ErrLinkDamaged
	}
	s, err := synth.Parse(text)
	if err != nil {
		return synth.Sound{}, ErrLinkDamaged
	}
	return s, nil
}
