package document

import (
	"bytes"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-json"

	"steelyard/internal/spelling"
	"steelyard/internal/words"
)

// The scanner reads a text once before the decoder does, and only makes a record
// of it. It finds what a decoder does not: a key that the format does not know, a
// key written twice, a list with one number too many, which keys a part does not
// have (they get their defaults), how deep the text nests before anybody recurses
// into it, and above all the place of a mistake in the user's words: the build
// and the part by name. The values themselves are decoded by goccy/go-json.

// Limits of a text.
const (
	maxDepth    = 32 // a document needs 7
	maxProblems = 50 // told about one text
)

// scanner walks a text along a layout. The first, quick walk stops at the first
// mistake; the second, careful one collects all of them and the names to report
// them by.
type scanner struct {
	text    []byte
	pos     int
	depth   int
	careful bool

	// Of each object of a sort, in the order of the text: bit i says that the
	// key of field i is there.
	keys  [numKinds][]uint64
	parts []span        // where each part of a build stands
	count [numKinds]int // of the whats so far

	where
	path       []string // keys from the part, the build, ... or the top
	names      map[where]name
	found      []finding
	more       int // findings not kept
	fatal      bool
	format     string
	version    string // as written
	hasVersion bool
}

// where is an entity of the document, and the entity in a list of it.
type where struct{ outer, inner nth }

// nth is an entity by its sort and its number, from 0, in its list; the zero kind
// is none.
type nth struct {
	hold kind
	n    int
}

// in returns where the outer thing is.
func (w where) in() where { return where{outer: w.outer} }

type name struct{ id, name string }

// finding is a problem that has no names yet.
type finding struct {
	where
	field   string
	message words.Message
	bare    bool // the message names the key itself
	line    int
}

func newScanner(text []byte, careful bool) *scanner {
	s := &scanner{text: text, careful: careful}
	if careful {
		s.names = make(map[where]name)
	}
	return s
}

// scan walks the whole text and reports whether nothing was wrong.
func (s *scanner) scan(l *layout) bool {
	ok := s.value(l)
	if ok {
		if s.space(); s.pos < len(s.text) {
			ok = s.broken("document.json.after", "found", s.excerpt())
		}
	}
	return ok && len(s.found) == 0
}

// report keeps a finding. It returns whether the walk may go on.
func (s *scanner) report(key string, pairs ...any) bool {
	if !s.careful {
		return false
	}
	if len(s.found) >= maxProblems {
		s.more++
		return true
	}
	s.found = append(s.found, finding{
		where:   s.where,
		field:   strings.Join(s.path, "."),
		message: words.Tell(key, pairs...),
		line:    1 + bytes.Count(s.text[:min(s.pos, len(s.text))], []byte("\n")),
	})
	return true
}

// broken reports that the text is not JSON from here on, which ends the walk.
func (s *scanner) broken(key string, pairs ...any) bool {
	s.fatal = true
	if !s.careful {
		return false
	}
	pos := min(s.pos, len(s.text))
	start := 1 + bytes.LastIndexByte(s.text[:pos], '\n')
	column := 1 + utf8.RuneCount(s.text[start:pos])
	if len(s.found) >= maxProblems {
		s.found = s.found[:maxProblems-1]
		s.more++
	}
	s.report("document.column", "message", words.Tell(key, pairs...), "column", column)
	return false
}

func (s *scanner) space() {
	for s.pos < len(s.text) {
		switch s.text[s.pos] {
		case ' ', '\n', '\t', '\r':
			s.pos++
		default:
			return
		}
	}
}

// next returns the next character that is not space, 0 at the end.
func (s *scanner) next() byte {
	s.space()
	if s.pos < len(s.text) {
		return s.text[s.pos]
	}
	return 0
}

// excerpt quotes what stands at the walk's place.
func (s *scanner) excerpt() any {
	rest := s.text[s.pos:]
	if len(rest) == 0 {
		return words.Tell("document.found.end")
	}
	if i := bytes.IndexAny(rest[:min(len(rest), 200)], ",\n]}"); i > 0 {
		rest = rest[:i]
	}
	if rest[0] == '"' {
		return words.Shorten(string(rest[:min(len(rest), 200)]))
	}
	return words.Quote(string(rest[:min(len(rest), 200)]))
}

