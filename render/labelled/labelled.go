// Package labelled draws a piece at true size: its lines by layer, and the
// words that tell which way up it is, what each edge meets and where each flap
// lands. Words keep clear of every line and of each other.
package labelled

import (
	"forel/geometry"
	"forel/render"
)

// tolerance of arcs that are cut off at the edge of a sheet.
const tolerance geometry.Length = 0.005

// View says where on a surface a piece is drawn, and how.
type View struct {
	// DX and DY take template coordinates (Y upward) to the surface's (Y
	// downward): surface = (x + DX, DY - y).
	DX, DY geometry.Length
	Window geometry.Box   // of the surface: lines are cut off outside it
	Safe   geometry.Box   // of the surface: words stay within it
	Keep   []geometry.Box // of the surface: places words keep off
	Joins  []Join         // of the surface: where it is joined to its neighbours
	// Address names what is shown of a piece that takes several sheets; empty
	// where all of it is.
	Address string
	Turned  bool // the piece lies turned by a quarter
	// Wider is by how much words may come out wider than the typeface has
	// them, where a viewer may lack it; 1 (or 0) where it is embedded.
	Wider float64
	Theme render.Theme
	Round geometry.Rounding // of sizes in words
}

// Join is a line of the surface at which another sheet is joined, this sheet
// on its left (seen with Y upward), and what is to be done there.
type Join struct {
	From, To geometry.Point
	Text     string
}

func (v View) point(p geometry.Point) geometry.Point { return geometry.Pt(p.X+v.DX, v.DY-p.Y) }

func (v View) path(p geometry.Path) geometry.Path {
	return p.FlipY(v.DY).Move(geometry.Pt(v.DX, 0))
}

func (v View) box(b geometry.Box) geometry.Box {
	return geometry.Bx(b.Min.X+v.DX, v.DY-b.Max.Y, b.Max.X+v.DX, v.DY-b.Min.Y)
}

// Draw draws a piece, its layers in the order a machine needs: inside cuts, while the
// piece is held yet, the closed outline, folds. Nothing is drawn twice; words have a layer of
// their own. It returns the labels there was no room for.
func Draw(s render.Surface, p geometry.Piece, v View) (missed []string) {
	layer := func(l render.Layer, paths []geometry.Path) {
		if len(paths) == 0 {
			return
		}
		s.Begin(l)
		for _, path := range paths {
			for _, c := range v.path(path).Clip(v.Window, tolerance) {
				stroke := v.Theme[l]
				if len(stroke.Dash) > 0 {
					stroke.Phase = c.Start
				}
				s.Stroke(c.Path, stroke)
			}
		}
		s.End()
	}
	layer(render.InsideCuts, p.Slits)
	layer(render.Cutting, []geometry.Path{p.Outline})
	layer(render.Creasing, p.Folds)
	layer(render.Positions, p.Rulings())

	l := newLabeller(s, p, v)
	s.Begin(render.Legend)
	defer s.End()
	if len(p.Confused) > 0 && p.Spine >= 0 {
		l.spineMark()
	}
	l.joins()
	l.names()
	for _, e := range p.Edges {
		if e.Name != "" {
			l.edge(e)
		}
	}
	l.rulings()
	l.grain()
	return l.missed
}
