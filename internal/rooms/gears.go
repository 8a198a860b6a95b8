package rooms

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/mass"
	"steelyard/internal/order"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// Gears are the gears of all builds.
type Gears struct {
	Unit       string        `json:"unit"`         // how the document wants a gear shown, one of document.GearUnits
	Crossed    int           `json:"crossed_cogs"` // the rule by which gears are left out
	Builds     []GearedBuild `json:"builds"`
	Difference []Change      `json:"difference"` // of the second build compared minus the first; empty without a second
	First      []Measure     `json:"first"`      // what to measure first for the difference in efficiency, in points of it
	Words      string        `json:"words,omitempty"`
	Caution    string        `json:"caution"`
}

// GearedBuild is the drive of one build.
type GearedBuild struct {
	Build    string             `json:"build"`
	Name     string             `json:"name"`
	OK       bool               `json:"ok"` // false: the drive cannot be read off the parts, see Problems
	Problems []document.Problem `json:"problems"`
	Typical  []string           `json:"typical"` // ids of parts whose gearing is that of their entry of the catalogue

	Power           float64 `json:"power_w"` // that efficiencies are told at
	Cadence         float64 `json:"cadence_rpm"`
	RollOut         float64 `json:"roll_out_mm"` // 0: not known
	RollOutPlus     float64 `json:"roll_out_plus"`
	RollOutMeasured bool    `json:"roll_out_measured"`

	Range          float64 `json:"range_percent"`
	Distinct       int     `json:"distinct"`  // gears that differ by more than 2 %
	Positions      int     `json:"positions"` // gears that the rule leaves
	MeanStep       float64 `json:"mean_step_percent"`
	LeastStep      float64 `json:"least_step_percent"`
	MostStep       float64 `json:"most_step_percent"`
	Uneven         float64 `json:"uneven_percent"`
	DoubleShifts   int     `json:"double_shifts"`
	Efficiency     float64 `json:"efficiency"` // mean
	EfficiencyPlus float64 `json:"efficiency_plus"`
	Over           string  `json:"efficiency_over"` // "day": the gears that the day uses, by the work put into each; "all": all alike

	Gears    []Gear        `json:"gears"` // all, the lowest first
	Overlaps []GearOverlap `json:"overlaps"`
	Figures  []Figure      `json:"figures"`
	Losses   []Loss        `json:"losses"` // over the same gears as the efficiency, the largest first
	Inputs   []Input       `json:"inputs"` // what may be said of the whole drive
	First    []Measure     `json:"first"`  // what to measure first for the efficiency, in points of it
	Words    string        `json:"words,omitempty"`
}

// Gear is one way through a drive.
type Gear struct {
	Ring            int      `json:"ring"` // teeth
	Cog             int      `json:"cog"`
	Front           int      `json:"front"` // gear of the gearbox at the cranks, from 1, lowest first; 0 without one
	Rear            int      `json:"rear"`  // gear of the hub, likewise
	Ratio           float64  `json:"ratio"`
	Development     float64  `json:"development_mm"`
	DevelopmentPlus float64  `json:"development_plus"`
	Inches          float64  `json:"inches"`
	Speed           float64  `json:"speed_m_s"` // at the cadence liked
	SpeedPlus       float64  `json:"speed_plus"`
	Efficiency      float64  `json:"efficiency"`
	EfficiencyPlus  float64  `json:"efficiency_plus"`
	Crossed         bool     `json:"crossed"`                // left out by the rule
	Shift           int      `json:"shift"`                  // its number in the order of shifting, from 1; 0: as good as another, or left out
	Step            *float64 `json:"step_percent,omitempty"` // to the next in that order; none of the highest
	Double          bool     `json:"double"`                 // more than one lever moves to the next
}

// GearOverlap is what two neighbouring rings have in common.
type GearOverlap struct {
	Small   int     `json:"small"` // teeth
	Large   int     `json:"large"`
	Percent float64 `json:"percent"` // highest gear on the small ring over the lowest on the large one, less 100; below 0 is a gap
	Gears   int     `json:"gears"`   // on either ring that both reach
}

// Loss is a quantity that a drive loses power by.
type Loss struct {
	Key     string  `json:"key"`
	Label   string  `json:"label"`
	Unit    string  `json:"unit"`
	Value   float64 `json:"value"`
	Half    float64 `json:"half_width"`
	Basis   string  `json:"basis"`
	Typical bool    `json:"typical"`
	Note    string  `json:"note,omitempty"`
	Field   string  `json:"field"`      // where in the build it belongs, as a problem names it
	Said    string  `json:"said_basis"` // with which one begins that somebody says
	Percent float64 `json:"percent"`    // of the power that is lost by it
	Plus    float64 `json:"percent_plus"`
}

