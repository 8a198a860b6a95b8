package data_test

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/parts"
)

// fitted is a list of entries by id; "2 x" in front takes two of one. A minus
// in front takes it off.
type fitted []string

// weigh sums a list: grams, and the expanded uncertainty of JCGM 100:2008 (GUM).
// A half-width h is a rectangular distribution with the standard uncertainty
// h/sqrt 3; several pieces of one type add up linearly, different types in
// quadrature; the coverage factor is 2.
func weigh(t *testing.T, lists ...fitted) (grams, plus float64) {
	t.Helper()
	pieces := make(map[string]float64)
	for _, list := range lists {
		for _, id := range list {
			n := 1.0
			if rest, ok := strings.CutPrefix(id, "-"); ok {
				id, n = rest, -n
			}
			if rest, ok := strings.CutPrefix(id, "2 x "); ok {
				id, n = rest, 2*n
			}
			pieces[id] += n
		}
	}
	var variance float64
	for id, n := range pieces {
		e := parts.EntryByID(id)
		if e == nil {
			t.Fatalf("there is no entry %q", id)
		}
		grams += n * e.Mass
		variance += n * n * e.HalfWidth * e.HalfWidth / 3
	}
	return grams, 2 * math.Sqrt(variance)
}

// without returns a list to take off.
func without(list fitted) fitted {
	var off fitted
	for _, id := range list {
		off = append(off, "-"+id)
	}
	return off
}

// Complete drivetrains, without pedals. A gear hub is counted whole, as the
// trade counts it: the plain rear hub that it takes the place of is not taken
// off here, but in TestGearboxBikeIsOverAKilogramHeavier and the demo, where
// whole bikes are compared. The cradle of a gearbox is the frame's.
var (
	singleRing = fitted{
		"cranks-aluminium", "bottom-bracket-threaded", "chainring-single", "cassette-12", "chain-12", "derailleur-12", "shifter-right", "cable-rear",
	}
	secondRing  = fitted{"chainring-inner", "front-derailleur", "shifter-left", "cable-front"}
	gearHubOf   = fitted{"gear-hub-wide", "cranks-aluminium", "bottom-bracket-threaded", "twist-shifter-gear-hub", "cable-gear-hub"}
	gearHub     = append(fitted{"chainring-gear-hub", "cog-gear-hub", "chain-8"}, gearHubOf...)
	gearHubBelt = append(fitted{"belt-ring-gear-hub", "belt-cog-gear-hub", "belt"}, gearHubOf...)
	gearboxOf   = fitted{"gearbox-wide", "gearbox-bolts", "cranks-gearbox", "twist-shifter-gearbox", "cable-gearbox"}
	gearboxBelt = append(fitted{"belt-ring-gearbox", "belt-cog-single", "belt"}, gearboxOf...)
	// On full suspension the distance from cranks to axle changes, and a tensioner takes up the chain.
	gearboxSprung = append(fitted{"chainring-gearbox", "cog-single", "cog-spacers", "chain-8", "chain-tensioner"}, gearboxOf...)
)

// Every trade value is common practice, no source.
func TestSubAssembliesAddUpToTradeValues(t *testing.T) {
	for _, c := range []struct {
		name  string
		trade float64 // g, common practice, no source
		parts fitted
	}{
		{"single-ring derailleur drivetrain", 2300, singleRing},
		{"a second ring with its derailleur and shifter", 400, secondRing},
		{"wide-range gear hub drivetrain, chain", 3100, gearHub},
		{"wide-range gear hub drivetrain, belt", 3100, gearHubBelt},
		{"crank gearbox drivetrain, belt", 3300, gearboxBelt},
		{"crank gearbox drivetrain, chain and tensioner", 3300, gearboxSprung},

		{"pair of 29 in aluminium wheels, disc, with tubeless tape", 2000, fitted{
			"hub-front", "spokes-front-622", "rim-front-622-aluminium", "rim-tape-front",
			"hub-rear-cassette", "spokes-rear-622", "rim-rear-622-aluminium", "rim-tape-rear",
		}},
		{"pair of 29 in carbon wheels, disc, light spokes", 1650, fitted{
			"hub-front", "spokes-front-622-light", "rim-front-622-carbon", "rim-tape-front",
			"hub-rear-cassette", "spokes-rear-622-light", "rim-rear-622-carbon", "rim-tape-rear",
		}},
		{"pair of built 29 in aluminium wheels, disc", 2000, fitted{"wheel-front", "wheel-rear"}},
		{"rear wheel with a wide-range gear hub, 29 in, aluminium", 2500, fitted{
			"gear-hub-wide", "spokes-gear-hub-622", "rim-rear-622-aluminium", "rim-tape-rear",
		}},
		{"what a dynamo hub adds to a front wheel", 250, fitted{"dynamo-hub", "-hub-front"}},
		{"100 mm suspension fork", 1700, fitted{"fork-100-upper", "fork-100-lower"}},
		{"120 mm suspension fork", 1850, fitted{"fork-120-upper", "fork-120-lower"}},
		{"150 mm suspension fork", 2100, fitted{"fork-150-upper", "fork-150-lower"}},
		{"pair of hydraulic disc brakes, two pistons, without rotors", 570, fitted{
			"2 x brake-lever-hydraulic", "caliper-front-two-piston", "caliper-rear-two-piston", "hose-front", "hose-rear",
		}},
		{"full-suspension frame, aluminium, with air shock", 3700, fitted{
			"full-suspension-main-frame-aluminium", "swingarm-aluminium", "links-aluminium", "pivot-bearings", "air-shock",
		}},
	} {
		grams, plus := weigh(t, c.parts)
		t.Logf("%-60s %5.0f ± %3.0f g (%5.0f)", c.name, grams, plus, c.trade)
		if math.Abs(grams-c.trade) > plus {
			t.Errorf("%s: the catalogue says %.0f ± %.0f g, the trade about %.0f g", c.name, grams, plus, c.trade)
		}
		if plus > 0.35*c.trade {
			t.Errorf("%s: ± %.0f g agrees with anything", c.name, plus)
		}
	}
}

