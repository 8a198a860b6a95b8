package bridge

import (
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/partslist"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// What becomes part of a document is made here: the page puts it in.

// mostIDs is how many ids are given at once: as many as a list may have parts.
const mostIDs = 100_000

// newIDs answers a document, a sort of thing and how many of them there will be
// with a list of ids that no such thing in the document has. The sorts are
// "part", "build", "rider", "load", "bag", "good", "weigh_in", "scale" and "day".
func (s *Session) newIDs(args ...string) string {
	n, err := strconv.Atoi(argument(args, 2))
	if err != nil || n < 0 || n > mostIDs {
		return s.problem("n", "bridge.ids", "most", mostIDs)
	}
	d, problems := s.document(argument(args, 0))
	if d == nil {
		return s.refusal(problems)
	}
	sort := document.Sort(argument(args, 1))
	ids := d.NewIDs(sort, n)
	if ids == nil && n > 0 {
		return s.problem("sort", "bridge.sort", "sort", words.Shorten(string(sort)))
	}
	return answer(ids)
}

// halfWidth answers a basis and a mass, g, with {"value": grams}: the half-width
// that such a mass has when nobody states one.
func (s *Session) halfWidth(basis, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return s.parsed(document.Basis(basis).HalfWidth(g), nil)
}

func grams(mass string) (float64, error) {
	g, err := strconv.ParseFloat(mass, 64)
	if err != nil || !units.Finite(g) {
		return 0, words.Tell("bridge.mass", "mass", words.Shorten(mass))
	}
	return g, nil
}

// partFromEntry answers the id of an entry of the catalogue with a part like it,
// bagFromEntry and goodFromEntry those of the goods to pack. None has an id.
func (s *Session) partFromEntry(id string) string {
	if e := parts.EntryByID(id); e != nil {
		return answer(e.Part(""))
	}
	return s.noEntry(id)
}

func (s *Session) bagFromEntry(id string) string {
	for i := range parts.Bags() {
		if e := &parts.Bags()[i]; e.ID == id {
			return answer(e.Bag(""))
		}
	}
	return s.noEntry(id)
}

func (s *Session) goodFromEntry(id string) string {
	for i := range parts.Goods() {
		if e := &parts.Goods()[i]; e.ID == id {
			return answer(e.Good(""))
		}
	}
	return s.noEntry(id)
}

func (s *Session) noEntry(id string) string {
	return s.problem("id", "bridge.entry", "id", words.Shorten(id))
}

// partFromWords answers a name and a mass, g, with a part: a guess. It is read
// as a list of one line, so that what is typed and what is pasted are told
// apart alike. Like those below, it has no id.
func (s *Session) partFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	line := strings.ReplaceAll(strings.Join(strings.Fields(name), " "), `"`, `""`)
	table := partslist.ReadCSV([]byte("name,mass_g\n\""+line+"\","+strconv.FormatFloat(max(g, 0), 'f', 2, 64)+"\n"), partslist.CSVOptions{
		Columns: map[string]int{"name": 0, "mass": 1}, MassUnit: "g", AsIs: true, Stations: geometry.StationNames,
	})
	p := document.Part{
		Kind: "other", Quantity: 1, Station: "frame", Within: 100, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint},
	}
	if len(table.Parts) == 1 {
		p = table.Parts[0]
	}
	p.ID, p.Name, p.Mass, p.Basis, p.HalfWidth = "", name, g, document.Guessed, document.Guessed.HalfWidth(g)
	return answer(p)
}

// bagFromWords answers likewise with a bag on the rack's deck.
func (s *Session) bagFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return answer(document.NewBag(name, g))
}

// goodFromWords answers likewise with a good that is not packed yet.
func (s *Session) goodFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return answer(document.NewGood(name, g))
}

// newRider answers with somebody of middling size, without id and name.
func newRider() string { return answer(document.NewRider()) }

// fileText answers a document with the text of its file.
func (s *Session) fileText(text string) string {
	d, problems := s.document(text)
	if d == nil {
		return s.refusal(problems)
	}
	out, err := document.Write(d)
	if err != nil {
		return s.problem("", "bridge.unwritten", "why", err)
	}
	return string(out)
}
