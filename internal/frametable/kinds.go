package frametable

import (
	"sort"
	"strings"
	"sync"

	"steelyard/internal/document"
	"steelyard/internal/spelling"
	"steelyard/internal/words"
)

// kind is a figure that a table may give.
type kind struct {
	id       string                         // the field of a build that it goes into, or the key of a length that follows from others
	of       func(*document.Build) *float64 // nil for a length that follows
	from, to float64                        // what it usually is: common practice, no source
	names    string                         // in English and German, folded
}

// The ids of what follows from other figures, and of names that are no figures.
const (
	wheelbase   = "wheelbase"
	trail       = "trail"
	frontCentre = "front_centre"
	bbHeight    = "bb_height"
	topTube     = "top_tube"
	sizes       = "sizes"
)

// kinds are all of them.
var kinds = []kind{
	{"frame.stack_mm", func(b *document.Build) *float64 { return &b.Frame.Stack }, 350, 800, "stack,stack height,stackhohe"},
	{"frame.reach_mm", func(b *document.Build) *float64 { return &b.Frame.Reach }, 250, 600, "reach,frame reach"},
	{"frame.head_tube_mm", func(b *document.Build) *float64 { return &b.Frame.HeadTube }, 60, 350, "head tube,headtube,head tube length,headtube length,ht,ht length,steuerrohr,steuerrohrlange,steuerkopf,steuerkopflange,steuerkopfrohr"},
	{"frame.head_angle_deg", func(b *document.Build) *float64 { return &b.Frame.HeadAngle }, 60, 76, "head angle,head tube angle,headtube angle,steering angle,ha,hta,lenkwinkel,lenkkopfwinkel,steuerrohrwinkel,steuerkopfwinkel,steuerwinkel"},
	{"frame.seat_tube_mm", func(b *document.Build) *float64 { return &b.Frame.SeatTube }, 250, 700, "seat tube,seattube,seat tube length,seattube length,st,sitzrohr,sitzrohrlange,rahmenhohe"},
	{"frame.seat_angle_deg", func(b *document.Build) *float64 { return &b.Frame.SeatAngle }, 65, 82, "seat angle,seat tube angle,seattube angle,sa,sta,sitzwinkel,sitzrohrwinkel"},
	{"frame.chainstay_mm", func(b *document.Build) *float64 { return &b.Frame.Chainstay }, 300, 600, "chainstay,chainstays,chain stay,chain stays,chainstay length,chain stay length,rear centre,rear center,cs,kettenstrebe,kettenstreben,kettenstrebenlange,hinterbaulange"},
	{"frame.bb_drop_mm", func(b *document.Build) *float64 { return &b.Frame.BBDrop }, -100, 100, "bb drop,bottom bracket drop,drop,tretlagerabsenkung,innenlagerabsenkung,absenkung"},
	{"fork.length_mm", func(b *document.Build) *float64 { return &b.Fork.Length }, 280, 650, "fork length,axle to crown,axle crown,crown to axle,a2c,atc,a c,gabellange,gabeleinbaulange,gabeleinbauhohe,einbaulange,einbauhohe"},
	{"fork.offset_mm", func(b *document.Build) *float64 { return &b.Fork.Offset }, 0, 90, "fork offset,offset,rake,fork rake,gabelvorbiegung,vorbiegung,gabeloffset,gabelversatz"},
	{"fork.travel_mm", func(b *document.Build) *float64 { return &b.Fork.Travel }, 0, 230, "fork travel,front travel,suspension travel front,federweg gabel,federweg vorn,federweg vorne,gabelfederweg"},
	{"cockpit.stem_mm", func(b *document.Build) *float64 { return &b.Cockpit.Stem }, 20, 160, "stem,stem length,vorbau,vorbaulange"},
	{"cockpit.bar_width_mm", func(b *document.Build) *float64 { return &b.Cockpit.BarWidth }, 300, 900, "bar width,handlebar width,handlebar,lenkerbreite"},
	{"cranks.length_mm", func(b *document.Build) *float64 { return &b.Cranks.Length }, 100, 200, "crank length,crank arm length,cranks,kurbellange,kurbelarmlange"},
	{wheelbase, nil, 700, 1500, "wheelbase,wheel base,radstand"},
	{trail, nil, 10, 180, "trail,nachlauf"},
	{frontCentre, nil, 400, 1000, "front centre,front center,fc"},
	{bbHeight, nil, 200, 420, "bb height,bottom bracket height,tretlagerhohe,innenlagerhohe"},
	{topTube, nil, 400, 750, "top tube,toptube,top tube length,tt,ett,oberrohr,oberrohrlange"},
	{sizes, nil, 0, 0, "size,sizes,frame size,grosse,grossen,rahmengrosse,rahmengrossen"},
}

