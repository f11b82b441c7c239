package proof

import (
	"fmt"
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
)

// sight is what is seen of a case, in the plane of the view, in millimetres of
// the case. Nothing in it is hidden by anything else.
type sight struct {
	view   scene.View
	faces  []seenFace
	solids []seenSolid
	edges  []seenEdge
}

// seenFace is what is seen of one face.
type seenFace struct {
	face
	whole  geom.Geometry // all that is seen of it
	empty  geom.Geometry // where no layer lies
	layers []seenLayer   // from the board up
}

// seenLayer is one layer of covering.
type seenLayer struct {
	foldup.Layer
	under geom.Geometry // all of it that no board hides
	top   geom.Geometry // where no layer lies over it
	lines geom.Geometry // its free edges that no layer lies over
}

// seenSolid is what is seen of a board beside its faces, as of its thickness in a
// thumb hole.
type seenSolid struct {
	shape geom.Geometry
	stuff stage.Stuff
	edge  bool // its thickness
}

// seenEdge is edges of the boards.
type seenEdge struct {
	lines  geom.Geometry
	stroke render.Stroke
}

func vec(v space.Vec) scene.Vec { return scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()} }

// flat returns where a place of the case is seen: X to the right, Y upward.
func (s sight) flat(v space.Vec) geometry.Point { return s.view.Flat(vec(v)) }

// sightOf looks at a case: at its boards, and at its faces, which lie on them.
func sightOf(p plan.Proof, faces []face) sight {
	sc := sight{view: scene.Turned(vec(p.View.Toward), vec(p.View.Up), p.View.Yaw, p.View.Pitch)}
	object := func(i int) string { return fmt.Sprintf("face %d", i) }
	var all []scene.Face
	for i, f := range faces {
		mirrored := f.Frame.Normal().Dot(f.Normal) < 0
		for _, a := range areasOf(f.shape) {
			var points []scene.Vec
			for _, q := range a.Rings[0] {
				points = append(points, vec(f.Frame.At(q)))
			}
			if clockwise := geometry.Polygon(a.Rings[0]...).SignedArea() < 0; clockwise != mirrored {
				slices.Reverse(points) // counterclockwise for one who sees it
			}
			all = append(all, scene.Face{Object: object(i), Name: object(i), Points: points, Layer: 1})
		}
	}
	for i, s := range p.Solids {
		points := make([]scene.Vec, len(s.Outline))
		for k, q := range s.Outline {
			points[k] = vec(s.Frame.At(q))
		}
		all = append(all, scene.Block(blockParts(i)[0], points, vec(s.Frame.Normal().Mul(-s.Thick)), scene.Look{}, scene.Look{}, scene.Look{})...)
	}
	seen := map[string][]geom.Geometry{}
	for _, p := range scene.See(all, sc.view).Patches {
		for _, a := range p.Shape {
			g := polygon.Of(a.Rings[0])
			for _, hole := range a.Rings[1:] {
				g = without(g, polygon.Of(hole))
			}
			seen[p.Names[0]] = append(seen[p.Names[0]], g)
		}
	}
	of := func(name string) geom.Geometry { return solid(union(seen[name])) }
	for i, f := range faces {
		if whole := of(object(i)); !whole.IsEmpty() {
			sc.faces = append(sc.faces, sc.face(f, whole))
		}
	}
	for i, s := range p.Solids {
		for _, part := range blockParts(i) {
			if g := of(part); !g.IsEmpty() {
				sc.solids = append(sc.solids, seenSolid{g, s.Stuff, part != blockParts(i)[0]})
			}
		}
	}
	sc.edges = sc.seeEdges()
	return sc
}

// blockParts names what is seen of a board: its two broad faces, and its edges.
func blockParts(i int) [2]string {
	board := fmt.Sprintf("board %d", i)
	return [2]string{board, board + ", edge"} // as scene.Block has it
}

// ofFace returns where a point of a face is seen.
func (sc sight) ofFace(f face) func(geometry.Point) geometry.Point {
	return func(q geometry.Point) geometry.Point { return sc.flat(f.Frame.At(q)) }
}

