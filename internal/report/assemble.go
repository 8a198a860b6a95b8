package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Weighed is a build whose parts have been put in their places: what figures
// and pictures are made from.
type Weighed struct {
	Build *document.Build // with what it carries as further parts, after its own
	Bike  *geometry.Bike
	Items []mass.Item // one for each place that a part sits at: two for a pair, several for a rider; by carrier
	Lines []Line      // one for each of Build.Parts
	Count int         // how many of the lines count

	own   int            // how many of the lines are the build's own parts
	load  *document.Load // that it is to carry; nil for none
	cargo *cargo         // what it carries; nil also when the state shown does without
	level level          // that it is in
	left  float64

	whole []mass.Item // Items with everything on the bike, at full supplies
	off   int         // lines that are not on the bike in its state

	lost    int // lines at unknown stations
	spans   spans
	figures figures
	byGroup [][]int32 // lines by group, once they are needed: see groups
}

// Line is a line of the parts list, weighed and placed, in SI units.
type Line struct {
	OK         bool // false: left out
	Off        bool // left out only because it is not on the bike in this state
	First, End int  // its items are Items[First:End]

	Mass     float64  // of all pieces, kg
	MassU    float64  // standard uncertainty of Mass, kg
	Place    mass.Vec // the middle of a pair, m
	Unsprung float64  // share counted as unsprung, 0 to 1

	pieces  float64
	source  int // of mass
	spot    int // source of place
	group   uint8
	carrier carrier
	level   level // it is on the bike from here on
	supply  supply

	wholeFirst, wholeEnd int // its items are whole[wholeFirst:wholeEnd]
}

// sources gives small numbers to the sources of doubt of all builds of a
// document, so that what two builds share cancels in their difference.
type sources struct {
	mass  map[parts.Source]int
	first []line       // the first line of each source of mass
	spots map[spot]int // of further lines of the same source; most have none
	bags  map[bagSpot]int
	count int       // spots so far
	piece []float64 // standard uncertainty of one piece, kg, by source of mass
}

// line is a line of a parts list with the numbers it was given.
type line struct {
	part         *document.Part
	source, spot int
}

// spot is what makes two lines misplaced together: pieces of one type at one
// place, wherever its station really is on the bike.
type spot struct {
	source  int
	station string
	offset  document.Vec3
	within  float64
	at      document.Vec3
	placed  bool // by at
}

// room makes room for the lines of a document: builds that are compared have
// most of them in common.
func (s *sources) room(d *document.Document) {
	all, most := 0, 0
	for i := range d.Builds {
		n := len(d.Builds[i].Parts)
		all += n
		most = max(most, n)
	}
	n := most + (all-most)/8
	if s.mass == nil {
		s.mass = make(map[parts.Source]int, n)
	}
	s.first, s.piece = slices.Grow(s.first, n), slices.Grow(s.piece, n)
}

// reset forgets all sources, and keeps the memory of a document of usual size.
func (s *sources) reset() {
	const usual = 1000 // sources
	if len(s.first) > usual {
		*s = sources{}
		return
	}
	clear(s.mass)
	clear(s.first)
	clear(s.spots)
	clear(s.bags)
	*s = sources{mass: s.mass, first: s.first[:0], spots: s.spots, bags: s.bags, piece: s.piece[:0]}
}

// of returns the numbers of the sources of a part's mass and of its place. Like
// is a line that may well be of the same type, as the same one of another build,
// or empty; it is only there to save looking further.
//
// Whatever its basis, a mass lies within ± half-width, nowhere more likely
// than elsewhere; of a weighed part the half-width is the scale's resolution.
func (s *sources) of(p *document.Part, like *line) (source, place int) {
	key := parts.SourceKey(p)
	if like.part != nil && key == parts.SourceKey(like.part) {
		if samePlace(p, like.part) {
			return like.source, like.spot
		}
		return like.source, s.place(p, like.source)
	}
	source, known := s.mass[key]
	if !known {
		source = len(s.first)
		s.mass[key] = source
		s.first = append(s.first, line{p, source, s.count})
		s.piece = append(s.piece, mass.Rectangular(p.HalfWidth/gram.perSI))
		s.count++
		return source, s.count - 1
	}
	return source, s.place(p, source)
}

