package parts

import (
	"slices"
	"strings"

	"steelyard/internal/document"
)

// Role is something that a whole bike has: a saddle, a front tyre, what turns the
// rear wheel.
type Role string

// role says when a bike has what it needs for a role, and when it needs it at all.
type role struct {
	id     Role
	wanted func(*fitted) bool // nil: always
	filled func(*fitted) bool
}

// fitted are the kinds of parts that a build has, front and rear apart where a
// bike has two.
type fitted struct {
	kinds       map[string]bool
	front, rear map[string]bool // by what carries the part, or by the end that it is at
	entries     map[string]bool
	build       *document.Build
}

func (f *fitted) any(kinds ...string) bool {
	return slices.ContainsFunc(kinds, func(k string) bool { return f.kinds[k] })
}

func in(end func(*fitted) map[string]bool, kinds ...string) func(*fitted) bool {
	return func(f *fitted) bool {
		return slices.ContainsFunc(kinds, func(k string) bool { return end(f)[k] })
	}
}

func ofAny(kinds ...string) func(*fitted) bool {
	return func(f *fitted) bool { return f.any(kinds...) }
}

func front(f *fitted) map[string]bool { return f.front }
func rear(f *fitted) map[string]bool  { return f.rear }

// chained reports whether a chain or belt must drive the rear wheel: it does on
// any bike with cranks.
func chained(f *fitted) bool {
	return f.any("crank", "crank-gearbox", "cassette", "cog", "chainring", "gear-hub", "derailleur")
}

// Roles are in the order in which they are told. What a whole bike has is common
// practice, no source.
var roles = []role{
	{id: "frame", filled: ofAny("frame")},
	{id: "fork", filled: ofAny("fork", "fork-rigid")},
	{id: "headset", filled: ofAny("headset")},
	{id: "shock", wanted: func(f *fitted) bool { return f.build.Rear.Travel > 0 }, filled: ofAny("shock")},
	{id: "front-wheel", filled: in(front, "rim", "wheel")},
	{id: "rear-wheel", filled: in(rear, "rim", "wheel")},
	{id: "front-hub", wanted: in(front, "rim"), filled: in(front, "hub", "dynamo", "wheel")},
	{id: "rear-hub", wanted: in(rear, "rim"), filled: func(f *fitted) bool { return f.rear["hub"] || f.rear["wheel"] || f.kinds["gear-hub"] }},
	{id: "front-spokes", wanted: in(front, "rim"), filled: in(front, "spokes", "wheel")},
	{id: "rear-spokes", wanted: in(rear, "rim"), filled: in(rear, "spokes", "wheel")},
	{id: "front-tyre", filled: in(front, "tyre")},
	{id: "rear-tyre", filled: in(rear, "tyre")},
	{id: "tubes", wanted: ofAny("tyre"), filled: ofAny("tube", "sealant")},
	{id: "crank", filled: ofAny("crank")},
	{id: "bottom-bracket", wanted: func(f *fitted) bool { return !f.kinds["crank-gearbox"] }, filled: ofAny("bottom-bracket")},
	{id: "chainring", wanted: chained, filled: ofAny("chainring")},
	{id: "chain", wanted: chained, filled: ofAny("chain", "belt")},
	{id: "cog", wanted: chained, filled: ofAny("cassette", "cog")},
	{id: "shifter", wanted: ofAny("derailleur", "front-derailleur", "gear-hub", "crank-gearbox"), filled: ofAny("shifter")},
	{id: "gear-cable", wanted: func(f *fitted) bool {
		electronic := f.entries["derailleur-electronic"] || f.entries["shifter-electronic"]
		return f.any("derailleur", "front-derailleur", "gear-hub", "crank-gearbox") && !electronic
	}, filled: ofAny("cable")},
	{id: "pedals", filled: ofAny("pedal")},
	{id: "front-brake", filled: in(front, "brake")},
	{id: "rear-brake", filled: in(rear, "brake")},
	{id: "brake-lever", wanted: ofAny("brake"), filled: func(f *fitted) bool {
		return f.kinds["brake-lever"] || f.entries["drop-bar-shifter"]
	}},
	{id: "front-rotor", wanted: func(f *fitted) bool { return f.front["brake"] && (f.front["disc brake"] || f.kinds["rotor"]) }, filled: in(front, "rotor")},
	{id: "rear-rotor", wanted: func(f *fitted) bool { return f.rear["brake"] && (f.rear["disc brake"] || f.kinds["rotor"]) }, filled: in(rear, "rotor")},
	{id: "front-brake-hose", wanted: in(front, "brake"), filled: in(front, "hose")},
	{id: "rear-brake-hose", wanted: in(rear, "brake"), filled: in(rear, "hose")},
	{id: "bar", filled: ofAny("bar")},
	{id: "stem", filled: ofAny("stem")},
	{id: "grips", filled: ofAny("grip")},
	{id: "saddle", filled: ofAny("saddle")},
	{id: "seatpost", filled: ofAny("seatpost")},
}

// Missing returns what a whole bike has and the build lacks, except what the
// build is said to go without.
func Missing(b *document.Build) []Role {
	f := fitted{map[string]bool{}, map[string]bool{}, map[string]bool{}, map[string]bool{}, b}
	for i := range b.Parts {
		p := &b.Parts[i]
		if p.Quantity <= 0 {
			continue
		}
		f.kinds[p.Kind], f.entries[p.Catalogue] = true, true
		end := f.rear
		if atFront(p) {
			end = f.front
		}
		end[p.Kind] = true
		if p.Kind == "brake" && strings.HasSuffix(p.Station, "-caliper") {
			end["disc brake"] = true
		}
	}
	var missing []Role
	for i := range roles {
		r := &roles[i]
		if (r.wanted == nil || r.wanted(&f)) && !r.filled(&f) && !slices.Contains(b.Without, string(r.id)) {
			missing = append(missing, r.id)
		}
	}
	return missing
}

// atFront reports whether a part is at the front of the bike, by what carries it.
func atFront(p *document.Part) bool {
	switch p.Carrier {
	case document.FrontWheel, document.ForkUpper, document.ForkLower:
		return true
	}
	return false
}
