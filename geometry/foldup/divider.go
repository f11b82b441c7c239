package foldup

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
)

// leastGrip is what a strip must reach onto a face, in mm (common practice, no
// source).
const leastGrip Length = 2

// DividerReport is a divider where it stands in the case.
type DividerReport struct {
	Min, Max Vec          // its lowest corner at left, tail and spine, and the one opposite
	Faces    []FaceReport // its left face, its right face, its mouth edge
}

// stand puts the dividers into the case, on the lines ruled on the walls, and
// looks at what is pasted on them.
func (r *Report) stand(v view, pieces []geometry.Piece) {
	n := v.known.Compartments - 1
	board, ok := named(pieces, "divider")
	fault := func(kind Kind, piece, what string, args ...any) {
		r.Faults = append(r.Faults, Fault{Kind: kind, Piece: piece, What: fmt.Sprintf(what, args...)})
	}
	switch {
	case !ok && n <= 0:
		return
	case !ok || board.Count != n:
		fault(Misfit, "divider", "not one between each two volumes")
		return
	}
	spots := r.ruled(v, pieces)
	if len(spots) != n {
		fault(Misfit, "spine wall", "%d dividers are ruled on it, %d are cut", len(spots), n)
		return
	}
	w, h := board.Size()
	block := Carcass{Width: v.known.Divider, Height: h, Depth: w}
	faces, faults := block.dressed(v.known, pieces)
	r.Faults = append(r.Faults, faults...)

	c, l := r.Carcass, v.known.Lining
	lo, hi := Vec{X: c.Lined + l, Y: c.Lined + l, Z: c.Lined + l}, Vec{X: c.Width - c.Lined - l, Y: c.Height - c.Lined - l, Z: c.Depth}
	most := Length(0) // that lies on head and tail anywhere
	for _, f := range r.Faces {
		if f.Face == geometry.HeadInside || f.Face == geometry.TailInside {
			most += f.Corners
		}
	}
	before := lo.X
	for i, x := range spots {
		if !(x[1] - x[0]).Near(v.known.Divider) {
			fault(Misfit, "spine wall", "divider %d is ruled %.2f mm thick, it is %.2f mm", i+1, (x[1] - x[0]).MM(), v.known.Divider.MM())
		}
		if x[0] < before-1e-6 || x[1] > hi.X+1e-6 {
			fault(Collision, "divider", "number %d stands in a side or in another", i+1)
		}
		before = x[1]
		stands := geometry.Bx(x[0], lo.Z, x[1], lo.Z+w)
		tail, head := v.under(geometry.TailInside, stands), v.under(geometry.HeadInside, stands)
		if room := hi.Y - head - lo.Y - tail; h > room+1e-6 {
			fault(Collision, "divider", "too high by %.2f mm to stand between what lies on head and tail", (h - room).MM())
		}
		if room := hi.Y - lo.Y - most; h < room-1e-6 {
			fault(Misfit, "divider", "%.2f mm too low to be held between head and tail", (room - h).MM())
		}
		if lo.Z+w > hi.Z+1e-6 {
			fault(Collision, "divider", "deeper than the case by %.2f mm", (lo.Z + w - hi.Z).MM())
		}
		foot := Vec{X: x[0], Y: lo.Y + tail, Z: lo.Z}
		d := DividerReport{Min: foot, Max: foot.Add(Vec{X: x[1] - x[0], Y: h, Z: w})}
		for _, f := range faces {
			f.Frame.O = f.Frame.O.Add(foot)
			d.Faces = append(d.Faces, f)
		}
		r.Dividers = append(r.Dividers, d)
	}
}

// under gives the thickest pile on a face within a box of it.
func (v view) under(face geometry.Face, in geometry.Box) Length {
	var there []patch
	for _, p := range v.on(index(v.surfaces, face)) {
		if p.shape = meet(p.shape, shape(corners(in))); solid(p.shape, sliver) {
			there = append(there, p)
		}
	}
	return pile(there)
}

func named(pieces []geometry.Piece, name string) (geometry.Piece, bool) {
	for _, p := range pieces {
		if p.Name == name {
			return p, true
		}
	}
	return geometry.Piece{}, false
}