// place returns the number of the place of a part of a source that has been
// seen before.
func (s *sources) place(p *document.Part, source int) int {
	if first := &s.first[source]; samePlace(p, first.part) {
		return first.spot
	}
	key := spot{source: source, station: p.Station, offset: p.Offset, within: p.Within}
	if p.At != nil {
		key.station, key.offset, key.at, key.placed = "", document.Vec3{}, *p.At, true
	}
	n, ok := s.spots[key]
	if !ok {
		if s.spots == nil {
			s.spots = make(map[spot]int)
		}
		n = s.count
		s.spots[key] = n
		s.count++
	}
	return n
}

// samePlace reports whether two parts are said to sit at the same place, and
// are placed equally well.
func samePlace(a, b *document.Part) bool {
	if a.Within != b.Within || (a.At == nil) != (b.At == nil) {
		return false
	}
	if a.At != nil {
		return *a.At == *b.At
	}
	return a.Station == b.Station && a.Offset == b.Offset
}

// assemble puts the parts of a build in their places, and what it carries, which
// may be nil, with them; then it brings the bike into a state. Lines that have
// an error are left out; so is a part at a station that the bike does not have,
// and that problem is told here. Before is a build that was assembled before, or
// nil; it is only there to save time.
func assemble(b *document.Build, bike *geometry.Bike, carried *cargo, to level, left float64, omit *omissions, src *sources, before *Weighed) (*Weighed, []document.Problem) {
	own, omitted := len(b.Parts), omit.of(b)
	if carried != nil {
		all := *b
		all.Parts = slices.Concat(b.Parts, carried.lines)
		b = &all
	}
	w := &Weighed{
		Build: b, Bike: bike, own: own, cargo: carried,
		Items: make([]mass.Item, 0, len(b.Parts)+len(b.Parts)/4+4),
		Lines: make([]Line, len(b.Parts)),
	}
	var problems []document.Problem
	// Items lie together by carrier, so that a figure of a few carriers walks
	// along those only.
	var count [numCarriers + 1]int
	for i := range b.Parts {
		c, ok := carrierOf(b.Parts[i].Carrier)
		if !ok || i < len(omitted) && omitted[i] {
			c = numCarriers // left out, told by document.Check
		}
		w.Lines[i].carrier = c
		count[c]++
	}
	rows := before.rows(b)
	order := make([]int32, len(b.Parts))
	var next [numCarriers + 1]int
	for c := range numCarriers {
		next[c+1] = next[c] + count[c]
	}
	for i := range w.Lines {
		c := w.Lines[i].carrier
		order[next[c]] = int32(i)
		next[c]++
	}
	at := 0
	for c := range numCarriers {
		for _, i := range order[at : at+count[c]] {
			l := &w.Lines[i]
			if k := int(i) - own; k >= 0 {
				l.level, l.supply = loaded, carried.supply[k]
				if carried.bag[k] < 0 {
					l.level = ridden
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
		w.spans.end[c] = len(w.Items)
	}
	w.take(min(to, w.highest()), left)
	w.share()
	return w, problems
}

// rows gives for every line of a build the line of w with the same id, -1 for
// none, as far as both lists are in the same order: a few lines more or less do
// not matter. It is nil without w.
func (w *Weighed) rows(b *document.Build) []int32 {
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
func (w *Weighed) line(rows []int32, i int32) line {
	if rows == nil || rows[i] < 0 || !w.Lines[rows[i]].OK && !w.Lines[rows[i]].Off {
		return line{}
	}
	l := &w.Lines[rows[i]]
	return line{&w.Build.Parts[rows[i]], l.source, l.spot}
}

// place makes the items of a line. A pair of points splits the pieces evenly;
// its offset is from either point, y outward.
func (w *Weighed) place(p *document.Part, l *Line, src *sources, like *line) *document.Problem {
	k, ok := spread(&p.Shape)
	pieces := float64(p.Quantity)
	kg := p.Mass / gram.perSI
	if !ok || !(kg >= 0 && p.HalfWidth >= 0 && p.Within >= 0 && pieces >= 0) ||
		!finite(kg*pieces) || !finite(p.HalfWidth*pieces) || !finite(p.Within) {
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
	l.source, l.spot = src.of(p, like)
	l.group = groupIndex(p.Kind)
	switch {
	case l.level == loaded:
		l.spot = src.inBag(p)
	case !document.OfBareBike(p.Kind, groups[l.group]):
		l.level = ready
		if p.Kind == "water" {
			l.supply = water
		}
	}
	u := src.piece[l.source]
	placeU := mass.Alike(mass.Rectangular(p.Within / millimetre.perSI))
	if l.level == loaded {
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
			MassU: u * pieces / n, MassSource: l.source,
			PlaceU: placeU, PlaceSource: l.spot,
		})
	}
	l.End = len(w.Items)
	l.OK = true
	l.pieces = pieces
	l.Mass, l.MassU = kg*pieces, u*pieces
	l.wholeFirst, l.wholeEnd = l.First, l.End
	w.Count++
	return nil
}

// mostHints is for how many lines of a build the station that was meant is
// searched for: the search takes time, and a list with more unknown stations
// has another fault.
const mostHints = 50

// spread returns the second moment of a part's shape per unit of mass, turned
// by its pitch. A negative or unreal size has none.
func spread(s *document.Shape) (mass.Sym, bool) {
	x, y, z := s.Size[0]/millimetre.perSI, s.Size[1]/millimetre.perSI, s.Size[2]/millimetre.perSI
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
		k = k.PitchBy(s.Pitch / degree.perSI)
	}
	return k, finite(k.XX + k.YY + k.ZZ + k.XZ)
}

// metres converts a place of the document.
func metres(v document.Vec3) mass.Vec {
	return mass.Vec{X: v[0] / millimetre.perSI, Y: v[1] / millimetre.perSI, Z: v[2] / millimetre.perSI}
}

// inMillimetres converts a place for the report.
func inMillimetres(v mass.Vec) document.Vec3 {
	return document.Vec3{millimetre.of(v.X), millimetre.of(v.Y), millimetre.of(v.Z)}
}

// unknownStation says that the bike has no such station, and when asked which
// one may have been meant.
func unknownStation(b *document.Build, p *document.Part, suggest bool) *document.Problem {
	name := shorten(p.Station)
	hint := "."
	if suggest {
		hint = fmt.Sprintf("; did you mean %q?", nearest(name, geometry.StationNames))
	}
	return &document.Problem{
		Severity: document.SeverityError, Build: b.ID, Part: p.ID, Field: "station",
		Message: words.Plain(fmt.Sprintf("Part “%s” of build “%s”: there is no station %q on this bike%s The part is left out.", shorten(p.Name), shorten(b.Name), name, hint)),
	}
}

// shorten cuts a text of the user's to what a sentence can bear.
func shorten(s string) string {
	const most = 80
	if len(s) <= most {
		return s
	}
	n := 0
	for i := range s {
		if n == most {
			return s[:i] + "…"
		}
		n++
	}
	return s
}

// nearest returns the name that takes the fewest changes of a letter to reach
// from s (Levenshtein's distance), the first of several.
func nearest(s string, names []string) string {
	s = strings.ToLower(strings.TrimSpace(s))
	best, least := "", math.MaxInt
	row := make([]int, 0, 32)
	for _, name := range names {
		if d := distance(s, name, row); d < least {
			best, least = name, d
		}
	}
	return best
}

// distance is Levenshtein's, by letter; row is memory to use.
func distance(a, b string, row []int) int {
	row = row[:0]
	for j := 0; j <= len(b); j++ {
		row = append(row, j)
	}
	i := 0
	for _, r := range a {
		i++
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if rune(b[j-1]) == r {
				cost = 0
			}
			next := min(row[j]+1, row[j-1]+1, diagonal+cost)
			diagonal, row[j] = row[j], next
		}
	}
	return row[len(b)]
}
