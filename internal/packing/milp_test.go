package packing_test

import (
	"bufio"
	"fmt"
	"io"

	"steelyard/internal/packing"
)

// writeLP writes a task as a mixed integer programme in the CPLEX LP format,
// straight from the definition of the aim and knowing nothing of the solver:
// x_i_j pieces of good i in bag j, y_i_j 1 if a good that stays together is in
// bag j, and each absolute value as the sum of two parts. The constant of the
// aim is the cost of a variable that is 1.
func writeLP(w io.Writer, t *packing.Task) error {
	b := bufio.NewWriter(w)
	all := t.Rest.M
	for i := range t.Goods {
		all += float64(t.Goods[i].Quantity) * t.Goods[i].Mass
	}
	square := func(x, y, z float64) float64 { return x*x + (y*y+z*z)/2 }
	c, r := t.Aim.Centre, t.Rest
	about := func(j, s, c float64) float64 { return j - 2*c*s + r.M*c*c }
	constant := t.Aim.Low * r.S.Z
	constant += t.Aim.Middle * (about(r.J.XX, r.S.X, c.X) + (about(r.J.YY, r.S.Y, c.Y)+about(r.J.ZZ, r.S.Z, c.Z))/2)
	fmt.Fprintf(b, "Minimize\n obj: %+.17g one", constant/all)
	for i, g := range t.Goods {
		for j, bag := range t.Bags {
			p := bag.Place
			cost := t.Aim.Low*p.Z + t.Aim.Middle*square(p.X-c.X, p.Y-c.Y, p.Z-c.Z)
			fmt.Fprintf(b, "\n %+.17g x_%d_%d", cost*g.Mass/all, i, j)
		}
	}
	fmt.Fprintf(b, "\n + %.17g fp + %.17g fm + %.17g bp + %.17g bm\nSubject To\n one: one = 1\n", t.Aim.Front, t.Aim.Front, t.Aim.Balance, t.Aim.Balance)
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
		if g.Together && g.Quantity > 1 {
			for j := range t.Bags {
				fmt.Fprintf(b, " lump_%d_%d: x_%d_%d - %d y_%d_%d = 0\n", i, j, i, j, g.Quantity, i, j)
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
		}
	}
	fmt.Fprint(b, "General\n")
	for i := range t.Goods {
		for j := range t.Bags {
			fmt.Fprintf(b, " x_%d_%d\n", i, j)
		}
	}
	fmt.Fprint(b, "Binary\n")
	for i, g := range t.Goods {
		if g.Together && g.Quantity > 1 {
			for j := range t.Bags {
				fmt.Fprintf(b, " y_%d_%d\n", i, j)
			}
		}
	}
	fmt.Fprint(b, "End\n")
	return b.Flush()
}
