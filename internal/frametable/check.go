package frametable

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/words"
)

const (
	// measured is how far a maker's own drawing may be off a figure that follows, mm:
	// common practice, no source.
	measured = 2
	// bearing is how far the lower headset bearing may put the fork off, mm; see
	// package geometry.
	bearing = 6
	// moves is how much of a figure another one must move to be worth telling, mm.
	moves = 2
)

// follows are the lengths of a build with its suspension at full length, mm, by key.
func follows(b *document.Build) map[string]float64 {
	full := *b
	full.Fork.Sag, full.Rear.Sag = 0, 0
	bike, _ := geometry.Pose(&full)
	if bike == nil {
		return nil
	}
	return map[string]float64{
		wheelbase: 1e3 * bike.Wheelbase, trail: 1e3 * bike.Trail, frontCentre: 1e3 * bike.FrontCentre, bbHeight: 1e3 * bike.BBHeight,
		topTube: full.Frame.Reach + full.Frame.Stack/math.Tan(full.Frame.SeatAngle*math.Pi/180),
	}
}

// check holds what the text says of a length that follows from others against what
// they give.
func (t *Table) check(b *document.Build, given map[string]known) {
	now := follows(b)
	for i := range kinds {
		k := &kinds[i]
		g, ok := given[k.id]
		if k.of != nil || !ok {
			continue
		}
		c := Check{Key: k.id, Label: k.label(), Printed: g.value}
		if now == nil {
			c.Text = words.Tell("frametable.check.none", "name", c.Label)
			t.Checks = append(t.Checks, c)
			continue
		}
		c.Follows, c.Plus = now[k.id], g.half+measured
		var ours words.Row
		for j := range kinds {
			of := &kinds[j]
			if of.of == nil {
				continue
			}
			step := 1.0
			if of.angle() {
				step = 0.1
			}
			moved := *b
			*of.of(&moved) += step
			then := follows(&moved)
			if then == nil {
				continue
			}
			slope := math.Abs(then[k.id]-now[k.id]) / step
			known, ok := given[of.id]
			if ok {
				c.Plus += slope * known.half
			} else if slope*usual(of) > moves {
				ours = append(ours, words.Tell("frametable.value", "name", of.label(), "value", words.Number(*of.of(b)), "unit", words.Tell("pose.unit."+map[bool]string{true: "degrees", false: "mm"}[of.angle()])))
			}
			if of.id == "frame.head_tube_mm" && k.id != topTube {
				c.Plus += slope * bearing
			}
		}
		c.Plus = math.Ceil(c.Plus)
		c.Agrees = math.Abs(c.Printed-c.Follows) <= c.Plus
		key := "frametable.check.off"
		switch {
		case c.Agrees:
			key = "frametable.check.agrees"
		case k.id == topTube:
			key = "frametable.check.off_tube"
		}
		c.Text = words.Tell(key, "name", words.Sentence{Of: c.Label}, "printed", words.Number(math.Round(10*c.Printed)/10), "follows", words.Number(math.Round(c.Follows)), "plus", words.Number(c.Plus))
		if len(ours) > 0 && !c.Agrees {
			c.Text = words.Tell("frametable.check.with", "text", c.Text, "list", ours)
		}
		t.Checks = append(t.Checks, c)
	}
}

// usual is how far a figure of a build may well lie off that of another: 10 mm, or a
// degree.
func usual(k *kind) float64 {
	if k.angle() {
		return 1
	}
	return 10
}
