package road

import "gonum.org/v1/gonum/mat"

// Plain is a model's equation of motion in gonum's matrices, for a referee.
type Plain struct {
	N        int
	M, C, K  *mat.Dense
	Axle     [2]*mat.VecDense
	Kt, Ct   [2]float64
	Contact  [2]float64
	Row      map[Kind]*mat.VecDense // of loads (the axle), travel, and the accelerations
	Full     [6][6]float64          // with the way fore and aft, the last
	Poles    []complex128           // those above the real axis and on it
	Distance float64                // wheelbase
}

func (m *Model) Plain() *Plain {
	s := &m.base.system
	dense := func(a *matrix) *mat.Dense {
		d := mat.NewDense(s.n, s.n, nil)
		for i := range s.n {
			for j := range s.n {
				d.Set(i, j, a[i][j])
			}
		}
		return d
	}
	vec := func(r *row) *mat.VecDense { return mat.NewVecDense(s.n, append([]float64(nil), r[:s.n]...)) }
	p := &Plain{
		N: s.n, M: dense(&s.m), C: dense(&s.c), K: dense(&s.k), Kt: s.kt, Ct: s.ct, Contact: s.contact,
		Axle: [2]*mat.VecDense{vec(&s.axle[0]), vec(&s.axle[1])}, Row: map[Kind]*mat.VecDense{}, Full: s.full, Distance: m.frame.wheelbase,
	}
	for k := LoadFront; k <= TravelRear; k++ {
		if c := &s.channels[k.channelOf()]; c.there {
			p.Row[k] = vec(&c.row)
		}
	}
	for _, o := range m.base.poles.all() {
		p.Poles = append(p.Poles, o.s)
	}
	return p
}

// Moved are the slopes of a ride's figures, and the same by finding the whole ride
// anew with each number moved.
func (m *Model) Moved(speed float64, road Road) (slopes, anew [NumKinds][]float64) {
	r, err := m.At(speed, road)
	if err != nil {
		panic(err)
	}
	for kind := range slopes {
		if f := &r.Figures[kind]; f.There {
			slopes[kind] = f.slopes
		}
	}
	for i := range m.moved {
		var up, down variant
		values := func(v *variant, step float64) [numKinds]float64 {
			m.vary(m.moved[i].index, step, v)
			v.system.expand(&v.expansion)
			return m.values(v, v.pass(speed, m.frame.wheelbase), speed, road)
		}
		h := m.moved[i].step
		a, b := values(&up, h), values(&down, -h)
		for kind := range anew {
			if slopes[kind] != nil {
				anew[kind] = append(anew[kind], (a[kind]-b[kind])/(2*h))
			}
		}
	}
	return slopes, anew
}
