package onscale

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Reading is what the scale showed of a part.
type Reading struct {
	Part  string  `json:"part"`   // its id
	Typed string  `json:"typed"`  // what the scale shows
	Unit  string  `json:"unit"`   // of a bare number, as for [units.ParseMass]
	Step  float64 `json:"step_g"` // what the scale reads to
	Tare  float64 `json:"tare_g"` // of the bowl or bag that is weighed with it; 0 for none, or for one that the scale takes off itself
	One   bool    `json:"one"`    // one piece is on the scale, where the line has several
}

// Taken is what a reading says of a part.
type Taken struct {
	Mass      float64        `json:"mass_g"` // of one piece
	HalfWidth float64        `json:"half_width_g"`
	Basis     document.Basis `json:"basis"`
	Net       float64        `json:"net_g"`  // of what was on the scale, without the tare
	Plus      float64        `json:"plus_g"` // of that
	Outside   bool           `json:"outside"`
	Was       float64        `json:"was_g"` // what was on the scale, by the list
	WasPlus   float64        `json:"was_plus_g"`
	Unusual   parts.Unusual  `json:"unusual,omitempty"` // how a piece is unlike such a part
	Usual     float64        `json:"usual_g,omitempty"` // and what would be like it
}

// mostStep is the coarsest step of a scale that parts are weighed on, g.
const mostStep = 1000

// Take says what a reading says of a part. The mass lies within ± the step of the
// scale. Less a tare it is the difference of two readings, whose errors are
// independent: ± √2 steps (JCGM 100:2008, 5.1.2). Several pieces share both evenly.
// The error is a problem of the field that it names: "typed", "step_g" or "tare_g".
func Take(p *document.Part, r *Reading) (*Taken, string, error) {
	if !(r.Step > 0 && r.Step <= mostStep) {
		return nil, "step_g", words.Tell("onscale.step", "most", mostStep)
	}
	if !(r.Tare >= 0) || !units.Finite(r.Tare) {
		return nil, "tare_g", words.Tell("onscale.tare")
	}
	gross, err := units.ParseMass(r.Typed, r.Unit)
	if err != nil {
		return nil, "typed", err
	}
	t := &Taken{Basis: document.Weighed, Net: gross - r.Tare, Plus: r.Step}
	if r.Tare > 0 {
		t.Plus = math.Round(10*math.Sqrt2*r.Step) / 10
		if t.Net <= 0 {
			return nil, "typed", words.Tell("onscale.net", "reading", words.Number(fine(gross)), "tare", words.Number(fine(r.Tare)))
		}
	}
	if t.Net <= 0 {
		return nil, "typed", words.Tell("onscale.nothing")
	}
	n := 1.0
	if !r.One && p.Quantity > 1 {
		n = float64(p.Quantity)
	}
	t.Net = fine(t.Net)
	t.Mass, t.HalfWidth = fine(t.Net/n), fine(t.Plus/n)
	t.Was, t.WasPlus = n*p.Mass, n*p.HalfWidth
	t.Outside = math.Abs(t.Net-t.Was) > t.WasPlus+t.Plus
	q := *p
	q.Mass = t.Mass
	t.Unusual, t.Usual = parts.Judge(&q)
	return t, "", nil
}

// fine takes off what is beyond any kitchen scale: all below 0.1 mg.
func fine(g float64) float64 { return math.Round(g*1e4) / 1e4 }
