package weighin_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

// truth is a bike that is known to the gram, as it really stands on a scale, and
// what a weigh-in of it takes for granted.
type truth struct {
	*bike
	total, x, z float64
	paper       *geometry.Bike // wheelbase and radii as they are said to be
}

// knownBike draws a touring bike of 12 to 40 kg, whose wheelbase and radii are off
// what is said of them by what of the half-widths draws.
func knownBike(rng *rand.Rand, wheelbase, rear, front float64) truth {
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	paper := &geometry.Bike{Wheelbase: between(1, 1.2), RearRadius: between(0.3, 0.37)}
	paper.FrontRadius = paper.RearRadius + between(-0.03, 0.02)
	b := &bike{wheelbase: paper.Wheelbase + wheelbase, rear: paper.RearRadius + rear, front: paper.FrontRadius + front}
	for range 8 {
		b.bodies = append(b.bodies, mass.Item{
			Mass:  between(1.5, 5),
			Place: mass.Vec{X: b.wheelbase * between(0.05, 0.9), Z: between(0.3, 1)},
		})
	}
	sum := mass.Sum(b.bodies, nil)
	c := sum.Centre()
	return truth{b, sum.M, c.X, c.Z, paper}
}

// errors are what an interval of a figure missed the truth by, in its standard
// uncertainties.
type errors map[string][]float64

func (e errors) add(key string, v weighin.Value, truth float64) {
	e[key] = append(e[key], (v.Value-truth)/v.U)
}

// cover is how often the interval holds the truth, and square the mean square of
// what it misses it by: 1 when the uncertainty is as large as the errors are.
func (e errors) cover(key string) (cover, square float64) {
	for _, v := range e[key] {
		if math.Abs(v) <= mass.Coverage {
			cover++
		}
		square += v * v
	}
	n := float64(len(e[key]))
	return cover / n, square / n
}

// A scale that rounds, and is off by a share of the load, is off by the same in
// every reading: however often a reading is entered, the interval holds the truth
// as often, and is neither wider nor narrower than the errors are. All that is
// stated or taken for granted is drawn anew for each of the weigh-ins.
func TestScaleErrorsAreCovered(t *testing.T) {
	const weighIns = 1000
	for _, step := range []float64{50, 100, 500} { // g
		for _, share := range []float64{0, document.CalibrationShare} {
			var single map[string]float64
			for _, times := range []int{1, 5, 20} {
				rng := rand.New(rand.NewPCG(uint64(step), 5)) // the same bikes and errors each time
				within := func(half float64) float64 { return half * (2*rng.Float64() - 1) }
				found, plus := errors{}, map[string]float64{}
				for range weighIns {
					b := knownBike(rng, within(0.005), within(0.005), within(0.005))
					off, tilt := 1+within(share), within(0.005)/b.wheelbase
					w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready, Scales: []document.Scale{{ID: "s1", Step: step, Calibration: &share}}}
					block := 0.35 + within(0.003)
					for _, r := range []document.Reading{
						{Wheel: "front"}, {Wheel: "rear"}, {Wheel: "rear", Raised: "front", Height: 350, HeightPlus: 3},
					} {
						rise := 0.0
						if r.Raised != "" {
							rise = block
						}
						front, rear := b.onScale(rise, tilt)
						kg := rear
						if r.Wheel == "front" {
							kg = front
						}
						r.Scale, r.Mass = "s1", step*math.Round((kg*off*1000+within(0.3*step))/step)
						w.Readings = append(w.Readings, slices.Repeat([]document.Reading{r}, times)...)
					}
					m, _ := weighin.Weigh(w, b.paper, nil)
					if m == nil || !m.Measured.HasHeight {
						t.Fatalf("%v g: not weighed", step)
					}
					if m.Measured.Widened != 1 {
						t.Errorf("%v g, %d times: widened by %v, although nothing is contradicted", step, times, m.Measured.Widened)
					}
					for key, v := range map[string][2]any{"total": {m.Measured.Total, b.total}, "x": {m.Measured.X, b.x}, "z": {m.Measured.Z, b.z}} {
						value := v[0].(weighin.Value)
						found.add(key, value, v[1].(float64))
						plus[key] += value.Plus() / weighIns
					}
				}
				for _, key := range []string{"total", "x", "z"} {
					at := fmt.Sprintf("%v g, calibration ± %v, %d times, %s", step, share, times, key)
					cover, square := found.cover(key)
					t.Logf("%s: covered in %.1f %%, mean square error %.2f, ± %.4f", at, 100*cover, square, plus[key])
					if cover < 0.93 {
						t.Errorf("%s: holds the truth in %.1f %%, want 93", at, 100*cover)
					}
					if square < 0.7 || square > 1.3 {
						t.Errorf("%s: mean square error in units of the variance stated is %.2f, want about 1", at, square)
					}
					if single != nil && math.Abs(plus[key]-single[key]) > 1e-9 {
						t.Errorf("%s: ± %v, once ± %v", at, plus[key], single[key])
					}
				}
				if single == nil {
					single = plus
				}
			}
		}
	}
}

