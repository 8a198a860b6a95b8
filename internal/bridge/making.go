package bridge

import (
	"strconv"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/partslist"
	"steelyard/internal/photograph"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// What becomes part of a document is made here: the page puts it in.

// mostIDs is how many ids are given at once: as many as a list may have parts.
const mostIDs = 100_000

// newIDs takes a document, a sort and how many ids are wanted. It answers with a
// list of ids that nothing of that sort in the document has. The sorts are
// "part", "build", "rider", "load", "bag", "good", "weigh_in", "scale" and
// "day". See newIDs in bridge.schema.json.
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

// halfWidth takes a basis and a mass, g. It answers with the half-width, g, that
// such a mass has when nobody states one: the parsed of bridge.schema.json.
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

// partFromEntry takes the id of an entry of the catalogue. It answers with a part
// like it, without an id, called in the language of the session, as are those
// below: the part of document.schema.json.
func (s *Session) partFromEntry(id string) string {
	if e := parts.EntryByID(id); e != nil {
		return answer(e.In(s.words).Part(""))
	}
	return s.noEntry(id)
}

func (s *Session) bagFromEntry(id string) string {
	for i := range parts.Bags() {
		if e := &parts.Bags()[i]; e.ID == id {
			return answer(e.In(s.words).Bag(""))
		}
	}
	return s.noEntry(id)
}

func (s *Session) goodFromEntry(id string) string {
	for i := range parts.Goods() {
		if e := &parts.Goods()[i]; e.ID == id {
			return answer(e.In(s.words).Good(""))
		}
	}
	return s.noEntry(id)
}

func (s *Session) noEntry(id string) string {
	return s.problem("id", "bridge.entry", "id", words.Shorten(id))
}

// partFromWords takes a name and a mass, g. It answers with a part that is a
// guess, without an id: the part of document.schema.json. The two are read as a
// list of one line, so that what is typed and what is pasted are understood
// alike.
func (s *Session) partFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return answer(s.own(name, g))
}

// own makes a part of somebody's own.
func (s *Session) own(name string, g float64) document.Part {
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
	return p
}

// bagFromWords takes a name and a mass, g. It answers with a bag on the rack's
// deck, without an id: the bag of document.schema.json.
func (s *Session) bagFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return answer(document.NewBag(name, g))
}

// goodFromWords takes a name and a mass, g. It answers with a good that is not
// packed yet, without an id: the good of document.schema.json.
func (s *Session) goodFromWords(name, mass string) string {
	g, err := grams(mass)
	if err != nil {
		return s.failed(problemOf("mass_g", err))
	}
	return answer(document.NewGood(name, g))
}

// newRider takes nothing. It answers with somebody of middling size, without id
// and name: the rider of document.schema.json.
func newRider() string { return answer(document.NewRider()) }

// fileText takes a document, and the photographs that are to go into its file, JSON:
// a list of the photograph of photograph.schema.json; the text is empty for none. It
// answers with the text of the file, a part to a line.
func (s *Session) fileText(text, photographs string) string {
	d, problems := s.document(text)
	if d == nil {
		return s.refusal(problems)
	}
	out, err := document.Write(d)
	if err != nil {
		return s.problem("", "bridge.unwritten", "why", err)
	}
	return photograph.Bundle(string(out), photographs)
}
