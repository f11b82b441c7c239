package onepiece

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
)

// report returns what was found, with all that is told and drawn of it.
func (v *proof) report() Report {
	r := Report{Cavity: v.cavity, Outside: v.outside}
	r.Faults = v.faults
	r.Shows = "the blank folds to the room that was asked for, every wall is closed, and no two parts lie in one place"
	r.Stuff, r.From = v.card.name(), "from the inside out"
	r.Layers = "Between parts stand the reliefs."
	r.Means = "the rest is reliefs between parts, and at the ends of a wall the edges of the " + v.card.name() + " that is folded over it"
	for _, w := range walls {
		r.Walls = append(r.Walls, Wall{w.face, v.layers(v.wall(w.axis, w.sign))})
		r.Faces = append(r.Faces, v.seen(w))
	}
	if v.outHi == [3]Length{} {
		r.Faces = nil // it does not stand
		return r
	}
	named := map[string]bool{}
	for _, f := range r.Faces {
		for _, l := range f.Layers {
			if !named[l.Piece] {
				named[l.Piece] = true
				r.Sheets = append(r.Sheets, plan.Sheet{Name: l.Piece, Stuff: stage.Card})
			}
		}
	}
	for _, s := range v.slabs {
		r.Solids = append(r.Solids, v.solid(s))
	}
	r.Folded = []plan.Fact{plan.SizeFact("cavity", "room inside, as folded", "deep", v.cavity), plan.SizeFact("outside", "outside, as folded", "deep", v.outside)}
	half, third := Length(1./2), Length(1./3)
	r.Spreads = []plan.Spread{{Bookmark: "Walls", Head: "The walls, each as you see it from outside", Rows: [][]plan.Cell{
		{{Face: LeftOutside, Part: half}, {Face: RightOutside, Part: half}},
		{{Face: SpineOutside, Part: third}, {Face: HeadOutside, Part: third}, {Face: TailOutside, Part: third}},
	}}}
	r.View = stage.View{Toward: space.Vec{Z: 1}, Up: space.Vec{Y: 1}, Yaw: 32, Pitch: 22}
	w, h, d := v.outside.Thickness, v.outside.Height, v.outside.Width
	note := func(name, more string, x, y, z Length) stage.Note {
		return stage.Note{Name: stage.Words(name), More: stage.Words(more), At: space.Vec{X: x, Y: y, Z: z}}
	}
	r.Notes = []stage.Note{
		{Name: stage.Words("head"), More: stage.Words("flaps, in two layers"), Spot: string(HeadOutside)},
		{Name: stage.Words("right side"), More: stage.Words("one layer"), Spot: string(RightOutside)},
		note("spine", "behind, round this edge", w, h*0.45, 0),
		note("left side", "its edge at the mouth", v.card.Thickness/2, h*0.85, d),
		note("tail", "its edges at the mouth", w*0.6, v.card.Thickness, d),
		note("mouth", "the open side", w/2, h*0.74, d),
	}
	return r
}

// layers tells which parts lie in a wall, from the inside out.
func (v *proof) layers(wall []slab) [][]string {
	var out [][]string
	for i, s := range wall {
		if i == 0 || (s.inside-wall[i-1].inside).Abs() > sliver {
			out = append(out, nil)
		}
		last := &out[len(out)-1]
		*last = append(*last, s.name)
	}
	return out
}

// unit returns the step along an axis.
func unit(axis int) space.Vec { return [3]space.Vec{{X: 1}, {Y: 1}, {Z: 1}}[axis] }

// drawn returns the two axes of a plane square to an axis as a wall is drawn in it:
// X from left to right, or toward the mouth on a side, and Y toward the head, or the
// mouth.
func drawn(axis int) [2]int {
	if axis == 0 {
		return [2]int{2, 1}
	}
	return across(axis)
}

// points returns the outline of a slab in that plane, from the lowest corner of the
// case.
func (v *proof) points(s slab) []geometry.Point {
	two := drawn(s.axis)
	pts := slices.Clone(s.shape[0].Rings[0])
	for k, q := range pts {
		if s.axis == 0 {
			q = geometry.Pt(q.Y, q.X)
		}
		pts[k] = geometry.Pt(q.X-v.outLo[two[0]], q.Y-v.outLo[two[1]])
	}
	return pts
}

// seen returns a wall as a face of the case.
func (v *proof) seen(w standingWall) foldup.FaceReport {
	two := drawn(w.axis)
	size := between(v.outLo, v.outHi)
	s := foldup.Surface{
		Face: w.face, Board: w.name, Beyond: w.beyond,
		Extent: geometry.Bx(0, 0, max(size[two[0]], 0), max(size[two[1]], 0)),
		Frame:  space.Frame{U: unit(two[0]), V: unit(two[1])}, Normal: unit(w.axis).Mul(-w.sign),
		Ground: foldup.Ground{Name: "gap between parts", Stuff: stage.Board},
	}
	if w.sign < 0 {
		s.Frame.O = unit(w.axis).Mul(size[w.axis])
	}
	r := foldup.FaceReport{Surface: s}
	ss := v.wall(w.axis, w.sign)
	layers := v.layers(ss)
	n := -1
	for i, s := range ss {
		if i == 0 || (s.inside-ss[i-1].inside).Abs() > sliver {
			n++
		}
		r.Layers = append(r.Layers, foldup.Patch{Piece: s.short, Order: n, Shape: polygon.Of(v.points(s))})
		r.Stack += v.card.Thickness / Length(len(layers[n]))
	}
	r.Corners = r.Stack
	return r
}

// solid returns a slab as it stands.
func (v *proof) solid(s slab) plan.Solid {
	two := drawn(s.axis)
	f := space.Frame{U: unit(two[0]), V: unit(two[1])}
	n := f.Normal()
	at := s.lo - v.outLo[s.axis] // of the end the normal goes away from
	if n.Dot(unit(s.axis)) > 0 {
		at = s.hi - v.outLo[s.axis]
	}
	f.O = unit(s.axis).Mul(at)
	outline := v.points(s)
	if geometry.Polygon(outline...).SignedArea() < 0 {
		slices.Reverse(outline)
	}
	return plan.Solid{Name: s.name, Stuff: stage.Card, Frame: f, Outline: outline, Thick: s.hi - s.lo}
}
