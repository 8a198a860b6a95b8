package rooms

import (
	"math"
	"slices"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/effort"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Track is where a way leads: either points of distance along the road and
// height, m, or places of latitude and longitude, degrees, and height, m; or lines
// that somebody wrote, each of a length in km, a slope in per cent and, if it has
// one, a surface. It is not kept.
type Track struct {
	Points  [][2]float64 `json:"points,omitempty"`
	Places  [][3]float64 `json:"places,omitempty"`
	Lines   string       `json:"lines,omitempty"`
	Surface string       `json:"surface,omitempty"` // of all stretches that have none of their own
}

// Stretches are those of a day that a track gives, with its heights smoothed and
// its points thinned.
type Stretches struct {
	Stretches []document.Stretch `json:"stretches"`
	Length    float64            `json:"length_m"`
	Ascent    float64            `json:"ascent_m"`
	Points    int                `json:"points"` // that were read
}

// Limits and figures of a track. Heights of a receiver jump about by some metres
// and within some hundred metres; a day of 200 stretches tells a mountain's shape
// (common practice, no source).
const (
	maxTrackText   = 16 << 20
	maxTrackPoints = 200_000
	trackWindow    = 250 // m
	trackTolerance = 4   // m
	mostOfTrack    = 200
	earthRadius    = 6371e3 // m, mean (IUGG)
)

// StretchesOf makes the stretches of a day of a track as JSON; lines may call
// surfaces as the words do.
func StretchesOf(text []byte, w *words.Words) (*Stretches, *document.Problem) {
	fail := func(key string, pairs ...any) (*Stretches, *document.Problem) {
		return nil, &document.Problem{Severity: document.SeverityError, Field: "track", Message: words.Tell(key, pairs...)}
	}
	var t Track
	if len(text) > maxTrackText {
		return fail("climb.track.many", "n", len(text), "most", maxTrackPoints)
	}
	if err := json.Unmarshal(text, &t); err != nil {
		return fail("climb.track.read", "why", words.Shorten(err.Error()))
	}
	if n := len(t.Points) + len(t.Places); n > maxTrackPoints {
		return fail("climb.track.many", "n", n, "most", maxTrackPoints)
	}
	surface := max(slices.Index(document.Surfaces, t.Surface), 0)
	if t.Lines != "" {
		list, message := written(t.Lines, surface, w)
		if message != nil {
			return fail("climb.lines", "problem", message)
		}
		return stretchesOf(list, len(list)), nil
	}
	points := make([]effort.Point, 0, len(t.Points)+len(t.Places))
	for _, p := range t.Points {
		points = append(points, effort.Point{Distance: p[0], Height: p[1]})
	}
	points = append(points, along(t.Places)...)
	out := stretchesOf(effort.Profile(points, trackWindow, trackTolerance, mostOfTrack, surface), len(points))
	if len(out.Stretches) == 0 {
		return fail("climb.track.few")
	}
	return out, nil
}

// stretchesOf tells stretches that a document may hold.
func stretchesOf(list []effort.Stretch, points int) *Stretches {
	out := &Stretches{Stretches: []document.Stretch{}, Points: points}
	for _, s := range list {
		slope := min(max(100*s.Slope, document.SlopeSpan.Least), document.SlopeSpan.Most)
		one := document.Stretch{Length: report.Decimal(s.Length, 1), Slope: report.Decimal(slope, 2), Surface: document.Surfaces[s.Surface]}
		if !document.StretchSpan.Has(one.Length) || !units.Finite(one.Slope) {
			continue
		}
		out.Stretches = append(out.Stretches, one)
		out.Length += one.Length
		out.Ascent += max(one.Length*one.Slope/100/math.Hypot(1, one.Slope/100), 0)
	}
	out.Length, out.Ascent = report.Decimal(out.Length, 1), report.Decimal(out.Ascent, 1)
	return out
}

// along is how far places lie along the way: the great circle from one to the
// next, by the haversine. What is no place is left out.
func along(places [][3]float64) []effort.Point {
	var out []effort.Point
	var before [3]float64
	distance := 0.0
	const rad = math.Pi / 180
	for _, p := range places {
		if !(math.Abs(p[0]) <= 90 && math.Abs(p[1]) <= 360) || !units.Finite(p[2]) {
			continue
		}
		if len(out) > 0 {
			a, b := math.Sin((p[0]-before[0])*rad/2), math.Sin((p[1]-before[1])*rad/2)
			h := a*a + math.Cos(p[0]*rad)*math.Cos(before[0]*rad)*b*b
			distance += 2 * earthRadius * math.Asin(math.Sqrt(min(h, 1)))
		}
		before = p
		out = append(out, effort.Point{Distance: distance, Height: p[2]})
	}
	return out
}
