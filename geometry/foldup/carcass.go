package foldup

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/polygon"
)

// Carcass is the boards as they stand glued together.
type Carcass struct {
	Width, Height, Depth Length // outside: X, Y, Z
	Lined                Length // thickness of a board with its lining
	// Side is the outline of a side, spine at X = 0, tail at Y = 0: the same
	// for both, since a side is alike from head and tail.
	Side []geometry.Point
}

// surface is a flat face of the carcass: its outline in two of the case's
// axes, the plane it lies in, and the way it looks.
type surface struct {
	name   geometry.Face
	frame  Frame // X and Y of the face along two axes of the case
	normal Vec   // out of the board
	extent geometry.Box
	shape  polygon.Shape // of the extent
	plain  bool          // it is the whole of its extent
	inside bool
	plane  int // faces of one plane share its number, frame and normal
}

// carcassBoards are the boards that the carcass is built of.
var carcassBoards = []string{"side", "spine wall", "head wall", "tail wall"}

// Build puts the boards together and tells what does not meet. lined is the
// thickness of a board with its lining.
func Build(pieces []geometry.Piece, lined Length) (Carcass, []Fault) {
	size := map[string][2]Length{}
	var faults []Fault
	var outline []geometry.Point
	for _, p := range pieces {
		if p.Material == geometry.Board {
			w, h := p.Size()
			size[p.Name] = [2]Length{w, h}
			if full := float64(w * h); p.Name != "side" && math.Abs(p.Outline.SignedArea()-full) > 1e-6*full {
				faults = append(faults, Fault{Kind: Misfit, Piece: p.Name, What: "not a rectangle"})
			}
			if p.Name == "side" {
				outline = p.Outline.Flatten(0.01)
			}
		}
	}
	for _, name := range carcassBoards {
		if _, ok := size[name]; !ok {
			faults = append(faults, Fault{Kind: Misfit, Piece: name, What: "missing"})
		}
	}
	if len(faults) > 0 {
		return Carcass{}, faults
	}
	side, spine := size["side"], size["spine wall"]
	same := func(piece, what string, a, b Length) {
		if !a.Near(b) {
			faults = append(faults, Fault{Kind: Misfit, Piece: piece, What: fmt.Sprintf("%s: %.3f mm where %.3f mm meets", what, a.MM(), b.MM())})
		}
	}
	same("spine wall", "height against the sides", spine[1], side[1])
	for _, name := range []string{"head wall", "tail wall"} {
		same(name, "thickness of the cavity against the spine wall", size[name][1], spine[0])
		same(name, "depth with the spine wall against the sides", size[name][0]+lined, side[0])
	}
	return Carcass{Width: spine[0] + 2*lined, Height: side[1], Depth: side[0], Lined: lined, Side: outline}, faults
}

// corner gives where a corner of the carcass is.
func (c Carcass) corner(k geometry.Corner) Vec {
	var v Vec
	if k.Right {
		v.X = c.Width
	}
	if k.Head {
		v.Y = c.Height
	}
	if k.Mouth {
		v.Z = c.Depth
	}
	return v
}

// within gives the corner of the space between the boards that is nearest to a
// corner of the carcass.
func (c Carcass) within(v Vec) Vec {
	in := func(l, whole Length) Length {
		if l > whole/2 {
			return whole - c.Lined
		}
		return c.Lined
	}
	return Vec{X: in(v.X, c.Width), Y: in(v.Y, c.Height), Z: max(v.Z, c.Lined)}
}

// surfaces lists the faces that are to be covered or lined.
func (c Carcass) surfaces() []surface {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	x, y, z := Vec{X: 1}, Vec{Y: 1}, Vec{Z: 1}
	plane := 0
	face := func(name geometry.Face, o, u, v, n Vec, box geometry.Box, inside bool) surface {
		if name != geometry.RightMouth && name != geometry.HeadMouth && name != geometry.TailMouth {
			plane++
		}
		return surface{name, Frame{O: o, U: u, V: v}, n, box, shape(corners(box)), true, inside, plane}
	}
	// A side may be cut at the mouth, for a thumb.
	cut := func(f surface) surface {
		if len(c.Side) > 4 {
			f.shape, f.plain = meet(f.shape, shape(c.Side)), false
		}
		return f
	}
	edge := func(f surface) surface {
		if len(c.Side) == 4 {
			return f
		}
		var left []polygon.Shape
		for i, a := range c.Side {
			b := c.Side[(i+1)%len(c.Side)]
			if a.X.Near(d) && b.X.Near(d) {
				left = append(left, shape(corners(geometry.Bx(f.extent.Min.X, min(a.Y, b.Y), f.extent.Max.X, max(a.Y, b.Y)))))
			}
		}
		f.shape, f.plain = united(left), false
		return f
	}
	neg := func(v Vec) Vec { return v.Mul(-1) }
	return []surface{
		cut(face(geometry.LeftOutside, Vec{}, z, y, neg(x), geometry.Bx(0, 0, d, h), false)),
		cut(face(geometry.RightOutside, Vec{X: w}, z, y, x, geometry.Bx(0, 0, d, h), false)),
		face(geometry.SpineOutside, Vec{}, x, y, neg(z), geometry.Bx(0, 0, w, h), false),
		face(geometry.HeadOutside, Vec{Y: h}, x, z, y, geometry.Bx(0, 0, w, d), false),
		face(geometry.TailOutside, Vec{}, x, z, neg(y), geometry.Bx(0, 0, w, d), false),
		edge(face(geometry.LeftMouth, Vec{Z: d}, x, y, z, geometry.Bx(0, 0, s, h), false)),
		edge(face(geometry.RightMouth, Vec{Z: d}, x, y, z, geometry.Bx(w-s, 0, w, h), false)),
		face(geometry.HeadMouth, Vec{Z: d}, x, y, z, geometry.Bx(s, h-s, w-s, h), false),
		face(geometry.TailMouth, Vec{Z: d}, x, y, z, geometry.Bx(s, 0, w-s, s), false),
		cut(face(geometry.LeftInside, Vec{X: s}, z, y, x, geometry.Bx(s, s, d, h-s), true)),
		cut(face(geometry.RightInside, Vec{X: w - s}, z, y, neg(x), geometry.Bx(s, s, d, h-s), true)),
		face(geometry.SpineInside, Vec{Z: s}, x, y, z, geometry.Bx(s, s, w-s, h-s), true),
		face(geometry.HeadInside, Vec{Y: h - s}, x, z, neg(y), geometry.Bx(s, s, w-s, d), true),
		face(geometry.TailInside, Vec{Y: s}, x, z, y, geometry.Bx(s, s, w-s, d), true),
	}
}
