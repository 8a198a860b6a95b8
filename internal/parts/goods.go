package parts

import (
	"sync"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
)

// GoodEntry is a good to take along: a Good to copy, and words to find it by.
type GoodEntry struct {
	ID        string         `json:"id"`
	Name      string         `json:"name"`
	Mass      float64        `json:"mass_g"` // of one piece
	HalfWidth float64        `json:"half_width_g"`
	Basis     document.Basis `json:"basis"`
	Volume    float64        `json:"volume_l"`         // of one piece
	Quantity  int            `json:"quantity"`         // how many one usually takes
	Supply    string         `json:"supply,omitempty"` // as a Good's
	Split     bool           `json:"split,omitempty"`  // likewise
	Search    []string       `json:"search"`           // further words that a user would type
}

// BagEntry is a bag to pack: a Bag to copy, and words to find it by.
type BagEntry struct {
	ID        string           `json:"id"`
	Name      string           `json:"name"`
	Mass      float64          `json:"mass_g"` // empty
	HalfWidth float64          `json:"half_width_g"`
	Basis     document.Basis   `json:"basis"`
	Station   string           `json:"station"`
	Offset    document.Vec3    `json:"offset_mm"`
	Carrier   document.Carrier `json:"carrier"`
	Size      document.Vec3    `json:"size_mm"`
	Volume    float64          `json:"volume_l"`
	Search    []string         `json:"search"`
}

// Goods returns the goods that this program comes with, in the order of the
// file. The list is shared: it must not be changed.
func Goods() []GoodEntry { return goods() }

// Bags returns the bags that this program comes with, likewise.
func Bags() []BagEntry { return bags() }

var (
	goods = sync.OnceValue(func() []GoodEntry { return embedded[GoodEntry]("goods/goods.json") })
	bags  = sync.OnceValue(func() []BagEntry { return embedded[BagEntry]("goods/bags.json") })
)

func embedded[T any](name string) []T {
	var list []T
	text, err := data.Files.ReadFile(name)
	if err == nil {
		err = json.Unmarshal(text, &list)
	}
	if err != nil {
		panic("parts: " + name + ": " + err.Error()) // kept from happening by a test
	}
	return list
}

// Good returns a good like the entry, to be taken along under the given id and
// not packed yet.
func (e *GoodEntry) Good(id string) document.Good {
	return document.Good{
		ID: id, Name: e.Name, Quantity: max(1, e.Quantity), Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: e.Basis,
		Volume: e.Volume, Supply: e.Supply, Split: e.Split,
	}
}

// Bag returns a bag like the entry, to be hung on under the given id.
func (e *BagEntry) Bag(id string) document.Bag {
	return document.Bag{
		ID: id, Name: e.Name, Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: e.Basis,
		Station: e.Station, Offset: e.Offset, Carrier: e.Carrier, Size: e.Size, Volume: e.Volume,
	}
}
