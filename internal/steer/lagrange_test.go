package steer_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"steelyard/internal/mass"
	"steelyard/internal/steer"
)

// An independent derivation: the whole bicycle, not linearized, as point masses
// on four rigid bodies that roll without slip, by Lagrange's equations with
// multipliers. All derivatives are taken numerically. Axes are the paper's:
// x forward, y right, z down.

// coordinates: rear contact x and y, heading, lean, steer, and the turns of both
// wheels. The pitch of the rear frame follows from both wheels being on the ground.
type coordinates [7]float64

const (
	qx = iota
	qy
	heading
	lean
	steering
	turnRear
	turnFront
)

type point struct {
	mass float64
	body int // 0 rear wheel, 1 rear frame, 2 front frame, 3 front wheel
	at   [3]float64
}

type machine struct {
	w, c, tilt, rr, rf float64
	points             []point
}

func machineOf(b *steer.Bicycle) *machine {
	m := &machine{w: b.Wheelbase, c: b.Trail, tilt: math.Pi/2 - b.HeadAngle, rr: b.RearRadius, rf: b.FrontRadius}
	for i, it := range b.Items {
		body := 1
		switch {
		case b.RearWheel[i] == 1:
			body = 0
		case b.FrontWheel[i] == 1:
			body = 3
		case b.Front[i] == 1:
			body = 2
		}
		// Six points with the item's second moment: along its principal directions.
		k := it.Spread
		half := math.Atan2(2*k.XZ, k.XX-k.ZZ) / 2
		s, c := math.Sincos(half)
		along := k.XX*c*c + 2*k.XZ*s*c + k.ZZ*s*s
		across := k.XX*s*s - 2*k.XZ*s*c + k.ZZ*c*c
		for _, d := range []mass.Vec{
			mass.Vec{X: c, Z: s}.Scale(math.Sqrt(3 * math.Max(0, along))),
			mass.Vec{X: -s, Z: c}.Scale(math.Sqrt(3 * math.Max(0, across))),
			{Y: math.Sqrt(3 * k.YY)},
		} {
			for _, p := range []mass.Vec{it.Place.Add(d), it.Place.Sub(d)} {
				m.points = append(m.points, point{it.Mass / 6, body, [3]float64{p.X, -p.Y, -p.Z}})
			}
		}
	}
	return m
}

type matrix [3][3]float64

func turn(axis [3]float64, angle float64) matrix {
	s, c := math.Sincos(angle)
	x, y, z := axis[0], axis[1], axis[2]
	return matrix{
		{c + x*x*(1-c), x*y*(1-c) - z*s, x*z*(1-c) + y*s},
		{y*x*(1-c) + z*s, c + y*y*(1-c), y*z*(1-c) - x*s},
		{z*x*(1-c) - y*s, z*y*(1-c) + x*s, c + z*z*(1-c)},
	}
}

