package partslist

import (
	"slices"
	"strconv"
	"strings"

	"steelyard/internal/parts"
	"steelyard/internal/spelling"
)

// EndRow is a row of something that a bike has at each end, where the list does
// not say which end is meant. Its pieces go one to each end, as two parts of one
// type, which share one error; spokes by the wheel. CSVOptions.Ends changes it.
type EndRow struct {
	Line   int    `json:"line"`
	Name   string `json:"name"`
	Pieces int    `json:"pieces"`
	Front  int    `json:"front"` // pieces that go there
	Rear   int    `json:"rear"`
	Choice string `json:"choice"` // EndEach, EndFront or EndRear
	Each   bool   `json:"each"`   // EndEach is possible
}

// Where the pieces of an EndRow go.
const (
	EndEach  = "each"
	EndFront = "front"
	EndRear  = "rear"
)

// endNames are the ends of the bike, as in line.at.
var endNames = [2]string{EndFront, EndRear}

// mostSpokes is the most spokes that are taken for those of one wheel when the
// list does not say how many a wheel has (common practice, no source).
const mostSpokes = 40

// findEnds sends the pieces of what a bike has at each end to the ends. For a
// single piece the end is open too: of two such rows one goes to each end, and a
// single row goes where nothing else of its sort is.
func (r *csvReader) findEnds(lines []line) {
	// sort is what is known of a sort of thing.
	type sort struct {
		taken [2]bool // the ends that the list says or that are settled
		open  int     // rows that are open and not settled yet
	}
	var open []int
	holes := r.holes(lines)
	sorts := make(map[string]*sort)
	named := func(key string) *sort {
		if sorts[key] == nil {
			sorts[key] = new(sort)
		}
		return sorts[key]
	}
	atEnds := func(s *sort, end string) { s.taken[slices.Index(endNames[:], end)] = true }
	for i := range lines {
		l := &lines[i]
		if !l.why.IsZero() || l.entry == nil || l.sum && !slices.Contains(r.opt.Sums, l.line) {
			continue
		}
		end := parts.EntryEnd(l.entry)
		switch {
		case l.kind == "gear-hub":
			atEnds(named(endSortOfHubs), EndRear)
		case l.kind == "dynamo" && end == EndFront:
			atEnds(named(endSortOfHubs), EndFront)
		case !parts.EndKinds[l.kind] || end == "":
		case l.told || r.textCell(l.row, "station") != "" || r.cell(l.row, "offset_x") != "" || parts.EndOf(l.words) != "":
			atEnds(named(endSort(l)), end)
		default:
			l.pair = r.isPair(l)
			if l.pair {
				l.pieces, l.grams = 2, l.grams/2
			}
			if l.pieces > 0 {
				open = append(open, i)
				named(endSort(l)).open++
			}
		}
	}
	for _, i := range open {
		l := &lines[i]
		sort := named(endSort(l))
		sort.open--
		row := EndRow{Line: l.line, Name: l.name, Pieces: l.pieces, Each: l.pieces > 1}
		switch wanted := r.opt.Ends[l.line]; {
		case wanted == EndFront || wanted == EndRear || wanted == EndEach && row.Each:
			row.Choice = wanted
		case row.Each && !(l.kind == "spokes" && l.pieces > 2 && l.pieces <= mostSpokes && l.pieces != holes[0]+holes[1]):
			row.Choice = EndEach
		default:
			switch {
			case sort.taken[0] != sort.taken[1]:
				row.Choice = EndFront
				if sort.taken[0] {
					row.Choice = EndRear
				}
			case sort.open > 0:
				row.Choice = EndFront // the first of two
			default:
				row.Choice = parts.EntryEnd(l.entry)
			}
		}
		switch row.Choice {
		case EndEach:
			l.at = [2]int{l.pieces / 2, l.pieces - l.pieces/2}
			if l.kind == "spokes" && holes[0]+holes[1] == l.pieces {
				l.at = holes
			}
		case EndFront:
			l.at[0] = l.pieces
		case EndRear:
			l.at[1] = l.pieces
		}
		for e, n := range l.at {
			if n > 0 && parts.AtEnd(l.entry, l.words, endNames[e]) == nil {
				l.at = [2]int{} // there is no such thing at that end
			}
		}
		if l.at == [2]int{} {
			continue
		}
		for e, n := range l.at {
			sort.taken[e] = sort.taken[e] || n > 0
		}
		row.Front, row.Rear = l.at[0], l.at[1]
		r.result.Ends = append(r.result.Ends, row)
	}
}

