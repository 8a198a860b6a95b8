package packing

import "steelyard/internal/mass"

// Limits of size, so that a task always fits into memory. Nobody packs more by
// hand; a good with more pieces is better entered by the dozen.
const (
	MaxGoods  = 500
	MaxBags   = 32
	MaxLimits = 16
	MaxPieces = 2000
)

// Task is what is to be packed, into what, and what is wanted of it.
type Task struct {
	Goods  []Good
	Bags   []Bag
	Limits []Limit // on several bags together; may be empty

	// Rest is everything that counts in the aim besides the goods: the bike,
	// empty bags, the rider. Without a rest the aim judges the goods alone.
	// Only its mass, its first moments and its moments about the axes are used.
	Rest mass.Moments

	// RearContact and FrontContact are where the wheels meet the ground, x in
	// m. They are used only if the front share has a weight.
	RearContact, FrontContact float64

	// RestSteered is the moment of inertia about the steering axis of what turns
	// with the bar in the rest, kg m².
	RestSteered float64

	Aim Aim

	// Forbidden pairs are goods that must stay out of a bag.
	Forbidden []Pair

	// Start is a packing to begin from, usually the present one; nil is none.
	// It need not keep the limits. An answer is never worse than a start that
	// keeps them, but within the tolerance: of the packings that are as good as the
	// best, one with the fewest moves from here is taken, see [Task.Moves].
	Start Packing

	// AtMost is how many moves from the start a packing may take; nil is any number.
	AtMost *int

	// Tolerance says how far from the best is as good as the best, in units of
	// the aim. With 0 the answer is proved to be the best but for rounding (see
	// [Task.Rounding]), which may take long; see [Task.Fine] for a sensible
	// value.
	Tolerance float64
}

// Good is one sort of thing, in one or more pieces.
type Good struct {
	Name     string  // to name it in errors
	Mass     float64 // kg, of one piece
	Volume   float64 // l, of one piece
	Quantity int     // 0 is none at all
	Together bool    // all pieces go into one bag; otherwise they may be spread over several
	Group    int     // goods of the same group, unless that is 0, go into one bag, with all their pieces

	Pinned bool // all pieces lie in bag In and stay there
	In     int  // index of a bag; read only if Pinned
}

// Bag is a place to pack.
type Bag struct {
	Name      string
	Place     mass.Vec // m, centre of what is packed in it
	Permitted float64  // kg of goods; 0 is not stated
	Volume    float64  // l; 0 is not limited
	Steered   float64  // squared distance of the place from the steering axis, m², if it turns with the bar; else 0
}

// Limit is a permitted load on several bags together: a rack that carries
// three of them, or a tyre that carries some of each.
type Limit struct {
	Name      string
	Share     []float64 // one a bag: the share of its goods that counts here, 0 or more
	Permitted float64   // kg
}

// Aim weighs the terms against each other. A weight of 0 leaves a term out. As
// a yardstick: with all weights at 100, one percentage point of front share,
// one centimetre of height and one centimetre to the side cost 1 each, and so
// do 100 cm² of mean square distance, about a centimetre of radius at half a
// metre.
type Aim struct {
	FrontShare float64 // wanted share of the mass on the front wheel, 0 to 1
	Front      float64 // weight of the distance from it
	Low        float64 // weight of the height, per m
	Balance    float64 // weight of the offset to the side, per m
	Middle     float64 // weight of the mean square distance, per m²
	Steered    float64 // weight of the mean square distance from the steering axis of what turns with the bar, per m²

	Centre mass.Vec // m, the middle that heavy things should be near
}

// Pair is a good and a bag, by index.
type Pair struct{ Good, Bag int }

// Packing says how many pieces of good i lie in bag j: p[i][j].
type Packing [][]int

// Figures are what an aim judges.
type Figures struct {
	FrontShare float64 // of the mass on the front wheel
	Height     float64 // of the centre of mass, m
	Aside      float64 // of the centre of mass, m, positive to the left
	MeanSquare float64 // of the radii of pitch and yaw about the middle, m²
	Steered    float64 // moment of inertia about the steering axis of what turns with the bar, by all the mass, m²
	Aim        float64 // the weighted sum; smaller is better
}

