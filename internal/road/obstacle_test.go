package road_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

func over(t testing.TB, m *road.Model, o road.Obstacle, speed float64) *road.Passage {
	t.Helper()
	p, err := m.Over(o, speed)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

var obstacles = []road.Obstacle{
	{Form: road.Edge, Height: 0.04}, {Form: road.Step, Height: 0.03, Length: 0.1}, {Form: road.Hole, Height: 0.05, Length: 0.5},
}

// The equation of motion under the road that the tyres feel, by the method of
// Runge and Kutta of the fourth order, against the modes played in time.
func TestPassageAgainstIntegration(t *testing.T) {
	for name, b := range every() {
		m := model(t, b)
		p := m.Plain()
		s := newState(t, p)
		for _, o := range obstacles {
			const parts = 4
			pass := over(t, m, o, 4)
			x := make([]float64, 2*p.N)
			raw := s.a.RawMatrix()
			rate := func(x []float64, in [2]float64) []float64 {
				out := make([]float64, len(x))
				for i := range out {
					out[i] = s.b[0].AtVec(i)*in[0] + s.b[1].AtVec(i)*in[1]
					for j, v := range x {
						out[i] += raw.Data[i*raw.Stride+j] * v
					}
				}
				return out
			}
			along := func(x, d []float64, h float64) []float64 {
				out := make([]float64, len(x))
				for i := range x {
					out[i] = x[i] + h*d[i]
				}
				return out
			}
			row, direct := s.output(road.LoadFront)
			least, most, worst, before := math.Inf(1), 0.0, 0.0, [3]float64{}
			for k, now := range pass.Times {
				dt := now - before[2]
				in := [2]float64{(pass.PathFront[k] - before[0]) / dt, (pass.PathRear[k] - before[1]) / dt}
				before = [3]float64{pass.PathFront[k], pass.PathRear[k], now}
				for range parts {
					h := dt / parts
					a := rate(x, in)
					b := rate(along(x, a, h/2), in)
					c := rate(along(x, b, h/2), in)
					d := rate(along(x, c, h), in)
					for i := range x {
						x[i] += h / 6 * (a[i] + 2*b[i] + 2*c[i] + d[i])
					}
				}
				y := m.Static(road.Front) + mat.Dot(row, mat.NewVecDense(len(x), x)) + direct[0]*in[0] + direct[1]*in[1]
				least, most, worst = min(least, y), max(most, y), max(worst, math.Abs(y-pass.LoadFront[k]))
			}
			if worst > 1e-3*most {
				t.Errorf("%s, %v: the load is off by %g N of %g", name, o, worst, most)
			}
			near(t, name+" most", pass.Jolts[road.MostLoadFront].Value, most, 1e-3)
			near(t, name+" least", pass.Jolts[road.LeastLoadFront].Value, least, 1e-3)
		}
	}
}

// A stiff wheel meets a corner of the height h at √(h (2R - h)) before its axle is
// there, and a bar's end so far behind; a hole that is narrow it does not fill.
func TestPathOfTheWheel(t *testing.T) {
	m := model(t, rough(2.1))
	for _, o := range obstacles {
		p := over(t, m, o, 4)
		end, want := p.PathFront[len(p.PathFront)-1], 0.0
		if o.Form == road.Edge {
			want = o.Height
		}
		if math.Abs(end-want) > 1e-3*o.Height {
			t.Errorf("%v leaves the wheel %g m high", o, end)
		}
		var most float64
		for i := range p.PathFront {
			most = max(most, math.Abs(p.PathFront[i]))
		}
		if most > o.Height*(1+1e-3) {
			t.Errorf("%v lifts the wheel by %g m", o, most)
		}
	}
	// R - √(R² - (l/2)²) is how deep a wheel of 0.35 m gets in a hole of 0.2 m.
	p := over(t, m, road.Obstacle{Form: road.Hole, Height: 0.1, Length: 0.2}, 4)
	deep := 0.35 - math.Sqrt(0.35*0.35-0.01)
	if len(p.Marks) == 0 || p.Marks[0].Key != road.HoleNarrow || math.Abs(p.Marks[0].Value-deep) > 1e-12 {
		t.Errorf("marks are %v, want a hole that is %g m deep", p.Marks, deep)
	}
}

// Crept over, an obstacle leaves the loads as they are at rest, and all comes to
// rest behind it.
func TestPassageAtAWalk(t *testing.T) {
	m := model(t, rough(2.1))
	for _, o := range obstacles {
		p := over(t, m, o, 0.02)
		for k := range p.Times {
			if r := p.LoadFront[k] / m.Static(road.Front); math.Abs(r-1) > 0.12 {
				t.Fatalf("%v crept over makes the load %g of that at rest", o, r)
			}
		}
		if r := p.LoadRear[len(p.LoadRear)-1] / m.Static(road.Rear); math.Abs(r-1) > 0.01 {
			t.Errorf("behind %v the load is %g of that at rest", o, r)
		}
		near(t, "force on the rack", over(t, m, o, 0.02).Jolts[road.RackForce].Value, 9*road.Gravity, 0.05)
	}
}

// Slopes of the figures of an obstacle against the same with a number moved.
func TestDoubtOfAPassage(t *testing.T) {
	o := road.Obstacle{Form: road.Step, Height: 0.03, Length: 0.1}
	only := func(change float64) *road.Bike {
		b := rough(2.1)
		for i := range b.Items {
			b.Items[i].MassU, b.Items[i].PlaceU = 0, mass.Vec{}
		}
		for i := range b.Ends {
			e := &b.Ends[i]
			e.Tyre.Lag.U, e.Spring.Sag.U, e.Spring.Ratio.U, e.Tyre.Rate.U = 0, 0, 0, 0
		}
		rate := &b.Ends[road.Front].Tyre.Rate
		rate.U = 0.01 * rate.Value
		rate.Value *= 1 + change
		return b
	}
	base, more, less := over(t, model(t, only(0)), o, 5), over(t, model(t, only(0.01)), o, 5), over(t, model(t, only(-0.01)), o, 5)
	for j := range base.Jolts {
		f := &base.Jolts[j]
		if !f.There {
			continue
		}
		want := math.Abs(more.Jolts[j].Value-less.Jolts[j].Value) / 2 * math.Sqrt(3) // a single source: the whole of its half-width
		if got := f.Plus(); math.Abs(got-want) > 0.05*want+2e-4*math.Abs(f.Value) {
			t.Errorf("%v is %g ± %g, want ± %g", road.Jolt(j), f.Value, got, want)
		}
	}
}

func TestObstaclesThatMakeNoSense(t *testing.T) {
	m := model(t, rough(2.1))
	for _, c := range []struct {
		o     road.Obstacle
		speed float64
		want  road.Key
	}{
		{road.Obstacle{Form: road.Edge, Height: 0.05}, 0, road.NoSpeed},
		{road.Obstacle{Form: road.Edge, Height: 0.05}, math.NaN(), road.NotANumber},
		{road.Obstacle{Form: road.Edge, Height: 0}, 5, road.NoObstacle},
		{road.Obstacle{Form: road.Step, Height: 0.05, Length: 0}, 5, road.NoObstacle},
		{road.Obstacle{Form: road.Hole, Height: 0.05, Length: 1e9}, 5, road.NoObstacle},
		{road.Obstacle{Form: road.Edge, Height: 0.35}, 5, road.TooHigh},
		{road.Obstacle{Form: road.Hole, Height: 3, Length: 1}, 5, road.TooHigh},
	} {
		var p *road.Problem
		if _, err := m.Over(c.o, c.speed); !errors.As(err, &p) || p.Key != c.want {
			t.Errorf("%v at %g m/s: %v, want %s", c.o, c.speed, err, c.want)
		}
	}
	p := over(t, m, road.Obstacle{Form: road.Edge, Height: 0.2}, 60)
	has := map[road.Key]bool{}
	for _, k := range p.Marks {
		has[k.Key] = true
	}
	for _, k := range []road.Key{road.SpeedHigh, road.StepSteep, road.LiftsOff, road.HitsEnd} {
		if !has[k] {
			t.Errorf("no mark %s at a kerb of 20 cm and 60 m/s", k)
		}
	}
}
