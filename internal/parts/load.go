package parts

// Rider is somebody who sits on the bike.
type Rider struct {
	ID        string  `json:"id"` // unique in the document
	Name      string  `json:"name"`
	Stature   float64 `json:"stature_mm"`
	Mass      float64 `json:"mass_g"`       // unclothed
	HalfWidth float64 `json:"half_width_g"` // the mass lies within ± this
	Clothing  float64 `json:"clothing_g"`   // clothes, helmet and what is in the pockets, spread over the body
	Shoes     float64 `json:"shoes_g"`      // the pair
	Table     string  `json:"table"`        // "female" or "male": the body table of de Leva (1996)
	Posture   string  `json:"posture"`      // "upright", "leaned", "low" or "standing"
	Crank     float64 `json:"crank_deg"`    // left crank from level and forward, positive up; the right one is opposite
}

// Load is what is taken along: a rider, bags, and the goods in them. It is kept
// beside the builds, so that two builds can carry the same load and one build
// two loads.
type Load struct {
	ID    string `json:"id"` // unique in the document
	Name  string `json:"name"`
	Notes string `json:"notes,omitempty"`
	Rider string `json:"rider,omitempty"` // rider id; empty is nobody
	Bags  []Bag  `json:"bags"`
	Goods []Good `json:"goods"`
}

// Bag is a place to pack: a pannier, a bag, a rack deck with a strap, a cage.
type Bag struct {
	ID        string  `json:"id"` // unique in its load
	Name      string  `json:"name"`
	Mass      float64 `json:"mass_g"` // empty
	HalfWidth float64 `json:"half_width_g"`
	Basis     Basis   `json:"basis"`
	Station   string  `json:"station"` // a single place, not a pair
	Offset    Vec3    `json:"offset_mm"`
	Carrier   Carrier `json:"carrier"`
	Size      Vec3    `json:"size_mm"`     // x, y, z: its own inertia and its drawing
	Volume    float64 `json:"volume_l"`    // 0 is not limited
	Permitted float64 `json:"permitted_g"` // what the maker lets it hold; 0 is not stated
}

// Good is something packed.
type Good struct {
	ID        string  `json:"id"` // unique in its load
	Name      string  `json:"name"`
	Quantity  int     `json:"quantity"`
	Mass      float64 `json:"mass_g"` // of one piece, full
	HalfWidth float64 `json:"half_width_g"`
	Basis     Basis   `json:"basis"`
	Volume    float64 `json:"volume_l"`         // of one piece
	In        string  `json:"in"`               // bag id; empty is not packed, and does not count
	Pinned    bool    `json:"pinned,omitempty"` // stays where it is when the bags are packed anew
	Supply    string  `json:"supply,omitempty"` // "water", "food" or "fuel" is used up on the way; empty stays
}

// Rating is a limit that a maker has set and the user has entered.
type Rating struct {
	What  string  `json:"what"` // "total", "front-rack", "rear-rack", "front-tyre", "rear-tyre", "front-rim", "rear-rim"
	Limit float64 `json:"limit_g"`
}

// WeighIn is one visit to the bathroom scale.
type WeighIn struct {
	ID       string    `json:"id"`
	Name     string    `json:"name"`
	Build    string    `json:"build"`          // build id
	State    string    `json:"state"`          // what was on the bike: "bare", "ready", "loaded" or "ridden"
	Load     string    `json:"load,omitempty"` // load id, for the last two
	Readings []Reading `json:"readings"`
}

// Reading is what the scale showed under one wheel.
type Reading struct {
	Wheel      string  `json:"wheel"`            // the wheel on the scale: "front" or "rear"
	Raised     string  `json:"raised,omitempty"` // the wheel that stood on a block: "front", "rear" or none
	Height     float64 `json:"height_mm"`        // of the block, or of the scale where it lifts the wheel
	HeightPlus float64 `json:"height_within_mm"` // the height lies within ± this
	Mass       float64 `json:"mass_g"`
	Resolution float64 `json:"resolution_g"` // the scale's: the reading lies within ± half of it
}