// Wheels that are not as large as is said move the height by as much, however
// fine the scale: with radii 3 mm off it stays within its ±, unless they are said
// to be exact.
func TestWrongRadiiAreCovered(t *testing.T) {
	const weighIns = 300
	exact := 0.0
	for _, c := range []struct {
		within    *float64
		low, high float64
	}{{nil, 0.93, 1}, {&exact, 0, 0.8}} {
		rng := rand.New(rand.NewPCG(3, 9))
		within := func(half float64) float64 { return half * (2*rng.Float64() - 1) }
		found := errors{}
		for range weighIns {
			off := 0.003
			if rng.IntN(2) == 0 {
				off = -off
			}
			b := knownBike(rng, within(0.005), off, off)
			tilt, block := within(0.005)/b.wheelbase, 0.5+within(0.002)
			w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready, RadiusPlus: c.within}
			for _, r := range []document.Reading{{Wheel: "front"}, {Wheel: "rear"}, {Wheel: "rear", Raised: "front", Height: 500, HeightPlus: 2}} {
				front, rear := b.onScale(0, tilt)
				if r.Raised != "" {
					front, rear = b.onScale(block, tilt)
				}
				kg := rear
				if r.Wheel == "front" {
					kg = front
				}
				r.Resolution, r.Mass = 1, math.Round(kg*1000)
				w.Readings = append(w.Readings, r)
			}
			m, _ := weighin.Weigh(w, b.paper, nil)
			found.add("z", m.Measured.Z, b.z)
			found.add("x", m.Measured.X, b.x)
			found.add("total", m.Measured.Total, b.total)
		}
		for _, key := range []string{"total", "x", "z"} {
			cover, _ := found.cover(key)
			if key != "z" && cover < 0.93 || key == "z" && (cover < c.low || cover > c.high) {
				t.Errorf("radii within %v: %s is covered in %.1f %%, want %v to %v %%", c.within, key, 100*cover, 100*c.low, 100*c.high)
			}
			t.Logf("%s: %.1f %%", key, 100*cover)
		}
	}
}

// Three readings of a scale of 100 g entered again and again: nothing is gained
// by the same digits, and little by others, since what the display rounds and
// what the scale is off by stays.
func TestRepeatsGainLittle(t *testing.T) {
	var plus []float64
	for _, times := range []int{1, 5, 20} {
		w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready}
		for _, r := range []document.Reading{
			{Wheel: "front", Mass: 11200, Resolution: 100}, {Wheel: "rear", Mass: 15300, Resolution: 100},
			{Wheel: "rear", Raised: "front", Height: 400, HeightPlus: 2, Mass: 17200, Resolution: 100},
		} {
			w.Readings = append(w.Readings, slices.Repeat([]document.Reading{r}, times)...)
		}
		r, _ := weighin.Weigh(w, &geometry.Bike{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}, nil)
		plus = append(plus, r.Measured.Total.Plus())
		if s := r.Measured.Self; s.Freedom != 0 || s.Unlikely() {
			t.Errorf("%d times: the same digits again are said to check each other: %+v", times, s)
		}
		if len(r.Measured.Left) != 3*times {
			t.Errorf("%d times: %d residuals", times, len(r.Measured.Left))
		}
	}
	// Rounding and placing of two readings, and half a per cent of 26.5 kg.
	want := 2 * math.Sqrt(2*(1./12+0.3*0.3/3)*0.01+0.005*26.5*0.005*26.5/3)
	for i, got := range plus {
		near(t, fmt.Sprint("± of the total, ", []int{1, 5, 20}[i], " times"), got, want, 1e-6)
	}
}

