package units

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"steelyard/internal/words"
)

// maxText is the longest text that is looked at, in bytes.
const maxText = 80

// Largest is the largest number that is read, in grams or millimetres. Whether a
// bike can have it is for callers to say; beyond this a number is a slip.
const Largest = 1e9

// ParseMass reads a mass and returns it in grams. A number without a unit is in
// unit: "g", "kg", "lb" or "oz"; with "lb_oz" every number needs its own unit.
// The error is an [*Error].
//
// Units may be written in full, in the plural and in capitals. "2 lb 3 oz" and
// "2 lb 3" are taken together. The decimal sign is a point or a comma, and
// thousands may be set apart by spaces, apostrophes or the other mark: 1.234,5
// is 1234.5. A single mark before just three digits may be either; of grams it
// is refused, of larger units it is decimal: 1,234 kg is 1234 g.
func ParseMass(text, unit string) (grams float64, err error) { return masses.parse(text, unit, 0) }

// ParseLength reads a length and returns it in millimetres, as [ParseMass] reads
// masses. Units are mm, cm, m, in or ", and ft or '; fractions are read, such as
// 1 1/8 in or 1⅛". A length may be negative, for an offset can be; where only
// a size makes sense, the caller says so.
func ParseLength(text, unit string) (millimetres float64, err error) {
	return lengths.parse(text, unit, 0)
}

// ParseMassMarked is [ParseMass] for a text whose decimal sign is known, '.' or
// ',', as from the other lines of its column: see [DecimalMark]. With 0 it is
// ParseMass.
func ParseMassMarked(text, unit string, decimal rune) (grams float64, err error) {
	return masses.parse(text, unit, decimal)
}

// ParseLengthMarked is to [ParseLength] what [ParseMassMarked] is to ParseMass.
func ParseLengthMarked(text, unit string, decimal rune) (millimetres float64, err error) {
	return lengths.parse(text, unit, decimal)
}

// term is a number with the unit written after it, which may be empty.
type term struct {
	number
	unit string
}

func (q *quantity) parse(text, unit string, decimal rune) (float64, error) {
	fail := func(why Reason, right, wrong words.Message) (float64, error) {
		return 0, &Error{Text: shorten(strings.TrimSpace(text)), Reason: why, Wrong: wrong, Right: right}
	}
	write := q.write()
	switch {
	case len(text) > maxText:
		return fail(TooLong, write, words.Tell("units.long", "n", utf8.RuneCountInString(text)))
	case decimal != 0 && decimal != '.' && decimal != ',':
		return fail(NotANumber, words.Tell("units.mark.right"), words.Tell("units.mark", "mark", strconv.QuoteRune(decimal)))
	}
	s := clean(text)
	if s == "" {
		return fail(Empty, write, words.Tell("units.empty"))
	}
	negative := s[0] == '-'
	if negative || s[0] == '+' {
		if s = strings.TrimLeft(s[1:], " "); s == "" {
			return fail(NotANumber, write, words.Tell("units.no_number"))
		}
	}
	terms, bad := split(s)
	if bad != "" {
		switch {
		case q.unitLike(bad) && len(terms) == 0:
			return fail(NotANumber, write, words.Tell("units.unit_only"))
		case bad == s:
			return fail(NotANumber, write, words.Tell("units.no_number"))
		}
		return fail(NotANumber, write, words.Tell("units.no_number.at", "at", shorten(bad)))
	}

	sum := 0.0
	var last *unitOf
	for i, t := range terms {
		u, problem := q.resolve(t, unit, last, i == 0)
		if problem != nil {
			return fail(problem.Reason, problem.Right, problem.Wrong)
		}
		v, problem := t.value(u, decimal)
		if problem != nil {
			if problem.Right.IsZero() {
				problem.Right = write
			}
			return fail(problem.Reason, problem.Right, problem.Wrong)
		}
		if last != nil {
			switch per := math.Round(last.size / u.size); {
			case u.size >= last.size:
				return fail(Mixed, write, words.Tell("units.order", "unit", u.name, "after", last.name))
			case last.value != math.Trunc(last.value):
				return fail(Mixed, words.Tell("units.part.right", "large", last.name, "small", u.name),
					words.Tell("units.part", "large", last.name, "small", u.name))
			case v >= per:
				return fail(Mixed, words.Tell("units.carry.right", "most", per, "small", u.name),
					words.Tell("units.carry", "n", hundredths(v), "small", u.name, "large", last.name))
			}
		}
		sum += v * u.size
		last = &unitOf{u, v}
	}
	if !(sum <= Largest) {
		return fail(TooLarge, write, words.Tell("units.large"))
	}
	if !negative || sum == 0 {
		return sum, nil
	}
	if !q.signed {
		return fail(Negative, words.Tell("units.negative.right"), words.Tell("units.negative", "noun", q.noun()))
	}
	return -sum, nil
}

