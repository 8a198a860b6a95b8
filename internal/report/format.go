package report

import "strconv"
import "steelyard/internal/mass"

func (w *words) mass(f *figures, s slot) string {
	return w.grams(f.of[s].Value*1e3, mass.Coverage*f.standard[s]*1e3)
}
func (w *words) delta(c *Change) string {
	d := c.Delta
	if d < 0 {
		d = -d
	}
	return w.grams(d, c.Plus)
}
func (w *words) grams(g, plus float64) string {
	return strconv.FormatFloat(g, 'f', 0, 64) + " g ± " + strconv.FormatFloat(plus, 'f', 0, 64)
}
func (w *words) length(m, u float64) string {
	return strconv.FormatFloat(m*1e3, 'f', 0, 64) + " mm ± " + strconv.FormatFloat(u*2e3, 'f', 0, 64)
}
