package onepiece

import "forel/geometry"

// vec is a place or a step in the folded case: from left to right, from tail to
// head, from spine to mouth.
type vec [3]Length

func (a vec) add(b vec) vec { return vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func (a vec) sub(b vec) vec { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func (a vec) mul(f Length) vec { return vec{a[0] * f, a[1] * f, a[2] * f} }

func (a vec) cross(b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func (a vec) near(b vec) bool {
	d := a.sub(b)
	return max(d[0].Abs(), d[1].Abs(), d[2].Abs()) < sliver
}

// axis gives the axis that a unit vector runs along, and whether forward or
// backward; ok is false where it runs along none.
func (a vec) axis() (axis int, sign Length, ok bool) {
	for i, l := range a {
		if l.Abs() > 1-1e-9 {
			return i, l.Round(1), true
		}
	}
	return 0, 0, false
}

// frame lays the plane of the blank in the case: where its origin, its X and
// its Y go. The plane is that of the layer of the card that keeps its length.
type frame struct{ o, u, v vec }

// at gives where a point of the plane lies.
func (f frame) at(p geometry.Point) vec { return f.o.add(f.u.mul(p.X)).add(f.v.mul(p.Y)) }

// normal points to the viewer of the blank: to the inside of the case.
func (f frame) normal() vec { return f.u.cross(f.v) }

// hinged gives the frame of what is folded up toward the viewer by a right
// angle about a line of this plane. out points away from this plane's side of it.
func (f frame) hinged(on, along, out geometry.Point) frame {
	line, up := f.u.mul(along.X).add(f.v.mul(along.Y)), f.normal()
	step := func(e geometry.Point) vec {
		return line.mul(e.X*along.X + e.Y*along.Y).add(up.mul(e.X*out.X + e.Y*out.Y))
	}
	u, v := step(geometry.Pt(1, 0)), step(geometry.Pt(0, 1))
	return frame{o: f.at(on).sub(u.mul(on.X)).sub(v.mul(on.Y)), u: u, v: v}
}
