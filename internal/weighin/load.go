package weighin

import (
	"math"

	"steelyard/internal/linear"
)

// load is what a scale bore under one wheel at one height: a reading, and all
// that repeat it.
//
// A display rounds the same load the same way each time, so repeats of a reading
// have that error in common, and no number of them removes it (JCGM 100:2008,
// F.2.2.1); it rounds another load anew. Repeats average only what really varies,
// the placing of the wheel, and they check each other; both only where they
// differ. The same digits again say nothing: a load that is entered twenty times
// is known as well as one that is entered once.
type load struct {
	Reading              // the first; its mass is the mean of all
	lines        []int   // of all its readings, numbers in the list that was solved
	scatter      float64 // Σ (mass - mean)², kg²; 0 when all show the same
	placingShare float64 // what is left of the variance of placing in the mean: of n readings that differ 1/n, otherwise all
}

// loadsOf gathers repeats: readings of one scale, wheel and height.
func loadsOf(readings []Reading) []load {
	type same struct {
		scale       int
		front       bool
		rise, riseU float64
		massU       float64
	}
	index := make(map[same]int, len(readings))
	var loads []load
	for i := range readings {
		r := &readings[i]
		key := same{r.Scale, r.Front, r.Rise, r.RiseU, r.MassU}
		k, seen := index[key]
		if !seen {
			k = len(loads)
			index[key] = k
			loads = append(loads, load{Reading: *r})
		}
		loads[k].lines = append(loads[k].lines, i)
	}
	for k := range loads {
		l := &loads[k]
		n := float64(len(l.lines))
		l.placingShare = 1
		sum, differ := 0.0, false
		for _, i := range l.lines {
			sum += readings[i].Mass
			differ = differ || readings[i].Mass != l.Mass
			l.PlacingU = max(l.PlacingU, readings[i].PlacingU)
		}
		if !differ {
			continue
		}
		l.Mass, l.placingShare = sum/n, 1/n
		for _, i := range l.lines {
			d := readings[i].Mass - l.Mass
			l.scatter += d * d
		}
	}
	return loads
}

// scatterU is the standard deviation of a reading among those of its load: that
// of placing, and half a step, which is that of a display that shows either of
// two digits equally often (half a step is √3 of its uncertainty).
func (l *load) scatterU() float64 { return math.Hypot(l.PlacingU, half*l.MassU) }

// checks is what repeats say about each other: a sum of squares, and how many of
// them are independent.
func checks(loads []load) (chiSquare float64, freedom int) {
	for i := range loads {
		if l := &loads[i]; l.scatter > 0 {
			u := l.scatterU()
			chiSquare += l.scatter / (u * u)
			freedom += len(l.lines) - 1
		}
	}
	return chiSquare, freedom
}

// Doubt is a sort of thing that readings are uncertain by.
type Doubt string

// The doubts.
const (
	Steps       Doubt = "steps"       // what the display rounds
	Placing     Doubt = "placing"     // how the wheel stands on the scale, and is held
	Calibration Doubt = "calibration" // what the scale is off by
	Wheelbase   Doubt = "wheelbase"
	Radii       Doubt = "radii" // of the wheels
	Level       Doubt = "level" // of the floor, tyres and springs
	Heights     Doubt = "block" // of what a wheel was raised on
)

// effect is what one doubt does to the loads.
type effect struct {
	of    Doubt
	by    linear.Vec // standard uncertainties, kg
	alone bool       // each load has its own; otherwise all move together, by the same error
}

// effects are what all doubts do to the loads of a system with the moments p.
func effects(s *Stand, loads []load, p moments) []effect {
	n := len(loads)
	var list []effect
	add := func(of Doubt, alone bool, by func(l *load) float64) {
		e := effect{of, make(linear.Vec, n), alone}
		some := false
		for i := range loads {
			e.by[i] = by(&loads[i])
			some = some || e.by[i] != 0
		}
		if some {
			list = append(list, e)
		}
	}
	add(Steps, true, func(l *load) float64 { return l.MassU })
	add(Placing, true, func(l *load) float64 { return l.PlacingU * math.Sqrt(l.placingShare) })
	add(Wheelbase, false, func(l *load) float64 {
		v, _, _ := s.slopes(l.Front, l.Rise, p)
		return v * s.WheelbaseU
	})
	add(Level, false, func(l *load) float64 {
		_, v, _ := s.slopes(l.Front, l.Rise, p)
		return v * s.LevelU
	})
	add(Radii, false, func(l *load) float64 { v, _ := s.byRadii(l.Front, l.Rise, p); return v * s.RadiusU })
	add(Radii, false, func(l *load) float64 { _, v := s.byRadii(l.Front, l.Rise, p); return v * s.RadiusU })
	// What scale and block a load shares with others.
	type block struct{ rise, u float64 }
	scales, blocks := map[int]bool{}, map[block]bool{}
	for i := range loads {
		if l := &loads[i]; l.ScaleU != 0 && !scales[l.Scale] {
			scales[l.Scale] = true
			add(Calibration, false, func(o *load) float64 {
				if o.Scale != l.Scale {
					return 0
				}
				return s.shows(o.Front, o.Rise, p) * o.ScaleU
			})
		}
		if b := (block{loads[i].Rise, loads[i].RiseU}); b.u != 0 && !blocks[b] {
			blocks[b] = true
			add(Heights, false, func(o *load) float64 {
				if (block{o.Rise, o.RiseU}) != b {
					return 0
				}
				_, _, v := s.slopes(o.Front, o.Rise, p)
				return v * b.u
			})
		}
	}
	return list
}

// covariance is that of the loads, of all effects together.
func covariance(n int, list []effect) *linear.Sym {
	v := linear.NewSym(n)
	for i := range list {
		list[i].add(v)
	}
	return v
}

// add adds the covariance of an effect.
func (e *effect) add(v *linear.Sym) {
	if !e.alone {
		v.AddOuter(1, e.by)
		return
	}
	for i, u := range e.by {
		v.Set(i, i, v.At(i, i)+u*u)
	}
}
