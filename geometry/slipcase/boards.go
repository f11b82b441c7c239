package slipcase

import "forel/geometry"

// boardUp is the face of a board that its template shows.
func (j Job) boardUp() string {
	if j.Lining.Thickness == 0 || !j.linedBefore() {
		return "inside of the case up"
	}
	return "lined face up (inside of the case)"
}

// boards returns the five boards of the carcass as five-board cases are built:
// walls stand on the lined face of a side, the spine wall runs the full
// height, head and tail walls butt against its lined face.
func (j Job) boards() []geometry.Piece {
	s, in, out := j.Edge(), j.Between(), j.Outside()
	up, r := j.boardUp(), j.terms()
	var lines []Length // of both faces of each divider
	for _, d := range j.dividerLines() {
		lines = append(lines, d[0], d[1])
	}

	side := panel("side", geometry.Board, out.Width, out.Height)
	if j.hasHole() {
		j.cutHole(&side, 0)
	}
	side.Count, side.Grain, side.FaceUp = 2, geometry.GrainHeight, up
	side.Rule = geometry.SizeRule{Width: "W + cW + s" + r.one, Height: "H + cH + 2s" + r.two}
	side.Hand = j.withHole("both sides are alike", "with a thumb hole at the mouth")
	side.Edges = rectangleEdges(side, [4]geometry.Edge{
		{Name: "tail edge", Meets: "tail wall stands here"},
		{Name: "mouth edge", Meets: "stays open"},
		{Name: "head edge", Meets: "head wall stands here"},
		{Name: "spine edge", Meets: "spine wall stands here"},
	})
	if j.hasHole() { // name the mouth edge beside the hole
		side.Edges[right].From.Y = out.Height/2 + j.hole()
	}
	side.Regions = []geometry.Region{{Name: "side", Face: RightInside, Room: geometry.Bx(s, s, out.Width, out.Height-s)}}
	side.Guides = []geometry.Guide{
		{Name: "spine wall", Path: geometry.Line(geometry.Pt(s, 0), geometry.Pt(s, out.Height))},
		{Name: "tail wall", Path: geometry.Line(geometry.Pt(s, s), geometry.Pt(out.Width, s))},
		{Name: "head wall", Path: geometry.Line(geometry.Pt(s, out.Height-s), geometry.Pt(out.Width, out.Height-s))},
	}

	spine := panel("spine wall", geometry.Board, in.Thickness, out.Height)
	spine.Grain, spine.FaceUp = geometry.GrainHeight, up
	spine.Rule = geometry.SizeRule{Width: r.thick + r.two, Height: "H + cH + 2s" + r.two}
	spine.Edges = rectangleEdges(spine, [4]geometry.Edge{
		{Name: "tail edge", Meets: "flush with the sides"},
		{Name: "right edge", Meets: "glued to the right side"},
		{Name: "head edge", Meets: "flush with the sides"},
		{Name: "left edge", Meets: "glued to the left side"},
	})
	spine.Regions = []geometry.Region{{Name: "spine wall", Face: SpineInside, Room: geometry.Bx(0, s, in.Thickness, out.Height-s)}}
	spine.Guides = []geometry.Guide{
		{Name: "tail wall", Path: geometry.Line(geometry.Pt(0, s), geometry.Pt(in.Thickness, s))},
		{Name: "head wall", Path: geometry.Line(geometry.Pt(0, out.Height-s), geometry.Pt(in.Thickness, out.Height-s))},
	}

	spine.Seats = []geometry.Seat{seated(SpineInside,
		geometry.Pt(0, s), place{}, geometry.Pt(0, out.Height-s), place{head: true})}
	for _, x := range lines {
		spine.Guides = append(spine.Guides, geometry.Guide{Name: "divider", Named: true, Path: geometry.Line(geometry.Pt(x, s), geometry.Pt(x, out.Height-s))})
	}

	boards := []geometry.Piece{side, spine}
	for _, e := range ends {
		p := panel(e.name+" wall", geometry.Board, in.Width, in.Thickness)
		p.Grain, p.FaceUp = geometry.GrainWidth, up
		p.Rule = geometry.SizeRule{Width: "W + cW" + r.one, Height: r.thick + r.two}
		p.Hand = "head wall and tail wall are alike"
		p.Edges = rectangleEdges(p, [4]geometry.Edge{
			{Name: e.right + " edge", Meets: "glued to the " + e.right + " side"},
			{Name: "mouth edge", Meets: "stays open"},
			{Name: e.left + " edge", Meets: "glued to the " + e.left + " side"},
			{Name: "spine edge", Meets: "butts against the spine wall"},
		})
		p.Regions = []geometry.Region{{Name: p.Name, Face: e.inside, Room: p.Outline.Bounds()}}
		p.Seats = []geometry.Seat{seated(e.inside, geometry.Pt(0, 0), e.at(e.right, false), geometry.Pt(0, in.Thickness), e.at(e.left, false))}
		for _, x := range lines {
			if e.left == "left" {
				x = in.Thickness - x
			}
			p.Hand = "head wall and tail wall are of one size, their lines for the dividers mirrored"
			p.Guides = append(p.Guides, geometry.Guide{Name: "divider", Named: true, Path: geometry.Line(geometry.Pt(0, x), geometry.Pt(in.Width-j.Divider.SetBack, x))})
		}
		boards = append(boards, p)
	}
	return boards
}

// seated returns the place of what is drawn as it is seen inside the case, two
// points of it on two corners between the boards.
func seated(face geometry.Face, a geometry.Point, onA place, b geometry.Point, onB place) geometry.Seat {
	return geometry.Seat{Face: face, Shown: true, At: [2]geometry.Anchor{{At: a, On: onA.within()}, {At: b, On: onB.within()}}}
}

// glued returns the place of what is drawn back up, two points of it on two outer corners.
func glued(face geometry.Face, a geometry.Point, onA place, b geometry.Point, onB place) geometry.Seat {
	return geometry.Seat{Face: face, At: [2]geometry.Anchor{{At: a, On: onA.corner()}, {At: b, On: onB.corner()}}}
}

// panel returns a rectangular piece, one of it, its spine edge on the left.
func panel(name string, m geometry.Material, width, height Length) geometry.Piece {
	return geometry.Piece{
		Name: name, Material: m, Count: 1,
		Outline: geometry.Rectangle(geometry.Bx(0, 0, width, height)),
		Spine:   left,
	}
}

// The edges of a rectangular piece as rectangleEdges lists them.
const (
	bottom = iota
	right
	top
	left
)

// rectangleEdges returns the four edges of a piece's bounding box, from the bottom one
// counterclockwise, with the names that are given and what they meet.
func rectangleEdges(p geometry.Piece, edges [4]geometry.Edge) []geometry.Edge {
	corners := geometry.Rectangle(p.Outline.Bounds()).Vertices
	for i := range edges {
		edges[i].From, edges[i].To = corners[i].Point, corners[(i+1)%len(corners)].Point
	}
	return edges[:]
}
