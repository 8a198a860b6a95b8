package rooms

import (
	"fmt"
	"math"
	"strconv"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/effort"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// rides is who rides, as far as drives and roads ask.
type rides struct {
	effort.Rider
	power, cadence, least, highest, walking taken

	top  bool // typical
	hold string
	body *document.Rider // nil is nobody
}

// An hour's power, W (common practice, no source).
var hourPower = drive.Quantity{Value: 160, Half: 25}

// ridesOf returns what a rider holds and likes; nil is nobody in particular.
func ridesOf(body *document.Rider) *rides {
	var e document.Effort
	if body != nil && body.Effort != nil {
		e = *body.Effort
	}
	d := &effort.DefaultRider
	r := &rides{body: body, hold: "day"}
	power := d.Power
	if e.For == "hour" {
		r.hold, power = e.For, hourPower
	}
	r.power = take("power", e.Power, document.PowerSpan, 1, power)
	rpm := func(key string, k *document.Known, v, half float64) taken {
		return take(key, k, document.CadenceSpan, 1, drive.Quantity{Value: v, Half: half})
	}
	r.cadence = rpm("cadence", e.Cadence, d.Cadence, 5)
	r.least = rpm("least-cadence", e.Least, d.Least, 5)
	r.highest = rpm("highest-cadence", e.Highest, d.Most.Value, d.Most.Half)
	r.walking = take("walking", e.OnFoot(), document.WalkingSpan, 1, d.Walk)
	// Where what was said does not go together with what was not, or with itself.
	r.least.Value = min(r.least.Value, r.cadence.Value)
	r.highest.Value = max(r.highest.Value, r.cadence.Value)
	r.Rider = effort.Rider{
		Power: r.power.Quantity, Cadence: r.cadence.Value, Least: r.least.Value, Most: r.highest.Quantity, Walk: r.walking.Quantity, Top: d.Top,
	}
	if r.top = !document.TopSpeedSpan.Has(e.Top); !r.top {
		r.Top = e.Top
	}
	return r
}

// inputs tells what a rider holds and likes. Without a rider there is nobody of
// whom it could be said.
func (r *rides) inputs(label func(string) string) []Input {
	in := []Input{
		r.power.input(label, "power", "w", 1, 1).at("effort.power_w"),
		chosen(label, "power-for", r.hold, r.body == nil || r.body.Effort == nil || r.body.Effort.For == "", optionsOf(label, "hold.", document.Holds)).at("effort.power_for"),
		r.cadence.input(label, "cadence", "rpm", 1, 1).at("effort.cadence_rpm"),
		r.least.input(label, "least-cadence", "rpm", 1, 1).at("effort.least_cadence_rpm"),
		r.highest.input(label, "highest-cadence", "rpm", 1, 1).at("effort.highest_cadence_rpm"),
		r.walking.input(label, "walking", "m_s", 1, 2).at("effort.on_foot_m_s"),
		bare(label, "top-speed", "m_s", r.Top, r.top).at("effort.top_speed_m_s"),
	}
	for i := range in {
		if in[i].Key == "walking" && !in[i].Typical && r.body.Effort.Walking == nil {
			in[i].Basis = boundless
		}
		if r.body == nil {
			in[i].Field = ""
		} else {
			in[i].Rider = r.body.ID
		}
	}
	return in
}

// riderOf is who rides with a load: its rider, else the first of the document.
func riderOf(d *document.Document, l *document.Load) *document.Rider {
	if l != nil {
		if r := d.Rider(l.Rider); r != nil {
			return r
		}
	}
	if len(d.Riders) > 0 {
		return &d.Riders[0]
	}
	return nil
}

// drivetrain is the drive of a build with who drives it.
type drivetrain struct {
	build    *document.Build
	weighed  *assembly.Assembly // nil where the build could not be weighed
	rides    *rides
	problems []document.Problem

	drive  *drive.Drive // nil: it cannot be read off the parts
	all    []drive.Gear // lowest first, crossed ones among them
	used   []drive.Gear
	order  []drive.Shift
	losses drive.Losses
	told   map[string]*lossInput // by source
	names  []string              // of the sources of the losses, in order

	rollOut  drive.Figure // m; 0 is not known
	measured bool

	lines        []drive.Line   // of each gear of the order
	efficiencies []drive.Figure // likewise, once they were asked for
}

// lossInput is a quantity that a drive loses power by, as it was taken.
type lossInput struct {
	key     string
	at      *drive.Quantity
	typical bool
	note    string
	stage   int // its place among the stages of the document: behind them all where it is not among them
	said    bool
}

// drivetrainOf reads the drive off a build. Weighed is nil where it could not be.
func drivetrainOf(d *document.Document, b *document.Build, weighed *assembly.Assembly, r *rides) *drivetrain {
	t := &drivetrain{build: b, weighed: weighed, rides: r}
	t.drive, t.problems = drive.Read(b.Parts)
	for i := range t.problems {
		t.problems[i].Build = b.ID
	}
	t.roll()
	if t.drive == nil {
		return t
	}
	t.all = t.drive.Gears(drive.Crossing(crossedCogs(&d.Show)))
	t.used = drive.Used(t.all)
	t.order = drive.Order(t.used)
	t.lose(b.Losses)
	for i := range t.order {
		t.lines = append(t.lines, t.drive.Line(&t.order[i].Gear, &t.losses, r.Power.Value))
	}
	return t
}

// crossedCogs is the rule of the document.
func crossedCogs(s *document.Show) int {
	if n := s.CrossedCogs; n != nil && *n >= 0 && *n <= document.MaxCrossedCogs {
		return *n
	}
	return int(drive.DefaultCrossing)
}

// roll finds the roll-out of the rear wheel: measured, or from the tyre, which is
// pressed in under the load as far as its pressure lets it, where that is known,
// or as is usual.
func (t *drivetrain) roll() {
	if k := document.RollOutSpan.Sound(t.build.RollOut); k != nil {
		t.measured = true
		t.rollOut = drive.MeasuredRollOut(take("roll-out", k, document.RollOutSpan, 1e-3, drive.Quantity{}).Quantity)
		return
	}
	w := t.build.Wheels.Rear
	if !(w.BeadSeat > 0 && w.BeadSeat < 2000 && w.Tyre > 0 && w.Tyre < 500) {
		t.problems = append(t.problems, document.Problem{Severity: document.SeverityWarning, Build: t.build.ID, Field: "wheels.rear", Message: words.Tell("gears.no_wheel")})
		return
	}
	wheel := drive.WheelOf(w.BeadSeat, w.Tyre, fmt.Sprintf("%g-%g", w.Tyre, w.BeadSeat))
	if s := t.build.Setup; s != nil && s.Rear != nil && s.Rear.Pressure != nil && t.weighed != nil {
		bar := *s.Rear.Pressure
		load := mass.Total(t.weighed.Items, nil).Value * effort.G * (1 - mass.Centre(t.weighed.Items, nil, mass.X).Value/t.weighed.Bike.Wheelbase)
		if d := drive.Deflection(load, bar*1e5, wheel.Radius.Value, w.Tyre/2000); d > 0 && units.Finite(d) {
			wheel.Deflection = drive.Quantity{Value: d, Half: d / 4, Basis: drive.Typical, Source: wheel.Deflection.Source}
		}
	}
	t.rollOut = wheel.RollOut()
}

// lose finds what the drive loses power by: what the document says, else typical.
func (t *drivetrain) lose(known *document.DriveLosses) {
	l := drive.TypicalLosses()
	t.losses = l
	at := map[string]*drive.Quantity{
		"chain-friction": &t.losses.Chain.Friction, "chain-slack": &t.losses.Chain.Slack, "pulley-torque": &t.losses.Chain.PulleyTorque,
		"belt-share": &t.losses.Belt.Share, "belt-torque": &t.losses.Belt.Torque,
		"gearbox-mesh": &t.losses.Front.Mesh, "gearbox-meshes": &t.losses.Front.Meshes, "gearbox-torque": &t.losses.Front.Torque,
		"hub-mesh": &t.losses.Rear.Mesh, "hub-meshes": &t.losses.Rear.Meshes, "hub-torque": &t.losses.Rear.Torque, "crank-torque": &t.losses.Crank,
	}
	said := make(map[string]int) // stage by what it is of
	var others []int
	var stages []document.StageLoss
	if known != nil && len(known.Stages) <= document.MaxStageLosses {
		stages = known.Stages
	}
	for i := range stages {
		if of := stages[i].Of; of == "other-share" || of == "other-power" {
			others = append(others, i)
		} else if at[of] != nil {
			said[of] = i
		}
	}
	t.told = make(map[string]*lossInput)
	put := func(key string, q *drive.Quantity, typical bool, stage int) {
		in := &lossInput{key: key, at: q, typical: typical, stage: stage, said: stage < len(stages)}
		if in.said {
			in.note = stages[stage].Note
		}
		t.told[q.Source] = in
		t.names = append(t.names, q.Source)
	}
	for _, key := range document.StageLosses {
		q := at[key]
		if q == nil {
			continue
		}
		stage, is := said[key]
		var k *document.Known
		if is {
			k = stages[stage].Known()
		} else {
			stage = len(stages)
		}
		taken := take(key, k, document.StageLossSpan(key), 1, *q)
		*q = taken.Quantity
		put(key, q, taken.typical, stage)
	}
	t.losses.Stated = make([]drive.StatedLoss, len(others))
	for i, stage := range others {
		s := &stages[stage]
		q := take(s.Of, s.Known(), document.StageLossSpan(s.Of), 1, drive.Quantity{}).Quantity
		q.Source += " " + strconv.Itoa(i)
		at := &t.losses.Stated[i].Share
		if s.Of == "other-power" {
			at = &t.losses.Stated[i].Power
		}
		*at = q
		put(s.Of, at, false, stage)
	}
	if known == nil {
		return
	}
	if k := document.EfficiencySpan.Sound(known.Efficiency); k != nil {
		w := &drive.Whole{Efficiency: take("efficiency", k, document.EfficiencySpan, 1, drive.Quantity{}).Quantity, Power: t.rides.Power.Value}
		if document.PowerSpan.Has(known.Power) {
			w.Power = known.Power
		}
		t.losses.Whole = w
		put("efficiency", &w.Efficiency, false, len(stages))
		t.names = append(t.names, "efficiency at another power")
	}
}

// inputs tells what else may be said of a drive: the efficiency of all of it as
// somebody measured it, the roll-out, and what makers permit.
func (t *drivetrain) inputs(label func(string) string, mean drive.Figure) []Input {
	b := t.build
	in := []Input{}
	measured := func(key, unit, field string, k *document.Known, s document.Span, decimals int, value, plus float64) {
		x := take(key, k, s, 1, drive.Quantity{Value: value, Half: plus})
		i := x.input(label, key, unit, 1, decimals).at(field)
		if i.Said = string(drive.Measured); i.Typical {
			i.Basis = reckoned
		}
		in = append(in, i)
	}
	stated := func(key, unit, field string, v float64, s document.Span) {
		i := bare(label, key, unit, v, !s.Has(v)).at(field)
		if i.Typical {
			i.Value, i.Basis = 0, unstated
		}
		in = append(in, i)
	}
	var l document.DriveLosses
	if b.Losses != nil {
		l = *b.Losses
	}
	measured("efficiency", "share", "losses.efficiency", l.Efficiency, document.EfficiencySpan, 4, mean.Value, mean.Plus())
	if l.Efficiency != nil || l.Power != 0 {
		power := bare(label, "efficiency-power", "w", t.rides.Power.Value, true)
		if document.PowerSpan.Has(l.Power) {
			power = bare(label, "efficiency-power", "w", l.Power, false)
		} else {
			power.Basis = reckoned
		}
		in = append(in, power.at("losses.power_w"))
	}
	measured("roll-out", "mm", "roll_out_mm", b.RollOut, document.RollOutSpan, 1, 1000*t.rollOut.Value, 1000*t.rollOut.Plus())
	var d document.DriveLimits
	if b.DriveLimits != nil {
		d = *b.DriveLimits
	}
	stated("least-ratio", "ratio", "drive_limits.least_ratio", d.LeastRatio, document.LeastRatioSpan)
	stated("crank-limit", "n_m", "drive_limits.crank_torque_nm", d.CrankTorque, document.TorqueSpan)
	stated("hub-limit", "n_m", "drive_limits.hub_torque_nm", d.HubTorque, document.TorqueSpan)
	for i := range in {
		in[i].Build = b.ID
	}
	return in
}

// efficiency returns that of a gear of the order at the power held and the
// cadence liked, with what it owes to these.
func (t *drivetrain) efficiency(gear int) drive.Figure {
	if t.efficiencies == nil {
		t.efficiencies = make([]drive.Figure, len(t.lines))
		for i := range t.efficiencies {
			t.efficiencies[i] = t.efficiencyOf(&t.lines[i], t.rides.Cadence)
		}
	}
	return t.efficiencies[gear]
}

func (t *drivetrain) efficiencyOf(l *drive.Line, cadence float64) drive.Figure {
	p := t.rides.Power.Value
	f := l.Efficiency(p, cadence)
	if f.Budget != nil && f.Value > 0 {
		w := 2 * math.Pi / 60
		t.rides.cadence.Charge(f.Budget, -l.Torque*w/p)
		t.rides.power.Charge(f.Budget, (l.Torque*w*cadence+l.Power)/(p*p))
	}
	return f
}

// mean is the efficiency over the gears of the order, each with its weight; none
// is all alike.
func (t *drivetrain) mean(weights []float64) drive.Figure {
	if len(t.lines) > 0 {
		t.efficiency(0)
	}
	return drive.Mean(t.efficiencies, weights)
}

// development is that of a gear, with what it owes, m.
func (t *drivetrain) development(g *drive.Gear) drive.Figure {
	f := drive.Figure{Value: g.Development(t.rollOut.Value), Budget: new(mass.Budget)}
	if t.rollOut.Budget != nil {
		f.Budget.Add(t.rollOut.Budget, g.Ratio)
	}
	return f
}

// limits warns where a drive goes beyond what makers permit. Torques are those of
// a rider who stands on one pedal with all the weight, kg; that is what drives
// break of (common practice, no source).
func (t *drivetrain) limits(rider float64) {
	l := t.build.DriveLimits
	if l == nil || t.drive == nil || len(t.used) == 0 {
		return
	}
	warn := func(field, key string, pairs ...any) {
		t.problems = append(t.problems, document.Problem{Severity: document.SeverityWarning, Build: t.build.ID, Field: "drive_limits." + field, Message: words.Tell(key, pairs...)})
	}
	ratio := float64(t.drive.Rings[0]) / float64(t.drive.Cogs[0])
	if document.LeastRatioSpan.Has(l.LeastRatio) && ratio < l.LeastRatio-1e-9 {
		warn("least_ratio", "gears.limit.ratio", "ratio", words.Fixed(ratio, 2), "limit", words.Number(l.LeastRatio), "ring", t.drive.Rings[0], "cog", t.drive.Cogs[0])
	}
	crank := rider * effort.G * t.build.Cranks.Length / 1000
	if !(crank > 0) || !units.Finite(crank) {
		return
	}
	if document.TorqueSpan.Has(l.CrankTorque) && crank > l.CrankTorque {
		warn("crank_torque_nm", "gears.limit.crank", "torque", words.Fixed(crank, 0), "limit", words.Number(l.CrankTorque))
	}
	into := ratio // turns of the cog for one of the cranks
	if len(t.drive.Front) > 0 {
		into *= t.drive.Front[0].Ratio
	}
	if hub := crank / into; document.TorqueSpan.Has(l.HubTorque) && hub > l.HubTorque {
		warn("hub_torque_nm", "gears.limit.hub", "torque", words.Fixed(hub, 0), "limit", words.Number(l.HubTorque))
	}
}

// mass is how heavy who rides is, kg: that of nobody in particular without
// one.
func (r *rides) mass() float64 {
	if r.body == nil || !(r.body.Mass >= document.MinBody && r.body.Mass <= document.MaxBody) {
		return typicalRider.Value
	}
	return (r.body.Mass + max(r.body.Clothing, 0) + max(r.body.Shoes, 0)) / 1000
}

// typicalRider rides where nobody does, kg, clothed (common practice, no source).
var typicalRider = drive.Quantity{Value: 78, Half: 15, Basis: drive.Typical, Source: "rider"}

// percent tells a share in per cent.
func percent(share float64) float64 { return report.Decimal(100*share, 2) }
