package geometry

// Mitred is a covering of boards that lie in a row, its corners mitred: the triangle
// left beyond a corner of the row is pinched over it. Head and tail are turned in first,
// the ends last, over them.
type Mitred struct {
	Wide, High  Length // of the row of boards, joints and all
	Board       Length // its thickness
	TurnIn      Length // at head and tail
	Left, Right Length // turned in at the ends
	Corner      Length // from the corner of a board to the mitre, along each edge
}

// At returns where a place of the row is on the piece, measured from the row's lower
// left corner.
func (m Mitred) At(x, y Length) Point { return Pt(x+m.Left, y+m.TurnIn) }

// Cut gives a piece its outline, its folds and the creases where the cloth at a corner
// gives.
func (m Mitred) Cut(p *Piece) {
	e, c, wide, high := m.TurnIn, m.Corner, m.Wide, m.High
	p.Outline = Polygon(
		m.At(e-c, -e), m.At(wide-e+c, -e), m.At(wide+m.Right, m.Right-c), m.At(wide+m.Right, high-m.Right+c),
		m.At(wide-e+c, high+e), m.At(e-c, high+e), m.At(-m.Left, high-m.Left+c), m.At(-m.Left, m.Left-c),
	)
	for _, y := range []Length{0, -m.Board, high, high + m.Board} {
		p.Folds = append(p.Folds, Line(m.At(0, y), m.At(wide, y)))
	}
	for _, x := range []Length{0, -m.Board, wide, wide + m.Board} {
		p.Folds = append(p.Folds, Line(m.At(x, 0), m.At(x, high)))
	}
	for _, x := range []Length{0, wide} {
		for _, y := range []Length{0, high} {
			dx, dy := -c, -c
			if x > 0 {
				dx = c
			}
			if y > 0 {
				dy = c
			}
			p.Creases = append(p.Creases,
				Crease{Path: Line(m.At(x, y), m.At(x+dx, y)), Kind: Give},
				Crease{Path: Line(m.At(x, y), m.At(x, y+dy)), Kind: Give})
		}
	}
}
