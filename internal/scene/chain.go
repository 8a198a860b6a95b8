package scene

import (
	"math"
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/units"
)

// beltPitch is the pitch of a belt's teeth, m (common practice, no source).
const beltPitch = 0.011

// teeth are those that a part says its rings or cogs have.
func teeth(p *document.Part) []int {
	if p.Gearing == nil {
		return nil
	}
	return p.Gearing.Teeth
}

// pitchRadius is the radius on which a wheel of n teeth carries its chain or
// belt, m.
func pitchRadius(n int, pitch float64) float64 { return drive.PitchRadius(n) * pitch / drive.Pitch }

// pulley is a wheel that a chain runs over.
type pulley struct {
	at  pt
	r   float64
	ccw bool // it turns against the clock as seen, with the chain outside of the loop's other wheels
}

func (p *pulley) turns() float64 {
	if p.ccw {
		return -p.r
	}
	return p.r
}

// tangent is where a chain leaves a and where it meets b: the wheels lie to the
// right of its way where they turn with the clock, to the left otherwise. The
// common normal n of both has n·d = (ra - rb)/l with the radii signed by the
// turn, d the unit way from a to b and l its length. Without such a way ok is
// false.
func tangent(a, b *pulley) (from, to pt, ok bool) {
	way := b.at.sub(a.at)
	l := way.len()
	k := (a.turns() - b.turns()) / l
	if !(math.Abs(k) < 0.999) {
		return from, to, false
	}
	d := way.mul(1 / l)
	n := d.mul(k).sub(d.left().mul(math.Sqrt(1 - k*k)))
	return a.at.add(n.mul(a.turns())), b.at.add(n.mul(b.turns())), true
}

// run adds the closed way of a chain over wheels to the path in hand, in the
// order in which it meets them. A wheel between the others that it cannot go
// round is left out; false is no way at all.
func (p *pen) run(list []pulley) bool {
	var from, to []pt
	for {
		if len(list) < 2 {
			return false
		}
		from, to = from[:0], to[:0]
		bad := -1
		for i := range list {
			f, t, ok := tangent(&list[i], &list[(i+1)%len(list)])
			if !ok {
				bad = i
				break
			}
			from, to = append(from, f), append(to, t)
		}
		if bad < 0 {
			bad = slices.IndexFunc(list, func(q pulley) bool { return !(q.r > 0) || !units.Finite(q.at.x+q.at.y) })
			for i := range list {
				if turn := lies(&list[i], to[(i+len(list)-1)%len(list)], from[i]); bad < 0 && len(list) > 2 && math.Abs(turn) > 1.7*math.Pi {
					bad = i
				}
			}
			if bad < 0 {
				break
			}
		}
		if len(list) == 2 {
			return false
		}
		// The smaller of two that do not go together is a guide.
		if next := (bad + 1) % len(list); list[next].r < list[bad].r {
			bad = next
		}
		list = slices.Delete(slices.Clone(list), bad, bad+1)
	}
	p.move(from[0])
	for i := range list {
		next := &list[(i+1)%len(list)]
		p.line(to[i])
		out := from[(i+1)%len(list)]
		in := math.Atan2(to[i].y-next.at.y, to[i].x-next.at.x)
		p.arc(next.at, next.r, in, in+lies(next, to[i], out))
	}
	p.close()
	return true
}

// lies is the angle over which a chain lies on a wheel that it meets at in and
// leaves at out, rad, with the clock positive.
func lies(p *pulley, in, out pt) float64 {
	a := math.Atan2(out.y-p.at.y, out.x-p.at.x) - math.Atan2(in.y-p.at.y, in.x-p.at.x)
	a = math.Mod(a+4*math.Pi, 2*math.Pi)
	if p.ccw && a > 0 {
		a -= 2 * math.Pi
	}
	return a
}
