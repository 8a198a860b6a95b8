package rooms

import (
	"fmt"
	"math"
	"strings"

	"steelyard/internal/clearance"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

const (
	bottleHalf   = 0.037 // half a bottle's diameter, m; common practice, no source
	bottleWithin = 0.003 // of its faces, m
)

// inFrame is something in the main triangle, at a station.
type inFrame struct {
	clearance.Solid
	station string
}

// tube is the tube that something at the station is fixed to, empty for none.
func (in *inFrame) tube() string {
	switch in.station {
	case "bottle-seat-tube":
		return "seat-tube"
	case "bottle-down-tube", "bottle-under":
		return "down-tube"
	}
	return ""
}

// along is a bottle in line with its tube, its longest side along it.
func (in *inFrame) along(b *geometry.Bike) clearance.Solid {
	s, end := in.Solid, b.HeadBottom
	if in.tube() == "seat-tube" {
		end = b.SeatTop
	}
	if s.Half.Z > s.Half.X {
		s.Half.X, s.Half.Z = s.Half.Z, s.Half.X
	}
	d := end.Sub(b.BottomBracket)
	s.Pitch = math.Atan2(d.Z, d.X)
	return s
}

// outline is that of a bottle as it is, and of a bag as far as the tubes let it.
func (in *inFrame) outline(tubes []clearance.Side) []clearance.Side {
	if in.station == "frame-bag" {
		return clearance.Outline(in.Solid, tubes)
	}
	return clearance.Outline(in.Solid, nil)
}

// fits tells how much room is left for it. A bottle keeps its shape, and stays inside
// of the other tubes; a frame bag is sewn to the tubes, so it must not be longer or
// higher than the room between them.
func (in *inFrame) fits(tubes, room []clearance.Side) (key string, g clearance.Gap, along string, ok bool) {
	if in.station != "frame-bag" {
		g, along, ok = clearance.Inside(tubes, in.Solid, in.tube(), frameWithin)
		return "tube", g, along, ok
	}
	long, high := clearance.Extent(room)
	key, g = "long", clearance.Gap{ID: in.ID, Value: long - 2*in.Half.X, Plus: bagPlus(in.Size)}
	if v := high - 2*in.Half.Z; v < g.Value {
		key, g.Value = "high", v
	}
	return key, g, "frame", len(room) > 0
}

// bagPlus is half the expanded interval of how long or high the room in the main
// triangle is, with what is held against it known to within; m.
func bagPlus(within float64) float64 {
	variance, sum := 0.0, 0.0
	for _, half := range [...]float64{frameWithin, clearance.TubeWithin, clearance.TubeWithin, within} {
		u := mass.Rectangular(half)
		variance += u * u
		sum += u
	}
	return mass.Expanded(variance, sum)
}

// edgePlus is likewise how far an edge of the outline may lie off.
func edgePlus() float64 {
	a, b := mass.Rectangular(frameWithin), mass.Rectangular(clearance.TubeWithin)
	return mass.Expanded(a*a+b*b, a+b)
}

// FrameBag is the largest frame bag that a main triangle takes.
type FrameBag struct {
	Long float64 `json:"long_mm"`
	High float64 `json:"high_mm"`
	Plus float64 `json:"plus"` // of both, mm
	Text string  `json:"text"` // where its edges are, and how sure that is
}

// bagOf is the largest frame bag of a room, nil for none.
func bagOf(room []clearance.Side, w *words.Words) *FrameBag {
	if len(room) == 0 {
		return nil
	}
	long, high := clearance.Extent(room)
	key := "framebag.between"
	for i := range room {
		if room[i].Along == "shock" {
			key = "framebag.shock"
		}
	}
	return &FrameBag{
		Long: report.Decimal(1e3*long, 1), High: report.Decimal(1e3*high, 1), Plus: report.Decimal(1e3*bagPlus(0), 1),
		Text: words.Tell(key, "plus", words.Number(math.Ceil(1e3*edgePlus()))).In(w),
	}
}

const (
	margin  = 15.0 // of the sheet, mm
	letter  = 4.5  // height of its letters, mm
	leading = 6.5
	check   = 100.0 // mm
	widest  = 200.0 // of what is written on it, mm
)

// FrameBagSVG is the outline of the largest frame bag of a build at its true size, a
// millimetre to a millimetre, to cut cardboard by: with the tubes along its edges,
// what the ± is in words, and a line of 100 mm to check the print by. It fails where
// the frame cannot be posed or leaves no room.
func FrameBagSVG(b *document.Build, w *words.Words) (string, error) {
	bike, problems := geometry.Pose(b)
	if bike == nil {
		for _, p := range problems {
			if p.Severity == document.SeverityError {
				return "", p.Message
			}
		}
	}
	room := clearance.Triangle(bike)
	if len(room) == 0 {
		return "", words.Tell("framebag.none", "build", words.Quote(b.Name))
	}
	left, top := math.Inf(1), math.Inf(-1)
	for i := range room {
		left, top = min(left, room[i].From.X), max(top, room[i].From.Z)
	}
	long, high := clearance.Extent(room)
	x := func(v mass.Vec) float64 { return margin + 1e3*(v.X-left) }
	y := func(v mass.Vec) float64 { return margin + 1e3*(top-v.Z) }
	told := []words.Message{
		words.Tell("framebag.title", "build", words.Quote(b.Name)),
		words.Tell("framebag.plus", "plus", words.Number(math.Ceil(1e3*edgePlus())), "frame", words.Number(1e3*frameWithin), "tube", words.Number(1e3*clearance.TubeWithin)),
		words.Tell("framebag.tubes"), words.Tell("framebag.leave"), words.Tell("framebag.print"),
	}
	wide := max(2*margin+1e3*long, 2*margin+widest)
	foot := 2*margin + 1e3*high
	tall := foot + float64(len(told)+1)*leading + margin

	var s strings.Builder
	fmt.Fprintf(&s, `<svg xmlns="http://www.w3.org/2000/svg" width="%.1fmm" height="%.1fmm" viewBox="0 0 %.1f %.1f" font-family="sans-serif" font-size="%.1f">`, wide, tall, wide, tall, letter)
	fmt.Fprintf(&s, `<title>%s</title><rect width="100%%" height="100%%" fill="#fff"/><polygon fill="none" stroke="#000" stroke-width="0.3" points="`, plain(told[0].In(w)))
	for i := range room {
		fmt.Fprintf(&s, "%.2f,%.2f ", x(room[i].From), y(room[i].From))
	}
	s.WriteString(`"/>`)
	for i := range room {
		side := &room[i]
		d := side.To.Sub(side.From)
		label := fmt.Sprintf("%s %.0f mm", w.Label("station."+side.Along), 1e3*d.Norm())
		if 1e3*d.Norm() < letter*0.7*float64(len(label)) {
			continue
		}
		at := side.From.Lerp(side.To, 0.5)
		turn := -math.Atan2(d.Z, d.X) * 180 / math.Pi
		in := letter * 1.6 // below the line, which is inside where it goes to the right
		if turn > 90 || turn <= -90 {
			turn, in = turn-math.Copysign(180, turn), -letter*0.9
		}
		fmt.Fprintf(&s, `<text transform="translate(%.2f %.2f) rotate(%.2f)" y="%.2f" text-anchor="middle">%s</text>`, x(at), y(at), turn, in, plain(label))
	}
	for i, m := range told {
		foot += leading
		fmt.Fprintf(&s, `<text x="%.1f" y="%.1f"%s>%s</text>`, margin, foot, map[bool]string{true: ` font-weight="bold"`}[i == 0], plain(m.In(w)))
	}
	foot += leading
	fmt.Fprintf(&s, `<path stroke="#000" stroke-width="0.3" d="M%.1f %.1fh%.0fM%.1f %.1fv4M%.1f %.1fv4"/></svg>`, margin, foot, check, margin, foot-2, margin+check, foot-2)
	return s.String(), nil
}

// plain is a text as XML has it, without what XML cannot hold.
func plain(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xfffe || r == 0xffff {
			return -1
		}
		return r
	}, text)
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(text)
}
