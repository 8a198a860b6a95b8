package parts

import (
	"fmt"

	"pgregory.net/rapid"
)

// anyName draws a name as people and worse write it.
func anyName() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"Rear hub", "Rim 29\"", "<script>alert(1)</script>", "=1+1", "'=x", "+49", "-5 °", "@home", "Größe; breit, \"neu\"", "a\\b", "\u202eabc", "🚲"}),
		rapid.String(),
	)
}

func anyVec(most float64) *rapid.Generator[Vec3] {
	return rapid.Custom(func(t *rapid.T) Vec3 {
		c := rapid.Float64Range(-most, most)
		return Vec3{c.Draw(t, "x"), c.Draw(t, "y"), c.Draw(t, "z")}
	})
}

// anyPart draws a part that Check has no error for.
func anyPart(id string) *rapid.Generator[Part] {
	return rapid.Custom(func(t *rapid.T) Part {
		size := anyVec(MaxLength).Draw(t, "size")
		for i := range size {
			size[i] = max(size[i], 0)
		}
		p := Part{
			ID: id, Name: anyName().Draw(t, "name"),
			Kind:      rapid.SampledFrom(Kinds).Draw(t, "kind").ID,
			Quantity:  rapid.IntRange(0, MaxQuantity).Draw(t, "quantity"),
			Mass:      rapid.Float64Range(0, MaxMass).Draw(t, "mass"),
			HalfWidth: rapid.Float64Range(0, 1000).Draw(t, "half-width"),
			Basis:     rapid.SampledFrom(Bases).Draw(t, "basis"),
			Offset:    anyVec(MaxLength).Draw(t, "offset"),
			Within:    rapid.Float64Range(0, MaxLength).Draw(t, "within"),
			Carrier:   rapid.SampledFrom(Carriers).Draw(t, "carrier"),
			Shape: Shape{
				Form: rapid.SampledFrom(Forms).Draw(t, "form"), Size: size,
				Pitch: rapid.Float64Range(-360, 360).Draw(t, "pitch"),
			},
			Note: anyName().Draw(t, "note"),
		}
		if rapid.Bool().Draw(t, "absolute") {
			at := anyVec(MaxLength).Draw(t, "at")
			p.At = &at
		} else {
			p.Station = rapid.SampledFrom([]string{"rear-axle", "frame", "bar"}).Draw(t, "station")
		}
		return p
	})
}

// anyDocument draws a document that Check has no error for.
func anyDocument() *rapid.Generator[*Document] {
	return rapid.Custom(func(t *rapid.T) *Document {
		d := &Document{Format: Format, Version: Version, Title: anyName().Draw(t, "title"), Notes: anyName().Draw(t, "notes"), Show: Show{Mass: "kg", Length: "in"}, Builds: []Build{}}
		length := rapid.Float64Range(-2000, 2000)
		for i := range rapid.IntRange(0, 3).Draw(t, "builds") {
			b := Build{ID: fmt.Sprint("b", i), Name: anyName().Draw(t, "build"), Parts: []Part{}}
			b.Frame.Stack, b.Fork.Sag = length.Draw(t, "stack"), length.Draw(t, "sag")
			b.Rear.ShockTo = Point2{length.Draw(t, "shock"), length.Draw(t, "shock")}
			b.Wheels.Front.BeadSeat, b.Cranks.Width = length.Draw(t, "bead"), length.Draw(t, "width")
			b.Cockpit.StemAngle, b.Saddle.Setback = length.Draw(t, "angle"), length.Draw(t, "setback")
			for j := range rapid.IntRange(0, 4).Draw(t, "parts") {
				b.Parts = append(b.Parts, anyPart(fmt.Sprint("p", j)).Draw(t, "part"))
			}
			d.Builds = append(d.Builds, b)
			d.Show.Compare = append(d.Show.Compare, b.ID)
		}
		d.Show.Compare = d.Show.Compare[:min(len(d.Show.Compare), 2)]
		carry(t, d)
		return d
	})
}

// twoBuilds returns a document of two builds of n parts each, of all kinds.
func twoBuilds(n int) *Document {
	d := &Document{Format: Format, Version: Version, Title: "Two builds", Show: Show{Mass: "kg", Length: "mm", Compare: []string{"b1", "b2"}}}
	b := Build{ID: "b1", Name: "One"}
	for i := range n {
		kind := Kinds[i%len(Kinds)].ID
		b.Parts = append(b.Parts, Part{
			ID: fmt.Sprint("p", i+1), Name: fmt.Sprintf("Usual %s, size %d", kind, i), Kind: kind, Quantity: 1 + i%3,
			Mass: float64(100 + i%900), HalfWidth: float64(5 + i%40), Basis: Typical,
			Station: "frame", Offset: Vec3{float64(i % 7), 0, float64(-i % 11)}, Within: 20, Carrier: Carriers[i%len(Carriers)],
			Shape: Shape{Form: FormBox, Size: Vec3{100, 60, 40}}, Catalogue: "usual-" + kind,
		})
	}
	d.Builds = []Build{b}
	d.CopyBuild("b1", "Two")
	return d
}

