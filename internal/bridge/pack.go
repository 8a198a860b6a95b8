package bridge

import (
	"errors"
	"math"
	"strconv"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/packing"
	"steelyard/internal/stowage"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Packing takes longer than a page may stand still, so it goes in steps:
// packStart, then packRun until it is done or enough, then packApply to put what
// was found into the document. The answer to every step says how good the best
// packing so far is, and how much better any other could be.

// packOptions are the stowage.Options as the page says them.
type packOptions struct {
	Build     *string           `json:"build"`
	Load      *string           `json:"load"`
	Aim       *document.Packing `json:"aim"`
	Tolerance *float64          `json:"tolerance"`
}

// packed is the answer to every step.
type packed struct {
	Build      string     `json:"build"`
	Load       string     `json:"load"`
	Running    bool       `json:"running"` // whether there is a packer
	Done       bool       `json:"done"`
	Proved     bool       `json:"proved"` // the aim; done is when the moves are the fewest too
	Fewest     bool       `json:"fewest"` // no packing as good moves fewer things
	Moved      int        `json:"moved"`  // things that change bags
	Nodes      int        `json:"nodes"`
	Incumbent  *float64   `json:"incumbent"` // aim of the best packing so far; null while there is none
	Bound      *float64   `json:"bound"`     // no packing is better than that
	Gap        *float64   `json:"gap"`
	Tolerance  float64    `json:"tolerance"`  // done is when the gap is within this
	Assignment []assigned `json:"assignment"` // null while there is none
	Moves      []move     `json:"moves"`      // against the document
	Before     terms      `json:"before"`
	After      *terms     `json:"after"`
	Change     *change    `json:"change"`             // after minus before; null while there is no packing
	Unrated    []string   `json:"unrated"`            // names of bags without a permitted load: only their volume is kept to
	Shortage   *shortage  `json:"shortage,omitempty"` // why there is no packing
}

type assigned struct {
	Good     string `json:"good"`
	Quantity int    `json:"quantity"`
	Bag      string `json:"bag"`
}

type move struct {
	Good     string `json:"good"`
	Name     string `json:"name"`
	Quantity int    `json:"quantity"`
	From     string `json:"from"` // bag id; nothing for what was not packed
	To       string `json:"to"`
	Aside    bool   `json:"aside,omitempty"` // to what is set aside, or from there
}

// terms are what an aim judges, and what each of them costs.
type terms struct {
	Aim        float64 `json:"aim"`
	FrontShare float64 `json:"front_share"`
	Height     float64 `json:"height_mm"`
	Aside      float64 `json:"aside_mm"`  // to the left
	Radius     float64 `json:"radius_mm"` // of pitch and yaw about the bike's own centre of mass
	Steered    float64 `json:"steered_kg_m2"`
	Costs      costs   `json:"costs"`
	Keeps      bool    `json:"keeps"`             // every limit
	Breaks     string  `json:"breaks,omitempty"`  // which one it does not
	Perhaps    string  `json:"perhaps,omitempty"` // which ones it keeps, but perhaps not, for all that is known of the masses
}

// change is by how much the terms differ.
type change struct {
	Aim        float64 `json:"aim"`
	FrontShare float64 `json:"front_share"`
	Height     float64 `json:"height_mm"`
	Aside      float64 `json:"aside_mm"`
	Radius     float64 `json:"radius_mm"`
	Steered    float64 `json:"steered_kg_m2"`
}

// changeOf takes the terms before from those after.
func changeOf(before, after *terms) *change {
	return &change{
		Aim: round(after.Aim-before.Aim, 9), FrontShare: round(after.FrontShare-before.FrontShare, 9),
		Height: round(after.Height-before.Height, 9), Aside: round(after.Aside-before.Aside, 9), Radius: round(after.Radius-before.Radius, 9),
		Steered: round(after.Steered-before.Steered, 9),
	}
}

type costs struct {
	Front   float64 `json:"front"`
	Low     float64 `json:"low"`
	Balance float64 `json:"balance"`
	Middle  float64 `json:"middle"`
	Steered float64 `json:"steered"`
}

type shortage struct {
	Message string   `json:"message"`
	Goods   []string `json:"goods"` // ids
	Bags    []string `json:"bags"`
}

// packStart takes a document and options, JSON or empty: those of
// packing.schema.json. It begins to pack a load and ends the packing that was in
// hand. It answers with where the new one stands: packing.schema.json.
func (s *Session) packStart(text, options string) string {
	s.stowage = nil
	var o packOptions
	if options != "" {
		if err := json.Unmarshal([]byte(options), &o); err != nil {
			return s.problem("options", "bridge.options", "why", err)
		}
	}
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	p, wrong := stowage.New(d, stowage.Options(o), s.words)
	if wrong != nil {
		return s.failed(*wrong)
	}
	s.stowage = p
	return answer(s.packedOf(p))
}

const (
	usualNodes = 2000
	mostNodes  = 1e6 // in one step
)

// packRun takes a number of nodes, empty for the usual one, and searches so many
// more. It answers with where the packing stands: packing.schema.json.
func (s *Session) packRun(nodes string) string {
	n := usualNodes
	if nodes != "" {
		v, err := strconv.Atoi(nodes)
		if err != nil || v < 1 || v > mostNodes {
			return s.problem("nodes", "bridge.nodes")
		}
		n = v
	}
	p := s.stowage
	if p == nil {
		return s.nothingPacked()
	}
	if p.Solver != nil {
		p.Solver.Run(n)
	}
	return answer(s.packedOf(p))
}

// packStop takes nothing and ends the packing in hand. It answers with what that
// has found: packing.schema.json.
func (s *Session) packStop() string {
	p := s.stowage
	if p == nil {
		return s.nothingPacked()
	}
	s.stowage = nil
	out := s.packedOf(p)
	out.Running = false
	return answer(out)
}

func (s *Session) nothingPacked() string { return s.problem("", "bridge.pack.none") }

// packApply takes a document. It answers like open (opened of
// bridge.schema.json), with the load packed as well as was found. A good that is
// spread over bags becomes a line for each of them.
func (s *Session) packApply(text string) string {
	p := s.stowage
	if p == nil {
		return s.nothingPacked()
	}
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	l := d.Load(p.Load())
	if !p.Of(l) {
		return s.failed(document.Problem{Severity: document.SeverityError, Load: p.Load(), Message: words.Tell("bridge.pack.changed")})
	}
	best := p.Best()
	if best == nil {
		return s.failed(document.Problem{Severity: document.SeverityError, Load: p.Load(), Message: words.Tell("bridge.pack.nothing")})
	}
	l.Goods = p.Packed(d, best)
	return s.openedAs(d, problems)
}

// packedOf says where the search stands.
func (s *Session) packedOf(p *stowage.Stowage) *packed {
	out := &packed{
		Build: p.Build, Load: p.Load(), Running: true, Done: p.Solver == nil, Moves: []move{},
		Tolerance: round(p.Task.Tolerance, 9), Before: s.termsOf(p.Before()), Unrated: p.Unrated(),
	}
	if p.Short != nil {
		out.Shortage = s.shortageOf(p, p.Short)
	}
	if p.Solver == nil {
		return out
	}
	st := p.Solver.Status()
	out.Done, out.Nodes, out.Proved, out.Moved, out.Fewest = st.Done, st.Nodes, st.Proved, st.Moves, st.Fewest
	out.Incumbent, out.Bound, out.Gap = known(st.Incumbent), known(st.Bound), known(st.Gap)
	if st.Err != nil {
		out.Shortage = s.shortageOf(p, st.Err)
	}
	best := p.Best()
	if best == nil {
		return out
	}
	after := s.termsOf(p.After(best))
	out.After, out.Change = &after, changeOf(&out.Before, &after)
	out.Assignment = []assigned{}
	for _, a := range p.Assignment(best) {
		out.Assignment = append(out.Assignment, assigned(a))
	}
	for _, m := range p.Moves(best) {
		out.Moves = append(out.Moves, move(m))
	}
	return out
}

// shortageOf says why goods do not fit; nil when the error is of another sort.
func (s *Session) shortageOf(p *stowage.Stowage, err error) *shortage {
	var short *packing.Shortage
	if !errors.As(err, &short) {
		return nil
	}
	out := &shortage{Message: sentence(short).In(s.words), Goods: []string{}, Bags: []string{}}
	for _, k := range short.Goods {
		out.Goods = append(out.Goods, p.Good(k).ID)
	}
	for _, j := range short.Bags {
		out.Bags = append(out.Bags, p.Bag(j).ID)
	}
	return out
}

func (s *Session) termsOf(t stowage.Terms) terms {
	out := terms{
		Aim: round(t.Aim, 6), FrontShare: round(t.FrontShare, 4), Height: round(t.Height*milli, 1), Aside: round(t.Aside*milli, 1),
		Radius: round(math.Sqrt(max(0, t.MeanSquare))*milli, 1), Steered: round(t.Inertia, 4),
		Costs: costs{round(t.Costs.Front, 4), round(t.Costs.Low, 4), round(t.Costs.Balance, 4), round(t.Costs.Middle, 4), round(t.Costs.Steered, 4)},
		Keeps: t.Breaks == nil, Perhaps: t.Perhaps,
	}
	if t.Breaks != nil {
		out.Breaks = sentence(t.Breaks).In(s.words)
	}
	return out
}

// known is a number, or null for one that is not finite.
func known(v float64) *float64 {
	if !units.Finite(v) {
		return nil
	}
	v = round(v, 9)
	return &v
}
