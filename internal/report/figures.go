package report

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
)

// figures are the figures of a build in SI units, by slot. A figure that does
// not exist, a ratio without a denominator or a centre without a mass, is not
// a number; it is left out of the report.
type figures struct {
	of       [numFigures]mass.Figure
	standard [numFigures]float64 // standard uncertainty
	total    mass.Budget         // of the total
}

// has reports whether a figure exists.
func (f *figures) has(s slot) bool { return finite(f.of[s].Value) && finite(f.standard[s]) }

// none is a figure that does not exist.
var none = mass.Figure{Value: math.NaN()}

// measure works out every figure of a build.
//
// Effective mass. The swingarm and what it carries turn about the main pivot,
// so their moment of inertia about it counts, divided by the square of the way
// from pivot to axle; shock and links count by half, as in the tally. The rear
// wheel does not turn with the swingarm: it is free about its axle, which the
// bearings carry up and down only, so it counts as a point there, in full.
// (That takes its parts to be centred on the axle, as wheels are.) A telescopic
// fork's lower parts and the front wheel move in full. At a rigid end nothing
// turns, and the effective mass equals the tally: the wheel on its tyre.
//
// Rotating mass. All that the wheel carries is taken to spin: rims, tyres, hub,
// rotor, cassette, and the inside of a gear hub too, of which a part stands
// still and another turns faster than the wheel. The equivalent mass at the
// tyre is the spin inertia about the axle divided by the square of the tyre's
// radius.
func (w *Weighed) measure() {
	f, s, bike, it := &w.figures.of, &w.shares, w.Bike, w.Items

	f[total] = mass.Total(it, nil)
	if !(f[total].Value > 0) {
		for i := range f {
			f[i] = none
		}
		f[total] = mass.Figure{}
		w.judge()
		return
	}
	f[centreX] = mass.Centre(it, nil, mass.X)
	f[centreY] = mass.Centre(it, nil, mass.Y)
	f[centreZ] = mass.Centre(it, nil, mass.Z)
	front, rear := bike.FrontContact.X, bike.RearContact.X
	f[frontLoad] = mass.Support(it, nil, front, rear)
	f[rearLoad] = mass.Support(it, nil, rear, front)
	f[frontShare] = mass.Ratio(f[frontLoad], f[total])

	f[sprung] = mass.Total(it, s.sprung)
	f[unsprungFront] = mass.Total(it, s.tallyFront)
	f[unsprungRear] = mass.Total(it, s.tallyRear)
	f[rotatingFront] = mass.Total(it, s.frontWheel)
	f[rotatingRear] = mass.Total(it, s.rearWheel)
	f[rimFront] = mass.LeverMass(it, s.frontWheel, bike.FrontAxle, bike.FrontContact)
	f[rimRear] = mass.LeverMass(it, s.rearWheel, bike.RearAxle, bike.RearContact)
	f[effectiveFront], f[effectiveRear] = f[unsprungFront], f[unsprungRear]
	if bike.RearSprung {
		f[effectiveRear] = mass.Plus(mass.LeverMass(it, s.swing, bike.Pivot, bike.RearAxle), f[rotatingRear])
	}
	f[ratioFront] = sprungToUnsprung(f[frontLoad], f[unsprungFront])
	f[ratioRear] = sprungToUnsprung(f[rearLoad], f[unsprungRear])

	f[inertiaRoll] = mass.CentralInertia(it, nil, mass.X)
	f[inertiaPitch] = mass.CentralInertia(it, nil, mass.Y)
	f[inertiaYaw] = mass.CentralInertia(it, nil, mass.Z)
	f[inertiaXZ] = mass.CentralProduct(it, nil)
	f[gyrationRoll] = gyration(f[inertiaRoll], f[total])
	f[gyrationPitch] = gyration(f[inertiaPitch], f[total])
	f[gyrationYaw] = gyration(f[inertiaYaw], f[total])
	w.judge()
}

// sprungToUnsprung is (load - tally)/tally = load/tally - 1.
func sprungToUnsprung(load, tally mass.Figure) mass.Figure {
	f := mass.Ratio(load, tally)
	f.Value--
	return f
}

// gyration is the radius that goes with a moment of inertia. Rounding may
// leave the inertia of a slender thing a hair below 0.
func gyration(inertia, total mass.Figure) mass.Figure {
	inertia.Value = max(inertia.Value, 0)
	return mass.Sqrt(mass.Ratio(inertia, total))
}

// judge works out how well the figures are known.
func (w *Weighed) judge() {
	var b mass.Budget
	f := &w.figures
	for i := range f.of {
		b.Reset()
		if finite(f.of[i].Value) {
			b.Charge(w.Items, f.of[i], 1)
		}
		f.standard[i] = b.Standard()
	}
	f.total.Charge(w.Items, f.of[total], 1)
}

// tell writes the figures into a report.
func (f *figures) tell() []Figure {
	list := make([]Figure, 0, numFigures)
	for s := range numFigures {
		if !f.has(s) {
			continue
		}
		k := &figureKeys[s]
		list = append(list, Figure{
			Key: k.key, Unit: k.unit.name,
			Value: k.unit.of(f.of[s].Value), Plus: k.unit.of(mass.Coverage * f.standard[s]),
		})
	}
	return list
}

// Figure returns a figure of the build in SI units with its expanded
// uncertainty; ok is false when it does not exist or the key is not known.
func (w *Weighed) Figure(key string) (value, plus float64, ok bool) {
	for s := range numFigures {
		if figureKeys[s].key == key && w.figures.has(s) {
			return w.figures.of[s].Value, mass.Coverage * w.figures.standard[s], true
		}
	}
	return 0, 0, false
}

// lengths are the geometric figures of a posed bike.
func lengths(b *geometry.Bike) []Length {
	list := make([]Length, 0, 10)
	add := func(key string, u *unit, si float64) {
		if finite(si) {
			list = append(list, Length{key, u.name, u.of(si)})
		}
	}
	add("wheelbase", &millimetre, b.Wheelbase)
	add("front_centre", &millimetre, b.FrontCentre)
	add("rear_centre", &millimetre, b.RearCentre)
	add("trail", &millimetre, b.Trail)
	add("bb_height", &millimetre, b.BBHeight)
	add("head_angle", &degree, b.HeadAngle)
	add("seat_angle", &degree, b.SeatAngle)
	add("front_radius", &millimetre, b.FrontRadius)
	add("rear_radius", &millimetre, b.RearRadius)
	add("pitch", &degree, b.Pitch)
	return list
}

// tellParts writes the lines of a build into a report.
func (w *Weighed) tellParts() []Part {
	list := make([]Part, len(w.Lines))
	variance := w.figures.total.Variance()
	for i := range w.Lines {
		p, l := &w.Build.Parts[i], &w.Lines[i]
		list[i] = Part{ID: p.ID, Group: parts.GroupOf(p.Kind)}
		if !l.OK {
			continue
		}
		o := &list[i]
		o.OK = true
		o.Mass, o.Plus = gram.of(l.Mass), gram.of(mass.Coverage*l.MassU)
		o.Place = inMillimetres(l.Place)
		o.Unsprung = l.Unsprung
		if variance > 0 {
			// Pieces of one type share an error c; of its c² a line owns in
			// proportion to what it adds to c.
			o.Doubt = ratio.of(math.Abs(w.figures.total.MassPart(l.source)) * l.MassU / variance)
		}
	}
	return list
}
