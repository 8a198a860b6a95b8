package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/units"
)

// wanted are the options of find.
type wanted struct {
	Of    string  `json:"of"`    // "parts", "goods" or "bags"
	Unit  string  `json:"unit"`  // of a mass that has none, as for parseMass
	Limit int     `json:"limit"` // 0 is all
	On    *fitted `json:"on"`    // the build that a part is for
}

// fitted is what decides whether a part fits a build.
type fitted struct {
	Fork   document.Fork   `json:"fork"`
	Rear   document.Rear   `json:"rear"`
	Wheels document.Wheels `json:"wheels"`
	Kinds  []string        `json:"kinds"` // of its parts
}

func (f *fitted) build() *document.Build {
	if f == nil {
		return nil
	}
	b := &document.Build{Fork: f.Fork, Rear: f.Rear, Wheels: f.Wheels}
	for _, k := range f.Kinds {
		b.Parts = append(b.Parts, document.Part{Kind: k})
	}
	return b
}

// found is the answer to find.
type found struct {
	Name  string   `json:"name"`             // what was typed, without the mass
	Mass  *float64 `json:"mass_g,omitempty"` // nil when none was typed
	Found []string `json:"found"`            // ids of entries, best first
}

// find takes what somebody typed, a name and perhaps a mass, and options, JSON:
// the wanted of catalogue.schema.json. It answers with the ids of the entries
// that are meant, of the catalogue or of the lists of goods or bags, and with the
// name and the mass for something of the user's own: found there.
func (s *Session) find(typed, options string) string {
	var o wanted
	if options != "" {
		if err := json.Unmarshal([]byte(options), &o); err != nil {
			return s.problem("", "bridge.options", "why", err)
		}
	}
	var out found
	if name, grams, ok := units.TrailingMass(typed, o.Unit); ok {
		out.Name, out.Mass = name, &grams
	} else {
		out.Name = name
	}
	if s.finder == nil {
		s.finder = parts.NewFinder(s.words.Label)
	}
	out.Found = []string{}
	switch o.Of {
	case "parts":
		for _, e := range s.finder.Parts(out.Name, o.On.build(), o.Limit) {
			out.Found = append(out.Found, e.ID)
		}
	case "goods":
		for _, g := range s.finder.Goods(out.Name, o.Limit) {
			out.Found = append(out.Found, g.ID)
		}
	case "bags":
		for _, b := range s.finder.Bags(out.Name, o.Limit) {
			out.Found = append(out.Found, b.ID)
		}
	default:
		return s.problem("of", "bridge.search")
	}
	return answer(out)
}

// findParts takes a document, the id of a build and what somebody typed. It
// answers with a list of the ids of the parts that are meant, in the order of the
// build: see findParts in bridge.schema.json.
func (s *Session) findParts(args ...string) string {
	e := s.evaluated(argument(args, 0))
	if e.Document == nil {
		return s.refusal(e.Report.Problems)
	}
	id := argument(args, 1)
	b := e.Document.Build(id)
	if b == nil {
		return s.failed(noBuild(id))
	}
	if of := (listed{e, id}); s.listing == nil || s.listingOf != of {
		s.listing, s.listingOf = parts.NewListing(b, s.words.Label), of
	}
	return answer(s.listing.Find(argument(args, 2)))
}
