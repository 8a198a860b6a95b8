package drive

// Vary puts another value into each quantity that has a source.
func (l *Losses) Vary(value func(q Quantity) float64) {
	for _, q := range l.quantities() {
		if q.Source != "" {
			q.Value = value(*q)
		}
	}
}
