package parts

import (
	"slices"
	"testing"

	"steelyard/internal/document"
)

// A larger one of an entry weighs no less, a size that the catalogue has is what the
// catalogue says, and every size is a part that a document may have.
func TestSizedEntries(t *testing.T) {
	for i := range Catalogue() {
		e := &Catalogue()[i]
		own, named := namedSizes()[e.ID]
		if !named || own.to > 0 {
			continue
		}
		s := sizings[e.Kind]
		for _, at := range *own.family {
			twin := &Catalogue()[at]
			size := namedSizes()[twin.ID].value
			if got := e.Sized(Size{Value: size}, nil); size != own.value && (got.Mass != twin.Mass || got.HalfWidth != twin.HalfWidth || got.Shape.Size != twin.Shape.Size || got.Name != twin.Name) {
				t.Errorf("%s in the size of %s: %+v", e.ID, twin.ID, got)
			}
		}
		last := 0.0
		for step := range 41 {
			size := s.low + (s.high-s.low)*float64(step)/40
			got := e.Sized(Size{Value: size}, nil)
			if !(got.Mass > 0) || !(got.HalfWidth > 0) || got.HalfWidth >= got.Mass {
				t.Errorf("%s of %v: %v ± %v g", e.ID, size, got.Mass, got.HalfWidth)
			}
			// A wide tyre for sport may weigh less than a narrow one for loads.
			if got.Mass < last && e.Kind != "tyre" {
				t.Errorf("%s of %v weighs %v g, a smaller one %v", e.ID, size, got.Mass, last)
			}
			last = got.Mass
			p := got.Part("x")
			for _, problem := range p.Check() {
				if problem.Severity == document.SeverityError {
					t.Errorf("%s of %v: %v", e.ID, size, problem.Message)
				}
			}
		}
	}
	// A litre of water weighs a kilogram.
	for _, l := range []float64{0.2, 0.5, 1.5, 2, 3, 6, 10} {
		if got := EntryByID("water-1").Sized(Size{Value: l}, nil); got.Mass != 1000*l {
			t.Errorf("%v l of water weigh %v g", l, got.Mass)
		}
	}
}

func TestResizedCogs(t *testing.T) {
	for i := range Catalogue() {
		e := &Catalogue()[i]
		if e.Kind != "cassette" {
			continue
		}
		for most := 28; most <= 52; most++ {
			teeth := resized(e.Gearing.Teeth, 0, most)
			if len(teeth) != len(e.Gearing.Teeth) || teeth[0] != e.Gearing.Teeth[0] || teeth[len(teeth)-1] != most || !slices.IsSorted(teeth) {
				t.Errorf("%s up to %d teeth: %v", e.ID, most, teeth)
			}
		}
		if got := resized(e.Gearing.Teeth, slices.Min(e.Gearing.Teeth), slices.Max(e.Gearing.Teeth)); !slices.Equal(got, e.Gearing.Teeth) {
			t.Errorf("%s as it is: %v", e.ID, got)
		}
	}
}

// What is named beside the one of a kind is in the catalogue, and of such a kind.
func TestBesides(t *testing.T) {
	for _, id := range besides {
		if e := EntryByID(id); e == nil || singles[e.Kind] == "" {
			t.Errorf("%s goes with nothing that a bike has one of", id)
		}
	}
	for kind := range singles {
		if !document.KnownKind(kind) {
			t.Errorf("there is no kind %s", kind)
		}
	}
	e := EntryByID("headset-spacers").Part("a")
	b := document.Build{Parts: []document.Part{EntryByID("headset-tapered").Part("b")}}
	if got := Displaced(&b, &e); len(got) > 0 {
		t.Error("spacers take the place of a headset")
	}
	arm := EntryByID("swingarm-steel").Part("a")
	b.Parts = []document.Part{EntryByID("full-suspension-main-frame-steel").Part("b")}
	if got := Displaced(&b, &arm); len(got) > 0 {
		t.Error("a swingarm takes the place of the main frame")
	}
	hub := EntryByID("gear-hub-wide").Part("a")
	b.Parts = []document.Part{EntryByID("hub-rear-cassette").Part("b"), EntryByID("hub-front").Part("c")}
	if got := Displaced(&b, &hub); !slices.Equal(got, []int{0}) {
		t.Errorf("a gear hub takes the place of %v, want the rear hub", got)
	}
	b.Parts[0].Quantity = 0
	if got := Displaced(&b, &hub); len(got) > 0 {
		t.Error("what is not there has no place")
	}
}

// What the catalogue has is usual.
func TestUnusualMasses(t *testing.T) {
	for i := range Catalogue() {
		p := Catalogue()[i].Part("x")
		if how, _ := Judge(&p); how != "" {
			t.Errorf("%s is %s", p.Catalogue, how)
		}
		p.Catalogue = ""
		if how, _ := Judge(&p); how != "" {
			t.Errorf("a part like %s is %s", p.Name, how)
		}
	}
}