// endSortOfHubs is the sort of front and rear hubs; gear hubs and dynamo hubs
// are among them.
const endSortOfHubs = "hub"

// endSort returns the sort of thing of which a bike has one at each end: the
// kind, and what the entry is called before the first comma, so that a caliper
// is not the other end's adapter.
func endSort(l *line) string {
	if l.kind == endSortOfHubs {
		return endSortOfHubs
	}
	thing, _, _ := strings.Cut(l.entry.Name, ",")
	words := slices.DeleteFunc(spelling.Words(thing), func(w string) bool { return w == EndFront || w == EndRear })
	return l.kind + " " + strings.Join(words, " ")
}

// isPair reports whether the one mass of a row is that of a piece at each end:
// its name says "pair" or both ends, or is in the plural.
func (r *csvReader) isPair(l *line) bool {
	if l.pieces != 1 {
		return false
	}
	if slices.Contains(l.words, "pair") || slices.Contains(l.words, EndFront) && slices.Contains(l.words, EndRear) {
		return true
	}
	if l.kind == "spokes" || l.kind == "sealant" || l.kind == "rim-tape" {
		return false // these are sets and plurals for one wheel too
	}
	if slices.Contains(l.words, "set") {
		return true
	}
	return slices.ContainsFunc(l.words, func(w string) bool { return parts.IsPlural(w, l.kind) })
}

// shareOfPair returns what the piece at an end weighs when a line has one mass
// for both: they share it as the entries of the catalogue would.
func (l *line) shareOfPair(end int) float64 {
	front, rear := parts.AtEnd(l.entry, l.words, EndFront), parts.AtEnd(l.entry, l.words, EndRear)
	share := front.Mass / (front.Mass + rear.Mass)
	if end == 1 {
		share = 1 - share
	}
	return 2 * l.grams * share
}

// holes returns how many spokes front and rear wheel have, as the names of hubs
// or rims say it, "Rear hub 36h"; zeros when they do not say it of both.
func (r *csvReader) holes(lines []line) (n [2]int) {
	for i := range lines {
		l := &lines[i]
		if !l.why.IsZero() || l.kind != "hub" && l.kind != "rim" && l.kind != "gear-hub" && l.kind != "dynamo" {
			continue
		}
		holes := holesIn(spelling.Words(l.name))
		if holes == 0 {
			continue
		}
		end := parts.EndOf(l.words)
		switch {
		case l.kind == "gear-hub":
			end = EndRear
		case l.kind == "dynamo":
			end = EndFront
		}
		for e, name := range endNames {
			if (end == "" || end == name) && n[e] == 0 {
				n[e] = holes
			}
		}
	}
	if n[0] == 0 || n[1] == 0 {
		return [2]int{}
	}
	return n
}

// holesIn returns the number of holes that words tell: "32h", "32 hole", "32
// Loch", "32 trous"; 0 for none.
func holesIn(words []string) int {
	for i, w := range words {
		digits := strings.TrimRight(w, "abcdefghijklmnopqrstuvwxyz")
		n, err := strconv.Atoi(digits)
		if err != nil || n < 12 || n > 48 {
			continue
		}
		unit := w[len(digits):]
		if unit == "" && i+1 < len(words) {
			unit = words[i+1]
		}
		switch unit {
		case "h", "hole", "holes", "loch", "l", "trou", "trous", "spoke", "spokes", "speichen", "rayons":
			return n
		}
	}
	return 0
}