// Gears tells the gears of all builds of the document.
func (r *Rides) Gears() *Gears {
	e := r.of
	w, show := e.Words(), &e.Document.Show
	label := func(key string) string { return w.Label("gears." + key) }
	out := &Gears{Unit: document.GearUnits[0], Crossed: crossedCogs(show), Builds: []GearedBuild{}, Difference: []Change{}, First: []Measure{}, Caution: label("caution")}
	if show.Gears == document.GearUnits[1] {
		out.Unit = show.Gears
	}
	tolds := make(map[string][]told)
	means := make(map[string]drive.Figure)
	trains := make(map[string]*drivetrain)
	for i := range e.Document.Builds {
		t := r.build(i)
		g, list, mean := t.tell(w, label, t.weights())
		out.Builds = append(out.Builds, g)
		tolds[g.Build], means[g.Build], trains[g.Build] = list, mean, t.drivetrain
	}
	if s := e.Report.Sides; len(s) == 2 && s[0].Build != s[1].Build && tolds[s[0].Build] != nil && tolds[s[1].Build] != nil {
		a, b := s[0].Build, s[1].Build
		out.Difference = changes(e, tolds[a], tolds[b], label)
		gap := means[b].Minus(means[a])
		out.First = first(gap, append(append([]string{trains[a].rides.power.Source, trains[a].rides.cadence.Source}, trains[a].names...), trains[b].names...), label, 100, 2)
		out.Words = gearWords(w, e.SideName(0), e.SideName(1), out.Difference)
	}
	return out
}

// weights are the work that the day puts into each gear of the order; nil is no day,
// or none that is pedalled.
func (r *driven) weights() []float64 {
	if r.today == nil || r.course == nil {
		return nil
	}
	_, result := r.ridden()
	for _, x := range result.Work {
		if x > 0 {
			return result.Work
		}
	}
	return nil
}

// tell tells a drive, and returns the figures by which builds are set against each
// other and the mean efficiency.
func (t *drivetrain) tell(w *words.Words, label func(string) string, weights []float64) (GearedBuild, []told, drive.Figure) {
	g := GearedBuild{
		Build: t.build.ID, Name: calledBuild(t.build), OK: t.drive != nil, Typical: []string{}, Problems: document.SayAll(t.problems, w),
		Power: report.Decimal(t.rides.Power.Value, 1), Cadence: report.Decimal(t.rides.Cadence, 1),
		RollOut: report.Decimal(1000*t.rollOut.Value, 1), RollOutPlus: report.Decimal(1000*t.rollOut.Plus(), 1), RollOutMeasured: t.measured,
		Over: "all", Gears: []Gear{}, Overlaps: []GearOverlap{}, Figures: []Figure{}, Losses: []Loss{}, Inputs: []Input{}, First: []Measure{},
	}
	if t.drive == nil {
		return g, nil, drive.Figure{}
	}
	g.Typical = append(g.Typical, t.drive.Typical...)
	if weights != nil {
		g.Over = "day"
	}
	t.gears(&g)
	span := drive.SpanOf(t.used)
	g.Range, g.Distinct, g.Positions = report.Decimal(100*span.Range, 2), span.Distinct, span.Positions
	g.MeanStep, g.LeastStep, g.MostStep, g.Uneven, g.DoubleShifts = percent(span.Mean), percent(span.Least), percent(span.Most), percent(span.Uneven), span.Doubles
	for _, o := range span.Overlaps {
		g.Overlaps = append(g.Overlaps, GearOverlap{o.Small, o.Large, percent(o.Ratio - 1), o.Gears})
	}
	mean := t.mean(weights)
	g.Efficiency, g.EfficiencyPlus = report.Decimal(mean.Value, 5), report.Decimal(mean.Plus(), 5)
	g.Losses = t.lossLines(label, weights, mean)
	g.Inputs = t.inputs(label, mean)
	g.First = first(mean, append([]string{t.rides.power.Source, t.rides.cadence.Source}, t.names...), label, 100, 2)

	list := t.figures(span, mean)
	for i := range list {
		g.Figures = append(g.Figures, list[i].figure(label))
	}
	g.Words = buildGearWords(w, &g)
	return g, list, mean
}

