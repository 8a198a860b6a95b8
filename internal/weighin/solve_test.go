package weighin_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/ride"
	"steelyard/internal/weighin"
)

// solved solves, and fails the test when it cannot.
func solved(t *testing.T, s weighin.Stand, readings []weighin.Reading) *weighin.Measured {
	t.Helper()
	m, problems := weighin.Solve(s, readings, weighin.About)
	if m == nil || len(problems) > 0 {
		t.Fatalf("%+v: %v", readings, problems)
	}
	return m
}

// The lifts that are worked by hand: what the scale shows gives back the bike,
// from every set of readings that is enough.
func TestWorkedByHand(t *testing.T) {
	text, err := os.ReadFile("../../testdata/weighin/lifts.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name      string
		Wheelbase float64 `json:"wheelbase_m"`
		Rear      float64 `json:"rear_radius_m"`
		Front     float64 `json:"front_radius_m"`
		Mass      float64 `json:"mass_kg"`
		X         float64 `json:"x_m"`
		Z         float64 `json:"z_m"`
		Readings  []struct {
			Rise  float64 `json:"rise_m"`
			Front float64 `json:"front_kg"`
			Rear  float64 `json:"rear_kg"`
		}
	}
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) != 3 {
		t.Fatalf("%d cases, want 3", len(cases))
	}
	for _, c := range cases {
		t.Run(c.Name, func(t *testing.T) {
			s := weighin.Stand{Wheelbase: c.Wheelbase, RearRadius: c.Rear, FrontRadius: c.Front}
			level := c.Readings[0]
			for _, raised := range c.Readings[1:] {
				for _, front := range []bool{true, false} {
					kg := raised.Rear
					if front {
						kg = raised.Front
					}
					m := solved(t, s, []weighin.Reading{
						{Front: true, Mass: level.Front, MassU: 0.03}, {Mass: level.Rear, MassU: 0.03},
						{Front: front, Rise: raised.Rise, Mass: kg, MassU: 0.03},
					})
					near(t, "total", m.Total.Value, c.Mass, 1e-11)
					near(t, "x", m.X.Value, c.X, 1e-13)
					near(t, "z", m.Z.Value, c.Z, 1e-11)
				}
			}
			b := bike{c.Wheelbase, c.Rear, c.Front, []mass.Item{{Mass: c.Mass, Place: mass.Vec{X: c.X, Z: c.Z}}}}
			for _, r := range c.Readings {
				f, k := b.onScale(r.Rise, 0)
				near(t, "front reading of the tests' own scale", f, r.Front, 1e-12)
				near(t, "rear reading of the tests' own scale", k, r.Rear, 1e-12)
			}
		})
	}
}

// The benchmark bicycle gives back its centre, from any sufficient readings.
func TestMeijaard(t *testing.T) {
	b := benchmark(t)
	// By hand from the table: 94 kg, 32.16/94 and 80.95/94 m.
	const total, x, z = 94.0, 32.16 / 94, 80.95 / 94
	sets := map[string][]weighin.Reading{
		"front raised, rear on the scale":  {b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(false, 0.2, 0.1)},
		"front raised, front on the scale": {b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, 0.2, 0.1)},
		"rear raised, front on the scale":  {b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, -0.3, 0.1)},
		"rear raised, rear on the scale":   {b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(false, -0.3, 0.1)},
		"no wheel level alone":             {b.reading(true, 0.2, 0.1), b.reading(false, 0.2, 0.1), b.reading(true, -0.2, 0.1)},
		"many": {b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, 0.2, 0.1), b.reading(false, 0.2, 0.1),
			b.reading(true, -0.1, 0.5), b.reading(false, 0.3, 0.05), b.reading(true, 0, 0.1)},
	}
	for name, readings := range sets {
		m := solved(t, b.stand(), readings)
		near(t, name+": total", m.Total.Value, total, 1e-9)
		near(t, name+": x", m.X.Value, x, 1e-10)
		near(t, name+": z", m.Z.Value, z, 1e-9)
		if !m.HasHeight || m.Self.ChiSquare > 1e-12 || m.Widened != 1 {
			t.Errorf("%s: %+v", name, m)
		}
	}
	m := solved(t, b.stand(), []weighin.Reading{b.reading(true, 0, 0.1), b.reading(false, 0, 0.1)})
	near(t, "level only: total", m.Total.Value, total, 1e-12)
	near(t, "level only: x", m.X.Value, x, 1e-13)
	if m.HasHeight || m.Z != (weighin.Value{}) {
		t.Errorf("level readings tell a height of %v", m.Z)
	}
	// Two readings of u each: the total has u √2, and x = w f/M has
	// w u sqrt(f² + r²)/M² (JCGM 100, 5.1.2).
	u := mass.Resolution(0.1)
	front, rear := b.onScale(0, 0)
	near(t, "u of total", m.Total.U, u*math.Sqrt2, 1e-12)
	near(t, "u of x", m.X.U, 1.02*u*math.Hypot(front, rear)/(total*total), 1e-12)
}

