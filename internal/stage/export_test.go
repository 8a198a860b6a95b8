package stage

import "steelyard/internal/scene"

// Camera returns the camera in use.
func (s *Stage) Camera() scene.Camera { return s.views[s.aspect].cam }

// Hovered returns the part that the pointer is on, "" for none.
func (s *Stage) Hovered() string { return s.hover }
