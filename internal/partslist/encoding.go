package partslist

import (
	"bytes"
	"encoding/binary"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// The encodings of a list, as CSVResult.Encoding names them.
const (
	UTF8        = "UTF-8"
	UTF16       = "UTF-16"
	Windows1252 = "Windows-1252"
)

// decode returns the text of a list and the encoding that it was in, with every
// line end, CR LF or a bare CR, as LF. Spreadsheets write UTF-8 and UTF-16, with
// or without a byte order mark, and the Western code page 1252. Damaged counts
// the bytes of a list in UTF-8 that belong to no character.
func decode(raw []byte) (text, encoding string, damaged int) {
	encoding = UTF8
	if order := wideOrder(raw); order != nil {
		wide := make([]uint16, len(raw)/2)
		for i := range wide {
			wide[i] = order.Uint16(raw[2*i:])
		}
		text, encoding = strings.TrimPrefix(string(utf16.Decode(wide)), "\ufeff"), UTF16
	} else {
		raw, marked := bytes.CutPrefix(raw, []byte("\xef\xbb\xbf"))
		letters, bad := 0, 0
		if !utf8.Valid(raw) {
			letters, bad = wellFormed(raw)
		}
		switch {
		case bad == 0:
			text = string(raw)
		case marked || letters > bad:
			// Letters of several bytes hardly ever come about by chance.
			text, damaged = strings.ToValidUTF8(string(raw), "\ufffd"), bad
		default:
			text, encoding = fromWindows1252(raw), Windows1252
		}
	}
	return lineEnds.Replace(text), encoding, damaged
}

var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// wideOrder returns the order of the bytes of a list in UTF-16, nil for one that
// is not. Without a mark it is known by the zeros, which are the upper half of
// every digit and separator and stand in no other text.
func wideOrder(raw []byte) binary.ByteOrder {
	switch {
	case bytes.HasPrefix(raw, []byte("\xff\xfe")):
		return binary.LittleEndian
	case bytes.HasPrefix(raw, []byte("\xfe\xff")):
		return binary.BigEndian
	}
	sample := raw[:min(len(raw), 2000)&^1]
	var zeros [2]int // at even and odd places
	for i, c := range sample {
		if c == 0 {
			zeros[i&1]++
		}
	}
	switch half := len(sample) / 2; {
	case zeros[1]*10 > half*4 && zeros[0]*10 < half:
		return binary.LittleEndian
	case zeros[0]*10 > half*4 && zeros[1]*10 < half:
		return binary.BigEndian
	}
	return nil
}

// wellFormed counts the letters of several bytes in UTF-8, and the bytes that
// belong to none.
func wellFormed(raw []byte) (letters, bad int) {
	for len(raw) > 0 {
		r, n := utf8.DecodeRune(raw)
		switch {
		case r == utf8.RuneError && n == 1:
			bad++
		case n > 1:
			letters++
		}
		raw = raw[n:]
	}
	return letters, bad
}

func fromWindows1252(raw []byte) string {
	var b strings.Builder
	b.Grow(len(raw) + len(raw)/8)
	for _, c := range raw {
		if c >= 0x80 && c < 0xa0 {
			b.WriteRune(windows1252[c-0x80])
		} else {
			b.WriteRune(rune(c))
		}
	}
	return b.String()
}

// windows1252 are the characters 80 to 9F of that code page; all others are as
// in Unicode. Five are not used. (The package of golang.org/x/text that has the
// table brings its transformers with it.)
var windows1252 = []rune("€\ufffd‚ƒ„…†‡ˆ‰Š‹Œ\ufffdŽ\ufffd\ufffd‘’“”•–—˜™š›œ\ufffdžŸ")
