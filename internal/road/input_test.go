package road_test

import (
	"errors"
	"math"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

func TestInputThatMakesNoSense(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*road.Bike)
		want   road.Key
		side   road.Side
	}{
		"a spring without sag":      {func(b *road.Bike) { b.Ends[1].Spring.Sag.Value = 0 }, road.NoSag, road.Rear},
		"sag below 0":               {func(b *road.Bike) { b.Ends[0].Spring.Sag.Value = -0.01 }, road.NoSag, road.Front},
		"sag over the travel":       {func(b *road.Bike) { b.Ends[0].Spring.Sag.Value = 0.1 }, road.SagOverTravel, road.Front},
		"a spring without travel":   {func(b *road.Bike) { b.Ends[0].Spring.Travel = 0 }, road.NoSize, road.Front},
		"a tyre without rate":       {func(b *road.Bike) { b.Ends[1].Tyre.Rate.Value = 0 }, road.NoPressure, road.Rear},
		"a tyre of no number":       {func(b *road.Bike) { b.Ends[1].Tyre.Rate.Value = math.NaN() }, road.NotANumber, road.Rear},
		"a wheel without size":      {func(b *road.Bike) { b.Ends[1].Tyre.Radius = 0 }, road.NoSize, road.Rear},
		"damping below 0":           {func(b *road.Bike) { b.Ends[0].Spring.Ratio.Value = -1 }, road.BadDamping, road.Front},
		"damping without end":       {func(b *road.Bike) { b.Ends[0].Spring.Ratio.Value = 25 }, road.BadDamping, road.Front},
		"a tyre of tar":             {func(b *road.Bike) { b.Ends[1].Tyre.Lag.Value = 87 }, road.BadDamping, road.Rear},
		"a pivot behind":            {func(b *road.Bike) { b.Pivot.X = -0.1 }, road.NoArm, road.Rear},
		"no wheelbase":              {func(b *road.Bike) { b.FrontAxle.X = 0 }, road.NoWheelbase, road.Both},
		"a steering axis that lies": {func(b *road.Bike) { b.HeadAngle = 0 }, road.NoHeadAngle, road.Front},
		"a front without load":      {func(b *road.Bike) { b.Items[11].Place.X = -3 }, road.NoLoad, road.Front},
		"no mass":                   {func(b *road.Bike) { b.Items = nil; b.Shares = [road.NumBodies]mass.Share{} }, road.NoMass, road.Both},
		"nothing damps": {func(b *road.Bike) {
			rigid(b, road.Front, road.Rear)
			b.Ends[0].Tyre.Lag.Value, b.Ends[1].Tyre.Lag.Value = 0, 0
		}, road.NoDamping, road.Both},
		"standing on nothing":  {func(b *road.Bike) { stand(b, 2); b.Standing.Frequency.Value = 0 }, road.NoBody, road.Both},
		"a rider without mass": {func(b *road.Bike) { stand(b, 2); b.Shares[road.Rider] = nil }, road.NoMass, road.Both},
	} {
		b := rough(2.1)
		c.change(b)
		var p *road.Problem
		if _, err := road.New(b); !errors.As(err, &p) || p.Key != c.want || p.Side != c.side {
			t.Errorf("%s: %v, want %s (%s)", name, err, c.want, c.side)
		} else if p.Error() == "" {
			t.Errorf("%s: no message", name)
		}
	}
	m := model(t, rough(2.1))
	for name, err := range map[string]error{
		"no speed":       second(m.At(0, gravel())),
		"backwards":      second(m.At(-3, gravel())),
		"no road":        second(m.At(3, road.Road{})),
		"a curve from 0": second(m.Curve([]float64{3, 0}, gravel())),
	} {
		if p := new(*road.Problem); !errors.As(err, p) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := road.Membrane(road.Front, 0, 0.35, 0.05); err == nil {
		t.Error("a tyre without pressure has a rate")
	}
	if _, _, err := road.Drop(road.Front, 100, 1, 0, 0.001); err == nil {
		t.Error("a tyre that does not give has a rate")
	}
	b := rough(2.1)
	b.Ends[0].Tyre.Radius = 0.35
	b.PointContact = true
	if _, err := model(t, b).At(3, gravel()); err == nil {
		t.Error("a damped tyre that touches in a point has a load")
	}
}

func second[T any](_ T, err error) error { return err }

