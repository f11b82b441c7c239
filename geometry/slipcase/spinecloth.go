package slipcase

import (
	"math"

	"forel/geometry"
)

// How wedges are cut (common practice, no source).
const (
	wedgeAngle      = 15.0 // degrees that each edge of a wedge leans from the fold
	leastWedgeAngle = 1.0  // degrees, before a spine flap is shortened
	flapGap         = 1.0  // mm between the two side flaps where they meet
)

// endFlaps are the flaps of the spine cloth past one end of the carcass.
type endFlaps struct {
	side  Length // length of a side flap
	spine Length // length of the spine flap
	apex  Length // from the board's corner to the apex of the wedge, on the fold
	// How far each edge of a wedge has left the fold at the end of its flap.
	leanSide, leanSpine Length
}

// flaps works out the flaps of the spine cloth. The rule is a flap of TurnIn
// over both sides and spine and a wedge that stops CornerDistance from the
// corner. It gives way for a thin case:
//
//   - The side flaps fold over the head wall from both sides and must not
//     overlap: each is trimmed to half the outside thickness, less half a
//     millimetre.
//   - A side flap that ends short of the apex pulls the apex in to its end.
//   - A wedge takes no more than half the tip of a flap: its angle gives way
//     first, and under one degree the spine flap is shortened.
func (j Job) flaps() endFlaps {
	t := j.Outside().Thickness
	f := endFlaps{spine: j.Cloth.TurnIn}
	f.side = min(j.Cloth.TurnIn, t/2-flapGap/2)
	f.apex = min(j.Cloth.CornerDistance, f.side)
	f.spine = min(f.spine, f.apex+(t/4)/slope(leastWedgeAngle))
	f.leanSide = min((f.side-f.apex)*slope(wedgeAngle), j.Cloth.Overlap/2)
	f.leanSpine = min((f.spine-f.apex)*slope(wedgeAngle), t/4)
	return f
}

// slope returns the tangent of an angle in degrees, as a length per length.
func slope(degrees float64) Length { return Length(math.Tan(degrees * math.Pi / 180)) }

// spineCloth returns the cloth over the spine wall, its back up, head at the
// top: left of the template is the left side of the case.
func (j Job) spineCloth() geometry.Piece {
	m, out, f := j.Cloth.Overlap, j.Outside(), j.flaps()
	x := [4]Length{0, m, m + out.Thickness, out.Thickness + 2*m}
	lo, hi := f.spine, f.spine+out.Height // tail and head edge of the board
	end := hi + f.spine
	pt := geometry.Pt

	outline := geometry.Polygon(geometry.Distinct(
		pt(x[1]+f.leanSpine, 0), pt(x[2]-f.leanSpine, 0), // spine flap at the tail
		pt(x[2], lo-f.apex), pt(x[2]+f.leanSide, lo-f.side), pt(x[3], lo-f.side),
		pt(x[3], hi+f.side), pt(x[2]+f.leanSide, hi+f.side), pt(x[2], hi+f.apex),
		pt(x[2]-f.leanSpine, end), pt(x[1]+f.leanSpine, end), // spine flap at the head
		pt(x[1], hi+f.apex), pt(x[1]-f.leanSide, hi+f.side), pt(0, hi+f.side),
		pt(0, lo-f.side), pt(x[1]-f.leanSide, lo-f.side), pt(x[1], lo-f.apex),
	)...)
	flap := func(name, fold string, face geometry.Face, x0, y0, x1, y1 Length) geometry.Region {
		return geometry.Region{Name: name, Fold: fold, Face: face, Room: geometry.Bx(x0, y0, x1, y1)}
	}
	p := geometry.Piece{
		Name: "spine cloth", Material: geometry.Cloth, Count: 1, Outline: outline,
		Folds: []geometry.Path{
			geometry.Line(pt(x[1], lo-f.apex), pt(x[1], hi+f.apex)),
			geometry.Line(pt(x[2], lo-f.apex), pt(x[2], hi+f.apex)),
			geometry.Line(pt(0, lo), pt(x[3], lo)),
			geometry.Line(pt(0, hi), pt(x[3], hi)),
		},
		Guides: []geometry.Guide{{Name: "spine of the carcass", Path: geometry.Rectangle(geometry.Bx(x[1], lo, x[2], hi))}},
		Grain:  geometry.GrainHeight,
		FaceUp: "back up (the face that is glued)",
		Rule:   geometry.SizeRule{Width: "To + 2m", Height: "Ho + 2e", Remark: j.thin(f)},
		Regions: []geometry.Region{
			flap("spine", "", SpineOutside, x[1], lo, x[2], hi),
			flap("left margin", "", LeftOutside, x[0], lo, x[1], hi),
			flap("right margin", "", RightOutside, x[2], lo, x[3], hi),
			flap("side flap", "fold first", HeadOutside, x[0], hi, x[1]-f.leanSide, hi+f.side),
			flap("side flap", "fold first", HeadOutside, x[2]+f.leanSide, hi, x[3], hi+f.side),
			flap("spine flap", "fold last", HeadOutside, x[1]+f.leanSpine, hi, x[2]-f.leanSpine, end),
			flap("side flap", "fold first", TailOutside, x[0], lo-f.side, x[1]-f.leanSide, lo),
			flap("side flap", "fold first", TailOutside, x[2]+f.leanSide, lo-f.side, x[3], lo),
			flap("spine flap", "fold last", TailOutside, x[1]+f.leanSpine, 0, x[2]-f.leanSpine, lo),
		},
		Margins: []geometry.Margin{
			{Name: "from the cloth's long edge to the carcass, each side", Length: m},
			{Name: "from the spine flap's end to the carcass, head and tail", Length: f.spine},
			{Name: "side flaps over head and tail", Length: f.side},
			{Name: "from the corner of the board to the apex of a wedge", Length: f.apex},
		},
		Creases: []geometry.Crease{ // the webs are pinched over the corners
			{Path: geometry.Line(pt(x[1], hi), pt(x[1], hi+f.apex)), Kind: geometry.Give},
			{Path: geometry.Line(pt(x[2], hi), pt(x[2], hi+f.apex)), Kind: geometry.Give},
			{Path: geometry.Line(pt(x[1], lo), pt(x[1], lo-f.apex)), Kind: geometry.Give},
			{Path: geometry.Line(pt(x[2], lo), pt(x[2], lo-f.apex)), Kind: geometry.Give},
		},
		Seats: []geometry.Seat{glued(SpineOutside, pt(x[1], lo), place{}, pt(x[1], hi), place{head: true})},
		Hand:  "held with the head up, left and right as in the template",
	}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{bottom: {Name: "tail"}, top: {Name: "head"}})
	p.Spine = -1
	return p
}
