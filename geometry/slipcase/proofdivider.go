package slipcase

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/space"
)

// stripGrip is what a strip must reach onto a face, in mm (common practice, no
// source).
const stripGrip Length = 2

// stand puts the dividers into the case, on the lines ruled on the walls, and
// looks at what is pasted on them.
func (r *Report) stand(v foldup.Covered, pieces []geometry.Piece, k Conditions) {
	n := k.Compartments - 1
	board, ok := named(pieces, "divider")
	fault := func(kind foldup.Kind, piece, what string, args ...any) {
		r.Faults = append(r.Faults, foldup.Fault{Kind: kind, Piece: piece, What: fmt.Sprintf(what, args...)})
	}
	switch {
	case !ok && n <= 0:
		return
	case !ok || board.Count != n:
		fault(foldup.Misfit, "divider", "not one between each two volumes")
		return
	}
	spots := r.ruled(v, pieces)
	if len(spots) != n {
		fault(foldup.Misfit, "spine wall", "%d dividers are ruled on it, %d are cut", len(spots), n)
		return
	}
	w, h := board.Size()
	faces, faults := block{thick: k.Divider, high: h, deep: w}.dressed(k, pieces)
	r.Faults = append(r.Faults, faults...)

	c, l := r.Carcass, k.Lining
	lo := space.Vec{X: c.Lined + l, Y: c.Lined + l, Z: c.Lined + l}
	hi := space.Vec{X: c.Width - c.Lined - l, Y: c.Height - c.Lined - l, Z: c.Depth}
	most := Length(0) // that lies on head and tail anywhere
	for _, f := range r.Faces {
		if f.Face == HeadInside || f.Face == TailInside {
			most += f.Corners
		}
	}
	before := lo.X
	for i, x := range spots {
		if !(x[1] - x[0]).Near(k.Divider) {
			fault(foldup.Misfit, "spine wall", "divider %d is ruled %.2f mm thick, it is %.2f mm", i+1, (x[1] - x[0]).MM(), k.Divider.MM())
		}
		if x[0] < before-1e-6 || x[1] > hi.X+1e-6 {
			fault(foldup.Collision, "divider", "number %d stands in a side or in another", i+1)
		}
		before = x[1]
		stands := geometry.Bx(x[0], lo.Z, x[1], lo.Z+w)
		tail, head := v.Under(TailInside, stands), v.Under(HeadInside, stands)
		if room := hi.Y - head - lo.Y - tail; h > room+1e-6 {
			fault(foldup.Collision, "divider", "too high by %.2f mm to stand between what lies on head and tail", (h - room).MM())
		}
		if room := hi.Y - lo.Y - most; h < room-1e-6 {
			fault(foldup.Misfit, "divider", "%.2f mm too low to be held between head and tail", (room - h).MM())
		}
		if lo.Z+w > hi.Z+1e-6 {
			fault(foldup.Collision, "divider", "deeper than the case by %.2f mm", (lo.Z + w - hi.Z).MM())
		}
		foot := space.Vec{X: x[0], Y: lo.Y + tail, Z: lo.Z}
		r.Dividers = append(r.Dividers, Standing{Min: foot, Max: foot.Add(space.Vec{X: x[1] - x[0], Y: h, Z: w})})
		for _, f := range faces {
			f.Frame.O, f.Again = f.Frame.O.Add(foot), i > 0
			r.Faces = append(r.Faces, f)
		}
	}
}

// Standing is a divider where it stands in the case: its corner at left, tail and
// spine, and the one opposite.
type Standing struct{ Min, Max space.Vec }

func named(pieces []geometry.Piece, name string) (geometry.Piece, bool) {
	for _, p := range pieces {
		if p.Name == name {
			return p, true
		}
	}
	return geometry.Piece{}, false
}

// ruled returns from where to where across the case each divider stands, as the
// lines on the spine wall say, from left to right. Those on head and tail wall
// must be the same.
func (r *Report) ruled(v foldup.Covered, pieces []geometry.Piece) [][2]Length {
	var first []Length
	for _, name := range []string{"spine wall", "head wall", "tail wall"} {
		p, ok := named(pieces, name)
		if !ok || len(p.Seats) == 0 {
			continue
		}
		f, ok := v.Place(p.Seats[0])
		if !ok {
			r.Faults = append(r.Faults, foldup.Fault{Kind: foldup.Misfit, Piece: name, What: "its place does not fit the boards"})
			continue
		}
		var at []Length
		for _, g := range p.Guides {
			if g.Name != "divider" {
				continue
			}
			a, b := f.At(g.Path.Vertices[0].Point), f.At(g.Path.Vertices[len(g.Path.Vertices)-1].Point)
			if !a.X.Near(b.X) {
				r.Faults = append(r.Faults, foldup.Fault{Kind: foldup.Misfit, Piece: name, What: "the line of a divider is askew"})
			}
			at = append(at, a.X)
		}
		slices.Sort(at)
		if name == "spine wall" {
			first = at
			continue
		}
		if !slices.EqualFunc(first, at, func(a, b Length) bool { return a.Near(b) }) {
			r.Faults = append(r.Faults, foldup.Fault{Kind: foldup.Misfit, Piece: name, What: "the lines of the dividers are not where the spine wall has them"})
		}
	}
	var out [][2]Length
	for i := 0; i+1 < len(first); i += 2 {
		out = append(out, [2]Length{first[i], first[i+1]})
	}
	return out
}

