package photograph

import (
	"steelyard/internal/document"
	"steelyard/internal/geometry"
)

// Place says where a photograph of a build lies in the middle plane of the bike as
// it is drawn: its upper left corner, and the ways of one px to the right and down,
// each forward and up, m. The rear axle lies on the drawn one, and the front axle in
// the direction of the drawn one; where that is nearer or farther than the drawn
// one, the figures of the build are not the bike's in the picture.
func Place(p *Photograph, b *document.Build, drawn *geometry.Bike) (corner, right, down [2]float64, err error) {
	v, err := newView(p, b)
	if err != nil {
		return corner, right, down, err
	}
	var e [errors]float64
	at, _ := v.laid(&e)
	a := v.at[frontAxle].minus(v.at[rearAxle])
	length := a.norm()
	to := drawn.FrontAxle.Sub(drawn.RearAxle)
	scale := at[frontAxle].norm() / length / to.Norm()
	// (a.x, -a.y), upwards, goes to (to.X, to.Z); a mirrored picture is turned over
	// about its axles.
	turn := func(x, y float64) [2]float64 {
		y = -y
		along, across := (x*a.x-y*a.y)/length, v.mirror*(y*a.x+x*a.y)/length
		return [2]float64{scale * (along*to.X - across*to.Z), scale * (along*to.Z + across*to.X)}
	}
	right, down = turn(1, 0), turn(0, 1)
	c := turn(-v.at[rearAxle].x, -v.at[rearAxle].y)
	corner = [2]float64{drawn.RearAxle.X + c[0], drawn.RearAxle.Z + c[1]}
	return corner, right, down, nil
}
