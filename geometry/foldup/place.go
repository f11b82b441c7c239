package foldup

import (
	"fmt"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/space"
)

// Patch is a region of a piece where it ends up: in the plane of a face of the
// body.
type Patch struct {
	Piece  string
	Seat   int
	Order  int              // how many folds from the part that is laid first
	Tucked bool             // it gets where it is by a crease at a corner, not by a fold
	Thick  Length           //
	Plane  int              // it lies in
	Shape  geom.Geometry    // in the plane's coordinates
	Tab    *TabEnd          // of a tab turned over the edge of a hole
	flat   []geometry.Point // in the piece's coordinates
}

// Seated lays a piece on one of its seats and folds it up, region by region, each
// hanging on its longest fold. thick is how thick a layer of it is.
func (b Body) Seated(p geometry.Piece, seat int, thick Length) ([]Patch, []Fault) {
	regions := split(p)
	root, ok := b.Place(p.Seats[seat])
	if !ok {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: "its place does not fit the carcass: the ruled lines and the boards differ"}}
	}
	first := -1
	var most float64
	home := b.Surfaces[b.Find(p.Seats[seat].Face)]
	for i, r := range regions {
		if a := area(Meet(shape(project(root, r.outline, home)), home.Outline())); a > most {
			first, most = i, a
		}
	}
	if first < 0 {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: "does not reach the face it is laid on"}}
	}

	frames := make([]*space.Frame, len(regions))
	order := make([]int, len(regions))
	tucked := make([]bool, len(regions))
	frames[first] = &root
	for _, l := range hung(regions, first) {
		j := l.join
		along, out := j.ways()
		f := hinged(*frames[l.from], j.from, along, out, j.kind)
		frames[j.to] = &f
		order[j.to] = order[l.from] + 1
		tucked[j.to] = tucked[l.from] || j.kind != fold
	}

	var patches []Patch
	var faults []Fault
	for i, r := range regions {
		if frames[i] == nil && r.pinched() {
			continue
		}
		if frames[i] == nil && r.tab() {
			if host := r.host(); frames[host] != nil {
				ps, fs := b.turnedTab(p, r, *frames[host], thick)
				for n := range ps {
					ps[n].Seat, ps[n].Order = seat, order[host]+3 // it is turned when all else is
				}
				patches, faults = append(patches, ps...), append(faults, fs...)
				continue
			}
		}
		if frames[i] == nil {
			faults = append(faults, Fault{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("a part at %s hangs on nothing", where(r.outline))})
			continue
		}
		on := b.landing(*frames[i])
		if on < 0 {
			if !tucked[i] {
				faults = append(faults, Fault{Kind: Overhang, Piece: p.Name, What: fmt.Sprintf("the part at %s lands on no face", where(r.outline))})
			}
			continue
		}
		patches = append(patches, Patch{
			Piece: p.Name, Seat: seat, Order: order[i], Tucked: tucked[i], Thick: thick,
			Plane: b.Surfaces[on].Plane, flat: r.outline, Shape: shape(project(*frames[i], r.outline, b.Surfaces[on])),
		})
	}
	return patches, faults
}

// link is a hinge from a region that is laid to one that hangs on it.
type link struct {
	from int
	join join
}

// hung gives what every region hangs on, in the order they are laid: from what
// is laid, always the longest hinge to what is not. Webs and the tabs of a hole
// hang on nothing.
func hung(regions []region, first int) []link {
	laid := make([]bool, len(regions))
	laid[first] = true
	var out []link
	for {
		var best link
		long, found := Length(0), false
		for i, r := range regions {
			if !laid[i] {
				continue
			}
			for _, j := range r.joins {
				if laid[j.to] || j.kind == give || j.kind == round {
					continue
				}
				if l := hinge(r, j); !found || l > long+1e-9 {
					best, long, found = link{i, j}, l, true
				}
			}
		}
		if !found {
			return out
		}
		laid[best.join.to] = true
		out = append(out, best)
	}
}

// ways gives the unit steps along a join, and across it away from the region,
// which keeps its own part on the left.
func (j join) ways() (along, out geometry.Point) {
	along = j.at.Sub(j.from).Mul(1 / j.length().MM())
	return along, geometry.Pt(along.Y, -along.X)
}

// hinge gives the length of all that two regions share of one kind.
func hinge(r region, j join) Length {
	var l Length
	for _, o := range r.joins {
		if o.to == j.to && o.kind == j.kind {
			l += o.length()
		}
	}
	return l
}

// Place returns the frame of a piece that lies on its seat; ok is false where the
// ruled distance is not that of the corners, or the body lacks what it names.
func (b Body) Place(seat geometry.Seat) (f space.Frame, ok bool) {
	on := b.Find(seat.Face)
	from, to := seat.At[0], seat.At[1]
	va, okA := b.Corners[from.On]
	vb, okB := b.Corners[to.On]
	if on < 0 || !okA || !okB {
		return space.Frame{}, false
	}
	d, v := to.At.Sub(from.At), vb.Sub(va)
	long := from.At.Distance(to.At)
	if (v.Dot(v) - long*long).Abs() > 1e-4*(1+long) {
		return space.Frame{}, false
	}
	n := b.Surfaces[on].Normal.Mul(-1) // the back looks at the board
	if seat.Shown {
		n = b.Surfaces[on].Normal
	}
	e := v.Unit()
	across := n.Cross(e) // e, across, n are right-handed
	ex, ey := d.X/long, d.Y/long
	// The plane's X is ex along e and -ey along across; its Y is ey and ex.
	u := e.Mul(ex).Sub(across.Mul(ey))
	w := e.Mul(ey).Add(across.Mul(ex))
	return space.Frame{O: va.Sub(u.Mul(from.At.X)).Sub(w.Mul(from.At.Y)), U: u, V: w}, true
}

// landing returns a surface in whose plane a region lies with its back to the
// board, or on another layer of covering where it is pleated; -1 for none.
func (b Body) landing(f space.Frame) int {
	n := f.Normal()
	for i, s := range b.Surfaces {
		if n.Dot(s.Normal).Abs() > 1-1e-9 && f.O.Sub(s.Frame.O).Dot(s.Normal).Abs() < 1e-4 {
			return i
		}
	}
	return -1
}

// project returns a region's outline in a surface's coordinates.
func project(f space.Frame, outline []geometry.Point, s Surface) []geometry.Point {
	out := make([]geometry.Point, len(outline))
	for i, p := range outline {
		out[i] = s.Frame.Flat(f.At(p))
	}
	return out
}

// where names the middle of a region in the piece's coordinates.
func where(outline []geometry.Point) string {
	c := geometry.Polygon(outline...).Bounds().Center()
	return fmt.Sprintf("%.1f, %.1f mm", c.X.MM(), c.Y.MM())
}
