package rooms

import (
	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/road"
)

// RoadSetting is a value that was said of a bike, or taken for want of one. The
// fields are those of the build in its document, in the setting's unit; what has
// none follows from the others.
type RoadSetting struct {
	Key       string   `json:"key"`
	Label     string   `json:"label"`
	Unit      string   `json:"unit"`
	Value     float64  `json:"value"`
	Plus      float64  `json:"plus"` // half-width
	Typical   bool     `json:"typical"`
	Field     string   `json:"field,omitempty"`
	PlusField string   `json:"plus_field,omitempty"` // of the half-width
	Forget    []string `json:"forget,omitempty"`     // what to take out of the build for the typical value
}

// RoadWays are the ways in which a thing of a bike can be said, such as its tyre by
// a pressure or by a test.
type RoadWays struct {
	Key   string    `json:"key"`
	Label string    `json:"label"`
	Way   string    `json:"way"` // the one in use
	Ways  []RoadWay `json:"ways"`
}

// RoadWay is one of them. What is written leaves the motion about as it is.
type RoadWay struct {
	Key   string      `json:"key"`
	Label string      `json:"label"`
	Write []RoadWrite `json:"write"`
}

// RoadWrite is a field of a build and what to write there; nothing is to take it
// out.
type RoadWrite struct {
	Field string   `json:"field"`
	Value *float64 `json:"value"`
}

// RoadRating is what a maker permits: a bound on what is set, no figure of the sum.
type RoadRating struct {
	Key   string   `json:"key"`
	Label string   `json:"label"`
	Unit  string   `json:"unit"`
	Field string   `json:"field"`
	Value *float64 `json:"value"` // nothing: nobody said
}

// What somebody starts from who says a thing in another way, where the motion does
// not tell it; common practice, no source.
const (
	startLoad       = 20e3 // g, of a test of a tyre
	startLoadWithin = 200
	startDrop       = 2.5 // mm
	startDropWithin = 0.2
	startRate       = 60e3  // N/m
	startDamper     = 500.0 // N s/m
)

// tell notes a value that was said or taken.
func (b *roughBike) tell(label func(string) string, key, unit string, factor, value, half float64, typical bool) {
	b.settings = append(b.settings, RoadSetting{Key: key, Label: label("set." + key), Unit: unit, Value: factor * value, Plus: factor * half, Typical: typical})
}

// at says in which fields of the build the last setting and its half-width
// stand, and which of them are to be taken out for the typical one.
func (b *roughBike) at(field, plusField string, forget ...string) {
	s := &b.settings[len(b.settings)-1]
	s.Field, s.PlusField = field, plusField
	if !s.Typical {
		s.Forget = forget
	}
}

// ratings are what the makers permit of both tyres.
func ratings(s *document.Setup, label func(string) string) []RoadRating {
	list := []RoadRating{}
	for side := range road.Both {
		end := endOf(s, side)
		for _, r := range []struct {
			key   string
			value *float64
		}{{"tyre_least", end.TyreLeast}, {"tyre_most", end.TyreMost}, {"rim_most", end.RimMost}} {
			key := r.key + "_" + side.String()
			list = append(list, RoadRating{key, label("set." + key), "bar", "setup." + side.String() + "." + r.key + "_bar", r.value})
		}
	}
	return list
}

// endOf is what an end is set up with, never nil.
func endOf(s *document.Setup, side road.Side) *document.EndSetup {
	var end *document.EndSetup
	if s != nil && side == road.Front {
		end = s.Front
	} else if s != nil {
		end = s.Rear
	}
	if end == nil {
		end = &document.EndSetup{}
	}
	return end
}

// waysOf are the ways in which tyres, springs and dampers of a bike can be said.
// The model may be nil.
func (b *roughBike) waysOf(s *document.Setup, m *road.Model, label func(string) string) []RoadWays {
	list := []RoadWays{}
	put := func(key string, side road.Side, used int, ways ...RoadWay) {
		for i := range ways {
			ways[i].Label = label("way." + ways[i].Key)
		}
		key += "_" + side.String()
		list = append(list, RoadWays{key, label("ways." + key), ways[used].Key, ways})
	}
	for side := range road.Both {
		end, at := endOf(s, side), "setup."+side.String()+"."
		write := func(field string, value float64) RoadWrite {
			value = report.Decimal(value, 2)
			return RoadWrite{at + field, &value}
		}
		out := func(field string) RoadWrite { return RoadWrite{Field: at + field} }
		used := func(other bool) int {
			if other {
				return 1
			}
			return 0
		}
		rate, damper := startRate, startDamper
		drop := startDrop
		if k := b.Ends[side].Tyre.Rate.Value; k > 0 {
			drop = startLoad * road.Gravity / k
		}
		if m != nil {
			rate, damper = m.SpringRate(side), m.Damper(side)
		}
		put("tyre", side, used(end.Drop != nil),
			RoadWay{Key: "pressure", Write: []RoadWrite{out("drop")}},
			RoadWay{Key: "drop", Write: []RoadWrite{
				write("drop.load_g", startLoad), write("drop.load_within_g", startLoadWithin), write("drop.drop_mm", drop), write("drop.drop_within_mm", startDropWithin),
			}})
		if b.Ends[side].Spring == nil {
			continue
		}
		put("spring", side, used(end.Spring != nil),
			RoadWay{Key: "sag", Write: []RoadWrite{out("spring_n_mm"), out("spring_within_n_mm")}},
			RoadWay{Key: "rate", Write: []RoadWrite{write("spring_n_mm", rate/1e3)}})
		put("damping", side, used(end.Damper != nil),
			RoadWay{Key: "share", Write: []RoadWrite{out("damper_n_s_m"), out("damper_within_n_s_m")}},
			RoadWay{Key: "measured", Write: []RoadWrite{write("damper_n_s_m", damper)}})
	}
	return list
}
