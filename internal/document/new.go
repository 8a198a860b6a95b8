package document

// NewBag returns a bag of which nothing but a name and a mass, g, is known: a
// guess, on the deck of the rear rack.
func NewBag(name string, mass float64) Bag {
	return Bag{
		Name: name, Mass: mass, HalfWidth: Guessed.HalfWidth(mass), Basis: Guessed,
		Station: "rear-rack-deck", Offset: Vec3{0, 0, 100}, Carrier: MainFrame, Size: Vec3{300, 200, 200},
	}
}

// NewGood returns a good of which nothing but a name and a mass, g, is known: a
// guess, not packed yet.
func NewGood(name string, mass float64) Good {
	return Good{Name: name, Quantity: 1, Mass: mass, HalfWidth: Guessed.HalfWidth(mass), Basis: Guessed}
}

// NewRider returns somebody of middling size, to be put right. Sizes, clothes
// and shoes are common practice, no source.
func NewRider() Rider {
	return Rider{
		Stature: 1740, Mass: 72000, HalfWidth: 1000, Clothing: 1500, Shoes: 800,
		Table: "female", Posture: "leaned",
	}
}
