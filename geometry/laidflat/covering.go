package laidflat

import "forel/geometry"

// Covering is the piece that covers a row of boards, its corners mitred: the triangle left
// beyond a corner of the row is pinched over it. Head and tail are turned in first, the ends
// last, over them.
type Covering struct {
	Boards
	TurnIn      Length // at head and tail
	Left, Right Length // turned in at the ends
	Corner      Length // from the corner of a board to the mitre, along each edge
}

// at returns where a place of the row is on the piece, measured from the row's lower
// left corner.
func (c Covering) at(x, y Length) geometry.Point { return geometry.Pt(x+c.Left, y+c.TurnIn) }

// Piece returns the piece, its back up, head away. left and right name the ends in the names
// of their turn-ins: "front fore-edge".
func (c Covering) Piece(name string, of geometry.Material, rule geometry.SizeRule, left, right string) geometry.Piece {
	e, l, r, b, wide, high := c.TurnIn, c.Left, c.Right, c.Thick, c.Across, c.High
	p := geometry.Piece{
		Name: name, Material: of, Count: 1,
		Grain: geometry.GrainHeight, FaceUp: "back up (the face that is glued)", Spine: -1,
		Rule:  rule,
		Seats: []geometry.Seat{{Face: c.Outside, At: [2]geometry.Anchor{{At: c.at(0, 0), On: c.TailLeft}, {At: c.at(wide, 0), On: c.TailRight}}}},
	}
	c.cut(&p)
	for i, q := range c.All {
		box := geometry.Bx(l+c.From[i], e, l+c.From[i]+q.Wide, e+high)
		p.Guides = append(p.Guides, geometry.Guide{Name: q.Name, Path: geometry.Rectangle(box)})
		p.Regions = append(p.Regions, geometry.Region{Name: q.Name, Face: c.Outside, Room: box})
	}
	p.Regions = append(p.Regions, []geometry.Region{
		{Name: "head turn-in", Fold: "fold first", Face: c.Inside, Room: geometry.Bx(l+e, e+high+b, l+wide-e, 2*e+high)},
		{Name: "tail turn-in", Fold: "fold first", Face: c.Inside, Room: geometry.Bx(l+e, 0, l+wide-e, e-b)},
		{Name: left + " turn-in", Fold: "fold last", Face: c.Inside, Turn: 1, Room: geometry.Bx(0, e+l, l-b, e+high-l)},
		{Name: right + " turn-in", Fold: "fold last", Face: c.Inside, Turn: 1, Room: geometry.Bx(l+wide+b, e+r, l+r+wide, e+high-r)},
	}...)
	return p
}

// cut gives the piece its outline, its folds and the creases where the cloth at a corner
// gives.
func (c Covering) cut(p *geometry.Piece) {
	e, k, wide, high := c.TurnIn, c.Corner, c.Across, c.High
	p.Outline = geometry.Polygon(
		c.at(e-k, -e), c.at(wide-e+k, -e), c.at(wide+c.Right, c.Right-k), c.at(wide+c.Right, high-c.Right+k),
		c.at(wide-e+k, high+e), c.at(e-k, high+e), c.at(-c.Left, high-c.Left+k), c.at(-c.Left, c.Left-k),
	)
	for _, y := range []Length{0, -c.Thick, high, high + c.Thick} {
		p.Folds = append(p.Folds, geometry.Line(c.at(0, y), c.at(wide, y)))
	}
	for _, x := range []Length{0, -c.Thick, wide, wide + c.Thick} {
		p.Folds = append(p.Folds, geometry.Line(c.at(x, 0), c.at(x, high)))
	}
	for _, x := range []Length{0, wide} {
		for _, y := range []Length{0, high} {
			dx, dy := -k, -k
			if x > 0 {
				dx = k
			}
			if y > 0 {
				dy = k
			}
			p.Creases = append(p.Creases,
				geometry.Crease{Path: geometry.Line(c.at(x, y), c.at(x+dx, y)), Kind: geometry.Give},
				geometry.Crease{Path: geometry.Line(c.at(x, y), c.at(x, y+dy)), Kind: geometry.Give})
		}
	}
}
