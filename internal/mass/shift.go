package mass

// Shift says by how much one part moved the centre of mass, m, when system a
// became system b. The part's own moments are ofA and ofB; zero moments stand
// for a part that a or b does not have.
//
// With the mean centre c = (ca + cb)/2 and the mean mass M = (Ma + Mb)/2,
//
//	shift = ((S - c M)of part in b - (S - c M)of part in a) / M
//
// Over all the parts the shifts add up to cb - ca exactly, an unchanged part
// included: its shift is 0, for only changes count. Swapping a and b turns
// every shift round.
func Shift(a, b, ofA, ofB Moments) Vec {
	m := (a.M + b.M) / 2
	if m == 0 {
		return Vec{}
	}
	c := a.Centre().Lerp(b.Centre(), 0.5)
	from := ofA.S.Sub(c.Scale(ofA.M))
	to := ofB.S.Sub(c.Scale(ofB.M))
	return to.Sub(from).Scale(1 / m)
}
