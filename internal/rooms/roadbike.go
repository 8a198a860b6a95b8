package rooms

import (
	"fmt"
	"math"
	"strings"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
	"steelyard/internal/road"
)

// What is taken where nobody said or measured it, with half-widths; common
// practice, no source.
const (
	pressureTimesWidth   = 0.12 * road.Bar // Pa m: 2 bar in a tyre of 60 mm, 4 bar in one of 30 mm
	leastPressure        = 1 * road.Bar
	mostPressure         = 7 * road.Bar
	typicalPressureShare = 0.25           // half-width of such a pressure
	gaugeWithin          = 0.1 * road.Bar // of a pressure that was read off a gauge
	sagWithin            = 0.1            // share of a sag that was read off, at least leastSagWithin
	leastSagWithin       = 0.001          // m
	typedSpringWithin    = 0.05           // share of a rate that was typed
	typedDampingWithin   = 0.1            // share of a damping that was typed
)

// placed are the items of a bike in a state, as package road wants them, and the
// lines that they are of.
type placed struct {
	road.Loading
	of      *assembly.Assembly
	lines   []int32 // of each item
	pieces  [][]int // the items of each line
	renamed int     // how often the lines had other sources when the items were given theirs
}

// place makes the items of a bike in a state. A rider who stands is a body of its
// own.
func place(a *assembly.Assembly, to assembly.Level, left float64, standing bool) *placed {
	p := &placed{of: a, pieces: make([][]int, len(a.Lines))}
	n := len(a.Whole)
	p.Items, p.lines = make([]mass.Item, 0, n), make([]int32, 0, n)
	give := func(body road.Body, share float64) {
		if p.Shares[body] == nil {
			p.Shares[body] = make(mass.Share, n)
		}
		p.Shares[body][len(p.Items)] = share
	}
	for i := range a.Lines {
		l := &a.Lines[i]
		if l.Level > to || !l.OK && !l.Off || l.Supply != assembly.Lasting && left == 0 {
			continue
		}
		for _, it := range a.Whole[l.WholeFirst:l.WholeEnd] {
			if l.Supply != assembly.Lasting {
				it.Mass *= left
				it.MassU *= left
			}
			switch {
			case l.Level == assembly.Ridden && standing:
				give(road.Rider, 1)
			case l.Carrier == assembly.FrontWheel:
				give(road.FrontWheel, 1)
			case l.Carrier == assembly.ForkLower:
				give(road.ForkLower, 1)
			case l.Carrier == assembly.RearWheel:
				give(road.RearWheel, 1)
			case l.Carrier == assembly.Swingarm:
				give(road.Swingarm, 1)
			case l.Carrier == assembly.Link:
				give(road.Swingarm, 0.5)
				give(road.Frame, 0.5)
			default:
				give(road.Frame, 1)
			}
			p.pieces[i] = append(p.pieces[i], len(p.Items))
			p.Items, p.lines = append(p.Items, it), append(p.lines, int32(i))
		}
	}
	for body, s := range p.Shares {
		if s != nil {
			p.Shares[body] = s[:len(p.Items)]
		}
	}
	p.follow()
	return p
}

// follow gives the items the sources that their lines have now: in a difference a
// line may be known under another.
func (p *placed) follow() {
	p.renamed = p.of.Renamed
	for i, k := range p.lines {
		if l := &p.of.Lines[k]; l.Level < assembly.Ridden {
			p.Items[i].MassSource, p.Items[i].PlaceSource = l.Source, l.Spot
		}
	}
}

// levelOf is the state in which a bike goes over a rough road: with its rider, where
// it has one, for nobody rides without.
func levelOf(a *assembly.Assembly) assembly.Level {
	if a.Highest() == assembly.Ridden {
		return assembly.Ridden
	}
	return a.Level
}

// roughBike is a side as package road knows it.
type roughBike struct {
	road.Bike
	level    assembly.Level
	inputs   []Input // of a rider who stands
	own, set *placed // set is nil where the springs are set anew, or in this very state
	setState document.State
	settings []RoadSetting
}

// known is a number with its half-width, in a place where what makes it doubtful
// is named by what was said: two builds of which the same was said are off by the
// same.
func known(v, half float64, source string, said ...any) road.Known {
	for _, s := range said {
		source += fmt.Sprint(" ", s)
	}
	return road.Known{Value: v, U: mass.Rectangular(half), Source: source}
}

