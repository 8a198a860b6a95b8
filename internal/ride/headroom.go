package ride

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"steelyard/internal/mass"
	"steelyard/internal/parts"
)

// Verdict is how a load stands to its limit.
type Verdict string

// The verdicts.
const (
	OK   Verdict = "ok"
	Near Verdict = "near" // within the limit, but perhaps not, for all that is known of the load
	Over Verdict = "over"
)

// Headroom is a load held against the limit that a maker has set for it. It is
// a sum on paper for a bike that stands still: what a load does to a rack on a
// bad road is the maker's to know.
type Headroom struct {
	What  string  // what the limit is of, such as "rear-rack"
	Load  float64 // kg
	Plus  float64 // the load is known within ± this, expanded with coverage factor 2, kg
	Limit float64 // kg
	Used  float64 // Load/Limit

	// Verdict is Over when Load is more than Limit, Near when Load + Plus is.
	// Sure says of Over that even Load - Plus is.
	Verdict Verdict
	Sure    bool
}

// Left is how much may still be added, kg; below 0 it is the excess.
func (h Headroom) Left() float64 { return h.Limit - h.Load }

// Judge holds a load, which is a figure of the items, against a limit in kg. It
// judges nothing, and ok is false, without a limit above 0 or without a load
// and a share of the limit that are finite numbers.
func Judge(what string, items []mass.Item, load mass.Figure, limit float64) (h Headroom, ok bool) {
	plus := mass.Coverage * mass.Uncertainty(items, load)
	if !(limit > 0) || !finite(limit) || !finite(load.Value) || !finite(plus) {
		return Headroom{}, false
	}
	h = Headroom{
		What: what, Load: load.Value, Plus: plus, Limit: limit,
		Used: load.Value / limit, Verdict: OK,
	}
	if !finite(h.Used) {
		return Headroom{}, false
	}
	switch {
	case h.Load > limit:
		h.Verdict, h.Sure = Over, h.Load-plus > limit
	case h.Load+plus > limit:
		h.Verdict = Near
	}
	return h, true
}

// Rated are the things that a rating can be of, in the order in which they are
// told: the whole bike with all that is on it, the racks, and what a wheel
// carries as a tyre and as a rim.
var Rated = []string{"total", "front-rack", "rear-rack", "front-tyre", "rear-tyre", "front-rim", "rear-rim"}

// RackOf returns the rack that carries what is packed at a station,
// "front-rack" or "rear-rack", or nothing when no rack does.
func RackOf(station string) string {
	switch station {
	case "front-rack-deck", "front-panniers", "front-pannier-left", "front-pannier-right":
		return "front-rack"
	case "rear-rack-deck", "rear-panniers", "rear-pannier-left", "rear-pannier-right":
		return "rear-rack"
	}
	return ""
}

// Judge holds the loads of the system against ratings that the user has
// entered. Racks tells, by the rack's name, what share of each item it carries;
// a rack that is not in it carries nothing. A tyre and a rim carry the load of
// their wheel on the level, the wheel itself included, since makers set their
// limits for the whole.
//
// A rating of 0 is one not yet entered, and is left out. Problems name the
// field within the ratings, such as "ratings.2.limit_g"; such ratings are left
// out too. The result is in the order of Rated.
func (s *System) Judge(items []mass.Item, ratings []parts.Rating, racks map[string]mass.Share) ([]Headroom, []parts.Problem) {
	var list []Headroom
	var problems []parts.Problem
	seen := map[string]bool{}
	for i, r := range ratings {
		fault := func(field, format string, args ...any) {
			problems = append(problems, parts.Problem{
				Severity: parts.SeverityError,
				Field:    fmt.Sprintf("ratings.%d.%s", i, field),
				Message:  fmt.Sprintf(format, args...),
			})
		}
		limit := r.Limit / 1000
		switch {
		case !slices.Contains(Rated, r.What):
			fault("what", "A rating of %s is not known; it should be of one of %s.", shown(r.What), strings.Join(Rated, ", "))
			continue
		case seen[r.What]:
			fault("what", "The rating of %s is entered twice; the first is taken.", r.What)
			continue
		case !finite(limit) || r.Limit < 1 && r.Limit != 0:
			fault("limit_g", "The permitted load of %s is %v g; it should be 1 g or more, or 0 when it is not known.", r.What, r.Limit)
			continue
		}
		seen[r.What] = true
		if h, ok := Judge(r.What, items, s.rated(r.What, items, racks), limit); ok {
			list = append(list, h)
		}
	}
	slices.SortFunc(list, func(a, b Headroom) int {
		return slices.Index(Rated, a.What) - slices.Index(Rated, b.What)
	})
	return list, problems
}

// rated is the load that a rating is of.
func (s *System) rated(what string, items []mass.Item, racks map[string]mass.Share) mass.Figure {
	switch what {
	case "total":
		return s.total
	case "front-tyre", "front-rim":
		return s.front
	case "rear-tyre", "rear-rim":
		return s.rear
	}
	if share := racks[what]; share != nil { // nil would be everything
		return mass.Total(items, share)
	}
	return exactly(0)
}

// finite reports whether v is a number, and not an infinite one.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// shown is a text of the user's, quoted, cut to what a message can bear.
func shown(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return fmt.Sprintf("%q", s)
}
