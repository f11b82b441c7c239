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
	"forel/geometry/plan"
	"forel/geometry/polygon"
	"forel/geometry/slipcase"
	"forel/geometry/space"
	"forel/geometry/stage"
	"forel/render/scene"
)

// block is a board of the model that the pictures are checked against: a box, that of
// a side or a divider within an outline, from spine and tail.
type block struct {
	lo, hi space.Vec
	side   []geometry.Point
}

func blocks(c slipcase.Carcass) []block {
	s, w, h, d := c.Lined, c.Width, c.Height, c.Depth
	v := func(x, y, z Length) space.Vec { return space.Vec{X: x, Y: y, Z: z} }
	return []block{
		{v(0, 0, 0), v(s, h, d), c.Side}, {v(w-s, 0, 0), v(w, h, d), c.Side},
		{v(s, 0, 0), v(w-s, h, s), nil}, {v(s, h-s, s), v(w-s, h, d), nil}, {v(s, 0, s), v(w-s, s, d), nil},
	}
}

// divider gives one as the model has it.
func divider(d plan.Solid) block {
	box := geometry.Around(d.Outline...)
	return block{d.Frame.O, d.Frame.O.Add(space.Vec{X: d.Thick, Y: box.Height(), Z: box.Width()}), d.Outline}
}

