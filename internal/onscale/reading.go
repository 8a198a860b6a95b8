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
	Part  string   `json:"part"`   // its id
	With  []string `json:"with"`   // ids of the parts that lie on the scale with it
	Typed string   `json:"typed"`  // what the scale shows
	Unit  string   `json:"unit"`   // of a bare number, as for [units.ParseMass]
	Step  float64  `json:"step_g"` // what the scale reads to
	Tare  float64  `json:"tare_g"` // of the bowl or bag that is weighed with it; 0 for none, or for one that the scale takes off itself
	One   bool     `json:"one"`    // one piece is on the scale, where the line has several
}

// Taken is what a reading says of a part.
type Taken struct {
	Shares  []Share        `json:"shares"` // of all that lay on the scale, the part that was asked for first
	Basis   document.Basis `json:"basis"`
	Net     float64        `json:"net_g"`  // of what was on the scale, without the tare
	Plus    float64        `json:"plus_g"` // of that
	Outside bool           `json:"outside"`
	Was     float64        `json:"was_g"` // what was on the scale, by the list
	WasPlus float64        `json:"was_plus_g"`
	Unusual parts.Unusual  `json:"unusual,omitempty"` // how a piece is unlike such a part
	Usual   float64        `json:"usual_g,omitempty"` // and what would be like it
}

// Share is what a reading says of one part. Masses are of one piece.
type Share struct {
	Part      string          `json:"part"`
	Mass      float64         `json:"mass_g"`
	HalfWidth float64         `json:"half_width_g"`
	Joint     *document.Joint `json:"joint,omitempty"` // where it lay on the scale with others
}

// mostStep is the coarsest step of a scale that parts are weighed on, g.
const mostStep = 1000

// Take says what a reading says of the parts on the scale, those of r in their
// order; joint is an id for it where they are several. The sum lies within ± the step
// of the scale. Less a tare it is the difference of two readings, whose errors are
// independent: ± √2 steps (JCGM 100:2008, 5.1.2). Pieces and parts share both in
// proportion to the masses that the list gives them: the error stays one, and how the
// masses are divided is as well known as their proportion was. The error is a problem
// of the field that it names: "typed", "step_g", "tare_g" or "with".
func Take(on []*document.Part, r *Reading, joint string) (*Taken, string, error) {
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
	t.Net = fine(t.Net)
	for i, p := range on {
		n := pieces(p, r)
		t.Was, t.WasPlus = t.Was+n*p.Mass, t.WasPlus+n*p.HalfWidth
		if len(on) > 1 && !(p.Mass > 0) {
			return nil, "with", words.Tell("onscale.unshared", "part", words.ShortenName(p.Name))
		}
		for _, q := range on[:i] {
			if p == q {
				return nil, "with", words.Tell("onscale.twice", "part", words.ShortenName(p.Name))
			}
		}
	}
	for _, p := range on {
		s := Share{Part: p.ID}
		if len(on) == 1 {
			n := pieces(p, r)
			s.Mass, s.HalfWidth = fine(t.Net/n), fine(t.Plus/n)
		} else {
			s.Mass, s.HalfWidth = fine(t.Net*p.Mass/t.Was), fine(t.Plus*p.Mass/t.Was)
			s.Joint = &document.Joint{ID: joint, Mass: s.Mass}
		}
		t.Shares = append(t.Shares, s)
	}
	t.Outside = math.Abs(t.Net-t.Was) > t.WasPlus+t.Plus
	q := *on[0]
	q.Mass = t.Shares[0].Mass
	t.Unusual, t.Usual = parts.Judge(&q)
	return t, "", nil
}

// pieces returns how many of a part lie on the scale.
func pieces(p *document.Part, r *Reading) float64 {
	if r.One && len(r.With) == 0 {
		return 1
	}
	return float64(max(p.Quantity, 1))
}

// fine takes off what is beyond any kitchen scale: all below 0.1 mg.
func fine(g float64) float64 { return math.Round(g*1e4) / 1e4 }
