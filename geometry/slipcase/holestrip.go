package slipcase

import (
	"math"

	"forel/geometry"
)

// holeStripName is the name of the strip round the edge of a thumb hole.
const holeStripName = "hole strip"

// holeLap is what a hole strip has beyond the edge it covers, onto each face of the board
// and at each end (common practice, no source).
const holeLap Length = 3

// holeEdge returns how long the edge of a thumb hole is.
func (j Job) holeEdge() Length {
	if j.ThumbHole.Shape == Triangle {
		return 2 * math.Sqrt2 * j.hole()
	}
	return math.Pi * j.hole() // half a circle
}

// holeStrips returns what covers the edge of the board in both thumb holes, where it
// shows between the tabs; none without a hole. It is pasted before the covering is
// turned over it, so nothing of the proof depends on it.
func (j Job) holeStrips() []geometry.Piece {
	if !j.hasHole() {
		return nil
	}
	material := geometry.Paper
	if j.Covering == AllCloth {
		material = geometry.Cloth
	}
	wide, long := j.Edge()+2*holeLap, j.holeEdge()+2*holeLap
	p := panel(holeStripName, material, wide, long)
	p.Count, p.Grain, p.FaceUp = 2, geometry.GrainWidth, "back up (the face that is pasted)"
	p.Spine = -1
	for _, x := range []Length{holeLap, holeLap + j.Edge()} {
		p.Folds = append(p.Folds, geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, long)))
	}
	p.Rule = geometry.SizeRule{Width: "s + 2j", Height: "A + 2j"}
	p.Hand = "one for each hole; its laps are snipped on a round"
	p.Regions = []geometry.Region{{Name: "edge of the hole", Room: p.Outline.Bounds()}}
	p.Margins = []geometry.Margin{{Name: "onto each face of the board, and beyond the hole at each end", Length: holeLap}}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{})
	return []geometry.Piece{p}
}
