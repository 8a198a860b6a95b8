package geometry

import (
	"testing"

	"steelyard/internal/mass"
)

func BenchmarkPose(b *testing.B) {
	for _, name := range []string{"travel-bike", "touring-bike"} {
		build := load(b, name+".json")
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if bike, _ := Pose(build); bike == nil {
					b.Fatal("not posed")
				}
			}
		})
	}
}

func BenchmarkPlace(b *testing.B) {
	bike := posed(b, load(b, "travel-bike.json"))
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := bike.Place("rear-panniers", mass.Vec{Y: 0.01}); !ok {
			b.Fatal("no place")
		}
	}
}
