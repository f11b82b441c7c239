package geometry

// QuarterTurn returns the piece turned a quarter counterclockwise, from the
// origin again: what was its width is its height. It is the same piece; only
// how it lies before the viewer has changed.
func (p Piece) QuarterTurn() Piece {
	_, h := p.Size()
	point := func(q Point) Point { return Pt(h-q.Y, q.X) }
	p = p.Moved(point, func(q Path) Path { return q.QuarterTurn(h) })
	p.Extra = Pt(p.Extra.Y, p.Extra.X)
	p.Pattern = p.Pattern.quarterTurn(h)
	if p.Grain == GrainHeight {
		p.Grain = GrainWidth
	} else {
		p.Grain = GrainHeight
	}
	return p
}

// Moved returns the piece with all that is drawn on it elsewhere: point tells where a place
// comes to lie, path where a line does. Grain, pattern and extra stay.
func (p Piece) Moved(point func(Point) Point, path func(Path) Path) Piece {
	p.Outline = path(p.Outline)
	p.Slits = Each(p.Slits, path)
	p.Folds = Each(p.Folds, path)
	p.Creases = Each(p.Creases, func(c Crease) Crease { return Crease{path(c.Path), c.Kind} })
	p.Guides = Each(p.Guides, func(g Guide) Guide { return Guide{g.Name, path(g.Path), g.Named} })
	p.Seats = Each(p.Seats, func(s Seat) Seat {
		for i := range s.At {
			s.At[i].At = point(s.At[i].At)
		}
		return s
	})
	p.Regions = Each(p.Regions, func(r Region) Region {
		r.Room = Around(point(r.Room.Min), point(r.Room.Max))
		return r
	})
	p.Edges = Each(p.Edges, func(e Edge) Edge {
		e.From, e.To = point(e.From), point(e.To)
		return e
	})
	return p
}

// Each returns what f makes of every one of a list, which stays as it is.
func Each[T, U any](list []T, f func(T) U) []U {
	if list == nil {
		return nil
	}
	out := make([]U, len(list))
	for i, v := range list {
		out[i] = f(v)
	}
	return out
}

// quarterTurn returns the pattern on a piece of height h that is turned. One with a
// top has none then: its top no longer points along the piece's Y.
func (r Repeat) quarterTurn(h Length) Repeat {
	return Repeat{
		Across: r.Along, Along: r.Across, First: Pt(h-r.First.Y, r.First.X), AtX: r.AtY, AtY: r.AtX,
	}
}
