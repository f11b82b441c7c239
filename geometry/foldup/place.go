package foldup

import (
	"fmt"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
)

// patch is a region of a piece where it ends up: on a face of the carcass, in
// that face's own coordinates.
type patch struct {
	piece  string
	seat   int
	order  int  // how many folds from the part that is laid first
	tucked bool // it gets where it is by a crease at a corner, not by a fold
	thick  Length
	plane  int              // it lies in
	flat   []geometry.Point // in the piece's coordinates
	shape  geom.Geometry    // in the plane's coordinates
	tab    *tabEnd          // of a tab turned over the edge of a hole
}

// seated lays a piece on its seat and folds it up, region by region, each
// hanging on its longest fold.
func (c Carcass) seated(p geometry.Piece, seat geometry.Seat, k Conditions, surfaces []surface) ([]patch, []Fault) {
	regions := split(p)
	root, ok := c.lay(seat, surfaces)
	if !ok {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: "its place does not fit the carcass: the ruled lines and the boards differ"}}
	}
	first := -1
	var most float64
	home := index(surfaces, seat.Face)
	for i, r := range regions {
		if a := area(meet(shape(project(root, r.outline, surfaces[home])), surfaces[home].shape)); a > most {
			first, most = i, a
		}
	}
	if first < 0 {
		return nil, []Fault{{Kind: Misfit, Piece: p.Name, What: "does not reach the face it is laid on"}}
	}

	frames := make([]*Frame, len(regions))
	order := make([]int, len(regions))
	tucked := make([]bool, len(regions))
	frames[first] = &root
	for _, l := range hung(regions, first) {
		j := l.join
		along, out := j.ways()
		f := frames[l.from].hinged(j.from, along, out, j.kind)
		frames[j.to] = &f
		order[j.to] = order[l.from] + 1
		tucked[j.to] = tucked[l.from] || j.kind != fold
	}

	var patches []patch
	var faults []Fault
	for i, r := range regions {
		if frames[i] == nil && r.pinched() {
			continue
		}
		if frames[i] == nil && r.tab() {
			if host := r.host(); frames[host] != nil {
				ps, fs := c.turned(p, r, *frames[host], order[host]+3, k, surfaces)
				patches, faults = append(patches, ps...), append(faults, fs...)
				continue
			}
		}
		if frames[i] == nil {
			faults = append(faults, Fault{Kind: Misfit, Piece: p.Name, What: fmt.Sprintf("a part at %s hangs on nothing", where(r.outline))})
			continue
		}
		on := landing(*frames[i], surfaces)
		if on < 0 {
			if !tucked[i] {
				faults = append(faults, Fault{Kind: Overhang, Piece: p.Name, What: fmt.Sprintf("the part at %s lands on no face", where(r.outline))})
			}
			continue
		}
		patches = append(patches, patch{
			piece: p.Name, order: order[i], tucked: tucked[i], thick: k.Layer[p.Material],
			plane: surfaces[on].plane, flat: r.outline, shape: shape(project(*frames[i], r.outline, surfaces[on])),
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

// lay gives the frame of a piece whose back lies on its seat.
func (c Carcass) lay(seat geometry.Seat, surfaces []surface) (Frame, bool) {
	a, b := seat.At[0], seat.At[1]
	va, vb := c.corner(a.On), c.corner(b.On)
	face := surfaces[index(surfaces, seat.Face)]
	if face.inside {
		va, vb = c.within(va), c.within(vb)
	}
	d, v := b.At.Sub(a.At), vb.sub(va)
	long := a.At.Distance(b.At)
	// The ruled distance must be that of the corners.
	if (v.dot(v) - long*long).Abs() > 1e-4*(1+long) {
		return Frame{}, false
	}
	n := face.normal.mul(-1) // the back looks at the board
	if seat.Shown {
		n = face.normal
	}
	e := v.unit()
	f := n.cross(e) // e, f, n are right-handed
	ex, ey := d.X/long, d.Y/long
	// The plane's X is ex along e and -ey along f; its Y is ey and ex.
	u := e.mul(ex).sub(f.mul(ey))
	w := e.mul(ey).add(f.mul(ex))
	return Frame{O: va.sub(u.mul(a.At.X)).sub(w.mul(a.At.Y)), U: u, V: w}, true
}

func index(surfaces []surface, name geometry.Face) int {
	for i, s := range surfaces {
		if s.name == name {
			return i
		}
	}
	return -1
}

// landing gives a surface in whose plane a region lies with its back to the
// board, or on another layer of covering where it is pleated.
func landing(f Frame, surfaces []surface) int {
	n := f.normal()
	for i, s := range surfaces {
		if n.dot(s.normal).Abs() > 1-1e-9 && f.O.sub(s.frame.O).dot(s.normal).Abs() < 1e-4 {
			return i
		}
	}
	return -1
}

// project gives a region's outline in a surface's coordinates.
func project(f Frame, outline []geometry.Point, s surface) []geometry.Point {
	out := make([]geometry.Point, len(outline))
	for i, p := range outline {
		out[i] = s.frame.flat(f.At(p))
	}
	return out
}

func corners(b geometry.Box) []geometry.Point { return geometry.Rectangle(b).Flatten(1) }

// where names the middle of a region in the piece's coordinates.
func where(outline []geometry.Point) string {
	c := geometry.Polygon(outline...).Bounds().Center()
	return fmt.Sprintf("%.1f, %.1f mm", c.X.MM(), c.Y.MM())
}
