package road

// moves is how a motion goes with one of its numbers, at index: the slopes of all
// that figures are made of, by moving it by step.
type moves struct {
	index  int
	step   float64
	places [maxPoles]complex128 // of the poles, moved

	poles   [maxPoles]complex128
	terms   [numChannels][][numPairs]complex128 // of the motion's poles, then of the weighting's
	direct  [numChannels][2]float64
	static  [2]float64
	contact [2]float64
	sag     [2]float64
}

// vary finds the motion with the number at i moved by step, in v. It is hardly
// another, so that its poles are near those of the bike's own.
func (m *Model) vary(i int, step float64, v *variant) {
	p := *m.numbers
	m.bike.move(&p, i, step)
	v.system = system{}
	v.poles = m.base.poles
	m.bike.system(m.frame, &p, &v.system)
	v.system.follow(&v.poles)
	v.static, v.contact = v.system.static, v.system.contact
}

// move finds how the motion goes with each number that may be in doubt.
func (m *Model) move() {
	h := m.bike.steps(m.numbers)
	count, size := 0, 0
	for _, step := range h {
		if step != 0 {
			count++
		}
	}
	s, poles := &m.base.system, m.base.poles.n
	var terms [numChannels]int
	for ch := range s.channels {
		c := &s.channels[ch]
		if !c.there {
			continue
		}
		terms[ch] = poles
		if c.weight > 0 {
			terms[ch] += len(filters[c.weight-1].poles)
		}
		size += terms[ch]
	}
	m.moved = make([]moves, 0, count)
	all := make([][numPairs]complex128, count*size)
	var v variant
	for i, step := range h {
		if step == 0 {
			continue
		}
		m.vary(i, step, &v)
		v.system.expand(&v.expansion)
		m.moved = append(m.moved, moves{index: i, step: step, places: v.poles.places()})
		o := &m.moved[len(m.moved)-1]
		for k := range poles {
			o.poles[k] = slopeOf(v.poles.pole[k].s, m.base.poles.pole[k].s, step)
		}
		for ch, n := range terms {
			if n == 0 {
				continue
			}
			o.terms[ch], all = all[:n:n], all[n:]
			from, to := &m.base.channels[ch], &v.channels[ch]
			for k := range n {
				at := k
				if k >= poles {
					at = maxPoles + k - poles
				}
				for pair := range numPairs {
					o.terms[ch][k][pair] = slopeOf(to.terms[at][pair], from.terms[at][pair], step)
				}
			}
			for i := range from.direct {
				o.direct[ch][i] = slope(to.direct[i], from.direct[i], step)
			}
		}
		for side := range Both {
			o.static[side] = slope(v.static[side], m.base.static[side], step)
			o.contact[side] = slope(v.contact[side], m.base.contact[side], step)
			if m.bike.Ends[side].Spring != nil {
				o.sag[side] = slope(v.system.sag(m.frame, side), s.sag(m.frame, side), step)
			}
		}
	}
}

// slopeOf is slope of a complex number.
func slopeOf(moved, value complex128, step float64) complex128 {
	return complex(slope(real(moved), real(value), step), slope(imag(moved), imag(value), step))
}
