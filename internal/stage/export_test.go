package stage

// Hovered returns the part that the pointer is on, "" for none.
func (s *Stage) Hovered() string { return s.hover }