// or is a half-width that was typed, times a factor, or else a usual one.
func or(typed *float64, factor, usual float64) float64 {
	if typed != nil {
		return *typed * factor
	}
	return usual
}

// bikeOf makes the bike of a side. Other is the side that the springs were set
// with: the same build with another load, or the bike itself. With an error the
// bike has its settings all the same.
func bikeOf(a, other *assembly.Assembly, rough *document.Rough, label func(string) string) (*roughBike, error) {
	b := &roughBike{level: levelOf(a)}
	g := a.Bike
	standing := stands(a, rough)
	b.own = place(a, b.level, a.Left, standing)
	b.Loading = b.own.Loading
	setup := a.Build.Setup
	if setup == nil {
		setup = &document.Setup{}
	}
	b.setState = b.level.State()
	if highest := other.Highest(); setup.Springs != "anew" && (other != a || b.level != highest || a.Left < 1 && a.UsesUp(highest)) {
		b.set = place(other, highest, 1, standing)
		b.Set = &b.set.Loading
		b.setState = highest.State()
	}
	b.RearAxle, b.FrontAxle, b.Pivot, b.HeadAngle = g.RearAxle, g.FrontAxle, g.Pivot, g.HeadAngle
	b.PointContact = rough.Contact == "point"

	b.Saddle = road.Point{There: true, Place: g.SaddleTop}
	if standing {
		pedals := g.PedalFront.Lerp(g.PedalRear, 0.5)
		b.Saddle.Place = pedals
		b.standing(a.Cargo.Rider, pedals, label)
	}
	b.Grips = road.Point{There: true, Place: mass.Vec{X: g.Grip.X, Z: g.Grip.Z}}
	b.luggage()

	return b, b.ends(a.Build, [2]endIn{
		{g.FrontRadius, g.FrontSprung, g.FrontTravel, g.FrontSag}, {g.RearRadius, g.RearSprung, g.RearTravel, g.RearSag},
	}, label)
}

// endIn is an end of a bike in its pose, m.
type endIn struct {
	radius      float64
	sprung      bool
	travel, sag float64
}

// ends fills in tyres and suspension. What is wrong of an end leaves the settings
// of both to be told.
func (b *roughBike) ends(build *document.Build, in [2]endIn, label func(string) string) (problem error) {
	for side := range road.Both {
		end, wheel := endOf(build.Setup, side), build.Wheels.Front
		if side == road.Rear {
			wheel = build.Wheels.Rear
		}
		e, at := &b.Ends[side], &in[side]
		e.Tyre.Radius, e.Tyre.Width = at.radius, wheel.Tyre/1e3
		if err := b.tyre(side, end, &wheel, label); problem == nil {
			problem = err
		}
		if at.sprung {
			e.Spring = b.spring(side, end, at.travel, at.sag, label)
		}
	}
	return problem
}

// unposed are the settings of a build that has no pose: they can be set right all
// the same.
func (s *RoadSide) unposed(build *document.Build, label func(string) string) {
	b := &roughBike{}
	const mm = 1e-3
	// The problem is told at its field.
	_ = b.ends(build, [2]endIn{
		{0, build.Fork.Travel > 0, build.Fork.Travel * mm, build.Fork.Sag * mm}, {0, build.Rear.Travel > 0, build.Rear.Travel * mm, build.Rear.Sag * mm},
	}, label)
	s.Settings = append(s.Settings, b.settings...)
	s.Ways, s.Ratings = b.waysOf(build.Setup, nil, label), ratings(build.Setup, label)
}

// standing makes a body of a rider who stands.
func (b *roughBike) standing(r *document.Rider, pedals mass.Vec, label func(string) string) {
	var said document.Spring
	if r.Standing != nil {
		said = *r.Standing
	}
	hz := take("body-frequency", said.Frequency, document.BodyFrequencySpan, 1, drive.Quantity{Value: road.TypicalStanding, Half: road.TypicalStandingHalf})
	damping := take("body-damping", said.Damping, document.BodyDampingSpan, 1, drive.Quantity{Value: road.TypicalBodyRatio, Half: road.TypicalBodyRatioHalf})
	knownOf := func(t *taken) road.Known { return road.Known{Value: t.Value, U: t.Standard(), Source: t.Source} }
	b.Standing = &road.Standing{Frequency: knownOf(&hz), Ratio: knownOf(&damping), Pedals: pedals}
	b.inputs = []Input{hz.input(label, "body-frequency", "hz", 1, 2).at("standing.frequency_hz"), damping.input(label, "body-damping", "share", 1, 3).at("standing.damping_share")}
	for i := range b.inputs {
		b.inputs[i].Rider = r.ID
	}
}

