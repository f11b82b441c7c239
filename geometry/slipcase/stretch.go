package slipcase

import (
	"fmt"

	"forel/geometry"
)

// shrunk returns a covering cut smaller across its grain, so that it is right
// when it has grown from the paste: what is cut to p parts in a hundred less
// grows to the size it should have. Arcs become short chords, since a circle
// does not stay one.
func shrunk(p geometry.Piece, percent float64) geometry.Piece {
	if percent == 0 {
		return p
	}
	fx, fy := 1/(1+percent/100), 1.0
	if p.Grain == geometry.GrainWidth {
		fx, fy = fy, fx
	}
	point := func(q geometry.Point) geometry.Point { return geometry.Pt(q.X*Length(fx), q.Y*Length(fy)) }
	path := func(in geometry.Path) geometry.Path {
		pts := in.Flatten(0.005)
		for i := range pts {
			pts[i] = point(pts[i])
		}
		out := geometry.Line(pts...)
		out.Closed = in.Closed
		return out
	}
	q := p.Moved(point, path)
	across := &q.Rule.Width
	if p.Grain == geometry.GrainWidth {
		across = &q.Rule.Height
	}
	*across = fmt.Sprintf("(%s) ÷ %.6g", *across, 1+percent/100)
	q.Creases, q.Seats = nil, nil // they belong to the piece as it lies on the case
	q.Hand = also(q.Hand, fmt.Sprintf("cut %.3g %% smaller across the grain; it grows when pasted", percent))
	return q
}
