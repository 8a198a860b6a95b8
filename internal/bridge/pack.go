package bridge

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/goccy/go-json"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/packing"
	"steelyard/internal/report"
	"steelyard/internal/ride"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Packing takes longer than a page may stand still, so it goes in steps:
// packStart, then packRun until it is done or enough, then packApply to put what
// was found into the document. The answer to every step says how good the best
// packing so far is, and how much better any other could be.

// packer is a packing at work.
type packer struct {
	words *words.Words
	doc   document.Document // with the one build and the one load, ridden and full
	build string
	load  document.Load // as it was at the start
	goods []int         // of the task, by index in load.Goods
	bags  []int         // of the task, by index in load.Bags
	racks []string      // what the limits of the task are of
	task  *packing.Task
	solve *packing.Solver   // nil when counting showed that the goods do not fit
	short *packing.Shortage // why, then

	before  string          // what is kept only perhaps as it is packed
	judged  packing.Packing // the packing that perhaps is of
	perhaps string
}

// packOptions say what to pack; what is not there is that of show's first side.
type packOptions struct {
	Build *string           `json:"build"`
	Load  *string           `json:"load"`
	Aim   *document.Packing `json:"aim"`

	// Tolerance says how far from the best is good enough, in units of the aim;
	// 0 is far below what can be weighed, and may take long to prove. Without it,
	// it is goodEnough.
	Tolerance *float64 `json:"tolerance"`
}

// goodEnough is the tolerance of a packing unless another is asked for, in units
// of the aim: at a weight of 100 half a millimetre, or a twentieth of a
// percentage point of front share. No packer fills a bag that exactly.
const goodEnough = 0.05

// packed is the answer to every step.
type packed struct {
	Build      string     `json:"build"`
	Load       string     `json:"load"`
	Running    bool       `json:"running"` // whether there is a packer
	Done       bool       `json:"done"`
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
}

// terms are what an aim judges, and what each of them costs.
type terms struct {
	Aim        float64 `json:"aim"`
	FrontShare float64 `json:"front_share"`
	Height     float64 `json:"height_mm"`
	Aside      float64 `json:"aside_mm"`  // to the left
	Radius     float64 `json:"radius_mm"` // of pitch and yaw about the bike's own centre of mass
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
}

// changeOf takes the terms before from those after.
func changeOf(before, after *terms) *change {
	return &change{
		Aim: round(after.Aim-before.Aim, 9), FrontShare: round(after.FrontShare-before.FrontShare, 9),
		Height: round(after.Height-before.Height, 9), Aside: round(after.Aside-before.Aside, 9), Radius: round(after.Radius-before.Radius, 9),
	}
}

type costs struct {
	Front   float64 `json:"front"`
	Low     float64 `json:"low"`
	Balance float64 `json:"balance"`
	Middle  float64 `json:"middle"`
}

type shortage struct {
	Message string   `json:"message"`
	Goods   []string `json:"goods"` // ids
	Bags    []string `json:"bags"`
}

// packStart begins to pack a load of a document anew, and ends what was in hand.
func (s *Session) packStart(text, options string) string {
	s.packer = nil
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
	p, wrong := newPacker(d, &o, s.words)
	if wrong != nil {
		return s.failed(*wrong)
	}
	s.packer = p
	return answer(p.tell())
}

