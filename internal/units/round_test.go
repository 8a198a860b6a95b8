package units_test

import (
	"encoding/json"
	"flag"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/units"
)

var update = flag.Bool("update", false, "write web/model/rounding.json")

// The page rounds by the table that is made here.
func TestPageRounding(t *testing.T) {
	path := filepath.Join("..", "..", "web", "model", "rounding.json")
	want, err := json.Marshal(units.PageRounding())
	if err != nil {
		t.Fatal(err)
	}
	want = append(want, '\n')
	if *update {
		if err := os.WriteFile(path, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(string(want), string(got)); d != "" {
		t.Errorf("web/model/rounding.json is not what the rule says; write it with go test ./internal/units -update: %s", d)
	}
}

// Read as the page reads it, the table gives what the rule gives.
func TestStepsAreTheRule(t *testing.T) {
	r := units.PageRounding()
	rapid.Check(t, func(t *rapid.T) {
		plus := math.Pow(10, rapid.Float64Range(-8, 8).Draw(t, "plus"))
		if rapid.Bool().Draw(t, "at a step") {
			plus = rapid.SampledFrom(r.Steps).Draw(t, "step").Least
			plus = math.Nextafter(plus, plus*float64(rapid.IntRange(0, 2).Draw(t, "side")))
		}
		most := rapid.IntRange(0, 5).Draw(t, "most")
		d := most
		for _, s := range r.Steps {
			if plus >= s.Least {
				d = min(s.Decimals, most)
				break
			}
		}
		want, told := units.Decimals(plus, most)
		if want != d {
			t.Errorf("±%v: %d decimals by the table, %d by the rule", plus, d, want)
		}
		if told != (plus*math.Pow10(d) >= 0.5) {
			t.Errorf("±%v with %d decimals: told %v", plus, d, told)
		}
	})
}

func TestDecimals(t *testing.T) {
	for _, c := range []struct {
		plus float64
		most int
		want int
		told bool
	}{
		{8.4, 2, 1, true}, {9.94, 2, 1, true}, {9.96, 2, 0, true}, {100, 2, -1, true}, {115.47, 2, -1, true}, {0.12, 2, 2, true},
		{0.012, 2, 2, true}, {0.004, 2, 2, false}, {0, 2, 2, false}, {-8.4, 2, 1, true}, {math.NaN(), 2, 0, false}, {math.Inf(1), 2, 0, false},
	} {
		if d, told := units.Decimals(c.plus, c.most); d != c.want || told != c.told {
			t.Errorf("Decimals(%v, %d) = %d, %v, want %d, %v", c.plus, c.most, d, told, c.want, c.told)
		}
	}
}
