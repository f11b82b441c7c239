package scene

import (
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"

	"forel/geometry"
	"forel/geometry/polygon"
	"forel/render"
	"forel/render/shape"
)

// Seen is what is seen of a scene, in the plane of the view, in millimetres of
// the scene. No two patches share area.
type Seen struct {
	View    View
	Patches []Patch
	Objects []Object
	Lines   []Drawn

	unworked int // shapes that could not be worked out
}

// Patch is what is seen of the faces of an object in one plane.
type Patch struct {
	Object string
	Names  []string // of its faces
	Shape  geom.Geometry
	look   Look
	light  float64
	angle  float64 // of its grain on the page, in degrees
	plane  string
	parts  map[string]geom.Geometry // by name
}

// Object is all that is seen of an object.
type Object struct {
	Name  string
	Shape geom.Geometry
}

// Drawn is what is seen of lines.
type Drawn struct {
	Shape  geom.Geometry
	Stroke render.Stroke
}

// See looks at faces.
func See(faces []Face, v View) Seen {
	var flat []flatFace
	for _, f := range faces {
		if s, ok := v.seenFlat(f); ok {
			flat = append(flat, s)
		}
	}
	out := Seen{View: v}
	for i, f := range flat {
		rest := f.shape
		for k, g := range flat {
			if k == i || rest.IsEmpty() {
				continue
			}
			hidden, outline, ok := out.hidden(f, g)
			if !ok || hidden.IsEmpty() {
				continue
			}
			if outline != nil && outline.holds(cornersOf(rest)) {
				rest = geom.Geometry{}
				break
			}
			if rest, ok = without(rest, hidden); !ok {
				out.unworked++
			}
		}
		if rest = clean(rest); rest.IsEmpty() {
			continue
		}
		out.add(f, rest)
		for _, l := range f.Lines {
			pts := make([]float64, 0, 2*len(l.Points))
			for _, p := range l.Points {
				q := v.Flat(p)
				pts = append(pts, q.X.MM(), q.Y.MM())
			}
			line := geom.NewLineString(geom.NewSequence(pts, geom.DimXY)).AsGeometry()
			out.Lines = append(out.Lines, Drawn{shape.Meet(line, rest), l.Stroke})
		}
	}
	out.outlines()
	return out
}

// cornersOf gives the corners of the outlines of polygons.
func cornersOf(g geom.Geometry) []geometry.Point {
	var out []geometry.Point
	for _, p := range polygon.Parts(g) {
		out = append(out, polygon.Points(p.ExteriorRing().Coordinates())...)
	}
	return out
}

// add adds a face to its patch.
func (s *Seen) add(f flatFace, rest geom.Geometry) {
	i := slices.IndexFunc(s.Patches, func(p Patch) bool { return p.Object == f.Object && p.plane == f.plane })
	if i < 0 {
		p := Patch{Object: f.Object, plane: f.plane, look: f.look, light: f.light, parts: map[string]geom.Geometry{}}
		if g := s.View.Flat(f.Grain); f.Grain != (Vec{}) {
			p.angle = -math.Atan2(float64(g.Y), float64(g.X)) * 180 / math.Pi
		}
		s.Patches = append(s.Patches, p)
		i = len(s.Patches) - 1
	}
	p := &s.Patches[i]
	if !slices.Contains(p.Names, f.Name) {
		p.Names = append(p.Names, f.Name)
	}
	p.parts[f.Name] = s.joined(p.parts[f.Name], rest)
	p.Shape = s.joined(p.Shape, rest)
}

func (s *Seen) joined(a, b geom.Geometry) geom.Geometry {
	g, ok := union(a, b)
	if !ok {
		s.unworked++
		return geom.NewGeometryCollection([]geom.Geometry{a, b}).AsGeometry()
	}
	return g
}

// outlines gathers the patches of each object.
func (s *Seen) outlines() {
	var names []string
	of := map[string]geom.Geometry{}
	for _, p := range s.Patches {
		if _, ok := of[p.Object]; !ok {
			names = append(names, p.Object)
		}
		of[p.Object] = s.joined(of[p.Object], p.Shape)
	}
	for _, n := range names {
		s.Objects = append(s.Objects, Object{n, of[n]})
	}
}

// Bounds gives the box around all that is seen.
func (s Seen) Bounds() geometry.Box {
	var b geometry.Box
	for i, o := range s.Objects {
		c := polygon.Bounds(o.Shape)
		if i == 0 {
			b = c
			continue
		}
		b.Min = geometry.Pt(min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y))
		b.Max = geometry.Pt(max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y))
	}
	return b
}

// Cropped gives what lies in a window of the view.
func (s Seen) Cropped(window geometry.Box) Seen {
	w := polygon.Box(window)
	out := Seen{View: s.View, unworked: s.unworked}
	crop := func(g geom.Geometry) geom.Geometry {
		g, ok := meet(g, w)
		if !ok {
			out.unworked++
		}
		return g
	}
	for _, p := range s.Patches {
		if p.Shape = crop(p.Shape); p.Shape.IsEmpty() {
			continue
		}
		parts := map[string]geom.Geometry{}
		for n, g := range p.parts {
			if g = crop(g); !g.IsEmpty() {
				parts[n] = g
			}
		}
		p.parts = parts
		out.Patches = append(out.Patches, p)
	}
	for _, o := range s.Objects {
		if o.Shape = crop(o.Shape); !o.Shape.IsEmpty() {
			out.Objects = append(out.Objects, o)
		}
	}
	for _, l := range s.Lines {
		if l.Shape = shape.Meet(l.Shape, w); !l.Shape.IsEmpty() {
			out.Lines = append(out.Lines, l)
		}
	}
	return out
}

// Spot gives a place well inside what is seen of the faces with a name, where
// most of them is seen; ok is false where nothing is.
func (s Seen) Spot(name string) (at geometry.Point, ok bool) {
	var best shape.Area
	var most float64
	for _, p := range s.Patches {
		for _, a := range shape.AreasOf(p.parts[name]) {
			if n := a.Size(); n > most {
				best, most = a, n
			}
		}
	}
	if most == 0 {
		return at, false
	}
	return best.Inner(), true
}

// Unworked gives how many shapes could not be worked out and are drawn wrong.
func (s Seen) Unworked() int { return s.unworked }
