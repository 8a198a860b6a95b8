package road

import (
	"math"
	"math/cmplx"
)

// delays are the times that a speed makes of the lengths of a bike, s.
type delays struct {
	contact [2]float64
	rear    float64 // until the rear wheel is where the front one was
}

// factors are what the terms of a correlation are multiplied by at a speed, for a
// pole s. The road under a contact of the duration τ is averaged: the
// correlation at the lag 0 is taken under a triangle of the width 2τ, and that of
// front and rear under the product of their two averages, at the lag T.
//
//	own    2 (e^x - 1 - x) / x²,  x = sτ
//	cross  e^(sT) (2/x sinh x/2)(2/y sinh y/2)
func (d *delays) factors(s complex128) (f [numPairs]complex128) {
	tail := complex(d.rear, 0)
	product := complex(1, 0)
	for i, t := range d.contact {
		x := s * complex(t, 0)
		own, half := averages(x)
		f[i] = own
		product *= half
		tail -= complex(t/2, 0)
	}
	f[frontRear] = product * cmplx.Exp(s*tail)
	return f
}

// averages are 2 (e^x - 1 - x)/x² and (e^x - 1)/x.
func averages(x complex128) (own, half complex128) {
	if size(x) < 0.02 {
		// Their series, to a part in 1e16.
		half = 1 + x/2*(1+x/3*(1+x/4*(1+x/5*(1+x/6*(1+x/7)))))
		own = 1 + x/3*(1+x/4*(1+x/5*(1+x/6*(1+x/7*(1+x/8)))))
		return own, half
	}
	inv := inverse(x)
	half = (cmplx.Exp(x) - 1) * inv
	return 2 * (half - 1) * inv, half
}

// variances are those of all channels for a road of the intensity 1.
func (e *expansion) variances(v, wheelbase float64, s *system, weights *[2]filter) (out [numChannels]float64) {
	d := delays{[2]float64{e.contact[0] / v, e.contact[1] / v}, wheelbase / v}
	var motion [maxPoles][numPairs]complex128
	poles := e.poles.all()
	for k := range poles {
		motion[k] = d.factors(poles[k].s)
	}
	var filtered [2][maxFilter][numPairs]complex128
	for i := range weights {
		for k, at := range weights[i].poles {
			filtered[i][k] = d.factors(at)
		}
	}
	real2 := func(t *correlation, k int, f *[numPairs]complex128) float64 {
		return real(t.terms[frontFront][k]*f[frontFront]) + real(t.terms[rearRear][k]*f[rearRear]) +
			2*real(t.terms[frontRear][k]*f[frontRear])
	}
	for ch := range out {
		c := &s.channels[ch]
		if !c.there {
			continue
		}
		t := &e.channels[ch]
		var sum float64
		for k := range poles {
			sum += poles[k].weight() * real2(t, k, &motion[k])
		}
		if c.weight > 0 {
			for k := range weights[c.weight-1].poles {
				sum += 2 * real2(t, maxPoles+k, &filtered[c.weight-1][k])
			}
		}
		for i, direct := range t.direct {
			if direct != 0 {
				sum += direct * direct / d.contact[i]
			}
		}
		out[ch] = max(sum, 0)
	}
	return out
}

// share is how much of the time a Gaussian value is above the limit, when its
// root mean square is rms; and how that grows with rms. Less than a thousandth of
// a millionth is never.
func share(limit, rms float64) (p, slope float64) {
	x := limit / rms
	if rms <= 0 || x > 6 {
		return 0, 0
	}
	return math.Erfc(x/math.Sqrt2) / 2, x / rms * math.Exp(-x*x/2) / math.Sqrt(2*math.Pi)
}
