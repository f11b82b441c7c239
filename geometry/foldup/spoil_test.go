package foldup_test

import (
	"slices"

	"forel/geometry"
	"forel/geometry/slipcase"
)

// What a mutation does to the flat pieces of a sound case.
type spoil func(pieces []geometry.Piece) []geometry.Piece

// piece changes one piece.
func piece(name string, changes ...func(*geometry.Piece)) spoil {
	return func(pieces []geometry.Piece) []geometry.Piece {
		for i := range pieces {
			if pieces[i].Name == name {
				for _, change := range changes {
					change(&pieces[i])
				}
				return pieces
			}
		}
		panic("no " + name)
	}
}

// lost leaves a piece out.
func lost(name string) spoil {
	return func(pieces []geometry.Piece) []geometry.Piece {
		return slices.DeleteFunc(pieces, func(p geometry.Piece) bool { return p.Name == name })
	}
}

// moved moves every point of a piece's drawing; its seat stays.
func moved(to func(geometry.Point) geometry.Point) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		path := func(in geometry.Path) geometry.Path {
			out := geometry.Path{Vertices: slices.Clone(in.Vertices), Closed: in.Closed}
			for i := range out.Vertices {
				out.Vertices[i].Point = to(out.Vertices[i].Point)
			}
			return out
		}
		p.Outline = path(p.Outline)
		p.Slits, p.Folds, p.Creases = slices.Clone(p.Slits), slices.Clone(p.Folds), slices.Clone(p.Creases)
		for i := range p.Slits {
			p.Slits[i] = path(p.Slits[i])
		}
		for i := range p.Folds {
			p.Folds[i] = path(p.Folds[i])
		}
		for i := range p.Creases {
			p.Creases[i].Path = path(p.Creases[i].Path)
		}
	}
}

// cropped cuts away all that is past a box, d from each edge of the piece:
// left, bottom, right, top. Where d is negative the piece grows.
func cropped(left, bottom, right, top slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, h := p.Size()
		cut := func(l, size, low, high slipcase.Length) slipcase.Length {
			switch {
			case l.Near(0):
				return low
			case l.Near(size):
				return size - high
			}
			return max(low, min(l, size-high))
		}
		moved(func(q geometry.Point) geometry.Point {
			return geometry.Pt(cut(q.X, w, left, right), cut(q.Y, h, bottom, top))
		})(p)
	}
}

// corner moves the points near one place.
func corner(x, y, dx, dy slipcase.Length) func(*geometry.Piece) {
	return moved(func(q geometry.Point) geometry.Point {
		if q.Near(geometry.Pt(x, y)) {
			return q.Add(geometry.Pt(dx, dy))
		}
		return q
	})
}

// middleTab parts the middle tab from the side tabs by upright slits, so far from the
// ends of the cloth.
func middleTab(x slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, _ := p.Size()
		upright := func(q geometry.Point) geometry.Point {
			switch {
			case q.X > margin-wall+0.1 && q.X < w/2:
				q.X = x
			case q.X > w/2 && q.X < w-margin+wall-0.1:
				q.X = w - x
			}
			return q
		}
		moved(upright)(p)
		for _, s := range p.Slits {
			for i := range s.Vertices {
				s.Vertices[i].Point = upright(s.Vertices[i].Point)
			}
		}
	}
}

// slits moves the starts of a piece's slits, dx toward its middle.
func slits(dx, dy slipcase.Length) func(*geometry.Piece) {
	return func(p *geometry.Piece) {
		w, _ := p.Size()
		for _, s := range p.Slits {
			v := &s.Vertices[0]
			if v.X < w/2 {
				v.X += dx
			} else {
				v.X -= dx
			}
			v.Y += dy
		}
	}
}

// higher makes a board, or a lining ruled for one, larger at its top and right
// edges.
func higher(dx, dy slipcase.Length) func(*geometry.Piece) { return cropped(0, 0, -dx, -dy) }

// folded proves the pieces of a case of a job, spoiled, the cloth and paper as
// thick as given.
func folded(c slipcase.Case, s spoil, cloth, paper slipcase.Length) slipcase.Report {
	var pieces []geometry.Piece
	for _, p := range c.Pieces {
		p.Outline.Vertices = slices.Clone(p.Outline.Vertices)
		p.Slits = slices.Clone(p.Slits)
		for i, q := range p.Slits {
			p.Slits[i].Vertices = slices.Clone(q.Vertices)
		}
		p.Seats, p.Guides, p.Folds = slices.Clone(p.Seats), slices.Clone(p.Guides), slices.Clone(p.Folds)
		pieces = append(pieces, p)
	}
	j := c.Job
	j.Cloth.Thickness, j.SidePaper.Thickness = cloth, paper
	return slipcase.Prove(s(pieces), j)
}