func newPacker(d *document.Document, o *packOptions, language *words.Words) (*packer, *document.Problem) {
	fault := func(p document.Problem) (*packer, *document.Problem) {
		p.Severity = document.SeverityError
		return nil, &p
	}
	show := func(given *string, list []string) string {
		switch {
		case given != nil:
			return *given
		case len(list) > 0:
			return list[0]
		}
		return ""
	}
	build, load := show(o.Build, d.Show.Compare), show(o.Load, d.Show.Loads)
	b, l := d.Build(build), d.Load(load)
	switch {
	case b == nil:
		return fault(document.Problem{Build: build, Message: words.Tell("bridge.no_build")})
	case l == nil:
		return fault(document.Problem{Load: load, Message: words.Tell("bridge.pack.no_load")})
	case len(l.Bags) == 0:
		return fault(document.Problem{Load: load, Field: "bags", Message: words.Tell("bridge.pack.no_bags")})
	}
	aim := document.DefaultPacking
	if d.Show.Packing != nil {
		aim = *d.Show.Packing
	}
	if o.Aim != nil {
		aim = *o.Aim
	}
	one := *d
	one.Builds = []document.Build{*b}
	one.Show.Compare, one.Show.Loads, one.Show.Packing = []string{build}, []string{load}, &aim
	one.Show.State, one.Show.Supplies = document.Ridden, document.Full
	for _, p := range document.Check(&one) {
		if p.Severity == document.SeverityError && len(p.Field) > 12 && p.Field[:13] == "show.packing." {
			return nil, &p
		}
	}
	w := report.Weigh(&one, nil).Sides[0]
	if w == nil {
		return fault(document.Problem{Build: build, Message: words.Tell("bridge.pack.figures")})
	}
	p := w.Packing()
	if len(p.Bags) == 0 {
		return fault(document.Problem{Load: load, Field: "bags", Message: words.Tell("bridge.pack.nowhere")})
	}
	s := &packer{words: language, doc: one, build: build, load: *l, goods: p.Goods, bags: p.Bags}
	s.load.Bags, s.load.Goods = slices.Clone(l.Bags), slices.Clone(l.Goods)
	s.task = s.newTask(p, &aim, b.Ratings, w)
	s.before = s.undecided(s.load.Goods)
	tolerance := goodEnough
	if o.Tolerance != nil {
		tolerance = *o.Tolerance
	}
	s.task.Tolerance = max(s.task.Tolerance, tolerance)
	solver, err := packing.New(s.task)
	switch short := (*packing.Shortage)(nil); {
	case errors.As(err, &short):
		s.short = short
	case err != nil:
		return fault(document.Problem{Load: load, Message: sentence(err)})
	}
	s.solve = solver
	return s, nil
}

// newTask states a load as a task. Limits are those of the bags and of the racks
// that they hang on; tyres, rims and the whole bike carry the goods wherever
// these are, near enough, and are left to the ratings.
func (s *packer) newTask(p *assembly.Packing, aim *document.Packing, ratings []document.Rating, w *report.Weighed) *packing.Task {
	t := &packing.Task{
		Goods: make([]packing.Good, len(s.goods)),
		Bags:  make([]packing.Bag, len(s.bags)),
		Rest:  p.Empty,
		Aim: packing.Aim{
			FrontShare: aim.FrontShare, Front: aim.Front, Low: aim.Low, Balance: aim.Balance, Middle: aim.Middle,
			Centre: p.Bike.Centre(),
		},
		RearContact: w.Bike.RearContact.X, FrontContact: w.Bike.FrontContact.X,
		Start: make(packing.Packing, len(s.goods)),
	}
	if aim.Of == "all" {
		t.Rest = p.Rest
	}
	bag := make(map[string]int, len(s.bags)) // by id, in the task
	for j, i := range s.bags {
		b := &s.load.Bags[i]
		bag[b.ID] = j
		t.Bags[j] = packing.Bag{Name: b.Name, Place: p.Place[i], Permitted: b.Permitted / 1000, Volume: b.Volume}
	}
	for k, i := range s.goods {
		g := &s.load.Goods[i]
		t.Goods[k] = packing.Good{Name: g.Name, Mass: g.Mass / 1000, Volume: g.Volume, Quantity: g.Quantity, Pinned: g.Pinned}
		t.Start[k] = make([]int, len(s.bags))
		if j, ok := bag[g.In]; ok {
			t.Goods[k].In = j
			t.Start[k][j] = g.Quantity
		}
	}
	for _, r := range ratings {
		rack, ok := p.Racks[r.What]
		if !ok || !(r.Limit > 0) {
			continue
		}
		limit := packing.Limit{
			Name: s.words.Label("rating." + r.What), Share: make([]float64, len(s.bags)), Permitted: max(0, r.Limit/1000-rack.Fixed),
		}
		for j, i := range s.bags {
			if slices.Contains(rack.Bags, i) {
				limit.Share[j] = 1
			}
		}
		t.Limits = append(t.Limits, limit)
		s.racks = append(s.racks, r.What)
	}
	s.keepFuelApart(t)
	t.Tolerance = t.Fine()
	return t
}

