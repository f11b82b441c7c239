package fit

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// How a paper strip is printed.
const (
	stripHigh  Length = 16
	stripRow   Length = 27 // from one strip to the next
	tabLong    Length = 12 // that is glued under the next part, or closes a sleeve
	offFold    Length = 6  // that a join keeps from a fold
	shortPanel Length = 60
)

// stretch is a part of a strip that fits a page, from and to along it.
type stretch struct{ from, to Length }

// folds returns where the panels of a strip end.
func folds(g plan.Gauge) (ends []Length) {
	at := Length(0)
	for _, p := range g.Panels {
		at += p.Length
		ends = append(ends, at)
	}
	return ends
}

// parts cuts a strip into parts no longer than room, away from its folds.
func parts(g plan.Gauge, room Length) []stretch {
	folds, total := folds(g), g.Length()
	for n := 1; ; n++ {
		each := total / Length(n)
		var out []stretch
		from := Length(0)
		for i := range n {
			to := each * Length(i+1)
			for _, f := range folds {
				if i < n-1 && (to-f).Abs() < offFold {
					to = f - offFold
				}
			}
			// Nor does it part a short panel, whose size could then not be read.
			start := Length(0)
			for _, f := range folds {
				if i < n-1 && to > start && to < f && f-start < shortPanel && start-offFold > from {
					to = start - offFold
				}
				start = f
			}
			if i == n-1 {
				to = total
			}
			out = append(out, stretch{from, to})
			from = to
		}
		if !slices.ContainsFunc(out, func(p stretch) bool { return p.to-p.from > room }) {
			return out
		}
	}
}

// strips draws the paper strips on lying pages, with rulers to check the print.
func (d *doc) strips() {
	const head = "Paper strips to try round the book"
	page := func(int) geometry.Box {
		box := d.NewPage(true, head)
		box.Max.Y -= document.RulersTall
		document.Rulers(d, geometry.Pt(box.Min.X, box.Max.Y))
		box.Max.Y -= 2
		box.Min.Y = d.paragraph(box, box.Min.Y, head, render.HeadSize, true)
		box.Min.Y = d.paragraph(box, box.Min.Y, "True size: print at 100 %, measure both rulers below. Cut along the outer lines, fold at the broken ones. Glue a tab under the part it names, whose edge lies on the line beside the tab. Do this before anything else is cut.", render.NoteSize, false) + 2
		return box
	}
	var blocks []document.Block
	for i, g := range d.report.Gauges {
		all := parts(g, d.Room(true).Width()-tabLong-1)
		name := fmt.Sprintf("Strip %c: %s", 'A'+i, g.Name)
		for k, p := range all {
			draw := func(box geometry.Box) Length {
				d.strip(geometry.Pt(box.Min.X+0.5, box.Min.Y+5), g, p, k, len(all), 'A'+rune(i))
				return box.Min.Y + stripRow
			}
			part := document.Block{Draw: draw, Head: func(box geometry.Box) Length {
				return d.paragraph(box, box.Min.Y, name+", continued", render.BodySize, true)
			}}
			if k == 0 {
				part = document.Block{Above: 1, Draw: func(box geometry.Box) Length {
					box.Min.Y = d.paragraph(box, box.Min.Y, name, render.BodySize, true)
					box.Min.Y = d.paragraph(box, box.Min.Y, g.Try, render.NoteSize, false)
					return draw(box)
				}}
			}
			blocks = append(blocks, part)
		}
	}
	// On no more pages than it takes, all have about as many parts.
	least := len(d.Try(page, blocks...))
	for each := (len(blocks) + least - 1) / least; ; each++ {
		for i := range blocks {
			blocks[i].Fresh = i > 0 && i%each == 0
		}
		if len(d.Try(page, blocks...)) <= least {
			break
		}
	}
	d.Flow(page, blocks...)
}

// strip draws one part of a strip, its upper left corner at a place.
func (d *doc) strip(at geometry.Point, g plan.Gauge, p stretch, k, n int, letter rune) {
	long := p.to - p.from
	body := geometry.Bx(at.X, at.Y, at.X+long, at.Y+stripHigh)
	last := k == n-1
	d.Begin(render.Cutting)
	if last && !g.Closed {
		d.box(body, edge)
	} else {
		d.Stroke(geometry.Polygon(body.Min, geometry.Pt(body.Max.X, body.Min.Y), geometry.Pt(body.Max.X+tabLong, body.Min.Y+2),
			geometry.Pt(body.Max.X+tabLong, body.Max.Y-2), body.Max, geometry.Pt(body.Min.X, body.Max.Y)), edge)
	}
	d.End()
	d.Begin(render.Creasing)
	folds := folds(g)
	folded := func(i int) bool { // not at the ends of the strip; the end of a sleeve is one
		return i < len(folds)-1 && folds[i] > p.from+1e-6 && folds[i] < p.to-1e-6
	}
	for i, f := range folds {
		if x := body.Min.X + f - p.from; folded(i) {
			d.line(x, body.Min.Y, x, body.Max.Y, foldLine)
		}
	}
	d.End()
	d.Begin(render.Legend)
	defer d.End()
	// The mark that the next part's left edge is laid on.
	if !last || g.Closed {
		d.line(body.Max.X, body.Min.Y, body.Max.X, body.Max.Y, edge)
		next := fmt.Sprintf("part %d", k+2)
		if last {
			next = "part 1"
		}
		for i, s := range []string{"glue", "under", next} {
			d.words(body.Max.X+tabLong/2, body.Center().Y-2.2+Length(i)*3.2, s, render.SmallSize, render.Middle, false)
		}
	}
	named := body.Min.X - stripHigh // where the last word ends that tells of a fold
	if k == 0 && g.Closed {
		const join = "fold at the join"
		d.words(body.Min.X, body.Min.Y-1, join, render.SmallSize, render.Start, false)
		named = body.Min.X + typeset.Width(join, render.SmallSize, false)
	}
	part := fmt.Sprintf("%c, part %d of %d", letter, k+1, n)
	if n == 1 {
		part = string(letter)
	}
	from, widest, middle := Length(0), Length(0), Length(0) // the widest stretch between folds takes the part's name
	for i, panel := range g.Panels {
		to := folds[i]
		lo, hi := max(from, p.from), min(to, p.to)
		if hi-lo > 1e-6 {
			name := panel.Name + " " + d.Round.Pretty(panel.Length)
			x := body.Min.X + (lo+hi)/2 - p.from
			if hi-lo > widest {
				widest, middle = hi-lo, x
			}
			for _, s := range []string{name, d.Round.Pretty(panel.Length)} {
				if typeset.Width(s, render.NoteSize, false)+4 < hi-lo {
					d.words(x, body.Min.Y+6.5, s, render.NoteSize, render.Middle, false)
					break
				}
			}
		}
		// Of folds close together the first is named.
		x, half := body.Min.X+to-p.from, typeset.Width("fold", render.SmallSize, false)/2
		if folded(i) && x-half > named+1 {
			d.words(x, body.Min.Y-1, "fold", render.SmallSize, render.Middle, false)
			named = x + half
		}
		from = to
	}
	d.words(middle, body.Max.Y-3, part, render.NoteSize, render.Middle, true)
}
