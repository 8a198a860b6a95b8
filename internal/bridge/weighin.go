package bridge

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/reconcile"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/weighin"
	"steelyard/internal/words"
)

// weighed is the answer to weighIn. Figures have the keys and units of a report.
type weighed struct {
	WeighIn  string             `json:"weigh_in"`
	Build    string             `json:"build"`
	Load     string             `json:"load"`
	State    document.State     `json:"state"`
	Problems []document.Problem `json:"problems"`

	Scales []scale `json:"scales"` // those of the weigh-in, and after them those that are known by a resolution alone
	Stand  stand   `json:"stand"`  // what is stated or taken for granted of it

	Expected     []expected    `json:"expected"`            // what it should say
	Measured     *measured     `json:"measured,omitempty"`  // what the scale says
	Paper        *onPaper      `json:"paper,omitempty"`     // what the parts list says
	Agreement    *agreement    `json:"agreement,omitempty"` // whether the two agree
	Explanations []explanation `json:"explanations"`        // what would make them, best first
	Explained    string        `json:"explained"`           // that in words
	Adjusted     []adjusted    `json:"adjusted"`            // masses that meet the readings best, where anything explains these
	Block        *block        `json:"block,omitempty"`     // how high to raise a wheel
}

// scale is a scale with what is taken for granted of it.
type scale struct {
	ID          string  `json:"id"` // empty for one that is known by its resolution alone
	Name        string  `json:"name"`
	Step        float64 `json:"step_g"`
	Calibration float64 `json:"calibration_share"`
	Readings    []int   `json:"readings"` // their lines
}

// stand is what wheelbase and radii may be off by.
type stand struct {
	Wheelbase float64 `json:"wheelbase_within_mm"`
	Radius    float64 `json:"radius_within_mm"`
}

// expected is what the scale should show at a reading if the list is right.
type expected struct {
	Line int     `json:"line"`
	Mass float64 `json:"mass_g"`
	Plus float64 `json:"plus_g"`
}

type measured struct {
	Figures   []report.Figure `json:"figures"`
	HasHeight bool            `json:"has_height"`
	Check     check           `json:"check"`    // of the readings among themselves
	Readings  []residual      `json:"readings"` // what is left of each
	Limits    []limit         `json:"limits"`   // the doubt that makes most of the ± of each figure
	Text      string          `json:"text"`
}

type limit struct {
	Key   string        `json:"key"`
	Unit  string        `json:"unit"`
	Doubt weighin.Doubt `json:"doubt"`
	Share float64       `json:"share"` // of the figure's variance, 0 to 1
	Plus  float64       `json:"plus"`  // the figure's ±
	Else  float64       `json:"else"`  // and what would be left of it without this doubt
}

type check struct {
	test
	Unlikely bool    `json:"unlikely"`
	Widened  float64 `json:"widened"`
}

type test struct {
	ChiSquare float64 `json:"chi_square"`
	Freedom   int     `json:"freedom"`
	P         float64 `json:"p"`
}

type residual struct {
	Line  int     `json:"line"`
	By    float64 `json:"by_g"`
	Score float64 `json:"score"`
}

type onPaper struct {
	Figures []report.Figure `json:"figures"`
}

type agreement struct {
	test
	Agrees  bool            `json:"agrees"`
	Verdict weighin.Verdict `json:"verdict"`
	Figures []agreeing      `json:"figures"`
	Text    string          `json:"text"`
}

type agreeing struct {
	Key          string  `json:"key"`
	Unit         string  `json:"unit"`
	Paper        float64 `json:"paper"`
	PaperPlus    float64 `json:"paper_plus"`
	Measured     float64 `json:"measured"`
	MeasuredPlus float64 `json:"measured_plus"`
	Delta        float64 `json:"delta"`
	Plus         float64 `json:"plus"`
	Verdict      string  `json:"verdict"` // "agree", or measured "more" or "less"
}

type explanation struct {
	What    string  `json:"what"`           // "part": its mass is another; "missing": a mass that is not on the list, or below 0 not on the bike
	Part    string  `json:"part,omitempty"` // a line of the list, named as in a report
	Station string  `json:"station,omitempty"`
	Name    string  `json:"name"`
	By      float64 `json:"by_g"`
	Plus    float64 `json:"plus_g"`
	Limit   bool    `json:"limit,omitempty"` // as far as the half-width goes
	P       float64 `json:"p,omitempty"`     // how well a missing mass there fits, 0 to 1
}

type adjusted struct {
	List         string         `json:"list"`  // "parts", "bags", "goods" or "riders"
	Owner        string         `json:"owner"` // build or load id; nothing for a rider
	ID           string         `json:"id"`
	Name         string         `json:"name"`
	Mass         float64        `json:"mass_g"` // of one piece
	HalfWidth    float64        `json:"half_width_g"`
	Basis        document.Basis `json:"basis"`
	WasMass      float64        `json:"was_g"`
	WasHalfWidth float64        `json:"was_half_width_g"`
}

type block struct {
	Height float64 `json:"height_mm"`
	Plus   float64 `json:"plus_mm"` // within which the height of the centre is then known
	Enough bool    `json:"enough"`
}

// weighIn takes a document and the id of a weigh-in. It answers with what the
// scale says, whether the parts list agrees, and what would explain it when not:
// weighin.schema.json.
func (s *Session) weighIn(text, id string) string {
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	w := d.WeighIn(id)
	if w == nil {
		return s.failed(document.Problem{Severity: document.SeverityError, WeighIn: id, Message: words.Tell("bridge.no_weigh_in")})
	}
	out := reconciled(d, w, s.words)
	out.Problems = document.SayAll(out.Problems, s.words)
	return answer(out)
}

