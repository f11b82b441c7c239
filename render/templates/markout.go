package templates

import (
	"fmt"
	"math"
	"strings"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// Shaped returns the pieces that only a template gives: not plain rectangles, which are
// marked out with rule and square.
func Shaped(pieces []geometry.Piece) (out []geometry.Piece) {
	for _, p := range pieces {
		if !p.Plain() {
			out = append(out, p)
		}
	}
	return out
}

// tiling returns the template of a piece; one that is marked out has none.
func (d *doc) tiling(p geometry.Piece) (paper.Tiling, bool) {
	for _, t := range d.layout.Tilings {
		if t.Piece.Name == p.Name {
			return t, true
		}
	}
	return paper.Tiling{}, false
}

// marked returns the pieces that are marked out.
func (d *doc) marked() (out []geometry.Piece) {
	for _, p := range d.plan.Drawn() {
		if _, ok := d.tiling(p); !ok {
			out = append(out, p)
		}
	}
	return out
}

// alike is how far the two diagonals of a rectangle may differ (common practice, no
// source).
const alike geometry.Length = 0.5

// markOut draws the sheet for who marks plain rectangles out with rule and square:
// their sizes and diagonals, the lines ruled on them, and the order of marking.
func (d *doc) markOut() []document.Block {
	pieces := d.marked()
	if len(pieces) == 0 {
		return nil
	}
	sizes := document.Table{Size: render.BodySize, Full: true, Columns: []document.Column{{Head: "piece"}, {Head: "cut", Right: true}, {Head: "of"},
		{Head: "width", Right: true}, {Head: "height", Right: true}, {Head: "diagonal", Right: true}, {Head: geometry.Directions(pieces) + " along"}}}
	lines := document.Table{Size: render.BodySize, Columns: []document.Column{{Head: "piece"}, {Head: "line"}, {Head: "in by", Right: true}, {Head: "from", Broken: true}}}
	for _, p := range pieces {
		w, h := p.Size()
		diagonal := geometry.Length(math.Hypot(w.MM(), h.MM()))
		sizes.Rows = append(sizes.Rows, []string{p.Name, cut(p), of(p), d.Round.Pretty(w), d.Round.Pretty(h), d.Round.Pretty(diagonal), string(p.Grain)})
		lines.Rows = append(lines.Rows, d.ruled(p)...)
	}
	head := d.Heading("Mark out with rule and square")
	head.Fresh, head.Bookmark = d.corner.Width() == 0, "Mark out"
	blocks := []document.Block{head, d.Paragraph("These pieces are plain rectangles, and no template of them is printed. Sizes are rounded "+d.Round.String()+".", render.BodySize, false)}
	table := d.Table("", sizes)
	table[0].Above = 2
	blocks = append(blocks, table...)
	if len(lines.Rows) > 0 {
		blocks = append(blocks, d.Table("Lines to rule, along the edge they are measured from", lines)...)
	}
	order := []string{
		"Start from a straight edge: the sheet's own, or one that you cut. The grain runs along the side that the table names.",
		"Hold the square against that edge and draw the second edge.",
		"Mark the width along the first edge, and again far from it, both times from the second edge. Join the marks.",
		"Mark the height on both upright edges, from the first edge. Join the marks.",
		fmt.Sprintf("Measure both diagonals: each is as long as the table says, and the two are alike within %s. If not, go back to 2.", d.Round.Pretty(alike)),
		"Write on it what it is, where its head is and how the grain runs; rule the lines above. Then cut, pieces of one width or height at one setting.",
	}
	return append(blocks, document.Block{Above: 4, Draw: func(box geometry.Box) geometry.Length {
		left, right := box, box
		left.Max.X -= figureWide + 6
		right.Min.X = box.Max.X - figureWide
		return max(document.Below(left, d.Steps("Order of marking", order)...), d.markFigure(right))
	}})
}

// ruled lists the lines to rule on a piece, those at one distance or from one edge in
// one row.
func (d *doc) ruled(p geometry.Piece) (rows [][]string) {
	for _, o := range p.Offsets() {
		by := d.Round.Pretty(o.Off)
		if n := len(rows) - 1; n >= 0 && rows[n][1] == o.Name {
			if rows[n][2] == by {
				rows[n][3] += ", " + o.Edge
				continue
			}
			if rows[n][3] == o.Edge {
				rows[n][2] += ", " + by
				continue
			}
		}
		name := p.Name
		if len(rows) > 0 {
			name = ""
		}
		rows = append(rows, []string{name, o.Name, by, o.Edge})
	}
	for _, r := range rows {
		if strings.Count(r[3], ", ") == 3 {
			r[3] = "every edge"
		}
	}
	return rows
}

// figureWide is how wide the figure is with its numbers.
const figureWide geometry.Length = 64

// markFigure draws a rectangle with the numbers of the steps that draw its lines.
func (d *doc) markFigure(box geometry.Box) geometry.Length {
	const wide, high, white, sign = figureWide - 16, 30, 8, 3
	c := box.Center().X
	r := geometry.Bx(c-wide/2, box.Min.Y+white, c+wide/2, box.Min.Y+white+high)
	line := d.Theme[render.Cutting]
	d.Stroke(geometry.Rectangle(r), line)
	first := line
	first.Width *= 2.5
	d.Stroke(geometry.Line(geometry.Pt(r.Min.X-8, r.Max.Y), geometry.Pt(r.Max.X+8, r.Max.Y)), first)
	thin := render.Stroke{Width: 0.25, Color: render.Black}
	d.Stroke(geometry.Line(geometry.Pt(r.Min.X+sign, r.Max.Y), geometry.Pt(r.Min.X+sign, r.Max.Y-sign), geometry.Pt(r.Min.X, r.Max.Y-sign)), thin)
	thin.Dash = []geometry.Length{3, 1.5}
	d.Stroke(geometry.Line(r.Min, r.Max), thin)
	d.Stroke(geometry.Line(geometry.Pt(r.Min.X, r.Max.Y), geometry.Pt(r.Max.X, r.Min.Y)), thin)
	mid := r.Center()
	up := typeset.Ascent(render.HeadSize)
	for i, at := range []geometry.Point{
		{X: mid.X, Y: r.Max.Y + 1.5 + up}, {X: r.Min.X - 4, Y: mid.Y + up/2}, {X: r.Max.X + 4, Y: mid.Y + up/2}, {X: mid.X, Y: r.Min.Y - 1.5}, {X: mid.X, Y: mid.Y - 5},
	} {
		d.Text(render.Text{At: at, String: fmt.Sprint(i + 1), Size: render.HeadSize, Bold: true, Align: render.Middle, Color: render.Black})
	}
	return r.Max.Y + white
}
