package proof

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/leader"
	"forel/render/shape"
)

// solidLabels names the sides of the case and what lies on them, in a column
// on each side of it. Window is the part that is shown larger.
func (b *book) solidLabels(sc solid, to func(geometry.Point) geometry.Point, window, figure geometry.Box) {
	c := b.Report.Carcass
	v := func(x, y, z Length) geometry.Point { return to(sc.flat(foldup.Vec{X: x, Y: y, Z: z})) }
	var labels []label
	add := func(anchor geometry.Point, name, note string) {
		labels = append(labels, label{Name: name, Notes: []string{note}, Size: render.BodySize, Anchor: anchor})
	}
	seen := largestSeen(sc, to)
	named := map[string]bool{} // pieces
	for _, f := range []struct {
		face geometry.Face
		name string
	}{{geometry.HeadOutside, "head"}, {geometry.RightOutside, "right side"}} {
		if len(seen[f.face]) == 0 {
			continue
		}
		p := seen[f.face][0]
		note := "bare board"
		if p.piece != "" {
			note = "under the " + p.piece
		}
		add(shape.Inner(p.area), f.name, note)
		named[p.piece] = true
	}
	// Every other piece where most is seen of it.
	var others []pieceSeen
	for _, face := range []geometry.Face{geometry.RightOutside, geometry.HeadOutside} {
		for _, p := range seen[face] {
			if p.piece != "" && !named[p.piece] && p.area.Breadth() > leastBreadth {
				others = append(others, p)
			}
		}
	}
	slices.SortStableFunc(others, func(a, b pieceSeen) int { return cmp.Compare(b.area.Size(), a.area.Size()) })
	for _, p := range others {
		if !named[p.piece] {
			add(shape.Inner(p.area), p.piece, "laid onto the "+p.on)
			named[p.piece] = true
		}
	}
	add(v(c.Width, c.Height*0.45, 0), "spine", "behind, round this edge")
	add(v(c.Lined/2, c.Height*0.85, c.Depth), "left side", "its edge at the mouth")
	add(v(c.Width*0.6, c.Lined/2, c.Depth), "tail", "its edge at the mouth")
	mouth := c.Width / 2
	lower := min(0.1, 0.5/Length(max(1, len(b.Report.Dividers)-1))) // each than the one before it
	for i, d := range b.Report.Dividers {
		at := foldup.Vec{X: (d.Min.X + d.Max.X) / 2, Y: c.Height * (0.6 - lower*Length(i)), Z: d.Max.Z}
		add(to(sc.flat(at)), "divider", fmt.Sprintf("between volumes %d and %d", i+1, i+2))
		if i == 0 { // the compartment before it
			mouth = (c.Lined + d.Min.X) / 2
		}
	}
	add(v(mouth, c.Height*0.74, c.Depth), "mouth", "the open side")
	if len(c.Side) > 4 {
		add(v(c.Width, c.Height/2, c.Depth-holeDepth(c)*0.4), "thumb hole", "in both sides")
	}
	w := moveBox(window, to)
	add(geometry.Pt(w.Min.X, w.Center().Y), "this corner", "is drawn larger below")

	left, right := leader.TwoSides(labels)
	drawn := moveBox(sc.bounds(), to)
	const away = 9
	for _, side := range []struct {
		column
		labels []label
	}{
		{column{Edge: min(drawn.Min.X, w.Min.X) - away, Leftward: true, Top: figure.Min.Y, Bottom: figure.Max.Y, Gap: 3}, left},
		{column{Edge: drawn.Max.X + away, Leftward: false, Top: figure.Min.Y, Bottom: figure.Max.Y, Gap: 3}, right},
	} {
		c, kept := side.Fit(side.labels)
		c.Draw(b, c.Arrange(kept))
	}
}

// pieceSeen is where most is seen of a piece on a face; no piece is bare board.
type pieceSeen struct {
	piece string
	on    string // the board
	area  area
}

// largestSeen gives, for each face outside, the pieces seen on it, the one of
// which most is seen first.
func largestSeen(sc solid, to func(geometry.Point) geometry.Point) map[geometry.Face][]pieceSeen {
	out := map[geometry.Face][]pieceSeen{}
	for _, f := range sc.faces {
		if f.Inside || mouthEdge(f.place.face) {
			continue
		}
		var seen []pieceSeen
		take := func(piece string, g polygon.Shape) {
			for _, a := range g.Moved(to) {
				i := slices.IndexFunc(seen, func(p pieceSeen) bool { return p.piece == piece })
				if i < 0 {
					seen = append(seen, pieceSeen{piece, strings.TrimPrefix(board(f.place.face), "the "), a})
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
		out[f.place.face] = seen
	}
	return out
}

// holeDepth gives how far a thumb hole reaches in from the mouth.
func holeDepth(c foldup.Carcass) Length {
	var deep Length
	for _, p := range c.Side {
		if !p.Y.Near(0) && !p.Y.Near(c.Height) {
			deep = max(deep, c.Depth-p.X)
		}
	}
	return deep
}
