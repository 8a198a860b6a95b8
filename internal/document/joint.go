package document

import "strconv"

// Joint is a reading of a scale on which several parts lay together, as each of them
// keeps it. They share the reading in proportion to what they were taken to weigh;
// what the reading is off by they share as well, so it does not grow less in their
// sum.
type Joint struct {
	ID   string  `json:"id"`     // the same for all that lay on the scale
	Mass float64 `json:"mass_g"` // of one piece of this part, its share
}

// Weighed returns the reading with others that the part's mass is still a share of,
// or nil: a part that was weighed again, or of which a mass was typed, has left it,
// and a reading without an id has no others.
func (p *Part) Weighed() *Joint {
	if p.Joint == nil || p.Joint.ID == "" || p.Basis != Weighed || p.Joint.Mass != p.Mass {
		return nil
	}
	return p.Joint
}

// NextJoint returns an id that no joint reading of the document has.
func (d *Document) NextJoint() string {
	used := map[string]bool{}
	for i := range d.Builds {
		for j := range d.Builds[i].Parts {
			if k := d.Builds[i].Parts[j].Joint; k != nil {
				used[k.ID] = true
			}
		}
	}
	for n := 1; ; n++ {
		if id := "together-" + strconv.Itoa(n); !used[id] {
			return id
		}
	}
}

func (c *checker) joint(p *Part) {
	if p.Joint != nil && p.Joint.ID == "" {
		c.warn("joint.id", "document.joint")
	}
}
