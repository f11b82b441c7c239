package slipcase_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

// A pattern is held against the case here: pieces are cut from a ruled sheet
// by the marks on their faces, laid on the carcass by their seats, which know
// nothing of patterns, and the lines are read off the case.

func patternedJob(t *rapid.T, covering, match string) slipcase.Job {
	length := func(name string, lo, hi float64) slipcase.Length {
		return slipcase.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{
		Height:    job.Readings{length("height", 150, 400)},
		Width:     job.Readings{length("width", 120, 300)},
		Thickness: job.Readings{length("thickness", 15, 90)},
	}}
	j.Covering = covering
	j.Pattern = slipcase.Pattern{
		Across: length("across", 3, 200), Along: length("along", 3, 200), Direction: slipcase.OneWay, Match: match,
		FromSpine: length("from spine", 0, 100), FromTail: length("from tail", 0, 150),
	}
	return j
}

func face(t require.TestingT, c slipcase.Case, name string) geometry.Piece {
	for _, f := range c.Faces {
		if f.Name == name {
			return f
		}
	}
	require.Fail(t, "no face "+name)
	return geometry.Piece{}
}

func named(t require.TestingT, c slipcase.Case, name string) geometry.Piece {
	for _, p := range c.Pieces {
		if p.Name == name {
			return p
		}
	}
	require.Fail(t, "no piece "+name)
	return geometry.Piece{}
}

// near tells whether two lengths differ by whole repeats.
func congruent(a, b, repeat slipcase.Length) bool {
	d := math.Abs(math.Remainder((a - b).MM(), repeat.MM()))
	return d < 1e-6
}

// onSide gives the distance of a face's lines from the spine edge and from
// the tail edge of the side its paper is laid on.
func onSide(t require.TestingT, c slipcase.Case, place string) (fromSpine, fromTail slipcase.Length) {
	p, f := named(t, c, "side paper"), face(t, c, place+" side paper face")
	want := map[string]geometry.Face{"right": slipcase.RightOutside, "left": slipcase.LeftOutside}[place]
	w, h := p.Size()
	// From the face, head up, back to the pattern, back up: the right one is
	// mirrored; the left one is drawn with its head at the bottom.
	at := geometry.Pt(w-f.Pattern.First.X, f.Pattern.First.Y)
	if place == "left" {
		at = geometry.Pt(f.Pattern.First.X, h-f.Pattern.First.Y)
	}
	for _, s := range p.Seats {
		if s.Face != want {
			continue
		}
		for _, a := range s.At {
			require.True(t, on(a, "mouth"))
			if on(a, "head") {
				continue
			}
			// The corner at the mouth and the tail; X goes away from the spine.
			fromTail = (at.Y - a.At.Y).Abs()
			if (at.Y > a.At.Y) != (h/2 > a.At.Y) { // on the far side of the tail edge
				fromTail = -fromTail
			}
			return c.Stands.Outside().Width - (a.At.X - at.X), fromTail
		}
	}
	require.Fail(t, "no seat")
	return 0, 0
}

// On both sides lines run at one height from the tail and, mirrored, at one
// distance from the spine; where it is asked for.
func TestSidesMatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		match := rapid.SampledFrom([]string{slipcase.MatchHeight, slipcase.MatchMirrored, slipcase.MatchRound}).Draw(t, "match")
		j := patternedJob(t, rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.SidesOnly}).Draw(t, "covering"), match)
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		rx, ry := onSide(t, c, "right")
		lx, ly := onSide(t, c, "left")
		assert.True(t, congruent(ry, j.Pattern.FromTail, j.Pattern.Along), "right at %v", ry)
		assert.True(t, congruent(ly, j.Pattern.FromTail, j.Pattern.Along), "left at %v", ly)
		right := face(t, c, "right side paper face").Pattern
		assert.Equal(t, match != slipcase.MatchHeight, right.AtX)
		switch match {
		case slipcase.MatchMirrored:
			assert.True(t, congruent(rx, j.Pattern.FromSpine, j.Pattern.Across))
			assert.True(t, congruent(lx, j.Pattern.FromSpine, j.Pattern.Across))
		case slipcase.MatchRound:
			// As wound round from the right side's line over the spine to the left side's.
			assert.True(t, congruent(rx, j.Pattern.FromSpine, j.Pattern.Across))
			assert.True(t, congruent(rx+c.Stands.Outside().Thickness+lx, 0, j.Pattern.Across))
		}
	})
}

