package effort_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"steelyard/internal/drive"
	"steelyard/internal/effort"
	"steelyard/internal/mass"
)

func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}

func exact(v float64) drive.Quantity { return drive.Quantity{Value: v} }

// inputs are all that a bike and its road rest on.
type inputs struct {
	mass, rollOut drive.Quantity
	losses        drive.Losses
	rider         effort.Rider
	road          effort.Road
	rolling       []drive.Quantity
}

func typical() inputs {
	q := func(v, half float64, s string) drive.Quantity {
		return drive.Quantity{Value: v, Half: half, Basis: drive.Typical, Source: s}
	}
	return inputs{
		mass: q(118, 2, "mass"), rollOut: q(2.25, 0.02, "roll-out"), losses: drive.TypicalLosses(), rider: effort.DefaultRider,
		road: effort.Road{Slope: q(0.06, 0.002, "slope"), Rolling: effort.Rolling(effort.Gravel, "tyre"), Wind: q(0, 1, "wind"),
			Density: q(effort.AirDensity(800, 15), 0.02, "density"), Drag: effort.DragArea("leaned", true)},
		rolling: []drive.Quantity{effort.Rolling(effort.Asphalt, "tyre"), effort.Rolling(effort.Gravel, "tyre")},
	}
}

// hubDrive is a drive of thirteen even gears over 500 %.
func hubDrive(box bool) (*drive.Drive, []drive.Gear) {
	d := &drive.Drive{Rings: []int{38}, Cogs: []int{16}}
	for i := range 13 {
		g := drive.BoxGear{Ratio: 0.29 * math.Pow(5, float64(i)/12), Meshes: -1}
		if box {
			g.Meshes = 2
			d.Front = append(d.Front, g)
		} else {
			d.Rear = append(d.Rear, g)
		}
	}
	return d, d.Gears(0)
}

func (in *inputs) bike(box bool) *effort.Bike {
	d, gears := hubDrive(box)
	figure := func(q drive.Quantity) drive.Figure {
		b := new(mass.Budget)
		q.Charge(b, 1)
		return drive.Figure{Value: q.Value, Budget: b}
	}
	return effort.NewBike(figure(in.mass), figure(in.rollOut), d, gears, &in.losses, in.rider.Power.Value)
}

// lossless is a bike whose drive keeps a share of the power and no more.
func lossless(total, keeps float64) *effort.Bike {
	d, gears := hubDrive(false)
	l := drive.Losses{Whole: &drive.Whole{Efficiency: exact(keeps)}}
	return effort.NewBike(drive.Figure{Value: total}, drive.Figure{Value: 2.25}, d, gears, &l, 100)
}

// Martin et al. (1998), term by term, worked by hand for 90 kg at 10 m/s; their
// efficiency of the drive is 0.976.
func TestMartinTerms(t *testing.T) {
	near(t, "air", effort.Air(1.2, 0.3, 0, 10), 180, 1e-9)                 // ½ 1.2 0.3 10² 10
	near(t, "air against 2 m/s", effort.Air(1.2, 0.3, 2, 10), 259.2, 1e-9) // ½ 1.2 0.3 12² 10
	near(t, "wind from behind drives", effort.Air(1.2, 0.3, -12, 10), -7.2, 1e-9)
	near(t, "rolling", effort.RollingPower(0.004, 90, 0, 10), 35.316, 1e-9) // 0.004 90 9.81 10
	near(t, "bearings", effort.Bearings(10), 1.78, 1e-12)                   // (91 + 87) 10 / 1000
	near(t, "climbing", effort.Climbing(90, 0.03, 10), 264.751, 0.001)      // 90 9.81 sin(atan 0.03) 10
	near(t, "kinetic", effort.Kinetic(90, 2, 10)-effort.Kinetic(90, 2, 9), 0.5*92*19, 1e-9)
	wheel := 180 + 35.316 + 1.78 // on the flat
	r := effort.Rider{Power: exact(wheel / 0.976), Cadence: 80, Least: 10, Walk: exact(1)}
	road := effort.Road{Rolling: exact(0.004), Density: exact(1.2), Drag: exact(0.3)}
	s := lossless(90, 0.976).Ride(&r, &road)
	near(t, "speed", s.Speed, 10, 1e-9)
	near(t, "power at the wheel", s.Wheel, wheel, 1e-9)
}

