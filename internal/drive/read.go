package drive

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/words"
)

// Drive is what turns the rear wheel, from the cranks on. What is not fitted is
// empty.
type Drive struct {
	Rings []int     // teeth, smallest first
	Cogs  []int     // teeth, largest first: the order of their gears
	Front []BoxGear // of a gearbox at the cranks
	Rear  []BoxGear // of a gear hub

	Belt    bool
	Pulleys int // that guide or tighten the chain

	Fitted Fitted
	// Typical are the ids of parts that do not say their gears themselves: those
	// of their entry of the catalogue are taken.
	Typical []string
}

// Fitted are ids of the parts that a drive was read off, "" where there is none.
type Fitted struct {
	Chain, Cogs, Front, Rear, Cranks, Guide string
	Rings                                   []string
}

// MaxGears is how many gears a drive may have; more is told as a problem.
const MaxGears = 2000

// Read reads the drive off the parts of a build. It is nil when a problem is an
// error: a ring or a cog is missing, two parts do the same, or the gearing of
// one is wrong; each is told with the part by name. Pieces of a quantity of 0 are
// not fitted.
func Read(list []document.Part) (*Drive, []document.Problem) {
	r := reader{d: &Drive{}}
	var chain, cogs, front, rear, cranks, guide, derailleur, shifter *document.Part
	var bareRing, bareCog *document.Part // which say no teeth: spacers are among them
	var rings []*document.Part
	for i := range list {
		p := &list[i]
		if p.Quantity == 0 {
			continue
		}
		switch p.Kind {
		case "chain", "belt":
			r.only(&chain, p)
			r.d.Belt = p.Kind == "belt"
		case "chainring":
			if r.gearing(p) != nil {
				rings = append(rings, p)
			} else {
				bareRing = p
			}
		case "crank":
			r.only(&cranks, p)
			if r.gearing(p) != nil {
				rings = append(rings, p)
			}
		case "cassette", "cog":
			if r.gearing(p) != nil || p.Kind == "cassette" {
				r.only(&cogs, p)
			} else {
				bareCog = p
			}
		case "crank-gearbox":
			r.only(&front, p)
		case "gear-hub":
			r.only(&rear, p)
		case "derailleur":
			derailleur = p
			r.d.Pulleys = 2
			guide = p
		case "tensioner":
			if guide == nil {
				guide, r.d.Pulleys = p, 2
			}
		case "front-derailleur":
			shifter = p
		}
	}
	if cranks == nil {
		r.warn("cranks")
	} else {
		r.d.Fitted.Cranks = cranks.ID
	}
	if chain == nil {
		r.warn("chain")
	} else {
		r.d.Fitted.Chain = chain.ID
	}
	if guide != nil {
		r.d.Fitted.Guide = guide.ID
	}
	if len(rings) == 0 && bareRing != nil {
		rings = append(rings, bareRing)
	}
	if cogs == nil {
		cogs = bareCog
	}
	r.rings(rings)
	if cogs == nil {
		r.fail("", "", "drive.missing", "what", words.Tell("drive.part.cogs"))
	} else {
		r.d.Fitted.Cogs = cogs.ID
		r.d.Cogs = r.teeth(cogs)
		slices.Sort(r.d.Cogs)
		r.d.Cogs = slices.Compact(r.d.Cogs)
		slices.Reverse(r.d.Cogs)
	}
	if front != nil {
		r.d.Fitted.Front, r.d.Front = front.ID, r.box(front)
	}
	if rear != nil {
		r.d.Fitted.Rear, r.d.Rear = rear.ID, r.box(rear)
	}
	if len(r.d.Cogs) > 1 && derailleur == nil {
		r.warn("derailleur")
	}
	if len(r.d.Rings) > 1 && shifter == nil {
		r.warn("front-derailleur")
	}
	if n := r.d.count(); n > MaxGears {
		r.fail("", "", "drive.gears.many", "n", n, "most", MaxGears)
	}
	if slices.ContainsFunc(r.problems, func(p document.Problem) bool { return p.Severity == document.SeverityError }) {
		return nil, r.problems
	}
	return r.d, r.problems
}

