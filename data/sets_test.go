package data_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/parts"
)

// The trade's range of what a set weighs on a bike with a rigid rear, g. Common
// practice, no source. Drivetrains without pedals, with the rear hub or what
// takes its place, spokes and cradle; wheels without tyre, tube, cog and rotor.
// Of a wheel that comes in sizes it is the largest.
var setRanges = map[string][2]float64{
	"derailleur-one-ring": {2500, 2950}, "derailleur-one-ring-electronic": {2500, 2950},
	"derailleur-two-rings": {2800, 3300}, "derailleur-two-rings-9": {2800, 3300},
	"gear-hub-chain": {3250, 3700}, "gear-hub-belt": {3150, 3600},
	"gear-hub-medium-chain": {3100, 3600}, "gear-hub-medium-belt": {3000, 3500},
	"gearbox-chain": {4000, 4700}, "gearbox-belt": {3900, 4600},
	"gearbox-medium-chain": {3600, 4300}, "gearbox-medium-belt": {3500, 4200},
	"wheel-front-disc": {800, 1050}, "wheel-front-rim-brake": {800, 1100},
	"wheel-front-dynamo": {1050, 1350}, "wheel-front-dynamo-rim-brake": {1050, 1400},
	"wheel-rear-disc": {950, 1250}, "wheel-rear-rim-brake": {950, 1250}, "wheel-rear-single": {950, 1200},
	"wheel-rear-gear-hub": {650, 850}, "wheel-rear-gear-hub-rim-brake": {650, 900},
	"wheel-front-carbon": {700, 900}, "wheel-rear-carbon": {850, 1050},
	"brakes-hydraulic-two-piston": {780, 950}, "brakes-hydraulic-four-piston": {900, 1150},
	"brakes-mechanical": {850, 1100}, "brakes-rim": {600, 800},
	"cockpit-flat": {420, 650}, "cockpit-riser": {450, 700}, "cockpit-ergonomic": {550, 850}, "cockpit-swept": {600, 900},
	"cockpit-drop": {700, 950}, "cockpit-drop-flared": {700, 1000},
	"lighting-dynamo": {500, 750}, "lighting-dynamo-charger": {750, 1050}, "lighting-dynamo-rim-brake": {500, 800},
	"lighting-battery": {280, 500},
	"racks-rear":       {650, 1100}, "racks-both-aluminium": {1100, 1700}, "racks-both-steel": {1500, 2200},
	"racks-full-suspension": {750, 1250}, "racks-swingarm": {700, 1200},
	"mudguards-full": {550, 900}, "mudguards-clip": {250, 500}, "mudguards-suspension": {150, 400},
}

// The ± of a set's sum as in weigh. Limits: 35 %, beyond which it would agree
// with anything, as for the other sums.
func TestSetsAddUpToTradeValues(t *testing.T) {
	seen := make(map[string]bool)
	for _, s := range parts.Sets() {
		name := s.ID
		if s.BeadSeat > 0 {
			name = name[:strings.LastIndexByte(name, '-')]
			if seen[name] {
				continue
			}
		}
		seen[name] = true
		bead := s.BeadSeat
		if bead == 0 {
			bead = 622
		}
		var grams, variance float64
		for _, p := range s.Parts {
			if p.If == parts.RearSuspension || p.If == parts.OtherSize {
				continue
			}
			e := p.EntryFor(bead, 50)
			n := float64(e.Quantity)
			grams += n * e.Mass
			variance += n * n * e.HalfWidth * e.HalfWidth / 3
		}
		r, ok := setRanges[name]
		if plus := 2 * math.Sqrt(variance); !ok || grams < r[0] || grams > r[1] || plus > 0.35*grams {
			t.Errorf("%s: %.0f ± %.0f g; the trade says %v g", name, grams, plus, r)
		}
	}
	for name := range setRanges {
		if !seen[name] {
			t.Errorf("there is no set %s", name)
		}
	}
}

func TestSetsAreMadeOfTheCatalogue(t *testing.T) {
	ids, names, areas := map[string]bool{}, map[string]bool{}, map[parts.Area]int{}
	for _, s := range parts.Sets() {
		name := s.Name().String()
		if ids[s.ID] || names[name] || !regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(s.ID) {
			t.Errorf("two sets are called %s, %q, or it is no id", s.ID, name)
		}
		ids[s.ID], names[name] = true, true
		areas[s.Area]++
		if why := fault(name); why != "" {
			t.Errorf("%s: %q: %s", s.ID, name, why)
		}
		drives := []parts.Need{parts.Derailleur, parts.GearHub, parts.Gearbox}
		if (s.Area == parts.Drivetrain) != slices.Contains(drives, s.Drive) {
			t.Errorf("%s: a drivetrain, and nothing else, is one of %v, not %q", s.ID, drives, s.Drive)
		}
		for _, n := range s.Needs {
			if !slices.Contains(parts.Needs, n) {
				t.Errorf("%s needs %q, which nothing is", s.ID, n)
			}
		}
		for _, p := range s.Parts {
			if p.If != "" && p.If != parts.OtherSize && !slices.Contains(parts.Needs, p.If) {
				t.Errorf("%s: %s comes if the bike has %q, which nothing is", s.ID, p.Entry, p.If)
			}
			// A wheel is of its own size, a drivetrain goes into a wheel of any.
			for _, bead := range []float64{622, 584, 559, 406} {
				if s.BeadSeat != 0 && s.BeadSeat != bead {
					continue
				}
				if p.EntryFor(bead, 50) == nil {
					t.Errorf("%s: there is no entry for %s, %g", s.ID, p.Entry, bead)
				}
			}
			if strings.HasPrefix(p.Entry, "tyre-") {
				if e := p.EntryFor(622, 58); !strings.HasSuffix(e.ID, "-57-622") {
					t.Errorf("the tyre nearest to 58-622 is %s, want 57-622", e.ID)
				}
			}
		}
	}
	for _, a := range parts.Areas {
		if areas[a] == 0 {
			t.Errorf("nothing to choose from for %s", a)
		}
	}
}
