package road_test

import (
	"math"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

// piece is an item with the body that it belongs to.
type piece struct {
	body    road.Body
	mass    float64
	x, y, z float64 // m
	spread  mass.Sym
}

// loaded makes a loading of pieces; each has a source of its own, by its place in
// the list, with 3 % of its mass and 8 mm of its place in doubt. A Rider's mass is
// the frame's unless the rider stands.
func loaded(pieces []piece, standing bool) (l road.Loading) {
	for i := range l.Shares {
		l.Shares[i] = make(mass.Share, len(pieces))
	}
	for i, p := range pieces {
		l.Items = append(l.Items, mass.Item{
			Mass: p.mass, Place: mass.Vec{X: p.x, Y: p.y, Z: p.z}, Spread: p.spread,
			MassU: 0.03 * p.mass, MassSource: i, PlaceU: mass.Alike(0.008), PlaceSource: i,
		})
		body := p.body
		if body == road.Rider && !standing {
			body = road.Frame
		}
		l.Shares[body][i] = 1
	}
	return l
}

// touring is a laden bike for bad roads: a rider, racks and bags, on a fork and a
// swingarm. Hub is what the rear hub weighs, kg.
func touring(hub float64) []piece {
	return []piece{
		{road.Frame, 4.2, 0.55, 0, 0.62, mass.Rod(0.9)},
		{road.Frame, 3.1, 0.42, 0, 0.30, mass.Disc(0.1, 0.15)}, // cranks and what is with them
		{road.Frame, 1.4, 0.9, 0, 1.0, mass.Box(0.1, 0.6, 0.1)},
		{road.Swingarm, 1.6, 0.2, 0, 0.36, mass.Rod(0.42)},
		{road.RearWheel, 1.9, 0, 0, 0.35, mass.Ring(0.33)},
		{road.RearWheel, hub, 0, 0, 0.35, mass.Disc(0.05, 0.1)},
		{road.ForkLower, 1.1, 1.05, 0, 0.45, mass.Rod(0.3)},
		{road.FrontWheel, 2.3, 1.12, 0, 0.35, mass.Ring(0.31)},
		{road.Frame, 9, -0.05, 0, 0.62, mass.Box(0.35, 0.5, 0.3)},
		{road.ForkLower, 3, 1.07, 0, 0.45, mass.Box(0.25, 0.5, 0.3)},
		{road.Frame, 2, 1.0, 0, 1.0, mass.Box(0.2, 0.4, 0.2)},
		{road.Rider, 50, 0.32, 0, 1.12, mass.Box(0.3, 0.3, 0.6)},
		{road.Rider, 30, 0.45, 0, 0.75, mass.Box(0.3, 0.3, 0.6)},
	}
}

// rough is a bike with all that the package knows, in its pose.
func rough(hub float64) *road.Bike {
	b := &road.Bike{
		Loading:  loaded(touring(hub), false),
		RearAxle: mass.Vec{Z: 0.35}, FrontAxle: mass.Vec{X: 1.12, Z: 0.35}, Pivot: mass.Vec{X: 0.41, Z: 0.38},
		HeadAngle: 68 * math.Pi / 180,
		Saddle:    road.Point{There: true, Place: mass.Vec{X: 0.2, Z: 0.95}},
		Grips:     road.Point{There: true, Place: mass.Vec{X: 0.85, Z: 1.05}},
		Rack:      road.Point{There: true, Place: mass.Vec{X: -0.1, Z: 0.7}, Load: 9},
		ForkBags:  road.Point{There: true, On: road.ForkLower, Place: mass.Vec{X: 1.07, Z: 0.45}, Load: 3},
		BarBag:    road.Point{There: true, Place: mass.Vec{X: 1.0, Z: 1.0}, Load: 2},
	}
	for i := range b.Ends {
		rate, _ := road.Membrane(road.Side(i), 2.5*road.Bar, 0.35, 0.054)
		side := road.Side(i).String()
		b.Ends[i] = road.End{
			Spring: &road.Spring{
				Travel: 0.1, Sag: known(0.022, 0.002, "sag-"+side),
				Ratio: known(road.TypicalRatio, mass.Rectangular(road.TypicalRatioHalf), "damping-"+side),
			},
			Tyre: road.Tyre{
				Rate: known(rate, mass.Rectangular(road.MembraneHalf*rate), "tyre-"+side),
				Lag:  known(road.TypicalLag, mass.Rectangular(road.TypicalLagHalf), "tyre-lag"), Radius: 0.35, Width: 0.054,
			},
		}
	}
	return b
}

// stand lets the rider of [rough] stand on the pedals.
func stand(b *road.Bike, hub float64) *road.Bike {
	b.Loading = loaded(touring(hub), true)
	b.Standing = &road.Standing{
		Frequency: known(road.TypicalStanding, mass.Rectangular(road.TypicalStandingHalf), "body"),
		Ratio:     known(road.TypicalBodyRatio, mass.Rectangular(road.TypicalBodyRatioHalf), "body-damping"),
		Pedals:    mass.Vec{X: 0.42, Z: 0.3},
	}
	b.Saddle.Place = b.Standing.Pedals
	return b
}

// rigid takes the suspension of an end away.
func rigid(b *road.Bike, sides ...road.Side) *road.Bike {
	for _, s := range sides {
		b.Ends[s].Spring = nil
	}
	return b
}

// gravel is a road of class C, known within a factor.
func gravel() road.Road {
	r := road.C.Roughness()
	return road.Road{Roughness: known(r, 0.3*r, "road")}
}

// every are bikes of all kinds.
func every() map[string]*road.Bike {
	return map[string]*road.Bike{
		"both sprung": rough(2.1), "rigid rear": rigid(rough(2.1), road.Rear), "rigid front": rigid(rough(2.1), road.Front),
		"rigid": rigid(rough(2.1), road.Front, road.Rear), "standing": stand(rough(2.1), 2.1),
		"standing on a rigid bike": rigid(stand(rough(2.1), 2.1), road.Front, road.Rear),
	}
}