// block is a divider by itself.
type block struct{ thick, high, deep Length }

// body returns the faces of a divider that something is pasted on, and its
// corners.
func (b block) body(k Conditions) foldup.Body {
	x, y, z := toRight, toHead, toMouth
	face := func(plane int, name geometry.Face, o, u, v, n space.Vec, w, h Length, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: name, Board: onDividers, Frame: space.Frame{O: o, U: u, V: v}, Normal: n, Extent: geometry.Bx(0, 0, w, h),
			Plane: plane, Beyond: beyond, Ground: bareBoard}
	}
	side := func(f foldup.Surface) foldup.Surface {
		f.Inside, f.Ground, f.Open = true, k.onDivider(), z
		return f
	}
	mouth := face(2, DividerMouth, space.Vec{Z: b.deep}, x, y, z, b.thick, b.high, foldup.Beyond{Left: "left face", Right: "right face", Top: "head", Bottom: "tail"})
	mouth.Cover = mouth.Outline()
	out := foldup.Body{Corners: map[geometry.Corner]space.Vec{}, Surfaces: []foldup.Surface{
		side(face(0, DividerLeft, space.Vec{}, z, y, x.Mul(-1), b.deep, b.high, sideFromLeft)),
		side(face(1, DividerRight, space.Vec{X: b.thick}, z, y, x, b.deep, b.high, sideFromRight)),
		mouth,
	}}
	c := Carcass{Width: b.thick, Height: b.high, Depth: b.deep}
	for _, p := range places() {
		out.Corners[p.corner()], _ = c.at(p)
	}
	return out
}

// dressed pastes the linings on a divider and folds the strip round its mouth
// edge.
func (b block) dressed(k Conditions, pieces []geometry.Piece) ([]foldup.FaceReport, []foldup.Fault) {
	body := b.body(k)
	var coverings []geometry.Piece
	linings := map[geometry.Face]bool{}
	var faults []foldup.Fault
	for _, p := range pieces {
		if p.Over == "divider" && p.Count != 2*(k.Compartments-1) {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "not one for each face of each divider"})
		}
		if p.Material != geometry.Lining {
			coverings = append(coverings, p)
			continue
		}
		for i, seat := range p.Seats {
			on := body.Find(seat.Face)
			if on < 0 {
				continue
			}
			ps, fs := body.Seated(p, i, 0)
			faults = append(faults, fs...)
			left := body.Surfaces[on].Outline() // trimmed flush to it when dry
			for _, l := range ps {
				left = foldup.Without(left, l.Shape)
			}
			linings[seat.Face] = true
			if foldup.Solid(left, foldup.Sliver) {
				faults = append(faults, foldup.Fault{Kind: foldup.Bare, Piece: p.Name, Face: seat.Face, At: left.Bounds(), What: "smaller than its board"})
			}
		}
	}
	v, wrong := body.Cover(coverings, k.thick)
	faults = append(faults, wrong...)
	var out []foldup.FaceReport
	for i, s := range v.Surfaces {
		out = append(out, v.Report(i))
		if k.Lined && s.Inside && !linings[s.Face] {
			faults = append(faults, foldup.Fault{Kind: foldup.Bare, Piece: "divider lining", Face: s.Face, What: "missing"})
		}
		var lap Length
		for _, p := range v.In(s.Plane) {
			if past := foldup.Without(p.Shape, s.Outline()); foldup.Solid(past, foldup.Sliver) {
				f := foldup.Fault{Kind: foldup.Overhang, Piece: p.Piece, Face: s.Face, At: past.Bounds(), What: "it reaches past the divider"}
				if f.At.Min.Y < s.Extent.Min.Y-foldup.Sliver || f.At.Max.Y > s.Extent.Max.Y+foldup.Sliver {
					f.Kind, f.What = foldup.Collision, "it runs into what is turned in at head or tail"
				}
				faults = append(faults, f)
			}
			lap = max(lap, s.Extent.Max.X-p.Shape.Bounds().Min.X)
		}
		if s.Inside && lap < stripGrip {
			faults = append(faults, foldup.Fault{Kind: foldup.Bare, Piece: "divider strip", Face: s.Face, What: fmt.Sprintf("it reaches %.2f mm onto the face", lap.MM())})
		}
		faults = append(faults, v.Bare(i)...)
		faults = append(faults, v.Collisions(i)...)
	}
	slices.SortStableFunc(faults, func(a, b foldup.Fault) int { return cmp.Compare(a.Piece, b.Piece) })
	return out, faults
}

// onDividers is what the faces of a divider are faces of.
const onDividers = "divider"
