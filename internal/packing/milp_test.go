package packing_test

import (
	"bufio"
	"fmt"
	"io"
	"math"

	"steelyard/internal/packing"
)

// writeLP writes a task as a mixed integer programme in the CPLEX LP format,
// straight from the definition of the aim and knowing nothing of the solver:
// x_i_j pieces of good i in bag j, y_u_j 1 if what stays together is in bag j,
// s_i_j pieces of a good that stay where they were, and each absolute value as the
// sum of two parts. The constant of the aim is the cost of a variable that is 1.
// With a finite ceiling the fewest moves are asked for, of the packings whose aim
// is below it.
func writeLP(w io.Writer, t *packing.Task, ceiling float64) error {
	b := bufio.NewWriter(w)
	all := t.Rest.M
	for i := range t.Goods {
		all += float64(t.Goods[i].Quantity) * t.Goods[i].Mass
	}
	square := func(x, y, z float64) float64 { return x*x + (y*y+z*z)/2 }
	c, r := t.Aim.Centre, t.Rest
	about := func(j, s, c float64) float64 { return j - 2*c*s + r.M*c*c }
	constant := t.Aim.Low*r.S.Z + t.Aim.Steered*t.RestSteered
	constant += t.Aim.Middle * (about(r.J.XX, r.S.X, c.X) + (about(r.J.YY, r.S.Y, c.Y)+about(r.J.ZZ, r.S.Z, c.Z))/2)
	aim := func() {
		fmt.Fprintf(b, " %+.17g one", constant/all)
		for i, g := range t.Goods {
			for j, bag := range t.Bags {
				p := bag.Place
				cost := t.Aim.Low*p.Z + t.Aim.Middle*square(p.X-c.X, p.Y-c.Y, p.Z-c.Z) + t.Aim.Steered*bag.Steered
				fmt.Fprintf(b, "\n %+.17g x_%d_%d", cost*g.Mass/all, i, j)
			}
		}
		fmt.Fprintf(b, "\n + %.17g fp + %.17g fm + %.17g bp + %.17g bm\n", t.Aim.Front, t.Aim.Front, t.Aim.Balance, t.Aim.Balance)
	}
	// What stays together, by the first good; -1 for goods that may be split.
	unit, first := make([]int, len(t.Goods)), map[int]int{}
	for i, g := range t.Goods {
		unit[i] = -1
		if g.Group != 0 && g.Quantity > 0 {
			if _, ok := first[g.Group]; !ok {
				first[g.Group] = i
			}
			unit[i] = first[g.Group]
		} else if g.Together && g.Quantity > 0 {
			unit[i] = i
		}
	}
	constantMoves := 0
	moves := func() {
		constantMoves = 0
		lumps := map[[2]int]int{}
		for i := range t.Start {
			was := 0
			for _, n := range t.Start[i] {
				was += n
			}
			for j, n := range t.Start[i] {
				switch {
				case unit[i] >= 0 && n < was:
					lumps[[2]int{unit[i], j}]++
				case unit[i] < 0 && n > 0:
					fmt.Fprintf(b, " - s_%d_%d", i, j)
				}
			}
			if unit[i] < 0 {
				constantMoves += was
			}
		}
		for u := range unit {
			for j := range t.Bags {
				if n := lumps[[2]int{u, j}]; n > 0 {
					fmt.Fprintf(b, " + %d y_%d_%d", n, u, j)
				}
			}
		}
	}
	fewest := !math.IsInf(ceiling, 1)
	fmt.Fprint(b, "Minimize\n obj:")
	if fewest {
		moves()
		fmt.Fprintf(b, " + %d one\nSubject To\n aim:", constantMoves)
		aim()
		fmt.Fprintf(b, " <= %.17g\n", ceiling)
	} else {
		aim()
		fmt.Fprint(b, "Subject To\n")
	}
	if t.AtMost != nil {
		fmt.Fprint(b, " moves: 0 one")
		moves()
		fmt.Fprintf(b, " <= %d\n", *t.AtMost-constantMoves)
	}
	fmt.Fprint(b, " one: one = 1\n")
	base := t.FrontContact - t.RearContact
	if base == 0 {
		base = 1
	}
	fmt.Fprint(b, " front: fm - fp")
	for i, g := range t.Goods {
		for j, bag := range t.Bags {
			fmt.Fprintf(b, "\n %+.17g x_%d_%d", g.Mass*(bag.Place.X-t.RearContact)/base/all, i, j)
		}
	}
	fmt.Fprintf(b, " = %.17g\n balance: bm - bp", t.Aim.FrontShare-(r.S.X-t.RearContact*r.M)/base/all)
	for i, g := range t.Goods {
		for j, bag := range t.Bags {
			fmt.Fprintf(b, "\n %+.17g x_%d_%d", g.Mass*bag.Place.Y/all, i, j)
		}
	}
	fmt.Fprintf(b, " = %.17g\n", -r.S.Y/all)
	for i, g := range t.Goods {
		fmt.Fprintf(b, " all_%d:", i)
		for j := range t.Bags {
			fmt.Fprintf(b, " + x_%d_%d", i, j)
		}
		fmt.Fprintf(b, " = %d\n", g.Quantity)
		if g.Pinned {
			fmt.Fprintf(b, " pin_%d: x_%d_%d = %d\n", i, i, g.In, g.Quantity)
		}
		for j := range t.Bags {
			if unit[i] >= 0 {
				fmt.Fprintf(b, " lump_%d_%d: x_%d_%d - %d y_%d_%d = 0\n", i, j, i, j, g.Quantity, unit[i], j)
			} else if t.Start != nil && t.Start[i][j] > 0 {
				fmt.Fprintf(b, " stay_%d_%d: s_%d_%d - x_%d_%d <= 0\n", i, j, i, j, i, j)
			}
		}
	}
	for n, f := range t.Forbidden {
		fmt.Fprintf(b, " not_%d: x_%d_%d = 0\n", n, f.Good, f.Bag)
	}
	row := func(name string, limit float64, coefficient func(i, j int) float64, bags ...int) {
		fmt.Fprintf(b, " %s:", name)
		for i := range t.Goods {
			for _, j := range bags {
				if c := coefficient(i, j); c != 0 {
					fmt.Fprintf(b, "\n %+.17g x_%d_%d", c, i, j)
				}
			}
		}
		fmt.Fprintf(b, " + 0 one <= %.17g\n", limit)
	}
	var every []int
	for j, bag := range t.Bags {
		every = append(every, j)
		if bag.Permitted > 0 {
			row(fmt.Sprint("load_", j), bag.Permitted, func(i, _ int) float64 { return t.Goods[i].Mass }, j)
		}
		if bag.Volume > 0 {
			row(fmt.Sprint("volume_", j), bag.Volume, func(i, _ int) float64 { return t.Goods[i].Volume }, j)
		}
	}
	for l, m := range t.Limits {
		row(fmt.Sprint("limit_", l), m.Permitted, func(i, j int) float64 { return t.Goods[i].Mass * m.Share[j] }, every...)
	}
	fmt.Fprint(b, "Bounds\n")
	for i, g := range t.Goods {
		for j := range t.Bags {
			fmt.Fprintf(b, " 0 <= x_%d_%d <= %d\n", i, j, g.Quantity)
			if unit[i] < 0 && t.Start != nil && t.Start[i][j] > 0 {
				fmt.Fprintf(b, " 0 <= s_%d_%d <= %d\n", i, j, t.Start[i][j])
			}
		}
	}
	fmt.Fprint(b, "General\n")
	for i := range t.Goods {
		for j := range t.Bags {
			if unit[i] < 0 {
				fmt.Fprintf(b, " x_%d_%d\n", i, j)
			}
		}
	}
	fmt.Fprint(b, "Binary\n")
	for i := range t.Goods {
		if unit[i] == i {
			for j := range t.Bags {
				fmt.Fprintf(b, " y_%d_%d\n", i, j)
			}
		}
	}
	fmt.Fprint(b, "End\n")
	return b.Flush()
}