// ruled gives from where to where across the case each divider stands, as the
// lines on the spine wall say, from left to right. Those on head and tail wall
// must be the same.
func (r *Report) ruled(v view, pieces []geometry.Piece) [][2]Length {
	var first []Length
	for _, name := range []string{"spine wall", "head wall", "tail wall"} {
		p, ok := named(pieces, name)
		if !ok || len(p.Seats) == 0 {
			continue
		}
		f, ok := r.Carcass.lay(p.Seats[0], v.surfaces)
		if !ok {
			r.Faults = append(r.Faults, Fault{Kind: Misfit, Piece: name, What: "its place does not fit the carcass"})
			continue
		}
		var at []Length
		for _, g := range p.Guides {
			if g.Name != "divider" {
				continue
			}
			a, b := f.At(g.Path.Vertices[0].Point), f.At(g.Path.Vertices[len(g.Path.Vertices)-1].Point)
			if !a.X.Near(b.X) {
				r.Faults = append(r.Faults, Fault{Kind: Misfit, Piece: name, What: "the line of a divider is askew"})
			}
			at = append(at, a.X)
		}
		slices.Sort(at)
		if name == "spine wall" {
			first = at
			continue
		}
		if !slices.EqualFunc(first, at, func(a, b Length) bool { return a.Near(b) }) {
			r.Faults = append(r.Faults, Fault{Kind: Misfit, Piece: name, What: "the lines of the dividers are not where the spine wall has them"})
		}
	}
	var out [][2]Length
	for i := 0; i+1 < len(first); i += 2 {
		out = append(out, [2]Length{first[i], first[i+1]})
	}
	return out
}

// sides lists the faces of a divider that something is pasted on.
func (c Carcass) sides() []surface {
	x, y, z := Vec{X: 1}, Vec{Y: 1}, Vec{Z: 1}
	face := func(plane int, name geometry.Face, o, u, v, n Vec, w, h Length, inside bool) surface {
		b := geometry.Bx(0, 0, w, h)
		return surface{name, Frame{O: o, U: u, V: v}, n, b, shape(corners(b)), true, inside, plane}
	}
	return []surface{
		face(1, geometry.DividerLeft, Vec{}, z, y, x.Mul(-1), c.Depth, c.Height, true),
		face(2, geometry.DividerRight, Vec{X: c.Width}, z, y, x, c.Depth, c.Height, true),
		face(3, geometry.DividerMouth, Vec{Z: c.Depth}, x, y, z, c.Width, c.Height, false),
	}
}

// dressed pastes the linings on a divider and folds the strip round its mouth
// edge.
func (c Carcass) dressed(k Conditions, pieces []geometry.Piece) ([]FaceReport, []Fault) {
	surfaces := c.sides()
	v := view{surfaces: surfaces, known: k}
	var faults []Fault
	linings := map[geometry.Face]bool{}
	for _, p := range pieces {
		for i, seat := range p.Seats {
			on := index(surfaces, seat.Face)
			if on < 0 {
				continue
			}
			ps, fs := c.seated(p, seat, k, surfaces)
			faults = append(faults, fs...)
			if p.Material != geometry.Lining {
				for n := range ps {
					ps[n].seat = i
				}
				v.patches = append(v.patches, ps...)
				continue
			}
			left := surfaces[on].shape // trimmed flush to it when dry
			for _, l := range ps {
				left = without(left, l.shape)
			}
			linings[seat.Face] = true
			if solid(left, sliver) {
				faults = append(faults, Fault{Kind: Bare, Piece: p.Name, Face: seat.Face, At: left.Bounds(), What: "smaller than its board"})
			}
		}
		if p.Over == "divider" && p.Count != 2*(k.Compartments-1) {
			faults = append(faults, Fault{Kind: Misfit, Piece: p.Name, What: "not one for each face of each divider"})
		}
	}
	for _, p := range v.patches {
		v.closed = max(v.closed, p.thick)
	}
	var out []FaceReport
	for i, s := range surfaces {
		out = append(out, v.face(i))
		if k.Lined && s.inside && !linings[s.name] {
			faults = append(faults, Fault{Kind: Bare, Piece: "divider lining", Face: s.name, What: "missing"})
		}
		var lap Length
		for _, p := range v.on(i) {
			if past := without(p.shape, s.shape); solid(past, sliver) {
				f := Fault{Kind: Overhang, Piece: p.piece, Face: s.name, At: past.Bounds(), What: "it reaches past the divider"}
				if b := past.Bounds(); b.Min.Y < s.extent.Min.Y-sliver || b.Max.Y > s.extent.Max.Y+sliver {
					f.Kind, f.What = Collision, "it runs into what is turned in at head or tail"
				}
				faults = append(faults, f)
			}
			lap = max(lap, s.extent.Max.X-p.shape.Bounds().Min.X)
		}
		switch {
		case !s.inside:
			faults = append(faults, v.bare(i)...)
		case lap < leastGrip:
			faults = append(faults, Fault{Kind: Bare, Piece: "divider strip", Face: s.name, What: fmt.Sprintf("it reaches %.2f mm onto the face", lap.MM())})
		}
		faults = append(faults, v.collisions(i)...)
	}
	slices.SortStableFunc(faults, func(a, b Fault) int { return cmp.Compare(a.Piece, b.Piece) })
	return out, faults
}
