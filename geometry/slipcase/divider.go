package slipcase

import "forel/geometry"

// dividerStrip is the name of the cloth round the mouth edge of a divider.
const dividerStrip = "divider strip"

// dividerPieces returns what the walls between volumes are made of: the board,
// a lining for each face, the strip round the mouth edge. A divider is slid in
// when the case is covered, between what is turned in at head and tail.
func (j Job) dividerPieces() []geometry.Piece {
	n := j.dividers()
	if n == 0 {
		return nil
	}
	in := j.Cavity()
	width := in.Width - j.Divider.SetBack
	height := in.Height - 2*j.underDivider()
	board := panel("divider", geometry.Board, width, height)
	board.Count, board.Grain, board.FaceUp = n, geometry.GrainHeight, "either face up; both are lined"
	board.Regions = []geometry.Region{{Name: "divider", Room: board.Outline.Bounds()}}
	board.Edges = rectangleEdges(board, [4]edgeName{
		{name: "tail edge", meets: "stands on the tail wall"},
		{name: "mouth edge", meets: "wrapped with the strip"},
		{name: "head edge", meets: "meets the head wall"},
		{name: "spine edge", meets: "butts against the spine wall"},
	})
	board.Rule = geometry.SizeRule{Width: "W + cW − q", Height: "H + cH − 2y"}
	board.Margins = []geometry.Margin{{Name: "back from the mouth edge of the case", Length: j.Divider.SetBack}}
	out := []geometry.Piece{board}

	if j.Lining.Thickness > 0 {
		trim := j.Lining.Trim
		lining := panel(liningNames["divider"], geometry.Lining, width+2*trim, height+2*trim)
		lining.Count, lining.Grain, lining.Over = 2*n, geometry.GrainHeight, "divider"
		lining.Trimmed = true
		lining.FaceUp = "back up (the face that is pasted)"
		lining.Rule = geometry.SizeRule{Width: "W + cW − q + 2r", Height: "H + cH − 2y + 2r"}
		under := geometry.Bx(trim, trim, trim+width, trim+height)
		lining.Regions = []geometry.Region{{Name: "divider lies here", Room: under}}
		if trim > 0 {
			lining.Guides = []geometry.Guide{{Name: "divider", Path: geometry.Rectangle(under)}}
		}
		lining.Margins = []geometry.Margin{{Name: "beyond the board all round, trimmed flush when dry", Length: trim}}
		tail, head := geometry.Pt(trim, trim), geometry.Pt(trim, trim+height)
		lining.Seats = []geometry.Seat{
			{Face: DividerRight, At: [2]geometry.Anchor{{At: tail, On: place{right: true}.corner()}, {At: head, On: place{right: true, head: true}.corner()}}},
			{Face: DividerLeft, At: [2]geometry.Anchor{{At: tail, On: place{head: true}.corner()}, {At: head, On: place{}.corner()}}}, // turned end for end
		}
		lining.Edges = rectangleEdges(lining, [4]edgeName{{name: "tail edge"}, {name: "mouth edge"}, {name: "head edge"}, {name: "spine edge"}})
		out = append(out, lining)
	}

	lap, thick := j.Divider.Lap, j.dividerThickness()
	strip := panel(dividerStrip, geometry.Cloth, thick+2*lap, height)
	strip.Count, strip.Grain, strip.FaceUp = n, geometry.GrainHeight, "back up (the face that is glued)"
	for _, x := range []Length{lap, lap + thick} {
		strip.Folds = append(strip.Folds, geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, height)))
	}
	strip.Rule = geometry.SizeRule{Width: "d + 2v", Height: "H + cH − 2y"}
	strip.Guides = []geometry.Guide{{Name: "mouth edge of the divider", Path: geometry.Rectangle(geometry.Bx(lap, 0, lap+thick, height))}}
	strip.Regions = []geometry.Region{
		{Name: "right lap", Face: DividerRight, Room: geometry.Bx(0, 0, lap, height)},
		{Name: "left lap", Face: DividerLeft, Room: geometry.Bx(lap+thick, 0, thick+2*lap, height)},
	}
	strip.Seats = []geometry.Seat{{Face: DividerMouth, At: [2]geometry.Anchor{
		{At: geometry.Pt(lap, 0), On: place{right: true, mouth: true}.corner()},
		{At: geometry.Pt(lap, height), On: place{right: true, mouth: true, head: true}.corner()},
	}}}
	strip.Margins = []geometry.Margin{{Name: "onto each face of the divider", Length: lap}}
	strip.Edges = rectangleEdges(strip, [4]edgeName{bottom: {name: "tail end"}, top: {name: "head end"}})
	return append(out, strip)
}

// underDivider returns what lies on the head wall where a divider stands: what is
// turned in.
func (j Job) underDivider() Length {
	if j.Covering == SidesOnly {
		return 0
	}
	return j.cover()
}

// dividerLines returns where both faces of each divider stand, from the inner
// face of the left side as the boards are joined.
func (j Job) dividerLines() []Length {
	var out []Length
	at := (j.Between().Thickness - j.Cavity().Thickness) / 2 // a lining put in afterwards
	for i := range j.dividers() {
		at += j.Books[i].Thick() + j.Clearance.Thickness
		out = append(out, at, at+j.dividerThickness())
		at += j.dividerThickness()
	}
	return out
}
