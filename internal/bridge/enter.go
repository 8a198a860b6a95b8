package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// typedIn are the options of enter.
type typedIn struct {
	Entry string `json:"entry"` // id of the entry that was chosen, empty for a part of one's own
	Typed string `json:"typed"` // into the search
	Unit  string `json:"unit"`  // as for find
}

// entered is the answer to enter.
type entered struct {
	Part      document.Part   `json:"part"`                // without an id
	Given     bool            `json:"given"`               // the mass was typed
	Unusual   parts.Unusual   `json:"unusual,omitempty"`   // how the mass is unlike that of such a part
	Usual     float64         `json:"usual_g,omitempty"`   // and what would be like it
	Displaces []document.Part `json:"displaces,omitempty"` // parts of the build whose place it would take
	InPlace   *document.Part  `json:"in_place,omitempty"`  // the part where the first of those stands
}

// ofBuild reads a document, the id of a build of it and options, JSON. Without the
// build, refusal is the answer.
func (s *Session) ofBuild(args []string, options any) (d *document.Document, b *document.Build, refusal string) {
	d, problems := s.document(argument(args, 0))
	if d == nil {
		return nil, nil, s.refusal(problems)
	}
	id := argument(args, 1)
	if b = d.Build(id); b == nil {
		return nil, nil, s.failed(noBuild(id))
	}
	if err := json.Unmarshal([]byte(argument(args, 2)), options); err != nil {
		return nil, nil, s.problem("", "bridge.options", "why", err)
	}
	return d, b, ""
}

// enter takes a document, the id of a build, and what was chosen in a search and
// typed into it, JSON: the typedIn of catalogue.schema.json. It answers with the
// part that it makes, and with what is to be asked or remarked about it: entered
// there.
func (s *Session) enter(args ...string) string {
	var o typedIn
	_, b, refusal := s.ofBuild(args, &o)
	if b == nil {
		return refusal
	}
	r := s.reading(parts.OfParts, o.Typed, o.Unit, b, 0)
	var out entered
	if o.Entry == "" {
		out.Part, out.Given = s.own(r.Name, r.Mass), r.HasMass
		if r.HasMass {
			out.Part.Mass, out.Part.HalfWidth, out.Part.Basis = stated(&r)
		}
	} else {
		e := parts.EntryByID(o.Entry)
		if e == nil {
			return s.noEntry(o.Entry)
		}
		var hit parts.Hit
		for _, h := range r.Hits {
			if parts.Catalogue()[h.At].ID == o.Entry {
				hit = h
			}
		}
		out.Part = e.Sized(hit.Size, s.words).Part("")
		if hit.Weighs {
			out.Part.Mass, out.Part.HalfWidth, out.Part.Basis = stated(&r)
			out.Given = true
		}
	}
	out.Unusual, out.Usual = parts.Judge(&out.Part)
	for _, i := range parts.Displaced(b, &out.Part) {
		out.Displaces = append(out.Displaces, b.Parts[i])
	}
	if len(out.Displaces) > 0 {
		p := parts.InPlaceOf(&out.Part, &out.Displaces[0])
		out.InPlace = &p
	}
	return answer(out)
}