// Common practice, no source: each frame that is made to hold a gearbox is
// heavier than the same frame that is not, by what the cradle is said to weigh.
func TestFrameThatHoldsAGearboxIsHeavier(t *testing.T) {
	cradle := parts.EntryByID("gearbox-cradle")
	pairs := 0
	for _, e := range catalogue(t) {
		id, ok := strings.CutSuffix(e.ID, "-gearbox")
		if !ok || e.Kind != "frame" {
			continue
		}
		pairs++
		plain := parts.EntryByID(id)
		if plain == nil {
			t.Errorf("%s has no plain frame %s beside it", e.ID, id)
			continue
		}
		if more := e.Mass - plain.Mass; more <= 0 || math.Abs(more-cradle.Mass) > cradle.HalfWidth {
			t.Errorf("%s is %g g heavier than %s; a cradle weighs %g ± %g g", e.ID, more, id, cradle.Mass, cradle.HalfWidth)
		}
	}
	if pairs < 6 {
		t.Errorf("%d frames are made to hold a gearbox; want rigid, hardtail and full suspension in several materials", pairs)
	}
}

// Common practice, no source: with all that goes with it - the frame's cradle, a
// hub for one cog in place of a cassette hub, no derailleur hanger - a bike with
// a crank gearbox is more than a kilogram heavier than with a single-ring
// derailleur drivetrain, and the doubt of the figures does not change that.
func TestGearboxBikeIsOverAKilogramHeavier(t *testing.T) {
	frame := fitted{"gearbox-cradle", "hub-rear-single", "-hub-rear-cassette", "-derailleur-hanger"}
	for name, drive := range map[string]fitted{"chain and tensioner": gearboxSprung, "belt": gearboxBelt} {
		grams, plus := weigh(t, drive, frame, without(singleRing))
		t.Logf("%s: %+.0f ± %.0f g", name, grams, plus)
		if grams-plus <= 1000 {
			t.Errorf("%s: a gearbox bike is %.0f ± %.0f g heavier; want more than a kilogram beyond doubt", name, grams, plus)
		}
	}
}

// Common practice, no source: the three ways to build one drivetrain, lightest
// first, and within gear hubs and gearboxes the smaller range is the lighter.
func TestOrderOfDrivetrains(t *testing.T) {
	plainHub := fitted{"hub-rear-cassette", "derailleur-hanger"}
	single, _ := weigh(t, singleRing, plainHub)
	double, _ := weigh(t, singleRing, secondRing, plainHub)
	hub, _ := weigh(t, gearHub)
	gearbox, _ := weigh(t, gearboxSprung, fitted{"gearbox-cradle", "hub-rear-single"})
	if !(single < double && double < hub && hub < gearbox) {
		t.Errorf("single ring %.0f, double %.0f, gear hub %.0f, gearbox %.0f g", single, double, hub, gearbox)
	}
	for _, order := range []fitted{
		{"gear-hub-small-light", "gear-hub-small", "gear-hub-medium", "gear-hub-wide", "gear-hub-heavy"},
		{"gearbox-medium", "gearbox-wide"},
		{"cassette-8", "cassette-9", "cassette-10", "cassette-11", "cassette-12"},
		{"full-suspension-main-frame-carbon", "full-suspension-main-frame-aluminium", "full-suspension-main-frame-steel"},
		{"rigid-fork-carbon", "rigid-fork-aluminium", "rigid-fork-steel"},
		{"rotor-rear-160", "rotor-rear-180", "rotor-rear-203"},
		{"belt", "chain-8", "chain-wide"},
	} {
		for i := 1; i < len(order); i++ {
			lighter, heavier := parts.EntryByID(order[i-1]), parts.EntryByID(order[i])
			if lighter == nil || heavier == nil || lighter.Mass >= heavier.Mass {
				t.Errorf("%s should be lighter than %s", order[i-1], order[i])
			}
		}
	}
}
