package road

import (
	"math"
	"math/cmplx"
)

// averages of the road under a contact of the duration τ: sinc(ωτ/2).
func sinc(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/6
	}
	return math.Sin(x) / x
}

// answers are the responses of a channel at the frequency f, Hz, to the road's
// rate of change as either tyre feels it, the delay of the rear one included.
func (m *Model) answers(s *system, f, speed float64) (all [numChannels]complex128) {
	at := complex(0, 2*math.Pi*f)
	x, y := s.inputs(at)
	front := complex(sinc(math.Pi*f*s.contact[0]/speed), 0)
	rear := complex(sinc(math.Pi*f*s.contact[1]/speed), 0) * cmplx.Exp(-at*complex(m.frame.wheelbase/speed, 0))
	for ch := range all {
		if s.channels[ch].there {
			a, b := s.response(ch, at, &x, &y)
			all[ch] = a*front + b*rear
		}
	}
	return all
}

// gains are the squares of what the figures up to travel answer with, weighted.
func (m *Model) gains(s *system, f, speed float64) (out [TravelRear + 1]float64) {
	all := m.answers(s, f, speed)
	square := func(ch int) float64 { return real(all[ch])*real(all[ch]) + imag(all[ch])*imag(all[ch]) }
	for kind := range out {
		out[kind] = square(Kind(kind).channelOf())
	}
	wk, wh := filters[0].Gain(f), filters[1].Gain(f)
	out[SaddleWk] *= wk * wk
	out[GripsWh] = (square(gripForward) + square(gripUp)) * wh * wh
	for side := range Both {
		out[LoadFront+Kind(side)] /= s.static[side] * s.static[side]
	}
	return out
}

// Response is how much of a figure comes of a road whose height goes up and down
// by 1 m as the wheels roll over it, at each frequency, Hz, and a speed, m/s:
// root mean square over root mean square, in the figure's unit per metre. It is
// nil for a figure that the bike has not, or that is a share of time.
func (m *Model) Response(kind Kind, speed float64, frequencies []float64) []float64 {
	return m.over(kind, speed, frequencies, func(f, square float64) float64 { return 2 * math.Pi * f * math.Sqrt(square) })
}

// Spectrum is the one-sided power spectral density of a figure on a road, in the
// square of the figure's unit per Hz; 0 where the road's waves are longer than
// its spectrum holds for.
func (m *Model) Spectrum(kind Kind, speed float64, road Road, frequencies []float64) []float64 {
	q := 2 * road.intensity(speed)
	return m.over(kind, speed, frequencies, func(f, square float64) float64 {
		if f < Longest*speed {
			return 0
		}
		return q * square
	})
}

func (m *Model) over(kind Kind, speed float64, frequencies []float64, of func(f, square float64) float64) []float64 {
	if kind > TravelRear || !m.frame.there[kind.channelOf()] || !(speed > 0) {
		return nil
	}
	list := make([]float64, len(frequencies))
	for i, f := range frequencies {
		if f > 0 && !math.IsInf(f, 0) {
			list[i] = of(f, m.squares(f, speed)[kind])
		}
	}
	return list
}

// squares are gains of the bike's own numbers, found once for all the figures.
func (m *Model) squares(f, speed float64) [TravelRear + 1]float64 {
	at := [2]float64{f, speed}
	got, ok := m.answered[at]
	if !ok {
		if m.answered == nil {
			m.answered = map[[2]float64][TravelRear + 1]float64{}
		}
		got = m.gains(&m.base.system, f, speed)
		m.answered[at] = got
	}
	return got
}