// enters gives how far along a line of sight a block is first met, the line given
// by a place and the way from it to the viewer. The farther, the nearer the viewer.
func (b block) enters(from, toward space.Vec) (Length, bool) {
	first, last := Length(math.Inf(1)), Length(math.Inf(-1))
	for _, a := range [][4]Length{
		{from.X, toward.X, b.lo.X, b.hi.X}, {from.Y, toward.Y, b.lo.Y, b.hi.Y}, {from.Z, toward.Z, b.lo.Z, b.hi.Z},
	} {
		t, u := (a[2]-a[0])/a[1], (a[3]-a[0])/a[1]
		first, last = min(first, max(t, u)), max(last, min(t, u))
	}
	if first <= last || b.side == nil {
		return first, first > last
	}
	// Where the line of sight goes over the outline, and which part between is board.
	at := func(t Length) geometry.Point { return geometry.Pt(from.Z+toward.Z*t-b.lo.Z, from.Y+toward.Y*t-b.lo.Y) }
	outline := area{Rings: [][]geometry.Point{b.side}}
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
func firstHit(c slipcase.Carcass, dividers []plan.Solid, v stage.View, at geometry.Point) (space.Vec, bool) {
	// The point of the line nearest the origin, and the way to the viewer.
	sinYaw, cosYaw := math.Sincos(v.Yaw * math.Pi / 180)
	sinPitch, cosPitch := math.Sincos(v.Pitch * math.Pi / 180)
	right := space.Vec{X: Length(cosYaw), Z: Length(-sinYaw)}
	up := space.Vec{X: Length(-sinYaw * sinPitch), Y: Length(cosPitch), Z: Length(-cosYaw * sinPitch)}
	toward := right.Cross(up)
	place := func(t Length) space.Vec {
		return space.Vec{
			X: right.X*at.X + up.X*at.Y + toward.X*t,
			Y: right.Y*at.X + up.Y*at.Y + toward.Y*t,
			Z: right.Z*at.X + up.Z*at.Y + toward.Z*t,
		}
	}
	all := blocks(c)
	for _, d := range dividers {
		all = append(all, divider(d))
	}
	nearest, hit := Length(math.Inf(-1)), false
	for _, b := range all {
		if t, ok := b.enters(place(0), toward); ok {
			nearest, hit = max(nearest, t), true
		}
	}
	return place(nearest), hit
}

// onRim tells whether a place of a side or a divider, given with its outline, is near
// the rim of a thumb hole.
func onRim(side []geometry.Point, at geometry.Point, near Length) bool {
	if len(side) <= 4 {
		return false
	}
	hole := without(polygon.Box(geometry.Around(side...)), polygon.Of(side))
	return hole[0].Clear(at) < near
}

// facesAt gives the planes of faces a place of the boards lies on, and whether
// it lies on the rim of a thumb hole.
func facesAt(c slipcase.Carcass, p space.Vec, near Length) (faces []geometry.Face, rim bool) {
	is := func(a, b Length) bool { return (a - b).Abs() < near }
	inX := p.X > c.Lined-near && p.X < c.Width-c.Lined+near
	inY := p.Y > c.Lined-near && p.Y < c.Height-c.Lined+near
	add := func(ok bool, f geometry.Face) {
		if ok {
			faces = append(faces, f)
		}
	}
	add(is(p.X, 0), slipcase.LeftOutside)
	add(is(p.X, c.Width), slipcase.RightOutside)
	add(is(p.Y, c.Height), slipcase.HeadOutside)
	add(is(p.Y, 0), slipcase.TailOutside)
	add(is(p.Z, 0), slipcase.SpineOutside)
	add(is(p.Z, c.Depth) && p.X < c.Lined+near, slipcase.LeftMouth)
	add(is(p.Z, c.Depth) && p.X > c.Width-c.Lined-near, slipcase.RightMouth)
	add(is(p.Z, c.Depth) && inX && p.Y > c.Height-c.Lined-near, slipcase.HeadMouth)
	add(is(p.Z, c.Depth) && inX && p.Y < c.Lined+near, slipcase.TailMouth)
	add(is(p.X, c.Lined) && inY, slipcase.LeftInside)
	add(is(p.X, c.Width-c.Lined) && inY, slipcase.RightInside)
	add(is(p.Z, c.Lined) && inX && inY, slipcase.SpineInside)
	add(is(p.Y, c.Lined) && inX, slipcase.TailInside)
	add(is(p.Y, c.Height-c.Lined) && inX, slipcase.HeadInside)
	if p.X < c.Lined+near || p.X > c.Width-c.Lined-near {
		rim = onRim(c.Side, geometry.Pt(p.Z, p.Y), near)
	}
	return faces, rim
}

// dividerFacesAt gives the planes of a divider's faces that a place lies on, its
// edges at head and tail among them, which are not drawn; none at the rim of its hole.
func dividerFacesAt(d block, p space.Vec, near Length) (faces []geometry.Face) {
	is := func(a, b Length) bool { return (a - b).Abs() < near }
	in := func(l, lo, hi Length) bool { return l > lo-near && l < hi+near }
	if !in(p.X, d.lo.X, d.hi.X) || !in(p.Y, d.lo.Y, d.hi.Y) || !in(p.Z, d.lo.Z, d.hi.Z) {
		return nil
	}
	if onRim(d.side, geometry.Pt(p.Z-d.lo.Z, p.Y-d.lo.Y), near) {
		return nil
	}
	for _, f := range []struct {
		ok   bool
		face geometry.Face
	}{
		{is(p.X, d.lo.X), slipcase.DividerLeft}, {is(p.X, d.hi.X), slipcase.DividerRight}, {is(p.Z, d.hi.Z), slipcase.DividerMouth},
		{is(p.Y, d.lo.Y), "foot"}, {is(p.Y, d.hi.Y), "top"},
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
	for name, s := range subjects() {
		t.Run(name, func(t *testing.T) {
			d := newDoc(s.Plan, Options{})
			seen, window := d.panel(d.picture()).See()
			checked := map[geometry.Face]int{}
			rapid.Check(t, func(t *rapid.T) {
				rnd := rand.New(rand.NewSource(rapid.Int64().Draw(t, "points")))
				for range 30 {
					for _, f := range checkPoint(t, s, d.faces, seen, window, rnd) {
						checked[f]++
					}
				}
			})
			// All that is turned to the viewer was looked at, and the inside too.
			for _, f := range []geometry.Face{slipcase.RightOutside, slipcase.HeadOutside, slipcase.LeftInside} {
				assert.Positive(t, checked[f], fmt.Sprint(f, checked))
			}
		})
	}
}

// checkPoint looks at one point of the picture and gives the face that is seen
// there, none where it is too near an edge to tell.
func checkPoint(t *rapid.T, s subject, faces []face, seen scene.Seen, b geometry.Box, rnd *rand.Rand) (got []geometry.Face) {
	const near = 0.15
	c := s.Report.Carcass
	q := geometry.Pt(b.Min.X+b.Width()*Length(rnd.Float64()), b.Min.Y+b.Height()*Length(rnd.Float64()))
	p, hit := firstHit(c, s.Report.Dividers, s.Proof.View, q)
	var want []geometry.Face
	rim := false
	if hit {
		want, rim = facesAt(c, p, near)
		for _, d := range s.Report.Dividers {
			want = append(want, dividerFacesAt(divider(d), p, near)...)
		}
		if len(want) != 1 && !(rim && len(want) == 0) || rim && len(want) > 0 {
			return nil
		}
	} else if nearAny(seen, q, 0.3) {
		return nil
	}
	for _, f := range faces {
		here := onFace(f, p)
		if !f.seenOf(seen).Holds(q) || p.Sub(f.Frame.O).Dot(f.Normal).Abs() > near || !f.shape.Holds(here) { // the same face of another divider
			continue
		}
		got = append(got, f.Face)
		// The uppermost layer at the place itself, in the face's coordinates.
		top, close := "", false
		for _, o := range f.layers {
			for _, a := range o.Shape {
				close = close || a.Clear(here) < 0.3
				if a.Holds(here) {
					top = o.Piece
				}
			}
		}
		if close {
			continue
		}
		require.Equal(t, top == "", seen.Of(f.ground(), f.spot("")).Holds(q), "%s: bare at %v", f.Face, here)
		for _, piece := range f.pieces() {
			require.Equal(t, top == piece, seen.Of(piece, f.spot(piece)).Holds(q), "%s: %s at %v", f.Face, piece, here)
		}
	}
	require.Equal(t, want, got, "at %v: %v", q, p)
	require.Equal(t, rim, slices.ContainsFunc(s.Proof.Solids, func(o plan.Solid) bool {
		return seen.Of(o.Name, o.Name).Holds(q) || seen.Of(o.Name, o.Name+", edge").Holds(q)
	}), "rim at %v: %v", q, p)
	return got
}

// onFace gives where a place of the case lies in a face's own coordinates.
func onFace(f face, p space.Vec) geometry.Point {
	return f.Frame.Flat(p)
}

// nearAny tells whether a point is close to an edge of what is seen.
func nearAny(seen scene.Seen, q geometry.Point, d Length) bool {
	for _, o := range seen.Objects {
		for _, a := range o.Shape {
			if a.Clear(q) < d {
				return true
			}
		}
	}
	return false
}
