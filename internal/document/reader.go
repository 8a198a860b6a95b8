package document

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-json"
)

// Reader opens one state of a document after the other, as an editor hands them
// over. Mostly two in a row differ in a single part; then only that part is read,
// and the rest is reused. The zero Reader is ready for use.
type Reader struct {
	text  string    // the last one opened, when nothing was wrong with it
	doc   *Document // what was in it
	spans []span    // its parts, build by build
}

// span is where something stands in a text.
type span struct{ start, end int }

// Edit says which part of which build alone differs from the document before,
// by index.
type Edit struct{ Build, Part int }

// Open returns what [Open] of the text returns. The document shares memory with
// the one opened before, so neither may be changed. Edit is nil when more than a
// part may differ from the one before.
func (r *Reader) Open(text string) (d *Document, problems []Problem, edit *Edit) {
	if d, edit = r.edited(text); d != nil {
		return d, nil, edit
	}
	var spans []span
	d, problems, spans = openSpans([]byte(text))
	*r = Reader{}
	if d != nil && len(problems) == 0 {
		*r = Reader{text: strings.TrimPrefix(text, byteOrderMark), doc: d, spans: spans}
	}
	return d, problems, nil
}

// edited opens a text that differs from the last one inside a single part, whose
// id is the same. It returns nil for any other text, and for one that may be
// wrong.
//
// A text is a document as long as its parts are objects, whatever stands in them:
// the text before and after the part has been found right already.
func (r *Reader) edited(text string) (*Document, *Edit) {
	if r.doc == nil || len(text) > MaxText {
		return nil, nil
	}
	before := commonPrefix(r.text, text)
	longer := len(text) - len(r.text)
	// The last part that begins before the texts part company; with the same
	// text it is any.
	n, found := slices.BinarySearchFunc(r.spans, before, func(s span, at int) int { return s.start - at })
	if found || n == 0 { // a difference in the very bracket is not inside
		return nil, nil
	}
	n--
	old := r.spans[n]
	now := span{old.start, old.end + longer}
	if now.end <= now.start || !same(r.text[old.end:], text[now.end:]) {
		return nil, nil
	}
	at, i := r.part(n)
	raw := []byte(text[now.start:now.end])
	if !utf8.Valid(raw) {
		return nil, nil
	}
	s := newScanner(raw, false)
	if !s.scan(partLayout) {
		return nil, nil
	}
	var p Part
	if json.Unmarshal(raw, &p) != nil || p.ID != r.doc.Builds[at].Parts[i].ID {
		return nil, nil
	}
	shape := uint64(0)
	if k := s.keys[kindShape]; len(k) > 0 {
		shape = k[0]
	}
	p.defaults(s.keys[kindPart][0], shape)

	d := *r.doc
	d.Builds = slices.Clone(d.Builds)
	b := &d.Builds[at]
	b.Parts = slices.Clone(b.Parts)
	b.Parts[i] = p
	spans := r.spans // nobody else holds them
	spans[n] = now
	for j := n + 1; j < len(spans); j++ {
		spans[j].start += longer
		spans[j].end += longer
	}
	r.text, r.doc = text, &d
	return &d, &Edit{at, i}
}

// part returns the build and the place in it of part number n of the document.
func (r *Reader) part(n int) (build, part int) {
	for n >= len(r.doc.Builds[build].Parts) {
		n -= len(r.doc.Builds[build].Parts)
		build++
	}
	return build, n
}

// same is a == b.
func same(a, b string) bool { return len(a) == len(b) && commonPrefix(a, b) == len(a) }

// commonPrefix returns how many bytes a and b have in common from the start. It
// takes words of eight, four at a time: WebAssembly has no fast way to compare
// strings, and Go compares them there byte by byte.
func commonPrefix(a, b string) int {
	n, i := min(len(a), len(b)), 0
	for ; i+32 <= n; i += 32 {
		p, q := a[i:i+32], b[i:i+32]
		if word(p, 0) != word(q, 0) || word(p, 8) != word(q, 8) || word(p, 16) != word(q, 16) || word(p, 24) != word(q, 24) {
			break
		}
	}
	for i < n && a[i] == b[i] {
		i++
	}
	return i
}

// word is what the eight bytes from i on are as a little-endian number, which
// the compiler makes one load of.
func word(s string, i int) uint64 {
	s = s[i : i+8]
	return uint64(s[0]) | uint64(s[1])<<8 | uint64(s[2])<<16 | uint64(s[3])<<24 |
		uint64(s[4])<<32 | uint64(s[5])<<40 | uint64(s[6])<<48 | uint64(s[7])<<56
}
