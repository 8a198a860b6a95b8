package ride

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/units"
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
	_, plus := mass.Uncertainty(items, load)
	if !(limit > 0) || !units.Finite(limit) || !units.Finite(load.Value) || !units.Finite(plus) {
		return Headroom{}, false
	}
	h = Headroom{
		What: what, Load: load.Value, Plus: plus, Limit: limit,
		Used: load.Value / limit, Verdict: OK,
	}
	if !units.Finite(h.Used) {
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

// cageOut is how far from the middle plane what hangs at the fork must lie to
// hang on a cage of one of its legs, m.
const cageOut = 0.03

// RackOf returns the rack or cargo cage that carries what is packed at a
// station, y m to the left of the middle plane, by the name of its rating; or
// nothing when none does.
func RackOf(station string, y float64) string {
	switch station {
	case "front-rack-deck", "front-panniers", "front-pannier-left", "front-pannier-right":
		return "front-rack"
	case "rear-rack-deck", "rear-panniers", "rear-pannier-left", "rear-pannier-right":
		return "rear-rack"
	case "fork-lower", "fork-legs":
		switch {
		case y > cageOut:
			return "fork-cage-left"
		case y < -cageOut:
			return "fork-cage-right"
		}
	case "bottle-under":
		return "down-tube-cage"
	}
	return ""
}

// Judge holds the loads of the system against the ratings of a build, in the
// order of document.Rateds. Racks tells, by the name of a rack or cage, what share
// of each item it carries; one that is not in it carries nothing. A tyre and a rim
// carry the load of their wheel on the level, the wheel itself included, since
// makers set their limits for the whole.
//
// A limit of 0 is not known, and not judged. What document.Check finds wrong is
// left out: a rating of something else, a second one of the same thing, and a
// limit that cannot be.
func (s *System) Judge(items []mass.Item, ratings []document.Rating, racks map[string]mass.Share) []Headroom {
	var list []Headroom
	for _, what := range document.Rateds {
		i := slices.IndexFunc(ratings, func(r document.Rating) bool { return r.What == what })
		if i < 0 || !(ratings[i].Limit >= 1 && ratings[i].Limit <= document.MaxRating) {
			continue
		}
		if h, ok := Judge(what, items, s.rated(what, items, racks), ratings[i].Limit/1000); ok {
			list = append(list, h)
		}
	}
	return list
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