// stands reports whether a rider of the bike stands.
func stands(a *assembly.Assembly, rough *document.Rough) bool {
	if levelOf(a) < assembly.Ridden {
		return false
	}
	if rough.Rider != "" {
		return rough.Rider == "standing"
	}
	return a.Cargo.Rider.Posture == "standing"
}

// tyre fills in the tyre of an end.
func (b *roughBike) tyre(side road.Side, end *document.EndSetup, wheel *document.Wheel, label func(string) string) error {
	t := &b.Ends[side].Tyre
	if !b.PointContact {
		t.Lag = known(road.TypicalLag, road.TypicalLagHalf, "road tyre lag")
	}
	key := side.String()
	at := "setup." + key + "."
	if d := end.Drop; d != nil {
		b.tell(label, "drop_load_"+key, "g", 1, d.Load, d.LoadPlus, false)
		b.at(at+"drop.load_g", at+"drop.load_within_g")
		b.tell(label, "drop_"+key, "mm", 1, d.Drop, d.DropPlus, false)
		b.at(at+"drop.drop_mm", at+"drop.drop_within_mm")
		// A gram on the wheel weighs a thousandth of g newtons.
		const newtons = road.Gravity / 1e3
		rate, u, err := road.Drop(side, d.Load*newtons, mass.Rectangular(d.LoadPlus*newtons), d.Drop/1e3, mass.Rectangular(d.DropPlus/1e3))
		if err != nil {
			return err
		}
		t.Rate = road.Known{Value: rate, U: u, Source: fmt.Sprint("road drop ", key, *d)}
		b.tell(label, "tyre_rate_"+key, "N/mm", 1e-3, rate, u*math.Sqrt(3), false)
		return nil
	}
	typical := end.Pressure == nil
	p := typicalPressure(end, t.Width)
	half := typicalPressureShare * p
	if !typical {
		p = *end.Pressure * road.Bar
		half = gaugeWithin
	}
	half = or(end.PressurePlus, road.Bar, half)
	b.tell(label, "pressure_"+key, "bar", 1/road.Bar, p, half, typical && end.PressurePlus == nil)
	b.at(at+"pressure_bar", at+"pressure_within_bar", at+"pressure_bar", at+"pressure_within_bar")
	rate, err := road.Membrane(side, p, t.Radius, t.Width)
	if err != nil {
		return err
	}
	within := rate * math.Hypot(road.MembraneHalf, half/p)
	said := []any{wheel.BeadSeat, wheel.Tyre}
	if typical {
		said = append(said, "typical")
	}
	// What the membrane leaves out of a tyre it leaves out at either pressure.
	t.Rate = known(rate, within, "road tyre "+key, said...)
	b.tell(label, "tyre_rate_"+key, "N/mm", 1e-3, rate, within, true)
	return nil
}

// typicalPressure is what is taken of a tyre of a width, m, of which nobody said a
// pressure: what is usual, as far as the makers permit it.
func typicalPressure(end *document.EndSetup, width float64) float64 {
	p := min(max(pressureTimesWidth/width, leastPressure), mostPressure)
	if v := end.TyreLeast; v != nil && *v > 0 {
		p = max(p, *v*road.Bar)
	}
	for _, most := range []*float64{end.TyreMost, end.RimMost} {
		if most != nil && *most > 0 {
			p = min(p, *most*road.Bar)
		}
	}
	return p
}

