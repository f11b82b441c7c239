package proof

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/foldup"
	"forel/render/scene"
)

// block is a board of the model that the pictures are checked against: a box,
// that of a side within the side's outline.
type block struct {
	lo, hi foldup.Vec
	side   bool
}

func blocks(c foldup.Carcass) []block {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	v := func(x, y, z Length) foldup.Vec { return foldup.Vec{X: x, Y: y, Z: z} }
	return []block{
		{v(0, 0, 0), v(s, h, d), true}, {v(w-s, 0, 0), v(w, h, d), true},
		{v(s, 0, 0), v(w-s, h, s), false}, {v(s, h-s, s), v(w-s, h, d), false}, {v(s, 0, s), v(w-s, s, d), false},
	}
}

// enters gives how far along a line of sight a block is first met, the line given
// by a place and the way from it to the viewer. The farther, the nearer the viewer.
func (b block) enters(from, toward foldup.Vec, outline area) (Length, bool) {
	first, last := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, a := range [][4]Length{
		{from.X, toward.X, b.lo.X, b.hi.X}, {from.Y, toward.Y, b.lo.Y, b.hi.Y}, {from.Z, toward.Z, b.lo.Z, b.hi.Z},
	} {
		t, u := (a[2]-a[0])/a[1], (a[3]-a[0])/a[1]
		first, last = min(first, max(t, u)), max(last, min(t, u))
	}
	if first <= last || !b.side {
		return first, first > last
	}
	// Where the line of sight goes over the outline, and which part between is board.
	at := func(t Length) geometry.Point { return geometry.Pt(from.Z+toward.Z*t, from.Y+toward.Y*t) }
	stops := []Length{first, last}
	ring := outline.Rings[0]
	for i, p := range ring {
		q, o, d := ring[(i+1)%len(ring)], at(0), at(1).Sub(at(0))
		e := q.Sub(p)
		if across := d.X*e.Y - d.Y*e.X; across != 0 {
			w := p.Sub(o)
			if t := (w.X*e.Y - w.Y*e.X) / across; t < first && t > last {
				stops = append(stops, t)
			}
		}
	}
	slices.Sort(stops)
	for i := len(stops) - 1; i > 0; i-- {
		if outline.Holds(at((stops[i] + stops[i-1]) / 2)) {
			return stops[i], true
		}
	}
	return 0, false
}

// firstHit follows a line of sight from the viewer through a solid model of the
// boards and dividers, and gives where it comes to board first.
func firstHit(c foldup.Carcass, dividers []foldup.DividerReport, v scene.View, at geometry.Point) (foldup.Vec, bool) {
	outline := area{Rings: [][]geometry.Point{c.Side}}
	// The point of the line nearest the origin, and the way to the viewer, from where
	// the view has a step along each axis.
	x, y, z := v.Flat(scene.Vec{X: 1}), v.Flat(scene.Vec{Y: 1}), v.Flat(scene.Vec{Z: 1})
	right := foldup.Vec{X: x.X, Y: y.X, Z: z.X}
	up := foldup.Vec{X: x.Y, Y: y.Y, Z: z.Y}
	toward := right.Cross(up)
	place := func(t Length) foldup.Vec {
		return foldup.Vec{
			X: right.X*at.X + up.X*at.Y + toward.X*t,
			Y: right.Y*at.X + up.Y*at.Y + toward.Y*t,
			Z: right.Z*at.X + up.Z*at.Y + toward.Z*t,
		}
	}
	all := blocks(c)
	for _, d := range dividers {
		all = append(all, block{d.Min, d.Max, false})
	}
	nearest, hit := Length(math.Inf(-1)), false
	for _, b := range all {
		if t, ok := b.enters(place(0), toward, outline); ok {
			nearest, hit = max(nearest, t), true
		}
	}
	return place(nearest), hit
}

// facesAt gives the planes of faces a place of the boards lies on, and whether
// it lies on the rim of a thumb hole.
func facesAt(c foldup.Carcass, p foldup.Vec, near Length) (faces []geometry.Face, rim bool) {
	is := func(a, b Length) bool { return (a - b).Abs() < near }
	inX := p.X > c.Lined-near && p.X < c.Width-c.Lined+near
	inY := p.Y > c.Lined-near && p.Y < c.Height-c.Lined+near
	add := func(ok bool, f geometry.Face) {
		if ok {
			faces = append(faces, f)
		}
	}
	add(is(p.X, 0), geometry.LeftOutside)
	add(is(p.X, c.Width), geometry.RightOutside)
	add(is(p.Y, c.Height), geometry.HeadOutside)
	add(is(p.Y, 0), geometry.TailOutside)
	add(is(p.Z, 0), geometry.SpineOutside)
	add(is(p.Z, c.Depth) && p.X < c.Lined+near, geometry.LeftMouth)
	add(is(p.Z, c.Depth) && p.X > c.Width-c.Lined-near, geometry.RightMouth)
	add(is(p.Z, c.Depth) && inX && p.Y > c.Height/2, geometry.HeadMouth)
	add(is(p.Z, c.Depth) && inX && p.Y < c.Height/2, geometry.TailMouth)
	add(is(p.X, c.Lined) && inY, geometry.LeftInside)
	add(is(p.X, c.Width-c.Lined) && inY, geometry.RightInside)
	add(is(p.Z, c.Lined) && inX && inY, geometry.SpineInside)
	add(is(p.Y, c.Lined) && inX, geometry.TailInside)
	add(is(p.Y, c.Height-c.Lined) && inX, geometry.HeadInside)
	if hole := holeOf(c); hole != nil && (p.X < c.Lined+near || p.X > c.Width-c.Lined-near) {
		at := geometry.Pt(p.Z, p.Y)
		rim = (area{Rings: [][]geometry.Point{hole}}).Clear(at) < near
	}
	return faces, rim
}

