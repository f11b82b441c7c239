package slipcase

import "forel/geometry"

// linings gives a lining for each board, larger than it by the trim on every
// side; none for an unlined case. The guide is the board, which is laid in the
// middle; what stands over is trimmed flush when dry.
func (j Job) linings(boards []geometry.Piece) []geometry.Piece {
	if j.Lining.Thickness == 0 {
		return nil
	}
	names := map[string]string{"side": "side lining", "spine wall": "spine lining", "head wall": "head lining", "tail wall": "tail lining"}
	trim := j.Lining.Trim
	var out []geometry.Piece
	for _, b := range boards {
		w, h := b.Size()
		p := panel(names[b.Name], geometry.Lining, w+2*trim, h+2*trim)
		p.Over = b.Name
		p.Count, p.Grain, p.Spine = b.Count, b.Grain, b.Spine
		p.FaceUp = "back up (the face that is pasted)"
		board := geometry.Bx(trim, trim, trim+w, trim+h)
		p.Regions = []geometry.Region{{Name: b.Name + " lies here", Face: b.Regions[0].Face, Room: board}}
		p.Margins = []geometry.Margin{{Name: "beyond the board all round, trimmed flush when dry", Length: trim}}
		if trim > 0 {
			p.Guides = []geometry.Guide{{Name: b.Name, Path: geometry.Rectangle(board)}}
		}
		edges := [4]edgeName{}
		for i, e := range b.Edges {
			edges[i] = edgeName{name: e.Name}
		}
		// The back of a lining is seen from its board: left and right change over.
		edges[right], edges[left] = edges[left], edges[right]
		p.Edges, p.Spine = rectangleEdges(p, edges), mirrored(b.Spine)
		if b.Name == "side" {
			p.Hand = "as drawn, for the right side; turned end for end, for the left"
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
