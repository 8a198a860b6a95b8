package newbike

import (
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// Frame is a sort of frame that a bike can begin with.
type Frame struct {
	ID    string                `json:"id"`
	Usual map[parts.Area]string `json:"usual"` // ids of the sets that such a bike usually has, where that is not the first
	Sizes []Size                `json:"sizes"`
	Parts []line                `json:"parts"`

	build json.RawMessage // figures that all sizes share
}

// Size is a size of a frame for wheels of one diameter.
type Size struct {
	ID    string          `json:"id"`
	Wheel int             `json:"wheel"` // diameter of their bead seats, mm
	Build json.RawMessage `json:"build"` // its figures, those of a document.Build
}

// line is a part of a bike that no set brings.
type line struct {
	Entry  string     `json:"entry"`
	If     parts.Need `json:"if"`     // comes only then
	Unless parts.Need `json:"unless"` // and then not
}

// belt is the condition of a part that goes with a belt.
const belt parts.Need = "belt"

// read is what data/frames/frames.json holds.
type read struct {
	Frames []struct {
		Frame
		Build json.RawMessage `json:"build"`
	} `json:"frames"`
	Cockpits map[string]json.RawMessage `json:"cockpits"` // figures of the bar and stem of a set
}

var frames = sync.OnceValue(func() (r read) {
	text, err := data.Files.ReadFile("frames/frames.json")
	if err == nil {
		err = json.Unmarshal(text, &r)
	}
	if err != nil {
		panic("newbike: the embedded frames: " + err.Error()) // kept from happening by a test
	}
	for i := range r.Frames {
		r.Frames[i].Frame.build = r.Frames[i].Build
	}
	return r
})

// Frames returns the sorts of frames, the simplest first. They must not be changed.
func Frames() []Frame {
	list := make([]Frame, len(frames().Frames))
	for i := range list {
		list[i] = frames().Frames[i].Frame
	}
	return list
}

// figures puts the figures of a frame in a size, and of its cockpit, into a build.
func (f *Frame) figures(b *document.Build, size *Size, cockpit string) {
	for _, text := range []json.RawMessage{f.build, size.Build} {
		fill(text, b)
	}
	if text, ok := frames().Cockpits[cockpit]; ok {
		fill(text, &b.Cockpit)
	}
}

func fill(text json.RawMessage, v any) {
	if err := json.Unmarshal(text, v); err != nil {
		panic("newbike: " + err.Error()) // kept from happening by a test
	}
}
