package slipcase

import (
	"cmp"
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/geometry/walled"
)

// stripGrip is what a strip must reach onto a face, in mm (common practice, no
// source).
const stripGrip Length = 2

// stand puts the dividers into the case, on the lines ruled on the walls, and
// looks at what is pasted on them.
func (r *Report) stand(v foldup.Covered, pieces []geometry.Piece, j Job) {
	n, thick := j.Dividers(), j.dividerThickness()
	board, ok := geometry.Find(pieces, "divider")
	fault := func(kind foldup.Kind, piece, what string, args ...any) { r.fault(kind, piece, "", what, args...) }
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
	faces, faults := standingAlone(board, thick, 0.01).dressed(j, pieces)
	r.Faults = append(r.Faults, faults...)

	c := r.Carcass
	lo := space.Vec{X: c.Lined, Y: c.Lined, Z: c.Lined}
	hi := space.Vec{X: c.Width - c.Lined, Y: c.Height - c.Lined, Z: c.Depth}
	switch room := hi.Y - lo.Y; {
	case h > room+1e-6:
		fault(foldup.Collision, "divider", "too high by %.2f mm to stand between head and tail wall", (h - room).MM())
	case h < room-1e-6:
		fault(foldup.Misfit, "divider", "%.2f mm too low to be glued to head and tail wall", (room - h).MM())
	}
	if lo.Z+w > hi.Z+1e-6 {
		fault(foldup.Collision, "divider", "deeper than the case by %.2f mm", (lo.Z + w - hi.Z).MM())
	}
	r.notched(pieces, j, polygon.Of(board.Outline.Move(geometry.Pt(lo.Z, lo.Y)).Flatten(0.01)))
	before := lo.X
	for i, x := range spots {
		if !(x[1] - x[0]).Near(thick) {
			fault(foldup.Misfit, "spine wall", "divider %d is ruled %.2f mm thick, it is %.2f mm", i+1, (x[1] - x[0]).MM(), thick.MM())
		}
		if x[0] < before-1e-6 || x[1] > hi.X+1e-6 {
			fault(foldup.Collision, "divider", "number %d stands in a side or in another", i+1)
		}
		before = x[1]
		// It is in its place when the case is covered, its strip round it.
		strip := j.Cloth.Thickness
		stands := geometry.Bx(x[0]-strip, lo.Z, x[1]+strip, lo.Z+w)
		for _, end := range []geometry.Face{TailInside, HeadInside} {
			for _, p := range foldup.Within(v.On(end), stands) {
				r.Faults = append(r.Faults, foldup.Fault{Kind: foldup.Collision, Piece: p.Piece, Face: end, At: p.Shape.Bounds(),
					What: fmt.Sprintf("it is turned in where divider %d stands", i+1)})
			}
		}
		foot := space.Vec{X: x[0], Y: lo.Y, Z: lo.Z}
		r.Dividers = append(r.Dividers, plan.Solid{Name: fmt.Sprintf("divider %d", i+1), Stuff: stage.Board, Thick: x[1] - x[0],
			Frame: space.Frame{O: foot, U: toMouth, V: toHead}, Outline: board.Outline.Flatten(0.01)})
		for _, f := range faces {
			f.Frame.O, f.Again = f.Frame.O.Add(foot), i > 0
			r.Faces = append(r.Faces, f)
		}
	}
}

