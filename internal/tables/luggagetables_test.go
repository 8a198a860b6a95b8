package tables_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/tables"
	"steelyard/internal/words"
)

// Every bag and every good is on a line of its own, under its bag, and together
// they weigh what the report says; a name that begins like a formula is text.
func TestLuggageCSV(t *testing.T) {
	d, r := demoReport(t)
	l := d.Load(r.Sides[0].Load)
	if l == nil {
		t.Fatal("the demo's first side carries nothing")
	}
	want := 0.0
	for _, b := range r.Sides[0].Bags {
		want += b.Mass
	}
	for _, g := range r.Sides[0].Goods {
		want += g.Mass
	}
	for i := range l.Goods {
		l.Goods[i].Name += " " + strconv.Itoa(i) // some have the same
	}
	l.Goods[0].Name = "=1+1"
	l.Goods[1].In = ""
	table, err := rows(tables.LuggageCSV(l, tables.Export{}))
	if err != nil {
		t.Fatal(err)
	}
	if len(table) != 1+len(l.Bags)+len(l.Goods) {
		t.Fatalf("%d lines for %d bags and %d goods", len(table), len(l.Bags), len(l.Goods))
	}
	bag := map[string]string{"": (*words.Words)(nil).Label("table.unpacked")}
	for _, b := range l.Bags {
		bag[b.ID] = b.Name
	}
	at := map[string]string{}
	got := 0.0
	for _, line := range table[1:] {
		at[line[1]] = line[0]
		v, err := strconv.ParseFloat(line[5], 64)
		if err != nil {
			t.Error(err)
		}
		got += v
	}
	if math.Abs(got-want) > 0.01 {
		t.Errorf("the list weighs %v g, the report's load %v g", got, want)
	}
	for i, g := range l.Goods {
		name := g.Name
		if i == 0 {
			name = "'=1+1"
		}
		if at[name] != bag[g.In] {
			t.Errorf("%s is listed in %q, want %q", name, at[name], bag[g.In])
		}
	}
	if last := table[len(table)-1]; last[0] != bag[""] {
		t.Errorf("what is not packed does not come last: %q", last)
	}
}

func TestLuggageMarkdown(t *testing.T) {
	d, _ := demoReport(t)
	l := &d.Loads[0]
	l.Goods[0].Name = "a|b"
	l.Goods[0].Quantity, l.Goods[0].Mass, l.Goods[0].Volume = 3, 200, 1.5
	text := string(tables.LuggageMarkdown(l, document.Show{Mass: "g", Length: "mm"}, tables.Export{Notes: []string{"So it was."}}))
	if !strings.Contains(text, `| a\|b | 3 | 200`) || !strings.Contains(text, "600") || !strings.Contains(text, "4.5") || !strings.Contains(text, "So it was.") {
		t.Errorf("%s", text)
	}
}
