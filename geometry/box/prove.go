package box

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/laidflat"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
)

// conditions are what is known of a box beside its flat pieces.
type conditions struct {
	Walls                   string
	Tray, Case              Length // boards
	Cloth, CaseCloth, Hinge Length // cloths
	Lining, LidLining       Length
	Joint                   Length
	Book                    plan.Size // as measured
	Clearance               plan.Size // what the small tray is to have beyond it
	Room                    Room      // between the trays
	Square                  Length
	Outside                 plan.Size // closed
}

func (j Job) conditions() conditions {
	return conditions{
		Walls: j.Walls, Tray: j.Board, Case: j.caseBoard(), Cloth: j.Cloth, CaseCloth: j.caseCloth(), Hinge: j.hingeCloth(),
		Lining: j.Lining, LidLining: j.lidLining(), Joint: j.joint(),
		Book:      j.Book().Size(),
		Clearance: j.Clearance, Room: j.Room, Square: j.Square, Outside: j.outside(),
	}
}

// report is the proof of a box, with what it closes to.
type report struct {
	plan.Proof
	closed closed
	way    foldup.Body // what the hinge lies on
}

// prove folds the cloth onto each tray and onto the case, and the hinge into its joints,
// knowing the pieces by their outlines, cuts, folds and seats alone; then it shuts the box
// and measures.
func prove(pieces []geometry.Piece, k conditions) report {
	var r report
	small, faults := stand(pieces, smallName, k.Tray, k.Walls)
	large, wrong := stand(pieces, largeName, k.Tray, k.Walls)
	faults = append(faults, wrong...)
	c, wrong := layCase(pieces, k.Case, k.Joint)
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
		ofTray(smallName, clothOf): k.Cloth, ofTray(largeName, clothOf): k.Cloth, smallLining: k.Lining, largeLining: k.LidLining,
		caseClothName: k.CaseCloth, hingeName: k.Hinge,
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
		v.Patches = append(v.Patches, s.hinged(onFloors[1-i], hingeHigh, k.Hinge)...)
		v.Closed = lapped * k.Cloth
		faces, more := v.Look(own, func() []foldup.Fault { return overlaps(s, v) })
		r.Faces, r.Faults = append(r.Faces, faces...), append(append(r.Faults, wrong...), more...)
		trays[i] = folded(s, v)
	}
	cloth := named(pieces, caseClothName)
	v, wrong := c.body(trays[0].outside(), trays[1].outside()).Cover(cloth, thick)
	in := c.turnedIn(v)
	v.Patches = append(v.Patches, c.hinged(hinge, k.Hinge))
	faces, more := v.Look(cloth)
	r.Faces, r.Faults = append(r.Faces, faces...), append(append(r.Faults, wrong...), more...)

	c.Plane += laidflat.Planes
	up := k.Tray + k.Cloth + k.CaseCloth
	r.way = c.way(up, in, small, large)
	along := named(pieces, hingeName)
	w, wrong := r.way.Cover(along, thick)
	_, more = w.Look(along) // the trays and the case tell what lies there
	r.Faults = append(append(r.Faults, wrong...), more...)

	r.closed = closed{small: trays[0], large: trays[1], laid: c, k: k.CaseCloth, q: k.Hinge}
	r.shut(k)
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
func (r *report) shut(k conditions) {
	c := r.closed
	fault := func(kind foldup.Kind, what string, args ...any) {
		r.Faults = append(r.Faults, foldup.Fault{Kind: kind, What: fmt.Sprintf(what, args...)})
	}
	within := func(what string, is, want, more Length) {
		switch {
		case is < want-foldup.Sliver:
			fault(foldup.Tight, "%s: %.3f mm is %.3f mm too little", what, is.MM(), (want - is).MM())
		case is > want+more+foldup.Sliver:
			fault(foldup.Misfit, "%s: %.3f mm is %.3f mm too much", what, is.MM(), (is - want - more).MM())
		}
	}
	compare := func(what string, is, want Length) { within(what, is, want, 0) }
	room := c.room()
	compare("room between the trays from head to tail", room.Height, k.Room.Height)
	compare("room between the trays at the fore-edge", room.Width, k.Room.Width)
	within("room above the rim of the small tray", room.Thickness, k.Room.Depth, k.LidLining) // where the lining ends within the wall
	beyond := c.forBook().Less(k.Book)
	compare("room for the book from head to tail", beyond.Height, k.Clearance.Height-2*k.Cloth)
	compare("room for the book at the fore-edge", beyond.Width, k.Clearance.Width-k.Cloth)
	compare("room for the book between the floors", beyond.Thickness, k.Clearance.Thickness+k.Room.Depth-2*k.Hinge)
	where := []string{"from head to tail", "at the fore-edge", "between the floors"}
	for i, left := range []Length{beyond.Height, beyond.Width, beyond.Thickness} {
		if left < -foldup.Sliver {
			fault(foldup.Tight, "the book has no room %s: %.3f mm", where[i], left.MM())
		}
	}
	ends, fore := c.squares()
	compare("square at head and tail", ends, k.Square)
	compare("square at the fore-edge", fore, k.Square)
	compare("spine", c.laid.spine(), c.overJoints())
	if off := c.offSpine(); off < spare-mostPressed-foldup.Sliver {
		fault(foldup.Tight, "the spine presses on the ends of the walls by %.3f mm", -off.MM())
	}
	if x, lies := c.stand(), c.k+c.q; x < lies-foldup.Sliver {
		fault(foldup.Tight, "the spine presses on its turn-in and hinge: a joint of %.2f mm leaves %.2f mm where %.2f mm lie", k.Joint.MM(), x.MM(), lies.MM())
	}
	out := c.outside()
	compare("closed, height outside", out.Height, k.Outside.Height)
	compare("closed, width outside", out.Width, k.Outside.Width)
	compare("closed, thickness outside", out.Thickness, k.Outside.Thickness)
	for _, t := range c.turned() {
		fault(foldup.Collision, "%s", t)
	}
	r.Clearances = []plan.Fact{
		left("book", "for the book, at its tightest", beyond),
		left("trays", "between the trays, at the tightest", room),
	}
	r.Folded = []plan.Fact{
		plan.SizeFact("small_tray", "small tray, covered", "wide", c.small.outside()),
		plan.SizeFact("large_tray", "large tray, covered", "wide", c.large.outside()),
		plan.SizeFact("outside", "outside, closed", "wide", out),
		{Key: "spine", Name: "between the spine and the ends of the walls", Text: "%s", Parts: []plan.Part{{Key: "left", Length: c.offSpine()}}},
	}
}

// left returns the fact of what is left.
func left(key, name string, s plan.Size) plan.Fact {
	return plan.Fact{Key: key, Name: name, Parts: []plan.Part{{Key: "height", Length: s.Height}, {Key: "depth", Length: s.Width}, {Key: "thickness", Length: s.Thickness}}}
}