// carry draws riders, loads, ratings and weigh-ins for a document, and leaves
// them out as often as not.
func carry(t *rapid.T, d *Document) {
	if rapid.Bool().Draw(t, "bare") {
		return
	}
	pick := func(list []string, label string) string { return rapid.SampledFrom(list).Draw(t, label) }
	from := func(least, most float64, label string) float64 { return rapid.Float64Range(least, most).Draw(t, label) }
	name := func(label string) string { return anyName().Draw(t, label) }
	d.Show.Loads = []string{"l0", ""}
	d.Show.State = rapid.SampledFrom(States).Draw(t, "state")
	d.Show.Supplies = rapid.SampledFrom(SupplyLevels).Draw(t, "supplies")
	d.Show.Grip = from(MinGrip, MaxGrip, "grip")
	if rapid.Bool().Draw(t, "aim") {
		d.Show.Packing = &Packing{pick(Judgeds, "of"), from(0, 1, "share"), from(0, MaxWeight, "front"), from(0, MaxWeight, "low"), from(0, MaxWeight, "balance"), from(0, MaxWeight, "middle")}
	}
	for i := range d.Builds {
		for _, what := range Rateds[:rapid.IntRange(0, len(Rateds)).Draw(t, "ratings")] {
			d.Builds[i].Ratings = append(d.Builds[i].Ratings, Rating{what, from(1, MaxRating, "limit")})
		}
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "riders") {
		mass := from(MinBody, MaxBody, "body")
		d.Riders = append(d.Riders, Rider{
			ID: fmt.Sprint("r", i), Name: name("rider"), Stature: from(MinStature, MaxStature, "stature"), Mass: mass, HalfWidth: from(0, mass, "half-width"),
			Clothing: from(0, MaxClothing, "clothing"), Shoes: from(0, MaxShoes, "shoes"), Table: pick(Tables, "table"), Posture: pick(Postures, "posture"), Crank: from(-MaxCrank, MaxCrank, "crank"),
		})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "loads") {
		l := Load{ID: fmt.Sprint("l", i), Name: name("load"), Notes: name("notes"), Bags: []Bag{}, Goods: []Good{}}
		if len(d.Riders) > 0 {
			l.Rider = d.Riders[0].ID
		}
		in := []string{""}
		for j := range rapid.IntRange(0, 3).Draw(t, "bags") {
			b := Bag{
				ID: fmt.Sprint("b", j), Name: name("bag"), Mass: from(0, 5000, "mass"), HalfWidth: from(0, 500, "half-width"), Basis: rapid.SampledFrom(Bases).Draw(t, "basis"),
				Station: pick([]string{"rear-pannier-left", "saddle-bag"}, "station"), Offset: anyVec(MaxLength).Draw(t, "offset"), Carrier: rapid.SampledFrom(Carriers).Draw(t, "carrier"),
				Volume: from(0, MaxVolume, "volume"), Permitted: from(0, MaxMass, "permitted"),
			}
			for k := range b.Size {
				b.Size[k] = from(0, MaxLength, "size")
			}
			l.Bags, in = append(l.Bags, b), append(in, b.ID)
		}
		for j := range rapid.IntRange(0, 4).Draw(t, "goods") {
			l.Goods = append(l.Goods, Good{
				ID: fmt.Sprint("g", j), Name: name("good"), Quantity: rapid.IntRange(0, MaxQuantity).Draw(t, "quantity"), Mass: from(0, MaxMass, "mass"), HalfWidth: from(0, 500, "half-width"),
				Basis: rapid.SampledFrom(Bases).Draw(t, "basis"), Volume: from(0, MaxVolume, "volume"), In: pick(in, "in"), Pinned: rapid.Bool().Draw(t, "pinned"), Supply: pick(append([]string{""}, SupplyKinds...), "supply"),
			})
		}
		d.Loads = append(d.Loads, l)
	}
	if len(d.Builds) > 0 {
		w := WeighIn{ID: "w0", Name: name("weigh-in"), Build: d.Builds[0].ID, State: Bare, Readings: []Reading{}}
		named := []string{""}
		for i := range rapid.IntRange(0, 2).Draw(t, "scales") {
			s := Scale{ID: fmt.Sprint("s", i), Name: name("scale"), Step: from(0.1, 1000, "step")}
			if rapid.Bool().Draw(t, "calibrated") {
				share := from(0, MaxCalibration, "calibration")
				s.Calibration = &share
			}
			w.Scales, named = append(w.Scales, s), append(named, s.ID)
		}
		if rapid.Bool().Draw(t, "stand") {
			base, radius := from(0, MaxStandWithin, "wheelbase within"), from(0, MaxStandWithin, "radius within")
			w.WheelbasePlus, w.RadiusPlus = &base, &radius
		}
		for range rapid.IntRange(0, 3).Draw(t, "readings") {
			r := Reading{
				Scale: pick(named, "scale"),
				Wheel: pick([]string{"front", "rear"}, "wheel"), Raised: pick([]string{"", "front", "rear"}, "raised"), Height: from(1, MaxLength, "height"),
				HeightPlus: from(0, MaxLength, "within"), Mass: from(0, MaxMass, "reading"),
			}
			if r.Scale == "" {
				r.Resolution = from(0.1, 1000, "resolution")
			}
			w.Readings = append(w.Readings, r)
		}
		d.WeighIns = append(d.WeighIns, w)
	}
}
