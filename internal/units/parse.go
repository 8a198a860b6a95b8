package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxText is the longest text that is looked at, in bytes.
const maxText = 80

// Largest is the most that is read, in grams or millimetres. What a bike can
// have is for others to say; beyond this a number is a slip.
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
	fail := func(why Reason, right string, wrong string, args ...any) (float64, error) {
		return 0, &Error{Text: shorten(strings.TrimSpace(text)), Reason: why, Wrong: fmt.Sprintf(wrong, args...), Right: right}
	}
	write := "write " + q.noun + " like " + q.example
	switch {
	case len(text) > maxText:
		return fail(TooLong, write, "is %d characters long", utf8.RuneCountInString(text))
	case decimal != 0 && decimal != '.' && decimal != ',':
		return fail(NotANumber, "a point or a comma can be", "cannot be read with %q as the decimal sign", decimal)
	}
	s := clean(text)
	if s == "" {
		return fail(Empty, write, "nothing is written")
	}
	negative := s[0] == '-'
	if negative || s[0] == '+' {
		if s = strings.TrimLeft(s[1:], " "); s == "" {
			return fail(NotANumber, write, "is not a number")
		}
	}
	terms, bad := split(s)
	if bad != "" {
		switch {
		case q.unitLike(bad) && len(terms) == 0:
			return fail(NotANumber, write, "has a unit and no number")
		case bad == s:
			return fail(NotANumber, write, "is not a number")
		}
		return fail(NotANumber, write, "is not a number at “%s”", shorten(bad))
	}

	sum := 0.0
	var last *unitOf
	for i, t := range terms {
		u, problem := q.resolve(t, unit, last, i == 0)
		if problem != nil {
			return fail(problem.Reason, problem.Right, "%s", problem.Wrong)
		}
		v, problem := t.value(u, decimal)
		if problem != nil {
			if problem.Right == "" {
				problem.Right = write
			}
			return fail(problem.Reason, problem.Right, "%s", problem.Wrong)
		}
		if last != nil {
			switch per := math.Round(last.size / u.size); {
			case u.size >= last.size:
				return fail(Mixed, write, "has %s after %s", u.name, last.name)
			case last.value != math.Trunc(last.value):
				return fail(Mixed, fmt.Sprintf("write %s alone, or whole %s before %s", last.name, last.name, u.name),
					"has a part of %s and then %s", last.name, u.name)
			case v >= per:
				return fail(Mixed, fmt.Sprintf("write less than %s %s, or %s alone", plain(per), u.name, u.name),
					"has %s %s after %s, and that is another %s or more", plain(v), u.name, last.name, last.name)
			}
		}
		sum += v * u.size
		last = &unitOf{u, v}
	}
	if !(sum <= Largest) {
		return fail(TooLarge, write, "is larger than anything here")
	}
	if !negative || sum == 0 {
		return sum, nil
	}
	if !q.signed {
		return fail(Negative, "write 0 or more", "is below 0, and %s cannot be", q.noun)
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
		wrong := fmt.Sprintf("has the unit “%s”, which is not known here", shorten(t.unit))
		if _, ok := other.names[t.unit]; ok {
			wrong = "is " + other.noun
		}
		return nil, &Error{Reason: UnknownUnit, Wrong: wrong, Right: "write " + q.noun + " like " + q.example}
	}
	if !first {
		if last.below != "" {
			return q.unit(last.below), nil
		}
		return nil, &Error{Reason: MissingUnit, Wrong: "has a number without a unit at its end",
			Right: "write the unit after it, or one number only"}
	}
	u := q.unit(fallback)
	if u == nil {
		if fallback == PoundOunce && q == &masses {
			return nil, &Error{Reason: MissingUnit, Wrong: "may be pounds or ounces",
				Right: fmt.Sprintf("write %[1]s oz or %[1]s lb", t.text())}
		}
		return nil, &Error{Reason: MissingUnit, Wrong: "has no unit", Right: "write " + q.noun + " like " + q.example}
	}
	if t.denom != "" && u.small {
		return nil, &Error{Reason: MissingUnit, Wrong: "is a fraction without a unit",
			Right: fmt.Sprintf("write the unit after it, such as %s %s", t.text(), q.fractional())}
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
				Wrong: fmt.Sprintf("may be %s %s or a thousandth of it", whole, u.name),
				Right: fmt.Sprintf("write %s, or %s0 for the small one", whole, t.run)}
		}
		var ok bool
		if v, ok = value(t.run, decimal); !ok {
			return 0, &Error{Reason: NotANumber, Wrong: fmt.Sprintf("is not one number at “%s”", t.run)}
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
		return 0, &Error{Reason: NotANumber, Wrong: "divides by 0"}
	case t.run != "" && strings.Trim(t.run, digits) != "":
		return 0, &Error{Reason: NotANumber, Wrong: fmt.Sprintf("has a fraction after “%s”, which is not a whole number", t.run)}
	case t.run != "" && n >= d:
		return 0, &Error{Reason: NotANumber, Wrong: fmt.Sprintf("has the fraction %s/%s after a whole number, and that is 1 or more", t.numerator, t.denom)}
	}
	return v + n/d, nil
}

// split takes a text apart into numbers and units. Where it cannot, bad is what
// is left.
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

// unitLike says whether a text is nothing but the name of a unit.
func (q *quantity) unitLike(s string) bool {
	_, ok := q.names[strings.TrimRight(s, ".")]
	return ok
}

// plain writes a number for a message, with up to two decimals.
func plain(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64) }
