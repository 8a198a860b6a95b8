// Package documenttest draws documents for tests.
package documenttest

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"steelyard/internal/document"
)

// anyName draws a name as people and worse write it.
func anyName() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"Rear hub", "Rim 29\"", "<script>alert(1)</script>", "=1+1", "'=x", "+49", "-5 °", "@home", "Größe; breit, \"neu\"", "a\\b", "\u202eabc", "🚲"}),
		rapid.String(),
	)
}

func anyVec(most float64) *rapid.Generator[document.Vec3] {
	return rapid.Custom(func(t *rapid.T) document.Vec3 {
		c := rapid.Float64Range(-most, most)
		return document.Vec3{c.Draw(t, "x"), c.Draw(t, "y"), c.Draw(t, "z")}
	})
}

// Part draws a part that Check has no error for.
func Part(id string) *rapid.Generator[document.Part] {
	return rapid.Custom(func(t *rapid.T) document.Part {
		size := anyVec(document.MaxLength).Draw(t, "size")
		for i := range size {
			size[i] = max(size[i], 0)
		}
		p := document.Part{
			ID: id, Name: anyName().Draw(t, "name"),
			Kind:      rapid.SampledFrom(document.Kinds).Draw(t, "kind").ID,
			Quantity:  rapid.IntRange(0, document.MaxQuantity).Draw(t, "quantity"),
			Mass:      rapid.Float64Range(0, document.MaxMass).Draw(t, "mass"),
			HalfWidth: rapid.Float64Range(0, 1000).Draw(t, "half-width"),
			Basis:     rapid.SampledFrom(document.Bases).Draw(t, "basis"),
			Offset:    anyVec(document.MaxLength).Draw(t, "offset"),
			Within:    rapid.Float64Range(0, document.MaxLength).Draw(t, "within"),
			Carrier:   rapid.SampledFrom(document.Carriers).Draw(t, "carrier"),
			Shape: document.Shape{
				Form: rapid.SampledFrom(document.Forms).Draw(t, "form"), Size: size,
				Pitch: rapid.Float64Range(-360, 360).Draw(t, "pitch"),
			},
			Note: anyName().Draw(t, "note"),
		}
		if rapid.Bool().Draw(t, "absolute") {
			at := anyVec(document.MaxLength).Draw(t, "at")
			p.At = &at
		} else {
			p.Station = rapid.SampledFrom([]string{"rear-axle", "frame", "bar"}).Draw(t, "station")
		}
		p.Gearing = anyGearing().Draw(t, "gearing")
		if rapid.IntRange(0, 4).Draw(t, "joint") == 0 {
			p.Basis, p.Joint = document.Weighed, &document.Joint{ID: rapid.SampledFrom([]string{"together-1", "together-2"}).Draw(t, "with"), Mass: p.Mass}
		}
		return p
	})
}

// anyGearing draws a gearing that Check has nothing to say about, or none.
func anyGearing() *rapid.Generator[*document.Gearing] {
	return rapid.Custom(func(t *rapid.T) *document.Gearing {
		teeth := func(least, most int, label string) []int {
			return rapid.SliceOfN(rapid.IntRange(document.MinTeeth, document.MaxTeeth), least, most).Draw(t, label)
		}
		switch rapid.IntRange(0, 4).Draw(t, "geared") {
		case 0:
			return &document.Gearing{Teeth: teeth(1, document.MaxWheels, "teeth")}
		case 1:
			g := &document.Gearing{Ratios: rapid.SliceOfN(rapid.Float64Range(document.MinRatio, document.MaxRatio), 1, document.MaxRatios).Draw(t, "ratios")}
			if rapid.Bool().Draw(t, "known") {
				g.Meshes = rapid.SliceOfN(rapid.IntRange(0, document.MaxMeshes), len(g.Ratios), len(g.Ratios)).Draw(t, "meshes")
			}
			return g
		case 2:
			g := &document.Gearing{}
			for range rapid.IntRange(1, 2).Draw(t, "stages") {
				n := rapid.IntRange(1, 2).Draw(t, "wheels")
				g.Stages = append(g.Stages, document.Stage{
					Driving: teeth(n, n, "driving"), Driven: teeth(n, n, "driven"),
					Combine: rapid.SampledFrom(append(document.Combines, "")).Draw(t, "combine"), By: rapid.SampledFrom(append(document.Bys, "")).Draw(t, "by"),
				})
			}
			return g
		}
		return nil
	})
}

