package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/partslist"
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
	Parts  []there         `json:"parts"` // what its parts are, each sort once
}

// there is what a part is, and by what it is carried.
type there struct {
	Kind    string           `json:"kind"`
	Carrier document.Carrier `json:"carrier"`
}

func (f *fitted) build() *document.Build {
	if f == nil {
		return nil
	}
	b := &document.Build{Fork: f.Fork, Rear: f.Rear, Wheels: f.Wheels}
	for _, p := range f.Parts {
		b.Parts = append(b.Parts, document.Part{Kind: p.Kind, Carrier: p.Carrier})
	}
	return b
}

// found is the answer to find.
type found struct {
	Name  string   `json:"name"`             // what was typed, without the mass
	Mass  *float64 `json:"mass_g,omitempty"` // nil when none was typed
	Found []string `json:"found"`            // ids of entries, best first
	Other []taken  `json:"other,omitempty"`  // those of them that would not be taken as they are
	List  int      `json:"list,omitempty"`   // parts that were typed or pasted as a list, when there are several
}

// taken is an entry as it would be taken.
type taken struct {
	ID        string  `json:"id"`
	Name      string  `json:"name"`
	Mass      float64 `json:"mass_g"`
	HalfWidth float64 `json:"half_width_g"`
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
	switch o.Of {
	case parts.OfParts, parts.OfGoods, parts.OfBags:
	default:
		return s.problem("of", "bridge.search")
	}
	r := s.reading(o.Of, typed, o.Unit, o.On.build(), o.Limit)
	out := found{Name: r.Name, Found: make([]string, len(r.Hits))}
	if r.HasMass {
		out.Mass = &r.Mass
	}
	if o.Of == parts.OfParts {
		out.List = partslist.Several(typed)
	}
	for i, h := range r.Hits {
		var t taken
		switch o.Of {
		case parts.OfParts:
			e := parts.Catalogue()[h.At].Sized(h.Size, s.words)
			t = taken{e.ID, e.Name, e.Mass, e.HalfWidth}
		case parts.OfGoods:
			e := parts.Goods()[h.At].In(s.words)
			t = taken{e.ID, e.Name, e.Mass, e.HalfWidth}
		default:
			e := parts.Bags()[h.At].In(s.words)
			t = taken{e.ID, e.Name, e.Mass, e.HalfWidth}
		}
		out.Found[i] = t.ID
		if h.Weighs {
			t.Mass, t.HalfWidth, _ = stated(&r)
		}
		if h.Weighs || h.Size != (parts.Size{}) {
			out.Other = append(out.Other, t)
		}
	}
	return answer(out)
}

func (s *Session) reading(of, typed, unit string, on *document.Build, limit int) parts.Reading {
	if s.finder == nil {
		s.finder = parts.NewFinder(s.words.Label)
	}
	return s.finder.Read(of, typed, unit, on, limit)
}

// stated returns what a mass that was typed says of a part, as in a list: see
// [partslist.ReadCSV].
func stated(r *parts.Reading) (grams, half float64, basis document.Basis) {
	basis = document.Stated
	if r.About {
		basis = document.Guessed
	}
	if half = r.Within; half == 0 {
		half = basis.HalfWidth(r.Mass)
	}
	return r.Mass, half, basis
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
