package report

import (
	"math"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// figures are the figures of a build in SI units, by slot. A figure that does
// not exist, a ratio without a denominator or a centre without a mass, is not
// a number; it is left out of the report.
type figures struct {
	of    [numFigures]mass.Figure
	items [numFigures][]mass.Item // that the figure is of
	plus  [numFigures]float64     // expanded uncertainty
	twins [numFigures]bool        // the figure is its twin's
	rigid [numFigures]bool        // the figure is of a spring that the bike has not
}

// twin names the figure, earlier in order, that another may be the same as: at
// an end where nothing turns about a pivot, effective mass is the tally.
var twin = [numFigures]slot{effectiveFront: unsprungFront, effectiveRear: unsprungRear}

// has reports whether a figure exists. An end without a spring has no sprung and
// unsprung figures: the tyre is its only spring.
func (f *figures) has(s slot) bool {
	return !f.rigid[s] && units.Finite(f.of[s].Value) && units.Finite(f.plus[s])
}

// charge adds the contributions of a figure to a budget.
func (f *figures) charge(b *mass.Budget, s slot, sign float64) {
	if units.Finite(f.of[s].Value) {
		b.Charge(f.items[s], f.of[s], sign)
	}
}

// none is a figure that does not exist.
var none = mass.Figure{Value: math.NaN()}

// computeFigures works out every figure of a build.
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
func (w *Weighed) computeFigures() {
	f, s, bike, it := &w.figures.of, &w.Spans, w.Bike, w.Items
	for i := range f {
		f[i], w.figures.items[i] = none, it
	}
	without := &w.figures.rigid
	for _, s := range [...]slot{unsprungFront, effectiveFront, ratioFront} {
		without[s] = !bike.FrontSprung
	}
	for _, s := range [...]slot{unsprungRear, effectiveRear, ratioRear} {
		without[s] = !bike.RearSprung
	}
	without[sprung] = !bike.FrontSprung && !bike.RearSprung
	f[total] = mass.Total(it, nil)
	if !(f[total].Value > 0) {
		f[total] = mass.Figure{}
		return
	}
	f[centreX] = mass.Centre(it, nil, mass.X)
	f[centreY] = mass.Centre(it, nil, mass.Y)
	f[centreZ] = mass.Centre(it, nil, mass.Z)
	front, rear := bike.FrontContact.X, bike.RearContact.X
	f[frontLoad] = mass.Support(it, nil, front, rear)
	f[rearLoad] = mass.Support(it, nil, rear, front)
	f[frontShare] = mass.Ratio(f[frontLoad], f[total])
	f[sprung] = mass.Total(it, s.Sprung)
	f[ratioFront] = sprungToUnsprung(f[frontLoad], mass.Total(it, s.TallyFront))
	f[ratioRear] = sprungToUnsprung(f[rearLoad], mass.Total(it, s.TallyRear))

	f[inertiaRoll] = mass.CentralInertia(it, nil, mass.X)
	f[inertiaPitch] = mass.CentralInertia(it, nil, mass.Y)
	f[inertiaYaw] = mass.CentralInertia(it, nil, mass.Z)
	f[inertiaXZ] = mass.CentralProduct(it, nil)
	f[gyrationRoll] = gyration(f[inertiaRoll], f[total])
	f[gyrationPitch] = gyration(f[inertiaPitch], f[total])
	f[gyrationYaw] = gyration(f[inertiaYaw], f[total])

	set := func(slot slot, items []mass.Item, figure mass.Figure) {
		f[slot], w.figures.items[slot] = figure, items
	}
	wheel := w.On(assembly.FrontWheel, assembly.FrontWheel)
	set(rotatingFront, wheel, mass.Total(wheel, nil))
	set(rimFront, wheel, mass.LeverMass(wheel, nil, bike.FrontAxle, bike.FrontContact))
	end := wheel
	if bike.FrontSprung {
		end = w.On(assembly.FrontWheel, assembly.ForkLower)
	}
	set(unsprungFront, end, mass.Total(end, nil))
	set(effectiveFront, end, f[unsprungFront])
	w.figures.twins[effectiveFront] = true

	wheel = w.On(assembly.RearWheel, assembly.RearWheel)
	set(rotatingRear, wheel, mass.Total(wheel, nil))
	set(rimRear, wheel, mass.LeverMass(wheel, nil, bike.RearAxle, bike.RearContact))
	end = w.On(assembly.RearWheel, assembly.Link)
	set(unsprungRear, end, mass.Total(end, s.RearTally))
	set(effectiveRear, end, f[unsprungRear])
	w.figures.twins[effectiveRear] = !bike.RearSprung
	if bike.RearSprung {
		swing := mass.LeverMass(end, s.RearSwing, bike.Pivot, bike.RearAxle)
		set(effectiveRear, end, mass.Plus(swing, mass.Total(end, s.RearRolls)))
	}
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

// uncertainties works out how well the figures of a build are known.
func (w *Weighed) uncertainties(b *mass.Budget) {
	f := &w.figures
	for s := range numFigures {
		if f.twins[s] {
			f.plus[s] = f.plus[twin[s]]
			continue
		}
		b.Reset()
		f.charge(b, s, 1)
		f.plus[s] = b.Expanded()
	}
}

// pairUncertainties works out how well the figures of two builds, and of the
// second minus the first, are known, in one go: the budget of the first is half
// of that of the difference, unless some lines of b are renamed. It returns the
// expanded uncertainties of the difference.
func pairUncertainties(a, b *Weighed, renamed []renaming, one, both *mass.Budget) *[numFigures]float64 {
	var d [numFigures]float64
	for s := range numFigures {
		if a.figures.twins[s] && b.figures.twins[s] {
			t := twin[s]
			a.figures.plus[s], b.figures.plus[s], d[s] = a.figures.plus[t], b.figures.plus[t], d[t]
			continue
		}
		both.Reset()
		a.figures.charge(both, s, -1)
		a.figures.plus[s] = both.Expanded()
		one.Reset()
		b.figures.charge(one, s, 1)
		b.figures.plus[s] = one.Expanded()
		if len(renamed) == 0 {
			both.Add(one, 1)
		} else {
			b.rename(renamed, true)
			b.figures.charge(both, s, 1)
			b.rename(renamed, false)
		}
		d[s] = both.Expanded()
	}
	return &d
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
			Value: k.unit.of(f.of[s].Value), Plus: k.unit.of(f.plus[s]),
		})
	}
	return list
}

