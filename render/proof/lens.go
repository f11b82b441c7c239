package proof

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
)

// corner gives the part of the view round the corner of the mouth at the left
// and the tail: the edges of the boards, and what is turned in there. It is as
// broad by its height as aspect says, and no higher than most.
func (sc solid) corner(c foldup.Carcass, faces []face, aspect float64, most Length) geometry.Box {
	var deep Length
	for _, f := range faces {
		for _, l := range f.layers {
			if d, ok := f.reach(l); ok && f.divider == 0 {
				deep = max(deep, d)
			}
		}
	}
	deep = max(deep, 3*c.Lined)
	at := func(x, y, z Length) geometry.Point { return sc.flat(foldup.Vec{X: x, Y: y, Z: z}) }
	across := sc.flat(foldup.Vec{X: 1}).X // of a millimetre of the mouth
	border := min(1.5, most/25)           // mm of the case, a small one drawn larger than it is
	foot := at(0, 0, c.Depth)
	up := at(0, 1.7*deep, c.Depth-deep).Y - foot.Y + 2*border
	b := geometry.Bx(foot.X-border, 0, 0, 0)
	// The lower edge of the mouth falls toward the right: as low as is in sight.
	var fall Length
	for range 4 {
		tall := min(most, up+fall)
		b.Max.X = b.Min.X + tall*Length(aspect)
		along := min(c.Width, (b.Max.X-foot.X)/across)
		fall = foot.Y - at(along, 0, c.Depth).Y
		b.Min.Y = foot.Y - fall - border
		b.Max.Y = b.Min.Y + tall
	}
	return b
}

// lens draws a part of the view larger, with what is turned in named.
func (b *book) lens(sc solid, window, at geometry.Box, scale float64) {
	part := sc.cropped(window)
	to, larger := scene.Fitted(window, at)
	at = moveBox(window, to)
	over := at // the labels stand lower
	over.Max.X += labelsWide
	b.paragraph(over, at.Min.Y-9.5, "Corner of the mouth", render.BodySize, true)
	b.paragraph(over, at.Min.Y-5.7, fmt.Sprintf("left and tail, %.1f times as large", larger/scale), noteSize, false)
	b.Fill(geometry.Rectangle(at), white)
	part.draw(b, b.looks, b.base, to)
	b.frame(at)

	var labels []label
	var sizes []float64
	for _, f := range part.faces {
		if !f.Inside && !mouthEdge(f.place.face) {
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
			if f.place.face == geometry.LeftMouth || f.place.face == geometry.TailMouth {
				add(f.whole.Moved(to), "edge of the board", board(f.place.face))
			}
			continue
		}
		add(f.empty.Moved(to), f.under(b.looks, b.base).name, "of "+board(f.place.face))
		for _, l := range f.layers {
			what := strings.TrimPrefix(board(f.place.face), "the ")
			d, ok := f.reach(l.Layer)
			switch {
			case ok && l.Tucked:
				what = "tucked, " + b.Round.Pretty(d) + ", " + what
			case ok:
				what = b.Round.Pretty(d) + " deep, " + what
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
	col.Draw(b, col.Arrange(kept))
}
