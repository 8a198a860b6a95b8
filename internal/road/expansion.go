package road

// filter is a weighting with its poles, and what the weighting makes of a term at
// each: its residue times what it is at the pole's mirror image.
type filter struct {
	Weighting
	poles, terms []complex128
}

// filters are the weightings of the channels, Wk and Wh.
var filters = [2]filter{filterOf(Wk()), filterOf(Wh())}

func filterOf(w Weighting) filter {
	f := filter{Weighting: w}
	f.poles, f.terms = w.residues()
	for k, p := range f.poles {
		f.terms[k] *= w.At(-p)
	}
	return f
}

// maxFilter is how many poles a weighting has at most.
const maxFilter = 4

// pairs of ends that are correlated.
const (
	frontFront = iota
	rearRear
	frontRear
	numPairs
)

// correlation is one channel's response to a white rate of change of the road
// under either wheel: the direct part, and for each pole the factor of exp(s t)
// in the correlation of two responses.
type correlation struct {
	direct [2]float64
	terms  [maxPoles + maxFilter][numPairs]complex128 // of the motion, then of the weighting
}

// expansion is all that the root-mean-square values of a bike need, at whatever
// speed.
type expansion struct {
	poles    list
	static   [2]float64
	contact  [2]float64
	channels [numChannels]correlation
}

// inputs are what a road that rises as exp(s t)/s does to the coordinates, for
// either wheel by itself.
func (s *system) inputs(at complex128) (front, rear vector) {
	for i := range s.n {
		front[i] = complex(s.axle[0][i], 0)
		rear[i] = complex(s.axle[1][i], 0)
	}
	s.solve(at, &front, &rear)
	f := (complex(s.kt[0], 0) + at*complex(s.ct[0], 0)) * inverse(at)
	r := (complex(s.kt[1], 0) + at*complex(s.ct[1], 0)) * inverse(at)
	for i := range s.n {
		front[i] *= f
		rear[i] *= r
	}
	return front, rear
}

// read is what a channel makes of the states that either wheel's road leads to,
// the road's own part of a tyre's load aside.
func (s *system) read(ch int, at complex128, front, rear *vector) (f, r complex128) {
	c := &s.channels[ch]
	f, r = c.row.dot(front), c.row.dot(rear)
	switch c.kind {
	case acceleration:
		f, r = at*at*f, at*at*r
	case tyre:
		z := -(complex(s.kt[ch], 0) + at*complex(s.ct[ch], 0))
		f, r = z*f, z*r
	}
	return f, r
}

// response is what a channel answers with when the road's rate of change is
// exp(s t), under either wheel.
func (s *system) response(ch int, at complex128, front, rear *vector) (f, r complex128) {
	f, r = s.read(ch, at, front, rear)
	if s.channels[ch].kind == tyre {
		own := (complex(s.kt[ch], 0) + at*complex(s.ct[ch], 0)) * inverse(at)
		if ch == tyreFront {
			f += own
		} else {
			r += own
		}
	}
	return f, r
}

// residue are the states beside a pole, times the distance from it.
func (s *system) residue(p *pole) (front, rear vector) {
	over := inverse(p.s * p.d)
	f := s.axle[0].dot(&p.u) * (complex(s.kt[0], 0) + p.s*complex(s.ct[0], 0)) * over
	r := s.axle[1].dot(&p.u) * (complex(s.kt[1], 0) + p.s*complex(s.ct[1], 0)) * over
	for i := range s.n {
		front[i], rear[i] = f*p.u[i], r*p.u[i]
	}
	return front, rear
}

// direct is the part of an answer that has the road's own rate of change in it:
// the tyre's damper, and what it presses at once.
func (s *system) direct() (d [numChannels][2]float64) {
	var front, rear vector
	for i := range s.n {
		front[i], rear[i] = complex(s.axle[0][i]*s.ct[0], 0), complex(s.axle[1][i]*s.ct[1], 0)
	}
	if s.ct[0] != 0 || s.ct[1] != 0 {
		mass := system{n: s.n, k: s.m}
		mass.solve(0, &front, &rear)
	}
	for ch := range d {
		c := &s.channels[ch]
		switch {
		case !c.there:
		case c.kind == tyre:
			d[ch][ch] = s.ct[ch]
		case c.kind == acceleration:
			d[ch] = [2]float64{real(c.row.dot(&front)), real(c.row.dot(&rear))}
		}
	}
	return d
}

// expand takes the answers of all channels apart. The poles are in e.
func (s *system) expand(e *expansion) {
	e.static, e.contact = s.static, s.contact
	poles := e.poles.all()
	direct := s.direct()
	for ch := range direct {
		if s.channels[ch].weight == 0 { // a weighting lets nothing through at once
			e.channels[ch].direct = direct[ch]
		}
	}
	put := func(ch, k int, cf, cr, gf, gr complex128) {
		e.channels[ch].terms[k] = [numPairs]complex128{frontFront: cf * gf, rearRear: cr * gr, frontRear: cf * gr}
	}
	for k := range poles {
		p := &poles[k]
		cf, cr := s.residue(p)
		gf, gr := s.inputs(-p.s)
		var w [3]complex128
		w[0] = 1
		for i := range filters {
			w[1+i] = filters[i].At(p.s) * filters[i].At(-p.s)
		}
		for ch := range s.channels {
			c := &s.channels[ch]
			if !c.there {
				continue
			}
			nf, nr := s.read(ch, p.s, &cf, &cr)
			vf, vr := s.response(ch, -p.s, &gf, &gr)
			put(ch, k, nf*w[c.weight], nr*w[c.weight], vf, vr)
		}
	}
	for i := range filters {
		var used bool
		for ch := range s.channels {
			used = used || s.channels[ch].there && s.channels[ch].weight == 1+i
		}
		if !used {
			continue
		}
		for k, at := range filters[i].poles {
			hf, hr := s.inputs(at)
			gf, gr := s.inputs(-at)
			w := filters[i].terms[k]
			for ch := range s.channels {
				if c := &s.channels[ch]; !c.there || c.weight != 1+i {
					continue
				}
				nf, nr := s.response(ch, at, &hf, &hr)
				vf, vr := s.response(ch, -at, &gf, &gr)
				put(ch, maxPoles+k, nf*w, nr*w, vf, vr)
			}
		}
	}
}