// Figure returns a figure of the build in SI units with its expanded
// uncertainty; ok is false when it does not exist or the key is not known.
func (w *Weighed) Figure(key string) (value, plus float64, ok bool) {
	for s := range numFigures {
		if figureKeys[s].key == key && w.figures.has(s) {
			return w.figures.of[s].Value, w.figures.plus[s], true
		}
	}
	return 0, 0, false
}

// lengths are the geometric figures of a posed bike.
func lengths(b *geometry.Bike) []Length {
	list := make([]Length, 0, 10)
	add := func(key string, u *unit, si float64) {
		if units.Finite(si) {
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

// tellParts writes the parts of a build into a report. Doubts are the standard
// uncertainties of the masses by source. Pieces of one type share one error c; a
// line's share of c² is in proportion to what the line adds to c.
func (w *Weighed) tellParts(doubts []float64) []Part {
	list := make([]Part, w.Own)
	variance := 0.0
	for _, c := range doubts {
		variance += c * c
	}
	for i := range list {
		p, l, o := &w.Build.Parts[i], &w.Lines[i], &list[i]
		o.ID, o.Off = p.ID, l.Off
		if !l.OK && !l.Off {
			o.Group = document.GroupOf(p.Kind)
			continue
		}
		o.OK = true
		o.Group = assembly.Groups[l.Group]
		o.Mass, o.Plus = gram.of(l.Mass), gram.of(mass.HalfWidth(l.MassU))
		o.Place = inMillimetres(l.Place)
		o.Unsprung = l.Unsprung
		if l.OK && l.MassU > 0 && variance > 0 {
			o.Doubt = ratio.of(doubts[l.Source] * l.MassU / variance)
		}
	}
	return list
}
