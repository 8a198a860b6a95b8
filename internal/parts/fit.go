package parts

import (
	"math"
	"strconv"

	"steelyard/internal/document"
	"steelyard/internal/spelling"
)

// Need is something that a build must have for a part to be of use on it.
type Need string

// What an entry of the catalogue may need.
const (
	RearSuspension Need = "rear-suspension"
	RigidRear      Need = "rigid-rear"
	ForkSuspension Need = "fork-suspension"
	RigidFork      Need = "rigid-fork"
	Gearbox        Need = "crank-gearbox"
	GearHub        Need = "gear-hub"
	Derailleur     Need = "derailleur"
)

// Needs are all of them.
var Needs = []Need{RearSuspension, RigidRear, ForkSuspension, RigidFork, Gearbox, GearHub, Derailleur}

// Meets returns the needs that a build meets.
func Meets(b *document.Build) map[Need]bool {
	has := map[Need]bool{
		RearSuspension: b.Rear.Travel > 0, RigidRear: b.Rear.Travel <= 0,
		ForkSuspension: b.Fork.Travel > 0, RigidFork: b.Fork.Travel <= 0,
	}
	for i := range b.Parts {
		if n := Need(b.Parts[i].Kind); n == Gearbox || n == GearHub || n == Derailleur {
			has[n] = true
		}
	}
	return has
}

// fitting is what decides whether an entry fits a build.
type fitting struct {
	needs  []Need
	end    document.Carrier // the wheel that it is part of, if its size counts
	bead   float64          // diameter of the bead seat, mm
	tyre   float64          // section width, mm
	travel float64          // of a suspension fork, mm
}

// fittings reads the sizes off the names of the catalogue, which has them as
// ISO 5775 does: 60-622 is a tyre 60 mm wide on a bead seat of 622 mm.
func fittings() []fitting {
	all := make([]fitting, len(catalogue()))
	for i := range all {
		e := &catalogue()[i]
		f := &all[i]
		f.needs = e.Needs
		last := 0.0
		for _, w := range spelling.Words(e.Name) {
			n, err := strconv.ParseFloat(w, 64)
			if err != nil {
				continue
			}
			switch e.Kind {
			case "rim", "spokes", "tyre", "tube":
				if n > 200 {
					f.end, f.bead, f.tyre = e.Carrier, n, last
				}
			case "fork":
				f.travel = n
			}
			last = n
		}
		if e.Kind != "tyre" {
			f.tyre = 0
		}
	}
	return all
}

// on returns how well the entry fits a build: one point for each need that is met
// and for the right wheel size, one less for each that is not; and how far its
// other sizes are from the build's, mm.
func (f *fitting) on(b *document.Build, has map[Need]bool) (counts int, off float64) {
	count := func(fits bool) {
		if fits {
			counts++
		} else {
			counts--
		}
	}
	for _, n := range f.needs {
		count(has[n])
	}
	if f.bead > 0 {
		wheel := b.Wheels.Front
		if f.end == document.RearWheel {
			wheel = b.Wheels.Rear
		}
		count(wheel.BeadSeat == f.bead)
		if f.tyre > 0 {
			off += math.Abs(wheel.Tyre - f.tyre)
		}
	}
	if f.travel > 0 {
		off += math.Abs(b.Fork.Travel - f.travel)
	}
	return counts, off
}

// endsOf returns the kinds of which a build has something at an end, of those that
// a bike has at both.
func endsOf(b *document.Build) map[[2]string]bool {
	ends := make(map[[2]string]bool)
	for i := range b.Parts {
		if p := &b.Parts[i]; EndKinds[p.Kind] {
			end := "rear"
			if atFront(p) {
				end = "front"
			}
			ends[[2]string{p.Kind, end}] = true
		}
	}
	return ends
}
