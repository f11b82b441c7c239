package geometry

// Offset is a line to rule on a rectangle, by its distance from the nearest edge that
// it runs along.
type Offset struct {
	Name string
	Edge string // its name, or which of the sides it is
	Off  Length
}

// Plain returns a rectangular piece with its back, or either face, up, without a spine edge.
func Plain(name string, of Material, count int, wide, high Length, grain Grain, rule SizeRule) Piece {
	box := Bx(0, 0, wide, high)
	p := Piece{
		Name: name, Material: of, Count: count, Outline: Rectangle(box), Grain: grain, FaceUp: "either face up", Spine: -1,
		Regions: []Region{{Name: name, Room: box}}, Rule: rule,
	}
	if of.Like() != Board {
		p.FaceUp = "back up (the face that is pasted)"
	}
	return p
}

// Plain tells whether a piece is marked out with rule and square as well as from a
// template: a rectangle of unpatterned stock without slits or folds, its rulings along
// its edges.
func (p Piece) Plain() bool {
	b := p.Outline.Bounds()
	if p.FaceOf != "" || !p.Pattern.Plain() || len(p.Slits)+len(p.Folds) > 0 || len(p.Outline.Vertices) != 4 {
		return false
	}
	for _, s := range p.Outline.Segments() {
		if s.Bulge != 0 || !s.From.X.Near(s.To.X) && !s.From.Y.Near(s.To.Y) {
			return false
		}
	}
	for _, g := range p.Guides {
		for _, s := range g.Path.Segments() {
			if s.Bulge != 0 || !s.From.X.Near(s.To.X) && !s.From.Y.Near(s.To.Y) {
				return false
			}
		}
	}
	return !b.Width().Near(0) && !b.Height().Near(0)
}

// Offsets returns the rulings of a plain piece that are not on its edges, in the
// order of its guides, each once.
func (p Piece) Offsets() (out []Offset) {
	w, h := p.Size()
	seen := map[Offset]bool{}
	for _, g := range p.Guides {
		for _, s := range g.Path.Segments() {
			o := Offset{Name: g.Name}
			if s.From.X.Near(s.To.X) {
				o.Off, o.Edge = s.From.X, p.side(Pt(0, 0), Pt(0, h), "an edge along the height")
				if far := w - s.From.X; far < o.Off {
					o.Off, o.Edge = far, p.side(Pt(w, 0), Pt(w, h), "the other edge along the height")
				}
			} else {
				o.Off, o.Edge = s.From.Y, p.side(Pt(0, 0), Pt(w, 0), "an edge along the width")
				if far := h - s.From.Y; far < o.Off {
					o.Off, o.Edge = far, p.side(Pt(0, h), Pt(w, h), "the other edge along the width")
				}
			}
			if !o.Off.Near(0) && !seen[o] {
				seen[o] = true
				out = append(out, o)
			}
		}
	}
	return out
}

// side names the edge between two corners, or calls it as it is told.
func (p Piece) side(a, b Point, otherwise string) string {
	for _, e := range p.Edges {
		if e.Name != "" && e.From.ToLine(a, b).Near(0) && e.To.ToLine(a, b).Near(0) {
			return e.Name
		}
	}
	return otherwise
}
