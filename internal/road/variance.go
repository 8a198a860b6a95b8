package road

import (
	"math"
	"math/cmplx"
)

// factors are what the terms of a correlation are multiplied by at a speed, for a
// pole s, and how these move with s and with the durations of both contacts. The
// road under a contact of the duration τ is averaged: the correlation at the lag 0
// is taken under a triangle of the width 2τ, and that of front and rear under the
// product of their two averages, at the lag T.
//
//	own    2 (e^x - 1 - x) / x²,  x = sτ
//	cross  e^(sT) (2/x sinh x/2)(2/y sinh y/2)
type factors struct {
	of, byPole [numPairs]complex128
	byContact  [2][numPairs]complex128
}

// pass is a bike at a speed: its durations, s, and the factors of all poles.
type pass struct {
	contact  [2]float64
	rear     float64 // until the rear wheel is where the front one was
	motion   [maxPoles]factors
	filtered [len(filters)][maxFilter]factors
}

// at finds the factors for a pole.
func (p *pass) at(s complex128) (f factors) {
	tail := p.rear
	var half, grows [2]complex128
	for i, t := range p.contact {
		a := averages(s * complex(t, 0))
		f.of[i], f.byPole[i], f.byContact[i][i] = a.own, a.ownGrows*complex(t, 0), a.ownGrows*s
		half[i], grows[i] = a.half, a.halfGrows
		tail -= t / 2
	}
	e := cmplx.Exp(s * complex(tail, 0))
	cross := e * half[0] * half[1]
	f.of[frontRear] = cross
	f.byPole[frontRear] = complex(tail, 0)*cross + e*(grows[0]*half[1]*complex(p.contact[0], 0)+half[0]*grows[1]*complex(p.contact[1], 0))
	f.byContact[0][frontRear] = s * (e*grows[0]*half[1] - cross/2)
	f.byContact[1][frontRear] = s * (e*half[0]*grows[1] - cross/2)
	return f
}

// average is 2 (e^x - 1 - x)/x² and (e^x - 1)/x, and their slopes.
type average struct{ own, ownGrows, half, halfGrows complex128 }

func averages(x complex128) average {
	if size(x) < 0.02 {
		// Their series, to a part in 1e16; of the slopes to one in 1e14.
		return average{
			own:       1 + x/3*(1+x/4*(1+x/5*(1+x/6*(1+x/7*(1+x/8))))),
			ownGrows:  1.0/3 + x/6*(1+x*3/10*(1+x*4/18*(1+x*5/28*(1+x*6/40)))),
			half:      1 + x/2*(1+x/3*(1+x/4*(1+x/5*(1+x/6*(1+x/7))))),
			halfGrows: 1.0/2 + x/3*(1+x*3/8*(1+x*4/15*(1+x*5/24*(1+x*6/35)))),
		}
	}
	inv, e := inverse(x), cmplx.Exp(x)
	var a average
	a.half = (e - 1) * inv
	a.halfGrows = (e - a.half) * inv
	a.own = 2 * (a.half - 1) * inv
	a.ownGrows = (2*a.halfGrows - a.own) * inv
	return a
}

// pass is the bike of an expansion at a speed, m/s.
func (e *expansion) pass(speed, wheelbase float64) *pass {
	p := &pass{contact: [2]float64{e.contact[0] / speed, e.contact[1] / speed}, rear: wheelbase / speed}
	poles := e.poles.all()
	for k := range poles {
		p.motion[k] = p.at(poles[k].s)
	}
	for i := range filters {
		for k, at := range filters[i].poles {
			p.filtered[i][k] = p.at(at)
		}
	}
	return p
}

// dot is the real part of the sum of a term's pairs times their factors: front and
// rear counts twice, as rear and front.
func dot(t, f *[numPairs]complex128) float64 {
	own := real(t[0])*real(f[0]) - imag(t[0])*imag(f[0]) + real(t[1])*real(f[1]) - imag(t[1])*imag(f[1])
	return own + 2*(real(t[2])*real(f[2])-imag(t[2])*imag(f[2]))
}

// variances are those of all channels for a road of the intensity 1.
func (e *expansion) variances(s *system, p *pass) (out [numChannels]float64) {
	poles := e.poles.all()
	for ch := range out {
		c := &s.channels[ch]
		if !c.there {
			continue
		}
		t := &e.channels[ch]
		var sum float64
		for k := range poles {
			sum += poles[k].weight() * dot(&t.terms[k], &p.motion[k].of)
		}
		if c.weight > 0 {
			for k := range filters[c.weight-1].poles {
				sum += 2 * dot(&t.terms[maxPoles+k], &p.filtered[c.weight-1][k].of)
			}
		}
		for i, direct := range t.direct {
			if direct != 0 {
				sum += direct * direct / p.contact[i]
			}
		}
		out[ch] = max(sum, 0)
	}
	return out
}

// changes are the slopes of the variances with each number that moves them, from
// those of the terms, poles and contacts: out[i][ch].
func (m *Model) changes(speed float64, p *pass, out [][numChannels]float64) {
	e, s := &m.base.expansion, &m.base.system
	poles := e.poles.all()
	for ch := range numChannels {
		c := &s.channels[ch]
		if !c.there {
			continue
		}
		t := &e.channels[ch]
		var byPole [maxPoles]complex128
		var byContact [2]float64
		add := func(term *[numPairs]complex128, f *factors, weight float64) {
			for i := range byContact {
				byContact[i] += weight * dot(term, &f.byContact[i])
			}
		}
		for k := range poles {
			w, f := poles[k].weight(), &p.motion[k]
			term := &t.terms[k]
			byPole[k] = complex(w, 0) * (term[frontFront]*f.byPole[frontFront] + term[rearRear]*f.byPole[rearRear] + 2*term[frontRear]*f.byPole[frontRear])
			add(term, f, w)
		}
		var filtered []factors
		if c.weight > 0 {
			filtered = p.filtered[c.weight-1][:len(filters[c.weight-1].poles)]
			for k := range filtered {
				add(&t.terms[maxPoles+k], &filtered[k], 2)
			}
		}
		for i, direct := range t.direct {
			if direct != 0 {
				byContact[i] -= direct * direct / (p.contact[i] * p.contact[i])
			}
		}
		for i := range m.moved {
			v := &m.moved[i]
			terms := v.terms[ch]
			sum := byContact[0]*v.contact[0]/speed + byContact[1]*v.contact[1]/speed
			for k := range poles {
				d, b := v.poles[k], byPole[k]
				sum += poles[k].weight()*dot(&terms[k], &p.motion[k].of) + real(d)*real(b) - imag(d)*imag(b)
			}
			for k := range filtered {
				sum += 2 * dot(&terms[len(poles)+k], &filtered[k].of)
			}
			for i, direct := range t.direct {
				if direct != 0 {
					sum += 2 * direct * v.direct[ch][i] / p.contact[i]
				}
			}
			out[i][ch] = sum
		}
	}
}

// share is how much of the time a Gaussian value is above the limit, when its
// root mean square is rms; and how that grows with each of the two. Less than a
// thousandth of a millionth is never.
func share(limit, rms float64) (p, byLimit, byRMS float64) {
	x := limit / rms
	if rms <= 0 || x > 6 {
		return 0, 0, 0
	}
	density := math.Exp(-x*x/2) / math.Sqrt(2*math.Pi) / rms
	return math.Erfc(x/math.Sqrt2) / 2, -density, x * density
}
