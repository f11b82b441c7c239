package slipcase

import "forel/geometry"

// sidePaper gives the paper over a side, back up, spine at the left: inset
// from the three closed edges of the side, and beyond the mouth edge by its
// turn-in, which goes round the board's edge and into the case. Its inset
// keeps the turn-in clear of the head and tail walls (Job.Check sees to it).
func (j Job) sidePaper() geometry.Piece {
	s, out, sp := j.Lined(), j.Outside(), j.SidePaper
	mouth := out.Width - sp.Inset
	width, height := mouth+sp.TurnIn, out.Height-2*sp.Inset
	across := func(x Length) geometry.Path { return geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, height)) }

	p := panel("side paper", geometry.Paper, width, height)
	p.Count, p.Grain, p.FaceUp = 2, geometry.GrainHeight, "back up (the face that is glued)"
	p.Hand = "as drawn, for the right side; turned end for end, for the left"
	p.Folds = []geometry.Path{across(mouth), across(mouth + s)}
	p.Guides = []geometry.Guide{{Name: "mouth edge of the side", Path: across(mouth)}}
	p.Regions = []geometry.Region{
		{Name: "side", Face: geometry.RightOutside, Room: geometry.Bx(0, 0, mouth, height)},
		{Name: "turn-in", Face: geometry.RightInside, Room: geometry.Bx(mouth+s, 0, width, height)},
	}
	p.Margins = []geometry.Margin{
		{Name: "from the spine, head and tail edges of the side to the paper", Length: sp.Inset},
		{Name: "beyond the mouth edge, turned in", Length: sp.TurnIn},
	}
	tailCorner, headCorner := geometry.Pt(mouth, -sp.Inset), geometry.Pt(mouth, height+sp.Inset)
	p.Seats = []geometry.Seat{
		{Face: geometry.RightOutside, At: [2]geometry.Anchor{
			{At: tailCorner, On: geometry.Corner{Right: true, Mouth: true}},
			{At: headCorner, On: geometry.Corner{Right: true, Mouth: true, Head: true}},
		}},
		{Face: geometry.LeftOutside, At: [2]geometry.Anchor{ // turned end for end
			{At: tailCorner, On: geometry.Corner{Mouth: true, Head: true}},
			{At: headCorner, On: geometry.Corner{Mouth: true}},
		}},
	}
	p.Edges = rectangleEdges(p, [4]edgeName{{name: "tail end"}, {name: "mouth"}, {name: "head end"}, {name: "spine edge"}})
	return p
}
