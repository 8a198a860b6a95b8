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
		return d
	})
}

// twoBuilds returns a document of two builds of n parts each. Every
// part is a copy of an entry of the catalogue.
func twoBuilds(n int) *Document {
	d := &Document{Format: Format, Version: Version, Title: "Two builds", Show: Show{Mass: "kg", Length: "mm", Compare: []string{"b1", "b2"}}}
	entries := Catalogue()
	b := Build{ID: "b1", Name: "One"}
	for i := range n {
		b.Parts = append(b.Parts, entries[i%len(entries)].Part(fmt.Sprint("p", i+1)))
	}
	d.Builds = []Build{b}
	d.CopyBuild("b1", "Two")
	return d
}
