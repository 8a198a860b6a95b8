package bridge

import (
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/scene"
	"steelyard/internal/scene/svg"
)

// shownBlock is the block in the drawing until there is a reading with one, m.
const shownBlock = 0.3

// weighInDrawing takes a document, the id of a weigh-in and a size with units and
// theme, JSON: the drawing of picture.schema.json. It answers with a drawing of
// how to weigh, as SVG. The bike is the weigh-in's, or the first that can be
// drawn; the block is that of its highest reading, and there is none with a
// rider.
func (s *Session) weighInDrawing(args ...string) string {
	d, problems := document.Open([]byte(argument(args, 0)))
	if d == nil {
		return s.refusal(problems)
	}
	v, err := readView(argument(args, 2))
	if err != nil {
		return s.problem("view", "bridge.view", "why", err)
	}
	shown := v.scene(s.words)
	how := scene.Weighing{Raised: "front", Height: shownBlock, Units: shown.Units, Words: shown.Words}
	var bike *geometry.Bike
	if w := d.WeighIn(argument(args, 1)); w != nil {
		if b := d.Build(w.Build); b != nil {
			sunk := w.Sunk(b)
			bike, _ = geometry.Pose(&sunk)
		}
		if w.State == document.Ridden { // nobody sits on a bike with a raised wheel
			how.Raised, how.Ridden = "", true
		}
		highest := 0.0
		for _, r := range w.Readings {
			if r.Raised != "" && r.Height > highest && !how.Ridden {
				highest = r.Height
				how.Raised, how.Height = r.Raised, r.Height/1000
			}
		}
	}
	for i := 0; bike == nil && i < len(d.Builds); i++ {
		bike, _ = geometry.Pose(&d.Builds[i])
	}
	if bike == nil {
		return s.problem("", "bridge.draw.none")
	}
	return written(scene.WeighIn(bike, how, v.Width, v.Height), v.palette(), svg.Options{})
}
