package assembly

import (
	"math"
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/spelling"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Assembly is a build whose parts have been put in their places, with what it
// carries: what figures and pictures are made from.
type Assembly struct {
	Build *document.Build // with what it carries as further parts, after its own
	Bike  *geometry.Bike
	Items []mass.Item // one for each place that a part sits at: two for a pair, several for a rider; by carrier
	Lines []Line      // one for each of Build.Parts
	Count int         // how many of the lines count

	Own   int            // how many of the lines are the build's own parts
	Load  *document.Load // that it is to carry; nil for none
	Cargo *Cargo         // what it carries; nil also when the state shown does without
	Level Level          // that it is in
	Left  float64

	Whole []mass.Item // Items with everything on the bike, at full supplies
	Off   int         // lines that are not on the bike in its state

	Renamed int // how often lines have been given other sources

	lost  int // lines at unknown stations
	Spans Spans

	// What At answered last: chapters ask for the same one after the other.
	last struct {
		state
		items []mass.Item
	}
}

// What a document's grams and millimetres are divided by.
const (
	gramsPerKilogram    = 1000
	millimetresPerMetre = 1000
)

// Line is a line of the parts list, weighed and placed, in SI units.
type Line struct {
	OK         bool // false: left out
	Off        bool // left out only because it is not on the bike in this state
	First, End int  // its items are Items[First:End]

	Mass     float64  // of all pieces, kg
	MassU    float64  // standard uncertainty of Mass, kg
	Place    mass.Vec // the middle of a pair, m
	Unsprung float64  // share counted as unsprung, 0 to 1

	Pieces  float64
	Source  int // of mass
	Spot    int // source of place
	Group   uint8
	Carrier Carrier
	Level   Level // it is on the bike from here on
	Supply  Supply

	WholeFirst, WholeEnd int // its items are whole[wholeFirst:wholeEnd]
}

// Assemble puts the parts of a build in their places, and what it carries, which
// may be nil, with them; then it brings the bike into a state. Lines that have
// an error are left out; so is a part at a station that the bike does not have,
// and that problem is told here. Before is a build that was assembled before, or
// nil; it is only there to save time.
func Assemble(b *document.Build, bike *geometry.Bike, carried *Cargo, to Level, left float64, omit *Omissions, src *Sources, before *Assembly) (*Assembly, []document.Problem) {
	own, omitted := len(b.Parts), omit.of(b)
	if carried != nil {
		all := *b
		all.Parts = slices.Concat(b.Parts, carried.Lines)
		b = &all
	}
	w := &Assembly{
		Build: b, Bike: bike, Own: own, Cargo: carried,
		Items: make([]mass.Item, 0, len(b.Parts)+len(b.Parts)/4+4),
		Lines: make([]Line, len(b.Parts)),
	}
	var problems []document.Problem
	// Items lie together by carrier, so that a figure of a few carriers walks
	// along those only.
	var count [NumCarriers + 1]int
	for i := range b.Parts {
		c, ok := carrierOf(b.Parts[i].Carrier)
		if !ok || i < len(omitted) && omitted[i] {
			c = NumCarriers // left out, told by document.Check
		}
		w.Lines[i].Carrier = c
		count[c]++
	}
	rows := before.rows(b)
	order := make([]int32, len(b.Parts))
	var next [NumCarriers + 1]int
	for c := range NumCarriers {
		next[c+1] = next[c] + count[c]
	}
	for i := range w.Lines {
		c := w.Lines[i].Carrier
		order[next[c]] = int32(i)
		next[c]++
	}
	at := 0
	for c := range NumCarriers {
		for _, i := range order[at : at+count[c]] {
			l := &w.Lines[i]
			if k := int(i) - own; k >= 0 {
				l.Level, l.Supply = Loaded, carried.supply[k]
				if carried.Bag[k] < 0 {
					l.Level = Ridden
					w.seat(&b.Parts[i], l, src)
					continue
				}
			}
			like := before.line(rows, i)
			if problem := w.place(&b.Parts[i], l, src, &like); problem != nil {
				problems = append(problems, *problem)
			}
		}
		at += count[c]
		w.Spans.end[c] = len(w.Items)
	}
	w.take(min(to, w.Highest()), left)
	w.share()
	return w, problems
}

// rows gives for every line of a build the line of w with the same id, -1 for
// none, as far as both lists are in the same order: a few lines more or less do
// not matter. It is nil without w.
func (w *Assembly) rows(b *document.Build) []int32 {
	if w == nil {
		return nil
	}
	const ahead = 8 // lines that may be missing in a row
	rows := make([]int32, len(b.Parts))
	next, theirs := 0, w.Build.Parts
	for i := range b.Parts {
		rows[i] = -1
		for j := next; j < min(next+ahead, len(theirs)); j++ {
			if theirs[j].ID == b.Parts[i].ID {
				rows[i], next = int32(j), j+1
				break
			}
		}
	}
	return rows
}

// line returns the line that rows gives for line i, if it is in use.
func (w *Assembly) line(rows []int32, i int32) line {
	if rows == nil || rows[i] < 0 || !w.Lines[rows[i]].OK && !w.Lines[rows[i]].Off {
		return line{}
	}
	l := &w.Lines[rows[i]]
	return line{&w.Build.Parts[rows[i]], l.Source, l.Spot}
}

// place makes the items of a line. A pair of points splits the pieces evenly;
// its offset is from either point, y outward.
func (w *Assembly) place(p *document.Part, l *Line, src *Sources, like *line) *document.Problem {
	k, ok := spread(&p.Shape)
	pieces := float64(p.Quantity)
	kg := p.Mass / gramsPerKilogram
	if !ok || !(kg >= 0 && p.HalfWidth >= 0 && p.Within >= 0 && pieces >= 0) ||
		!units.Finite(kg*pieces) || !units.Finite(p.HalfWidth*pieces) || !units.Finite(p.Within) {
		return nil // told by document.Check
	}
	var one [1]mass.Vec
	points := one[:]
	var offset mass.Vec
	if p.At != nil {
		one[0] = metres(*p.At)
	} else {
		points = w.Bike.Stations[p.Station].Points
		if len(points) == 0 {
			w.lost++
			return unknownStation(w.Build, p, w.lost <= mostHints)
		}
		offset = metres(p.Offset)
	}
	l.Source, l.Spot = src.of(p, like)
	l.Group = groupIndex(p.Kind)
	switch {
	case l.Level == Loaded:
		l.Spot = src.inBag(p)
	case !document.OfBareBike(p.Kind, Groups[l.Group]):
		l.Level = Ready
		if p.Kind == "water" {
			l.Supply = Water
		}
	}
	u := mass.Rectangular(p.HalfWidth / gramsPerKilogram)
	placeU := mass.Alike(mass.Rectangular(p.Within / millimetresPerMetre))
	if l.Level == Loaded {
		placeU = bagWithin(p.Shape.Size)
	}
	n := float64(len(points))
	l.First = len(w.Items)
	for _, at := range points {
		o := offset
		if len(points) > 1 && at.Y < 0 {
			o.Y = -o.Y
		}
		r := at.Add(o)
		l.Place = l.Place.Add(r.Scale(1 / n))
		if pieces == 0 {
			continue
		}
		w.Items = append(w.Items, mass.Item{
			Mass: kg * pieces / n, Place: r, Spread: k,
			MassU: u * pieces / n, MassSource: l.Source,
			PlaceU: placeU, PlaceSource: l.Spot,
		})
	}
	l.End = len(w.Items)
	l.OK = true
	l.Pieces = pieces
	l.Mass, l.MassU = kg*pieces, u*pieces
	l.WholeFirst, l.WholeEnd = l.First, l.End
	w.Count++
	return nil
}

// mostHints is for how many lines of a build a station of a similar name is
// searched: the search takes time, and a list with more unknown stations has
// another fault.
const mostHints = 50

// spread returns the second moment of a part's shape per unit of mass, turned by
// its pitch; false for a negative or infinite size.
func spread(s *document.Shape) (mass.Sym, bool) {
	x, y, z := s.Size[0]/millimetresPerMetre, s.Size[1]/millimetresPerMetre, s.Size[2]/millimetresPerMetre
	var k mass.Sym
	switch s.Form {
	case document.FormPoint:
		return k, true
	case document.FormRod:
		k = mass.Rod(x)
	case document.FormRing:
		k = mass.Ring(x)
	case document.FormDisc:
		k = mass.Disc(x, y)
	case document.FormBox:
		k = mass.Box(x, y, z)
	case document.FormPair:
		k = mass.Pair(x)
	default:
		return k, false
	}
	if s.Pitch != 0 {
		k = k.PitchBy(s.Pitch * math.Pi / 180)
	}
	return k, units.Finite(k.XX + k.YY + k.ZZ + k.XZ)
}

// metres converts a place of the document.
func metres(v document.Vec3) mass.Vec {
	return mass.Vec{X: v[0] / millimetresPerMetre, Y: v[1] / millimetresPerMetre, Z: v[2] / millimetresPerMetre}
}

// unknownStation says that the bike has no such station and, with suggest, which
// one was probably meant.
func unknownStation(b *document.Build, p *document.Part, suggest bool) *document.Problem {
	name := words.ShortenName(p.Station)
	key, nearest := "assembly.station", ""
	if suggest {
		key, nearest = "assembly.station.meant", spelling.Nearest(name, geometry.StationNames)
	}
	return &document.Problem{
		Severity: document.SeverityError, Build: b.ID, Part: p.ID, Field: "station",
		Message: words.Tell(key, "part", words.ShortenName(p.Name), "build", words.ShortenName(b.Name),
			"station", words.Quoted(name), "meant", words.Quoted(nearest)),
	}
}
