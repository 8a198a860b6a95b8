package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/conversion"
	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// setLine is a set as it is offered for a build.
type setLine struct {
	ID   string     `json:"id"`
	Area parts.Area `json:"area"`
	Name string     `json:"name"`
	Mass float64    `json:"mass_g"` // of all its parts, as the catalogue knows them
	Fits bool       `json:"fits"`   // the build has what the set needs
	On   bool       `json:"on"`     // the build has it already
}

// sets takes a document and the id of a build. It answers with the sets of parts
// that the build can be changed to, in each area those first that fit it: a list
// of sets.schema.json.
func (s *Session) sets(text, build string) string {
	d, problems := s.document(text)
	if d == nil {
		return s.refusal(problems)
	}
	b := d.Build(build)
	if b == nil {
		return s.failed(noBuild(build))
	}
	offers := conversion.Offers(d, b, s.words)
	lines := make([]setLine, len(offers))
	for i, o := range offers {
		lines[i] = setLine{ID: o.Set.ID, Area: o.Set.Area, Name: o.Set.Name().In(s.words), Mass: o.Mass, Fits: o.Fits, On: o.On}
	}
	return answer(lines)
}

// changing is what is to be changed.
type changing struct {
	Build  string   `json:"build"`
	Set    string   `json:"set"`
	CopyAs string   `json:"copy_as,omitempty"` // the name of a new build that the change is made to, the build itself stays
	Keep   []string `json:"keep,omitempty"`    // ids of parts that stay, though they would go
	Skip   []int    `json:"skip,omitempty"`    // places in comes of parts that do not come
	Drop   []string `json:"drop,omitempty"`    // ids of parts of stays that go
}

// changed is a change and the document after it.
type changed struct {
	Build    string             `json:"build"` // the one that was changed
	Goes     []going            `json:"goes"`
	Comes    []coming           `json:"comes"`
	Stays    []going            `json:"stays"`
	Remarks  []string           `json:"remarks"`
	Total    *report.Change     `json:"total,omitempty"` // of the build's mass, before it and after it; none where it cannot be weighed
	Document *document.Document `json:"document"`
}

// going is a part that goes or stays.
type going struct {
	ID    string         `json:"id"`
	Name  string         `json:"name"`
	Mass  float64        `json:"mass_g"` // of all pieces
	Basis document.Basis `json:"basis"`
	Aside bool           `json:"aside"` // it is kept for later when it goes
}

// coming is a part that comes.
type coming struct {
	Name   string            `json:"name"`
	Mass   float64           `json:"mass_g"` // of all pieces
	Basis  document.Basis    `json:"basis"`
	Origin conversion.Origin `json:"origin"`
	Build  string            `json:"build,omitempty"` // of origin "build": its name
}

// change takes a document and what to change in it, JSON: the changing of
// sets.schema.json. It answers with what goes, comes and stays, what the build
// weighs before and after, and the document after the change: changed there.
// Nothing is kept, so looking at a change and making it are the same call.
func (s *Session) change(text, options string) string {
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	var o changing
	if err := json.Unmarshal([]byte(options), &o); err != nil {
		return s.problem("", "bridge.options", "why", err)
	}
	set := parts.SetByID(o.Set)
	if set == nil {
		return s.problem("set", "bridge.set", "id", words.Shorten(o.Set))
	}
	if d.Build(o.Build) == nil {
		return s.failed(noBuild(o.Build))
	}
	if o.CopyAs != "" {
		o.Build = d.CopyBuild(o.Build, o.CopyAs).ID
	}
	plan, err := conversion.New(d, o.Build, set, s.words)
	if err != nil {
		return s.failed(document.Problem{Severity: document.SeverityError, Field: "build", Message: words.Tell("bridge.text", "text", words.Sentence{Of: err})})
	}
	out := changed{Build: o.Build, Goes: []going{}, Comes: []coming{}, Stays: []going{}, Remarks: []string{}}
	tell := func(p *document.Part, aside bool) going {
		return going{p.ID, p.Name, float64(p.Quantity) * p.Mass, p.Basis, aside}
	}
	for i := range plan.Goes {
		out.Goes = append(out.Goes, tell(&plan.Goes[i], conversion.BetterKnown(&plan.Goes[i], s.words)))
	}
	for i := range plan.Stays {
		out.Stays = append(out.Stays, tell(&plan.Stays[i], conversion.BetterKnown(&plan.Stays[i], s.words)))
	}
	for i := range plan.Comes {
		c := &plan.Comes[i]
		line := coming{Name: c.Part.Name, Mass: float64(c.Part.Quantity) * c.Part.Mass, Basis: c.Part.Basis, Origin: c.Origin}
		if b := d.Build(c.Build); b != nil {
			line.Build = b.Name
		}
		out.Comes = append(out.Comes, line)
	}
	for _, r := range plan.Remarks() {
		out.Remarks = append(out.Remarks, r.In(s.words))
	}
	out.Document = plan.Apply(conversion.Except{Keep: o.Keep, Skip: o.Skip, Drop: o.Drop})
	out.Total = s.totals(d.Build(o.Build), out.Document.Build(o.Build), d.Show)
	return answer(out)
}

