package proof

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"forel/geometry"
	"forel/geometry/foldup"
)

func times(v foldup.Vec, f Length) foldup.Vec { return foldup.Vec{X: v.X * f, Y: v.Y * f, Z: v.Z * f} }

// Seen from in front, right, up and toward the viewer are right-handed: no
// face is drawn as in a mirror.
func TestFacesAreNotMirrored(t *testing.T) {
	for _, f := range study(made(t, jobOf(221.5, 148.5, 32)).Report) {
		p := f.place
		right, up := p.frame.U, p.frame.V
		if p.flipX {
			right = times(right, -1)
		}
		if p.flipY {
			up = times(up, -1)
		}
		assert.Equal(t, times(p.normal, 1), right.Cross(up), p.face)
	}
}

// What is said to lie beyond an edge lies that way in the case: the mouth at
// the greatest Z, the head at the greatest Y, the right side at the greatest X.
func TestEdgesAreNamedRightly(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	c := s.Report.Carcass
	middle := foldup.Vec{X: c.Width / 2, Y: c.Height / 2, Z: c.Depth / 2}
	away := func(v foldup.Vec) Length { return (v.X - middle.X).Abs() + (v.Y - middle.Y).Abs() } // from the axis of the case
	faces := study(s.Report)
	require.Len(t, faces, 14)
	for _, f := range faces {
		e := f.Extent
		left, right, bottom, top := geometry.Pt(e.Min.X, e.Center().Y), geometry.Pt(e.Max.X, e.Center().Y), geometry.Pt(e.Center().X, e.Min.Y), geometry.Pt(e.Center().X, e.Max.Y)
		if f.place.flipX {
			left, right = right, left
		}
		if f.place.flipY {
			bottom, top = top, bottom
		}
		for _, edge := range []struct {
			name       string
			here, over geometry.Point // the middle of this edge and of the one opposite
		}{{f.place.left, left, right}, {f.place.right, right, left}, {f.place.bottom, bottom, top}, {f.place.top, top, bottom}} {
			a, b := f.place.at(edge.here), f.place.at(edge.over)
			ok := map[string]bool{
				"mouth": a.Z > b.Z, "spine": a.Z < b.Z,
				"head": a.Y > b.Y, "tail": a.Y < b.Y,
				"left side": a.X < b.X, "right side": a.X > b.X,
				"outside": away(a) > away(b), "inside": away(a) < away(b),
			}[edge.name]
			assert.True(t, ok, "%s: %s", f.Face, edge.name)
		}
	}
}

// Faces lie where the carcass has them: outside on its outer planes, inside a
// lined board further in, the mouth at its full depth.
func TestFacesLieOnTheCarcass(t *testing.T) {
	s := made(t, jobOf(221.5, 148.5, 32))
	c := s.Report.Carcass
	for _, f := range study(s.Report) {
		var lo, hi foldup.Vec
		for i, q := range geometry.Rectangle(f.Extent).Flatten(1) {
			v := f.place.at(q)
			if i == 0 {
				lo, hi = v, v
			}
			lo = foldup.Vec{X: min(lo.X, v.X), Y: min(lo.Y, v.Y), Z: min(lo.Z, v.Z)}
			hi = foldup.Vec{X: max(hi.X, v.X), Y: max(hi.Y, v.Y), Z: max(hi.Z, v.Z)}
		}
		in := func(v Length, side, whole Length) bool { // from -side on to the whole
			return v.Near(side) || v.Near(whole-side)
		}
		n := f.place.normal
		switch {
		case mouthEdge(f.Face):
			assert.True(t, lo.Z.Near(c.Depth) && hi.Z.Near(c.Depth), f.Face)
		case f.Inside && n.X != 0:
			assert.True(t, in(lo.X, c.Lined, c.Width) && lo.X.Near(hi.X), f.Face)
		case f.Inside && n.Y != 0:
			assert.True(t, in(lo.Y, c.Lined, c.Height) && lo.Y.Near(hi.Y), f.Face)
		case f.Inside:
			assert.True(t, lo.Z.Near(c.Lined) && hi.Z.Near(c.Lined), f.Face)
		case n.X != 0:
			assert.True(t, in(lo.X, 0, c.Width) && lo.X.Near(hi.X), f.Face)
		case n.Y != 0:
			assert.True(t, in(lo.Y, 0, c.Height) && lo.Y.Near(hi.Y), f.Face)
		default:
			assert.True(t, lo.Z.Near(0) && hi.Z.Near(0), f.Face)
		}
		assert.GreaterOrEqual(t, min(lo.X, lo.Y, lo.Z).MM(), -1e-9, f.Face)
		assert.LessOrEqual(t, max(hi.X-c.Width, hi.Y-c.Height, hi.Z-c.Depth).MM(), 1e-9, f.Face)
	}
}
