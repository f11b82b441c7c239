package geometry

import "slices"

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
	lines := p.Outline.Segments()
	for _, g := range p.Guides {
		lines = append(lines, g.Path.Segments()...)
	}
	for _, s := range lines {
		if s.Bulge != 0 || !s.From.X.Near(s.To.X) && !s.From.Y.Near(s.To.Y) {
			return false
		}
	}
	return !b.Width().Near(0) && !b.Height().Near(0)
}

// Offsets returns the rulings of a plain piece that are not on its edges, in the
// order of its guides, each once.
func (p Piece) Offsets() (out []Offset) {
	w, h := p.Size()
	for _, g := range p.Guides {
		for _, s := range g.Path.Segments() {
			at, size, way, near, far := s.From.Y, h, "width", Pt(w, 0), Pt(0, h)
			if s.From.X.Near(s.To.X) {
				at, size, way, near, far = s.From.X, w, "height", Pt(0, h), Pt(w, 0)
			}
			o := Offset{g.Name, p.side(Pt(0, 0), near, "an edge along the "+way), at}
			if rest := size - at; rest < at {
				o = Offset{g.Name, p.side(far, Pt(w, h), "the other edge along the "+way), rest}
			}
			if !o.Off.Near(0) && !slices.Contains(out, o) {
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