func TestMarks(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*road.Bike)
		speed  float64
		want   road.Key
	}{
		"200 km/h":        {func(*road.Bike) {}, 200 / 3.6, road.SpeedHigh},
		"overdamped":      {func(b *road.Bike) { b.Ends[0].Spring.Ratio.Value = 1.6 }, 5, road.OverDamped},
		"a hard damper":   {func(b *road.Bike) { b.Ends[1].Spring.Damper = known(9000, 0, "") }, 5, road.OverDamped},
		"undamped":        {func(b *road.Bike) { b.Ends[1].Spring.Ratio.Value = 0 }, 5, road.UnDamped},
		"a flat tyre":     {func(b *road.Bike) { b.Ends[1].Tyre.Rate.Value = 20e3 }, 5, road.TyreFlat},
		"lifts":           {func(*road.Bike) {}, 6, road.TyreLifts},
		"formal":          {func(b *road.Bike) { rigid(b, road.Front) }, 9, road.LoadFormal},
		"bottoms":         {func(b *road.Bike) { b.Ends[0].Spring.Travel = 0.03 }, 6, road.Bottoms},
		"travel for form": {func(b *road.Bike) { b.Ends[0].Spring.Travel = 0.023 }, 9, road.TravelFormal},
		"kept springs":    {func(b *road.Bike) { *b = *kept(2.1); b.Set.Items[8].Mass = 0; b.Items[8].Mass = 25 }, 5, road.SagChanged},
		"travel all gone": {func(b *road.Bike) { *b = *kept(2.1); b.Ends[1].Spring.Travel = 0.0225 }, 5, road.SagGone},
	} {
		b := rough(2.1)
		c.change(b)
		m := model(t, b)
		r := at(t, m, c.speed, gravel())
		found := false
		for _, k := range append(m.Marks(), r.Marks...) {
			found = found || k.Key == c.want
		}
		if !found {
			t.Errorf("%s: no mark %s in %v and %v", name, c.want, m.Marks(), r.Marks)
		}
	}
	if _, high := road.PressureMark(road.Front, 40*road.Bar); !high {
		t.Error("40 bar is a pressure like any")
	}
	// More load on a kept spring is more sag.
	if k := model(t, kept(2.1)); !(k.Sag(road.Rear).Value > 0.0222) || !(k.SpringRate(road.Rear) < model(t, rough(2.1)).SpringRate(road.Rear)) {
		t.Errorf("a kept spring sags by %g m", k.Sag(road.Rear).Value)
	}
	s := model(t, rough(2.1)).Sag(road.Front)
	near(t, "sag", s.Value, 0.022, 1e-12)
}

// Whatever the numbers, there is a figure or an error, and no figure is no number.
func FuzzModel(f *testing.F) {
	f.Add(0.02, 0.02, 1e5, 1e5, 0.3, 0.3, 1.2, 68.0, 5.0, 2.1, 0.001, uint8(0))
	f.Add(0.0999, 1e-9, 1e7, 1e3, 1.6, 0.0, 1.2, 40.0, 56.0, 60.0, 0.0, uint8(7))
	f.Add(0.03, 0.01, 4e6, 1e5, 1.0, 1.0, 0.5, 90.0, 0.01, 0.0, 1.0, uint8(4))
	f.Fuzz(func(t *testing.T, sagF, sagR, tyreF, tyreR, zF, zR, front, head, speed, hub, lag float64, how uint8) {
		b := rough(hub)
		if how&4 != 0 {
			stand(b, hub)
		}
		for i, v := range [][3]float64{{sagF, tyreF, zF}, {sagR, tyreR, zR}} {
			b.Ends[i].Spring.Sag.Value, b.Ends[i].Tyre.Rate.Value, b.Ends[i].Spring.Ratio.Value = v[0], v[1], v[2]
			b.Ends[i].Tyre.Lag.Value = lag
			if how>>i&1 != 0 {
				b.Ends[i].Spring = nil
			}
		}
		b.FrontAxle.X, b.HeadAngle = front, head*math.Pi/180
		if how&8 != 0 {
			set := loaded(touring(1), false)
			b.Set = &set
		}
		m, err := road.New(b)
		if err != nil {
			return
		}
		no := func(what string, v float64) {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%s is %g", what, v)
			}
		}
		for _, o := range m.Modes() {
			no(string(o.Motion), o.Frequency.Value)
			no(string(o.Motion), o.Damping.Value)
			no(string(o.Motion)+" ±", o.Frequency.Plus())
		}
		r, err := m.At(speed, gravel())
		if err != nil {
			return
		}
		for k, f := range r.Figures {
			no(road.Kind(k).String(), f.Value)
			no(road.Kind(k).String()+" ±", f.Plus())
		}
		if p, err := m.Over(obstacles[int(how>>4)%3], speed); err == nil {
			for j, f := range p.Jolts {
				no(road.Jolt(j).String(), f.Value)
				no(road.Jolt(j).String()+" ±", f.Plus())
			}
		}
	})
}