// ISO 2533 (memory): 1.225 kg/m³ at the sea and 15 °C, 1.1117 at 1000 m and 8.5 °C.
func TestAirDensity(t *testing.T) {
	near(t, "at the sea", effort.AirDensity(0, 15), 1.225, 0.0005)
	near(t, "at 1000 m", effort.AirDensity(1000, 8.5), 1.1117, 0.0005)
}

// Without air and at a constant slope speed is power times efficiency, less what
// wheel bearings take, over m g (sin + c cos).
func TestSpeedWithoutAir(t *testing.T) {
	for _, slope := range []float64{0.01, 0.05, 0.1, 0.3, 1} {
		r := effort.Rider{Power: exact(150), Cadence: 60, Least: 0, Walk: exact(1)}
		road := effort.Road{Slope: exact(slope), Rolling: exact(0.01)}
		s := lossless(110, 0.95).Ride(&r, &road)
		sin, cos := math.Sincos(math.Atan(slope))
		near(t, "speed", s.Speed, (150*0.95-effort.Bearings(s.Speed))/(110*9.81*(sin+0.01*cos)), 1e-9)
	}
}

// On the flat the balance is a cubic: k v³ + b v² + c v = P. Its real root by
// Cardano's formula.
func TestSpeedIsTheRootOfTheCubic(t *testing.T) {
	for _, p := range []float64{1, 20, 110, 400} {
		k, b, c := 0.5*1.2*0.5, 0.0087, 100*9.81*0.008+0.091
		// v = x - b/(3k): x³ + u x + w = 0.
		a2, a1, a0 := b/k, c/k, -p/k
		u, w := a1-a2*a2/3, 2*a2*a2*a2/27-a2*a1/3+a0
		root := math.Sqrt(w*w/4 + u*u*u/27)
		want := math.Cbrt(-w/2+root) + math.Cbrt(-w/2-root) - a2/3
		road := effort.Road{Rolling: exact(0.008), Density: exact(1.2), Drag: exact(0.5)}
		near(t, "speed", effort.Speed(&road, 100, p), want, 1e-9)
	}
}

func TestHardRoads(t *testing.T) {
	in := typical()
	b := in.bike(false)
	ride := func(change func(r *effort.Rider, road *effort.Road)) effort.State {
		r, road := in.rider, in.road
		change(&r, &road)
		return b.Ride(&r, &road)
	}
	if s := ride(func(r *effort.Rider, _ *effort.Road) { r.Power.Value = 0 }); s.Mode != effort.Walking || s.Speed != in.rider.Walk.Value {
		t.Errorf("without power %+v", s)
	}
	if s := ride(func(_ *effort.Rider, road *effort.Road) { road.Slope.Value = 1 }); s.Mode != effort.Walking {
		t.Errorf("at 100 %%: %+v", s)
	}
	if s := ride(func(_ *effort.Rider, road *effort.Road) { road.Slope.Value, road.Wind.Value = 0, 12 }); !(s.Speed > 0 && s.Speed < 12) {
		t.Errorf("wind faster than the bike: %+v", s)
	}
	if s := ride(func(r *effort.Rider, road *effort.Road) { road.Slope.Value, r.Top = -0.1, 0 }); s.Mode != effort.Coasting || s.Power != 0 {
		t.Errorf("down 10 %%: %+v", s)
	} else {
		road := in.road
		road.Slope.Value = -0.1
		near(t, "forces of coasting", effort.Air(road.Density.Value, road.Drag.Value, 0, s.Speed)+effort.RollingPower(road.Rolling.Value, 118, -0.1, s.Speed)+
			effort.Bearings(s.Speed)+effort.Climbing(118, -0.1, s.Speed), 0, 1e-6)
	}
	if s := ride(func(r *effort.Rider, road *effort.Road) { road.Slope.Value, r.Top = -0.1, 8 }); s.Mode != effort.Braking || s.Speed != 8 {
		t.Errorf("down 10 %% at 8 m/s: %+v", s)
	}
	if s := ride(func(r *effort.Rider, road *effort.Road) {
		road.Slope.Value, r.Power.Value, r.Most.Value, road.Drag.Value = 0, 400, 80, 0.2
	}); s.Mode != effort.Easing || math.Abs(s.Cadence-80) > 1e-9 || s.Power >= 400 {
		t.Errorf("above the highest cadence: %+v", s)
	}
	none := &effort.Bike{Mass: b.Mass, RollOut: b.RollOut}
	if s := none.Ride(&in.rider, &in.road); s.Mode != effort.Walking {
		t.Errorf("without gears: %+v", s)
	}
	// The nearest cadence, as a ratio, of all gears.
	s := b.Ride(&in.rider, &in.road)
	for i := range b.Gears {
		c := s.Cadence * b.Gears[s.Gear].Ratio / b.Gears[i].Ratio
		if math.Abs(math.Log(c/in.rider.Cadence)) < math.Abs(math.Log(s.Cadence/in.rider.Cadence))-0.02 {
			t.Errorf("gear %d would be nearer: %v", i, c)
		}
	}
}

