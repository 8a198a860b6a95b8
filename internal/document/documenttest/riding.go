package documenttest

import (
	"fmt"

	"pgregory.net/rapid"

	"steelyard/internal/document"
)

// known draws a figure that may be, or none.
func known(t *rapid.T, s document.Span, label string) *document.Known {
	if rapid.Bool().Draw(t, "no "+label) {
		return nil
	}
	return &document.Known{
		Value: rapid.Float64Range(s.Least, s.Most).Draw(t, label), HalfWidth: rapid.Float64Range(0, s.Most-s.Least).Draw(t, label+" within"),
		Basis: rapid.SampledFrom(append(document.KnownBases, "")).Draw(t, label+" basis"),
	}
}

// stated draws a figure that may be, or 0.
func stated(t *rapid.T, s document.Span, label string) float64 {
	if rapid.Bool().Draw(t, "no "+label) {
		return 0
	}
	return rapid.Float64Range(s.Least, s.Most).Draw(t, label)
}

// ride draws what a document says of drives and roads, and leaves it out as often
// as not.
func ride(t *rapid.T, d *document.Document) {
	if rapid.Bool().Draw(t, "no ride") {
		return
	}
	pick := func(list []string, label string) string { return rapid.SampledFrom(append(list, "")).Draw(t, label) }
	d.Show.Gears = pick(document.GearUnits, "gears")
	if rapid.Bool().Draw(t, "crossed") {
		n := rapid.IntRange(0, document.MaxCrossedCogs).Draw(t, "crossed cogs")
		d.Show.CrossedCogs = &n
	}
	d.Show.Hand = &document.Hand{
		Step: stated(t, document.HandStepSpan, "step"), Lean: stated(t, document.HandLeanSpan, "lean"), Slope: stated(t, document.HandSlopeSpan, "push"),
	}
	d.Show.Road = &document.Road{
		Slope: known(t, document.ClimbSlopeSpan, "slope"), Climb: stated(t, document.ClimbSpan, "climb"), Surface: pick(document.Surfaces, "surface"),
		Wind: known(t, document.WindSpan, "wind"), Altitude: known(t, document.AltitudeSpan, "altitude"), Temperature: known(t, document.TemperatureSpan, "temperature"),
		Drag: known(t, document.DragSpan, "drag"), Rolling: known(t, document.RollingSpan, "rolling"),
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "days") {
		y := document.Day{ID: fmt.Sprint("d", i), Name: anyName().Draw(t, "day"), Notes: anyName().Draw(t, "notes"), Stretches: []document.Stretch{}}
		for range rapid.IntRange(0, 5).Draw(t, "stretches") {
			y.Stretches = append(y.Stretches, document.Stretch{
				Length:  rapid.Float64Range(document.StretchSpan.Least, document.StretchSpan.Most).Draw(t, "length"),
				Slope:   rapid.Float64Range(document.SlopeSpan.Least, document.SlopeSpan.Most).Draw(t, "slope"),
				Surface: pick(document.Surfaces, "surface"),
			})
		}
		d.Days = append(d.Days, y)
		d.Show.Day = y.ID
	}
	for i := range d.Builds {
		b := &d.Builds[i]
		b.RollOut = known(t, document.RollOutSpan, "roll-out")
		if rapid.Bool().Draw(t, "losses") {
			b.Losses = &document.DriveLosses{Efficiency: known(t, document.EfficiencySpan, "efficiency"), Power: stated(t, document.PowerSpan, "power")}
			for range rapid.IntRange(0, 3).Draw(t, "stages") {
				of := rapid.SampledFrom(document.StageLosses).Draw(t, "of")
				k := known(t, document.StageLossSpan(of), "loss")
				if k == nil {
					k = &document.Known{}
				}
				b.Losses.Stages = append(b.Losses.Stages, document.StageLoss{Of: of, Value: k.Value, HalfWidth: k.HalfWidth, Basis: k.Basis, Note: anyName().Draw(t, "note")})
			}
		}
		if rapid.Bool().Draw(t, "limits") {
			b.DriveLimits = &document.DriveLimits{
				LeastRatio: stated(t, document.LeastRatioSpan, "least ratio"), CrankTorque: stated(t, document.TorqueSpan, "crank torque"), HubTorque: stated(t, document.TorqueSpan, "hub torque"),
			}
		}
	}
	for i := range d.Riders {
		r := &d.Riders[i]
		r.Standing = &document.Spring{Frequency: known(t, document.BodyFrequencySpan, "body frequency"), Damping: known(t, document.BodyDampingSpan, "body damping")}
		r.Effort = &document.Effort{
			Power: known(t, document.PowerSpan, "power"), For: pick(document.Holds, "hold"),
			Walking: known(t, document.WalkingSpan, "walking"), Top: stated(t, document.TopSpeedSpan, "top speed"),
			Least: known(t, document.Span{Least: 5, Most: 40}, "least"), Cadence: known(t, document.Span{Least: 40, Most: 100}, "cadence"), Highest: known(t, document.Span{Least: 100, Most: 250}, "highest"),
		}
	}
}
