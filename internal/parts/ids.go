package parts

import (
	"slices"
	"strconv"
)

// NewID returns the first of prefix1, prefix2, ... that is not taken: short,
// and the same for the same document.
func NewID(prefix string, taken func(id string) bool) string {
	for n := 1; ; n++ {
		if id := prefix + strconv.Itoa(n); !taken(id) {
			return id
		}
	}
}

// freshPartID returns an id for a part and marks it as taken. It looks on from
// how many are taken, so that naming many parts in a row stays linear.
func freshPartID(taken map[string]bool) string {
	for n := len(taken) + 1; ; n++ {
		if id := "p" + strconv.Itoa(n); !taken[id] {
			taken[id] = true
			return id
		}
	}
}

// NewPartID returns an id for a part that no part of any build has. Ids are
// fresh in the whole document, not only in the build, so that the same id in
// two builds always means a common ancestor: Match relies on it.
func (d *Document) NewPartID() string {
	taken := d.partIDs()
	return NewID("p", func(id string) bool { return taken[id] })
}

// NewBuildID returns an id for a build that no build has.
func (d *Document) NewBuildID() string {
	return NewID("b", func(id string) bool { return d.Build(id) != nil })
}

// partIDs returns the ids of the parts of all builds.
func (d *Document) partIDs() map[string]bool {
	n := 0
	for i := range d.Builds {
		n += len(d.Builds[i].Parts)
	}
	ids := make(map[string]bool, n)
	for i := range d.Builds {
		for j := range d.Builds[i].Parts {
			ids[d.Builds[i].Parts[j].ID] = true
		}
	}
	return ids
}

// Build returns the build with that id, nil if there is none. The pointer is
// into the document and holds until a build is added.
func (d *Document) Build(id string) *Build {
	for i := range d.Builds {
		if d.Builds[i].ID == id {
			return &d.Builds[i]
		}
	}
	return nil
}

// Part returns the part with that id, nil if there is none. The pointer is into
// the build and holds until a part is added.
func (b *Build) Part(id string) *Part {
	for i := range b.Parts {
		if b.Parts[i].ID == id {
			return &b.Parts[i]
		}
	}
	return nil
}

// CopyBuild adds a copy of a build to the end of the document, under a new id
// and the given name, and returns it. The parts keep their ids: that is how the
// difference of the two knows which of them is which. It returns nil when there
// is no such build.
func (d *Document) CopyBuild(id, name string) *Build {
	from := d.Build(id)
	if from == nil {
		return nil
	}
	c := *from
	c.ID = d.NewBuildID()
	c.Name = name
	c.Parts = slices.Clone(from.Parts)
	for i := range c.Parts {
		if at := c.Parts[i].At; at != nil {
			place := *at
			c.Parts[i].At = &place
		}
	}
	d.Builds = append(d.Builds, c)
	return &d.Builds[len(d.Builds)-1]
}