func reconciled(d *document.Document, w *document.WeighIn, language *words.Words) *weighed {
	out := &weighed{
		WeighIn: w.ID, Build: w.Build, Load: w.Load, State: w.State,
		Problems: []document.Problem{}, Expected: []expected{}, Explanations: []explanation{}, Adjusted: []adjusted{},
		Scales: scalesOf(w),
	}
	out.Stand.Wheelbase, out.Stand.Radius = w.StandWithin()
	r := reconcile.Of(d, w)
	out.Problems = append(out.Problems, r.Problems...)
	for _, e := range r.Expected {
		out.Expected = append(out.Expected, expected{e.Line, round(e.Mass.Value*milli, 1), round(e.Mass.Plus()*milli, 1)})
	}
	if r.Result != nil {
		out.tell(r, d, language)
	}
	return out
}

func scalesOf(w *document.WeighIn) []scale {
	scales, of := w.ScalesOf()
	out := make([]scale, len(scales))
	for i := range scales {
		s := &scales[i]
		out[i] = scale{s.ID, s.Name, s.Step, s.CalibrationWithin(), []int{}}
	}
	for line, i := range of {
		if i >= 0 {
			out[i].Readings = append(out[i].Readings, line)
		}
	}
	return out
}

func (out *weighed) tell(of *reconcile.Reconciliation, d *document.Document, language *words.Words) {
	r, teller := of.Result, of.Teller(d.Show, language)
	m := r.Measured
	out.Measured = &measured{
		Figures:   figures(m.Total, m.X, m.Z, m.HasHeight),
		HasHeight: m.HasHeight,
		Check:     check{testOf(m.Self), m.Self.Unlikely(), round(m.Widened, 3)},
		Text:      teller.Measured(r),
		Readings:  make([]residual, len(m.Left)),
		Limits:    []limit{},
	}
	for _, f := range out.Measured.Figures {
		if l := m.Limit(f.Key); l != nil {
			out.Measured.Limits = append(out.Measured.Limits, limit{f.Key, f.Unit, l.Doubt, round(l.Share, 3), f.Plus, round(l.Plus()*milli, 2)})
		}
	}
	for i, l := range m.Left {
		out.Measured.Readings[i] = residual{l.Line, round(l.By*milli, 1), round(l.Score, 2)}
	}
	if r.Block != nil {
		out.Block = &block{round(r.Block.Height*milli, 0), round(r.Block.Plus*milli, 1), r.Block.Enough}
	}
	if r.Paper == nil {
		return
	}
	out.Paper = &onPaper{figures(r.Paper.Total, r.Paper.X, r.Paper.Z, true)}
	out.Agreement = &agreement{
		test: testOf(r.Together), Agrees: r.Verdict == weighin.Agree, Verdict: r.Verdict, Text: teller.Compared(r),
	}
	for _, c := range r.Figures {
		f := agreeing{
			Key: c.Key, Unit: unitOf(c.Key),
			Paper: round(c.Paper.Value*milli, 2), PaperPlus: round(c.Paper.Plus()*milli, 2),
			Measured: round(c.Measured.Value*milli, 2), MeasuredPlus: round(c.Measured.Plus()*milli, 2),
			Delta: round(c.Difference.Value*milli, 2), Plus: round(c.Difference.Plus()*milli, 2), Verdict: "agree",
		}
		switch {
		case c.Agrees:
		case c.Difference.Value > 0:
			f.Verdict = report.More
		default:
			f.Verdict = report.Less
		}
		out.Agreement.Figures = append(out.Agreement.Figures, f)
	}
	out.Explained = teller.Explained(r)
	for _, e := range of.Explanations() {
		x := explanation{By: round(e.By*milli, 1), Plus: round(e.Plus*milli, 1), Limit: e.Limit, P: round(e.P, 4)}
		if e.Part != nil {
			x.What, x.Part, x.Name = "part", e.Part.ID, e.Part.Name
		} else {
			x.What, x.Station, x.Name = "missing", e.Station, language.Label("station."+e.Station)
		}
		out.Explanations = append(out.Explanations, x)
	}
	for _, a := range of.Adjustments() {
		out.Adjusted = append(out.Adjusted, adjusted{
			List: a.List, Owner: a.Owner, ID: a.ID, Name: a.Part.Name, Basis: a.Part.Basis,
			Mass: round(a.Mass, 1), HalfWidth: round(a.HalfWidth, 1), WasMass: a.Part.Mass, WasHalfWidth: a.Part.HalfWidth,
		})
	}
}

func testOf(t weighin.Test) test { return test{round(t.ChiSquare, 3), t.Freedom, round(t.P, 5)} }

// milli is how many of a report's grams and millimetres go into kg and m.
const milli = 1000

func unitOf(key string) string {
	if key == "total" {
		return "g"
	}
	return "mm"
}

func figures(total, x, z weighin.Value, height bool) []report.Figure {
	figure := func(key string, v weighin.Value) report.Figure {
		return report.Figure{Key: key, Unit: unitOf(key), Value: round(v.Value*milli, 2), Plus: round(v.Plus()*milli, 2)}
	}
	list := []report.Figure{figure("total", total), figure("centre_x", x)}
	if height {
		list = append(list, figure("centre_z", z))
	}
	return list
}

// round rounds to so many decimals; what is no finite number, which JSON does
// not have, becomes 0.
func round(v float64, decimals int) float64 {
	f := math.Pow10(decimals)
	r := math.Round(v*f) / f
	if !units.Finite(r) || r == 0 {
		return 0
	}
	return r
}
