package reconcile

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/weighin"
)

// Explanation is what would make list and readings agree: another mass of a line,
// or a mass at a station that is on only one of list and bike.
type Explanation struct {
	Part    *document.Part // nil for a mass at a station
	Station string         // empty for a line's
	By      float64        // kg; below 0 at a station for what is on the list, but not on the bike
	Plus    float64        // kg, of By
	Limit   bool           // as far as the line's half-width goes
	P       float64        // how well a mass at the station fits, 0 to 1
}

// mostExplained is how many lines are told as explanations.
const mostExplained = 10

// Explanations returns what explains the readings, best first.
func (r *Reconciliation) Explanations() []Explanation {
	var masses, stations []Explanation
	if w := r.Result.Weights; w != nil {
		for _, m := range w.Moves[:min(len(w.Moves), mostExplained)] {
			if p := r.part(m.Source); p != nil {
				masses = append(masses, Explanation{Part: p, By: m.By, Plus: 2 * m.Then, Limit: m.Limit})
			}
		}
	}
	if m := r.Result.Missing; m != nil {
		for _, s := range m.Near {
			stations = append(stations, Explanation{Station: s.Station, By: s.Mass.Value, Plus: s.Mass.Plus(), P: s.Fit.P})
		}
	}
	switch r.Result.Verdict {
	case weighin.Agree, weighin.Contradict, weighin.NoPaper:
		return nil
	case weighin.ByMissing, weighin.BySurplus:
		return append(stations, masses...)
	}
	return append(masses, stations...)
}

// Adjustment is a mass of a line of the document that meets list and readings
// best.
type Adjustment struct {
	List      string         // "parts", "bags", "goods" or "riders"
	Owner     string         // id of build or load; empty for a rider
	ID        string         // of the line
	Part      *document.Part // the line as it is on the bike, with the mass before
	Mass      float64        // g, of one piece
	HalfWidth float64        // g, likewise; 1 at least
}

// leastAdjusted is a change of mass, g, that is worth an edit.
const leastAdjusted = 0.5

// Adjustments returns the masses that are worth taking over: none where nothing
// explains the readings, and none where these contradict each other.
func (r *Reconciliation) Adjustments() []Adjustment {
	if r.Result.Weights == nil || r.Result.Verdict == weighin.Unexplained || r.Result.Verdict == weighin.Contradict {
		return nil
	}
	var list []Adjustment
	for _, m := range r.Result.Weights.Moves {
		// Lines of one source are off in proportion to their half-widths: evenly by
		// the piece, or each by its share of a reading of several parts.
		all := 0.0
		for _, i := range r.lines[m.Source] {
			all += r.Bike.Pieces(i) * r.Bike.Build.Parts[i].HalfWidth
		}
		if !(all > 0) {
			continue
		}
		for _, i := range r.lines[m.Source] {
			p := &r.Bike.Build.Parts[i]
			share := 1000 * p.HalfWidth / all
			by := m.By * share
			if math.Abs(by) < leastAdjusted {
				continue
			}
			a := Adjustment{
				Part: p, Mass: max(0, p.Mass+by),
				HalfWidth: max(1, math.Sqrt(3)*m.Then*share), // of a rectangle with this standard uncertainty
			}
			if a.List, a.Owner, a.ID = r.Bike.Owner(i); a.List != "" {
				list = append(list, a)
			}
		}
	}
	return list
}
