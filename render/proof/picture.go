package proof

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/render/figure"
	"forel/render/scene"
	"forel/render/staging"
)

// picture returns the case as it stands, seen from outside at an angle: its boards, and its
// faces, which lie on them, with the layers on these.
func (d *doc) picture() stage.Picture {
	out := stage.Picture{View: d.Proof.View}
	for _, s := range d.Proof.Solids {
		for _, f := range s.Block(s.Name) {
			f.Plain = true
			out.Faces = append(out.Faces, f)
		}
	}
	for _, f := range d.faces {
		add := func(piece string, layer int, stuff stage.Stuff, on polygon.Shape) {
			for _, a := range on {
				var points []space.Vec
				for _, p := range a.Rings[0] {
					points = append(points, f.Frame.At(p))
				}
				if f.Frame.Normal().Dot(f.Normal) < 0 {
					slices.Reverse(points) // counterclockwise for one who sees it
				}
				object := piece
				if piece == "" {
					object = f.ground()
				}
				out.Faces = append(out.Faces, stage.Face{Object: object, Name: f.spot(piece), Points: points, Front: stuff, Layer: layer})
			}
		}
		add("", 1, f.Ground.Stuff, f.shape)
		for n, l := range f.layers {
			add(l.Piece, n+2, stuffOf(l.Piece), l.Shape)
		}
	}
	return out
}

// ground names what of a board nothing lies on: a piece may be called like the board.
func (f face) ground() string { return "ground of " + f.Board }

// spot names what lies of a piece on a face; without a piece, the face where none lies.
func (f face) spot(piece string) string { return string(f.Face) + ", " + piece }

// stuffOf names a piece as a stuff, since each has a look of its own.
func stuffOf(piece string) stage.Stuff { return stage.Stuff(piece) }

// onStage returns the looks as those of stuffs.
func (l looks) onStage() staging.Looks {
	out := staging.Looks{stage.Board: l.board.Look, stage.Lining: l.lining.Look, stage.Card: {Tint: cardTint}}
	for name, k := range l.pieces {
		out[stuffOf(name)] = k.Look
	}
	return out
}

// the names a board in a sentence.
func the(board string) string { return "the " + strings.TrimPrefix(board, "the ") }

// panel returns a picture as it is drawn.
func (d *doc) panel(p stage.Picture) figure.Panel {
	return figure.Of(p, d.looks.onStage(), d.Round.Pretty)
}

// seenOf returns all that is seen of a face.
func (f face) seenOf(s scene.Seen) polygon.Shape {
	all := s.Of(f.ground(), f.spot(""))
	for _, piece := range f.pieces() {
		all = append(all, s.Of(piece, f.spot(piece))...)
	}
	return all
}

// most returns the piece of which most is seen on a face, empty where that is the ground.
func (f face) most(s scene.Seen) (piece string) {
	most := s.Of(f.ground(), f.spot("")).Size()
	for _, p := range f.pieces() {
		if n := s.Of(p, f.spot(p)).Size(); n > most {
			piece, most = p, n
		}
	}
	return piece
}

// named returns what is said of the picture of the whole: what the plan wants named, and
// every other piece where most is seen of it.
func (d *doc) named(s scene.Seen) (notes []stage.Note) {
	told := map[string]bool{}
	for _, n := range d.Proof.Notes {
		if f, ok := faceOf(d.faces, geometry.Face(n.Spot)); ok {
			on := f.most(s)
			n.Spot = f.spot(on)
			switch {
			case n.More.Text != "":
			case on != "":
				n.More, told[on] = plan.Say("under the "+on), true
			default:
				n.More = plan.Say(f.Ground.Name)
			}
		}
		notes = append(notes, n)
	}
	for _, piece := range d.looks.order {
		var on face
		most := 1.0 // mm² of the case
		for _, f := range d.faces {
			if n := s.Of(piece, f.spot(piece)).Size(); n > most && !f.Inside && !f.Edge {
				on, most = f, n
			}
		}
		if on.Face != "" && !told[piece] {
			notes = append(notes, stage.Note{Name: plan.Say(piece), More: plan.Say("laid onto " + the(on.Board)), Spot: on.spot(piece)})
		}
	}
	if c := d.Proof.Closeup; c != nil {
		notes = append(notes, stage.Note{Name: plan.Say(c.Note), More: plan.Say("is drawn larger below"), At: c.At})
	}
	return notes
}

// closeup returns the picture of a corner, with what is turned in named.
func (d *doc) closeup(p stage.Picture, s scene.Seen) stage.Picture {
	c := *d.Proof.Closeup
	up, along := c.Up.Sub(c.At), c.Along.Sub(c.At)
	p.Focus = []stage.Vec{c.At, c.Up, c.At.Add(along.Mul(min(1, up.Size()/along.Size())))}
	p.Caption = plan.Say(c.Title + ", larger: " + c.Where)
	var later []stage.Note
	for _, f := range d.faces {
		switch {
		case f.Inside:
			for _, piece := range f.pieces() {
				p.Notes = append(p.Notes, stage.Note{Name: plan.Say(piece), More: f.says(piece), Spot: f.spot(piece)})
			}
			later = append(later, stage.Note{Name: plan.Say(f.Ground.Name), More: plan.Say("of " + the(f.Board)), Spot: f.spot("")})
		case f.Edge:
			later = append(later, stage.Note{Name: plan.Say("edge of the board"), More: plan.Say(the(f.Board)), Spot: f.spot(f.most(s))})
		}
	}
	p.Notes = append(p.Notes, later...)
	return p
}

// says tells how deep a piece is turned in on a face.
func (f face) says(piece string) stage.Say {
	var deepest Length
	var of foldup.Patch
	for _, l := range f.layers {
		if deep, ok := f.reach(l); ok && l.Piece == piece && deep > deepest {
			deepest, of = deep, l
		}
	}
	switch {
	case deepest == 0:
		return plan.Say(f.Board)
	case of.Tucked:
		return plan.Say("tucked, %s, "+f.Board, deepest)
	}
	return plan.Say("%s deep, "+f.Board, deepest)
}

// solidMarks marks the faults of the faces that are seen.
func (d *doc) solidMarks(s scene.Seen, to func(geometry.Point) geometry.Point, zone geometry.Box) []mark {
	var out []mark
	var off taken
	for i, fault := range d.Proof.Faults {
		for _, f := range d.faces {
			if f.Face != fault.Face {
				continue
			}
			at := clamped(spot(fault, f.Extent), f.Extent)
			var pts []geometry.Point
			for _, q := range geometry.Rectangle(at).Flatten(1) {
				pts = append(pts, to(s.View.Flat(f.Frame.At(q))))
			}
			middle := s.View.Flat(f.Frame.At(at.Center()))
			if !f.seenOf(s).Holds(middle) {
				continue // behind a board
			}
			m := mark{number: fmt.Sprint(i + 1), area: geometry.Polygon(pts...), tag: freeSpot(to(middle), zone, off)}
			off.Boxes = append(off.Boxes, m.box())
			out = append(out, m)
		}
	}
	return out
}