// count is how many gears there are.
func (d *Drive) count() int {
	return len(d.Rings) * len(d.Cogs) * max(1, len(d.Front)) * max(1, len(d.Rear))
}

type reader struct {
	d        *Drive
	problems []document.Problem
}

func (r *reader) fail(part, field, key string, pairs ...any) {
	r.problems = append(r.problems, document.Problem{Severity: document.SeverityError, Part: part, Field: field, Message: words.Tell(key, pairs...)})
}

// warn tells of a part without which there are gears nevertheless.
func (r *reader) warn(what string) {
	r.problems = append(r.problems, document.Problem{
		Severity: document.SeverityWarning, Message: words.Tell("drive.missing.still", "what", words.Tell("drive.part."+what)),
	})
}

// only takes a part of which there may be one.
func (r *reader) only(at **document.Part, p *document.Part) {
	switch {
	case *at != nil:
		r.fail(p.ID, "", "drive.doubled", "one", words.Quote((*at).Name), "other", words.Quote(p.Name))
	case p.Quantity > 1:
		r.fail(p.ID, "quantity", "drive.pieces", "n", p.Quantity, "name", words.Quote(p.Name))
		*at = p
	default:
		*at = p
	}
}

// gearing returns the gearing of a part, or else of its entry; nil when neither
// says any.
func (r *reader) gearing(p *document.Part) *document.Gearing {
	if !p.Gearing.IsZero() {
		return p.Gearing
	}
	if e := parts.EntryByID(p.Catalogue); e != nil && e.Kind == p.Kind && !e.Gearing.IsZero() {
		return e.Gearing
	}
	return nil
}

// sound returns the gearing of a part if gears can be read off it.
func (r *reader) sound(p *document.Part) *document.Gearing {
	g := r.gearing(p)
	if g == nil {
		return nil
	}
	if g != p.Gearing {
		r.d.Typical = append(r.d.Typical, p.ID)
	}
	wrong := g.Check()
	for _, w := range wrong {
		w.Part = p.ID
		w.Message = words.Tell("drive.gearing", "name", words.Quote(p.Name), "message", w.Message)
		r.problems = append(r.problems, w)
	}
	if len(wrong) > 0 {
		return nil
	}
	return g
}

// teeth returns those of a ring or of cogs.
func (r *reader) teeth(p *document.Part) []int {
	g := r.gearing(p)
	switch {
	case g == nil || len(g.Teeth) == 0:
		r.fail(p.ID, "gearing.teeth", "drive.teeth.none", "name", words.Quote(p.Name))
	default:
		if g = r.sound(p); g != nil {
			return slices.Clone(g.Teeth)
		}
	}
	return nil
}

// box returns the gears of a hub or gearbox.
func (r *reader) box(p *document.Part) []BoxGear {
	g := r.gearing(p)
	switch {
	case g == nil || len(g.Teeth) > 0 && len(g.Ratios) == 0 && len(g.Stages) == 0:
		r.fail(p.ID, "gearing.ratios", "drive.ratios.none", "name", words.Quote(p.Name))
	default:
		if g = r.sound(p); g != nil {
			return BoxGears(g)
		}
	}
	return nil
}

func (r *reader) rings(list []*document.Part) {
	if len(list) == 0 {
		r.fail("", "", "drive.missing", "what", words.Tell("drive.part.ring"))
		return
	}
	of := make(map[int]*document.Part)
	for _, p := range list {
		if p.Quantity > 1 {
			r.fail(p.ID, "quantity", "drive.pieces", "n", p.Quantity, "name", words.Quote(p.Name))
		}
		r.d.Fitted.Rings = append(r.d.Fitted.Rings, p.ID)
		for _, n := range r.teeth(p) {
			if other := of[n]; other != nil && other != p {
				r.fail(p.ID, "", "drive.doubled", "one", words.Quote(other.Name), "other", words.Quote(p.Name))
			} else if other == nil {
				of[n] = p
				r.d.Rings = append(r.d.Rings, n)
			}
		}
	}
	slices.Sort(r.d.Rings)
}
