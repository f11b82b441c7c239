package slipcase

import (
	"math"

	"forel/geometry"
)

// The names of the cloth round the mouth edge of a divider, and round the edge of the
// thumb hole in it.
const (
	dividerStrip   = "divider strip"
	notchStripName = "notch strip"
)

// leastNotch is how deep a thumb hole cuts into a divider, at least; less is left out
// (common practice, no source).
const leastNotch Length = 3

// dividerHole tells whether the dividers have the thumb hole of the sides. A volume is
// taken by its boards. Each outer one has a board at a side, whose hole uncovers it.
// One in the middle has a divider at both boards: when its neighbours are out, thumb
// and finger reach it through the empty places, by a hole in both dividers. So from
// three volumes on each divider has it, in line with that of the sides, unless it
// stands so far back from the mouth that it does not reach into their hole.
func (j Job) dividerHole() bool {
	return j.hasHole() && j.Dividers() > 1 && j.hole()-j.Divider.SetBack >= leastNotch
}

// notch returns the edge of the thumb hole in a divider, and half of what it takes of the
// mouth edge.
func (j Job) notch() (edge, half Length) {
	r, back := j.hole(), j.Divider.SetBack
	half = -j.holeAt(0, 0, r, back)[0].Y
	if j.ThumbHole.Shape == Triangle {
		return 2 * math.Sqrt2 * half, half
	}
	return 2 * r * Length(math.Acos((back / r).MM())), half
}

// dividerPieces returns what the walls between volumes are made of: the board,
// a lining for each face, the strip round the mouth edge, and where a thumb hole parts
// that, one more strip round the edge of the hole. A divider is glued between head and
// tail wall before the second side goes on.
func (j Job) dividerPieces() []geometry.Piece {
	n := j.Dividers()
	if n == 0 {
		return nil
	}
	in, hole := j.Cavity(), j.dividerHole()
	width, height := in.Width-j.Divider.SetBack, in.Height
	edge, half := Length(0), Length(0)
	board := panel("divider", geometry.Board, width, height)
	board.Count, board.Grain, board.FaceUp = n, geometry.GrainHeight, "either face up; both are lined"
	board.Regions = []geometry.Region{{Name: "divider", Room: board.Outline.Bounds()}}
	board.Edges = rectangleEdges(board, [4]geometry.Edge{
		{Name: "tail edge", Meets: "glued to the tail wall"},
		{Name: "mouth edge", Meets: "wrapped with the strip"},
		{Name: "head edge", Meets: "glued to the head wall"},
		{Name: "spine edge", Meets: "glued to the spine wall"},
	})
	if hole {
		edge, half = j.notch()
		j.cutHole(&board, j.Divider.SetBack)
		board.Hand = "with the thumb hole of the sides"
		board.Edges[right].From.Y = height/2 + half // name the mouth edge beside the hole
	}
	board.Rule = geometry.SizeRule{Width: "W + cW − q", Height: "H + cH"}
	board.Margins = []geometry.Margin{{Name: "back from the mouth edge of the case", Length: j.Divider.SetBack}}
	out := []geometry.Piece{board}

	if j.Lining.Thickness > 0 {
		lining, trim := j.liningOf(board, false), j.Lining.Trim
		lining.Count = 2 * n
		if hole {
			lining.Hand = "trim the thumb hole flush too"
		}
		if j.LiningPattern.minded() {
			lining.Hand = also(lining.Hand, "cut each by its drawing named face")
		}
		tail, head := geometry.Pt(trim, trim), geometry.Pt(trim, trim+height)
		lining.Seats = []geometry.Seat{
			glued(DividerRight, tail, place{right: true}, head, place{right: true, head: true}),
			glued(DividerLeft, tail, place{head: true}, head, place{}), // turned end for end
		}
		out = append(out, lining)
	}

	lap, thick, long := j.Divider.Lap, j.dividerThickness(), height
	if hole {
		long = height/2 - half
	}
	strip := panel(dividerStrip, geometry.Cloth, thick+2*lap, long)
	strip.Grain, strip.FaceUp = geometry.GrainHeight, "back up (the face that is glued)"
	for _, x := range []Length{lap, lap + thick} {
		strip.Folds = append(strip.Folds, geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, long)))
	}
	strip.Rule = geometry.SizeRule{Width: "d + 2v", Height: "H + cH"}
	strip.Guides = []geometry.Guide{{Name: "mouth edge of the divider", Path: geometry.Rectangle(geometry.Bx(lap, 0, lap+thick, long))}}
	strip.Regions = []geometry.Region{
		{Name: "right lap", Face: DividerRight, Room: geometry.Bx(0, 0, lap, long)},
		{Name: "left lap", Face: DividerLeft, Room: geometry.Bx(lap+thick, 0, thick+2*lap, long)},
	}
	at := func(y Length, head bool) geometry.Seat {
		return glued(DividerMouth, geometry.Pt(lap, y), place{right: true, mouth: true, head: head}, geometry.Pt(lap+thick, y), place{mouth: true, head: head})
	}
	strip.Seats = []geometry.Seat{at(0, false)}
	strip.Margins = []geometry.Margin{{Name: "onto each face of the divider", Length: lap}}
	strip.Edges = rectangleEdges(strip, [4]geometry.Edge{bottom: {Name: "tail end"}, top: {Name: "head end"}})
	if hole { // one below it and one above
		strip.Seats = append(strip.Seats, at(long, true))
		strip.Rule.Height = "S"
		strip.Hand = "two for each divider, below the thumb hole and above"
		strip.Edges = rectangleEdges(strip, [4]geometry.Edge{})
	}
	strip.Count = n * len(strip.Seats)
	out = append(out, strip)
	if hole {
		out = append(out, j.notchStrip(edge))
	}
	return out
}

// notchStrip returns the cloth round the edge of the thumb hole in a divider, which is so
// long. It goes onto both faces, but past the ends of the edge along the mouth edge
// only, where the other strips lie over it: nothing lies double on the faces.
func (j Job) notchStrip(edge Length) geometry.Piece {
	a, b, end := holeLap, holeLap+j.dividerThickness(), holeLap+edge
	pt := geometry.Pt
	p := panel(notchStripName, geometry.Cloth, b+holeLap, end+holeLap)
	p.Outline = geometry.Polygon(pt(a, 0), pt(b, 0), pt(b, a), pt(b+a, a), pt(b+a, end), pt(b, end), pt(b, end+a), pt(a, end+a), pt(a, end), pt(0, end), pt(0, a), pt(a, a))
	p.Count, p.Grain, p.FaceUp, p.Spine = j.Dividers(), geometry.GrainWidth, "back up (the face that is glued)", -1
	p.Folds = []geometry.Path{geometry.Line(pt(a, a), pt(a, end)), geometry.Line(pt(b, a), pt(b, end))}
	p.Rule = geometry.SizeRule{Width: "d + 2j", Height: "B + 2j"}
	p.Hand = "round the thumb hole in each divider; its laps are snipped on a round"
	p.Regions = []geometry.Region{{Name: "edge of the hole", Room: geometry.Bx(a, a, b, end)}}
	p.Margins = []geometry.Margin{{Name: "onto each face of the divider, and along its mouth edge at each end", Length: holeLap}}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{})
	return p
}

// dividerLines returns from where to where each divider stands, from the inner face of the
// left side.
func (j Job) dividerLines() (out [][2]Length) {
	at := Length(0)
	for i := range j.Dividers() {
		at += j.Books[i].Thick() + j.Clearance.Thickness
		out = append(out, [2]Length{at, at + j.dividerThickness()})
		at += j.dividerThickness()
	}
	return out
}