// A display that shows either of two digits is what displays do; one that shows
// digits far apart contradicts itself.
func TestScatterOfRepeats(t *testing.T) {
	bike := &geometry.Bike{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	for _, c := range []struct {
		front    []float64
		unlikely bool
		worst    int
	}{
		{[]float64{11200, 11300}, false, -1},
		{slices.Repeat([]float64{11200, 11300}, 10), false, -1},
		{[]float64{11200, 11200, 11200, 11300}, false, -1},
		{[]float64{11200, 11200, 14200, 11200}, true, 2},
	} {
		w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready}
		for _, g := range c.front {
			w.Readings = append(w.Readings, document.Reading{Wheel: "front", Mass: g, Resolution: 100})
		}
		w.Readings = append(w.Readings, document.Reading{Wheel: "rear", Mass: 15300, Resolution: 100})
		r, _ := weighin.Weigh(w, bike, nil)
		m := r.Measured
		if m.Self.Unlikely() != c.unlikely || (m.Widened > 1) != c.unlikely || m.Self.Freedom != len(c.front)-1 {
			t.Errorf("%v: %+v, widened %v", c.front, m.Self, m.Widened)
		}
		if c.worst < 0 {
			continue
		}
		for i, l := range m.Left {
			if i != c.worst && math.Abs(l.Score) >= math.Abs(m.Left[c.worst].Score) {
				t.Errorf("%v: the worst should be reading %d: %+v", c.front, c.worst, m.Left)
			}
		}
	}
}

// Which scale a reading is of changes what is shared: the same two readings on
// one scale have its calibration in common, so that the centre's place along the
// bike is free of it; on two scales it is not, and the total is the better for it.
func TestTwoScales(t *testing.T) {
	bike := &geometry.Bike{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	share := 0.01
	w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready, Scales: []document.Scale{{ID: "s1", Step: 1, Calibration: &share}, {ID: "s2", Step: 1, Calibration: &share}}}
	solve := func(second string) *weighin.Measured {
		w.Readings = []document.Reading{{Wheel: "front", Mass: 10000, Scale: "s1"}, {Wheel: "rear", Mass: 10000, Scale: second}}
		r, problems := weighin.Weigh(w, bike, nil)
		if r == nil {
			t.Fatal(problems)
		}
		return r.Measured
	}
	one, two := solve("s1"), solve("s2")
	// By hand: the total is off by 1 % of 20 kg at most, or by 1 % of 10 kg twice,
	// each for itself; the rest is below a gram.
	near(t, "total, one scale", one.Total.U, 0.2/math.Sqrt(3), 0.001)
	near(t, "total, two scales", two.Total.U, 0.1*math.Sqrt(2)/math.Sqrt(3), 0.001)
	// x = w f/(f+r): 0.25 w of each relative error.
	near(t, "x by calibration, two scales", owed(two, "centre_x", weighin.Calibration).U, 0.25*1.1*0.01*math.Sqrt(2)/math.Sqrt(3), 1e-5)
	near(t, "x by calibration, one scale", owed(one, "centre_x", weighin.Calibration).U, 0, 1e-9)
}

func owed(m *weighin.Measured, key string, d weighin.Doubt) weighin.Owed {
	for _, o := range m.Owed {
		if o.Key == key && o.Doubt == d {
			return o
		}
	}
	return weighin.Owed{}
}