func (a matrix) times(b matrix) (c matrix) {
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				c[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return c
}

func (a matrix) of(v [3]float64) (u [3]float64) {
	for i := range 3 {
		u[i] = a[i][0]*v[0] + a[i][1]*v[1] + a[i][2]*v[2]
	}
	return u
}

func plus(a, b [3]float64) [3]float64  { return [3]float64{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func minus(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

var ex, ey, ez = [3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}

// placed is where the four bodies are: a point p of body i is at origin[i] +
// turn[i] (p - centre[i]).
type placed struct {
	turn           [4]matrix
	origin, centre [4][3]float64
	low            [3]float64 // from the front wheel's centre to its lowest point
}

func (m *machine) pose(q coordinates) placed {
	pitch := 0.0
	for range 8 { // Newton: the front wheel's lowest point is on the ground
		const h = 1e-5
		f := func(t float64) float64 { p := m.pitched(q, t); return p.origin[3][2] + p.low[2] }
		pitch -= f(pitch) * 2 * h / (f(pitch+h) - f(pitch-h))
	}
	return m.pitched(q, pitch)
}

func (m *machine) pitched(q coordinates, pitch float64) (p placed) {
	upright := turn(ez, q[heading]).times(turn(ex, q[lean]))
	frame := upright.times(turn(ey, pitch))
	axle := plus([3]float64{q[qx], q[qy], 0}, upright.of([3]float64{0, 0, -m.rr}))
	rear := [3]float64{0, 0, -m.rr}
	p.turn[0], p.origin[0], p.centre[0] = frame.times(turn(ey, q[turnRear])), axle, rear
	p.turn[1], p.origin[1], p.centre[1] = frame, axle, rear
	// The steering axis meets the ground at w + c, and leans back by the tilt.
	foot := [3]float64{m.w + m.c, 0, 0}
	axis := [3]float64{math.Sin(m.tilt), 0, math.Cos(m.tilt)}
	steered := frame.times(turn(axis, q[steering]))
	on := plus(axle, frame.of(minus(foot, rear)))
	p.turn[2], p.origin[2], p.centre[2] = steered, on, foot
	hub := [3]float64{m.w, 0, -m.rf}
	at := plus(on, steered.of(minus(hub, foot)))
	p.turn[3], p.origin[3], p.centre[3] = steered.times(turn(ey, q[turnFront])), at, hub
	n := steered.of(ey)
	d := [3]float64{-n[2] * n[0], -n[2] * n[1], 1 - n[2]*n[2]}
	l := math.Sqrt(d[0]*d[0] + d[1]*d[1] + d[2]*d[2])
	p.low = [3]float64{d[0] / l * m.rf, d[1] / l * m.rf, d[2] / l * m.rf}
	return p
}

func (p *placed) at(pt *point) [3]float64 {
	return plus(p.origin[pt.body], p.turn[pt.body].of(minus(pt.at, p.centre[pt.body])))
}

// contacts are the points of both wheels that touch the ground, as points of
// their wheels.
func (m *machine) contacts(q coordinates) [2]point {
	p := m.pose(q)
	back := func(body int, v [3]float64) [3]float64 { // turned back into the body
		var u [3]float64
		for i := range 3 {
			for k := range 3 {
				u[i] += p.turn[body][k][i] * v[k]
			}
		}
		return plus(u, p.centre[body])
	}
	ground := [3]float64{q[qx], q[qy], 0}
	return [2]point{{0, 0, back(0, minus(ground, p.origin[0]))}, {0, 3, back(3, p.low)}}
}

// places are those of some points, one after the other.
func (m *machine) places(q coordinates, pts []point) []float64 {
	p := m.pose(q)
	out := make([]float64, 0, 3*len(pts))
	for i := range pts {
		a := p.at(&pts[i])
		out = append(out, a[:]...)
	}
	return out
}

func along(q, d coordinates, f float64) coordinates {
	for i := range q {
		q[i] += f * d[i]
	}
	return q
}

// jacobian holds the derivatives of the places by each coordinate, by differences
// of fourth order.
func (m *machine) jacobian(q coordinates, pts []point) *mat.Dense {
	j := mat.NewDense(3*len(pts), 7, nil)
	for i := range 7 {
		var d coordinates
		d[i] = 1
		const h = 2e-3
		a, b := m.places(along(q, d, h), pts), m.places(along(q, d, -h), pts)
		c, e := m.places(along(q, d, 2*h), pts), m.places(along(q, d, -2*h), pts)
		for r := range a {
			j.Set(r, i, (8*(a[r]-b[r])-(c[r]-e[r]))/(12*h))
		}
	}
	return j
}

// rolling are the four rows that are 0 while nothing slips.
func (m *machine) rolling(q coordinates) *mat.Dense {
	at := m.contacts(q)
	j := m.jacobian(q, at[:])
	rows := mat.NewDense(4, 7, nil)
	for i, r := range []int{0, 1, 3, 4} {
		rows.SetRow(i, j.RawRowView(r))
	}
	return rows
}

// acceleration returns lean" and steer" at a state, at the speed v.
func (m *machine) acceleration(v float64, leanAngle, steerAngle, leanRate, steerRate float64) (float64, float64) {
	var q, rate coordinates
	q[lean], q[steering] = leanAngle, steerAngle
	rate[lean], rate[steering], rate[turnRear] = leanRate, steerRate, -v/m.rr
	a := m.rolling(q)
	// What must hold for nothing to slip: x, y, heading and the front wheel's turn.
	free := []int{qx, qy, heading, turnFront}
	left, right := mat.NewDense(4, 4, nil), mat.NewVecDense(4, nil)
	for r := range 4 {
		for c, i := range free {
			left.Set(r, c, a.At(r, i))
		}
		for _, i := range []int{lean, steering, turnRear} {
			right.SetVec(r, right.AtVec(r)-a.At(r, i)*rate[i])
		}
	}
	var solved mat.VecDense
	if err := solved.SolveVec(left, right); err != nil {
		panic(err)
	}
	for c, i := range free {
		rate[i] = solved.AtVec(c)
	}

	j := m.jacobian(q, m.points)
	const h = 5e-4
	here := m.places(q, m.points)
	f1, b1 := m.places(along(q, rate, h), m.points), m.places(along(q, rate, -h), m.points)
	f2, b2 := m.places(along(q, rate, 2*h), m.points), m.places(along(q, rate, -2*h), m.points)
	system, force := mat.NewDense(11, 11, nil), mat.NewVecDense(11, nil)
	for r := range here {
		kg := m.points[r/3].mass
		bias := (16*(f1[r]+b1[r]) - (f2[r] + b2[r]) - 30*here[r]) / (12 * h * h)
		pull := -bias
		if r%3 == 2 {
			pull += steer.Gravity
		}
		for i := range 7 {
			force.SetVec(i, force.AtVec(i)+kg*j.At(r, i)*pull)
			for k := range 7 {
				system.Set(i, k, system.At(i, k)+kg*j.At(r, i)*j.At(r, k))
			}
		}
	}
	const step = 1e-4
	ahead, behind := m.rolling(along(q, rate, step)), m.rolling(along(q, rate, -step))
	for r := range 4 {
		for i := range 7 {
			system.Set(i, 7+r, -a.At(r, i))
			system.Set(7+r, i, a.At(r, i))
			force.SetVec(7+r, force.AtVec(7+r)-(ahead.At(r, i)-behind.At(r, i))/(2*step)*rate[i])
		}
	}
	var out mat.VecDense
	if err := out.SolveVec(system, force); err != nil {
		panic(err)
	}
	return out.AtVec(lean), out.AtVec(steering)
}

// The linear equation against the whole one, near straight and upright.
func TestEquationAgainstLagrange(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	bikes := []*steer.Bicycle{benchmark(t)}
	// The benchmark's wheels are thicker than a plane ring of points can be: their
	// spread across is given to the frame's other bodies by the points as it is.
	for range 5 {
		bikes = append(bikes, random(rng))
	}
	for n, b := range bikes {
		m, whole := model(t, b), machineOf(b)
		for _, v := range []float64{0, 1.5, 5, 9} {
			var mm, rates mat.Dense
			mm.CloneFrom(mat.NewDense(2, 2, []float64{m.M[0][0], m.M[0][1], m.M[1][0], m.M[1][1]}))
			kc := mat.NewDense(2, 4, nil)
			for i := range 2 {
				for j := range 2 {
					kc.Set(i, j, -(steer.Gravity*m.K0[i][j] + v*v*m.K2[i][j]))
					kc.Set(i, 2+j, -v*m.C1[i][j])
				}
			}
			if err := rates.Solve(&mm, kc); err != nil {
				t.Fatal(err)
			}
			const small = 1e-3
			for s := range 4 {
				var up, down [4]float64
				up[s], down[s] = small, -small
				a0, a1 := whole.acceleration(v, up[0], up[1], up[2], up[3])
				b0, b1 := whole.acceleration(v, down[0], down[1], down[2], down[3])
				for i, got := range []float64{(a0 - b0) / (2 * small), (a1 - b1) / (2 * small)} {
					want := rates.At(i, s)
					if math.Abs(got-want) > 5e-5*(1+math.Abs(want)) {
						t.Errorf("bicycle %d at %g m/s: row %d, state %d: %g by Lagrange, %g by the linear equation", n, v, i, s, got, want)
					}
				}
			}
		}
	}
}