// value walks a value that should be as l says.
func (s *scanner) value(l *layout) bool {
	switch c := s.next(); c {
	case '{':
		if l.value == object {
			return s.object(l)
		}
	case '[':
		if l.value == array {
			return s.array(l)
		}
	case '"':
		if l.value == text {
			return s.skipString()
		}
	case '-', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9':
		if l.value == number64 || l.value == integer {
			return s.number(l)
		}
	case 't', 'f':
		if l.value == truth {
			return s.skip()
		}
	case 'n':
		if l.null {
			return s.skipWord("null")
		}
	}
	start := s.pos
	if !s.skip() {
		return false
	}
	key := ""
	if len(s.path) > 0 {
		key = s.path[len(s.path)-1]
	}
	found := words.Plain(words.Shorten(string(s.text[start:min(s.pos, start+200)])))
	switch s.text[start] {
	case '"':
		found = words.Tell("document.found.text", "found", found)
	case '{':
		found = words.Tell("document.found.object")
	case '[':
		found = words.Tell("document.found.list")
	case 'n':
		found = words.Tell("document.found.null")
	}
	return s.report("document.value", "found", found, "want", l.want(key))
}

func (s *scanner) enter() bool {
	if s.depth++; s.depth > maxDepth {
		return s.broken("document.json.deep", "n", maxDepth)
	}
	s.pos++
	return true
}

func (s *scanner) object(l *layout) bool {
	if !s.enter() {
		return false
	}
	var seen uint64
	expect := 0 // the key that comes next when this program wrote the text
	for first := true; ; first = false {
		c := s.next()
		if c == '}' && first {
			s.pos++
			break
		}
		if c != '"' {
			return s.noKey(first)
		}
		start := s.pos
		i := l.expected(s.text[start:], expect)
		if i >= 0 {
			s.pos += len(l.fields[i].key) + 2
		} else {
			if !s.skipString() {
				return false
			}
			i = l.find(s.text[start:s.pos])
		}
		keyEnd := s.pos
		if s.next() != ':' {
			return s.broken("document.json.colon", "key", words.Shorten(string(s.text[start:keyEnd])), "found", s.excerpt())
		}
		s.pos++
		switch {
		case i < 0:
			if !s.reportUnknown(l, s.text[start:keyEnd]) || !s.skipAny() {
				return false
			}
		case seen&(1<<i) != 0:
			s.path = append(s.path, l.fields[i].key)
			ok := s.report("document.json.twice") && s.skipAny()
			s.path = s.path[:len(s.path)-1]
			if !ok {
				return false
			}
		default:
			seen |= 1 << i
			expect = i + 1
			s.path = append(s.path, l.fields[i].key)
			at := s.pos
			if !s.value(l.fields[i].layout) {
				return false
			}
			if s.careful {
				s.note(l.hold, l.fields[i].key, at)
			}
			s.path = s.path[:len(s.path)-1]
		}
		switch s.next() {
		case ',':
			s.pos++
		case '}':
			s.pos++
			s.depth--
			s.keep(l.hold, seen)
			return true
		default:
			return s.broken("document.json.comma_brace", "found", s.excerpt())
		}
	}
	s.depth--
	s.keep(l.hold, seen)
	return true
}

// expected returns i if the text begins with the key of field i, or of one
// after it when those before are often left out, and -1 if not.
func (l *layout) expected(t []byte, i int) int {
	for ; i < len(l.fields); i++ {
		key := l.fields[i].key
		if n := len(key) + 1; n < len(t) && t[n] == '"' && string(t[1:n]) == key {
			return i
		}
		if !l.fields[i].optional {
			break
		}
	}
	return -1
}

// find returns the number of the field with that key, quotes included, or -1.
func (l *layout) find(quoted []byte) int {
	raw := quoted[1 : len(quoted)-1]
	if i, ok := l.index[string(raw)]; ok {
		return i
	}
	if bytes.IndexByte(raw, '\\') >= 0 {
		if i, ok := l.index[unquote(quoted)]; ok {
			return i
		}
	}
	return -1
}

// noKey says what stands where a key should.
func (s *scanner) noKey(first bool) bool {
	switch c := s.next(); {
	case c == '}' && !first:
		return s.broken("document.json.last_key")
	case c == '/':
		return s.broken("document.json.comment")
	case c == '\'':
		return s.broken("document.json.single")
	}
	return s.broken("document.json.key", "found", s.excerpt())
}

// reportUnknown reports a key, quotes included, that the format does not know.
func (s *scanner) reportUnknown(l *layout, quoted []byte) bool {
	if !s.careful || len(s.found) >= maxProblems {
		return s.report("") // no message is needed, and making one takes time
	}
	key := unquote(quoted)
	s.path = append(s.path, words.Shorten(key))
	s.report("")
	s.path = s.path[:len(s.path)-1]
	f := &s.found[len(s.found)-1]
	f.message, f.bare = l.unknown(key), true
	return true
}