func (k *kind) angle() bool { return strings.HasSuffix(k.id, "_deg") }

// unit is what it is told in.
func (k *kind) unit() string {
	if k.angle() {
		return "deg"
	}
	return "mm"
}

// label is what it is called.
func (k *kind) label() words.Message {
	if k.of == nil {
		return words.Tell("geometry." + k.id)
	}
	return words.Tell("pose.name." + strings.TrimSuffix(strings.TrimSuffix(k.id, "_mm"), "_deg"))
}

// kindOf returns the kind with an id.
func kindOf(id string) *kind {
	for i := range kinds {
		if kinds[i].id == id {
			return &kinds[i]
		}
	}
	return nil
}

// phrase is a name of a kind, in words.
type phrase struct {
	words []string
	kind  *kind
}

// phrases are all names, those of most words first.
var phrases = sync.OnceValue(func() []phrase {
	var all []phrase
	for i := range kinds {
		for name := range strings.SplitSeq(kinds[i].names, ",") {
			all = append(all, phrase{strings.Fields(name), &kinds[i]})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return len(all[i].words) > len(all[j].words) })
	return all
})

// at returns the longest phrase that a list of words begins with.
func at(list []string) *phrase {
	all := phrases()
next:
	for i := range all {
		p := &all[i]
		if len(p.words) > len(list) {
			continue
		}
		for j, w := range p.words {
			if list[j] != w {
				continue next
			}
		}
		return p
	}
	return nil
}

// others are words that make of a figure another one.
var others = map[string]bool{
	"actual": true, "real": true, "tatsachlich": true, "tatsachlicher": true, "tatsachliche": true, "reell": true, "reeller": true,
	"mechanical": true, "standover": true, "saddle": true, "max": true, "min": true, "minimum": true, "maximum": true,
	"clearance": true, "diameter": true, "durchmesser": true, "material": true, "type": true, "typ": true,
}

// named finds the kind that a name tells, and whether it is that of another figure,
// such as the actual length where the effective one is asked for. A name of two
// letters must be all there is.
func named(name string) (k *kind, other bool) {
	list := spelling.Words(name)
	var found *phrase
	for i := range list {
		if others[list[i]] {
			other = true
		}
		p := at(list[i:])
		if p == nil || len(p.words) == 1 && len(p.words[0]) <= 3 && len(list) > 1+unitsIn(list) {
			continue
		}
		if found == nil || len(p.words) > len(found.words) {
			found = p
		}
	}
	if found == nil {
		return nil, false
	}
	return found.kind, other
}

// unitsIn counts the words of a list that are units.
func unitsIn(list []string) (n int) {
	for _, w := range list {
		if unitNamed(w) != "" {
			n++
		}
	}
	return n
}

// unitNamed returns the unit of a word: mm, cm, in or deg.
func unitNamed(w string) string {
	switch w {
	case "mm", "millimeter", "millimetres":
		return "mm"
	case "cm", "centimeter", "centimetres", "zentimeter":
		return "cm"
	case "in", "inch", "inches", "zoll", `"`, "″", "”":
		return "in"
	case "deg", "degree", "degrees", "grad", "°", "º":
		return "deg"
	}
	return ""
}
