package frametable

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// number is a number as it was printed.
type number struct {
	text     string  // with its unit
	value    float64 // with its mark as a decimal one
	step     float64 // of its last digit
	thousand float64 // with its mark between thousands; 0 where it has none
	unit     string  // beside it; empty for none
}

// cutNumber takes a number with its unit off the beginning of a text.
func cutNumber(s string) (n number, rest string, ok bool) {
	i, negative := 0, false
	for _, sign := range []string{"+", "-", "−", "–", "~", "ca. ", "± "} {
		if strings.HasPrefix(s, sign) {
			i, negative = len(sign), sign == "-" || sign == "−" || sign == "–"
			break
		}
	}
	from := i
	marks := []int(nil) // where they are
	for ; i < len(s); i++ {
		if s[i] >= '0' && s[i] <= '9' {
			continue
		}
		if i == from || s[i] != '.' && s[i] != ',' || i+1 == len(s) || s[i+1] < '0' || s[i+1] > '9' ||
			len(marks) == 2 || len(marks) == 1 && s[marks[0]] == s[i] {
			break
		}
		marks = append(marks, i)
	}
	if i == from || i-from > 9 {
		return n, s, false
	}
	whole, part := s[from:i], ""
	if k := len(marks); k > 0 {
		whole, part = s[from:marks[k-1]], s[marks[k-1]+1:i]
	}
	if len(marks) == 2 { // 1,195.5
		whole = whole[:marks[0]-from] + whole[marks[0]+1-from:]
	}
	n.value, _ = strconv.ParseFloat(whole+"."+part+"0", 64)
	n.step = math.Pow(0.1, float64(len(part)))
	if len(marks) == 1 && len(part) == 3 && len(whole) <= 2 {
		n.thousand, _ = strconv.ParseFloat(whole+part, 64)
	}
	if negative {
		n.value, n.thousand = -n.value, -n.thousand
	}
	// The unit, with or without a space before it. Another letter or digit behind
	// the number means that it was none, as in 2nd.
	end := i
	after := strings.TrimLeft(s[i:], " \u00a0\u202f")
	word := after
	for j, r := range after {
		if r >= utf8.RuneSelf && r != '°' && r != 'º' && r != '″' && r != '”' || r < utf8.RuneSelf && !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '"') {
			word = after[:j]
			break
		}
	}
	if u := unitNamed(strings.ToLower(word)); u != "" {
		n.unit = u
		end = len(s) - len(after) + len(word)
	} else if word != "" && len(after) == len(s)-i {
		return number{}, s, false
	}
	n.text = strings.TrimSpace(s[:end])
	return n, s[end:], true
}

// in reads the number as a figure of a kind, whose table may name a unit. Where
// none is named it is the unit in which the figure is a usual one, mm before cm.
// Half is the half-width of what was rounded; unit is the one it was read in.
func (n number) in(k *kind, unit string) (value, half float64, read string, ok bool) {
	if n.unit != "" {
		unit = n.unit
	}
	if (unit == "deg") != k.angle() && unit != "" || unit == "" && k.angle() && n.thousand != 0 {
		return 0, 0, "", false
	}
	try := []string{unit}
	switch {
	case k.angle():
		try[0] = "deg"
	case unit == "":
		try = []string{"mm", "cm"}
	}
	usual := func(v float64) bool {
		return v >= k.from && v <= k.to || k.id == "frame.bb_drop_mm" && -v >= k.from && -v <= k.to
	}
	for _, u := range try {
		for _, v := range [2]float64{n.value, n.thousand} {
			f := factor[u]
			if usual(v*f) && (v != 0 || n.value == 0) {
				step := n.step
				if v == n.thousand && n.thousand != 0 {
					step = 1
				}
				return v * f, step * f / 2, u, true
			}
		}
	}
	f := factor[try[0]]
	return n.value * f, n.step * f / 2, try[0], true
}

// factor is how many mm or degrees go into a unit.
var factor = map[string]float64{"mm": 1, "cm": 10, "in": 25.4, "deg": 1}