// unknown says that the format has no such key, and which one was meant if it
// is close to one.
func (l *layout) unknown(key string) words.Message {
	keys := make([]string, len(l.fields))
	for i, f := range l.fields {
		keys[i] = f.key
		if strings.EqualFold(f.key, key) || spelling.Distance(strings.ToLower(key), f.key, 2) <= 2 {
			return words.Tell("document.key.meant", "key", words.Quote(key), "meant", words.Quote(f.key))
		}
	}
	return words.Tell("document.key.unknown", "key", words.Quote(key), "keys", strings.Join(keys, ", "))
}

// note remembers the values by which people know a build or a part.
func (s *scanner) note(h kind, key string, at int) {
	value := func() string {
		v := bytes.TrimSpace(s.text[at:s.pos])
		if len(v) == 0 || v[0] != '"' {
			return string(v)
		}
		return unquote(v)
	}
	switch {
	case h == kindDocument && key == "format":
		s.format = value()
	case h == kindDocument && key == "version":
		s.version, s.hasVersion = value(), true
	case (key == "id" || key == "name") && entityInfos[h] != nil && !entityInfos[h].nameless:
		n := s.names[s.where]
		if key == "id" {
			n.id = value()
		} else {
			n.name = value()
		}
		s.names[s.where] = n
	}
}

// recorded reports for which objects the absence of a key means something.
var recorded = [numKinds]bool{
	kindShow: true, kindPacking: true, kindPart: true, kindShape: true, kindRider: true, kindBag: true, kindGood: true,
}

// keep records which keys an object has.
func (s *scanner) keep(h kind, seen uint64) {
	if recorded[h] {
		s.keys[h] = append(s.keys[h], seen)
	}
}

// goTo enters entity number n of a list.
func (s *scanner) goTo(h kind, n int) bool {
	w := entityInfos[h]
	switch {
	case w.nameless:
		if s.careful {
			s.path = append(s.path, strconv.Itoa(n))
		}
	case w.inner:
		s.inner, s.path = nth{h, n}, s.path[len(s.path):]
	default:
		s.outer, s.path = nth{h, n}, s.path[len(s.path):]
	}
	if s.count[h]++; s.count[h] > w.most {
		return s.broken("document.many", "most", w.most, "many", words.Tell("document.many."+w.name))
	}
	return true
}

func (s *scanner) array(l *layout) bool {
	start := s.pos
	if !s.enter() {
		return false
	}
	n := 0
	from, path := s.where, s.path
	if s.next() == ']' {
		s.pos++
	} else {
	elements:
		for {
			if entityInfos[l.elem.hold] != nil {
				s.path = path
				if !s.goTo(l.elem.hold, n) {
					return false
				}
			}
			if s.next() == ']' {
				return s.broken("document.json.last_value")
			}
			at := s.pos
			if !s.value(l.elem) {
				return false
			}
			if l.elem.hold == kindPart {
				s.parts = append(s.parts, span{at, s.pos})
			}
			n++
			switch s.next() {
			case ',':
				s.pos++
			case ']':
				s.pos++
				break elements
			default:
				return s.broken("document.json.comma_bracket", "found", s.excerpt())
			}
		}
	}
	s.where, s.path = from, path
	s.depth--
	if l.count >= 0 && n != l.count {
		end := s.pos
		s.pos = start
		ok := s.report("document.values", "n", n, "want", l.want(path[len(path)-1]))
		s.pos = end
		return ok
	}
	return true
}

// number walks a number and checks that it fits.
func (s *scanner) number(l *layout) bool {
	start := s.pos
	whole, ok := s.skipNumber()
	if !ok {
		return false
	}
	raw := s.text[start:s.pos]
	switch {
	case l.value == integer && !whole:
		return s.report("document.number.whole", "found", words.Shorten(string(raw)))
	case l.value == integer && len(raw) > 15:
		return s.report("document.number.large", "found", words.Shorten(string(raw)))
	case l.value == number64 && (!whole || len(raw) > 300):
		// Only an exponent or very many digits can leave the range.
		if len(raw) <= 300 && bytes.IndexByte(raw, 'e') < 0 && bytes.IndexByte(raw, 'E') < 0 {
			return true
		}
		if _, err := strconv.ParseFloat(string(raw), 64); err != nil {
			return s.report("document.number.large", "found", words.Shorten(string(raw)))
		}
	}
	return true
}

// skipNumber walks a number by the grammar of RFC 8259 and reports whether it has
// neither point nor exponent.
func (s *scanner) skipNumber() (whole, ok bool) {
	t, i := s.text, s.pos
	whole, ok = true, true
	if i < len(t) && t[i] == '-' {
		i++
	}
	n := digits(t[i:])
	ok = n == 1 || n > 1 && t[i] != '0'
	i += n
	if ok && i < len(t) && t[i] == '.' {
		n = digits(t[i+1:])
		whole, ok = false, n > 0
		i += 1 + n
	}
	if ok && i < len(t) && (t[i] == 'e' || t[i] == 'E') {
		i++
		if i < len(t) && (t[i] == '+' || t[i] == '-') {
			i++
		}
		n = digits(t[i:])
		whole, ok = false, n > 0
		i += n
	}
	if !ok {
		return false, s.broken("document.json.number", "found", s.excerpt())
	}
	s.pos = i
	return whole, true
}

