package document

import "steelyard/internal/words"

// assignIDs gives an id to everything that needs one and has none, and a new one,
// with a warning, to the second of two with the same.
func (d *Document) assignIDs() []Problem {
	var c idAssignment
	c.list(kindBuild, "b", len(d.Builds), d.buildIDs, func(i int) (*string, string) { return &d.Builds[i].ID, d.Builds[i].Name })
	for i := range d.Builds {
		b := &d.Builds[i]
		c.outer = entity{kindBuild, b.ID, b.Name}
		c.list(kindPart, "p", len(b.Parts), d.partIDs, func(i int) (*string, string) { return &b.Parts[i].ID, b.Parts[i].Name })
	}
	c.outer = entity{}
	c.list(kindRider, "r", len(d.Riders), d.riderIDs, func(i int) (*string, string) { return &d.Riders[i].ID, d.Riders[i].Name })
	c.list(kindLoad, "l", len(d.Loads), d.loadIDs, func(i int) (*string, string) { return &d.Loads[i].ID, d.Loads[i].Name })
	for i := range d.Loads {
		l := &d.Loads[i]
		c.outer = entity{kindLoad, l.ID, l.Name}
		c.list(kindBag, "b", len(l.Bags), d.bagIDs, func(i int) (*string, string) { return &l.Bags[i].ID, l.Bags[i].Name })
		c.list(kindGood, "g", len(l.Goods), d.goodIDs, func(i int) (*string, string) { return &l.Goods[i].ID, l.Goods[i].Name })
	}
	c.outer = entity{}
	c.list(kindDay, "d", len(d.Days), d.dayIDs, func(i int) (*string, string) { return &d.Days[i].ID, d.Days[i].Name })
	c.list(kindWeighIn, "w", len(d.WeighIns), d.weighInIDs, func(i int) (*string, string) { return &d.WeighIns[i].ID, d.WeighIns[i].Name })
	return c.problems
}

// idAssignment is assignIDs at work.
type idAssignment struct {
	outer    entity
	seen     map[string]bool           // ids of the list in hand
	taken    [numKinds]map[string]bool // ids in all lists of a sort, once they are needed
	problems []Problem
}

// list gives ids to the entities of one list. All returns the ids in use in all
// lists of the sort.
func (c *idAssignment) list(h kind, prefix string, n int, all func() map[string]bool, at func(int) (id *string, name string)) {
	if n == 0 {
		return
	}
	if c.seen == nil {
		c.seen = make(map[string]bool, n)
	}
	clear(c.seen)
	for i := range n {
		id, name := at(i)
		if *id == "" || c.seen[*id] {
			if c.taken[h] == nil {
				c.taken[h] = all()
			}
			old := *id
			if entityInfos[h].inner {
				*id = FreshID(prefix, c.taken[h])
			} else { // there are few, and they may have the smallest number
				*id = newID(prefix, c.taken[h])
				c.taken[h][*id] = true
			}
			if old != "" {
				c.renamed(entity{h, *id, name}, old)
			}
		}
		c.seen[*id] = true
	}
}

func (c *idAssignment) renamed(t entity, old string) {
	p := Problem{Severity: SeverityWarning, Field: "id"}
	c.outer.put(&p)
	t.put(&p)
	p.Message = placed(t.title(), c.outer.title(), words.Tell("document.id.renamed",
		"old", words.Quote(old), "one", words.Tell("document.one."+entityInfos[t.hold].name), "id", words.Quote(t.id)))
	c.problems = append(c.problems, p)
}