// totals returns what two states of a build weigh, without a load, nil where one of
// them cannot be weighed.
func (s *Session) totals(before, after *document.Build, show document.Show) *report.Change {
	a, b := *before, *after
	a.ID, b.ID = "a", "b"
	show.Compare, show.Loads, show.State = []string{a.ID, b.ID}, nil, document.Ready
	e := report.Weigh(&document.Document{Builds: []document.Build{a, b}, Show: show}, s.words)
	if e.Report.Difference == nil {
		return nil
	}
	for i := range e.Report.Difference.Figures {
		if c := &e.Report.Difference.Figures[i]; c.Key == "total" {
			return c
		}
	}
	return nil
}

// sharing is what the builds of a document have in common, and what they lack,
// and what the loads have in common.
type sharing struct {
	Builds []sharingBuild `json:"builds"`
	Loads  []sharingLoad  `json:"loads"`
}

type sharingBuild struct {
	ID      string        `json:"id"`
	Parts   []sharedThing `json:"parts"`
	Missing []missingRole `json:"missing"`
}

type sharingLoad struct {
	ID    string        `json:"id"`
	Bags  []sharedThing `json:"bags"`
	Goods []sharedThing `json:"goods"`
}

// sharedThing is a part that is in other builds too, or known better there; or a
// bag or good of other loads.
type sharedThing struct {
	ID     string       `json:"id"`
	Also   []string     `json:"also,omitempty"` // ids of the other builds or loads in which it is the same
	Better *betterKnown `json:"better,omitempty"`
}

// betterKnown is what another build or load knows of a thing.
type betterKnown struct {
	In        string         `json:"in"` // the id of that build or load
	Mass      float64        `json:"mass_g"`
	HalfWidth float64        `json:"half_width_g"`
	Basis     document.Basis `json:"basis"`
}

type missingRole struct {
	Role parts.Role `json:"role"`
	Name string     `json:"name"`
}

// shared takes a document. It answers with what its builds have in common, the
// sharing of sets.schema.json: in which other builds each part is the same, so
// that it is weighed once; where another build knows it better; and what each
// build lacks to be a whole bike. Likewise with the bags and goods of its loads.
// Things without anything to tell are left out.
func (s *Session) shared(text string) string {
	d, problems := s.document(text)
	if d == nil {
		return s.refusal(problems)
	}
	out := sharing{make([]sharingBuild, len(d.Builds)), make([]sharingLoad, len(d.Loads))}
	in := func(i int) string { return d.Builds[i].ID }
	fitted := parts.ShareOf(d.Builds)
	for i := range d.Builds {
		b := &d.Builds[i]
		out.Builds[i] = sharingBuild{b.ID, common(fitted, i, len(b.Parts), in), []missingRole{}}
		for _, r := range parts.Missing(b) {
			out.Builds[i].Missing = append(out.Builds[i].Missing, missingRole{r, s.words.Label("role." + string(r))})
		}
	}
	of := func(i int) string { return d.Loads[i].ID }
	bags, goods := parts.ShareOfBags(d.Loads), parts.ShareOfGoods(d.Loads)
	for i := range d.Loads {
		l := &d.Loads[i]
		out.Loads[i] = sharingLoad{l.ID, common(bags, i, len(l.Bags), of), common(goods, i, len(l.Goods), of)}
	}
	return answer(out)
}

// common tells what one owner of n things has in common with others, whose ids
// the function gives.
func common(s *parts.Sharing, owner, n int, id func(int) string) []sharedThing {
	list := []sharedThing{}
	for i := range n {
		at := parts.Place{Owner: owner, Item: i}
		t := sharedThing{ID: s.Known(at).ID}
		for _, o := range s.Same(at) {
			t.Also = append(t.Also, id(o.Owner))
		}
		if o, ok := s.Better(at); ok {
			k := s.Known(o)
			t.Better = &betterKnown{id(o.Owner), k.Mass, k.HalfWidth, k.Basis}
		}
		if t.Also != nil || t.Better != nil {
			list = append(list, t)
		}
	}
	return list
}