// Whatever is asked, an answer comes that is a speed.
func TestRideAlwaysAnswers(t *testing.T) {
	b := func() *effort.Bike { in := typical(); return in.bike(true) }()
	rapid.Check(t, func(t *rapid.T) {
		f := func(least, most float64, label string) float64 { return rapid.Float64Range(least, most).Draw(t, label) }
		r := effort.Rider{Power: exact(f(0, effort.MaxPower, "power")), Cadence: f(5, 250, "cadence"), Walk: exact(1)}
		r.Least = f(0, r.Cadence, "least")
		if rapid.Bool().Draw(t, "bounded") {
			r.Most.Value, r.Top = f(r.Cadence, 250, "most"), f(1, 40, "top")
		}
		road := effort.Road{Slope: exact(f(-1, 1, "slope")), Rolling: exact(f(0, 0.5, "rolling")), Wind: exact(f(-40, 40, "wind")), Density: exact(f(0, 2, "density")), Drag: exact(f(0, 5, "drag"))}
		if len(r.Check())+len(road.Check()) > 0 {
			t.Fatal(r.Check(), road.Check())
		}
		s := b.Ride(&r, &road)
		if !(s.Speed > 0 && s.Speed <= 100) || math.IsNaN(s.Cadence+s.Power+s.Wheel) || r.Top > 0 && s.Speed > max(r.Top, r.Walk.Value)+1e-9 {
			t.Fatalf("%+v", s)
		}
		if s.Mode == effort.Pedalling {
			balance := effort.Air(road.Density.Value, road.Drag.Value, road.Wind.Value, s.Speed) + effort.RollingPower(road.Rolling.Value, b.Mass.Value, road.Slope.Value, s.Speed) +
				effort.Bearings(s.Speed) + effort.Climbing(b.Mass.Value, road.Slope.Value, s.Speed)
			if s.Speed < 99.9 && math.Abs(balance-s.Wheel) > 1e-6*(1+r.Power.Value) {
				t.Fatalf("%v at the wheel, %v needed", s.Wheel, balance)
			}
		}
		for _, p := range []effort.Stretch{{Length: 1000, Slope: road.Slope.Value}} {
			day := b.Day(&r, &road, &effort.Day{Stretches: []effort.Stretch{p}, Rolling: []drive.Quantity{road.Rolling}})
			if math.IsNaN(day.Time.Value) || math.IsNaN(day.Time.Plus()) {
				t.Fatalf("%+v", day)
			}
		}
	})
}

func aDay(n int) *effort.Day {
	in := typical()
	d := &effort.Day{Rolling: in.rolling}
	for i := range n {
		d.Stretches = append(d.Stretches, effort.Stretch{Length: 400, Slope: 0.07 * math.Sin(float64(i)/5), Surface: i % 2})
	}
	return d
}

func TestEnergyOfADayBalances(t *testing.T) {
	in := typical()
	in.rider.Top, in.rider.Least = 11, 25
	day := aDay(200)
	// It ends as high as it starts.
	day.Stretches = append(day.Stretches, day.Stretches...)
	for i := range 200 {
		day.Stretches[i].Slope *= -1
	}
	r := in.bike(true).Day(&in.rider, &in.road, day)
	if len(r.Modes) < 3 || r.Walked > 0 {
		t.Fatalf("%v", r.Modes)
	}
	e := r.Energy
	near(t, "energy", e.Drive+e.Air+e.Rolling+e.Bearings+e.Climbing+e.Brakes, e.Pedals, 1e-6*e.Pedals)
	near(t, "climbing of a round", e.Climbing, 0, 1e-6*e.Pedals)
	near(t, "length", r.Length, 400*400, 1e-6)
	if e.Brakes <= 0 {
		t.Error("nothing is braked away")
	}
	sum := 0.0
	for _, tm := range r.Modes {
		sum += tm
	}
	near(t, "time by modes", sum, r.Time.Value, 1e-6)
}