// Riel's way of finding the centre, by straight lines through the rear wheel's
// share of the load against the gradient, and ours, from the same readings of
// centres that brake at his 0.63 g and 0.83 g on his bicycle.
func TestRiel(t *testing.T) {
	for _, limit := range []float64{0.63, 0.83} {
		for _, height := range []float64{0.95, 1.05, 1.15} {
			b := bike{1, 0.34, 0.34, []mass.Item{{Mass: 85, Place: mass.Vec{X: 1 - limit*height, Z: height}}}}
			var slopes, shares []float64
			var readings []weighin.Reading
			for _, rise := range []float64{-0.15, -0.1, -0.05, 0, 0.05, 0.1} {
				front, rear := b.onScale(rise, 0)
				slopes = append(slopes, math.Tan(math.Asin(rise))) // axles 1 m apart
				shares = append(shares, rear/(front+rear))
				for _, f := range []bool{true, false} {
					readings = append(readings, b.reading(f, rise, 0.1))
				}
			}
			at, slope := stat.LinearRegression(slopes, shares, nil, false)
			near(t, "straight lines: behind the front contact", 1*at, limit*height, 1e-12)
			near(t, "straight lines: height", 1*slope+0.34, height, 1e-12)

			m := solved(t, b.stand(), readings)
			near(t, "behind the front contact", 1-m.X.Value, limit*height, 1e-9)
			near(t, "height", m.Z.Value, height, 1e-9)
			s := ride.Between([]mass.Item{{Mass: m.Total.Value, Place: mass.Vec{X: m.X.Value, Z: m.Z.Value}}}, 0, 1)
			near(t, "braking limit", s.Braking(nil, 0, 1).Lift.Value, limit, 1e-8)
		}
	}
}

// Any bike on any two wheels comes back.
func TestAnyBikeComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBike(t)
		rise := rapid.Float64Range(0.05, 0.4).Draw(t, "rise")
		if rapid.Bool().Draw(t, "rear raised") {
			rise = -rise
		}
		front := rapid.Bool().Draw(t, "front on the scale")
		m, problems := weighin.Solve(b.stand(), []weighin.Reading{
			b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(front, rise, 0.1),
		}, weighin.About)
		if m == nil || len(problems) > 0 {
			t.Fatalf("%v", problems)
		}
		sum := mass.Sum(b.bodies, nil)
		c := sum.Centre()
		if math.Abs(m.Total.Value-sum.M) > 1e-9*sum.M || math.Abs(m.X.Value-c.X) > 1e-9 || math.Abs(m.Z.Value-c.Z) > 1e-7 {
			t.Errorf("%v %v %v, want %v %v", m.Total, m.X, m.Z, sum.M, c)
		}
		// A finer scale leaves less open. The same reading again does not: the
		// display rounds it the same way. Where placing the wheel anew has changed
		// it, a repeat leaves less open than it did.
		finer := []weighin.Reading{b.reading(true, 0, 0.05), b.reading(false, 0, 0.05), b.reading(front, rise, 0.05)}
		again := []weighin.Reading{b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(front, rise, 0.1), b.reading(front, rise, 0.1)}
		n, _ := weighin.Solve(b.stand(), finer, weighin.About)
		if n == nil || n.Z.U >= m.Z.U {
			t.Errorf("finer readings: z ± %v, before %v", n, m.Z.U)
		}
		n, _ = weighin.Solve(b.stand(), again, weighin.About)
		if n == nil || math.Abs(n.Z.U-m.Z.U) > 1e-9*m.Z.U {
			t.Errorf("the same reading again: z ± %v, before %v", n, m.Z.U)
		}
		for i := range again {
			again[i].PlacingU = 0.02
		}
		once, _ := weighin.Solve(b.stand(), again[:3], weighin.About)
		again[2].Mass -= 0.01
		again[3].Mass += 0.01
		n, _ = weighin.Solve(b.stand(), again, weighin.About)
		if n == nil || once == nil || n.Z.U >= once.Z.U {
			t.Errorf("another reading of the same load: z ± %v, before %v", n, once)
		}
	})
}

