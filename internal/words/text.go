package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Text is a sentence or a piece of one that is yet to be written: a template in
// English, as [fmt.Sprintf] takes it, and its arguments. Besides what Sprintf
// takes, an argument may be a Text, a [Label], a [List] or a [Number], each for
// the verb %s.
type Text struct {
	Template string
	Args     []any
}

// Textf returns a text.
//
// The name ends in f so that the vet tool checks templates.
func Textf(template string, args ...any) Text {
	if false {
		_ = fmt.Sprintf(template, args...) // tells the vet tool what template is
	}
	return Text{template, args}
}

// String writes the text in English.
func (t Text) String() string { return English().Sprint(t) }

// Label is the key of a label.
type Label string

// List is a choice: "a, b or c".
type List []any

// String writes the choice in English.
func (l List) String() string { return English().list(l) }

// ListOf returns the choice of some values, each in quotes.
func ListOf[S ~string](values []S) List {
	l := make(List, len(values))
	for i, v := range values {
		l[i] = Quote(string(v))
	}
	return l
}

// Number is a figure of the user's, written back without an exponent and without
// a tail of zeros.
type Number float64

// String writes the number with a decimal point.
func (n Number) String() string {
	if math.Abs(float64(n)) >= 1e15 {
		return strconv.FormatFloat(float64(n), 'g', 4, 64)
	}
	return strconv.FormatFloat(float64(n), 'f', -1, 64)
}

// decimal is a number that is written with a comma, whatever the verb.
type decimal float64

// Format writes the number as package fmt would, and then puts the comma in.
func (d decimal) Format(f fmt.State, verb rune) {
	s := fmt.Sprintf(fmt.FormatString(f, verb), float64(d))
	_, _ = f.Write([]byte(strings.Replace(s, ".", ",", 1)))
}
