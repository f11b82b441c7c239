package chemise

import (
	"fmt"
	"math"

	"forel/geometry"
)

// The names of the sheets.
const (
	coveringName = "chemise covering"
	liningName   = "chemise lining"
)

// corner returns how far beyond a board's corner the ends of its mitre lie: one
// board, square to the cut (Bibliocat 2007), and no less than 2.1 mm.
func (j Job) corner() Length { return max(j.Board*Length(math.Sqrt2), 2.1) }

// pieces returns every piece as it is cut.
func (j Job) pieces() []geometry.Piece {
	return append(j.boards(), j.covering(), j.lining())
}

// boards returns the boards from left to right.
func (j Job) boards() []geometry.Piece {
	var out []geometry.Piece
	for _, p := range j.panels() {
		box := geometry.Bx(0, 0, p.wide, j.room().Height)
		out = append(out, geometry.Piece{
			Name: p.name, Material: geometry.ThinBoard, Count: 1,
			Outline: geometry.Rectangle(box), Grain: geometry.GrainHeight, FaceUp: "either face up", Spine: -1,
			Regions: []geometry.Region{{Name: p.name, Room: box}},
			Rule:    geometry.SizeRule{Width: symbols[p.name], Height: "H + cH"},
		})
	}
	return out
}

// covering returns the covering, its back up, head away.
func (j Job) covering() geometry.Piece {
	ps, high, wide, b := j.panels(), j.room().Height, j.across(), j.Board
	e, left, right, c := j.turnIn(), j.endTurnIn(ps[0].wide), j.endTurnIn(ps[len(ps)-1].wide), j.corner()
	m := geometry.Mitred{Wide: wide, High: high, Board: b, TurnIn: e, Left: left, Right: right, Corner: c}
	p := geometry.Piece{
		Name: coveringName, Material: geometry.ChemiseCloth, Count: 1,
		Grain: geometry.GrainHeight, FaceUp: "back up (the face that is glued)", Spine: -1,
		Rule:  geometry.SizeRule{Width: "A + eL + eR", Height: "H + cH + 2e"},
		Seats: []geometry.Seat{{Face: Outside, At: [2]geometry.Anchor{{At: m.At(0, 0), On: tailLeft}, {At: m.At(wide, 0), On: tailRight}}}},
	}
	m.Cut(&p)
	x := Length(0)
	for _, q := range ps {
		box := geometry.Bx(left+x, e, left+x+q.wide, e+high)
		p.Guides = append(p.Guides, geometry.Guide{Name: q.name, Path: geometry.Rectangle(box)})
		p.Regions = append(p.Regions, geometry.Region{Name: q.name, Room: box})
		x += q.wide + j.joint()
	}
	p.Regions = append(p.Regions, []geometry.Region{
		{Name: "head turn-in", Fold: "fold first", Face: Inside, Room: geometry.Bx(left+e, e+high+b, left+wide-e, 2*e+high)},
		{Name: "tail turn-in", Fold: "fold first", Face: Inside, Room: geometry.Bx(left+e, 0, left+wide-e, e-b)},
		{Name: "left turn-in", Fold: "fold last", Face: Inside, Turn: 1, Room: geometry.Bx(0, e+left, left-b, e+high-left)},
		{Name: "right turn-in", Fold: "fold last", Face: Inside, Turn: 1, Room: geometry.Bx(left+wide+b, e+right, left+wide+right, e+high-right)},
	}...)
	p.Margins = []geometry.Margin{
		{Name: "turned in at head and tail", Length: e},
		{Name: "turned in at the left end", Length: left},
		{Name: "turned in at the right end", Length: right},
		{Name: "from the corner of a board to the mitre, along each edge", Length: c},
		{Name: "joint between two boards", Length: j.joint()},
	}
	return p
}

// lining returns the lining, its back up. Each joint takes it down and up again;
// it stays back from every edge, and four of its edges lie on the turn-ins.
func (j Job) lining() geometry.Piece {
	ps, g := j.panels(), j.Margin
	wide := j.across() - 2*g + 2*j.Board*Length(len(ps)-1)
	high := j.room().Height - 2*g
	p := geometry.Piece{
		Name: liningName, Material: geometry.ChemiseLining, Count: 1,
		Outline: geometry.Rectangle(geometry.Bx(0, 0, wide, high)),
		Grain:   geometry.GrainHeight, FaceUp: "back up (the face that is pasted)", Spine: -1,
		Rule:    geometry.SizeRule{Width: fmt.Sprintf("A − 2g + %db", 2*(len(ps)-1)), Height: "H + cH − 2g"},
		Margins: []geometry.Margin{{Name: "back from every edge", Length: g}, {Name: "into each joint and out again", Length: 2 * j.Board}},
	}
	p.Regions = []geometry.Region{{Name: "lining", Room: p.Outline.Bounds()}}
	return p
}