// times are what is drawn: of a climb, a day, their differences.
func times(in *inputs, day *effort.Day) []float64 {
	day.Rolling = in.rolling
	a, b := in.bike(false), in.bike(true)
	b.Mass.Value += 0.83
	ca, cb := a.Climb(&in.rider, &in.road, 1000).Time.Value, b.Climb(&in.rider, &in.road, 1000).Time.Value
	da, db := a.Day(&in.rider, &in.road, day).Time.Value, b.Day(&in.rider, &in.road, day).Time.Value
	return []float64{ca, da, cb - ca, db - da, a.Steepest(&in.rider, &in.road).Value}
}

// The ± of every answer, against 100,000 draws of everything it rests on for the
// climb, the steepest slope and the day (of four stretches).
//
// The inputs are drawn within a quarter of their half-widths: the budget is of
// first order, and a gear that changes is a kink. The scatter of the draws is
// itself known to 0.22 %; what is left out adds up to 3 %.
func TestTimesAgainstMonteCarlo(t *testing.T) {
	const draws, part = 100_000, 0.25
	shrink := func(q drive.Quantity) drive.Quantity { q.Half *= part; return q }
	base := typical()
	base.mass, base.rollOut, base.rider.Power = shrink(base.mass), shrink(base.rollOut), shrink(base.rider.Power)
	base.losses = vary(base.losses, shrink)
	base.road = effort.Road{Slope: shrink(base.road.Slope), Rolling: shrink(base.road.Rolling), Wind: shrink(base.road.Wind), Density: shrink(base.road.Density), Drag: shrink(base.road.Drag)}
	for i := range base.rolling {
		base.rolling[i] = shrink(base.rolling[i])
	}
	base.road.Rolling = base.rolling[1]
	day := &effort.Day{Rolling: base.rolling, Stretches: []effort.Stretch{{Length: 9000, Slope: 0.05}, {Length: 7000, Slope: 0.005, Surface: 1}, {Length: 9000, Slope: -0.05}, {Length: 3000, Slope: 0.02, Surface: 1}}}
	a, b := base.bike(false), base.bike(true)
	b.Mass.Value += 0.83
	ca, cb := a.Climb(&base.rider, &base.road, 1000).Time, b.Climb(&base.rider, &base.road, 1000).Time
	da, db := a.Day(&base.rider, &base.road, day).Time, b.Day(&base.rider, &base.road, day).Time
	figures := []drive.Figure{ca, da, cb.Minus(ca), db.Minus(da), a.Steepest(&base.rider, &base.road)}

	rng := rand.New(rand.NewPCG(11, 12))
	samples := make([][]float64, len(figures))
	for range draws {
		errors := make(map[string]float64)
		draw := func(q drive.Quantity) drive.Quantity {
			e, known := errors[q.Source]
			if !known {
				e = 2*rng.Float64() - 1
				errors[q.Source] = e
			}
			q.Value += q.Half * e
			return q
		}
		in := base
		in.mass, in.rollOut, in.rider.Power = draw(in.mass), draw(in.rollOut), draw(in.rider.Power)
		in.losses = vary(in.losses, draw)
		in.road = effort.Road{Slope: draw(in.road.Slope), Rolling: draw(in.road.Rolling), Wind: draw(in.road.Wind), Density: draw(in.road.Density), Drag: draw(in.road.Drag)}
		in.rolling = []drive.Quantity{draw(in.rolling[0]), draw(in.rolling[1])}
		for i, v := range times(&in, day) {
			samples[i] = append(samples[i], v)
		}
	}
	for i, name := range []string{"climb", "day", "difference of climbs", "difference of days", "steepest slope"} {
		u := stat.StdDev(samples[i], nil)
		near(t, name+": standard uncertainty", figures[i].Budget.Standard(), u, 0.05*u)
	}
}

// vary puts others in the place of all quantities of losses.
func vary(l drive.Losses, f func(drive.Quantity) drive.Quantity) drive.Losses {
	for _, q := range []*drive.Quantity{
		&l.Chain.Friction, &l.Chain.Slack, &l.Front.Mesh, &l.Front.Torque, &l.Rear.Mesh, &l.Rear.Meshes, &l.Rear.Torque, &l.Crank, &l.Chain.PulleyTorque,
	} {
		*q = f(*q)
	}
	return l
}

