package road

import "math"

// Kind is a figure of a ride over a rough road.
type Kind int

// The figures. Loads are root-mean-square shares of the static one, travel is
// along the suspension's travel, accelerations are root mean square.
const (
	LoadFront   Kind = iota
	LoadRear         //
	SaddleWk         // vertical at saddle or pedals, weighted for the body, m/s²
	GripsWh          // fore-aft and vertical together, weighted for hands, m/s²
	RackUp           // vertical, unweighted, m/s²
	ForkBagsUp       //
	BarBagUp         //
	TravelFront      // root mean square, m
	TravelRear       //
	LiftFront        // share of the time that the tyre bears nothing
	LiftRear         //
	BottomFront      // share of the time that the travel would be more than there is
	BottomRear       //
	numKinds
)

// NumKinds is how many figures there are.
const NumKinds = int(numKinds)

// channelOf is the channel that a figure with only one is made of.
func (k Kind) channelOf() int {
	return [...]int{tyreFront, tyreRear, saddle, gripUp, rack, forkBags, barBag, travelFront, travelRear,
		tyreFront, tyreRear, travelFront, travelRear}[k]
}

// Ride is a bike at a speed, m/s, on a road.
type Ride struct {
	Speed   float64
	Figures [numKinds]Figure
	Marks   []Mark
}

// At finds the figures of a ride. The error is a [*Problem].
func (m *Model) At(speed float64, road Road) (*Ride, error) {
	if err := first(above(NoSpeed, Both, speed), above(NoRoughness, Both, road.Roughness.Value)); err != nil {
		return nil, err
	}
	for i := range m.base.channels {
		for side, d := range m.base.channels[i].direct {
			if d != 0 && m.base.contact[side] == 0 {
				return nil, &Problem{NoSize, Side(side), 0, 0, math.Inf(1)} // a damped tyre on a point
			}
		}
	}
	r := &Ride{Speed: speed}
	base := m.values(&m.base, speed, road)
	for kind, v := range base {
		if m.frame.there[Kind(kind).channelOf()] {
			if err := number(v); err != nil {
				return nil, err
			}
		}
	}
	slopes := make([]float64, int(numKinds)*len(m.moved))
	for kind := range numKinds {
		if !m.frame.there[kind.channelOf()] {
			continue
		}
		n := int(kind) * len(m.moved)
		r.Figures[kind] = Figure{
			Value: base[kind], There: true, model: m, slopes: slopes[n : n+len(m.moved) : n+len(m.moved)], road: road.Roughness,
			level: base[kind] / (2 * road.Roughness.Value),
		}
	}
	for i := range m.moved {
		v := &m.moved[i]
		got := m.values(v, speed, road)
		for kind := range numKinds {
			if f := &r.Figures[kind]; f.There {
				f.slopes[i] = slope(got[kind], base[kind], v.step)
			}
		}
	}
	// Shares of the time go with the root mean square that they are found from.
	for side := range Both {
		for _, k := range [...]struct{ share, of Kind }{{LiftFront, LoadFront}, {BottomFront, TravelFront}} {
			if f := &r.Figures[k.share+Kind(side)]; f.There {
				rms := base[k.of+Kind(side)]
				_, grows := share(m.margin(&m.base, k.share, side), rms)
				f.level = grows * rms / (2 * road.Roughness.Value)
			}
		}
	}
	r.Marks = m.rideMarks(r)
	return r, nil
}

// margin is what a share of the time is above: the whole load of a tyre, or what
// travel the weight leaves.
func (m *Model) margin(v *variant, kind Kind, side Side) float64 {
	if kind == LiftFront {
		return 1
	}
	return m.bike.Ends[side].Spring.Travel - v.system.sag(m.frame, side)
}

// values are the figures of a variant.
func (m *Model) values(v *variant, speed float64, road Road) (out [numKinds]float64) {
	q := road.intensity(speed)
	vars := v.variances(speed, m.frame.wheelbase, &m.base.system, &m.weights)
	rms := func(ch int) float64 { return math.Sqrt(q * vars[ch]) }
	for kind := LoadFront; kind <= TravelRear; kind++ {
		out[kind] = rms(kind.channelOf())
	}
	out[GripsWh] = math.Sqrt(q * (vars[gripForward] + vars[gripUp]))
	for side := range Both {
		i := Kind(side)
		out[LoadFront+i] /= v.static[side]
		out[LiftFront+i], _ = share(1, out[LoadFront+i])
		if m.bike.Ends[side].Spring != nil {
			out[BottomFront+i], _ = share(m.margin(v, BottomFront, side), out[TravelFront+i])
		}
	}
	return out
}

// rideMarks are where a ride goes beyond what the model can say.
func (m *Model) rideMarks(r *Ride) (list []Mark) {
	if r.Speed > mostSpeed {
		list = append(list, Mark{SpeedHigh, Both, r.Speed, mostSpeed})
	}
	for side := range Both {
		i := Kind(side)
		switch l := r.Figures[LoadFront+i].Value; {
		case l > 1:
			list = append(list, Mark{LoadFormal, side, l, 1})
		case l > 1/3.0:
			list = append(list, Mark{TyreLifts, side, l, 1 / 3.0})
		}
		if t := &r.Figures[TravelFront+i]; t.There {
			switch left := m.margin(&m.base, BottomFront, side); {
			case t.Value > left:
				list = append(list, Mark{TravelFormal, side, t.Value, left})
			case 3*t.Value > left:
				list = append(list, Mark{Bottoms, side, t.Value, left / 3})
			}
		}
	}
	return list
}
