package rider

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	json "github.com/goccy/go-json"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// load reads a build of testdata/rider.
func load(t testing.TB, name string) *document.Build {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "rider", name))
	if err != nil {
		t.Fatal(err)
	}
	var b document.Build
	if err := json.Unmarshal(text, &b); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return &b
}

// posed poses a build that has no error.
func posed(t rapid.TB, b *document.Build) *geometry.Bike {
	t.Helper()
	bike, problems := geometry.Pose(b)
	if bike == nil {
		t.Fatalf("not posed: %v", problems)
	}
	return bike
}

// person is somebody of usual size, changed by what follows.
func person(changes ...func(*document.Rider)) *document.Rider {
	r := &document.Rider{
		ID: "somebody", Name: "Somebody", Stature: 1750, Mass: 75e3, HalfWidth: 1e3,
		Clothing: 2e3, Shoes: 900, Table: "male", Posture: "leaned",
	}
	for _, change := range changes {
		change(r)
	}
	return r
}

// seated seats a rider for whom there is no error.
func seated(t rapid.TB, b *geometry.Bike, r *document.Rider) *Body {
	t.Helper()
	body, problems := Seat(b, r)
	if body == nil {
		t.Fatalf("not seated: %v", problems)
	}
	return body
}

// near fails unless two numbers agree.
func near(t rapid.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.9g, want %.9g ± %g", what, got, want, within)
	}
}

// nearPoint fails unless two points agree.
func nearPoint(t rapid.TB, what string, got, want mass.Vec, within float64) {
	t.Helper()
	if !(got.Sub(want).Norm() <= within) {
		t.Errorf("%s is at %.9g, want %.9g ± %g", what, got, want, within)
	}
}

// centre is the centre of mass of a body.
func (b *Body) centre() mass.Vec { return mass.Sum(b.Items(0, 1), nil).Centre() }