// Document draws a document that Check has no error for.
func Document() *rapid.Generator[*document.Document] {
	return rapid.Custom(func(t *rapid.T) *document.Document {
		d := &document.Document{Format: document.Format, Version: document.Version, Title: anyName().Draw(t, "title"), Notes: anyName().Draw(t, "notes"), Show: document.Show{Mass: "kg", Length: "in"}, Builds: []document.Build{}}
		length := rapid.Float64Range(-2000, 2000)
		for i := range rapid.IntRange(0, 3).Draw(t, "builds") {
			b := document.Build{ID: fmt.Sprint("b", i), Name: anyName().Draw(t, "build"), Parts: []document.Part{}}
			b.Frame.Stack, b.Fork.Sag = length.Draw(t, "stack"), length.Draw(t, "sag")
			b.Rear.ShockTo = document.Point2{length.Draw(t, "shock"), length.Draw(t, "shock")}
			b.Wheels.Front.BeadSeat, b.Cranks.Width = length.Draw(t, "bead"), length.Draw(t, "width")
			b.Cockpit.StemAngle, b.Saddle.Setback = length.Draw(t, "angle"), length.Draw(t, "setback")
			for j := range rapid.IntRange(0, 4).Draw(t, "parts") {
				b.Parts = append(b.Parts, Part(fmt.Sprint("p", j)).Draw(t, "part"))
			}
			d.Builds = append(d.Builds, b)
			d.Show.Compare = append(d.Show.Compare, b.ID)
		}
		d.Show.Table = d.Show.Compare[:rapid.IntRange(0, len(d.Show.Compare)).Draw(t, "table")]
		for i := range d.Builds {
			if rapid.Bool().Draw(t, "without") {
				d.Builds[i].Without = []string{anyName().Draw(t, "role")}
				d.Show.Base = d.Builds[i].ID
				d.Aside = append(d.Aside, document.Aside{Build: d.Builds[i].ID, With: anyName().Draw(t, "with"), Part: Part(fmt.Sprint("q", i)).Draw(t, "aside")})
			}
		}
		d.Show.Compare = slices.Clone(d.Show.Compare[:min(len(d.Show.Compare), 2)])
		rough(t, d)
		carry(t, d)
		ride(t, d)
		return d
	})
}

// TwoBuilds returns a document of two builds of n parts each, of all kinds.
func TwoBuilds(n int) *document.Document {
	d := &document.Document{Format: document.Format, Version: document.Version, Title: "Two builds", Show: document.Show{Mass: "kg", Length: "mm", Compare: []string{"b1", "b2"}}}
	b := document.Build{ID: "b1", Name: "One"}
	for i := range n {
		kind := document.Kinds[i%len(document.Kinds)].ID
		b.Parts = append(b.Parts, document.Part{
			ID: fmt.Sprint("p", i+1), Name: fmt.Sprintf("Usual %s, size %d", kind, i), Kind: kind, Quantity: 1 + i%3,
			Mass: float64(100 + i%900), HalfWidth: float64(5 + i%40), Basis: document.Typical,
			Station: "frame", Offset: document.Vec3{float64(i % 7), 0, float64(-i % 11)}, Within: 20, Carrier: document.Carriers[i%len(document.Carriers)],
			Shape: document.Shape{Form: document.FormBox, Size: document.Vec3{100, 60, 40}}, Catalogue: "usual-" + kind,
		})
	}
	d.Builds = []document.Build{b}
	d.CopyBuild("b1", "Two")
	return d
}

