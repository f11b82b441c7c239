// Package offset moves closed outlines of straight lines and arcs outward or
// inward by a distance, as what cuts with a beam of some breadth needs: lines
// stay lines, arcs stay arcs about the same centre, and no point of the result
// is nearer to the outline than the distance, so that nothing is cut off it.
//
// Where the outline turns away from the result, straight lines are carried on to where they
// meet (a mitre), which leaves a corner as sharp as it is drawn; where that is
// further than MitreLimit times the distance, and beside an arc, the corner is
// gone round in an arc about it, which leaves it as sharp. Where the outline
// turns toward the result, the two sides are cut off where they meet: a round
// beam can't reach into such a corner, and Result.Short tells what it leaves.
package offset

import (
	"errors"
	"fmt"
	"math"

	"forel/geometry"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// MitreLimit is how many times the distance from a corner its mitre may be.
// At 2 the corners of 60° and more have one.
const MitreLimit = 2

// The result may stop short of a corner of the outline by MostShort times the
// distance, which is a notch of 23° with a point at its bottom, or by
// ShortAnyway, whichever is more.
const (
	MostShort          = 4
	ShortAnyway Length = 1
)

// same is how near two points are the same point.
const same Length = 1e-7

// Result is an outline that was moved.
type Result struct {
	Path  geometry.Path // closed, counterclockwise
	Short Length        // what the distance from some point of the outline to Path has beyond the distance asked for, at most
}

// NarrowError tells that a notch, a neck or a whole outline is too narrow to
// be followed at the distance.
type NarrowError struct {
	At       geometry.Point // a point of the outline that is not reached
	Distance Length
	Short    Length // how far the result would stop short of it; 0: it has no result at all
}

// Error tells what is too narrow, in millimetres.
func (e *NarrowError) Error() string {
	return fmt.Sprintf("the outline is narrower than %.4g mm near %.4g, %.4g", 2*e.Distance.MM(), e.At.X.MM(), e.At.Y.MM())
}

// errUnworked is given where the pieces of the result do not join up.
var errUnworked = errors.New("the outline can't be moved: it touches or crosses itself")

// Outward returns a closed outline, simple and running either way, moved outward
// by d, which is 0 or more. It fails with a *NarrowError where a notch is too
// narrow to be followed.
func Outward(p geometry.Path, d Length) (Result, error) { return moved(p, d, 1) }

// Inward is Outward the other way, as a hole needs it. It fails with a
// *NarrowError where a neck, or all of it, is too narrow.
func Inward(p geometry.Path, d Length) (Result, error) { return moved(p, d, -1) }

// moved moves an outline outward (sign 1) or inward (-1).
func moved(p geometry.Path, d Length, sign float64) (Result, error) {
	if !(d >= 0) || !p.Closed || len(p.Vertices) < 2 { // true for NaN too
		return Result{}, fmt.Errorf("offset: a closed outline and a distance of 0 or more are needed, not %.4g mm", d.MM())
	}
	p = counterclockwise(p)
	if d < same {
		return Result{Path: p}, nil
	}
	o := outline{segs: p.Segments(), d: d, sign: sign}
	o.chords = p.Flatten(d / 100)
	loops, err := o.stitch(o.valid(o.split(o.raw())))
	if err != nil {
		return Result{}, err
	}
	if len(loops) == 0 {
		return Result{}, &NarrowError{At: p.Bounds().Center(), Distance: d}
	}
	at, short := o.furthest(loops[0])
	if len(loops) > 1 || short > max(MostShort*d, ShortAnyway) {
		for _, l := range loops[1:] {
			if q, s := o.furthest(l); s < short {
				at, short = q, s
			}
		}
		return Result{}, &NarrowError{At: at, Distance: d, Short: short}
	}
	if area := loops[0].SignedArea(); (area-p.SignedArea())*sign <= 0 || area <= 0 {
		return Result{}, errUnworked
	}
	return Result{Path: loops[0], Short: max(0, short)}, nil
}

// straight is the radius from which on an arc is taken as straight: its centre
// is too far away to reckon with. Over 300 mm it leaves its chord by 0.1 µm.
const straight Length = 1e8

// counterclockwise turns a path that runs the other way about, drops
// points that repeat the one before, and straightens arcs that are all but
// straight.
func counterclockwise(p geometry.Path) geometry.Path {
	var vs []geometry.Vertex
	n := len(p.Vertices)
	for i, v := range p.Vertices {
		chord := v.Point.Distance(p.Vertices[(i+1)%n].Point)
		if math.Abs(v.Bulge)*4*straight.MM() < chord.MM() { // the radius of a flat arc is chord / 4 bulge
			v.Bulge = 0
		}
		if !(v.Bulge == 0 && chord < same) {
			vs = append(vs, v)
		}
	}
	p.Vertices = vs
	if p.SignedArea() >= 0 {
		return p
	}
	n = len(vs)
	back := make([]geometry.Vertex, n)
	for i, v := range vs {
		back[(n-i)%n].Point = v.Point
		back[(2*n-1-i)%n].Bulge = -v.Bulge // the way on from a vertex was the way to it
	}
	return geometry.Path{Vertices: back, Closed: true}
}

// outline is what is being moved.
type outline struct {
	segs   []geometry.Segment
	chords []geometry.Point // the same, in chords
	d      Length
	sign   float64
}

// furthest returns the point of the outline that a loop stops short of most: at
// the ends and along each of the outline's segments.
func (o outline) furthest(loop geometry.Path) (geometry.Point, Length) {
	const steps = 8
	segs := loop.Segments()
	at, most := geometry.Point{}, Length(-1)
	for _, s := range o.segs {
		for i := range steps {
			q := pointAt(s, float64(i)/steps)
			if short := distance(q, segs) - o.d; short > most {
				at, most = q, short
			}
		}
	}
	return at, most
}
