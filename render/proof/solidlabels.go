package proof

import (
	"cmp"
	"slices"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/leader"
	"forel/render/shape"
)

// solidLabels names what the plan wants named and the pieces that are seen, in a
// column on each side of the case. Window is the part that is shown larger, if any.
func (d *doc) solidLabels(sc sight, to func(geometry.Point) geometry.Point, window *geometry.Box, figure geometry.Box) {
	var labels []label
	add := func(anchor geometry.Point, name, note string) {
		l := label{Name: name, Size: render.BodySize, Anchor: anchor}
		if note != "" {
			l.Notes = []string{note}
		}
		labels = append(labels, l)
	}
	seen := largestSeen(sc, to)
	named := map[string]bool{} // pieces
	var others []pieceSeen
	say := func(s stage.Say) string { return s.In(d.Round.Pretty) }
	for _, n := range d.Proof.Notes {
		on := seen[geometry.Face(n.Spot)]
		if len(on) == 0 {
			continue
		}
		note := say(n.More)
		switch {
		case note != "":
		case on[0].piece != "":
			note = "under the " + on[0].piece
			named[on[0].piece] = true
		default:
			note = on[0].ground
		}
		add(shape.Inner(on[0].area), say(n.Name), note)
		others = append(others, on...)
	}
	// Every other piece where most is seen of it.
	slices.SortStableFunc(others, func(a, b pieceSeen) int { return cmp.Compare(b.area.Size(), a.area.Size()) })
	for _, p := range others {
		if p.piece != "" && p.piece != p.on && !named[p.piece] && p.area.Breadth() > leastBreadth {
			add(shape.Inner(p.area), p.piece, "laid onto the "+p.on)
			named[p.piece] = true
		}
	}
	for _, n := range d.Proof.Notes {
		if n.Spot == "" {
			add(to(sc.flat(n.At)), say(n.Name), say(n.More))
		}
	}
	drawn := moveBox(sc.bounds(), to)
	begin, end := drawn.Min.X, drawn.Max.X
	if window != nil {
		w := moveBox(*window, to)
		add(geometry.Pt(w.Min.X, w.Center().Y), d.Proof.Closeup.Note, "is drawn larger below")
		begin, end = min(begin, w.Min.X), max(end, w.Max.X) // broader than a thin case
	}

	left, right := leader.TwoSides(labels)
	const away = 9
	for _, side := range []struct {
		column
		labels []label
	}{
		{column{Edge: begin - away, Leftward: true, Top: figure.Min.Y, Bottom: figure.Max.Y, Gap: 3}, left},
		{column{Edge: end + away, Leftward: false, Top: figure.Min.Y, Bottom: figure.Max.Y, Gap: 3}, right},
	} {
		c, kept := side.Fit(side.labels)
		c.Draw(d, c.Arrange(kept))
	}
}

// pieceSeen is where most is seen of a piece on a face; of the face itself where
// piece is empty.
type pieceSeen struct {
	piece  string
	on     string // the board
	ground string // what it shows where no piece lies
	area   area
}

// largestSeen returns, for each face outside, the pieces seen on it, the one of
// which most is seen first.
func largestSeen(sc sight, to func(geometry.Point) geometry.Point) map[geometry.Face][]pieceSeen {
	out := map[geometry.Face][]pieceSeen{}
	for _, f := range sc.faces {
		if f.Inside || f.Edge {
			continue
		}
		var seen []pieceSeen
		take := func(piece string, g polygon.Shape) {
			for _, a := range g.Moved(to) {
				i := slices.IndexFunc(seen, func(p pieceSeen) bool { return p.piece == piece })
				if i < 0 {
					seen = append(seen, pieceSeen{piece, f.Board, f.Ground.Name, a})
				} else if a.Size() > seen[i].area.Size() {
					seen[i].area = a
				}
			}
		}
		take("", f.empty)
		for _, l := range f.layers {
			take(l.Piece, l.top)
		}
		slices.SortStableFunc(seen, func(a, b pieceSeen) int { return cmp.Compare(b.area.Size(), a.area.Size()) })
		out[f.Face] = seen
	}
	return out
}
