package proof

import (
	"math"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/geometry/slipcase"
	"forel/render"
)

// view is a parallel projection: the viewer is far away, to the right of the
// mouth by yaw and above it by pitch.
type view struct{ sinYaw, cosYaw, sinPitch, cosPitch float64 }

// angles of the view, in degrees. Where the mouth is narrow the viewer stands
// more nearly before it, to see into it.
const (
	mostYaw  = 32.0
	leastYaw = 12.0
	pitch    = 22.0
)

// viewOf chooses the view of a case: as far to the right as still shows all
// that is turned in on the left side, within limits.
func viewOf(r foldup.Report) view {
	var deep Length
	for _, f := range r.Faces {
		if f.Face == slipcase.LeftInside {
			for _, l := range f.Layers {
				deep = max(deep, f.Extent.Max.X-polygon.Bounds(l.Shape).Min.X)
			}
		}
	}
	yaw := mostYaw
	if deep > 0 {
		cavity := r.Carcass.Width - 2*r.Carcass.Lined
		yaw = math.Atan(float64(cavity/deep)/1.1) * 180 / math.Pi
		yaw = max(leastYaw, min(mostYaw, yaw))
	}
	var v view
	v.sinYaw, v.cosYaw = math.Sincos(yaw * math.Pi / 180)
	v.sinPitch, v.cosPitch = math.Sincos(pitch * math.Pi / 180)
	return v
}

// flat gives where a place of the case is seen: X to the right, Y upward.
func (v view) flat(p foldup.Vec) geometry.Point {
	x, y, z := float64(p.X), float64(p.Y), float64(p.Z)
	return geometry.Pt(
		Length(x*v.cosYaw-z*v.sinYaw),
		Length(y*v.cosPitch-(x*v.sinYaw+z*v.cosYaw)*v.sinPitch))
}

// shows tells whether a face that looks along n is turned to the viewer.
func (v view) shows(n foldup.Vec) bool {
	return float64(n.X)*v.sinYaw*v.cosPitch+float64(n.Y)*v.sinPitch+float64(n.Z)*v.cosYaw*v.cosPitch > 1e-9
}

// scene is what is seen of a case, in the plane of the view, in millimetres of
// the case. Nothing in it is hidden by anything else.
type scene struct {
	view  view
	faces []seenFace
	rims  geom.Geometry // of the thumb holes: the thickness of the boards
	edges []seenEdge
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

// seenEdge is edges of the boards.
type seenEdge struct {
	lines  geom.Geometry
	stroke render.Stroke
}

// sceneOf looks at a case: each face turned to the viewer, without what a board
// before it hides.
func sceneOf(r foldup.Report, faces []face) scene {
	sc := scene{view: viewOf(r)}
	boards := blocksOf(r)
	for _, f := range faces {
		p := f.place
		if !sc.view.shows(p.normal) {
			continue
		}
		look := func(g geom.Geometry) geom.Geometry {
			return moved(g, func(q geometry.Point) geometry.Point { return sc.view.flat(p.at(q)) })
		}
		s := seenFace{face: f, whole: solid(sc.seen(look(f.shape), boards, p.frame.O, p.normal))}
		if s.whole.IsEmpty() {
			continue
		}
		for i, l := range f.layers {
			top, lines := l.Shape, freeEdges(l.Shape, f.shape)
			for _, over := range f.layers[i+1:] {
				top, lines = without(top, over.Shape), without(lines, over.Shape)
			}
			s.layers = append(s.layers, seenLayer{
				l, solid(meet(look(l.Shape), s.whole)), solid(meet(look(top), s.whole)), meet(look(lines), s.whole),
			})
		}
		s.empty = solid(meet(look(f.bare()), s.whole))
		sc.faces = append(sc.faces, s)
	}
	sc.rims = sc.seeRims(boards)
	sc.edges = sc.seeEdges()
	return sc
}

// seeEdges gives the outlines of what is seen: lightest those inside, heaviest
// that of it all.
func (sc scene) seeEdges() []seenEdge {
	var inside, outside, mouth, all []geom.Geometry
	for _, f := range sc.faces {
		all = append(all, f.whole)
		switch {
		case mouthEdge(f.place.face):
			mouth = append(mouth, f.whole) // the covering goes on from one to the next
		case f.Inside:
			inside = append(inside, f.whole)
		default:
			outside = append(outside, f.whole)
		}
	}
	inside = append(inside, sc.rims)
	outside = append(outside, union(mouth))
	all = append(all, sc.rims)
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

// bounds gives the box around all that is seen.
func (sc scene) bounds() geometry.Box { return polygon.Bounds(sc.edges[len(sc.edges)-1].lines) }

// cropped gives what of the scene lies in a window of the view.
func (sc scene) cropped(window geometry.Box) scene {
	w := polygon.Box(window)
	crop := func(g geom.Geometry) geom.Geometry { return solid(meet(g, w)) }
	out := scene{view: sc.view, rims: crop(sc.rims)}
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
	for _, e := range sc.edges {
		if e.lines = meet(e.lines, w); !e.lines.IsEmpty() {
			out.edges = append(out.edges, e)
		}
	}
	return out
}

// fitted gives how a box of the view is laid as large as it will go into a box
// of the page, where Y runs down.
func fitted(from, into geometry.Box) (to func(geometry.Point) geometry.Point, scale float64) {
	scale = min(into.Width()/from.Width(), into.Height()/from.Height()).MM()
	c, m := from.Center(), into.Center()
	return func(p geometry.Point) geometry.Point {
		d := p.Sub(c).Mul(scale)
		return geometry.Pt(m.X+d.X, m.Y-d.Y)
	}, scale
}

// draw draws the scene on a page. Inside is the look of a face inside where
// nothing is turned in.
func (sc scene) draw(s render.Surface, k looks, inside look, to func(geometry.Point) geometry.Point) {
	fill := func(g geom.Geometry, l look) {
		for _, a := range areasOf(moved(g, to)) {
			s.Fill(a.Path(), l.tint)
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
		under := f.under(k, inside)
		fill(f.whole, under)
		for _, l := range f.layers {
			fill(l.under, k.piece(l.Piece))
		}
		shade(f.empty, under)
		for _, l := range f.layers {
			shade(l.top, k.piece(l.Piece))
		}
	}
	fill(sc.rims, rimLook)
	for _, f := range sc.faces {
		for _, l := range f.layers {
			stroke(l.lines, k.piece(l.Piece).outline(l.Tucked))
		}
	}
	for _, e := range sc.edges {
		stroke(e.lines, e.stroke)
	}
}