// The doubt that limits a figure is the one without which it would be known best,
// and all of them make up its variance.
func TestWhatLimits(t *testing.T) {
	bike := &geometry.Bike{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	exact, wide := 0.0, 40.0
	none := 0.0
	base := document.WeighIn{
		ID: "w", Build: "a", State: document.Ready, Scales: []document.Scale{{ID: "s1", Step: 1}},
		Readings: []document.Reading{
			{Wheel: "front", Mass: 11200, Scale: "s1"}, {Wheel: "rear", Mass: 15300, Scale: "s1"},
			{Wheel: "rear", Raised: "front", Height: 400, HeightPlus: 2, Mass: 17300, Scale: "s1"},
		},
	}
	for _, c := range []struct {
		name   string
		change func(w *document.WeighIn)
		key    string
		limit  weighin.Doubt
	}{
		{"as it is", func(*document.WeighIn) {}, "total", weighin.Calibration},
		{"coarse", func(w *document.WeighIn) { w.Scales = []document.Scale{{ID: "s1", Step: 500, Calibration: &none}} }, "total", weighin.Steps},
		{"coarse", func(w *document.WeighIn) { w.Scales = []document.Scale{{ID: "s1", Step: 500, Calibration: &none}} }, "centre_z", weighin.Steps},
		{"wheels of another size", func(w *document.WeighIn) { w.RadiusPlus = &wide }, "centre_z", weighin.Radii},
		{"a wheelbase by eye", func(w *document.WeighIn) { w.WheelbasePlus = &wide }, "centre_x", weighin.Wheelbase},
		{"on an uneven floor", func(w *document.WeighIn) { w.WheelbasePlus = &exact }, "centre_x", weighin.Level},
		{"on a stack of books", func(w *document.WeighIn) { w.Readings[2].HeightPlus = 30; w.RadiusPlus = &exact }, "centre_z", weighin.Heights},
	} {
		w := base
		w.Readings = slices.Clone(base.Readings)
		c.change(&w)
		r, problems := weighin.Weigh(&w, bike, nil)
		if r == nil {
			t.Fatalf("%s: %v", c.name, problems)
		}
		m := r.Measured
		l := m.Limit(c.key)
		if l == nil || l.Doubt != c.limit {
			t.Errorf("%s: %s is limited by %+v, want %s", c.name, c.key, l, c.limit)
			continue
		}
		for key, v := range map[string]weighin.Value{"total": m.Total, "centre_x": m.X, "centre_z": m.Z} {
			sum := 0.0
			for _, o := range m.Owed {
				if o.Key == key {
					sum += o.Share
					near(t, c.name+": what a doubt and the others make of "+key, math.Hypot(o.U, o.Else), v.U, 1e-6*v.U+1e-12)
				}
			}
			near(t, c.name+": all of the variance of "+key, sum, 1, 1e-6)
		}
	}
}

// A scale whose last digit changes from one placing to the next averages that,
// and nothing else.
func TestRepeatsThatDiffer(t *testing.T) {
	bike := &geometry.Bike{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	w := &document.WeighIn{ID: "w", Build: "a", State: document.Ready}
	for i := range 10 {
		w.Readings = append(w.Readings,
			document.Reading{Wheel: "front", Mass: 11200 + float64(i%2)*100, Resolution: 100},
			document.Reading{Wheel: "rear", Mass: 15300 - float64(i%2)*100, Resolution: 100})
	}
	r, _ := weighin.Weigh(w, bike, nil)
	near(t, "total", r.Measured.Total.Value, 26.5, 1e-9)
	near(t, "by placing", owed(r.Measured, "total", weighin.Placing).U, 0.03/math.Sqrt(3)*math.Sqrt(2./10), 1e-9)
	near(t, "by steps", owed(r.Measured, "total", weighin.Steps).U, 0.1/math.Sqrt(12)*math.Sqrt(2), 1e-9)
}
