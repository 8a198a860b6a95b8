package parts

import (
	"fmt"
	"io/fs"
	"path"
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
)

// Entry is a part of the catalogue: a Part to copy, and words to find it by.
type Entry struct {
	ID        string           `json:"id"`
	Name      string           `json:"name"`
	Kind      string           `json:"kind"`
	Mass      float64          `json:"mass_g"`
	HalfWidth float64          `json:"half_width_g"`
	Basis     document.Basis   `json:"basis"`
	Station   string           `json:"station"`
	Offset    document.Vec3    `json:"offset_mm"`
	Within    float64          `json:"within_mm"`
	Carrier   document.Carrier `json:"carrier"`
	Shape     document.Shape   `json:"shape"`
	Quantity  int              `json:"quantity"` // how many a bike usually takes
	Needs     []Need           `json:"needs,omitempty"`
	Search    []string         `json:"search"` // further words that a user would type
	Note      string           `json:"note,omitempty"`

	Gearing *document.Gearing `json:"gearing,omitempty"`
}

// Catalogue returns the parts that this program comes with, by file and in the
// order of each file. The list is shared: it must not be changed.
func Catalogue() []Entry { return catalogue() }

var catalogue = sync.OnceValue(func() []Entry {
	entries, err := readCatalogue(data.Files)
	if err != nil {
		panic("parts: the embedded catalogue: " + err.Error()) // kept from happening by a test
	}
	return entries
})

// readCatalogue reads catalogue/*.json, in the order of their names.
func readCatalogue(files fs.FS) ([]Entry, error) {
	names, err := fs.Glob(files, "catalogue/*.json")
	if err != nil {
		return nil, err
	}
	var all []Entry
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		var entries []Entry
		if err := json.Unmarshal(text, &entries); err != nil {
			return nil, fmt.Errorf("%s: %w", path.Base(name), err)
		}
		all = append(all, entries...)
	}
	return all, nil
}

// EntryByID returns the entry of the catalogue with that id, nil if there is
// none. It must not be changed.
func EntryByID(id string) *Entry {
	if i, ok := catalogueIndex()[id]; ok {
		return &catalogue()[i]
	}
	return nil
}

var catalogueIndex = sync.OnceValue(func() map[string]int {
	index := make(map[string]int)
	for i, e := range catalogue() {
		index[e.ID] = i
	}
	return index
})

// Part returns a part like the entry, to be fitted under the given id.
func (e *Entry) Part(id string) document.Part {
	return document.Part{
		ID: id, Name: e.Name, Kind: e.Kind, Catalogue: e.ID, Quantity: max(1, e.Quantity),
		Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: e.Basis,
		Station: e.Station, Offset: e.Offset, Within: e.Within, Carrier: e.Carrier, Shape: e.Shape, Note: e.Note,
		Gearing: e.Gearing.Clone(),
	}
}