// keepFuelApart lets fuel stay in the bag that it is in, and keeps food out of
// that bag but for what is pinned there. Fuel that is in no bag goes to the bag
// that [packer.fuelBag] finds for it. Nothing is asked where food would be left
// without a bag.
func (s *packer) keepFuelApart(t *packing.Task) {
	holds := make([]bool, len(t.Bags)) // fuel
	var loose []int
	for k, i := range s.goods {
		if g := &s.load.Goods[i]; g.Supply == "fuel" && g.Quantity > 0 {
			in := slices.IndexFunc(t.Start[k], func(pieces int) bool { return pieces > 0 })
			if in < 0 {
				loose = append(loose, k)
				continue
			}
			holds[in] = true
			t.Goods[k].Pinned = true
		}
	}
	home := -1
	if len(loose) > 0 {
		if home = s.fuelBag(t, holds, loose); home >= 0 {
			holds[home] = true
		}
	}
	if !slices.Contains(holds, true) || !slices.Contains(holds, false) {
		return
	}
	for k, i := range s.goods {
		g := &s.load.Goods[i]
		for j, fuel := range holds {
			if fuel && g.Supply == "food" && !g.Pinned || home >= 0 && j != home && slices.Contains(loose, k) {
				t.Forbidden = append(t.Forbidden, packing.Pair{Good: k, Bag: j})
			}
		}
	}
}

// fuelBag returns the bag for fuel that is in none yet: one that holds fuel
// already, or else the smallest in which no food is pinned; it has room for all
// of it beside what stays there. It is -1 where there is none: the fuel then goes
// anywhere.
func (s *packer) fuelBag(t *packing.Task, holds []bool, loose []int) int {
	volume, mass := 0.0, 0.0
	for _, k := range loose {
		n := float64(t.Goods[k].Quantity)
		volume, mass = volume+n*t.Goods[k].Volume, mass+n*t.Goods[k].Mass
	}
	best := -1
	better := func(j int) bool {
		switch {
		case best < 0:
			return true
		case holds[j] != holds[best]:
			return holds[j]
		}
		return t.Bags[j].Volume > 0 && (t.Bags[best].Volume == 0 || t.Bags[j].Volume < t.Bags[best].Volume)
	}
	for j := range t.Bags {
		room, bears, food := t.Bags[j].Volume, t.Bags[j].Permitted, false
		for k, i := range s.goods {
			if g := &t.Goods[k]; g.Pinned && g.In == j {
				room, bears = room-float64(g.Quantity)*g.Volume, bears-float64(g.Quantity)*g.Mass
				food = food || s.load.Goods[i].Supply == "food" && g.Quantity > 0
			}
		}
		fits := (t.Bags[j].Volume == 0 || room >= volume) && (t.Bags[j].Permitted == 0 || bears >= mass)
		if fits && !food && better(j) {
			best = j
		}
	}
	return best
}

const (
	usualNodes = 2000
	mostNodes  = 1e6 // in one step
)

// packRun looks at so many more parts of the search.
func (s *Session) packRun(nodes string) string {
	n := usualNodes
	if nodes != "" {
		v, err := strconv.Atoi(nodes)
		if err != nil || v < 1 || v > mostNodes {
			return s.problem("nodes", "bridge.nodes")
		}
		n = v
	}
	p := s.packer
	if p == nil {
		return s.nothingPacked()
	}
	if p.solve != nil {
		p.solve.Run(n)
	}
	return answer(p.tell())
}

// packStop ends the packing in hand and answers with what it has found.
func (s *Session) packStop() string {
	p := s.packer
	if p == nil {
		return s.nothingPacked()
	}
	s.packer = nil
	out := p.tell()
	out.Running = false
	return answer(out)
}

func (s *Session) nothingPacked() string { return s.problem("", "bridge.pack.none") }

// packApply answers a document like open, with its load packed as was found
// best. A good that is spread over bags becomes a line for each of them.
func (s *Session) packApply(text string) string {
	p := s.packer
	if p == nil {
		return s.nothingPacked()
	}
	d, problems := document.Open([]byte(text))
	if d == nil {
		return s.refusal(problems)
	}
	l := d.Load(p.load.ID)
	if l == nil || !reflect.DeepEqual(l.Bags, p.load.Bags) || !reflect.DeepEqual(l.Goods, p.load.Goods) {
		return s.failed(document.Problem{Severity: document.SeverityError, Load: p.load.ID, Message: words.Tell("bridge.pack.changed")})
	}
	best := p.best()
	if best == nil {
		return s.failed(document.Problem{Severity: document.SeverityError, Load: p.load.ID, Message: words.Tell("bridge.pack.nothing")})
	}
	l.Goods = p.apply(d, best)
	return s.openedAs(d, problems)
}

// best is the best packing so far, nil when there is none.
func (s *packer) best() packing.Packing {
	if s.solve == nil {
		return nil
	}
	return s.solve.Packing()
}