// figures are those by which drives are set against each other.
func (t *drivetrain) figures(span drive.Span, mean drive.Figure) []told {
	var list []told
	exact := func(key, unit string, factor float64, decimals int, v float64) {
		list = append(list, told{key: key, unit: unit, factor: factor, decimals: decimals, value: v})
	}
	exact("range", "percent", 100, 1, span.Range)
	exact("distinct", "ratio", 1, 0, float64(span.Distinct))
	exact("mean_step", "percent", 100, 1, span.Mean)
	exact("least_step", "percent", 100, 1, span.Least)
	exact("most_step", "percent", 100, 1, span.Most)
	exact("uneven", "percent", 100, 1, span.Uneven)
	exact("double_shifts", "ratio", 1, 0, float64(span.Doubles))
	if n := len(t.used); n > 0 && t.rollOut.Value > 0 {
		for _, at := range []struct {
			key, speed string
			g          *drive.Gear
		}{{"lowest", "lowest_speed", &t.used[0]}, {"highest", "highest_speed", &t.used[n-1]}} {
			d := t.development(at.g)
			list = append(list, told{at.key, "mm", 1e3, 0, d.Value, of(d)})
			v := t.speed(at.g)
			list = append(list, told{at.speed, "m_s", 1, 2, v.Value, of(v)})
		}
	}
	return append(list, told{"efficiency", "percent", 100, 2, mean.Value, of(mean)})
}

// speed is that of a gear at the cadence liked, m/s.
func (t *drivetrain) speed(g *drive.Gear) drive.Figure {
	d := t.development(g)
	v := drive.Figure{Value: d.Value * t.rides.Cadence / 60, Budget: new(mass.Budget)}
	v.Budget.Add(d.Budget, t.rides.Cadence/60)
	t.rides.cadence.Charge(v.Budget, d.Value/60)
	return v
}

// gears tells every gear.
func (t *drivetrain) gears(g *GearedBuild) {
	next := 0
	plus := t.rollOut.Plus()
	cadence := t.rides.Cadence
	// A speed's ± is that of the roll-out and of the cadence: two sources of which
	// neither moves with the gear.
	relative := 0.0
	if len(t.used) > 0 && t.rollOut.Value > 0 {
		v := t.speed(&t.used[0])
		relative = v.Plus() / v.Value
	}
	for i := range t.all {
		x := &t.all[i]
		one := Gear{
			Ring: x.Ring, Cog: x.Cog, Front: x.Front + 1, Rear: x.Rear + 1, Ratio: report.Decimal(x.Ratio, 5), Crossed: x.Crossed,
			Development: report.Decimal(1000*x.Development(t.rollOut.Value), 1), DevelopmentPlus: report.Decimal(1000*x.Ratio*plus, 1),
			Inches: report.Decimal(x.Inches(t.rollOut.Value), 2), Speed: report.Decimal(x.Speed(t.rollOut.Value, cadence), 4),
			SpeedPlus: report.Decimal(x.Speed(t.rollOut.Value, cadence)*relative, 4),
		}
		var f drive.Figure
		if next < len(t.order) && *x == t.order[next].Gear {
			s := &t.order[next]
			if next++; next < len(t.order) {
				step := percent(s.Step)
				one.Step = &step
			}
			one.Shift, one.Double = next, s.Double
			f = t.efficiency(next - 1)
		} else {
			line := t.drive.Line(x, &t.losses, t.rides.Power.Value)
			f = t.efficiencyOf(&line, cadence)
		}
		one.Efficiency, one.EfficiencyPlus = report.Decimal(f.Value, 5), report.Decimal(f.Plus(), 5)
		g.Gears = append(g.Gears, one)
	}
}

// lossUnits are those of the quantities that are no plain numbers; a share is shown
// in per cent.
var lossUnits = map[string]string{
	"belt-share": "share", "gearbox-mesh": "share", "hub-mesh": "share", "other-share": "share", "efficiency": "share",
	"chain-slack": "n", "pulley-torque": "n_m", "belt-torque": "n_m", "gearbox-torque": "n_m", "hub-torque": "n_m", "crank-torque": "n_m", "other-power": "w",
}

