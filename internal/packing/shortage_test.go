package packing_test

import (
	"errors"
	"os"
	"testing"

	"steelyard/internal/packing"
	"steelyard/internal/words"
)

// Each reason why nothing fits is told, in English and in German, with the
// figures that the task has: worked out by hand.
func TestShortageIsExplained(t *testing.T) {
	text, err := os.ReadFile("../../data/words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	german, err := words.New(text)
	if err != nil {
		t.Fatal(err)
	}
	good := func(name string, n int, kg, l float64) packing.Good {
		return packing.Good{Name: name, Quantity: n, Mass: kg, Volume: l}
	}
	pinned := func(g packing.Good, in int) packing.Good {
		g.Pinned, g.In = true, in
		return g
	}
	together := func(g packing.Good) packing.Good {
		g.Together = true
		return g
	}
	grouped := func(g packing.Good) packing.Good {
		g.Group = 1
		return g
	}
	bag := func(name string, kg, l float64) packing.Bag { return packing.Bag{Name: name, Permitted: kg, Volume: l} }
	rack := func(kg float64, share ...float64) packing.Limit {
		return packing.Limit{Name: "rack", Permitted: kg, Share: share}
	}
	for _, c := range []struct {
		reason   packing.Reason
		task     packing.Task
		says, de string
	}{
		{packing.PinnedLoad, packing.Task{Goods: []packing.Good{pinned(good("stone", 1, 3, 1), 0)}, Bags: []packing.Bag{bag("left", 2, 20)}},
			`bag "left" may hold 2 kg, but the goods pinned in it come to 1 kg more: unpin one of them`,
			`Tasche „left“ darf 2 kg tragen, aber was darin festgelegt ist, wiegt 1 kg mehr: lösen Sie eines davon`},
		{packing.PinnedVolume, packing.Task{Goods: []packing.Good{pinned(good("mat", 1, 0.5, 12.5), 0)}, Bags: []packing.Bag{bag("left", 9, 10)}},
			`bag "left" holds 10 l, but the goods pinned in it come to 2.5 l more: unpin one of them`,
			`Tasche „left“ fasst 10 l, aber was darin festgelegt ist, braucht 2,5 l mehr: lösen Sie eines davon`},
		{packing.PinnedLimit, packing.Task{Goods: []packing.Good{pinned(good("stone", 1, 3, 1), 0)}, Bags: []packing.Bag{bag("left", 9, 10)}, Limits: []packing.Limit{rack(2, 1)}},
			`limit "rack" permits 2 kg, but the goods pinned there come to 1 kg more: unpin one of them`,
			`Grenze „rack“ lässt 2 kg zu, aber was dort festgelegt ist, wiegt 1 kg mehr: lösen Sie eines davon`},
		{packing.PieceLoad, packing.Task{Goods: []packing.Good{good("stone", 1, 3, 1)}, Bags: []packing.Bag{bag("left", 2, 20), bag("right", 2, 20)}},
			`good "stone" is 3 kg, but the most that a bag or its limits permit is 2 kg: 1 kg too heavy`,
			`Ding „stone“ wiegt 3 kg, aber mehr als 2 kg lassen keine Tasche und ihre Grenzen zu: 1 kg zu schwer`},
		{packing.PieceVolume, packing.Task{Goods: []packing.Good{together(good("mat", 2, 0.5, 6))}, Bags: []packing.Bag{bag("left", 9, 10), bag("right", 9, 10)}},
			`the 2 pieces of good "mat" that stay together are 12 l, but the largest room left for it in a bag is 10 l: 2 l too large`,
			`die 2 Stücke, die zusammenbleiben (Ding „mat“), brauchen 12 l, aber am meisten Platz in einer Tasche sind noch 10 l: 2 l zu groß`},
		{packing.PieceVolume, packing.Task{Goods: []packing.Good{grouped(good("pot", 1, 0.5, 6)), grouped(good("stove", 2, 0.5, 3))}, Bags: []packing.Bag{bag("left", 9, 10)}},
			`good "pot", good "stove", which are kept together, are 12 l, but the largest room left for it in a bag is 10 l: 2 l too large`,
			`die zusammenbleibenden Dinge (Ding „pot“, Ding „stove“) brauchen 12 l, aber am meisten Platz in einer Tasche sind noch 10 l: 2 l zu groß`},
		{packing.GroupApart, packing.Task{Goods: []packing.Good{pinned(grouped(good("pot", 1, 0.5, 6)), 0), pinned(grouped(good("stove", 1, 0.5, 3)), 1)}, Bags: []packing.Bag{bag("left", 9, 10), bag("right", 9, 10)}},
			`good "stove" is to be kept together with good "pot", but may not lie in bag "left", where that is pinned`,
			`Ding „stove“ soll mit Ding „pot“ zusammenbleiben, darf aber nicht in Tasche „left“ liegen, wo dieses festgelegt ist`},
		{packing.NoWay, packing.Task{Goods: []packing.Good{good("a", 1, 2, 1), good("b", 1, 2, 1)}, Bags: []packing.Bag{bag("left", 3, 20), bag("right", 5, 20)}, Start: packing.Packing{{1, 0}, {1, 0}}, AtMost: new(int)},
			`no packing keeps every limit with at most 0 moves: allow more of them`,
			`keine Packung hält mit höchstens 0 Umräumungen jede Grenze ein: lassen Sie mehr zu`},
		{packing.PieceForbids, packing.Task{Goods: []packing.Good{good("stove", 1, 1, 1)}, Bags: []packing.Bag{bag("left", 9, 10)}, Forbidden: []packing.Pair{{Good: 0, Bag: 0}}},
			`good "stove" may go into no bag: every one is forbidden`,
			`Ding „stove“ darf in keine Tasche: jede ist verboten`},
		{packing.PieceForbids, packing.Task{Goods: []packing.Good{good("tent", 1, 3, 8)}, Bags: []packing.Bag{bag("small", 9, 5), bag("light", 2, 20)}},
			`good "tent" (3 kg, 8 l) goes into no bag: those with the room do not permit the load`,
			`Ding „tent“ (3 kg, 8 l) passt in keine Tasche: die mit dem Platz lassen die Last nicht zu`},
		{packing.TotalLoad, packing.Task{Goods: []packing.Good{good("a", 3, 2, 1)}, Bags: []packing.Bag{bag("left", 2.5, 20), bag("right", 2.5, 20)}},
			`the goods come to 6 kg, but the bags have a permitted load of 5 kg: 1 kg short`,
			`alle Dinge wiegen 6 kg, aber die Taschen haben nur eine zulässige Last von 5 kg: es fehlen 1 kg`},
		{packing.TotalVolume, packing.Task{Goods: []packing.Good{good("a", 3, 1, 5), good("b", 1, 1, 1)}, Bags: []packing.Bag{bag("left", 9, 12), bag("right", 9, 30)},
			Forbidden: []packing.Pair{{Good: 0, Bag: 1}}},
			`good "a" come to 15 l, but bag "left", the only one for them, has room for 12 l: 3 l short`,
			`Ding „a“ brauchen 15 l, aber Tasche „left“, die einzige dafür, hat Platz für 12 l: es fehlen 3 l`},
		{packing.TotalLimit, packing.Task{Goods: []packing.Good{good("a", 2, 2, 1)}, Bags: []packing.Bag{bag("left", 9, 20), bag("right", 9, 20)}, Limits: []packing.Limit{rack(3, 1, 1)}},
			`limit "rack" permits 3 kg for what is free to move, but the goods (4 kg) put at least 4 kg on it: 1 kg too much`,
			`Grenze „rack“ lässt 3 kg für das zu, was frei ist; mindestens 4 kg kommen aber darauf durch alle Dinge (4 kg): 1 kg zu viel`},
		{packing.NoWay, packing.Task{Goods: []packing.Good{good("a", 3, 2, 1)}, Bags: []packing.Bag{bag("left", 3, 20), bag("right", 3, 20)}},
			`no packing keeps every limit, although their totals would do`,
			`keine Packung hält jede Grenze ein, obwohl alles zusammen reichen würde`},
	} {
		c.task.FrontContact = 1
		s, err := packing.New(&c.task)
		if err == nil {
			err = s.Run(1_000_000).Err
		}
		var short *packing.Shortage
		if !errors.As(err, &short) {
			t.Errorf("want %q, got %v", c.says, err)
			continue
		}
		got, de := short.Error(), short.In(german)
		if c.reason == packing.NoWay { // and what the nearest exceeds
			got, de = got[:min(len(got), len(c.says))], de[:min(len(de), len(c.de))]
		}
		if short.Reason != c.reason || got != c.says || de != c.de {
			t.Errorf("reason %d\n%s\n%s\nwant %d\n%s\n%s", short.Reason, short.Error(), short.In(german), c.reason, c.says, c.de)
		}
	}
}
