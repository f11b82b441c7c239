package foldup

import (
	"slices"

	"forel/geometry"
	"forel/geometry/parallel"
	"forel/geometry/polygon"
)

// FaceReport tells what lies on one face.
type FaceReport struct {
	Surface
	Layers  []Patch
	Stack   Length // inside: the thickest pile of covering, tucks left out
	Corners Length // inside: the thickest pile, tucks counted
	Again   bool   // like a face that comes before it: neither listed nor drawn flat
}

// Covered is a body with its coverings on.
type Covered struct {
	Body
	Patches []Patch
	Closed  Length // a gap of no more mean breadth is closed by the thickness beside it
}

// Cover folds pieces onto a body at those of their seats that are on a face of it.
// layer tells how thick a layer of each is.
func (b Body) Cover(pieces []geometry.Piece, layer func(geometry.Piece) Length) (Covered, []Fault) {
	type sitting struct {
		piece geometry.Piece
		seat  int
		on    []Patch
		wrong []Fault
	}
	var all []sitting
	for _, p := range pieces {
		for i, seat := range p.Seats {
			if b.Find(seat.Face) >= 0 {
				all = append(all, sitting{piece: p, seat: i})
			}
		}
	}
	parallel.Each(len(all), func(i int) {
		s := &all[i]
		s.on, s.wrong = b.Seated(s.piece, s.seat, layer(s.piece))
	})
	c := Covered{Body: b}
	var faults []Fault
	for _, s := range all {
		c.Patches, faults = append(c.Patches, s.on...), append(faults, s.wrong...)
	}
	for _, p := range c.Patches {
		c.Closed = max(c.Closed, p.Thick)
	}
	return c, faults
}

// Look returns a report of every face, and what is wrong: board left bare, flaps
// past their face, on one spot, or against a wall, cuts to the corner of a
// board, slits that show. also are further looks, done side by side with these.
func (c Covered) Look(pieces []geometry.Piece, also ...func() []Fault) ([]FaceReport, []Fault) {
	reports := make([]FaceReport, len(c.Surfaces))
	var looks []func() []Fault
	for i := range c.Surfaces {
		looks = append(looks,
			func() []Fault { reports[i] = c.Report(i); return c.Bare(i) },
			func() []Fault { return append(c.overhang(i), c.Collisions(i)...) })
	}
	if c.Stiff {
		looks = append(looks, c.inOnePlace)
	}
	for _, n := range c.Inner {
		looks = append(looks, func() []Fault { return c.against(n) })
	}
	looks = append(looks,
		func() []Fault { return corners(pieces) },
		func() []Fault { return c.slitsOutside(pieces) })
	looks = append(looks, also...)
	found := make([][]Fault, len(looks))
	parallel.Each(len(looks), func(i int) { found[i] = looks[i]() })
	return reports, slices.Concat(found...)
}

// In returns what lies in a plane.
func (c Covered) In(plane int) []Patch {
	var out []Patch
	for _, p := range c.Patches {
		if p.Plane == plane {
			out = append(out, p)
		}
	}
	return out
}

// On returns what lies in the plane of a face.
func (c Covered) On(face geometry.Face) []Patch { return c.In(c.Surfaces[c.Find(face)].Plane) }

// Under returns the thickest pile on a face within a box of it.
func (c Covered) Under(face geometry.Face, in geometry.Box) Length {
	return Pile(Within(c.On(face), in))
}

// Within returns what of patches lies in a box. Of those wholly in it nothing is cut off.
func Within(patches []Patch, in geometry.Box) []Patch {
	var there []Patch
	for _, p := range patches {
		if !in.Grow(Sliver).Contains(p.Shape.Bounds()) {
			p.Shape = Meet(p.Shape, polygon.Box(in))
		}
		if Solid(p.Shape, Sliver) {
			there = append(there, p)
		}
	}
	return there
}

// Report lists the layers on a face and the thickest pile of them.
func (c Covered) Report(i int) FaceReport {
	s := c.Surfaces[i]
	r := FaceReport{Surface: s}
	patches := c.In(s.Plane)
	for _, p := range patches {
		if p.Shape.Bounds().Intersect(s.Extent).Grow(-Sliver).Empty() {
			continue // on another face of the plane
		}
		r.Layers = append(r.Layers, p)
	}
	if c.Stiff {
		r.inLayers()
	}
	if s.Inside || c.Stiff {
		flat := slices.DeleteFunc(slices.Clone(patches), func(p Patch) bool { return p.Tucked })
		r.Stack, r.Corners = Pile(flat), Pile(patches)
	}
	return r
}

// Pile returns the greatest thickness that lies anywhere.
func Pile(patches []Patch) Length {
	var most Length
	for _, c := range Heaps(patches) {
		most = max(most, c.Thick)
	}
	return most
}

// Heap is where patches lie on each other, and how thick they are together.
type Heap struct {
	Shape polygon.Shape
	Thick Length
}

// Heaps returns every heap of patches, the single patch among them.
func Heaps(patches []Patch) []Heap {
	var cells []Heap
	for _, p := range patches {
		s := p.Shape
		for _, c := range cells { // those there before; what is added lies on top
			if slight(c.Shape, s) {
				continue
			}
			if both := Meet(c.Shape, s); Solid(both, Sliver) {
				cells = append(cells, Heap{both, c.Thick + p.Thick})
			}
		}
		cells = append(cells, Heap{s, p.Thick})
	}
	return cells
}