// face returns what is seen of the layers on a face.
func (sc sight) face(f face, whole geom.Geometry) seenFace {
	look := func(g geom.Geometry) geom.Geometry { return moved(g, sc.ofFace(f)) }
	s := seenFace{face: f, whole: whole}
	for i, l := range f.layers {
		top, lines := l.Shape, freeEdges(l.Shape, f.shape)
		for _, over := range f.layers[i+1:] {
			top, lines = without(top, over.Shape), without(lines, over.Shape)
		}
		s.layers = append(s.layers, seenLayer{
			l, solid(meet(look(l.Shape), whole)), solid(meet(look(top), whole)), meet(look(lines), whole),
		})
	}
	s.empty = solid(meet(look(f.bare()), whole))
	return s
}

// seeEdges returns the outlines of what is seen: lightest those inside, heaviest
// that of it all.
func (sc sight) seeEdges() []seenEdge {
	var inside, outside, ends, all []geom.Geometry
	for _, f := range sc.faces {
		all = append(all, f.whole)
		switch {
		case f.Edge:
			ends = append(ends, f.whole) // the covering goes on from one to the next
		case f.Inside:
			inside = append(inside, f.whole)
		default:
			outside = append(outside, f.whole)
		}
	}
	for _, s := range sc.solids {
		inside, all = append(inside, s.shape), append(all, s.shape)
	}
	outside = append(outside, union(ends))
	var out []seenEdge
	for _, e := range []struct {
		of     []geom.Geometry
		stroke render.Stroke
	}{{inside, innerEdge}, {outside, nearEdge}, {[]geom.Geometry{union(all)}, outerEdge}} {
		for _, g := range e.of {
			out = append(out, seenEdge{outline(g), e.stroke})
		}
	}
	return out
}

// bounds returns the box around all that is seen.
func (sc sight) bounds() geometry.Box { return polygon.Bounds(sc.edges[len(sc.edges)-1].lines) }

// cropped returns what lies in a window of the view.
func (sc sight) cropped(window geometry.Box) sight {
	w := polygon.Box(window)
	crop := func(g geom.Geometry) geom.Geometry { return solid(meet(g, w)) }
	out := sight{view: sc.view}
	for _, f := range sc.faces {
		f.whole, f.empty = crop(f.whole), crop(f.empty)
		if f.whole.IsEmpty() {
			continue
		}
		layers := f.layers
		f.layers = nil
		for _, l := range layers {
			l.under, l.top, l.lines = crop(l.under), crop(l.top), meet(l.lines, w)
			if !l.under.IsEmpty() {
				f.layers = append(f.layers, l)
			}
		}
		out.faces = append(out.faces, f)
	}
	for _, s := range sc.solids {
		if s.shape = crop(s.shape); !s.shape.IsEmpty() {
			out.solids = append(out.solids, s)
		}
	}
	for _, e := range sc.edges {
		if e.lines = meet(e.lines, w); !e.lines.IsEmpty() {
			out.edges = append(out.edges, e)
		}
	}
	return out
}

// fitted returns how a box of the view is laid as large as it will go into a box
// of the page, where Y runs down.
func fitted(from, into geometry.Box) (to func(geometry.Point) geometry.Point, scale float64) {
	return scene.Fitted(from, into)
}

// draw draws what is seen on a page.
func (sc sight) draw(s render.Surface, k looks, to func(geometry.Point) geometry.Point) {
	fill := func(g geom.Geometry, c render.Color) {
		for _, a := range areasOf(moved(g, to)) {
			s.Fill(a.Path(), c)
		}
	}
	shade := func(g geom.Geometry, l look) {
		for _, a := range areasOf(moved(g, to)) {
			l.shade(s, a, nil)
		}
	}
	stroke := func(g geom.Geometry, st render.Stroke) {
		for _, run := range runs(moved(g, to)) {
			s.Stroke(geometry.Line(run...), st)
		}
	}
	for _, f := range sc.faces {
		under := k.ground(f.Ground)
		fill(f.whole, under.tint)
		for _, l := range f.layers {
			fill(l.under, k.piece(l.Piece).tint)
		}
		shade(f.empty, under)
		for _, l := range f.layers {
			shade(l.top, k.piece(l.Piece))
		}
	}
	for _, o := range sc.solids {
		switch {
		case o.stuff == stage.Card && o.edge:
			fill(o.shape, cardEdgeTint)
		case o.stuff == stage.Card:
			fill(o.shape, cardTint)
		default:
			fill(o.shape, rimTint)
		}
	}
	for _, f := range sc.faces {
		for _, l := range f.layers {
			stroke(l.lines, k.piece(l.Piece).outline(l.Tucked))
		}
	}
	for _, e := range sc.edges {
		stroke(e.lines, e.stroke)
	}
}