// heap is all lines of a load that are the same thing: which of its pieces lies
// in which bag makes no difference, so each bag needs one line.
type heap struct {
	lines []int       // by index in load.Goods
	was   map[int]int // pieces by bag, by index in load.Bags; -1 is not packed
	is    map[int]int
}

// heaps gathers the goods of a packing, in the order of the load.
func (s *packer) heaps(p packing.Packing) []*heap {
	bag := map[string]int{"": -1}
	for i := range s.load.Bags {
		bag[s.load.Bags[i].ID] = i
	}
	var list []*heap
	same := map[document.Good]*heap{}
	for k, i := range s.goods {
		g := s.load.Goods[i]
		if g.Quantity == 0 {
			continue
		}
		key := g
		key.ID, key.Quantity, key.In = "", 0, ""
		h := same[key]
		if h == nil {
			h = &heap{was: map[int]int{}, is: map[int]int{}}
			same[key] = h
			list = append(list, h)
		}
		h.lines = append(h.lines, i)
		from, ok := bag[g.In]
		if !ok {
			from = -1
		}
		h.was[from] += g.Quantity
		for j, n := range p[k] {
			if n > 0 {
				h.is[s.bags[j]] += n
			}
		}
	}
	return list
}

// share gives the bags of a heap to its lines: a line keeps the bag that it was
// in, if it can. What no line is left for comes under -1.
func (s *packer) share(h *heap) map[int][]int {
	given := map[int][]int{} // bags by line
	taken := map[int]bool{}
	for _, i := range h.lines {
		for _, j := range s.bags {
			if s.load.Bags[j].ID == s.load.Goods[i].In && h.is[j] > 0 && !taken[j] {
				given[i], taken[j] = []int{j}, true
			}
		}
	}
	for _, j := range s.bags {
		if h.is[j] == 0 || taken[j] {
			continue
		}
		line := -1
		for _, i := range h.lines {
			if len(given[i]) == 0 {
				line = i
				break
			}
		}
		given[line] = append(given[line], j)
	}
	return given
}

// apply returns the goods of the load, packed: of each thing one line a bag.
func (s *packer) apply(d *document.Document, p packing.Packing) []document.Good {
	lines := make(map[int][]document.Good) // what becomes of a line
	gone := make(map[int]bool)
	load := d.Load(s.load.ID)
	for _, h := range s.heaps(p) {
		given := s.share(h)
		last := h.lines[0]
		for _, i := range h.lines {
			gone[i] = len(given[i]) == 0
			for _, j := range given[i] {
				g := s.load.Goods[i]
				g.In, g.Quantity = s.load.Bags[j].ID, h.is[j]
				lines[i] = append(lines[i], g)
				last = i
			}
		}
		for _, j := range given[-1] {
			g := s.load.Goods[h.lines[0]]
			g.In, g.Quantity = s.load.Bags[j].ID, h.is[j]
			g.ID = d.NewIDs(document.SortGood, 1)[0]
			load.Goods = append(load.Goods, g) // takes the id
			lines[last] = append(lines[last], g)
		}
	}
	goods := make([]document.Good, 0, len(s.load.Goods))
	for i := range s.load.Goods {
		switch {
		case len(lines[i]) > 0:
			goods = append(goods, lines[i]...)
		case !gone[i]:
			goods = append(goods, s.load.Goods[i])
		}
	}
	return goods
}

// moves are what to take out of which bag, and where to put it.
func (s *packer) moves(h *heap) []move {
	var list []move
	less, more := map[int]int{}, map[int]int{}
	order := append([]int{-1}, s.bags...)
	for j := range h.was {
		if j >= 0 && !slices.Contains(order, j) {
			order = append(order, j) // a bag that is not on the bike
		}
	}
	slices.Sort(order)
	for _, j := range order {
		less[j], more[j] = max(0, h.was[j]-h.is[j]), max(0, h.is[j]-h.was[j])
	}
	id := func(j int) string {
		if j < 0 {
			return ""
		}
		return s.load.Bags[j].ID
	}
	for _, from := range order {
		for _, to := range order {
			n := min(less[from], more[to])
			if n == 0 {
				continue
			}
			less[from] -= n
			more[to] -= n
			m := move{Quantity: n, From: id(from), To: id(to)}
			for _, i := range h.lines {
				if g := &s.load.Goods[i]; m.Good == "" || g.In == m.From {
					m.Good, m.Name = g.ID, g.Name
				}
			}
			list = append(list, m)
		}
	}
	return list
}

