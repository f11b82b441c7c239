package paper_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/paper"
)

// Every join has two marks of its own. Each lies on the line on which the two
// tiles are joined, and is printed on both. No name is used twice in a layout.
func TestJoinsHaveTwoMarks(t *testing.T) {
	forLayouts(t, func(t *rapid.T, s paper.Setup, _ []geometry.Piece, l paper.Layout) {
		names := map[string]bool{}
		for _, p := range l.Tilings {
			joins := 0
			for _, m := range p.Marks {
				assert.False(t, names[m.Name], "%s twice", m.Name)
				names[m.Name] = true
			}
			for _, tile := range p.Tiles {
				for _, to := range [][2]int{{0, 1}, {1, 0}} {
					next, ok := p.Neighbour(tile.Row+to[0], tile.Col+to[1])
					if !ok {
						continue
					}
					joins++
					line := tile.Core.Grow(eps).Intersect(next.Core.Grow(eps))
					var on []geometry.Point
					for _, m := range p.Marks {
						if !line.Contains(geometry.Box{Min: m.At, Max: m.At}) {
							continue
						}
						on = append(on, m.At)
						// Its circle is whole on both.
						ring := geometry.Box{Min: m.At, Max: m.At}.Grow(1.8)
						assert.True(t, tile.Window.Contains(ring) && next.Window.Contains(ring), "%s at %.2f", m.Name, m.At)
					}
					require.Len(t, on, 2, "join of %d,%d and %d,%d", tile.Row, tile.Col, next.Row, next.Col)
					long := max(line.Width(), line.Height())
					assert.GreaterOrEqual(t, on[0].Distance(on[1]), min(12, long/4)-eps, "far enough apart to fix the angle")
				}
			}
			assert.Len(t, p.Marks, 2*joins)
		}
	})
}

// corners gives where the lines of a template begin, bend or end, across and up.
func corners(p geometry.Piece) (xs, ys []paper.Length) {
	for _, l := range p.Lines() {
		for _, v := range l.Vertices {
			xs, ys = append(xs, v.X), append(ys, v.Y)
		}
	}
	return xs, ys
}

func clearance(at paper.Length, off []paper.Length) paper.Length {
	near := paper.Length(1e9)
	for _, o := range off {
		near = min(near, (o - at).Abs())
	}
	return near
}

// canKeepOff tells whether so many joins over a length can all keep off some
// places: each as far along as its sheet reaches, or the next clear place before
// that. If these don't come to the end, none do.
func canKeepOff(from, end, print, overlap paper.Length, joins int, off []paper.Length, by paper.Length) bool {
	const step = 0.05
	at := from + overlap/2
	for range joins {
		next := at + print - overlap
		for clearance(next, off) < by {
			if next -= step; next <= at {
				return false
			}
		}
		at = next - step // room to look in, so that steps of a search need not be as fine
	}
	return end-at+overlap/2 <= print
}

// No join comes nearer than 5 mm to where a line of the template begins, bends or
// ends (the end of a fold, an apex, the start of a slit), wherever the grid
// leaves room to move.
func TestJoinsKeepOffCorners(t *testing.T) {
	forLayouts(t, func(t *rapid.T, s paper.Setup, _ []geometry.Piece, l paper.Layout) {
		for _, p := range l.Tilings {
			xs, ys := gridOf(t, p)
			slices.Reverse(ys)
			// The least that a sheet prints, of those the windows fit.
			across, up := paper.Length(1e9), paper.Length(1e9)
			for _, lying := range []bool{false, true} {
				_, _, area := prints(s, lying)
				w, h := area.Width(), area.Height()
				fits := true
				for _, tile := range p.Tiles {
					fits = fits && tile.Window.Width() <= w+eps && tile.Window.Height() <= h+eps
				}
				if fits {
					across, up = min(across, w), min(up, h)
				}
			}
			offX, offY := corners(p.Piece)
			for _, way := range []struct {
				at    []paper.Length
				print paper.Length
				off   []paper.Length
			}{{xs, across, offX}, {ys, up, offY}} {
				n := len(way.at) - 2
				if n < 1 || !canKeepOff(way.at[0], way.at[n+1], way.print, s.Overlap, n, way.off, 5.5) {
					continue
				}
				for _, at := range way.at[1 : n+1] {
					assert.GreaterOrEqual(t, clearance(at, way.off), paper.Length(5-eps), "%s: join at %v of %v, corners at %v", p.Piece.Name, at, way.at, way.off)
				}
			}
		}
	})
}

// The first of two joins leaves room for the second to keep off. By hand: 538.1 and
// 2 of white at each end on sheets that print 217 across, 177 of it beyond the overlap
// of 40. With the first join at a third, 178 from the left, where it is clear, the
// second lies from 343.1 to 355, and every place there is nearer than 5 to a fold at
// 339, 345 or 351. With the first at 179 it may lie at 356.
func TestJoinsLeaveRoomForTheNext(t *testing.T) {
	s := paper.DefaultSetup()
	s.Sheet = paper.Sheet{Name: "A3", Width: 297, Height: 420}
	s.Margins = paper.Margins{Left: 40, Right: 40, Top: 40, Bottom: 40}
	s.Overlap = 40
	p := plate("wrap", 538.1, 320)
	off := []paper.Length{0, 187.3, 193.2, 199, 339, 345, 351, 538.1}
	for _, x := range off[1:7] {
		p.Folds = append(p.Folds, geometry.Line(geometry.Pt(x, 0), geometry.Pt(x, 320)))
	}
	tiled := s.Lay([]geometry.Piece{p}, paper.Options{}).Tilings[0]
	xs, ys := gridOf(t, tiled)
	if tiled.Turned {
		xs, ys = ys, xs
		slices.Reverse(xs)
	}
	require.Len(t, xs, 4, "two joins across: %v and %v", xs, ys)
	for _, at := range xs[1:3] {
		if tiled.Turned {
			at = 538.1 - at
		}
		assert.GreaterOrEqual(t, clearance(at, off), paper.Length(5-eps), "joins at %v", xs)
	}
}

// Where the grid has room to move, no join comes near a line's corner, and no
// mark near a line. By hand: 285 mm high on A4, with a fold across the middle,
// where a join would fall, and another upright where a mark would.
func TestJoinsAndMarksKeepOffLines(t *testing.T) {
	p := plate("spine cloth", 95.45, 284.95)
	p.Folds = []geometry.Path{
		geometry.Line(geometry.Pt(0, 284.95/2), geometry.Pt(95.45, 284.95/2)),
		geometry.Line(geometry.Pt(12, 0), geometry.Pt(12, 284.95)),
	}
	l := paper.DefaultSetup().Lay([]geometry.Piece{p}, paper.Options{})
	tiled := l.Tilings[0]
	require.Len(t, tiled.Marks, 2)
	for _, m := range tiled.Marks {
		at := m.At
		if tiled.Turned { // the fold is upright now
			at = geometry.Pt(at.Y, 284.95-at.X)
		}
		assert.GreaterOrEqual(t, (at.Y - 284.95/2).Abs(), paper.Length(5), "the join is off the fold")
		for _, x := range []paper.Length{0, 12, 95.45} {
			assert.GreaterOrEqual(t, (at.X - x).Abs(), paper.Length(5), "%s is off the upright line at %v", m.Name, x)
		}
	}
}