// unitOf is a unit with the value written in front of it.
type unitOf struct {
	*unit
	value float64
}

// resolve finds the unit of a term: its own, the one below the last, or the
// default.
func (q *quantity) resolve(t term, fallback string, last *unitOf, first bool) (*unit, *Error) {
	if t.unit != "" {
		if name, ok := q.names[t.unit]; ok {
			return q.unit(name), nil
		}
		other := &masses
		if q == other {
			other = &lengths
		}
		wrong := words.Tell("units.unknown", "unit", shorten(t.unit))
		if _, ok := other.names[t.unit]; ok {
			wrong = words.Tell("units.other", "noun", other.noun())
		}
		return nil, &Error{Reason: UnknownUnit, Wrong: wrong, Right: q.write()}
	}
	if !first {
		if last.below != "" {
			return q.unit(last.below), nil
		}
		return nil, &Error{Reason: MissingUnit, Wrong: words.Tell("units.bare"),
			Right: words.Tell("units.bare.right")}
	}
	u := q.unit(fallback)
	if u == nil {
		if fallback == PoundOunce && q == &masses {
			return nil, &Error{Reason: MissingUnit, Wrong: words.Tell("units.which"),
				Right: words.Tell("units.which.right", "number", t.text())}
		}
		return nil, &Error{Reason: MissingUnit, Wrong: words.Tell("units.none"), Right: q.write()}
	}
	if t.denom != "" && u.small {
		return nil, &Error{Reason: MissingUnit, Wrong: words.Tell("units.fraction.bare"),
			Right: words.Tell("units.fraction.bare.right", "number", t.text(), "unit", q.fractional())}
	}
	return u, nil
}

// fractional is the unit that people count in fractions.
func (q *quantity) fractional() string {
	if q == &masses {
		return Ounce
	}
	return Inch
}

// text is the term's number as it was written.
func (t *term) text() string {
	s := t.run
	if t.denom != "" {
		s = strings.TrimLeft(s+" "+t.numerator+"/"+t.denom, " ")
	}
	return s
}

// value reads a term's number, now that its unit is known.
func (t *term) value(u *unit, decimal rune) (float64, *Error) {
	v := 0.0
	if t.run != "" {
		if decimal == 0 && u.small && t.denom == "" && decimalMark(t.run) == '?' {
			whole := strings.NewReplacer(".", "", ",", "").Replace(t.run)
			return 0, &Error{Reason: Ambiguous,
				Wrong: words.Tell("units.ambiguous", "whole", whole, "unit", u.name),
				Right: words.Tell("units.ambiguous.right", "whole", whole, "small", t.run+"0")}
		}
		var ok bool
		if v, ok = value(t.run, decimal); !ok {
			return 0, &Error{Reason: NotANumber, Wrong: words.Tell("units.several", "at", t.run)}
		}
	}
	if t.denom == "" {
		return v, nil
	}
	// Both are a few digits at most: see split.
	n, _ := strconv.ParseFloat(t.numerator, 64)
	d, _ := strconv.ParseFloat(t.denom, 64)
	switch {
	case d == 0:
		return 0, &Error{Reason: NotANumber, Wrong: words.Tell("units.zero")}
	case t.run != "" && strings.Trim(t.run, digits) != "":
		return 0, &Error{Reason: NotANumber, Wrong: words.Tell("units.fraction.after", "number", t.run)}
	case t.run != "" && n >= d:
		return 0, &Error{Reason: NotANumber, Wrong: words.Tell("units.fraction.large", "fraction", t.numerator+"/"+t.denom)}
	}
	return v + n/d, nil
}

