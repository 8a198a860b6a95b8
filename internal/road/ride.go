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
	p := m.base.pass(speed, m.frame.wheelbase)
	base := m.values(&m.base, p, speed, road)
	for kind, v := range base {
		if m.frame.there[Kind(kind).channelOf()] {
			if err := number(v); err != nil {
				return nil, err
			}
		}
	}
	n := len(m.moved)
	slopes := make([]float64, int(numKinds)*n)
	for kind := range numKinds {
		if !m.frame.there[kind.channelOf()] {
			continue
		}
		at := int(kind) * n
		r.Figures[kind] = Figure{
			Value: base[kind], There: true, model: m, slopes: slopes[at : at+n : at+n], road: road.Roughness,
			level: base[kind] / (2 * road.Roughness.Value),
		}
	}
	m.slopes(r, p, road)
	r.Marks = m.rideMarks(r)
	return r, nil
}

// slopes fills in how the figures of a ride move.
func (m *Model) slopes(r *Ride, p *pass, road Road) {
	changes := make([][numChannels]float64, len(m.moved))
	m.changes(r.Speed, p, changes)
	q := road.intensity(r.Speed)
	for kind := LoadFront; kind <= TravelRear; kind++ {
		f := &r.Figures[kind]
		if !f.There {
			continue
		}
		ch := kind.channelOf()
		// Of a root: half of what is under it, over itself.
		rms := f.Value
		if kind == LoadFront || kind == LoadRear {
			rms *= m.base.static[kind-LoadFront]
		}
		by := q / (2 * rms)
		for i := range m.moved {
			d := changes[i][ch]
			switch kind {
			case GripsWh:
				d += changes[i][gripForward]
			case LoadFront, LoadRear:
				side := kind - LoadFront
				f.slopes[i] = real0((d*by - f.Value*m.moved[i].static[side]) / m.base.static[side])
				continue
			}
			f.slopes[i] = real0(d * by)
		}
	}
	// Shares of the time go with the root mean square that they are found from.
	for side := range Both {
		i := Kind(side)
		for _, k := range [...]struct{ share, of Kind }{{LiftFront + i, LoadFront + i}, {BottomFront + i, TravelFront + i}} {
			f, of := &r.Figures[k.share], &r.Figures[k.of]
			if !f.There {
				continue
			}
			_, byLimit, byRMS := share(m.margin(k.share-i, side), of.Value)
			f.level = byRMS * of.level
			for n := range f.slopes {
				f.slopes[n] = byRMS * of.slopes[n]
				if k.share == BottomFront+i {
					f.slopes[n] -= byLimit * m.moved[n].sag[side]
				}
			}
		}
	}
}

// real0 is v, or 0 where that is no number: what is not there does not move.
func real0(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

// margin is what a share of the time is above: the whole load of a tyre, or what
// travel the weight leaves.
func (m *Model) margin(kind Kind, side Side) float64 { return m.base.margin(m, kind, side) }

func (v *variant) margin(m *Model, kind Kind, side Side) float64 {
	if kind == LiftFront {
		return 1
	}
	return m.bike.Ends[side].Spring.Travel - v.system.sag(m.frame, side)
}

// values are the figures of a variant.
func (m *Model) values(v *variant, p *pass, speed float64, road Road) (out [numKinds]float64) {
	q := road.intensity(speed)
	vars := v.variances(&m.base.system, p)
	rms := func(ch int) float64 { return math.Sqrt(q * vars[ch]) }
	for kind := LoadFront; kind <= TravelRear; kind++ {
		out[kind] = rms(kind.channelOf())
	}
	out[GripsWh] = math.Sqrt(q * (vars[gripForward] + vars[gripUp]))
	for side := range Both {
		i := Kind(side)
		out[LoadFront+i] /= v.static[side]
		out[LiftFront+i], _, _ = share(1, out[LoadFront+i])
		if m.bike.Ends[side].Spring != nil {
			out[BottomFront+i], _, _ = share(v.margin(m, BottomFront, side), out[TravelFront+i])
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
			switch left := m.margin(BottomFront, side); {
			case t.Value > left:
				list = append(list, Mark{TravelFormal, side, t.Value, left})
			case 3*t.Value > left:
				list = append(list, Mark{Bottoms, side, t.Value, left / 3})
			}
		}
	}
	return list
}