// dividerFacesAt gives the planes of a divider's faces that a place lies on, its
// edges at head and tail among them, which are not drawn.
func dividerFacesAt(d foldup.DividerReport, p foldup.Vec, near Length) (faces []geometry.Face) {
	is := func(a, b Length) bool { return (a - b).Abs() < near }
	in := func(l, lo, hi Length) bool { return l > lo-near && l < hi+near }
	if !in(p.X, d.Min.X, d.Max.X) || !in(p.Y, d.Min.Y, d.Max.Y) || !in(p.Z, d.Min.Z, d.Max.Z) {
		return nil
	}
	for _, f := range []struct {
		ok   bool
		face geometry.Face
	}{
		{is(p.X, d.Min.X), geometry.DividerLeft}, {is(p.X, d.Max.X), geometry.DividerRight}, {is(p.Z, d.Max.Z), geometry.DividerMouth},
		{is(p.Y, d.Min.Y), "foot"}, {is(p.Y, d.Max.Y), "top"},
	} {
		if f.ok {
			faces = append(faces, f.face)
		}
	}
	return faces
}

// What the picture shows at a point is what a line of sight through a model of
// the boards comes to first, and of the layers there the uppermost.
func TestHiddenPartsAreHidden(t *testing.T) {
	for name, s := range subjects(t) {
		t.Run(name, func(t *testing.T) {
			sc := solidOf(s.Report, study(s.Report), looksOf(s))
			checked := map[geometry.Face]int{}
			rapid.Check(t, func(t *rapid.T) {
				rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "points")))
				for range 5 {
					for _, f := range checkPoint(t, s, sc, rnd) {
						checked[f]++
					}
				}
			})
			// All that is turned to the viewer was looked at, and the inside too.
			for _, f := range []geometry.Face{geometry.RightOutside, geometry.HeadOutside, geometry.LeftInside} {
				assert.Positive(t, checked[f], fmt.Sprint(f, checked))
			}
		})
	}
}

// checkPoint looks at one point of the picture and gives the face that is seen
// there, none where it is too near an edge to tell.
func checkPoint(t *rapid.T, s Subject, sc solid, rnd *rand.Rand) (got []geometry.Face) {
	const near = 0.15
	c, b := s.Report.Carcass, sc.bounds()
	q := geometry.Pt(b.Min.X+b.Width()*Length(rnd.Float64()), b.Min.Y+b.Height()*Length(rnd.Float64()))
	p, hit := firstHit(c, s.Report.Dividers, sc.view, q)
	var want []geometry.Face
	rim := false
	if hit {
		want, rim = facesAt(c, p, near)
		for _, d := range s.Report.Dividers {
			want = append(want, dividerFacesAt(d, p, near)...)
		}
		if len(want) != 1 && !(rim && len(want) == 0) || rim && len(want) > 0 {
			return nil
		}
	} else if nearAny(sc, q, 0.3) {
		return nil
	}
	for _, f := range sc.faces {
		if !f.whole.Holds(q) {
			continue
		}
		got = append(got, f.Face)
		for n, l := range f.layers {
			// The uppermost layer at the place itself, in the face's coordinates.
			here := onFace(f.face, p)
			top := -1
			close := false
			for i, o := range f.face.layers {
				for _, a := range o.Shape {
					close = close || a.Clear(here) < 0.3
					if a.Holds(here) {
						top = i
					}
				}
			}
			if !close {
				require.Equal(t, top == n, l.top.Holds(q), "%s: %s at %v", f.Face, l.Piece, here)
			}
		}
	}
	require.Equal(t, want, got, "at %v: %v", q, p)
	require.Equal(t, rim, sc.rims.Holds(q), "rim at %v: %v", q, p)
	return got
}

// onFace gives where a place of the case lies in a face's own coordinates.
func onFace(f face, p foldup.Vec) geometry.Point {
	dot := func(a foldup.Vec) Length {
		return (p.X-f.place.frame.O.X)*a.X + (p.Y-f.place.frame.O.Y)*a.Y + (p.Z-f.place.frame.O.Z)*a.Z
	}
	return geometry.Pt(dot(f.place.frame.U), dot(f.place.frame.V))
}

// nearAny tells whether a point is close to an edge of what is seen.
func nearAny(sc solid, q geometry.Point, d Length) bool {
	for _, f := range sc.faces {
		for _, a := range f.whole {
			if a.Clear(q) < d {
				return true
			}
		}
	}
	return false
}

// All that is seen of a case has one outline without a hole, but for a thumb hole that is
// seen through: no gap of rounding stays between its faces.
func TestACaseHasOneOutline(t *testing.T) {
	for name, s := range subjects(t) {
		sc := solidOf(s.Report, study(s.Report), looksOf(s))
		seen := scene.See(sc.all, sc.view)
		assert.Zero(t, seen.Unworked(), name)
		whole := seen.Together(func(string) bool { return true })
		require.Len(t, whole, 1, name)
		if holeOf(s.Report.Carcass) == nil {
			assert.Len(t, whole[0].Rings, 1, name)
		}
	}
}