// lossLines tells what the power is lost by, over the gears with their weights:
// one quantity after the other is taken away, and what that saves is its loss, so
// that all add up. Of two that are multiplied, such as a share and how many pairs
// of gears lose it, the first has the loss and the second its doubt.
func (t *drivetrain) lossLines(label func(string) string, weights []float64, mean drive.Figure) []Loss {
	p := t.rides.Power.Value
	average := func() float64 {
		sum, total := 0.0, 0.0
		for i := range t.order {
			weight := 1.0
			if weights != nil {
				weight = weights[i]
			}
			if weight <= 0 {
				continue
			}
			l := t.drive.Plain(&t.order[i].Gear, &t.losses, p)
			sum += weight * max(l.Share-(l.Torque*t.rides.Cadence*2*math.Pi/60+l.Power)/p, 0)
			total += weight
		}
		return sum / total
	}
	// The slack span loses by the chain's friction too, so it goes first.
	names := slices.Clone(t.names)
	order.Stable(names, func(a, b string) int {
		first := func(name string) int {
			if sourceKey(name) == "chain-slack" {
				return 0
			}
			return 1
		}
		return cmp.Compare(first(a), first(b))
	})
	whole := t.losses.Whole
	aside := make(map[*drive.Quantity]drive.Quantity)
	out := []Loss{}
	left := mean.Value
	for _, name := range names {
		in := t.told[name]
		if in == nil {
			continue
		}
		was, lost := *in.at, 0.0
		if in.key == "efficiency" {
			lost = 1 - mean.Value
		} else if whole == nil && t.concerns(in.key) {
			aside[in.at], *in.at = was, drive.Quantity{}
			with := average()
			lost, left = with-left, with
		}
		l := Loss{Key: in.key, Label: label("in." + in.key), Unit: "ratio", Value: was.Value, Half: was.Half, Basis: string(was.Basis), Typical: in.typical, Note: in.note, Percent: percent(lost), Said: string(drive.Guessed)}
		if l.Field = "losses.stages." + strconv.Itoa(in.stage); in.key == "efficiency" {
			l.Field, l.Said = "losses.efficiency", string(drive.Measured)
		}
		if u := lossUnits[in.key]; u != "" {
			l.Unit = u
		}
		if mean.Budget != nil {
			l.Plus = percent(mass.HalfWidth(math.Abs(mean.Budget.Named(name))))
		}
		if l.Percent != 0 || l.Plus != 0 || in.said {
			out = append(out, l)
		}
	}
	for at, was := range aside {
		*at = was
	}
	order.Stable(out, func(a, b Loss) int { return cmp.Compare(b.Percent, a.Percent) })
	return out
}

// concerns reports whether a quantity may cost this drive anything.
func (t *drivetrain) concerns(key string) bool {
	switch stage, _, _ := strings.Cut(key, "-"); stage {
	case "gearbox":
		return len(t.drive.Front) > 0
	case "hub":
		return len(t.drive.Rear) > 0
	case "belt":
		return t.drive.Belt
	case "pulley":
		return !t.drive.Belt && t.drive.Pulleys > 0
	}
	return true
}

// calledBuild is the name of a build, or its id where it has none.
func calledBuild(b *document.Build) string {
	return words.Shorten(report.BuildName(b))
}

// buildGearWords says in a paragraph what the gears of a build are.
func buildGearWords(w *words.Words, g *GearedBuild) string {
	number := numbers(w)
	var list []string
	list = append(list, w.Say("gears.words.span", "n", strconv.Itoa(g.Distinct), "range", number(g.Range, 0), "step", number(g.MeanStep, 1)))
	if g.Distinct > 2 && g.MostStep > 1.5*g.MeanStep {
		list = append(list, w.Say("gears.words.uneven", "least", number(g.LeastStep, 0), "most", number(g.MostStep, 0)))
	}
	if g.DoubleShifts > 0 {
		list = append(list, w.Say("gears.words.doubles", "n", strconv.Itoa(g.DoubleShifts)))
	}
	list = append(list, w.Say("gears.words.efficiency."+g.Over, "efficiency", number(100*g.Efficiency, 1), "plus", number(100*g.EfficiencyPlus, 1), "power", number(g.Power, 0)))
	return strings.Join(list, " ")
}

// gearWords says what of two drives differs, and what is open.
func gearWords(w *words.Words, a, b string, list []Change) string {
	plain := numbers(w)
	number := func(v float64, decimals int) string { return plain(math.Abs(v), decimals) }
	var out []string
	for _, c := range list {
		decimals := 0
		switch c.Key {
		case "range":
		case "mean_step", "efficiency":
			decimals = 1
		default:
			continue
		}
		if c.Verdict == report.Same {
			continue
		}
		key := "gears.words." + c.Key + "." + c.Verdict
		out = append(out, w.Say(key, "a", a, "b", b, "by", number(c.Delta, decimals), "plus", number(c.Plus, decimals)))
	}
	if len(out) == 0 {
		return w.Say("gears.words.same", "a", a, "b", b)
	}
	return strings.Join(out, " ")
}
