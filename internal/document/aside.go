package document

import "slices"

// Aside is a part that is on no build now but whose mass is known better than
// the catalogue's: it was weighed, or stated, before something else took its
// place.
type Aside struct {
	Build string `json:"build"`          // the id of the build that it was on
	With  string `json:"with,omitempty"` // the drive that the build had: "derailleur", "gear-hub" or "crank-gearbox"
	Part  Part   `json:"part"`
}

// Better reports whether a mass of this basis is better known than one of the
// other: weighed before stated before typical before guessed.
func (b Basis) Better(than Basis) bool {
	return slices.Index(Bases, b) < slices.Index(Bases, than)
}