// digits returns how many digits t begins with.
func digits(t []byte) int {
	for i, c := range t {
		if c < '0' || c > '9' {
			return i
		}
	}
	return len(t)
}

// skipString walks a string by the grammar of RFC 8259.
func (s *scanner) skipString() bool {
	t := s.text
	i := s.pos + 1
	for i < len(t) {
		switch c := t[i]; {
		case c == '"':
			s.pos = i + 1
			return true
		case c == '\\':
			n := escape(t[i:])
			if n == 0 {
				s.pos = i
				return s.broken("document.json.escape", "found", s.excerpt())
			}
			i += n
		case c < 0x20:
			s.pos = i
			return s.broken("document.json.control")
		default:
			i++
		}
	}
	return s.broken("document.json.open")
}

// escape returns the length of the escape at the start of t, 0 if it is none.
func escape(t []byte) int {
	if len(t) < 2 {
		return 0
	}
	switch t[1] {
	case '"', '\\', '/', 'b', 'f', 'n', 'r', 't':
		return 2
	case 'u':
		if len(t) < 6 {
			return 0
		}
		for _, c := range t[2:6] {
			if !('0' <= c && c <= '9' || 'a' <= c|0x20 && c|0x20 <= 'f') {
				return 0
			}
		}
		return 6
	}
	return 0
}

func (s *scanner) skipWord(word string) bool {
	if !bytes.HasPrefix(s.text[s.pos:], []byte(word)) {
		return s.broken("document.json.value", "found", s.excerpt())
	}
	s.pos += len(word)
	return true
}

// skipAny walks a value of any sort, from before its first character.
func (s *scanner) skipAny() bool {
	s.space()
	return s.skip()
}

func (s *scanner) skip() bool {
	switch c := s.next(); c {
	case '{', '[':
		end := c + 2 // both brackets lie two apart in ASCII
		if !s.enter() {
			return false
		}
		for first := true; ; first = false {
			if first && s.next() == end {
				s.pos++
				break
			}
			if c == '{' {
				if s.next() != '"' {
					return s.noKey(first)
				}
				if !s.skipString() {
					return false
				}
				if s.next() != ':' {
					return s.broken("document.json.colon_after", "found", s.excerpt())
				}
				s.pos++
			}
			if !s.skip() {
				return false
			}
			if d := s.next(); d == end {
				s.pos++
				break
			} else if d != ',' {
				return s.broken("document.json.comma", "end", string(end), "found", s.excerpt())
			}
			s.pos++
		}
		s.depth--
		return true
	case '"':
		return s.skipString()
	case 't':
		return s.skipWord("true")
	case 'f':
		return s.skipWord("false")
	case 'n':
		return s.skipWord("null")
	case '-', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9':
		_, ok := s.skipNumber()
		return ok
	case 0:
		return s.broken("document.json.end")
	case '/':
		return s.broken("document.json.comment")
	}
	return s.broken("document.json.value", "found", s.excerpt())
}

// unquote decodes a JSON string, quotes included.
func unquote(raw []byte) string {
	var v string
	if json.Unmarshal(raw, &v) != nil {
		return string(raw)
	}
	return v
}

// problems gives the findings their names.
func (s *scanner) problems() []Problem {
	var list []Problem
	for _, f := range s.found {
		p := Problem{Severity: SeverityError, Field: f.field}
		var thing, of words.Message
		if f.outer.hold != kindNothing {
			of = s.call(f.where.in(), f.outer, &p)
		}
		if f.inner.hold != kindNothing {
			thing = s.call(f.where, f.inner, &p)
		}
		message := f.message
		if f.field != "" && !f.bare {
			message = words.Tell("document.field", "field", f.field, "message", message)
		}
		p.Message = words.Tell("document.line", "line", f.line, "message", placed(thing, of, message))
		list = append(list, p)
	}
	if s.more > 0 {
		list = append(list, Problem{Severity: SeverityError, Message: words.Tell("document.more_problems", "n", s.more)})
	}
	return list
}

// call returns what an entity is called in a message, and puts its id into p.
func (s *scanner) call(w where, which nth, p *Problem) words.Message {
	n := s.names[w]
	*p.id(which.hold) = n.id
	called := words.Plain(label(n.name, n.id))
	if called.IsZero() {
		called = words.Tell("document.number", "n", which.n+1)
	}
	return titled(which.hold, called)
}
