package bridge

import (
	"math"
	"slices"

	"steelyard/internal/document"
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

// weighIn answers a document and the id of a weigh-in with what comes out of it.
func (s *Session) weighIn(text, id string) string {
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	w := d.WeighIn(id)
	if w == nil {
		return s.failed(document.Problem{Severity: document.SeverityError, WeighIn: id, Message: words.Tell("bridge.no_weigh_in")})
	}
	out := weigh(d, w, s.words)
	out.Problems = s.said(out.Problems)
	return answer(out)
}

func weigh(d *document.Document, w *document.WeighIn, language *words.Words) *weighed {
	out := &weighed{
		WeighIn: w.ID, Build: w.Build, Load: w.Load, State: w.State,
		Problems: []document.Problem{}, Expected: []expected{}, Explanations: []explanation{}, Adjusted: []adjusted{},
		Scales: scalesOf(w),
	}
	out.Stand.Wheelbase, out.Stand.Radius = w.StandWithin()
	for _, p := range document.Check(d) {
		if p.WeighIn == w.ID {
			out.Problems = append(out.Problems, p)
		}
	}
	if slices.ContainsFunc(out.Problems, func(p document.Problem) bool {
		return p.Severity == document.SeverityError && (p.Field == "build" || p.Field == "load" || p.Field == "state" || p.Field == "id")
	}) {
		return out
	}
	sunk := sunken(d.Build(w.Build), w)
	for _, end := range []struct {
		field, key string
		sag        *float64
		travel     float64
	}{
		{"front_sag_mm", "bridge.sunk.front", w.FrontSag, sunk.Fork.Travel},
		{"rear_sag_mm", "bridge.sunk.rear", w.RearSag, sunk.Rear.Travel},
	} {
		if end.sag != nil && *end.sag > end.travel {
			out.Problems = append(out.Problems, document.Problem{
				Severity: document.SeverityError, WeighIn: w.ID, Build: w.Build, Field: end.field,
				Message: words.Tell(end.key, "sag", *end.sag, "travel", end.travel),
			})
			return out
		}
	}
	bike := on(d, w, sunk)
	if bike == nil {
		out.Problems = append(out.Problems, document.Problem{
			Severity: document.SeverityError, WeighIn: w.ID, Build: w.Build, Field: "build",
			Message: words.Tell("bridge.weigh.figures"),
		})
		return out
	}
	if s := bike.State(); s != w.State {
		out.Problems = append(out.Problems, document.Problem{
			Severity: document.SeverityError, WeighIn: w.ID, Build: w.Build, Load: w.Load, Field: "state",
			Message: words.Tell("bridge.weigh.state"),
		})
		return out
	}
	for _, e := range weighin.Expect(w, bike.Bike, bike.Items) {
		out.Expected = append(out.Expected, expected{e.Line, round(e.Mass.Value*milli, 1), round(e.Mass.Plus()*milli, 1)})
	}
	r, problems := weighin.Weigh(w, bike.Bike, bike.Items)
	out.Problems = append(out.Problems, problems...)
	if r != nil {
		out.tell(r, bike, d, language)
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

// sunken is the build that was weighed, with its suspension as it was then.
func sunken(build *document.Build, w *document.WeighIn) document.Build {
	b := *build
	if w.FrontSag != nil {
		b.Fork.Sag = *w.FrontSag
	}
	if w.RearSag != nil {
		b.Rear.Sag = *w.RearSag
	}
	return b
}

// on brings the bike that was weighed into the state that it was weighed in; nil
// when its figures have errors.
func on(d *document.Document, w *document.WeighIn, sunk document.Build) *report.Weighed {
	one := *d
	one.Builds = []document.Build{sunk}
	one.Show.Compare, one.Show.Loads = []string{w.Build}, []string{w.Load}
	one.Show.State, one.Show.Supplies = w.State, document.Full
	return report.Weigh(&one, nil).Sides[0]
}

func (out *weighed) tell(r *weighin.Result, bike *report.Weighed, d *document.Document, language *words.Words) {
	lines := bike.Sources()
	teller := &weighin.Teller{
		Show: d.Show, Words: language,
		Source: func(source int) string {
			if i := lines[source]; len(i) > 0 {
				return bike.Build.Parts[i[0]].Name
			}
			return ""
		},
		Station: func(name string) string { return language.Label("station." + name) },
	}
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
	out.explain(r, bike, lines, language)
	out.adjust(r, bike, lines, d)
}

// mostExplained is how many explanations of a sort are told.
const mostExplained = 10

func (out *weighed) explain(r *weighin.Result, bike *report.Weighed, lines map[int][]int, language *words.Words) {
	var masses, places []explanation
	if r.Weights != nil {
		for _, m := range r.Weights.Moves[:min(len(r.Weights.Moves), mostExplained)] {
			i := lines[m.Source]
			if len(i) == 0 {
				continue
			}
			p := &bike.Build.Parts[i[0]]
			masses = append(masses, explanation{What: "part", Part: p.ID, Name: p.Name, By: round(m.By*milli, 1), Plus: round(2*m.Then*milli, 1), Limit: m.Limit})
		}
	}
	if r.Missing != nil {
		for _, s := range r.Missing.Near {
			places = append(places, explanation{
				What: "missing", Station: s.Station, Name: language.Label("station." + s.Station),
				By: round(s.Mass.Value*milli, 1), Plus: round(s.Mass.Plus()*milli, 1), P: round(s.Fit.P, 4),
			})
		}
	}
	switch r.Verdict {
	case weighin.Agree, weighin.Contradict, weighin.NoPaper:
	case weighin.ByMissing, weighin.BySurplus:
		out.Explanations = append(append(out.Explanations, places...), masses...)
	default:
		out.Explanations = append(append(out.Explanations, masses...), places...)
	}
}

// least is a change of mass, g, that is not worth an edit.
const least = 0.5

// offered reports whether other masses are worth taking over: not where nothing
// explains the readings, and not where they contradict each other.
func offered(r *weighin.Result) bool {
	return r.Verdict != weighin.Unexplained && r.Verdict != weighin.Contradict
}

// adjust tells the masses that meet list and readings best.
func (out *weighed) adjust(r *weighin.Result, bike *report.Weighed, lines map[int][]int, d *document.Document) {
	if r.Weights == nil || !offered(r) {
		return
	}
	for _, m := range r.Weights.Moves {
		pieces := 0.0
		for _, i := range lines[m.Source] {
			pieces += bike.Pieces(i)
		}
		if !(pieces > 0) {
			continue
		}
		by := m.By * 1000 / pieces
		if math.Abs(by) < least {
			continue
		}
		for _, i := range lines[m.Source] {
			p := &bike.Build.Parts[i]
			a := adjusted{
				ID: p.ID, Name: p.Name, Basis: p.Basis, WasMass: p.Mass, WasHalfWidth: p.HalfWidth,
				Mass:      max(0, round(p.Mass+by, 1)),
				HalfWidth: max(1, round(math.Sqrt(3)*m.Then*milli/pieces, 1)),
			}
			a.List, a.Owner, a.ID = bike.Owner(i)
			if a.List == "" {
				continue
			}
			out.Adjusted = append(out.Adjusted, a)
		}
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
