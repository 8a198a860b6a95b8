package rider

import (
	"testing"

	"steelyard/internal/document"
)

func BenchmarkSeat(b *testing.B) {
	for _, posture := range document.Postures {
		b.Run(posture, func(b *testing.B) {
			bike, r := posed(b, load(b, "riel-bike.json")), person(func(r *document.Rider) { r.Posture = posture })
			b.ReportAllocs()
			for b.Loop() {
				if body, _ := Seat(bike, r); body == nil {
					b.Fatal("not seated")
				}
			}
		})
	}
	build := load(b, "riel-bike.json")
	for name, height := range map[string]float64{"pointed-toes": 755, "saddle-too-high": 900} {
		build.Saddle.Height = height
		bike, r := posed(b, build), person()
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, problems := Seat(bike, r); len(problems) != 1 {
					b.Fatal(problems)
				}
			}
		})
	}
}

func BenchmarkOutline(b *testing.B) {
	body := seated(b, posed(b, load(b, "riel-bike.json")), person())
	b.ReportAllocs()
	for b.Loop() {
		if len(body.Outline()) == 0 {
			b.Fatal("no outline")
		}
	}
}
