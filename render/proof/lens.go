package proof

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
)

// corner returns the part of the view that is to be drawn larger. It is as broad by
// its height as aspect says, and no higher than most.
func (sc sight) corner(c plan.Closeup, aspect float64, most Length) geometry.Box {
	border := min(1.5, most/25) // mm of the case, a small one drawn larger than it is
	foot, end := sc.flat(c.At), sc.flat(c.Along)
	up := sc.flat(c.Up).Y - foot.Y + 2*border
	b := geometry.Bx(foot.X-border, 0, 0, 0)
	// The edge that goes to the right falls: as low as is in sight.
	var fall Length
	for range 4 {
		tall := min(most, up+fall)
		b.Max.X = b.Min.X + tall*Length(aspect)
		along := min(1, (b.Max.X-foot.X)/(end.X-foot.X))
		fall = along * (foot.Y - end.Y)
		b.Min.Y = foot.Y - fall - border
		b.Max.Y = b.Min.Y + tall
	}
	return b
}

// lens draws a part of the view larger, with what is turned in named.
func (d *doc) lens(sc sight, c plan.Closeup, window, at geometry.Box, scale float64) {
	part := sc.cropped(d.Proof, d.faces, window)
	to, larger := scene.Fitted(window, at)
	at = moveBox(window, to)
	over := at // the labels stand lower
	over.Max.X += labelsWide
	over.Min.Y -= 9.5
	d.Paragraph(c.Title, render.BodySize, true).Draw(over)
	over.Min.Y += 3.8
	d.Paragraph(fmt.Sprintf("%s, %.1f times as large", c.Where, larger/scale), noteSize, false).Draw(over)
	d.Fill(geometry.Rectangle(at), white)
	part.draw(d, d.looks, to)
	d.frame(at)

	var labels []label
	var sizes []float64
	for _, f := range part.faces {
		if !f.Inside && !f.Edge {
			continue
		}
		add := func(areas []area, name string, notes ...string) {
			var best area
			var most float64
			for _, a := range areas {
				if n := a.Size(); n > most {
					best, most = a, n
				}
			}
			if most > 1 { // mm² of the page: less is not seen
				l := label{Name: name, Size: noteSize, Anchor: shape.Inner(best)}
				for _, n := range notes {
					l.Notes = append(l.Notes, wrapped(n, noteSize, false, labelsWide-4)...)
				}
				labels, sizes = append(labels, l), append(sizes, most)
			}
		}
		if !f.Inside {
			add(f.whole.Moved(to), "edge of the board", "the "+f.Board)
			continue
		}
		add(f.empty.Moved(to), f.Ground.Name, "of the "+f.Board)
		for _, l := range f.layers {
			what := f.Board
			deep, ok := f.reach(l.Layer)
			switch {
			case ok && l.Tucked:
				what = "tucked, " + d.Round.Pretty(deep) + ", " + what
			case ok:
				what = d.Round.Pretty(deep) + " deep, " + what
			}
			add(l.top.Moved(to), l.Piece, what)
		}
	}
	// Where there is little room the smallest go first.
	order := make([]int, len(labels))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, c int) int { return cmp.Compare(sizes[c], sizes[a]) })
	byWeight := make([]label, len(labels))
	for i, k := range order {
		byWeight[i] = labels[k]
	}
	col, kept := column{Edge: at.Max.X + 3, Leftward: false, Top: at.Min.Y - 1.5, Bottom: at.Max.Y, Gap: 1}.Fit(byWeight)
	col.Draw(d, col.Arrange(kept))
}
