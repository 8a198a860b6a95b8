package conversion

import (
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Remarks tells what does not go together once the plan is carried out. Nothing
// is refused for it: a frame may have been changed, and a catalogue does not know
// every part. What goes with what is common practice, no source.
func (p *Plan) Remarks() []words.Message {
	after := p.Apply(Except{}).Build(p.build.ID)
	set := p.Set
	var told []words.Message
	tell := func(key string, pairs ...any) { told = append(told, words.Tell("change."+key, pairs...)) }

	has := parts.Meets(after)
	for _, n := range set.Needs {
		if !has[n] {
			tell("needs." + string(n))
		}
	}
	fitted := func(entries ...string) bool {
		return slices.ContainsFunc(after.Parts, func(q document.Part) bool { return slices.Contains(entries, q.Catalogue) })
	}
	ends := func(kind string, carrier document.Carrier, suffix string) bool {
		return slices.ContainsFunc(after.Parts, func(q document.Part) bool {
			return q.Kind == kind && q.Carrier == carrier && strings.Contains(q.Catalogue, suffix)
		})
	}
	kind := func(k string) bool {
		return slices.ContainsFunc(after.Parts, func(q document.Part) bool { return q.Kind == k })
	}

	switch set.Area {
	case parts.Drivetrain:
		if set.Drive == parts.Gearbox && !holdsGearbox(p.build) {
			tell("gearbox_frame")
		}
		if set.Drive != parts.Gearbox && holdsGearbox(p.build) {
			tell("plain_frame")
		}
		if set.Drive == parts.GearHub && fitted("rear-through-axle") {
			tell("hub_width")
		}
		if kind("belt") {
			tell("belt_split")
		} else if set.Drive != parts.Derailleur && !kind("tensioner") &&
			!fitted("sliding-drop-outs", "eccentric-bottom-bracket", "swingarm-aluminium-belt") {
			tell("chain_taut")
		}
	case parts.FrontWheel, parts.RearWheel:
		was := wheelOf(p.build, set.Area).BeadSeat
		if set.BeadSeat > 0 && was != set.BeadSeat {
			tell("other_size", "before", was, "after", set.BeadSeat)
		}
	case parts.Cockpit:
		if drop := fitted("bar-drop-aluminium", "bar-drop-flared", "bar-drop-carbon"); drop && fitted("shifter-right", "shifter-left", "twist-shifter", "twist-shifter-gear-hub", "twist-shifter-gearbox") {
			tell("drop_shifters")
		}
	}
	for _, end := range []struct {
		wheel, brakes document.Carrier
		station, name string
	}{{document.FrontWheel, document.ForkUpper, "front-caliper", "front"}, {document.RearWheel, document.MainFrame, "rear-caliper", "rear"}} {
		rimBrake := ends("brake", end.brakes, "rim-brake")
		discBrake := slices.ContainsFunc(after.Parts, func(q document.Part) bool { return q.Kind == "brake" && q.Station == end.station })
		braced := ends("rim", end.wheel, "-rim-brake") || ends("rim", end.wheel, "touring")
		if ends("rim", end.wheel, "") && rimBrake && !braced {
			tell("rim_for_disc." + end.name)
		}
		if discBrake && (ends("hub", end.wheel, "-rim-brake") || ends("dynamo", end.wheel, "-rim-brake")) {
			tell("hub_for_rim_brake." + end.name)
		}
	}
	return told
}