// notched holds the thumb hole in the dividers, which are seen from the side, against
// that of the sides: from three volumes on it is as open, and it is no larger. Its edge
// is covered by a strip of its own.
func (r *Report) notched(pieces []geometry.Piece, j Job, divider polygon.Shape) {
	fault := func(kind foldup.Kind, piece, what string, args ...any) {
		r.fault(kind, piece, DividerMouth, what, args...)
	}
	c, box := r.Carcass, divider.Bounds()
	open := foldup.Without(polygon.Box(geometry.Bx(0, 0, c.Depth, c.Height)), polygon.Of(c.Side))
	for _, part := range foldup.Meet(open, divider) {
		if in := part.Bounds().Width(); j.Dividers() > 1 && in >= leastNotch && part.Breadth() > fold.OnArc {
			fault(foldup.Collision, "divider", "it stands %.2f mm in the thumb hole of the sides", in.MM())
		}
	}
	cut := foldup.Without(polygon.Box(box), divider)
	if more := foldup.Without(cut, open); foldup.Solid(more, fold.OnArc) {
		fault(foldup.Bare, "divider", "it is cut away beyond the thumb hole of the sides")
	}
	strip, ok := geometry.Find(pieces, notchStripName)
	if !foldup.Solid(cut, fold.OnArc) {
		if ok {
			fault(foldup.Misfit, notchStripName, "there is no hole in a divider")
		}
		return
	}
	if !ok || strip.Count != j.Dividers() {
		fault(foldup.Bare, notchStripName, "not one for the hole in each divider")
		return
	}
	// The edge of the hole is what of the outline lies off the rectangle round it.
	var edge Length
	for _, part := range divider {
		part.Edges(func(a, b geometry.Point) {
			if !along(a, b, box) {
				edge += a.Distance(b)
			}
		})
	}
	r.wraps(strip, edge, j.dividerThickness())
}

// wraps holds a strip that is folded lengthwise round the edge of a board, so long and so
// thick, against that edge.
func (r *Report) wraps(strip geometry.Piece, edge, thick Length) {
	wide, long := strip.Size()
	bare := func(what string, args ...any) { r.fault(foldup.Bare, strip.Name, DividerMouth, what, args...) }
	if len(strip.Folds) != 2 {
		bare("it has %d folds", len(strip.Folds))
		return
	}
	a, b := strip.Folds[0].Vertices, strip.Folds[1].Vertices
	low, high := min(a[0].X, b[0].X), max(a[0].X, b[0].X)
	switch lap := min(low, wide-high); {
	case !(high - low).Near(thick):
		bare("its folds are %.2f mm apart, the edge is %.2f mm thick", (high - low).MM(), thick.MM())
	case lap < stripGrip:
		bare("it reaches %.2f mm onto a face", lap.MM())
	case min(a[0].Distance(a[1].Point), b[0].Distance(b[1].Point)) < edge-foldup.Sliver:
		bare("it goes onto the faces along %.2f mm, the edge of the hole is %.2f mm", min(a[0].Distance(a[1].Point), b[0].Distance(b[1].Point)).MM(), edge.MM())
	case long < edge+2*stripGrip:
		bare("it does not reach past the ends of the hole")
	}
}

// ruled returns from where to where across the case each divider stands, as the
// lines on the spine wall say, from left to right. Those on head and tail wall
// must be the same.
func (r *Report) ruled(v foldup.Covered, pieces []geometry.Piece) [][2]Length {
	var first []Length
	for _, name := range []string{"spine wall", "head wall", "tail wall"} {
		p, ok := geometry.Find(pieces, name)
		if !ok || len(p.Seats) == 0 {
			continue
		}
		f, ok := v.Place(p.Seats[0])
		if !ok {
			r.fault(foldup.Misfit, name, "", "its place does not fit the boards")
			continue
		}
		var at []Length
		for _, g := range p.Guides {
			if g.Name != "divider" {
				continue
			}
			a, b := f.At(g.Path.Vertices[0].Point), f.At(g.Path.Vertices[len(g.Path.Vertices)-1].Point)
			if !a.X.Near(b.X) {
				r.fault(foldup.Misfit, name, "", "the line of a divider is askew")
			}
			at = append(at, a.X)
		}
		slices.Sort(at)
		if name == "spine wall" {
			first = at
			continue
		}
		if !slices.EqualFunc(first, at, func(a, b Length) bool { return a.Near(b) }) {
			r.fault(foldup.Misfit, name, "", "the lines of the dividers are not where the spine wall has them")
		}
	}
	var out [][2]Length
	for d := range slices.Chunk(first[:len(first)/2*2], 2) {
		out = append(out, [2]Length(d))
	}
	return out
}