// spring makes the suspension of an end.
func (b *roughBike) spring(side road.Side, end *document.EndSetup, travel, sag float64, label func(string) string) *road.Spring {
	s := &road.Spring{Travel: travel}
	key := side.String()
	at := "setup." + key + "."
	if end.Spring != nil {
		rate := *end.Spring * 1e3
		half := or(end.SpringPlus, 1e3, typedSpringWithin*rate)
		s.Rate = known(rate, half, "road spring "+key, rate, half)
		b.tell(label, "spring_"+key, "N/mm", 1e-3, rate, half, false)
		b.at(at+"spring_n_mm", at+"spring_within_n_mm")
	} else {
		half := or(end.SagPlus, 1e-3, max(leastSagWithin, sagWithin*sag))
		s.Sag = known(sag, half, "road sag "+key, sag, half)
		b.tell(label, "set_sag_"+key, "mm", 1e3, sag, half, false)
		// The sag is one of the build's measures, which has no typical one.
		field := map[road.Side]string{road.Front: "fork.sag_mm", road.Rear: "rear.sag_mm"}[side]
		if end.SagPlus != nil {
			b.at(field, at+"sag_within_mm", at+"sag_within_mm")
		} else {
			b.at(field, at+"sag_within_mm")
		}
	}
	switch {
	case end.Damper != nil:
		half := or(end.DamperPlus, 1, typedDampingWithin**end.Damper)
		s.Damper = known(*end.Damper, half, "road damper "+key, *end.Damper, half)
		b.tell(label, "damper_"+key, "N s/m", 1, *end.Damper, half, false)
		b.at(at+"damper_n_s_m", at+"damper_within_n_s_m")
		if *end.Damper > 0 {
			break
		}
		s.Damper = road.Known{} // and no share of the critical one either
	case end.Damping != nil:
		half := or(end.DampingPlus, 1, typedDampingWithin**end.Damping)
		s.Ratio = known(*end.Damping, half, "road damping "+key, *end.Damping, half)
		b.damping(label, key, *end.Damping, half, false)
	case end.DampingPlus != nil:
		s.Ratio = known(road.TypicalRatio, *end.DampingPlus, "road damping "+key, *end.DampingPlus)
		b.damping(label, key, road.TypicalRatio, *end.DampingPlus, false)
	default:
		s.Ratio = known(road.TypicalRatio, road.TypicalRatioHalf, "road damping "+key)
		b.damping(label, key, road.TypicalRatio, road.TypicalRatioHalf, true)
	}
	return s
}

// damping tells a share of the critical damping.
func (b *roughBike) damping(label func(string) string, key string, ratio, half float64, typical bool) {
	at := "setup." + key + "."
	b.tell(label, "damping_"+key, "share", 1, ratio, half, typical)
	b.at(at+"damping_share", at+"damping_within_share", at+"damping_share", at+"damping_within_share")
}

// luggage finds what the bike carries where it is shaken: on the rear rack, beside
// the fork, and at the bar.
func (b *roughBike) luggage() {
	var at [3]struct {
		kg    float64
		place mass.Vec
		there bool
		on    road.Body
	}
	const rack, fork, bar = 0, 1, 2
	a := b.own.of
	for i := range a.Lines {
		if len(b.own.pieces[i]) == 0 {
			continue
		}
		station := a.Build.Parts[i].Station
		load := a.Lines[i].Group == assembly.BagsGroup || a.Lines[i].Group == assembly.CarriedGroup
		for _, k := range b.own.pieces[i] {
			it := &b.own.Items[k]
			where := -1
			switch of := ride.RackOf(station, it.Place.Y); {
			case of == "rear-rack" || station == "rear-rack":
				where = rack
			case of == "front-rack" || strings.HasPrefix(of, "fork-cage") || load && (station == "fork-legs" || station == "fork-lower"):
				where = fork
			case station == "handlebar-bag":
				where = bar
			}
			if where < 0 || !load && station != "rear-rack" {
				continue
			}
			w := &at[where]
			w.there = true
			switch c := a.Lines[i].Carrier; {
			case c == assembly.Swingarm:
				w.on = road.Swingarm
			case c == assembly.ForkLower || c == assembly.FrontWheel:
				w.on = road.ForkLower
			}
			if load {
				w.kg += it.Mass
				w.place = w.place.Add(it.Place.Scale(it.Mass))
			}
		}
	}
	for i, p := range []*road.Point{&b.Rack, &b.ForkBags, &b.BarBag} {
		w := &at[i]
		if !w.there {
			continue
		}
		*p = road.Point{There: true, On: w.on, Load: w.kg}
		switch {
		case w.kg > 0:
			p.Place = w.place.Scale(1 / w.kg)
		case i == rack && len(a.Bike.Stations["rear-rack-deck"].Points) > 0:
			p.Place = a.Bike.Stations["rear-rack-deck"].Points[0]
		default:
			p.There = false
		}
		p.Place.Y = 0
	}
}

// follow gives all items the sources of their lines, where these have others now.
func (b *roughBike) follow() {
	for _, p := range [...]*placed{b.own, b.set} {
		if p != nil && p.renamed != p.of.Renamed {
			p.follow()
		}
	}
}