// carry draws riders, loads, ratings and weigh-ins for a document, and leaves
// them out as often as not.
func carry(t *rapid.T, d *document.Document) {
	if rapid.Bool().Draw(t, "bare") {
		return
	}
	pick := func(list []string, label string) string { return rapid.SampledFrom(list).Draw(t, label) }
	from := func(least, most float64, label string) float64 { return rapid.Float64Range(least, most).Draw(t, label) }
	name := func(label string) string { return anyName().Draw(t, label) }
	d.Show.Loads = []string{"l0", ""}
	d.Show.State = rapid.SampledFrom(document.States).Draw(t, "state")
	d.Show.Supplies = rapid.SampledFrom(document.SupplyLevels).Draw(t, "supplies")
	d.Show.Grip = from(document.MinGrip, document.MaxGrip, "grip")
	if rapid.Bool().Draw(t, "aim") {
		d.Show.Packing = &document.Packing{
			Of: pick(document.Judgeds, "of"), FrontShare: from(0, 1, "share"), Front: from(0, document.MaxWeight, "front"),
			Low: from(0, document.MaxWeight, "low"), Balance: from(0, document.MaxWeight, "balance"), Middle: from(0, document.MaxWeight, "middle"),
		}
		if rapid.Bool().Draw(t, "few moves") {
			n := rapid.IntRange(0, 40).Draw(t, "moves")
			d.Show.Packing.Moves, d.Show.Packing.Steered = &n, from(0, document.MaxWeight, "steered")
		}
	}
	for i := range d.Builds {
		for _, what := range document.Rateds[:rapid.IntRange(0, len(document.Rateds)).Draw(t, "ratings")] {
			d.Builds[i].Ratings = append(d.Builds[i].Ratings, document.Rating{What: what, Limit: from(1, document.MaxRating, "limit")})
		}
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "riders") {
		mass := from(document.MinBody, document.MaxBody, "body")
		d.Riders = append(d.Riders, document.Rider{
			ID: fmt.Sprint("r", i), Name: name("rider"), Stature: from(document.MinStature, document.MaxStature, "stature"), Mass: mass, HalfWidth: from(0, mass, "half-width"),
			Clothing: from(0, document.MaxClothing, "clothing"), Shoes: from(0, document.MaxShoes, "shoes"), Table: pick(document.Tables, "table"), Posture: pick(document.Postures, "posture"), Crank: from(-document.MaxCrank, document.MaxCrank, "crank"),
		})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "loads") {
		l := document.Load{ID: fmt.Sprint("l", i), Name: name("load"), Notes: name("notes"), Bags: []document.Bag{}, Goods: []document.Good{}}
		if len(d.Riders) > 0 {
			l.Rider = d.Riders[0].ID
		}
		in := []string{""}
		for j := range rapid.IntRange(0, 3).Draw(t, "bags") {
			b := document.Bag{
				ID: fmt.Sprint("b", j), Name: name("bag"), Mass: from(0, 5000, "mass"), HalfWidth: from(0, 500, "half-width"), Basis: rapid.SampledFrom(document.Bases).Draw(t, "basis"),
				Station: pick([]string{"rear-pannier-left", "saddle-bag"}, "station"), Offset: anyVec(document.MaxLength).Draw(t, "offset"), Carrier: rapid.SampledFrom(document.Carriers).Draw(t, "carrier"),
				Volume: from(0, document.MaxVolume, "volume"), Permitted: from(0, document.MaxMass, "permitted"),
				Liquids: pick(append([]string{""}, document.BagLiquids...), "liquids"),
			}
			if rapid.Bool().Draw(t, "reach told") {
				reach := rapid.Bool().Draw(t, "reach")
				b.AtHand = &reach
			}
			for k := range b.Size {
				b.Size[k] = from(0, document.MaxLength, "size")
			}
			l.Bags, in = append(l.Bags, b), append(in, b.ID)
		}
		for j := range rapid.IntRange(0, 4).Draw(t, "goods") {
			l.Goods = append(l.Goods, document.Good{
				ID: fmt.Sprint("g", j), Name: name("good"), Quantity: rapid.IntRange(0, document.MaxQuantity).Draw(t, "quantity"), Mass: from(0, document.MaxMass, "mass"), HalfWidth: from(0, 500, "half-width"),
				Basis: rapid.SampledFrom(document.Bases).Draw(t, "basis"), Volume: from(0, document.MaxVolume, "volume"), In: pick(in, "in"), Pinned: rapid.Bool().Draw(t, "pinned"), Supply: pick(append([]string{""}, document.SupplyKinds...), "supply"),
				Split: rapid.Bool().Draw(t, "split"), Together: pick([]string{"", "kitchen", "tent"}, "together"), AtHand: rapid.Bool().Draw(t, "at hand"),
				Liquid: pick(append([]string{""}, document.GoodLiquids...), "liquid"),
			})
		}
		d.Loads = append(d.Loads, l)
	}
	if len(d.Builds) > 0 {
		w := document.WeighIn{ID: "w0", Name: name("weigh-in"), Build: d.Builds[0].ID, State: document.Bare, Readings: []document.Reading{}}
		named := []string{""}
		for i := range rapid.IntRange(0, 2).Draw(t, "scales") {
			s := document.Scale{ID: fmt.Sprint("s", i), Name: name("scale"), Step: from(0.1, 1000, "step")}
			if rapid.Bool().Draw(t, "calibrated") {
				share := from(0, document.MaxCalibration, "calibration")
				s.Calibration = &share
			}
			w.Scales, named = append(w.Scales, s), append(named, s.ID)
		}
		if rapid.Bool().Draw(t, "stand") {
			base, radius := from(0, document.MaxStandWithin, "wheelbase within"), from(0, document.MaxStandWithin, "radius within")
			w.WheelbasePlus, w.RadiusPlus = &base, &radius
		}
		for range rapid.IntRange(0, 3).Draw(t, "readings") {
			r := document.Reading{
				Scale: pick(named, "scale"),
				Wheel: pick([]string{"front", "rear"}, "wheel"), Raised: pick([]string{"", "front", "rear"}, "raised"), Height: from(1, document.MaxLength, "height"),
				HeightPlus: from(0, document.MaxLength, "within"), Mass: from(0, document.MaxMass, "reading"),
			}
			if r.Scale == "" {
				r.Resolution = from(0.1, 1000, "resolution")
			}
			w.Readings = append(w.Readings, r)
		}
		d.WeighIns = append(d.WeighIns, w)
	}
}

