package chemise

import (
	"fmt"
	"forel/geometry/laidflat"
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
		out = append(out, geometry.Plain(p.Name, geometry.ThinBoard, 1, p.Wide, j.room().Height, geometry.GrainHeight, geometry.SizeRule{Width: symbols[p.Name], Height: "H + cH"}))
	}
	return out
}

// covering returns the covering, its back up, head away.
func (j Job) covering() geometry.Piece {
	ps := j.panels()
	e, left, right, c := j.turnIn(), j.endTurnIn(ps[0].Wide), j.endTurnIn(ps[len(ps)-1].Wide), j.corner()
	p := laidflat.Covering{Boards: j.laid(), TurnIn: e, Left: left, Right: right, Corner: c}.Piece(coveringName, geometry.ChemiseCloth, geometry.SizeRule{Width: "A + eL + eR", Height: "H + cH + 2e"}, "left", "right")
	for i := range ps { // that they lie on its back is seen
		p.Regions[i].Face = ""
	}
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
	wide := j.laid().Across - 2*g + 2*j.Board*Length(len(ps)-1)
	high := j.room().Height - 2*g
	p := geometry.Plain(liningName, geometry.ChemiseLining, 1, wide, high, geometry.GrainHeight,
		geometry.SizeRule{Width: fmt.Sprintf("A − 2g + %db", 2*(len(ps)-1)), Height: "H + cH − 2g"})
	p.Margins = []geometry.Margin{{Name: "back from every edge", Length: g}, {Name: "into each joint and out again", Length: 2 * j.Board}}
	p.Regions[0].Name = "lining"
	return p
}
