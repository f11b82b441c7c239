package proof

import (
	"fmt"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/scene"
	"forel/render/shape"
)

// angles of the view, in degrees: the viewer is far away, to the right of the mouth by
// yaw and above it by pitch. Where the mouth is narrow the viewer stands more nearly
// before it, to see into it.
const (
	mostYaw  = 32.0
	leastYaw = 12.0
	pitch    = 22.0
)

// viewOf chooses the view of a case: as far to the right as still shows all
// that is turned in on the left side, within limits.
func viewOf(r foldup.Report) scene.View {
	var deep Length
	for _, f := range r.Faces {
		if f.Face == geometry.LeftInside {
			for _, l := range f.Layers {
				deep = max(deep, f.Extent.Max.X-l.Shape.Bounds().Min.X)
			}
		}
	}
	yaw := mostYaw
	if deep > 0 {
		cavity := r.Carcass.Width - 2*r.Carcass.Lined
		yaw = math.Atan(float64(cavity/deep)/1.1) * 180 / math.Pi
		yaw = max(leastYaw, min(mostYaw, yaw))
	}
	return scene.Turned(scene.Vec{Z: 1}, scene.Vec{Y: 1}, yaw, pitch)
}

// inSpace returns a place of the case as the pictures have it.
func inSpace(v foldup.Vec) scene.Vec { return scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()} }

// solid is what is seen of a case, in the plane of the view, in millimetres of
// the case. Nothing in it is hidden by anything else.
type solid struct {
	view  scene.View
	all   []scene.Face
	faces []seenFace
	rims  polygon.Shape // of the thumb holes: the thickness of the boards
	lines []scene.Drawn // the free edges of layers, then edges of the boards
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

// rimName names the faces of the thumb holes' rims.
const rimName = "rim"

// objectOf names a face of the case in the pictures.
func objectOf(f face) string { return fmt.Sprint(f.divider, " ", f.Face) }

// solidOf looks at a case.
func solidOf(r foldup.Report, faces []face, k looks) solid {
	s := solid{view: viewOf(r)}
	for _, f := range faces {
		add := func(name string, layer int, on polygon.Shape, lines []scene.Line) {
			for _, a := range on {
				g := scene.Face{Object: objectOf(f), Name: name, Layer: layer, Lines: lines}
				for _, p := range a.Rings[0] {
					g.Points = append(g.Points, inSpace(f.place.at(p)))
				}
				if f.place.mirrored() {
					slices.Reverse(g.Points)
				}
				s.all = append(s.all, g)
			}
		}
		add("", 0, f.shape, nil)
		for i, l := range f.layers {
			for _, a := range l.Shape {
				var lines []scene.Line
				for _, run := range shape.FreeEdges(polygon.Shape{a}, f.shape) {
					line := scene.Line{Stroke: k.piece(l.Piece).outline(l.Tucked)}
					for _, p := range run {
						line.Points = append(line.Points, inSpace(f.place.at(p)))
					}
					lines = append(lines, line)
				}
				add(fmt.Sprint(i), i+1, polygon.Shape{a}, lines)
			}
		}
	}
	s.all = append(s.all, rimsOf(r.Carcass)...)
	seen := scene.See(s.all, s.view)
	s.look(seen, faces)
	s.lines = append(seen.Lines, s.edges(seen)...)
	return s
}

// rimsOf returns the thickness of the sides in their thumb holes.
func rimsOf(c foldup.Carcass) []scene.Face {
	var out []scene.Face
	hole := holeOf(c)
	for i, p := range hole {
		q := hole[(i+1)%len(hole)]
		if p.X.Near(c.Depth) && q.X.Near(c.Depth) {
			continue // the open end
		}
		for _, x := range [][2]Length{{0, c.Lined}, {c.Width - c.Lined, c.Width}} {
			f := scene.Face{Object: rimName, Name: rimName, Back: &scene.Look{}}
			for _, v := range []foldup.Vec{{X: x[0], Y: p.Y, Z: p.X}, {X: x[1], Y: p.Y, Z: p.X}, {X: x[1], Y: q.Y, Z: q.X}, {X: x[0], Y: q.Y, Z: q.X}} {
				f.Points = append(f.Points, inSpace(v))
			}
			out = append(out, f)
		}
	}
	return out
}

// look notes what is seen of each face.
func (s *solid) look(seen scene.Seen, faces []face) {
	whole := map[string]polygon.Shape{}
	for _, o := range seen.Objects {
		whole[o.Name] = o.Shape
	}
	s.rims = whole[rimName]
	for _, f := range faces {
		name := objectOf(f)
		g := seenFace{face: f, whole: whole[name], empty: seen.Of(name, "")}
		if len(g.whole) == 0 {
			continue
		}
		for i, l := range f.layers {
			g.layers = append(g.layers, seenLayer{l, seen.Of(name, fmt.Sprint(i))})
		}
		s.faces = append(s.faces, g)
	}
}

// edges returns the outlines of what is seen: lightest those inside, heaviest
// that of it all.
func (s solid) edges(seen scene.Seen) []scene.Drawn {
	inside, outside := s.rims, polygon.Shape(nil)
	mouth := map[string]bool{}
	for _, f := range s.faces {
		switch {
		case mouthEdge(f.place.face):
			mouth[objectOf(f.face)] = true // the covering goes on from one to the next
		case f.Inside:
			inside = append(inside, f.whole...)
		default:
			outside = append(outside, f.whole...)
		}
	}
	outside = append(outside, seen.Together(func(o string) bool { return mouth[o] })...)
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

// flat returns where a place of the case is seen: X to the right, Y upward.
func (s solid) flat(v foldup.Vec) geometry.Point { return s.view.Flat(inSpace(v)) }

// bounds returns the box around all that is seen.
func (s solid) bounds() geometry.Box {
	var all polygon.Shape
	for _, f := range s.faces {
		all = append(all, f.whole...)
	}
	return all.Bounds()
}

// cropped returns what is seen through a window of the view.
func (s solid) cropped(window geometry.Box) solid {
	out := solid{view: s.view}
	var faces []face
	for _, f := range s.faces {
		faces = append(faces, f.face)
	}
	out.look(scene.SeeIn(s.all, s.view, window), faces)
	for _, l := range s.lines {
		var runs [][]geometry.Point
		for _, run := range l.Runs {
			runs = append(runs, polygon.Box(window).Along(run)...)
		}
		out.lines = append(out.lines, scene.Drawn{Runs: runs, Stroke: l.Stroke})
	}
	return out
}

// draw draws the case on a page. Inside is the look of a face inside where
// nothing is turned in.
func (s solid) draw(on render.Surface, k looks, inside look, to func(geometry.Point) geometry.Point) {
	fill := func(g polygon.Shape, l look) {
		for _, a := range g.Moved(to) {
			on.Fill(a.Path(), l.tint)
		}
	}
	shade := func(g polygon.Shape, l look) {
		for _, a := range g.Moved(to) {
			l.shade(on, a, nil)
		}
	}
	for _, f := range s.faces {
		under := f.under(k, inside)
		fill(f.whole, under)
		for _, l := range f.layers {
			fill(l.top, k.piece(l.Piece))
		}
		shade(f.empty, under)
		for _, l := range f.layers {
			shade(l.top, k.piece(l.Piece))
		}
	}
	fill(s.rims, rimLook)
	for _, l := range s.lines {
		for _, run := range l.Runs {
			pts := make([]geometry.Point, len(run))
			for i, p := range run {
				pts[i] = to(p)
			}
			on.Stroke(geometry.Line(pts...), l.Stroke)
		}
	}
}
