package foldup

import (
	"runtime"
	"slices"

	"golang.org/x/sync/errgroup"

	"forel/geometry"
	"forel/geometry/polygon"
)

// Layer is a patch of covering on a face.
type Layer struct {
	Piece  string
	Order  int           // how many folds from the part that is laid first
	Tucked bool          // pinched or bent at a corner rather than folded
	Shape  polygon.Shape // in the face's coordinates; it may reach past the face
}

// FaceReport tells what lies on one face.
type FaceReport struct {
	Face    geometry.Face
	Extent  geometry.Box // in the face's own coordinates: X along, Y up or toward the mouth
	Frame   Frame        // where those coordinates lie in the case
	Normal  Vec          // the way the face looks, out of the board
	Inside  bool
	Layers  []Layer
	Stack   Length // the thickest pile of covering, tucks left out
	Corners Length // the thickest pile, tucks counted
}

// Report is the proof of one case: what is wrong, face by face what lies
// where, and the clearance that is left.
type Report struct {
	Carcass   Carcass
	Faces     []FaceReport
	Dividers  []DividerReport // from left to right
	Faults    []Fault
	Clearance Clearance
}

// Clearance is what is left between the book and all that is inside the case.
type Clearance struct {
	BodyHeight, BodyWidth, BodyThickness Length // where nothing is turned in
	MouthHeight, MouthThickness          Length // at the mouth
	MouthCorners                         Length // in height, where tabs lie over each other in the corners
}

// Sound tells whether nothing is wrong.
func (r Report) Sound() bool { return len(r.Faults) == 0 }

// Conditions are what is known of a case beside its flat pieces.
type Conditions struct {
	Edge   Length // thickness of a board as it is joined, with a lining pasted before
	Lining Length // thickness of a lining pasted in afterwards, else zero
	// What stands in the case: the tallest, the deepest, and the thickness of
	// all with the dividers between them.
	Height, Width, Thickness Length
	Compartments             int // one or more
	Layer                    map[geometry.Material]Length
	Lined                    bool   // every board is lined
	LinedShort               Length // what a lining put in afterwards stays back from the mouth
	LinedStep                Length // how much deeper than what is turned in beside it such a lining may be narrow
	SidesOnly                bool   // only the sides are covered, but for a border at spine, head and tail
	Border                   Length
	Divider                  Length // thickness of a divider with its linings
	// How far the straight end of a tab may leave the edge of a thumb hole, and how
	// far two tabs may part over the thickness of the board.
	HoleChord, HoleGap Length
}

// Prove folds the pieces up and looks at the result.
func Prove(pieces []geometry.Piece, k Conditions) Report {
	c, faults := Build(pieces, k.Edge)
	if len(faults) > 0 {
		return Report{Faults: faults}
	}
	v := view{surfaces: c.surfaces(), known: k}
	v.patches, faults = c.covered(pieces, k, v.surfaces)
	for _, p := range v.patches {
		v.closed = max(v.closed, p.thick)
	}
	r := Report{Carcass: c, Faults: faults, Faces: make([]FaceReport, len(v.surfaces))}
	var looks []func() []Fault
	for i := range v.surfaces {
		looks = append(looks,
			func() []Fault { r.Faces[i] = v.face(i); return v.bare(i) },
			func() []Fault { return append(v.overhang(i), v.collisions(i)...) })
	}
	looks = append(looks,
		func() []Fault { return v.corners(pieces) },
		v.against,
		func() []Fault { return v.rims(c) },
		func() []Fault { return v.slitsOutside(pieces) },
		func() []Fault { return c.linings(pieces, k) })
	if k.Lining > 0 {
		looks = append(looks, func() []Fault { return v.linedAfter(c, pieces) })
	}
	found := make([][]Fault, len(looks))
	together(len(looks), func(i int) { found[i] = looks[i]() })
	r.Faults = append(r.Faults, slices.Concat(found...)...)
	r.stand(v, pieces)
	r.clear(k)
	return r
}

// covered folds every covering onto the carcass.
func (c Carcass) covered(pieces []geometry.Piece, k Conditions, surfaces []surface) (patches []patch, faults []Fault) {
	type sitting struct {
		piece geometry.Piece
		seat  int
		on    []patch
		wrong []Fault
	}
	var all []sitting
	for _, p := range pieces {
		if p.Material == geometry.Board || p.Material == geometry.Lining {
			continue
		}
		for i, seat := range p.Seats {
			if index(surfaces, seat.Face) >= 0 { // not of a divider
				all = append(all, sitting{piece: p, seat: i})
			}
		}
	}
	together(len(all), func(i int) {
		s := &all[i]
		s.on, s.wrong = c.seated(s.piece, s.piece.Seats[s.seat], k, surfaces)
		for n := range s.on {
			s.on[n].seat = s.seat
		}
	})
	for _, s := range all {
		patches, faults = append(patches, s.on...), append(faults, s.wrong...)
	}
	return patches, faults
}

// together does things that don't touch each other, on all processors.
func together(n int, do func(i int)) {
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range n {
		g.Go(func() error { do(i); return nil })
	}
	g.Wait() // none gives an error
}

// view is a case with its coverings on.
type view struct {
	surfaces []surface
	patches  []patch
	closed   Length // a gap of no more mean breadth is closed by the thickness beside it
	known    Conditions
}

// on gives what lies in the plane of a surface.
func (v view) on(i int) []patch {
	var out []patch
	for _, p := range v.patches {
		if p.plane == v.surfaces[i].plane {
			out = append(out, p)
		}
	}
	return out
}

// face lists the layers on a face and the thickest pile of them.
func (v view) face(i int) FaceReport {
	s := v.surfaces[i]
	r := FaceReport{Face: s.name, Extent: s.extent, Frame: s.frame, Normal: s.normal, Inside: s.inside}
	patches := v.on(i)
	for _, p := range patches {
		if p.shape.Bounds().Intersect(s.extent).Grow(-sliver).Empty() {
			continue // on another edge of the mouth
		}
		r.Layers = append(r.Layers, Layer{p.piece, p.order, p.tucked, p.shape})
	}
	if s.inside {
		flat := slices.DeleteFunc(slices.Clone(patches), func(p patch) bool { return p.tucked })
		r.Stack, r.Corners = pile(flat), pile(patches)
	}
	return r
}

// pile gives the greatest thickness that lies anywhere.
func pile(patches []patch) Length {
	var most Length
	for _, c := range piles(patches) {
		most = max(most, c.thick)
	}
	return most
}

// heap is where patches lie on each other, and how thick they are together.
type heap struct {
	shape polygon.Shape
	thick Length
}

// piles gives every heap of patches, the single patch among them.
func piles(patches []patch) []heap {
	var cells []heap
	for _, p := range patches {
		s := p.shape
		for _, c := range cells { // those there before; what is added lies on top
			if slight(c.shape, s) {
				continue
			}
			if both := meet(c.shape, s); solid(both, sliver) {
				cells = append(cells, heap{both, c.thick + p.thick})
			}
		}
		cells = append(cells, heap{s, p.thick})
	}
	return cells
}
