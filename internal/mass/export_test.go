package mass

// Slopes opens the gradient of a figure to the tests.
func (f *Figure) Slopes(items []Item, i int) (mass float64, place Vec) { return f.slopes(items, i) }
