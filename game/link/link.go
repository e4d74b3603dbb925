// Package link packs things into the fragment of a link, which no server gets to see:
//
//	#sheet=1.…
//
// says what the thing is and in which version it is packed; … is base64url (RFC 4648,
// without padding) of the CRC-32 of the rest, four bytes, the highest first, and the
// rest: the thing, compressed (RFC 1951). In a QR code a colon follows the version, and
// base32 (RFC 4648, without padding): its capitals take a fifth less room there.
package link

import (
	"bytes"
	"compress/flate"
	_ "embed"
	"encoding/base32"
	"encoding/base64"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"strings"
)

// A Kind is what a link leads to.
type Kind struct {
	Name  string // as it stands in the link
	Most  int    // bytes unpacked
	words bool   // it is packed with the dictionary
}

// The kinds.
var (
	Sound = Kind{Name: "sound", Most: 64 << 10}
	Sheet = Kind{Name: "sheet", Most: 256 << 10, words: true}
	Slip  = Kind{Name: "slip", Most: 64 << 10, words: true}
)

var kinds = []Kind{Sound, Sheet, Slip}

// version is that of the packing and of what is packed; a newer one is refused.
const version = "1"

// MostFragment is the longest fragment that is read, in bytes.
const MostFragment = 128 << 10

// What is wrong with a link, in sentences for whoever has followed it.
var (
	ErrDamaged = errors.New("This link is damaged: a part of it is missing or changed. Copy all of it, or ask for it again.")
	ErrNewer   = errors.New("This link was made by a newer version of the program. Reload the page to get that version, then open the link again.")
	ErrUnknown = errors.New("This link leads to nothing that this program knows. Ask for it again.")
	ErrLarge   = errors.New("This link holds more than any sheet or sound does, so it is not opened. Ask for it again.")
)

// words are what sheets and slips consist of; links that were handed out are packed
// with it, so that not a byte of it may change.
//
//go:embed dictionary.txt
var words []byte

func (k Kind) dictionary() []byte {
	if k.words {
		return words
	}
	return nil
}

// Pack gives the fragment that holds data, without the # sign.
func Pack(k Kind, data []byte) string {
	var packed bytes.Buffer
	w, _ := flate.NewWriterDict(&packed, flate.BestCompression, k.dictionary()) // the level is valid
	w.Write(data)                                                               // into memory: no errors
	w.Close()
	sum := binary.BigEndian.AppendUint32(nil, crc32.ChecksumIEEE(packed.Bytes()))
	return k.Name + "=" + version + "." + base64.RawURLEncoding.EncodeToString(append(sum, packed.Bytes()...))
}

// ForCode gives a fragment that [Pack] gave in the form that takes the least room in a QR
// code. It is read as the same.
func ForCode(fragment string) string {
	key, packed, ok := strings.Cut(fragment, ".")
	data, err := base64.RawURLEncoding.DecodeString(packed)
	if !ok || err != nil {
		return fragment
	}
	return key + ":" + capitals.EncodeToString(data)
}

var capitals = base32.StdEncoding.WithPadding(base32.NoPadding)

// Unpack reads a fragment, with or without the # sign, or a whole link. The error is a
// sentence for whoever has followed it.
func Unpack(fragment string) (k Kind, data []byte, err error) {
	if len(fragment) > MostFragment {
		return Kind{}, nil, ErrLarge
	}
	k, body, ok := find(fragment)
	if !ok {
		return Kind{}, nil, ErrUnknown
	}
	end := strings.IndexAny(body, ".:")
	if end < 1 {
		return k, nil, ErrDamaged
	}
	v, packed := body[:end], body[end+1:]
	switch {
	case v != version:
		return k, nil, ErrNewer
	case body[end] == ':':
		data, err = capitals.DecodeString(packed)
	default:
		data, err = base64.RawURLEncoding.DecodeString(packed)
	}
	if err != nil || len(data) < 5 || binary.BigEndian.Uint32(data) != crc32.ChecksumIEEE(data[4:]) {
		return k, nil, ErrDamaged
	}
	text, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(bytes.NewReader(data[4:]), k.dictionary()), int64(k.Most)+1))
	switch {
	case len(text) > k.Most:
		return k, nil, ErrLarge
	case err != nil:
		return k, nil, ErrDamaged
	}
	return k, text, nil
}

// find finds what a fragment or a link leads to, and what follows it.
func find(link string) (Kind, string, bool) {
	if i := strings.LastIndexByte(link, '#'); i >= 0 {
		link = link[i+1:]
	}
	link = strings.Join(strings.Fields(link), "") // what a mail has broken into lines
	for _, k := range kinds {
		if body, ok := strings.CutPrefix(link, k.Name+"="); ok {
			return k, body, true
		}
	}
	return Kind{}, "", false
}