// anyBike draws a bike with a load between its wheels and above the ground.
func anyBike(t *rapid.T) *bike {
	b := &bike{
		wheelbase: rapid.Float64Range(0.9, 1.4).Draw(t, "wheelbase"),
		rear:      rapid.Float64Range(0.2, 0.4).Draw(t, "rear radius"),
		front:     rapid.Float64Range(0.2, 0.4).Draw(t, "front radius"),
	}
	n := rapid.IntRange(1, 10).Draw(t, "items")
	for i := range n {
		b.bodies = append(b.bodies, mass.Item{
			Mass: rapid.Float64Range(0.3, 60).Draw(t, "mass"),
			Place: mass.Vec{
				X: b.wheelbase * rapid.Float64Range(0.1, 0.9).Draw(t, "x"),
				Y: rapid.Float64Range(-0.3, 0.3).Draw(t, "y"),
				Z: rapid.Float64Range(0.2, 1.3).Draw(t, "z"),
			},
			MassSource: i, PlaceSource: i,
		})
	}
	return b
}

// With noise in all that is measured, the true centre lies within the stated
// ± in about 95 of 100 cases (JCGM 101: 10,000 draws). The noise is normal in
// one run, and in the other as rounding to the scale's steps and rulers make
// it; a few rectangles that add up stay inside more often than a normal
// distribution does.
func TestCoverage(t *testing.T) {
	const draws = 10_000
	truth := benchmark(t)
	sum := mass.Sum(truth.bodies, nil)
	c := sum.Centre()
	for _, shape := range []string{"normal", "rectangular"} {
		for _, plan := range []struct {
			name  string
			rises []float64 // both wheels are weighed at each
		}{{"level and raised", []float64{0, 0.2}}, {"both ends raised", []float64{0, 0.2, -0.25}}} {
			t.Run(shape+", "+plan.name, func(t *testing.T) {
				t.Parallel()
				rng := rand.New(rand.NewPCG(7, 11))
				noise := func(half float64) float64 { // of standard deviation half/√3
					if shape == "normal" {
						return rng.NormFloat64() * half / math.Sqrt(3)
					}
					return half * (2*rng.Float64() - 1)
				}
				const step, base, level, block = 0.5, 0.005, 0.004, 0.003
				s := truth.stand()
				s.WheelbaseU, s.LevelU = mass.Rectangular(base), mass.Rectangular(level)
				in := map[string]int{}
				for range draws {
					real := *truth
					real.wheelbase += noise(base)
					tilt := noise(level)
					var readings []weighin.Reading
					for _, rise := range plan.rises {
						at := rise
						if rise != 0 {
							at += noise(block)
						}
						front, rear := real.onScale(at, tilt)
						for i, kg := range []float64{front, rear} {
							r := weighin.Reading{Front: i == 0, Rise: rise, Mass: kg + noise(step/2), MassU: mass.Resolution(step)}
							if rise != 0 {
								r.RiseU = mass.Rectangular(block)
							}
							readings = append(readings, r)
						}
					}
					m, _ := weighin.Solve(s, readings, weighin.About)
					if m == nil {
						t.Fatal("not solved")
					}
					for what, ok := range map[string]bool{
						"total": math.Abs(m.Total.Value-sum.M) <= m.Total.Plus(),
						"x":     math.Abs(m.X.Value-c.X) <= m.X.Plus(),
						"z":     math.Abs(m.Z.Value-c.Z) <= m.Z.Plus(),
						"self":  !m.Self.Unlikely(),
					} {
						if ok {
							in[what]++
						}
					}
				}
				for what, n := range in {
					got := float64(n) / draws
					low, high := 0.945, 0.970 // 95.4 % with the normal noise, and a little for what is widened
					if what == "self" {
						low, high = 0.940, 0.960
					}
					if shape == "rectangular" {
						low, high = 0.945, 1
					}
					if got < low || got > high {
						t.Errorf("%s within its ± in %.2f %% of draws, want %.1f to %.1f", what, got*100, low*100, high*100)
					}
				}
			})
		}
	}
}

// Readings that contradict each other are told, with the one to look at, and
// every doubt is widened.
func TestContradiction(t *testing.T) {
	b := benchmark(t)
	readings := []weighin.Reading{b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, 0.2, 0.1), b.reading(false, 0.2, 0.1), b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, 0.2, 0.1)}
	for i := range readings {
		readings[i].Line = 10 + i
	}
	before := solved(t, b.stand(), readings)
	readings[3].Mass += 2
	m := solved(t, b.stand(), readings)
	if !m.Self.Unlikely() || m.Widened <= 1 {
		t.Errorf("not told: %+v, widened %v", m.Self, m.Widened)
	}
	worst := m.Left[0]
	for _, l := range m.Left {
		if math.Abs(l.Score) > math.Abs(worst.Score) {
			worst = l
		}
	}
	if worst.Line != 13 || worst.By <= 0 {
		t.Errorf("the worst is %+v, want line 13", worst)
	}
	per, _ := m.Self.PerDegree()
	near(t, "widened", m.Widened, math.Sqrt(per), 1e-12)
	near(t, "doubt of z", m.Z.U/before.Z.U, m.Widened, 0.15*m.Widened)
}

