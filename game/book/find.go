package book

import (
	"errors"
	"strings"

	"partialcredit/game/link"
	"partialcredit/game/sheet"
	"partialcredit/game/slip"
)

// found is a slip or a sheet in a text, or what was to be one.
type found struct {
	line  int    // from 1
	text  string // the fragment
	slip  *slip.Slip
	sheet *sheet.Sheet
	err   error
}

// mostLines is into how many lines a mail may have broken one link (design choice): a
// slip of the greatest length in lines of 76 characters (RFC 2045) has as many.
const mostLines = link.MostFragment / 76

// find finds every slip and every sheet in a text, by what their links begin with. Mails
// break links into lines, quote them with > and, in quoted-printable (RFC 2045), end
// lines with = and write = as =3D: the checksum says when all of one has been put
// together again.
func find(text string) []found {
	var all []found
	line := 1
	for {
		i, kind := next(text)
		if i < 0 {
			return all
		}
		line += strings.Count(text[:i], "\n")
		head := text[i:]
		end := len(head)
		if j, _ := next(head[len(kind.Name):]); j >= 0 {
			end = len(kind.Name) + j
		}
		f := gather(kind, head[:end])
		f.line = line
		all = append(all, f)
		line += strings.Count(head[:end], "\n")
		text = head[end:]
	}
}

// next is where the next slip or sheet begins; -1 where there is none.
func next(text string) (at int, kind link.Kind) {
	at = -1
	for _, k := range []link.Kind{link.Slip, link.Sheet} {
		for from := 0; ; {
			i := strings.Index(text[from:], k.Name+"=")
			if i < 0 || at >= 0 && from+i > at {
				break
			}
			from += i
			if begins(text, from, from+len(k.Name)+1) {
				at, kind = from, k
				break
			}
			from++
		}
	}
	return at, kind
}

// begins says whether what stands at a place begins a link: no letter before, the number
// of a version after.
func begins(text string, at, after int) bool {
	if at > 0 && packed(text[at-1]) {
		return false
	}
	rest := strings.TrimPrefix(text[after:], "3D")
	return rest != "" && rest[0] >= '0' && rest[0] <= '9'
}

// packed says whether a byte can be part of what is packed (base64url, RFC 4648).
func packed(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_'
}

// gather reads a slip or a sheet from what its link begins. What it cannot be read
// without is put to it line by line.
func gather(kind link.Kind, text string) found {
	rest := strings.TrimPrefix(text[len(kind.Name)+1:], "3D")
	var fragment strings.Builder
	fragment.WriteString(kind.Name + "=")
	var first found
	for n := 0; n <= mostLines && fragment.Len() <= link.MostFragment; n++ {
		piece, after, more := chunk(rest)
		fragment.WriteString(piece)
		f := read(kind, strings.TrimRight(fragment.String(), parting)) // a sentence may end with a link
		if f.err == nil || errors.Is(f.err, slip.ErrNewer) || errors.Is(f.err, link.ErrNewer) {
			return f
		}
		if n == 0 {
			first = f
		}
		if !more {
			break
		}
		rest = after
	}
	return first
}

// parting are the signs of which one stands behind the version: the second in codes.
const parting = ".:"

// chunk is what of a link stands at the beginning of a text, and what follows where the
// link may go on in the next line.
func chunk(text string) (piece, after string, more bool) {
	n := 0
	for n < len(text) && (packed(text[n]) || strings.IndexByte(parting, text[n]) >= 0) {
		n++
	}
	piece, after = text[:n], strings.TrimPrefix(text[n:], "=")
	trimmed := strings.TrimLeft(after, " \t\r>")
	if !strings.HasPrefix(trimmed, "\n") {
		return piece, "", false
	}
	after = strings.TrimLeft(trimmed, " \t\r\n>")
	return piece, after, after != "" && packed(after[0])
}

func read(kind link.Kind, fragment string) found {
	f := found{text: fragment}
	if kind == link.Slip {
		f.slip, f.err = slip.Read(fragment)
	} else {
		f.sheet, f.err = sheet.ReadFragment(fragment)
	}
	return f
}
