package report

import "slices"

// InTable returns which builds are set side by side, as indices of the
// document's: those that Show.Table names, all where it names none that there is.
func (e *Evaluation) InTable() []int {
	var named, all []int
	for i := range e.Document.Builds {
		all = append(all, i)
		if slices.Contains(e.Document.Show.Table, e.Document.Builds[i].ID) {
			named = append(named, i)
		}
	}
	if named == nil {
		return all
	}
	return named
}

// Column tells of a build of the document, by its index, what stands over its
// column.
func (e *Evaluation) Column(i int) Column {
	b := &e.Document.Builds[i]
	c := Column{ID: b.ID, Name: BuildName(b)}
	if weighed := e.Builds[i]; weighed != nil {
		c.Weighed, c.Load, c.State = true, loadID(weighed.Load), string(weighed.Level.State())
	}
	return c
}
