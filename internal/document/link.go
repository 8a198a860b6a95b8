package document

import (
	"bytes"
	"compress/zlib"
	"encoding/base64"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"steelyard/internal/words"
)

// linkPrefix names what a link's fragment holds: version 1 is a text deflated
// as zlib does (RFC 1950, which ends with a checksum), in base64 with the
// alphabet for addresses and without padding (RFC 4648, section 5).
const linkPrefix = "sy1."

// maxLink is the longest fragment that is inflated: a text of the largest size
// that could not be deflated at all.
const maxLink = MaxText*4/3 + MaxText/100

// EncodeLink packs a text, usually what WriteCompact gives, into the part of an
// address that follows the #. A browser keeps that part to itself: it is never
// sent to the server.
func EncodeLink(text []byte) (string, error) {
	if len(text) > MaxText {
		return "", words.Tell("link.large", "most", MaxText>>20)
	}
	var packed bytes.Buffer
	z, err := zlib.NewWriterLevel(&packed, zlib.BestCompression)
	if err != nil {
		return "", err
	}
	if _, err := z.Write(text); err != nil {
		return "", err
	}
	if err := z.Close(); err != nil {
		return "", err
	}
	return linkPrefix + base64.RawURLEncoding.EncodeToString(packed.Bytes()), nil
}

const maxCalled = 80 // characters

// CallLink puts before a link what the document in it is called, its title and the
// names of its builds as far as there is room, for people and for a page that
// cannot read the rest yet: "Travel_bike,_Gear_hub=sy1.…". Without a name the link
// stays as it is.
func CallLink(link string, d *Document) string {
	said := strings.TrimSpace(d.Title)
	for i := range d.Builds {
		next := strings.Trim(said+", "+strings.TrimSpace(d.Builds[i].Name), ", ")
		if utf8.RuneCountInString(next) <= maxCalled {
			said = next
		}
	}
	if said = words.ShortenTo(said, maxCalled); said == "" {
		return link
	}
	var out strings.Builder
	for _, c := range []byte(said) {
		switch {
		case c == ' ':
			out.WriteByte('_')
		case c != '_' && linkLetter(c) || c == ',':
			out.WriteByte(c)
		default:
			const hex = "0123456789ABCDEF"
			out.Write([]byte{'%', hex[c>>4], hex[c&15]})
		}
	}
	return out.String() + "=" + link
}

// DecodeLink gives back the text that EncodeLink packed. It forgives a name
// before it, a leading #, line breaks that a mail program put in, and padding. It inflates no
// further than MaxText, whatever the link claims to hold.
func DecodeLink(fragment string) ([]byte, error) {
	if len(fragment) > maxLink {
		return nil, words.Tell("link.long")
	}
	fragment = strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, fragment)
	fragment = strings.TrimPrefix(fragment, "#")
	if _, after, called := strings.Cut(fragment, "=sy"); called {
		fragment = "sy" + after
	}
	packed, ok := strings.CutPrefix(fragment, linkPrefix)
	if !ok {
		if version, _, ok := strings.Cut(fragment, "."); ok && strings.HasPrefix(version, "sy") {
			return nil, words.Tell("link.newer", "kind", words.Quote(version), "known", words.Quote(strings.TrimSuffix(linkPrefix, ".")))
		}
		return nil, words.Tell("link.none", "prefix", words.Quote(linkPrefix))
	}
	packed = strings.TrimRight(packed, "=")
	raw, err := base64.RawURLEncoding.DecodeString(packed)
	if err != nil {
		var at base64.CorruptInputError
		if errors.As(err, &at) && int(at) < len(packed) && !linkLetter(packed[at]) {
			return nil, words.Tell("link.letter", "n", int(at)+1, "prefix", words.Quote(linkPrefix), "letter", strconv.QuoteRune(rune(packed[at])))
		}
		return nil, errCutShort
	}
	z, err := zlib.NewReader(bytes.NewReader(raw))
	if err != nil {
		return nil, damaged(err)
	}
	text, err := io.ReadAll(io.LimitReader(z, MaxText+1))
	switch {
	case err != nil:
		return nil, damaged(err)
	case len(text) > MaxText:
		return nil, words.Tell("link.unpacks", "most", MaxText>>20)
	}
	return text, nil
}

var errCutShort = words.Tell("link.cut")

func damaged(err error) error {
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return errCutShort
	case errors.Is(err, zlib.ErrChecksum):
		return words.Tell("link.checksum")
	}
	return words.Tell("link.damaged")
}

// linkLetter reports whether a character is one of base64's for addresses.
func linkLetter(c byte) bool {
	return 'A' <= c && c <= 'Z' || 'a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-' || c == '_'
}