func TestClimbIsWorth(t *testing.T) {
	in := typical()
	a, b := in.bike(false), in.bike(true)
	b.Mass.Value += 0.83
	climb := func(x *effort.Bike) drive.Figure { return x.Climb(&in.rider, &in.road, 1000).Time }
	c := a.Climb(&in.rider, &in.road, 1000)
	near(t, "time", c.Time.Value, 1000/math.Sin(math.Atan(0.06))/c.Speed, 1e-6)
	// By finite difference.
	heavier := *a
	heavier.Mass.Value += 0.001
	near(t, "a kilogram", c.Worth.Kilogram, (climb(&heavier).Value-c.Time.Value)/0.001, 1e-3*c.Worth.Kilogram)
	worse := *a
	worse.Gears = append([]effort.Gear(nil), a.Gears...)
	for i := range worse.Gears {
		worse.Gears[i].Line.Share -= 1e-5
	}
	near(t, "a point", c.Worth.Point, (climb(&worse).Value-c.Time.Value)/1e-3, 1e-3*c.Worth.Point)
	near(t, "a minute", c.Worth.KilogramsPerMinute()*c.Worth.Kilogram, 60, 1e-9)

	d := effort.Between(a, b, climb)
	near(t, "split", d.Mass.Value+d.Drive.Value, d.Time.Value, 1e-9)
	near(t, "mass", d.Mass.Value, 0.83*c.Worth.Kilogram, 0.1*d.Mass.Value)
	if !(d.Mass.Value > 0 && d.Drive.Value > d.Mass.Value) || d.Time.Plus() >= c.Time.Plus() {
		t.Errorf("%v = %v + %v ± %v", d.Time.Value, d.Mass.Value, d.Drive.Value, d.Time.Plus())
	}
	// So heavy the lighter one may be.
	more := effort.Turn(a, climb(b).Value, func(x *effort.Bike) float64 { return climb(x).Value })
	heavier.Mass.Value = a.Mass.Value + more
	near(t, "time at the turn", climb(&heavier).Value, climb(b).Value, 1e-3)
	// The same bike twice differs in nothing.
	if same := effort.Between(a, a, climb); same.Time.Plus() != 0 || same.Mass.Plus() != 0 || same.Drive.Plus() != 0 {
		t.Errorf("%+v", same)
	}
}

// On the steepest slope the lowest gear turns at the least cadence.
func TestSteepest(t *testing.T) {
	in := typical()
	b := in.bike(false)
	s := b.Steepest(&in.rider, &in.road)
	road := in.road
	road.Slope.Value = s.Value * 0.9999
	st := b.Ride(&in.rider, &road)
	if st.Mode != effort.Pedalling || st.Gear != 0 || math.Abs(st.Cadence-in.rider.Least) > 0.02 {
		t.Errorf("%v: %+v", s.Value, st)
	}
	road.Slope.Value = s.Value * 1.0001
	if st := b.Ride(&in.rider, &road); st.Mode != effort.Walking {
		t.Errorf("above it %+v", st)
	}
	if c := (&effort.Bike{}).Steepest(&in.rider, &in.road); !math.IsNaN(c.Value) {
		t.Error(c)
	}
}

// A track that goes up and comes back: as much down as up, and a straight climb
// stays one whatever is smoothed.
func TestProfile(t *testing.T) {
	var track []effort.Point
	rng := rand.New(rand.NewPCG(3, 4))
	for x := 0.0; x <= 20000; x += 5 + 10*rng.Float64() {
		track = append(track, effort.Point{Distance: x, Height: 500 + 0.08*min(x, 20000-x) + rng.NormFloat64()})
	}
	track[0].Height, track[len(track)-1].Height = 500, 500
	s := effort.Profile(track, 200, 3, 200, 0)
	up, length, net := 0.0, 0.0, 0.0
	for _, p := range s {
		sin := math.Sin(math.Atan(p.Slope)) * p.Length
		up, net, length = up+max(sin, 0), net+sin, length+p.Length
	}
	near(t, "net", net, 0, 1e-6)
	near(t, "ascent", up, 800, 12)
	near(t, "length", length, math.Hypot(1, 0.08)*track[len(track)-1].Distance, 30)
	if len(s) > 12 {
		t.Errorf("%d stretches", len(s))
	}
	straight := effort.Profile([]effort.Point{{0, 0}, {10, 1}, {500, 50}, {510, 51}, {1000, 100}}, 300, 0.001, 9, 0)
	if len(straight) != 1 || math.Abs(straight[0].Slope-0.1) > 1e-12 {
		t.Errorf("%+v", straight)
	}
	if got := effort.Profile(track, 0, 0, 50, 0); len(got) > 50 || len(got) < 2 {
		t.Errorf("%d stretches", len(got))
	}
	for _, bad := range [][]effort.Point{nil, {{0, 1}}, {{0, 1}, {0, 2}}, {{math.NaN(), 1}, {1, math.Inf(1)}}} {
		if got := effort.Profile(bad, 100, 1, 10, 0); got != nil {
			t.Errorf("%v gives %v", bad, got)
		}
	}
}