// What is missing or impossible is said, at its place.
func TestUnsolved(t *testing.T) {
	b := benchmark(t)
	f, r := b.reading(true, 0, 0.1), b.reading(false, 0, 0.1)
	raised := b.reading(false, 0.2, 0.1)
	raised.Line = 2
	wrong := raised
	wrong.Mass = r.Mass - 20 // off the rear although the front is raised
	high := raised
	high.Mass = r.Mass + 90
	light := raised
	light.Rise, light.Mass = 0.001, r.Mass-0.05 // within the noise of the scale, and it comes out under the ground
	swapped := f
	swapped.Mass = -30
	for _, c := range []struct {
		name     string
		readings []weighin.Reading
		solved   bool
		field    string
		says     []string
	}{
		{"none", nil, false, "readings", []string{"Weigh both wheels with the bike level"}},
		{"front only", []weighin.Reading{f, f}, false, "readings", []string{"Weigh the rear wheel too with the bike level"}},
		{"rear only", []weighin.Reading{r, raised}, false, "readings", []string{"Weigh the front wheel too with the bike level"}},
		{"raised only", []weighin.Reading{raised, b.reading(true, 0.2, 0.1)}, false, "readings", []string{"Weigh both wheels"}},
		{"hardly raised", []weighin.Reading{f, r, light}, true, "readings.2.height_mm", []string{"do not tell it"}},
		{"the wrong way", []weighin.Reading{f, r, wrong}, true, "readings.2.mass_g", []string{"front wheel raised", "under the ground", "which wheel was on the scale"}},
		{"too high", []weighin.Reading{f, r, high}, true, "readings.2.mass_g", []string{"above the ground", "height of the block"}},
		{"beyond the wheels", []weighin.Reading{swapped, r}, false, "readings", []string{"not between the wheels"}},
	} {
		m, problems := weighin.Solve(b.stand(), c.readings, weighin.About)
		if (m != nil) != c.solved {
			t.Errorf("%s: %+v, %v", c.name, m, problems)
		}
		if len(problems) != 1 || problems[0].Field != c.field {
			t.Errorf("%s: problems %+v, want one at %s", c.name, problems, c.field)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(problems[0].Message.String(), s) {
				t.Errorf("%s: %q does not say %q", c.name, problems[0].Message.String(), s)
			}
		}
		if m != nil && strings.HasSuffix(c.field, "mass_g") {
			if m.HasHeight {
				t.Errorf("%s: the height is told all the same", c.name)
			}
			near(t, c.name+": total", m.Total.Value, 94, 1e-9)
		}
	}
	if m, problems := weighin.Solve(weighin.Stand{}, []weighin.Reading{f, r}, 1); m != nil || len(problems) != 1 || !strings.Contains(problems[0].Message.String(), "wheelbase") {
		t.Errorf("without a geometry: %v, %v", m, problems)
	}
}

// Moving every reading and mass to another unit of mass changes nothing else.
func TestScalingTheMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBike(t)
		s := b.stand()
		s.WheelbaseU, s.LevelU = 0.003, 0.003
		plan := []weighin.Reading{b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, 0.2, 0.2), b.reading(false, 0.2, 0.1)}
		for i := range plan {
			plan[i].Mass += rapid.Float64Range(-0.1, 0.1).Draw(t, fmt.Sprint("noise ", i))
		}
		f := rapid.Float64Range(0.2, 5).Draw(t, "factor")
		scaled := append([]weighin.Reading(nil), plan...)
		for i := range scaled {
			scaled[i].Mass *= f
			scaled[i].MassU *= f
		}
		m, _ := weighin.Solve(s, plan, 1)
		n, _ := weighin.Solve(s, scaled, 1)
		if m == nil || n == nil {
			t.Skip("noise on a light bike")
		}
		for _, p := range [][2]float64{
			{m.Total.Value * f, n.Total.Value}, {m.Total.U * f, n.Total.U}, {m.X.Value, n.X.Value}, {m.X.U, n.X.U},
			{m.Z.Value, n.Z.Value}, {m.Z.U, n.Z.U}, {m.Self.ChiSquare, n.Self.ChiSquare}, {m.XZ, n.XZ},
		} {
			if math.Abs(p[0]-p[1]) > 1e-6*(1e-3+math.Abs(p[0])) {
				t.Errorf("%+v\n%+v", m, n)
				break
			}
		}
	})
}