// Clone returns a copy that shares no memory.
func (p Packing) Clone() Packing {
	if p == nil {
		return nil
	}
	c := make(Packing, len(p))
	for i := range p {
		c[i] = append([]int(nil), p[i]...)
	}
	return c
}

// Figures weighs a packing. Pieces that the packing leaves out do not count.
// Without any mass all figures are 0.
func (t *Task) Figures(p Packing) Figures {
	m, s, q, a := t.Rest.M, t.Rest.S, t.restSquare(), t.RestSteered
	for i := range p {
		for j, n := range p[i] {
			if n == 0 {
				continue
			}
			w := float64(n) * t.Goods[i].Mass
			m += w
			s = s.Add(t.Bags[j].Place.Scale(w))
			q += w * t.square(t.Bags[j].Place)
			a += w * t.Bags[j].Steered
		}
	}
	if m == 0 {
		return Figures{}
	}
	f := Figures{Height: s.Z / m, Aside: s.Y / m, MeanSquare: q / m, Steered: a / m}
	if base := t.FrontContact - t.RearContact; base != 0 {
		f.FrontShare = (s.X/m - t.RearContact) / base
	}
	c := t.Aim.Costs(f)
	f.Aim = c.Front + c.Low + c.Balance + c.Middle + c.Steered
	return f
}

// Costs are the weighted terms of an aim: their sum is Figures.Aim.
type Costs struct{ Front, Low, Balance, Middle, Steered float64 }

// Costs weighs figures.
func (a *Aim) Costs(f Figures) Costs {
	return Costs{a.Front * abs(f.FrontShare-a.FrontShare), a.Low * f.Height, a.Balance * abs(f.Aside), a.Middle * f.MeanSquare, a.Steered * f.Steered}
}

// lump reports whether the pieces of a good go into one bag.
func (g *Good) lump() bool { return g.Together || g.Group != 0 }

// Moves counts what a packing moves from one bag to another: a good that stays
// together once, of others each piece. What lay in no bag at the start has to go
// into one, and does not count.
func (t *Task) Moves(p Packing) int {
	n := 0
	for i := range t.Start {
		was, moved := 0, 0
		for j, s := range t.Start[i] {
			was += s
			moved += max(0, p[i][j]-s)
		}
		moved = max(0, moved+was-t.Goods[i].Quantity)
		if t.Goods[i].lump() {
			moved = min(moved, 1)
		}
		n += moved
	}
	return n
}

// Mass is that of the rest and of all goods, kg.
func (t *Task) Mass() float64 {
	all := t.Rest.M
	for i := range t.Goods {
		all += float64(t.Goods[i].Quantity) * t.Goods[i].Mass
	}
	return all
}

// perMass is what a unit of mass in a bag costs under the terms that are linear.
func (t *Task) perMass(b *Bag) float64 {
	a := &t.Aim
	return a.Low*b.Place.Z + a.Middle*t.square(b.Place) + a.Steered*b.Steered
}

// square is the mean of the squared radii of pitch, dx² + dz², and of yaw,
// dx² + dy², of a point about the middle.
func (t *Task) square(r mass.Vec) float64 {
	d := r.Sub(t.Aim.Centre)
	return d.X*d.X + (d.Y*d.Y+d.Z*d.Z)/2
}

// restSquare is the same for the rest, times its mass, from its moments:
// Σ m (r - c)² = J - 2 c S + M c² on each axis.
func (t *Task) restSquare() float64 {
	m, c := &t.Rest, t.Aim.Centre
	x := m.J.XX - 2*c.X*m.S.X + m.M*c.X*c.X
	y := m.J.YY - 2*c.Y*m.S.Y + m.M*c.Y*c.Y
	z := m.J.ZZ - 2*c.Z*m.S.Z + m.M*c.Z*c.Z
	return x + (y+z)/2
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
