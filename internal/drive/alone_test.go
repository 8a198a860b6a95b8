package drive

import (
	"slices"
)

// What only the tests ask.

// Sources are the names of all that the losses rest on.
func (l *Losses) Sources() []string {
	var names []string
	for _, q := range l.quantities() {
		if q.Source != "" {
			names = append(names, q.Source)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// quantities are where all of them stand.
func (l *Losses) quantities() []*Quantity {
	all := []*Quantity{
		&l.Chain.Friction, &l.Chain.Slack, &l.Chain.PulleyTorque, &l.Belt.Share, &l.Belt.Torque,
		&l.Front.Mesh, &l.Front.Meshes, &l.Front.Torque, &l.Rear.Mesh, &l.Rear.Meshes, &l.Rear.Torque, &l.Crank,
	}
	for i := range l.Stated {
		all = append(all, &l.Stated[i].Share, &l.Stated[i].Power)
	}
	if l.Whole != nil {
		all = append(all, &l.Whole.Efficiency)
	}
	return all
}

// Decided reports whether a difference is larger than what it is known within.
func (f Figure) Decided() bool { return max(f.Value, -f.Value) > f.Plus() }