// tell says where the search stands.
func (s *packer) tell() *packed {
	out := &packed{
		Build: s.build, Load: s.load.ID, Running: true, Done: s.solve == nil, Moves: []move{},
		Tolerance: round(s.task.Tolerance, 9), Before: s.terms(s.task.Start), Unrated: s.unrated(),
	}
	if out.Before.Keeps {
		out.Before.Perhaps = s.before
	}
	if s.short != nil {
		out.Shortage = s.tellShortage(s.short)
	}
	if s.solve == nil {
		return out
	}
	st := s.solve.Status()
	out.Done, out.Nodes = st.Done, st.Nodes
	out.Incumbent, out.Bound, out.Gap = known(st.Incumbent), known(st.Bound), known(st.Gap)
	if short := (*packing.Shortage)(nil); errors.As(st.Err, &short) {
		out.Shortage = s.tellShortage(short)
	}
	p := s.solve.Packing()
	if p == nil {
		return out
	}
	after := s.terms(p)
	if after.Keeps {
		if s.judged == nil || !reflect.DeepEqual(s.judged, p) {
			packed := s.load
			packed.Goods = slices.Clone(packed.Goods)
			s.judged, s.perhaps = p, s.undecided(s.apply(&document.Document{Loads: []document.Load{packed}}, p))
		}
		after.Perhaps = s.perhaps
	}
	out.After, out.Change = &after, changeOf(&out.Before, &after)
	out.Assignment = []assigned{}
	for _, h := range s.heaps(p) {
		given := s.share(h)
		for _, i := range append(slices.Clone(h.lines), -1) {
			good := s.load.Goods[h.lines[0]].ID // of what is to be a line of its own
			if i >= 0 {
				good = s.load.Goods[i].ID
			}
			for _, j := range given[i] {
				out.Assignment = append(out.Assignment, assigned{good, h.is[j], s.load.Bags[j].ID})
			}
		}
		out.Moves = append(out.Moves, s.moves(h)...)
	}
	return out
}

// unrated names the bags that have no permitted load.
func (s *packer) unrated() []string {
	list := []string{}
	for _, i := range s.bags {
		if b := &s.load.Bags[i]; !(b.Permitted > 0) {
			list = append(list, b.Name)
		}
	}
	return list
}

// undecided tells of the limits that a packing is held to which are kept only
// within the doubt of the masses, when goods are packed like that.
func (s *packer) undecided(goods []document.Good) string {
	load := s.load
	load.Goods = goods
	d := s.doc
	d.Loads = []document.Load{load}
	side := &report.Weigh(&d, s.words).Report.Sides[0]
	var list []string
	say := func(h *report.Headroom) {
		if h != nil && h.Verdict == string(ride.Near) {
			list = append(list, h.Text)
		}
	}
	for i := range side.Bags {
		say(side.Bags[i].Headroom)
	}
	if side.Ratings != nil {
		for i := range side.Ratings.List {
			if h := &side.Ratings.List[i]; slices.Contains(s.racks, h.What) {
				say(h)
			}
		}
	}
	return strings.Join(list, " ")
}

func (s *packer) tellShortage(short *packing.Shortage) *shortage {
	out := &shortage{Message: sentence(short).In(s.words), Goods: []string{}, Bags: []string{}}
	for _, k := range short.Goods {
		out.Goods = append(out.Goods, s.load.Goods[s.goods[k]].ID)
	}
	for _, j := range short.Bags {
		out.Bags = append(out.Bags, s.load.Bags[s.bags[j]].ID)
	}
	return out
}

// terms weighs a packing.
func (s *packer) terms(p packing.Packing) terms {
	f, a := s.task.Figures(p), &s.task.Aim
	t := terms{
		Aim: round(f.Aim, 6), FrontShare: round(f.FrontShare, 4), Height: round(f.Height*milli, 1), Aside: round(f.Aside*milli, 1),
		Radius: round(math.Sqrt(max(0, f.MeanSquare))*milli, 1),
		Costs: costs{
			Front: round(a.Front*math.Abs(f.FrontShare-a.FrontShare), 4), Low: round(a.Low*f.Height, 4),
			Balance: round(a.Balance*math.Abs(f.Aside), 4), Middle: round(a.Middle*f.MeanSquare, 4),
		},
	}
	if err := s.task.Keeps(p); err != nil {
		t.Breaks = sentence(err).In(s.words)
	} else {
		t.Keeps = true
	}
	return t
}

// known is a number, or null for one that is not finite.
func known(v float64) *float64 {
	if !units.Finite(v) {
		return nil
	}
	v = round(v, 9)
	return &v
}
