package onepiece

import (
	"fmt"
	"strings"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// part is a part of the blank between cuts and folds.
type part struct {
	name  string
	shape geom.Polygon
	joins []join
}

// join is a fold that a part shares with another.
type join struct {
	to         int
	on         geometry.Point // of the fold
	along, out geometry.Point // unit steps: along the fold, and across it, away from the part
}

// saw is how broad a cut the proof makes along folds and slits to part the
// blank, in mm: far below what a fault can hide in.
const saw Length = 1e-4

// split parts a blank along its folds and slits, and finds which fold joins
// which parts.
func split(p geometry.Piece, a *algebra) ([]part, []foldup.Fault) {
	whole := polygon.Of(p.Outline.Flatten(saw))
	if err := whole.Validate(); err != nil {
		return nil, []foldup.Fault{{Kind: foldup.Misfit, Piece: p.Name, What: "its outline is not simple: " + err.Error()}}
	}
	pieces := polygon.Parts(whole)
	for _, paths := range [][]geometry.Path{p.Slits, p.Folds} {
		for _, path := range paths {
			for _, s := range path.Segments() {
				var next []geom.Polygon
				for _, q := range pieces {
					next = append(next, polygon.Parts(a.without(q.AsGeometry(), strip(s, -saw/2, saw/2, saw/2)))...)
				}
				pieces = next
			}
		}
	}
	var out []part
	for _, shape := range pieces {
		if breadth(shape) > sliver {
			out = append(out, part{name: named(p, shape), shape: shape})
		}
	}
	var faults []foldup.Fault
	for _, path := range p.Folds {
		for _, s := range path.Segments() {
			if !hang(out, s, a) {
				faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name,
					What: fmt.Sprintf("the fold from %s to %s does not part what it should: it ends short, or a slit beside it is missing or too short", place(s.From), place(s.To))})
			}
		}
	}
	return out, faults
}

// hang notes which parts meet along a fold. It tells whether there are any, and
// none lies on both sides of it.
func hang(ps []part, fold geometry.Segment, a *algebra) bool {
	long := fold.From.Distance(fold.To)
	along := fold.To.Sub(fold.From).Mul(1 / long.MM())
	right := geometry.Pt(along.Y, -along.X)
	// What of the fold each part has on one side of it.
	stretch := func(i int, beside geom.Geometry) (from, to Length) {
		for k, q := range polygon.Parts(a.meet(ps[i].shape.AsGeometry(), beside)) {
			lo, hi := span(q, fold.From, along)
			if k == 0 {
				from, to = lo, hi
			}
			from, to = min(from, lo), max(to, hi)
		}
		return from, to
	}
	const near, far = saw, 100 * saw // of the strip beside the fold that is looked at
	onLeft, onRight := strip(fold, near, far, 0), strip(fold, -far, -near, 0)
	found := false
	for i := range ps {
		l0, l1 := stretch(i, onLeft)
		if l1-l0 < far {
			continue
		}
		for k := range ps {
			r0, r1 := stretch(k, onRight)
			if min(l1, r1)-max(l0, r0) < far {
				continue
			}
			if i == k {
				return false
			}
			ps[i].joins = append(ps[i].joins, join{k, fold.From, along, right})
			ps[k].joins = append(ps[k].joins, join{i, fold.From, along, right.Mul(-1)})
			found = true
		}
	}
	return found
}

// strip gives the rectangle beside a line, from one distance left of it to
// another, and beyond its ends.
func strip(s geometry.Segment, from, to, beyond Length) geom.Geometry {
	along := s.To.Sub(s.From).Mul(1 / s.From.Distance(s.To).MM())
	left := geometry.Pt(-along.Y, along.X)
	a, b := s.From.Sub(along.Mul(beyond.MM())), s.To.Add(along.Mul(beyond.MM()))
	return polygon.Of([]geometry.Point{
		a.Add(left.Mul(from.MM())), b.Add(left.Mul(from.MM())),
		b.Add(left.Mul(to.MM())), a.Add(left.Mul(to.MM())),
	})
}

// span gives from where to where a shape reaches along a direction.
func span(p geom.Polygon, from, along geometry.Point) (lo, hi Length) {
	seq := p.ExteriorRing().Coordinates()
	for i := range seq.Length() {
		xy := seq.GetXY(i)
		d := geometry.Pt(Length(xy.X), Length(xy.Y)).Sub(from)
		t := d.X*along.X + d.Y*along.Y
		if i == 0 {
			lo, hi = t, t
		}
		lo, hi = min(lo, t), max(hi, t)
	}
	return lo, hi
}

// named gives a part the name of the regions whose rooms lie in it, with the
// face each is for; where there is none, its place.
func named(p geometry.Piece, shape geom.Polygon) string {
	var names []string
	for _, r := range p.Regions {
		c := r.Room.Center()
		if geom.Intersects(shape.AsGeometry(), geom.XY{X: c.X.MM(), Y: c.Y.MM()}.AsPoint().AsGeometry()) {
			name, _, _ := strings.Cut(r.Name, ":")
			names = append(names, name+" ("+string(r.Face)+")")
		}
	}
	if len(names) == 0 {
		return "part at " + place(polygon.Bounds(shape.AsGeometry()).Center())
	}
	return strings.Join(names, " with ")
}

func place(p geometry.Point) string { return fmt.Sprintf("%.1f, %.1f mm", p.X.MM(), p.Y.MM()) }
