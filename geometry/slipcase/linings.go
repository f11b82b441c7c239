package slipcase

import "forel/geometry"

// linings gives the linings of a case; none for an unlined one.
func (j Job) linings(boards []geometry.Piece) []geometry.Piece {
	switch {
	case j.Lining.Thickness == 0:
		return nil
	case j.linedBefore():
		return j.liningsBefore(boards)
	}
	return j.liningsAfter()
}

// liningNames gives the name of each board's lining.
var liningNames = map[string]string{
	"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining", "divider": "divider lining",
}

// liningsAfter gives the linings that are pasted into the carcass when it is
// joined and covered, in the order they go in: sides, spine, head and tail.
// Each fits between those before it; at the mouth they stay back by 2 mm, to
// leave the edge of what is turned in to be seen.
func (j Job) liningsAfter() []geometry.Piece {
	between, in := j.Between(), j.Cavity()
	lining := func(name, over string, face geometry.Face, w, h Length, grain geometry.Grain, edges [4]edgeName) geometry.Piece {
		p := panel(name, geometry.Lining, w, h)
		p.Over = over
		p.Grain, p.FaceUp = grain, "face up (the face that is seen)"
		p.Regions = []geometry.Region{{Name: name, Face: face, Room: p.Outline.Bounds()}}
		p.Edges = rectangleEdges(p, edges)
		return p
	}
	side := lining("side lining", "side", geometry.RightInside, between.Width-linedShort, between.Height, geometry.GrainHeight,
		[4]edgeName{{name: "tail edge"}, {name: "mouth edge"}, {name: "head edge"}, {name: "spine edge"}})
	if j.hasHole() {
		j.cutHole(&side, linedShort)
	}
	side.Count = 2
	side.Hand = j.withHole("as drawn, for the right side; turned end for end on the table, same face up, for the left", "with a thumb hole at the mouth")
	if j.hasHole() {
		side.Edges[right].From.Y = between.Height/2 + j.hole() + linedShort
	}
	spine := lining("spine lining", "spine wall", geometry.SpineInside, in.Thickness, between.Height, geometry.GrainHeight,
		[4]edgeName{{name: "tail edge"}, {name: "right edge"}, {name: "head edge"}, {name: "left edge"}})
	out := []geometry.Piece{side, spine}
	for _, end := range []struct {
		name, over   string
		face         geometry.Face
		lower, upper string
	}{{"head lining", "head wall", geometry.HeadInside, "right edge", "left edge"}, {"tail lining", "tail wall", geometry.TailInside, "left edge", "right edge"}} {
		out = append(out, lining(end.name, end.over, end.face, in.Width-linedShort, in.Thickness, geometry.GrainWidth,
			[4]edgeName{{name: end.lower}, {name: "mouth edge"}, {name: end.upper}, {name: "spine edge"}}))
	}
	for i := range out {
		out[i].Margins = []geometry.Margin{{Name: "back from the mouth edge", Length: linedShort}}
	}
	return out
}

// liningsBefore gives a lining for each board, larger than it by the trim on
// every side. The guide is the board, which is laid in the middle; what stands
// over is trimmed flush when dry, in a thumb hole too.
func (j Job) liningsBefore(boards []geometry.Piece) []geometry.Piece {
	trim := j.Lining.Trim
	var out []geometry.Piece
	for _, b := range boards {
		w, h := b.Size()
		p := panel(liningNames[b.Name], geometry.Lining, w+2*trim, h+2*trim)
		p.Over = b.Name
		p.Count, p.Grain, p.Spine = b.Count, b.Grain, b.Spine
		p.FaceUp = "back up (the face that is pasted)"
		board := geometry.Bx(trim, trim, trim+w, trim+h)
		p.Regions = []geometry.Region{{Name: b.Name + " lies here", Face: b.Regions[0].Face, Room: board}}
		p.Margins = []geometry.Margin{{Name: "beyond the board all round, trimmed flush when dry", Length: trim}}
		if trim > 0 {
			p.Guides = []geometry.Guide{{Name: b.Name, Path: b.Outline.FlipX(w).Move(geometry.Pt(trim, trim))}}
		}
		edges := [4]edgeName{}
		for i, e := range b.Edges {
			edges[i] = edgeName{name: e.Name}
		}
		// The back of a lining is seen from its board: left and right change over.
		edges[right], edges[left] = edges[left], edges[right]
		p.Edges, p.Spine = rectangleEdges(p, edges), mirrored(b.Spine)
		if b.Name == "side" {
			p.Hand = j.withHole("as drawn, for the right side; turned end for end on the table, same face up, for the left", "trim the thumb hole flush too")
		}
		out = append(out, p)
	}
	return out
}

// mirrored gives the edge that an edge becomes when a piece is turned over.
func mirrored(edge int) int {
	switch edge {
	case left:
		return right
	case right:
		return left
	}
	return edge
}
