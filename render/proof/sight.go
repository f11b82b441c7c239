package proof

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
	"forel/render/staging"
)

// sight is what is seen of a case, in the plane of the view, in millimetres of
// the case. Nothing in it is hidden by anything else.
type sight struct {
	view   scene.View
	all    []scene.Face
	faces  []seenFace
	solids []seenSolid
	lines  []scene.Drawn // the free edges of layers, then edges of the boards
}

// seenFace is what is seen of one face.
type seenFace struct {
	face
	whole  polygon.Shape // all that is seen of it
	empty  polygon.Shape // where no layer lies
	layers []seenLayer   // from the board up
}

// seenLayer is what is seen of one layer of covering.
type seenLayer struct {
	foldup.Layer
	top polygon.Shape
}

// seenSolid is what is seen of a board beside its faces, as of its thickness in a
// thumb hole.
type seenSolid struct {
	shape polygon.Shape
	stuff stage.Stuff
	edge  bool // its thickness
}

// flat returns where a place of the case is seen: X to the right, Y upward.
func (s sight) flat(v space.Vec) geometry.Point { return s.view.Flat(v) }

// object names a face in the pictures, boardObject a board and layerName a layer on a
// face, from 0.
func (f face) object() string  { return fmt.Sprintf("face %d", f.number) }
func boardObject(i int) string { return fmt.Sprintf("board %d", i) }
func layerName(n int) string   { return fmt.Sprintf("layer %d", n) }

// sightOf looks at a case: at its boards, and at its faces, which lie on them, with
// the layers on these.
func sightOf(p plan.Proof, faces []face, k looks) sight {
	sc := sight{view: staging.View(p.View)}
	for _, f := range faces {
		add := func(name string, layer int, on polygon.Shape, lines []scene.Line) {
			for _, a := range on {
				points := f.inSpace(a.Rings[0])
				if f.Frame.Normal().Dot(f.Normal) < 0 {
					slices.Reverse(points) // counterclockwise for one who sees it
				}
				sc.all = append(sc.all, scene.Face{Object: f.object(), Name: name, Points: points, Layer: layer, Lines: lines})
			}
		}
		add("", 1, f.shape, nil)
		for n, l := range f.layers {
			var lines []scene.Line
			for _, run := range shape.FreeEdges(l.Shape, f.shape) {
				lines = append(lines, scene.Line{Points: f.inSpace(run), Stroke: k.piece(l.Piece).outline(l.Tucked)})
			}
			add(layerName(n), n+2, l.Shape, lines)
		}
	}
	for i, s := range p.Solids {
		var outline []space.Vec
		for _, q := range s.Outline {
			outline = append(outline, s.Frame.At(q))
		}
		block := stage.Block(boardObject(i), outline, s.Frame.Normal().Mul(-s.Thick), s.Stuff, s.Stuff, s.Stuff)
		sc.all = append(sc.all, staging.Looks{}.Faces(block)...)
	}
	seen := scene.See(sc.all, sc.view)
	sc.note(seen, p, faces)
	sc.lines = append(seen.Lines, sc.edges(seen)...)
	return sc
}

// inSpace returns where places of a face lie.
func (f face) inSpace(flat []geometry.Point) []space.Vec {
	out := make([]space.Vec, len(flat))
	for i, p := range flat {
		out[i] = f.Frame.At(p)
	}
	return out
}

// note notes what is seen of each face and board.
func (s *sight) note(seen scene.Seen, p plan.Proof, faces []face) {
	for _, f := range faces {
		name := f.object()
		g := seenFace{face: f, whole: seen.Together(func(o string) bool { return o == name }), empty: seen.Of(name, "")}
		if len(g.whole) == 0 {
			continue
		}
		for n, l := range f.layers {
			g.layers = append(g.layers, seenLayer{l, seen.Of(name, layerName(n))})
		}
		s.faces = append(s.faces, g)
	}
	for i, o := range p.Solids {
		board := boardObject(i)
		for _, part := range []string{board, board + ", edge"} { // as stage.Block has it
			if g := seen.Of(board, part); len(g) > 0 {
				s.solids = append(s.solids, seenSolid{g, o.Stuff, part != board})
			}
		}
	}
}

// edges returns the outlines of what is seen: lightest those inside, heaviest
// that of it all.
func (s sight) edges(seen scene.Seen) []scene.Drawn {
	var inside, outside polygon.Shape
	ends := map[string]bool{}
	for _, f := range s.faces {
		switch {
		case f.Edge:
			ends[f.object()] = true // the covering goes on from one to the next
		case f.Inside:
			inside = append(inside, f.whole...)
		default:
			outside = append(outside, f.whole...)
		}
	}
	for _, o := range s.solids {
		inside = append(inside, o.shape...)
	}
	outside = append(outside, seen.Together(func(o string) bool { return ends[o] })...)
	all := seen.Together(func(string) bool { return true })
	var out []scene.Drawn
	for _, e := range []struct {
		of     polygon.Shape
		stroke render.Stroke
	}{{inside, innerEdge}, {outside, nearEdge}, {all, outerEdge}} {
		for _, a := range e.of {
			for _, ring := range a.Rings {
				out = append(out, scene.Drawn{Runs: [][]geometry.Point{append(slices.Clone(ring), ring[0])}, Stroke: e.stroke})
			}
		}
	}
	return out
}

// bounds returns the box around all that is seen.
func (s sight) bounds() geometry.Box {
	var all polygon.Shape
	for _, f := range s.faces {
		all = append(all, f.whole...)
	}
	for _, o := range s.solids {
		all = append(all, o.shape...)
	}
	return all.Bounds()
}

// cropped returns what is seen through a window of the view.
func (s sight) cropped(p plan.Proof, faces []face, window geometry.Box) sight {
	out := sight{view: s.view}
	out.note(scene.SeeIn(s.all, s.view, window), p, faces)
	for _, l := range s.lines {
		var runs [][]geometry.Point
		for _, run := range l.Runs {
			runs = append(runs, polygon.Box(window).Along(run)...)
		}
		out.lines = append(out.lines, scene.Drawn{Runs: runs, Stroke: l.Stroke})
	}
	return out
}

// draw draws what is seen on a page.
func (s sight) draw(on render.Surface, k looks, to func(geometry.Point) geometry.Point) {
	fill := func(g polygon.Shape, c render.Color) {
		for _, a := range g.Moved(to) {
			on.Fill(a.Path(), c)
		}
	}
	shade := func(g polygon.Shape, l look) {
		for _, a := range g.Moved(to) {
			l.shade(on, a, nil)
		}
	}
	for _, f := range s.faces {
		under := k.ground(f.Ground)
		fill(f.whole, under.tint)
		for _, l := range f.layers {
			fill(l.top, k.piece(l.Piece).tint)
		}
		shade(f.empty, under)
		for _, l := range f.layers {
			shade(l.top, k.piece(l.Piece))
		}
	}
	for _, o := range s.solids {
		switch {
		case o.stuff == stage.Card && o.edge:
			fill(o.shape, cardEdgeTint)
		case o.stuff == stage.Card:
			fill(o.shape, cardTint)
		default:
			fill(o.shape, rimTint)
		}
	}
	for _, l := range s.lines {
		l.Draw(on, to)
	}
}
