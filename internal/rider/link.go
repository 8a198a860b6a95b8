package rider

import (
	"math"

	"steelyard/internal/mass"
)

const degree = math.Pi / 180

// apart is the distance between the ends of two links of length a and b whose
// joint is bent by the angle f from straight, by the law of cosines.
func apart(a, b, f float64) float64 { return math.Sqrt(a*a + b*b + 2*a*b*math.Cos(f)) }

// bend is the inverse of apart: the bend in rad of the joint between two links
// whose ends are d apart.
func (c chain) bend(d float64) float64 {
	return math.Acos(clamp((d*d-c.a*c.a-c.b*c.b)/(2*c.a*c.b), -1, 1))
}

// joint finds where two links from p to q meet, on the side that the vector to
// points to. It need not be square to the way from p to q, nor of unit length;
// where it has no part across, any side will do. The links must be able to
// reach.
func (c chain) joint(p, q, to mass.Vec) mass.Vec {
	way := q.Sub(p)
	d := way.Norm()
	way = way.Scale(1 / d)
	along := (d*d + c.a*c.a - c.b*c.b) / (2 * d)
	across := math.Sqrt(max(0, c.a*c.a-along*along))
	return p.Add(way.Scale(along)).Add(square(to, way).Scale(across))
}

// square is the unit vector square to the unit vector way that is nearest to v,
// or to the first of down and forward that is not parallel to it.
func square(v, way mass.Vec) mass.Vec {
	across := func(v mass.Vec) mass.Vec { return v.Sub(way.Scale(v.Dot(way))) }
	for _, v := range [...]mass.Vec{v, {Z: -1}, {X: 1}} {
		s := across(v)
		if n := s.Norm(); n > 1e-6*v.Norm() && n > 0 {
			s = across(s.Scale(1 / n)) // once more, for what the first difference has cancelled
			return s.Scale(1 / s.Norm())
		}
	}
	panic("rider: a way that is no unit vector")
}

// cross returns the vector product of v and w.
func cross(v, w mass.Vec) mass.Vec {
	return mass.Vec{X: v.Y*w.Z - v.Z*w.Y, Y: v.Z*w.X - v.X*w.Z, Z: v.X*w.Y - v.Y*w.X}
}

func clamp(v, low, high float64) float64 { return min(max(v, low), high) }
