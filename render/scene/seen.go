package scene

import (
	"cmp"
	"math"
	"slices"

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
	Shape  polygon.Shape
	look   Look
	light  float64
	angle  float64 // of its grain on the page, in degrees
	plane  string
	parts  map[string][]polygon.Shape // what is seen of each face, by its name
	seen   polygon.Shape              // of all of them, to the nanometre
}

// Object is all that is seen of an object.
type Object struct {
	Name  string
	Shape polygon.Shape
}

// Drawn is what is seen of a line.
type Drawn struct {
	Runs   [][]geometry.Point
	Stroke render.Stroke
}

// See looks at faces.
func See(faces []Face, v View) Seen {
	inf := Length(math.Inf(1))
	return SeeIn(faces, v, geometry.Bx(-inf, -inf, inf, inf))
}

// SeeIn looks at faces through a window of the view.
func SeeIn(faces []Face, v View, window geometry.Box) Seen {
	var flat []*flatFace
	for _, f := range faces {
		if s, ok := v.seenFlat(f); ok && s.box.Overlaps(window) {
			flat = append(flat, &s)
		}
	}
	// What is hidden by one face hides nothing more. The largest hide most.
	all := slices.Clone(flat)
	flat = slices.DeleteFunc(flat, func(f *flatFace) bool { return f.behindOne(all) })
	hiders := slices.Clone(flat)
	slices.SortStableFunc(hiders, func(f, g *flatFace) int { return cmp.Compare(g.shape.Size(), f.shape.Size()) })
	out := Seen{View: v}
	for _, f := range flat {
		rest, ok := f.behind(hiders, window)
		if !ok {
			out.unworked++
		}
		if len(rest) == 0 {
			hiders = slices.DeleteFunc(hiders, func(g *flatFace) bool { return g == f })
			continue
		}
		out.add(*f, rest)
		for _, l := range f.Lines {
			var pts []geometry.Point
			for _, p := range l.Points {
				pts = append(pts, v.Flat(p))
			}
			out.Lines = append(out.Lines, Drawn{rest.Along(pts), l.Stroke})
		}
	}
	for i := range out.Patches {
		p := &out.Patches[i]
		var all []polygon.Shape
		for _, name := range p.Names {
			all = append(all, p.parts[name]...)
		}
		p.seen = out.united(all)
		p.Shape = tidied(p.seen)
	}
	for _, p := range out.Patches {
		if !slices.ContainsFunc(out.Objects, func(o Object) bool { return o.Name == p.Object }) {
			out.Objects = append(out.Objects, Object{Name: p.Object, Shape: out.Together(func(o string) bool { return o == p.Object })})
		}
	}
	return out
}

// Together returns what is seen of some objects as one shape.
func (s *Seen) Together(of func(object string) bool) polygon.Shape {
	var all []polygon.Shape
	for _, p := range s.Patches {
		if of(p.Object) {
			all = append(all, p.seen)
		}
	}
	return s.joined(all)
}

// add adds a face to its patch.
func (s *Seen) add(f flatFace, rest polygon.Shape) {
	i := slices.IndexFunc(s.Patches, func(p Patch) bool { return p.Object == f.Object && p.plane == f.plane })
	if i < 0 {
		p := Patch{Object: f.Object, plane: f.plane, look: f.look, light: f.light, parts: map[string][]polygon.Shape{}}
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
	p.parts[f.Name] = append(p.parts[f.Name], rest)
}

// joined returns shapes as one, without what is too thin to be drawn.
func (s *Seen) joined(all []polygon.Shape) polygon.Shape { return tidied(s.united(all)) }

func (s *Seen) united(all []polygon.Shape) polygon.Shape {
	one, err := polygon.Union(all...)
	if err != nil {
		s.unworked++
		one = slices.Concat(all...)
	}
	return one
}

// tidied returns a shape without what is too thin to be drawn.
func tidied(s polygon.Shape) polygon.Shape {
	var out polygon.Shape
	for _, a := range s.Broader(speck) {
		var kept polygon.Area
		for _, ring := range a.Rings {
			if ring = polygon.Tidy(ring, thin, true); len(kept.Rings) == 0 || (polygon.Area{Rings: [][]geometry.Point{ring}}).Breadth() < -speck {
				kept.Rings = append(kept.Rings, ring)
			}
		}
		out = append(out, kept)
	}
	return out
}

// Of returns what is seen of the faces of an object with a name.
func (s Seen) Of(object, name string) polygon.Shape {
	var all []polygon.Shape
	for _, p := range s.Patches {
		if p.Object == object {
			all = append(all, p.parts[name]...)
		}
	}
	return s.joined(all)
}

// Bounds returns the box around all that is seen.
func (s Seen) Bounds() geometry.Box {
	var all polygon.Shape
	for _, o := range s.Objects {
		all = append(all, o.Shape...)
	}
	return all.Bounds()
}

// Spot returns a place well inside what is seen of the faces with a name, where
// most of them is seen; ok is false where nothing is.
func (s Seen) Spot(name string) (at geometry.Point, ok bool) {
	var best polygon.Area
	var most float64
	for _, p := range s.Patches {
		for _, a := range s.joined(p.parts[name]) {
			if n := a.Size(); n > most*1.001 { // of two as large the first
				best, most = a, n
			}
		}
	}
	if most == 0 {
		return at, false
	}
	return shape.Inner(best), true
}

// Unworked returns how many shapes could not be worked out and are drawn wrong.
func (s Seen) Unworked() int { return s.unworked }