// rough draws a rough road, and what builds are set up with for one, or leaves
// them out.
func rough(t *rapid.T, d *document.Document) {
	maybe := func(least, most float64, label string) *float64 {
		if !rapid.Bool().Draw(t, label) {
			return nil
		}
		v := rapid.Float64Range(least, most).Draw(t, label)
		return &v
	}
	word := func(list []string, label string) string {
		return rapid.SampledFrom(append(slices.Clone(list), "")).Draw(t, label)
	}
	if rapid.Bool().Draw(t, "rough") {
		d.Show.Rough = &document.Rough{
			Class: word(document.RoadClasses, "class"), Roughness: maybe(document.MinRoughness, document.MaxRoughness, "roughness"), Speed: maybe(document.MinRoadSpeed, document.MaxRoadSpeed, "speed"),
			Rider: word(document.RiderWays, "rider"), Contact: word(document.Contacts, "contact"),
		}
		if rapid.Bool().Draw(t, "obstacle") {
			d.Show.Rough.Obstacle = &document.Obstacle{
				Form:   rapid.SampledFrom(document.ObstacleForms).Draw(t, "form"),
				Height: rapid.Float64Range(1, document.MaxObstacle).Draw(t, "height"), Length: rapid.Float64Range(1, document.MaxObstacleWay).Draw(t, "length"),
			}
		}
	}
	end := func() *document.EndSetup {
		if !rapid.Bool().Draw(t, "end") {
			return nil
		}
		e := &document.EndSetup{
			Pressure: maybe(document.MinPressure, document.MaxPressure, "pressure"), PressurePlus: maybe(0, document.MaxPressure, "pressure within"),
			TyreLeast: maybe(document.MinPressure, document.MaxPressure, "least"), TyreMost: maybe(document.MinPressure, document.MaxPressure, "most"), RimMost: maybe(document.MinPressure, document.MaxPressure, "rim"),
			Spring: maybe(document.MinSpring, document.MaxSpring, "spring"), SpringPlus: maybe(0, document.MaxSpring, "spring within"), SagPlus: maybe(0, 100, "sag within"),
			Damping: maybe(0, document.MaxDamping, "damping"), DampingPlus: maybe(0, document.MaxDamping, "damping within"),
			Damper: maybe(0, document.MaxDamper, "damper"), DamperPlus: maybe(0, document.MaxDamper, "damper within"),
		}
		if rapid.Bool().Draw(t, "drop") {
			from := func(least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, "drop") }
			e.Drop = &document.TyreDrop{Load: from(1, document.MaxMass), LoadPlus: from(0, document.MaxMass), Drop: from(0.01, 200), DropPlus: from(0, 200)}
		}
		return e
	}
	for i := range d.Builds {
		if rapid.Bool().Draw(t, "set up") {
			d.Builds[i].Setup = &document.Setup{Front: end(), Rear: end(), Springs: word(document.SpringWays, "springs")}
		}
	}
}
