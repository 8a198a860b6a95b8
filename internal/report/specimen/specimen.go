// Package specimen has documents to test reports and tables with.
package specimen

import "steelyard/internal/document"

// Bike is a full-suspension bike without parts.
func Bike(id string) document.Build {
	return document.Build{
		ID: id, Name: "Bike " + id,
		Frame: document.Frame{Stack: 630, Reach: 450, HeadTube: 120, HeadAngle: 66, SeatTube: 450, SeatAngle: 75, Chainstay: 445, BBDrop: 30},
		Fork:  document.Fork{Length: 531, Offset: 44, Travel: 120, Sag: 24},
		Rear: document.Rear{Travel: 120, Sag: 30, PivotFwd: 10, PivotUp: 60,
			ShockFrom: document.Point2{190, 260}, ShockTo: document.Point2{0, 190}},
		Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 60}, Rear: document.Wheel{BeadSeat: 622, Tyre: 60}},
		Cockpit: document.Cockpit{Spacers: 20, Stem: 50, StemAngle: 6, BarWidth: 760, BarRise: 20, BarBack: 40},
		Saddle:  document.Saddle{Height: 740},
		Cranks:  document.Cranks{Length: 170, Width: 155},
	}
}

// Rigid is the same bike without suspension.
func Rigid(id string) document.Build {
	b := Bike(id)
	b.Fork.Travel, b.Fork.Sag = 0, 0
	b.Rear = document.Rear{}
	return b
}

// Point is a part that is a point at an absolute place, exactly known.
func Point(id string, grams float64, carrier document.Carrier, x, y, z float64) document.Part {
	return document.Part{
		ID: id, Name: "Part " + id, Kind: "other", Quantity: 1, Mass: grams, Basis: document.Weighed,
		At: &document.Vec3{x, y, z}, Carrier: carrier, Shape: document.Shape{Form: document.FormPoint},
	}
}

// Vague is a point whose mass lies within ± half.
func Vague(id string, grams, half float64, carrier document.Carrier, x, y, z float64) document.Part {
	p := Point(id, grams, carrier, x, y, z)
	p.HalfWidth, p.Basis = half, document.Typical
	return p
}

// DocumentOf makes a document that compares its first two builds.
func DocumentOf(builds ...document.Build) *document.Document {
	d := &document.Document{Format: document.Format, Version: document.Version, Show: document.Show{Mass: "kg", Length: "mm"}, Builds: builds}
	for i := range builds[:min(2, len(builds))] {
		d.Show.Compare = append(d.Show.Compare, builds[i].ID)
	}
	return d
}

// Fitted is a bike with parts of every sort, none of them well known.
func Fitted(id string) document.Build {
	b := Bike(id)
	b.Parts = []document.Part{
		Vague("frame", 3400, 250, document.MainFrame, 480, 0, 550),
		Vague("swingarm", 900, 80, document.Swingarm, 220, 0, 380),
		Vague("shock", 450, 30, document.Link, 380, 0, 500),
		Vague("rear wheel", 1900, 120, document.RearWheel, 0, 0, 371),
		Vague("front wheel", 1700, 100, document.FrontWheel, 1190, 0, 371),
		Vague("fork", 1100, 70, document.ForkUpper, 1080, 0, 800),
		Vague("legs", 900, 60, document.ForkLower, 1150, 0, 480),
		Vague("hub", 2500, 90, document.RearWheel, 0, 0, 371),
		Vague("bag", 4000, 900, document.MainFrame, -60, 180, 600),
	}
	kinds := []string{"frame", "frame", "shock", "rim", "rim", "fork", "fork", "gear-hub", "bag"}
	for i := range b.Parts {
		b.Parts[i].Kind = kinds[i]
		if c := b.Parts[i].Carrier; c != document.RearWheel && c != document.FrontWheel { // those sit on their axle
			b.Parts[i].Within = 8
		}
	}
	b.Parts[8].Within = 40
	return b
}

// Other is fitted with the hub's gears at the cranks instead.
func Other(id string) document.Build {
	b := Fitted(id)
	b.Parts[7] = Vague("gearbox", 2900, 110, document.MainFrame, 440, -10, 330)
	b.Parts = append(b.Parts, Vague("plain hub", 350, 25, document.RearWheel, 0, 0, 371))
	b.Parts[7].Within, b.Parts[7].Kind, b.Parts[9].Kind = 5, "crank-gearbox", "hub"
	b.Parts[0].Mass, b.Parts[0].HalfWidth = 3900, 280 // a frame to hold it
	return b
}

// Laden is a document of two builds that carry a load with a rider: a pannier on
// either side, a bag in front, and something to eat and drink.
func Laden() *document.Document {
	d := DocumentOf(Fitted("a"), Other("b"))
	d.Riders = []document.Rider{{
		ID: "r", Name: "Rider", Stature: 1740, Mass: 70000, HalfWidth: 1000, Clothing: 1900, Shoes: 850, Table: "female", Posture: "leaned",
	}}
	bag := func(id, station string, carrier document.Carrier, grams float64) document.Bag {
		return document.Bag{
			ID: id, Name: "Bag " + id, Mass: grams, HalfWidth: 10, Basis: document.Stated, Station: station, Carrier: carrier,
			Size: document.Vec3{300, 150, 350}, Volume: 15, Permitted: 7000,
		}
	}
	good := func(id, in, supply string, n int, grams float64) document.Good {
		return document.Good{ID: id, Name: "Good " + id, Quantity: n, Mass: grams, HalfWidth: 40, Basis: document.Typical, Volume: 2, In: in, Supply: supply}
	}
	d.Loads = []document.Load{{
		ID: "l", Name: "Tour", Rider: "r",
		Bags: []document.Bag{
			bag("left", "rear-pannier-left", document.MainFrame, 900), bag("right", "rear-pannier-right", document.MainFrame, 900), bag("bar", "handlebar-bag", document.ForkUpper, 400),
		},
		Goods: []document.Good{
			good("tent", "left", "", 1, 2400), good("clothes", "right", "", 1, 1400), good("food", "left", "food", 3, 800),
			good("water", "bar", "water", 2, 1000), good("fuel", "right", "fuel", 1, 500), good("chair", "", "", 1, 600),
		},
	}}
	d.Show.Loads = []string{"l", "l"}
	return d
}

// WithState shows a state, with some of the supplies left.
func WithState(d *document.Document, s document.State, left document.Supplies) *document.Document {
	d.Show.State, d.Show.Supplies = s, left
	return d
}
