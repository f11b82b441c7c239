package bed

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// Register tells how patterned stock is laid on a bed: lines of its pattern run
// across the bed's X at AtX, and every StepX from there; likewise in Y; a step
// is 0 where it does not matter. Up is the bed's edge that the pattern's top
// points to, "top" or "left", empty where it has none.
type Register struct {
	AtX, StepX, AtY, StepY Length
	Up                     string
}

// Any tells whether there is anything to register.
func (r Register) Any() bool { return r.StepX > 0 || r.StepY > 0 || r.Up != "" }

// Ticks returns where the lines fall on a bed of a size: X of those that run from
// top to bottom, Y of the others.
func (r Register) Ticks(width, height Length) (xs, ys []Length) {
	lines := geometry.Repeat{Across: r.StepX, Along: r.StepY, First: geometry.Pt(r.AtX, r.AtY), AtX: r.StepX > 0, AtY: r.StepY > 0}
	return lines.Lines(geometry.Bx(0, 0, width, height))
}

// stockKey is what pieces must share to lie on one bed.
type stockKey struct {
	material      geometry.Material
	stock         string
	across, along Length
	faced         bool
}

func keyOf(j Job, p geometry.Piece) stockKey {
	across, along := p.Pattern.Across, p.Pattern.Along // of the stock, whose grain runs along its height
	if p.Grain == geometry.GrainWidth {
		across, along = along, across
	}
	return stockKey{p.Material, j.stock(p.Material), across, along, p.FaceOf != ""}
}

// tileOf returns a shape as it lies on the bed.
func (s Setup) tileOf(sh shape, index int) tile {
	upright, turned := s.turns(sh.piece)
	t := tile{shape: index, turned: !upright, either: upright && turned, w: sh.box.Width(), h: sh.box.Height()}
	r := sh.piece.Pattern
	t.at = sh.put(geometry.Point{}, t.turned)(geometry.Line(r.First)).Vertices[0].Point
	if r.AtX {
		t.steps.X = r.Across
	}
	if r.AtY {
		t.steps.Y = r.Along
	}
	if r.OneWay {
		t.top = "top"
	}
	if t.turned {
		t.w, t.h = t.h, t.w
		t.steps.X, t.steps.Y = t.steps.Y, t.steps.X
		if r.OneWay {
			t.top = "left"
		}
	}
	return t
}

// layOnPattern lays tiles of patterned stock out so that the lines of all fall
// on one pattern: the largest first, each as near to the top, then to the left, as
// the pattern lets it lie. The first on a bed settles where the pattern is.
func (s Setup) layOnPattern(tiles []tile) (out []filling) {
	slices.SortStableFunc(tiles, func(a, b tile) int { return cmp.Compare(b.w*b.h, a.w*a.h) })
next:
	for _, t := range tiles {
		for i := range out {
			if s.place(t, &out[i]) {
				continue next
			}
		}
		out = append(out, filling{})
		s.place(t, &out[len(out)-1]) // that it fits a free bed is known
	}
	return out
}

// place lays a tile beside others, if there is a place for it, and settles in the register
// what the tile needs and it leaves open yet.
func (s Setup) place(t tile, f *filling) bool {
	xs, ys := []Length{s.Margin}, []Length{s.Margin}
	r := &f.register
	for _, o := range f.laid {
		xs, ys = append(xs, o.box.Max.X+s.Gap), append(ys, o.box.Max.Y+s.Gap)
	}
	for i := range xs {
		if t.steps.X > 0 && r.StepX > 0 {
			xs[i] += geometry.Modulo(r.AtX-t.at.X-xs[i], r.StepX)
		}
		if t.steps.Y > 0 && r.StepY > 0 {
			ys[i] += geometry.Modulo(r.AtY-t.at.Y-ys[i], r.StepY)
		}
	}
	slices.Sort(xs)
	slices.Sort(ys)
	const slack Length = 1e-4
	for _, y := range ys {
		for _, x := range xs {
			box := geometry.Bx(x, y, x+t.w, y+t.h)
			if box.Max.X > s.Width-s.Margin+slack || box.Max.Y > s.Height-s.Margin+slack ||
				slices.ContainsFunc(f.laid, func(o laid) bool { return box.Grow(s.Gap - slack).Overlaps(o.box) }) {
				continue
			}
			if t.steps.X > 0 && r.StepX == 0 {
				r.AtX, r.StepX = x+t.at.X, t.steps.X
			}
			if t.steps.Y > 0 && r.StepY == 0 {
				r.AtY, r.StepY = y+t.at.Y, t.steps.Y
			}
			if t.top != "" {
				r.Up = t.top
			}
			f.laid = append(f.laid, laid{t, box})
			return true
		}
	}
	return false
}