func FuzzProfile(f *testing.F) {
	f.Add([]byte{0, 10, 1, 20, 2, 10, 3, 200}, 100.0, 1.0, 10)
	f.Fuzz(func(t *testing.T, steps []byte, window, tolerance float64, most int) {
		var track []effort.Point
		x := 0.0
		for i := 0; i+1 < len(steps); i += 2 {
			x += float64(int8(steps[i]))
			track = append(track, effort.Point{Distance: x, Height: float64(steps[i+1])})
		}
		s := effort.Profile(track, window, tolerance, most, 0)
		if len(s) > max(1, min(most, effort.MaxStretches)) {
			t.Errorf("%d stretches of %d", len(s), most)
		}
		for _, p := range s {
			if !(p.Length > 0) || math.IsNaN(p.Slope) || math.IsInf(p.Slope, 0) {
				t.Errorf("%+v", p)
			}
		}
	})
}

func TestWrongFiguresAreTold(t *testing.T) {
	r, in := effort.DefaultRider, typical()
	if p := append(r.Check(), in.road.Check()...); len(p) > 0 {
		t.Error(p)
	}
	r.Power.Value, r.Cadence, r.Walk.Value = -1, 0, math.NaN()
	in.road.Slope.Value, in.road.Wind.Half = 1.5, -1
	fields := ""
	for _, p := range append(r.Check(), in.road.Check()...) {
		fields += p.Field + " "
	}
	if fields != "power cadence walk slope wind " {
		t.Error(fields)
	}
	day := effort.Day{Stretches: []effort.Stretch{{Length: -1}}}
	if p := day.Check(); len(p) != 2 || p[0].Field != "stretches.0.length" {
		t.Error(p)
	}
	day.Stretches = make([]effort.Stretch, 3000)
	if p := day.Check(); len(p) != 1 {
		t.Error(len(p))
	}
}

// Gears and climb of two builds with a day of 200 stretches.
func BenchmarkTwoDays(b *testing.B) {
	in := typical()
	day := aDay(200)
	day.Rolling = in.rolling
	for b.Loop() {
		x, y := in.bike(false), in.bike(true)
		effort.Between(x, y, func(c *effort.Bike) drive.Figure { return c.Climb(&in.rider, &in.road, 1000).Time })
		effort.Between(x, y, func(c *effort.Bike) drive.Figure { return c.Day(&in.rider, &in.road, day).Time })
	}
}

// On foot the time is known as well as the speed on foot, and as nothing else; on a
// day it owes that for what is walked.
func TestWalkingHasItsDoubt(t *testing.T) {
	in := typical()
	b := in.bike(false)
	r, road := in.rider, in.road
	road.Slope = exact(0.5)
	r.Walk = drive.Quantity{Value: 1, Half: 0.2, Basis: drive.Typical, Source: "on foot"}
	c := b.Climb(&r, &road, 100)
	if c.Mode != effort.Walking {
		t.Fatalf("%+v", c.State)
	}
	u := 0.2 / math.Sqrt(3) // of the speed: that of the time is its share
	near(t, "what the climb owes", c.Time.Budget.Named("on foot"), -c.Time.Value*u, 1e-9)
	near(t, "and nothing else", c.Time.Budget.Standard(), c.Time.Value*u, 1e-9)
	d := b.Day(&r, &road, &effort.Day{Stretches: []effort.Stretch{{Length: 1000, Slope: 0.03}, {Length: 300, Slope: 0.5}}, Rolling: []drive.Quantity{road.Rolling}})
	near(t, "what the day owes", d.Time.Budget.Named("on foot"), -300*u, 1e-9)
}
