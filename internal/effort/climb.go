package effort

import (
	"math"

	"steelyard/internal/drive"
	"steelyard/internal/mass"
)

// Climb is a height gained on one slope.
type Climb struct {
	State
	Length float64      // of the road, m
	Time   drive.Figure // s
	Worth  Worth
}

// Worth says how the time moves, s.
type Worth struct {
	Kilogram float64 // for one kilogram more
	Point    float64 // for one point (0.01) of efficiency less
}

// KilogramsPerPoint is how many kilograms cost as much as a point of efficiency.
func (w Worth) KilogramsPerPoint() float64 { return w.Point / w.Kilogram }

// KilogramsPerMinute is how many kilograms cost a minute.
func (w Worth) KilogramsPerMinute() float64 { return 60 / w.Kilogram }

// PointsPerMinute is how many points of efficiency cost a minute.
func (w Worth) PointsPerMinute() float64 { return 60 / w.Point }

// Climb returns how a rider climbs a height, m, on the slope of a road, which
// must lead upwards: length is height / sin(slope), time is length / speed.
func (b *Bike) Climb(r *Rider, road *Road, height float64) Climb {
	l := loadOf(road, b.Mass.Value)
	by := b.riddenBy(r)
	s := by.ride(&l, 4)
	slope := road.Slope.Value
	if !(slope > 0) || s.Speed <= 0 {
		return Climb{State: s, Time: drive.Figure{Value: math.Inf(1)}}
	}
	c := Climb{State: s, Length: height / sinOf(slope)}
	c.Time.Value = c.Length / s.Speed
	o := newOwed(len(b.Gears), 1)
	o.add(&by, road, &l, 0, &s, -c.Time.Value/s.Speed)
	if s.Gear >= 0 {
		c.Worth.Point = -0.01 * o.gears[s.Gear].share
	}
	c.Worth.Kilogram = o.mass
	o.slope -= c.Time.Value / (slope * (1 + slope*slope))
	c.Time.Budget = o.budget(b, r, road, []drive.Quantity{road.Rolling})
	return c
}

// Difference is that of the times of two bikes, b less a, and how it is owed to
// their masses and to their drives, gears included, each the mean of both
// orders in which one can be exchanged before the other. The two add up.
type Difference struct {
	Time, Mass, Drive drive.Figure // s
}

// Split is Between of times that are known: of a, of b, of the mass of a on the
// drive of b, and of the mass of b on the drive of a.
func Split(aa, bb, mixedA, mixedB drive.Figure) Difference {
	half := func(p, q, r, s drive.Figure) drive.Figure { // ((p - q) + (r - s)) / 2
		out := drive.Figure{Value: (p.Value - q.Value + r.Value - s.Value) / 2, Budget: new(mass.Budget)}
		for i, f := range []drive.Figure{p, q, r, s} {
			if f.Budget != nil {
				out.Budget.Add(f.Budget, 0.5-float64(i%2))
			}
		}
		return out
	}
	return Difference{Time: bb.Minus(aa), Mass: half(mixedB, aa, bb, mixedA), Drive: half(mixedA, aa, bb, mixedB)}
}

// Turn is how many kilograms more a bike must carry to take as long as so many
// seconds; negative when it takes longer already. It is no number when no mass
// down to a kilogram and up to a tonne does that.
func Turn(b *Bike, seconds float64, time func(*Bike) float64) float64 {
	at := func(more float64) float64 {
		c := *b
		c.Mass.Value += more
		return time(&c) - seconds
	}
	low, high := 1-b.Mass.Value, 1000.0
	below, above := at(low), at(high)
	if !(below <= 0 && above >= 0) {
		return math.NaN()
	}
	// By false position, which halves what is known of an end that stays twice (the
	// Illinois rule), and every third time by halves: where the gear changes the
	// time jumps, and where nobody gets along it has no end.
	stays := 0
	for n := 0; n < 60 && high-low > 1e-7; n++ {
		mid := (low + high) / 2
		if n%3 < 2 && above-below < math.Inf(1) {
			if x := high - above*(high-low)/(above-below); x > low && x < high {
				mid = x
			}
		}
		if y := at(mid); y < 0 {
			if low, below = mid, y; stays == 1 {
				above /= 2
			}
			stays = 1
		} else {
			if high, above = mid, y; stays == -1 {
				below /= 2
			}
			stays = -1
		}
	}
	return (low + high) / 2
}

// Steepest is the slope on which the lowest gear is just held at the least
// cadence, without regard to the slope of the road. With
// R = (power at the wheel / v - air - bearings) / (m g) and rolling c it is
// tan(asin(R/√(1+c²)) - atan c); infinite where R reaches √(1+c²), and with no
// gears no number.
func (b *Bike) Steepest(r *Rider, road *Road) drive.Figure {
	if len(b.Gears) == 0 || !(r.Least > 0) {
		return drive.Figure{Value: math.NaN()}
	}
	gear, m, c := 0, b.Mass.Value, road.Rolling.Value
	v := r.Least / 60 * b.Gears[gear].Ratio * b.RollOut.Value
	flat := *road
	flat.Slope.Value, flat.Rolling.Value = 0, 0
	l := loadOf(&flat, m)
	f, _ := l.force(v)
	sin := (b.wheel(gear, r.Power.Value, r.Least)/v - f) / (m * G) / math.Sqrt(1+c*c)
	if sin >= 1 {
		return drive.Figure{Value: math.Inf(1)}
	}
	here := *road
	here.Slope.Value = math.Tan(math.Asin(max(sin, -1)) - math.Atan(c))
	l = loadOf(&here, m)
	f, df := l.force(v)
	slope := here.Slope.Value
	k := -1 / (m * G * v * (1 - c*slope) * math.Pow(1+slope*slope, -1.5))
	o := newOwed(len(b.Gears), 1)
	o.outside(&here, &l, 0, v, m, k)
	o.slope = 0 // it is what is asked for
	o.power -= k * b.Gears[gear].Line.Share
	o.rollOut += k * (f + df*v) * v / b.RollOut.Value // the cadence is held
	o.gears[gear] = gearOwed{-k * r.Power.Value, k * r.Least * 2 * math.Pi / 60, k}
	return drive.Figure{Value: slope, Budget: o.budget(b, r, &here, []drive.Quantity{road.Rolling})}
}