// On a wrap the lines of both sides are mirrored, or one falls where it is asked
// for on the right side; and the panels go on with the lines of the spine.
func TestWrapMatches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		match := rapid.SampledFrom([]string{slipcase.MatchMirrored, slipcase.MatchRound}).Draw(t, "match")
		j := patternedJob(t, rapid.SampledFrom([]string{slipcase.AllCloth, slipcase.AllPaper}).Draw(t, "covering"), match)
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		across := j.Pattern.Across
		p, f := named(t, c, "wrap"), face(t, c, "wrap face")
		w, _ := p.Size()
		line := w - f.Pattern.First.X // as the wrap is drawn, back up
		var left, tail slipcase.Length
		for _, a := range p.Seats[0].At { // both on the left edge of the spine
			left = a.At.X
			if !on(a, "head") {
				tail = a.At.Y
			}
		}
		assert.True(t, congruent(f.Pattern.First.Y-tail, j.Pattern.FromTail, j.Pattern.Along))
		onRight, onLeft := line-left-c.Stands.Outside().Thickness, left-line
		if match == slipcase.MatchRound {
			assert.True(t, congruent(onRight, j.Pattern.FromSpine, across))
		} else {
			assert.True(t, congruent(onRight, onLeft, across))
			off := math.Abs(math.Remainder((onRight - j.Pattern.FromSpine).MM(), across.MM()))
			assert.LessOrEqual(t, off, across.MM()/4+1e-6, "the nearer of the two ways to mirror")
		}
		// A panel lies on the wall from the inner face of the left side; a line of the spine
		// goes on over the edge.
		for _, end := range []string{"head", "tail"} {
			panel, pf := named(t, c, end+" panel"), face(t, c, end+" panel face")
			pw, _ := panel.Size()
			at := pw - pf.Pattern.First.X
			a, b := panel.Seats[0].At[0], panel.Seats[0].At[1]
			if on(a, "right") {
				a, b = b, a
			}
			require.True(t, !on(a, "right") && on(b, "right"))
			fromLeft := (at - a.At.X)
			if a.At.X > b.At.X {
				fromLeft = a.At.X - at
			}
			assert.True(t, congruent(fromLeft, line-left, across), "%s: %v from the left, the spine has %v", end, fromLeft, line-left)
			assert.False(t, pf.Pattern.AtY)
		}
	})
}

// Whatever a sheet's edge does to the pattern, a piece cut roughly holds the piece
// with its lines where they should be.
func TestRoughIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := patternedJob(t, slipcase.SidesOnly, slipcase.MatchMirrored)
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		p := named(t, c, "side paper")
		w, h := p.Size()
		rw, rh := p.Rough()
		for _, f := range c.Faces {
			// The stock's own lines, from the rough piece's lower left corner.
			ox := slipcase.Length(rapid.Float64Range(0, 1).Draw(t, "x")) * j.Pattern.Across
			oy := slipcase.Length(rapid.Float64Range(0, 1).Draw(t, "y")) * j.Pattern.Along
			fits := func(first, origin, repeat, size, rough slipcase.Length) bool {
				at := origin - first // so that a line of the piece is on one of the stock
				for at < 0 {
					at += repeat
				}
				for at-repeat >= 0 {
					at -= repeat
				}
				return at >= 0 && at+size <= rough+1e-6
			}
			assert.True(t, fits(f.Pattern.First.X, ox, j.Pattern.Across, w, rw))
			assert.True(t, fits(f.Pattern.First.Y, oy, j.Pattern.Along, h, rh))
		}
	})
}

