package bridge

import (
	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/newbike"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// newBike is a bike to begin with, and what else it could have been made of.
type newBike struct {
	Frames   []option           `json:"frames"`
	Frame    string             `json:"frame"`
	Sizes    []option           `json:"sizes"`
	Size     string             `json:"size"`
	Wheels   []int              `json:"wheels"` // those of that size, mm
	Wheel    int                `json:"wheel"`
	Areas    []newBikeArea      `json:"areas"`
	Parts    int                `json:"parts"` // lines of its list
	Total    report.Figure      `json:"total"`
	Geometry []report.Length    `json:"geometry"`
	Remarks  []string           `json:"remarks"`
	Document *document.Document `json:"document"`
}

// option is something that can be chosen.
type option struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Text string `json:"text"` // says more
}

// newBikeArea is an area with the sets that can be chosen for it.
type newBikeArea struct {
	Area     parts.Area `json:"area"`
	Chosen   string     `json:"chosen"`
	Optional bool       `json:"optional"`
	Sets     []named    `json:"sets"`
}

type named struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// newBike takes what a bike is to be made of, JSON: the newBikeChoice of
// newbike.schema.json. It answers with that bike, what it weighs, and what else
// there is to choose from: newbike.schema.json. Nothing is kept, so looking at a
// bike and making it are the same call.
func (s *Session) newBike(choice string) string {
	var c newbike.Choice
	if err := json.Unmarshal([]byte(choice), &c); err != nil {
		return s.problem("", "bridge.options", "why", err)
	}
	bike := newbike.Make(c, s.words)
	told := func(id string) option {
		return option{id, s.words.Label("newbike." + id), s.words.Label("newbike." + id + ".text")}
	}
	all := newbike.Frames()
	out := newBike{Frame: bike.Frame.ID, Size: bike.Size.ID, Wheel: bike.Size.Wheel, Remarks: []string{}, Document: bike.Document, Parts: len(bike.Document.Builds[0].Parts)}
	for i := range all {
		out.Frames = append(out.Frames, told(all[i].ID))
	}
	last := ""
	for i := range bike.Frame.Sizes {
		size := &bike.Frame.Sizes[i]
		if size.ID != last {
			last = size.ID
			out.Sizes = append(out.Sizes, told(last))
		}
		if last == out.Size {
			out.Wheels = append(out.Wheels, size.Wheel)
		}
	}
	for _, o := range bike.Offers {
		area := newBikeArea{Area: o.Area, Chosen: o.Chosen, Optional: o.Optional, Sets: []named{}}
		for _, set := range o.Sets {
			area.Sets = append(area.Sets, named{set.ID, set.Name().In(s.words)})
		}
		out.Areas = append(out.Areas, area)
	}
	for _, r := range bike.Remarks {
		out.Remarks = append(out.Remarks, r.In(s.words))
	}
	weighed := &report.Weigh(bike.Document, s.words).Report.Builds[0]
	out.Total, out.Geometry = weighed.Figures[0], weighed.Geometry
	return answer(out)
}