// fault adds one to the report; face may be empty.
func (r *Report) fault(kind foldup.Kind, piece string, face geometry.Face, what string, args ...any) {
	r.Faults = append(r.Faults, foldup.Fault{Kind: kind, Piece: piece, Face: face, What: fmt.Sprintf(what, args...)})
}

// block is a divider by itself, as a carcass without boards round it.
type block struct{ Carcass }

// standingAlone returns a divider of that board, so thick with its linings; chords leave
// the arc of its thumb hole by no more than arc.
func standingAlone(board geometry.Piece, thick, arc Length) block {
	w, h := board.Size()
	return block{Carcass{Width: thick, Height: h, Depth: w, Side: board.Outline.Flatten(arc)}}
}

// body returns the faces of a divider that something is pasted on, and its
// corners.
func (b block) body(j Job) foldup.Body {
	x, y, z := toRight, toHead, toMouth
	face := func(plane int, name geometry.Face, o, u, v, n space.Vec, w, h Length, beyond foldup.Beyond) foldup.Surface {
		return foldup.Surface{Face: name, Board: onDividers, Frame: space.Frame{O: o, U: u, V: v}, Normal: n, Extent: geometry.Bx(0, 0, w, h),
			Plane: plane, Beyond: beyond, Ground: foldup.BareBoard}
	}
	side := func(f foldup.Surface) foldup.Surface {
		f.Inside, f.Ground, f.Open = true, j.ground(), z
		return b.cut(f)
	}
	mouth := b.cutAtMouth(face(2, DividerMouth, space.Vec{Z: b.Depth}, x, y, z, b.Width, b.Height, foldup.Beyond{Left: "left face", Right: "right face", Top: "head", Bottom: "tail"}))
	mouth.Cover = mouth.Outline()
	out := foldup.Body{Corners: map[geometry.Corner]space.Vec{}, Surfaces: []foldup.Surface{
		side(face(0, DividerLeft, space.Vec{}, z, y, x.Mul(-1), b.Depth, b.Height, walled.SideFromLeft)),
		side(face(1, DividerRight, space.Vec{X: b.Width}, z, y, x, b.Depth, b.Height, walled.SideFromRight)),
		mouth,
	}}
	for _, p := range places() {
		out.Corners[p.corner()], _ = b.at(p)
	}
	return out
}

// dressed pastes the linings on a divider and folds the strip round its mouth
// edge.
func (b block) dressed(j Job, pieces []geometry.Piece) ([]foldup.FaceReport, []foldup.Fault) {
	body := b.body(j)
	var coverings []geometry.Piece
	linings := map[geometry.Face]bool{}
	var faults []foldup.Fault
	for _, p := range pieces {
		if p.Over == "divider" && p.Count != 2*j.Dividers() {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "not one for each face of each divider"})
		}
		if p.Name == dividerStrip && p.Count != len(p.Seats)*j.Dividers() {
			faults = append(faults, foldup.Fault{Kind: foldup.Misfit, Piece: p.Name, What: "not one for each place on each divider"})
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
	v, wrong := body.Cover(coverings, j.thick)
	faults = append(faults, wrong...)
	var out []foldup.FaceReport
	for i, s := range v.Surfaces {
		out = append(out, v.Report(i))
		if j.Lining.Thickness > 0 && s.Inside && !linings[s.Face] {
			faults = append(faults, foldup.Fault{Kind: foldup.Bare, Piece: "divider lining", Face: s.Face, What: "missing"})
		}
		var lap Length
		for _, p := range v.In(s.Plane) {
			if past := foldup.Without(p.Shape, s.Outline()); foldup.Solid(past, foldup.Sliver) {
				f := foldup.Fault{Kind: foldup.Overhang, Piece: p.Piece, Face: s.Face, At: past.Bounds(), What: "it reaches past the divider"}
				if f.At.Min.Y < s.Extent.Min.Y-foldup.Sliver || f.At.Max.Y > s.Extent.Max.Y+foldup.Sliver {
					f.Kind, f.What = foldup.Collision, "it runs into head or tail wall"
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