// split divides a text into numbers and units. Where it cannot, bad is the rest
// of the text.
func split(s string) (terms []term, bad string) {
	for s != "" {
		var t term
		if t.number, s, bad = takeNumber(s); bad != "" {
			return terms, bad
		}
		t.unit, s = takeUnit(s)
		terms = append(terms, t)
		// Words may be divided by a comma or joined: 2 lb, 3 oz.
		if t.unit != "" && strings.HasPrefix(s, ",") {
			if s = strings.TrimLeft(s[1:], " "); s == "" {
				return terms, ","
			}
		}
	}
	return terms, ""
}

// takeNumber takes a number off the front of s.
func takeNumber(s string) (n number, rest, bad string) {
	end := 0
	for end < len(s) && (s[end] >= '0' && s[end] <= '9' || strings.IndexByte(marks, s[end]) >= 0) {
		// An apostrophe sets thousands apart before just three digits, and
		// stands for feet otherwise.
		if s[end] == '\'' && !threeDigits(s[end+1:]) {
			break
		}
		end++
	}
	run := strings.TrimRight(s[:end], " ")
	rest = s[end:]
	if strings.Trim(run, marks) == "" {
		return n, "", s
	}
	// Numbers that are joined to a fraction by a hyphen: 1-1/8.
	if strings.HasPrefix(rest, "-") && end == len(run) {
		if num, after := takeDigits(rest[1:]); num != "" && strings.HasPrefix(strings.TrimLeft(after, " "), "/") {
			run, rest = run+" "+num, after
		}
	}
	if after := strings.TrimLeft(rest, " "); strings.HasPrefix(after, "/") {
		whole, num := "", run
		if at := strings.LastIndexByte(run, ' '); at >= 0 {
			whole, num = strings.TrimRight(run[:at], " "), run[at+1:]
		}
		denom, after := takeDigits(strings.TrimLeft(after[1:], " "))
		const most = 4 // digits: 1/1024 of an inch is fine enough
		if denom == "" || strings.Trim(num, digits) != "" || len(num) > most || len(denom) > most {
			return n, "", s
		}
		return number{whole, num, denom}, strings.TrimLeft(after, " "), ""
	}
	return number{run: run}, strings.TrimLeft(rest, " "), ""
}

func threeDigits(s string) bool {
	d, _ := takeDigits(s)
	return len(d) == 3
}

func takeDigits(s string) (d, rest string) {
	rest = strings.TrimLeft(s, digits)
	return s[:len(s)-len(rest)], rest
}

// takeUnit takes a word or a sign for inches or feet off the front of s, and a
// point that marks it as shortened.
func takeUnit(s string) (unit, rest string) {
	if strings.HasPrefix(s, `"`) || strings.HasPrefix(s, "'") {
		return s[:1], strings.TrimLeft(s[1:], " ")
	}
	end := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) && r != '_' })
	if end < 0 {
		end = len(s)
	}
	unit, rest = s[:end], s[end:]
	if unit != "" && strings.HasPrefix(rest, ".") {
		if d, _ := takeDigits(rest[1:]); d == "" {
			rest = rest[1:]
		}
	}
	return unit, strings.TrimLeft(rest, " ")
}

// unitLike reports whether a text is nothing but the name of a unit.
func (q *quantity) unitLike(s string) bool {
	_, ok := q.names[strings.TrimRight(s, ".")]
	return ok
}

// hundredths is a number for a message, with up to two decimals.
func hundredths(v float64) float64 { return math.Round(v*100) / 100 }
