package partslist

import (
	"math"
	"sort"

	"steelyard/internal/units"
)

// How the unit of a list's masses is known, see CSVResult.UnitBy.
const (
	UnitByHeader = "header" // the column says it
	UnitByCells  = "cells"  // every mass has its own
	UnitAsked    = "asked"  // the caller says it
	UnitByParts  = "parts"  // in it the parts weigh what such parts do
	UnitUsual    = "usual"  // nothing tells: grams
)

// findUnit finds the unit of masses that stand without one.
func (r *csvReader) findUnit(lines []line) {
	said := func(unit, by string) { r.result.MassUnit, r.result.UnitBy = unit, by }
	if unit := r.headers[r.result.Guess["mass"]].unit; unit != "" {
		said(unit, UnitByHeader)
		return
	}
	if r.opt.MassUnit != "" {
		said(r.opt.MassUnit, UnitAsked)
		return
	}
	said(units.Gram, UnitUsual)
	masses, bare := 0, 0
	for i := range lines {
		s, _ := withoutAbout(r.cell(lines[i].row, "mass"))
		if _, err := units.ParseMassMarked(s, units.Kilogram, r.decimal); err == nil {
			masses++
			if _, err := units.ParseMassMarked(s, "", r.decimal); err != nil {
				bare++
			}
		}
	}
	switch {
	case masses == 0:
	case bare == 0:
		said(units.Gram, UnitByCells)
	default:
		if unit := r.sensible(lines); unit != "" {
			said(unit, UnitByParts)
		}
	}
}

// Thresholds of sensible.
const (
	prefer   = 1.0 // how much better than grams another unit must be: a factor of e
	rare     = 0.3 // what counts against pounds and ounces, which few lists are in without saying so
	lightest = 25  // no list of fewer grams for its heaviest part is one of a bike, g
	several  = 5   // masses that are enough to judge parts that are not known
	few      = 3   // known parts that are enough to tell pounds or ounces
)

// sensible returns the unit in which the parts of a list weigh most nearly the
// same as the most similar entries of the catalogue, each for itself and all
// together: the one in which the logarithms of the ratios, their median and that
// of the sums, are nearest to zero. It returns "" when grams do as well.
func (r *csvReader) sensible(lines []line) string {
	all := []string{units.Gram, units.Kilogram, units.Pound, units.Ounce}
	off := make([][]float64, len(all))
	sum := make([]float64, len(all))
	typical := make([]float64, len(all))
	counted, most := 0, 0.0
	for i := range lines {
		l := &lines[i]
		if !l.why.IsZero() || isTotal(l.name) {
			continue
		}
		s, _ := withoutAbout(r.cell(l.row, "mass"))
		for j, unit := range all {
			grams, err := units.ParseMassMarked(s, unit, r.decimal)
			if err != nil || grams <= 0 {
				continue
			}
			if j == 0 {
				counted++
				most = max(most, grams)
			}
			if l.entry != nil {
				off[j] = append(off[j], math.Abs(math.Log(grams/l.entry.Mass)))
				sum[j] += grams
				typical[j] += l.entry.Mass
			}
		}
	}
	best, least, gram := "", math.Inf(1), math.Inf(1)
	for j, unit := range all {
		seldom := unit == units.Pound || unit == units.Ounce
		if len(off[j]) == 0 || seldom && len(off[j]) < few {
			continue
		}
		sort.Float64s(off[j])
		score := (off[j][len(off[j])/2] + math.Abs(math.Log(sum[j]/typical[j]))) / 2
		if seldom {
			score += rare
		}
		if j == 0 {
			gram = score
		}
		if score < least {
			best, least = unit, score
		}
	}
	switch {
	case best != "" && best != units.Gram && gram-least > prefer:
		return best
	case best == "" && counted >= several && most < lightest:
		return units.Kilogram
	}
	return ""
}

// restUnit is the unit of a column that holds the rest of a mass and does not
// say its unit.
func (r *csvReader) restUnit() string {
	if r.result.MassUnit == units.Pound {
		return units.Ounce
	}
	return units.Gram
}

// below are the units that one mass may be split into over two columns, and how
// many of the second make one of the first.
var below = map[string]struct {
	unit string
	per  float64
}{units.Pound: {units.Ounce, 16}, units.Kilogram: {units.Gram, 1000}}

// findRest finds the column that holds the rest of the masses: whole pounds in
// one column, ounces in the other. Columns that say the same mass twice in
// different units are not such a pair.
func (r *csvReader) findRest(rows []row) {
	mass, ok := r.result.Guess["mass"]
	if !ok {
		return
	}
	for i, h := range r.headers {
		if h.field != "mass" || h.total != r.headers[mass].total || r.used(i) {
			continue
		}
		for _, c := range [][2]int{{mass, i}, {i, mass}} {
			whole, rest := c[0], c[1]
			split, ok := below[r.headers[whole].unit]
			if ok && split.unit == r.headers[rest].unit && splits(rows, whole, rest, split.per) {
				r.result.Guess["mass"], r.result.Guess["mass_rest"] = whole, rest
				return
			}
		}
	}
}

// splits reports whether two columns hold whole units and what is left over.
func splits(rows []row, whole, rest int, per float64) bool {
	good, bad := 0, 0
	number := func(row row, i int) (v float64, there, ok bool) {
		if i >= len(row.cells) || row.cells[i] == "" {
			return 0, false, true
		}
		grams, err := units.ParseMass(row.cells[i], units.Kilogram)
		return grams / 1000, true, err == nil
	}
	for _, row := range rows {
		w, thereW, okW := number(row, whole)
		v, thereV, okV := number(row, rest)
		switch {
		case !okW || !okV || !thereW && !thereV:
		case w == math.Trunc(w) && v < per:
			good++
		default:
			bad++
		}
	}
	return good > 0 && bad*10 <= good
}
