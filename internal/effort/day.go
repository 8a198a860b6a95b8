package effort

import (
	"math"
	"slices"

	"steelyard/internal/drive"
)

// Stretch is a piece of a day's road.
type Stretch struct {
	Length  float64 // along the road, m
	Slope   float64 // rise over run
	Surface int     // index into Day.Rolling
}

// Day is a road of several stretches. Its slopes are taken as they are; wind and
// air are those of the road.
type Day struct {
	Stretches []Stretch
	Rolling   []drive.Quantity // by surface
}

// Energy is where the work of a day goes, J. From rest to rest
//
//	Pedals = Drive + Air + Rolling + Bearings + Climbing + Brakes
//
// for what is given to each stretch's change of speed is taken back by another.
// On foot nothing is counted.
type Energy struct {
	Pedals, Drive, Air, Rolling, Bearings, Climbing, Brakes float64
}

// DayResult is what a day takes.
type DayResult struct {
	Time   drive.Figure // s
	Length float64      // m
	Ascent float64      // m, of all that leads up
	Energy Energy
	Gears  []float64        // time in each gear, s
	Work   []float64        // energy put into each gear, J: the weights of a mean efficiency
	Modes  map[Mode]float64 // time, s
	Walked float64          // m
	Turns  float64          // of the cranks, while pedalling
	Worth  Worth
}

// Day returns what a day takes. Stretches without a length, or of a surface that
// is not there, count for nothing.
func (b *Bike) Day(r *Rider, road *Road, d *Day) DayResult {
	out := DayResult{Gears: make([]float64, len(b.Gears)), Work: make([]float64, len(b.Gears)), Modes: make(map[Mode]float64)}
	o := newOwed(len(b.Gears), len(d.Rolling))
	by := b.riddenBy(r)
	here, guess, m := *road, 4.0, b.Mass.Value
	var times [len(modes)]float64
	for i := range d.Stretches {
		st := &d.Stretches[i]
		if !(st.Length > 0) || st.Surface < 0 || st.Surface >= len(d.Rolling) {
			continue
		}
		here.Slope.Value, here.Rolling = st.Slope, d.Rolling[st.Surface]
		l := loadOf(&here, m)
		s := by.ride(&l, guess)
		if s.Speed <= 0 {
			out.Time.Value = math.Inf(1)
			continue
		}
		guess = s.Speed
		t := st.Length / s.Speed
		out.Time.Value += t
		out.Length += st.Length
		rise := st.Length * sinOf(st.Slope)
		out.Ascent += max(rise, 0)
		times[slices.Index(modes[:], s.Mode)] += t
		if s.Mode == Walking {
			out.Walked += st.Length
			o.add(&by, &here, &l, st.Surface, &s, -t/s.Speed)
			continue
		}
		if s.Gear >= 0 {
			out.Gears[s.Gear] += t
			out.Work[s.Gear] += s.Power * t
			out.Turns += s.Cadence * t / 60
		}
		e := &out.Energy
		e.Pedals += s.Power * t
		e.Drive += (s.Power - s.Wheel) * t
		e.Air += Air(road.Density.Value, road.Drag.Value, road.Wind.Value, s.Speed) * t
		e.Rolling += RollingPower(here.Rolling.Value, m, st.Slope, s.Speed) * t
		e.Bearings += Bearings(s.Speed) * t
		e.Climbing += m * G * rise
		if f, _ := l.force(s.Speed); s.Mode == Braking || s.Mode == Easing && f < 0 {
			e.Brakes -= f * s.Speed * t
		}
		o.add(&by, &here, &l, st.Surface, &s, -t/s.Speed)
	}
	for i, t := range times {
		if t > 0 {
			out.Modes[modes[i]] = t
		}
	}
	for i := range o.gears {
		out.Worth.Point -= 0.01 * o.gears[i].share
	}
	out.Worth.Kilogram = o.mass
	o.slope = 0
	out.Time.Budget = o.budget(b, r, road, d.Rolling)
	return out
}

// modes are all of them.
var modes = [5]Mode{Pedalling, Easing, Coasting, Braking, Walking}
