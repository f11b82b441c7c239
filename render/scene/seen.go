package scene

import (
	"math"
	"slices"

	"forel/geometry"
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
	Shape  Region
	look   Look
	light  float64
	angle  float64 // of its grain on the page, in degrees
	plane  string
	parts  map[string][]Region // what is seen of each face, by its name
}

// Object is all that is seen of an object.
type Object struct {
	Name  string
	Shape Region
}

// Drawn is what is seen of a line.
type Drawn struct {
	Runs   [][]geometry.Point
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
	for i := range flat {
		f := &flat[i]
		if hiddenWholly(f, flat) {
			continue
		}
		rest := f.shape
		for k := range flat {
			if k == i || len(rest) == 0 {
				continue
			}
			hidden, outline, ok := out.hidden(f, &flat[k])
			if !ok || len(hidden) == 0 {
				continue
			}
			if outline != nil && outline.holds(cornersOf(rest)) {
				rest = nil
				break
			}
			if rest, ok = without(rest, hidden); !ok {
				out.unworked++
			}
		}
		if len(rest) == 0 {
			continue
		}
		out.add(*f, rest)
		for _, l := range f.Lines {
			var pts []geometry.Point
			for _, p := range l.Points {
				pts = append(pts, v.Flat(p))
			}
			out.Lines = append(out.Lines, Drawn{rest.along(pts), l.Stroke})
		}
	}
	out.outlines()
	return out
}

// hiddenWholly tells whether one of some faces hides all of another.
func hiddenWholly(f *flatFace, all []flatFace) bool {
	for i := range all {
		g := &all[i]
		if g == f || g.convex == nil || !g.box.Grow(hair).Contains(f.box) {
			continue
		}
		if least, _ := f.nearest(g, f.corners); least > touching && g.convex.holds(f.corners) {
			return true
		}
	}
	return false
}

// cornersOf gives the corners of the outlines of polygons.
func cornersOf(r Region) []geometry.Point {
	if len(r) == 1 {
		return r[0].Rings[0]
	}
	var out []geometry.Point
	for _, a := range r {
		out = append(out, a.Rings[0]...)
	}
	return out
}

// add adds a face to its patch.
func (s *Seen) add(f flatFace, rest Region) {
	i := slices.IndexFunc(s.Patches, func(p Patch) bool { return p.Object == f.Object && p.plane == f.plane })
	if i < 0 {
		p := Patch{Object: f.Object, plane: f.plane, look: f.look, light: f.light, parts: map[string][]Region{}}
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
	p.Shape = s.joined(p.Shape, rest)
}

func (s *Seen) joined(a, b Region) Region {
	r, ok := union(a, b)
	if !ok {
		s.unworked++
		return slices.Concat(a, b)
	}
	return r
}

// outlines gathers the patches of each object.
func (s *Seen) outlines() {
	var names []string
	of := map[string]Region{}
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
		c := o.Shape.Bounds()
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
	w := polygonOf(geometry.Rectangle(window).Flatten(1))
	out := Seen{View: s.View, unworked: s.unworked}
	crop := func(r Region) Region {
		if window.Contains(r.Bounds()) {
			return r
		}
		r, ok := meet(r, w)
		if !ok {
			out.unworked++
		}
		return r
	}
	for _, p := range s.Patches {
		if p.Shape = crop(p.Shape); len(p.Shape) == 0 {
			continue
		}
		parts := map[string][]Region{}
		for n, all := range p.parts {
			for _, r := range all {
				parts[n] = append(parts[n], crop(r))
			}
		}
		p.parts = parts
		out.Patches = append(out.Patches, p)
	}
	for _, o := range s.Objects {
		if o.Shape = crop(o.Shape); len(o.Shape) > 0 {
			out.Objects = append(out.Objects, o)
		}
	}
	for _, l := range s.Lines {
		var runs [][]geometry.Point
		for _, run := range l.Runs {
			runs = append(runs, w.along(run)...)
		}
		if l.Runs = runs; len(runs) > 0 {
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
		var all Region
		for _, r := range p.parts[name] {
			all = s.joined(all, r)
		}
		for _, a := range all {
			if n := a.Size(); n > most*1.001 { // of two as large the first
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
