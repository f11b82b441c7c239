package box

import (
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// report is the proof of a box, with what it closes to.
type report struct {
	plan.Proof
	closed closed
	way    foldup.Body // what the hinge lies on
}

// prove folds the cloth onto each tray and onto the case, and the hinge into its joints,
// knowing the pieces by their outlines, cuts, folds and seats alone; then it shuts the box
// and measures. Of the job it takes thicknesses and the joint, and what is to come out.
func prove(pieces []geometry.Piece, j Job) report {
	var r report
	small, faults := stand(pieces, smallName, j.Board, j.Walls)
	large, wrong := stand(pieces, largeName, j.Board, j.Walls)
	faults = append(faults, wrong...)
	c, wrong := layCase(pieces, j.caseBoard(), j.joint())
	if faults = append(faults, wrong...); len(faults) > 0 {
		return report{Proof: plan.Proof{Faults: faults}}
	}
	// They stand apart, as they are drawn: the trays behind the case.
	apart := 0.2 * c.High
	small.at = space.Vec{X: c.From[2], Y: c.High + apart}
	large.at, large.plane = space.Vec{X: c.wide() - large.wide, Y: c.High + apart}, planes
	c.Plane = 2 * planes

	trays := make([]foldedTray, 2)
	layers := map[string]Length{
		ofTray(smallName, clothOf): j.Cloth, ofTray(largeName, clothOf): j.Cloth, smallLining: j.Lining, largeLining: j.lidLining(),
		caseClothName: j.caseCloth(), hingeName: j.hingeCloth(),
	}
	thick := func(p geometry.Piece) Length { return layers[p.Name] }
	hinge, _ := geometry.Find(pieces, hingeName)
	onFloors := endPanels(hinge)
	_, hingeHigh := hinge.Size()
	for i, s := range []standing{small, large} {
		lining := []string{smallLining, largeLining}[i]
		own := named(pieces, ofTray(s.name, clothOf), lining)
		v, wrong := s.body().Cover(own, thick)
		for n, p := range v.Patches {
			if p.Piece == lining {
				v.Patches[n].Order = liningTurn
			}
		}
		v.Patches = append(v.Patches, s.hinged(onFloors[1-i], hingeHigh, j.hingeCloth())...)
		v.Closed = lapped * j.Cloth
		faces, more := v.Look(own, func() []foldup.Fault { return overlaps(s, v) })
		r.Faces, r.Faults = append(r.Faces, faces...), append(append(r.Faults, wrong...), more...)
		trays[i] = folded(s, v)
	}
	cloth := named(pieces, caseClothName)
	v, wrong := c.body(trays[0].outside(), trays[1].outside()).Cover(cloth, thick)
	in := c.turnedIn(v)
	v.Patches = append(v.Patches, c.hinged(hinge, j.hingeCloth()))
	faces, more := v.Look(cloth)
	r.Faces, r.Faults = append(r.Faces, faces...), append(append(r.Faults, wrong...), more...)

	c.Plane += laidflat.Planes
	up := j.Board + j.Cloth + j.caseCloth()
	r.way = c.way(up, in, small, large)
	along := named(pieces, hingeName)
	w, wrong := r.way.Cover(along, thick)
	_, more = w.Look(along) // the trays and the case tell what lies there
	r.Faults = append(append(r.Faults, wrong...), more...)

	r.closed = closed{small: trays[0], large: trays[1], laid: c, k: j.caseCloth(), q: j.hingeCloth()}
	r.shut(j)
	r.show(pieces)
	return r
}

// lapped is what part of its thickness cloth closes: in a corner inside, where a flap ends as far
// from the wall beside it as cloth is thick, a lap has to lie beneath.
const lapped = 0.9

// overlaps finds flaps of a tray's cloth that lie on each other under the base or on the
// floor, where none is meant to; webs pinched over a corner are left out.
func overlaps(s standing, t foldup.Covered) []foldup.Fault {
	var out []foldup.Fault
	for _, face := range []geometry.Face{s.f.under, s.f.floor} {
		flaps := slices.DeleteFunc(t.On(face), func(p foldup.Patch) bool { return p.Piece != ofTray(s.name, clothOf) })
		for i, a := range flaps {
			for _, b := range flaps[i+1:] {
				both := foldup.Meet(a.Shape, b.Shape)
				if at := both.Bounds(); foldup.Solid(both, foldup.Sliver) && max(at.Width(), at.Height()) > s.web() {
					out = append(out, foldup.Fault{Kind: foldup.Collision, Piece: a.Piece, Face: face, At: at, What: "two flaps lie on each other"})
				}
			}
		}
	}
	return out
}

// named returns the pieces with some names.
func named(pieces []geometry.Piece, names ...string) []geometry.Piece {
	var out []geometry.Piece
	for _, n := range names {
		if p, ok := geometry.Find(pieces, n); ok {
			out = append(out, p)
		}
	}
	return out
}

// endPanels returns how wide the hinge is up to its first fold, and from its last one:
// what lies on the floor of the large and of the small tray.
func endPanels(hinge geometry.Piece) [2]Length {
	w, _ := hinge.Size()
	first, last := w, Length(0)
	for _, f := range hinge.Folds {
		x := f.Vertices[0].X
		first, last = min(first, x), max(last, x)
	}
	return [2]Length{first, w - last}
}

// hinged returns what of the hinge lies on the spine, in the middle from head to tail.
func (c laid) hinged(hinge geometry.Piece, thick Length) foldup.Patch {
	_, high := hinge.Size()
	low := (c.High - high) / 2
	box := geometry.Bx(c.From[1], low, c.From[1]+c.spine(), low+high)
	return foldup.Patch{Piece: hingeName, Order: hingeTurn, Thick: thick, Plane: c.Plane, Shape: polygon.Box(box)}
}

// shut closes the box and measures what comes of it.
func (r *report) shut(j Job) {
	c := r.closed
	room := c.room()
	r.Compare("room between the trays from head to tail", room.Height, j.Room.Height, 0)
	r.Compare("room between the trays at the fore-edge", room.Width, j.Room.Width, 0)
	r.Compare("room above the rim of the small tray", room.Thickness, j.Room.Depth, j.lidLining()) // where the lining ends within the wall
	beyond := c.forBook().Less(j.Book().Size())
	r.Compare("room for the book from head to tail", beyond.Height, j.Clearance.Height-2*j.Cloth, 0)
	r.Compare("room for the book at the fore-edge", beyond.Width, j.Clearance.Width-j.Cloth, 0)
	r.Compare("room for the book between the floors", beyond.Thickness, j.Clearance.Thickness+j.Room.Depth-2*j.hingeCloth(), 0)
	where := []string{"from head to tail", "at the fore-edge", "between the floors"}
	for i, left := range beyond.Each() {
		if left < -foldup.Sliver {
			r.Fault(foldup.Tight, "the book has no room %s: %.3f mm", where[i], left.MM())
		}
	}
	ends, fore := c.squares()
	r.Compare("square at head and tail", ends, j.Square, 0)
	r.Compare("square at the fore-edge", fore, j.Square, 0)
	r.Compare("spine", c.laid.spine(), c.overJoints(), 0)
	if off := c.offSpine(); off < spare-mostPressed-foldup.Sliver {
		r.Fault(foldup.Tight, "the spine presses on the ends of the walls by %.3f mm", -off.MM())
	}
	if x, lies := c.stand(), c.k+c.q; x < lies-foldup.Sliver {
		r.Fault(foldup.Tight, "the spine presses on its turn-in and hinge: a joint of %.2f mm leaves %.2f mm where %.2f mm lie", j.joint().MM(), x.MM(), lies.MM())
	}
	out, outside := c.outside(), j.outside()
	r.Compare("closed, height outside", out.Height, outside.Height, 0)
	r.Compare("closed, width outside", out.Width, outside.Width, 0)
	r.Compare("closed, thickness outside", out.Thickness, outside.Thickness, 0)
	for _, t := range c.turned() {
		r.Fault(foldup.Collision, "%s", t)
	}
	r.Clearances = []plan.Fact{
		plan.LeftFact("book", "for the book, at its tightest", beyond),
		plan.LeftFact("trays", "between the trays, at the tightest", room),
	}
	r.Folded = []plan.Fact{
		plan.SizeFact("small_tray", "small tray, covered", "wide", c.small.outside()),
		plan.SizeFact("large_tray", "large tray, covered", "wide", c.large.outside()),
		plan.SizeFact("outside", "outside, closed", "wide", out),
		{Key: "spine", Name: "between the spine and the ends of the walls", Text: "%s", Parts: []plan.Part{{Key: "left", Length: c.offSpine()}}},
	}
}