// A covering that grows when pasted takes its lines with it: on the case they are where
// they should be.
func TestPatternStretches(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
	j.Pattern = slipcase.Pattern{Across: 10, Direction: slipcase.AnyWay, Match: slipcase.MatchMirrored, FromSpine: 12}
	j.SidePaper.Stretch = 2
	c, err := slipcase.Make(j)
	require.NoError(t, err)
	for _, place := range []string{"left", "right"} {
		f := face(t, c, place+" side paper face")
		w, _ := f.Size()
		fromEdge := f.Pattern.First.X // from the paper's spine edge, dry
		if place == "right" {
			fromEdge = w - fromEdge
		}
		onCase := fromEdge*1.02 + j.SidePaper.Inset
		assert.True(t, congruent(onCase, 12, 10*1.02), "%s: %v", place, onCase)
	}
}

// Marks lie on lines and on the piece, their ends on its edges.
func TestMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := patternedJob(t, rapid.SampledFrom([]string{slipcase.AllPaper, slipcase.SidesOnly}).Draw(t, "covering"), slipcase.MatchRound)
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		for _, f := range c.Faces {
			box := f.Outline.Bounds().Grow(1e-6)
			for _, g := range f.Guides {
				require.True(t, strings.HasPrefix(g.Name, "line of the pattern"))
				a, b := g.Path.Vertices[0].Point, g.Path.Vertices[1].Point
				assert.True(t, box.Contains(g.Path.Bounds()))
				switch {
				case a.X == b.X:
					assert.True(t, congruent(a.X, f.Pattern.First.X, f.Pattern.Across))
				case a.Y == b.Y:
					assert.True(t, congruent(a.Y, f.Pattern.First.Y, f.Pattern.Along))
				default:
					assert.Fail(t, fmt.Sprintf("%s: a slanting mark", f.Name))
				}
			}
		}
	})
}

func TestPatternRefused(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
	for _, match := range []string{slipcase.MatchMirrored, slipcase.MatchRound, slipcase.MatchHeight} {
		j.Pattern = slipcase.Pattern{Direction: slipcase.AnyWay, Match: match}
		_, err := slipcase.Make(j)
		assert.ErrorContains(t, err, "pattern.match")
		assert.ErrorContains(t, err, "pattern.repeat_a")
	}
	j.Pattern = slipcase.Pattern{Direction: slipcase.AnyWay, Match: slipcase.MatchNothing}
	c, err := slipcase.Make(j)
	require.NoError(t, err)
	assert.Empty(t, c.Faces)
}

// A repeat too small to be one is refused, and one in whole tenths is marked in
// time.
func TestFineRepeats(t *testing.T) {
	j := slipcase.DefaultJob(geometry.MM)
	j.Books = []job.Book{{Height: job.Readings{220}, Width: job.Readings{150}, Thickness: job.Readings{30}}}
	j.Pattern = slipcase.Pattern{Across: 1e-100, Along: 0.05, Direction: slipcase.AnyWay, Match: slipcase.MatchMirrored}
	_, err := slipcase.Make(j)
	assert.ErrorContains(t, err, "pattern.repeat_across: ")
	assert.ErrorContains(t, err, "pattern.repeat_along: 0.05 mm is too fine to lay pieces to; at least 0.1 mm")
	j.Pattern.Across, j.Pattern.Along = 0.1, 0.1
	c, err := slipcase.Make(j)
	require.NoError(t, err)
	for _, f := range c.Faces {
		assert.Less(t, len(f.Guides), 4*60, "marks are at least 8 mm apart")
	}
}

// on tells whether an anchor is at a wall.
func on(a geometry.Anchor, wall string) bool {
	return slices.Contains(strings.Split(string(a.On), ", "), wall)
}
