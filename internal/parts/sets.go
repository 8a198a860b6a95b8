package parts

import (
	"fmt"
	"strconv"
	"strings"
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/words"
)

// Area is a stretch of the bike that is changed as one.
type Area string

// The areas, in the order in which they are offered.
const (
	Drivetrain Area = "drivetrain"
	FrontWheel Area = "front-wheel"
	RearWheel  Area = "rear-wheel"
	Brakes     Area = "brakes"
	Cockpit    Area = "cockpit"
	Lighting   Area = "lighting"
	Racks      Area = "racks"
	Mudguards  Area = "mudguards"
)

// Areas are all of them.
var Areas = []Area{Drivetrain, FrontWheel, RearWheel, Brakes, Cockpit, Lighting, Racks, Mudguards}

// OtherSize is the condition of a part that comes along only with a wheel of
// another size than the one before, or where there was none: tyre and tube.
const OtherSize Need = "other-size"

// Set is a list of parts that are fitted together: a drivetrain, a wheel, brakes.
type Set struct {
	ID       string    `json:"id"`
	Area     Area      `json:"area"`
	Drive    Need      `json:"drive,omitempty"` // of a drivetrain: GearHub, Gearbox or Derailleur
	BeadSeat float64   `json:"bead_seat_mm,omitempty"`
	Needs    []Need    `json:"needs,omitempty"` // what the bike must have for it
	Parts    []SetPart `json:"parts"`

	base string // its id without the size of the wheel
}

// Name is what the set is called.
func (s *Set) Name() words.Message {
	name := words.Tell("set." + s.base)
	if s.BeadSeat == 0 {
		return name
	}
	return words.Tell("set.sized", "name", name, "size", strconv.FormatFloat(s.BeadSeat, 'f', -1, 64))
}

// SetPart is a line of a set.
type SetPart struct {
	// Entry is the id of an entry of the catalogue. In it {size} is the bead seat
	// of the wheel, and {width} the width of the tyre that comes nearest.
	Entry string `json:"entry"`
	// If is what the bike must have for the part to come.
	If Need `json:"if,omitempty"`
	// Keep says that a part of the same kind, which is on the bike already and
	// needs the same, is as good.
	Keep bool `json:"keep,omitempty"`
}

// Sets returns the sets that this program comes with, wheels once for each
// size. The list is shared: it must not be changed.
func Sets() []Set { return sets() }

// SetByID returns the set with that id, nil if there is none. It must not be
// changed.
func SetByID(id string) *Set {
	all := sets()
	for i := range all {
		if all[i].ID == id {
			return &all[i]
		}
	}
	return nil
}

var sets = sync.OnceValue(func() []Set {
	var all []Set
	for _, name := range []string{"drivetrain", "wheels", "brakes", "cockpit", "electrics", "racks"} {
		some, err := readSets("sets/" + name + ".json")
		if err != nil {
			panic("parts: the embedded sets: " + err.Error()) // kept from happening by a test
		}
		all = append(all, some...)
	}
	return all
})

// readSets reads a file of sets. One that comes in sizes stands in the file once,
// and becomes a set for each size.
func readSets(name string) ([]Set, error) {
	text, err := data.Files.ReadFile(name)
	if err != nil {
		return nil, err
	}
	var lines []struct {
		Set
		Sizes []float64 `json:"sizes"`
	}
	if err := json.Unmarshal(text, &lines); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	var all []Set
	for _, l := range lines {
		l.base = l.ID
		if len(l.Sizes) == 0 {
			all = append(all, l.Set)
		}
		for _, size := range l.Sizes {
			s, bead := l.Set, strconv.FormatFloat(size, 'f', -1, 64)
			s.ID, s.BeadSeat = s.ID+"-"+bead, size
			all = append(all, s)
		}
	}
	return all, nil
}

// EntryFor returns the entry that a line of a set stands for on a wheel of the
// given bead seat with a tyre of the given width, both in mm. It is nil when the
// catalogue has none for that wheel.
func (p *SetPart) EntryFor(beadSeat, width float64) *Entry {
	id := strings.ReplaceAll(p.Entry, "{size}", strconv.FormatFloat(beadSeat, 'f', -1, 64))
	before, after, any := strings.Cut(id, "{width}")
	if !any {
		return EntryByID(id)
	}
	var nearest *Entry
	off := 0.0
	for i := range catalogue() {
		e := &catalogue()[i]
		if !strings.HasPrefix(e.ID, before) || !strings.HasSuffix(e.ID, after) || len(e.ID) < len(before)+len(after) {
			continue
		}
		w, err := strconv.ParseFloat(e.ID[len(before):len(e.ID)-len(after)], 64)
		if err != nil {
			continue
		}
		if d := max(w-width, width-w); nearest == nil || d < off {
			nearest, off = e, d
		}
	}
	return nearest
}
