package slipcase_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/slipcase"
)

func linedJob(t *rapid.T) slipcase.Job {
	j := patternedJob(t, rapid.SampledFrom([]string{slipcase.ClothAndPaper, slipcase.AllCloth, slipcase.SidesOnly}).Draw(t, "covering"), slipcase.MatchNothing)
	j.Pattern = slipcase.Pattern{Direction: slipcase.AnyWay, Match: slipcase.MatchNothing}
	j.Lining.Order = rapid.SampledFrom([]string{slipcase.LinedBefore, slipcase.LinedAfter}).Draw(t, "order")
	j.Lining.Thickness = slipcase.Length(rapid.Float64Range(0.05, 0.5).Draw(t, "lining"))
	j.Lining.Trim = slipcase.Length(rapid.Float64Range(0, 20).Draw(t, "trim"))
	length := func(name string, lo, hi float64) slipcase.Length {
		return slipcase.Length(rapid.Float64Range(lo, hi).Draw(t, name))
	}
	j.LiningPattern = slipcase.Pattern{
		Across: length("lining across", 5, 60), Along: length("lining along", 5, 60), Direction: slipcase.AnyWay,
		Match:     rapid.SampledFrom([]string{slipcase.MatchHeight, slipcase.MatchMirrored, slipcase.MatchRound}).Draw(t, "match"),
		FromSpine: length("lining from spine", 0, 60), FromTail: length("lining from tail", 0, 60),
	}
	if rapid.Bool().Draw(t, "squared") {
		j.LiningPattern.Along = j.LiningPattern.Across
	}
	return j
}

// inRoom is where lines of a lining fall in the room inside, from its corner at the right
// of tail and spine wall: x to the left, y to the head, z to the mouth; each NaN where no
// line is to fall on a place. It knows where a board lies on its lining (in the middle), or
// that a lining put in later lies on the board, and nothing of how patterns are placed.
func inRoom(t require.TestingT, c slipcase.Case, wall string) (x, y, z float64) {
	x, y, z = math.NaN(), math.NaN(), math.NaN()
	names := map[string]string{"right": "right side lining face", "left": "left side lining face", "spine": "spine lining face", "head": "head lining face", "tail": "tail lining face"}
	f := face(t, c, names[wall])
	w, h := f.Size()
	at := f.Pattern.First
	l, s := c.Job.Lining.Thickness, c.Job.Board.Thickness+c.Job.Lining.Thickness
	var off geometry.Point // of the room's nearest corner from the lining's
	if c.Job.Lining.Order == slipcase.LinedBefore {
		off = geometry.Pt(c.Job.Lining.Trim, c.Job.Lining.Trim)
		if wall != "head" && wall != "tail" { // walls stand on the side, and the spine wall is as high as it
			off.Y += s
		}
		if wall == "right" || wall == "left" {
			off.X += s
		}
	} else { // others lie on its edges, but for the last two
		switch wall {
		case "right", "left":
			off = geometry.Pt(l, (h-c.Stands.Cavity().Height)/2)
		case "spine":
			off = geometry.Pt(0, (h-c.Stands.Cavity().Height)/2)
		}
	}
	set := func(to *float64, v slipcase.Length, falls bool) {
		if falls {
			*to = v.MM()
		}
	}
	switch wall {
	case "right": // head up, the spine on the left
		set(&z, at.X-off.X, f.Pattern.AtX)
		set(&y, at.Y-off.Y, f.Pattern.AtY)
	case "left": // the spine on the right
		set(&z, w-at.X-off.X, f.Pattern.AtX)
		set(&y, at.Y-off.Y, f.Pattern.AtY)
	case "spine": // the right side on the right
		set(&x, w-at.X-off.X, f.Pattern.AtX)
		set(&y, at.Y-off.Y, f.Pattern.AtY)
	case "head": // the spine on the left, the right side below
		set(&z, at.X-off.X, f.Pattern.AtX)
		set(&x, at.Y-off.Y, f.Pattern.AtY)
	case "tail": // the right side above
		set(&z, at.X-off.X, f.Pattern.AtX)
		set(&x, h-at.Y-off.Y, f.Pattern.AtY)
	}
	return x, y, z
}

// Lines of the linings go on over the inner corners, and fall where they are asked for.
func TestLinesOfLiningsMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := linedJob(t)
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		q := j.LiningPattern
		congruent := func(a, b float64, repeat slipcase.Length, where string) {
			require.False(t, math.IsNaN(a) || math.IsNaN(b), where)
			require.InDelta(t, 0, math.Remainder(a-b, repeat.MM()), 1e-6, where)
		}
		_, ry, rz := inRoom(t, c, "right")
		_, ly, lz := inRoom(t, c, "left")
		sx, sy, _ := inRoom(t, c, "spine")
		hx, _, hz := inRoom(t, c, "head")
		tx, _, tz := inRoom(t, c, "tail")
		for _, y := range []float64{ry, ly, sy} {
			congruent(y, q.FromTail.MM(), q.Along, "round the room")
		}
		thick := c.Stands.Cavity().Thickness.MM()
		if q.Match == slipcase.MatchHeight {
			require.True(t, math.IsNaN(rz+lz) && math.IsNaN(sx+hx+tx))
			return
		}
		congruent(rz, q.FromSpine.MM(), q.Across, "right side")
		congruent(hx, sx, q.Across, "head and spine wall")
		congruent(tx, sx, q.Across, "tail and spine wall")
		switch q.Match {
		case slipcase.MatchRound: // as paper is laid round: out of the right side over the spine wall
			congruent(sx, -q.FromSpine.MM(), q.Across, "spine wall")
			congruent(lz, -q.FromSpine.MM()-thick, q.Across, "left side")
			require.True(t, math.IsNaN(hz+tz))
		case slipcase.MatchMirrored:
			congruent(lz, q.FromSpine.MM(), q.Across, "left side")
			congruent(2*sx, thick, q.Across, "the middle of the spine wall")
			require.Equal(t, q.Across == q.Along, !math.IsNaN(hz), "head meets the sides where the pattern is alike both ways")
			if q.Across == q.Along {
				congruent(hz, rz, q.Across, "head and sides")
				congruent(tz, rz, q.Across, "tail and sides")
			}
		}
	})
}

// The proof tells at how many corners lines meet; a drawing whose lines lie elsewhere is
// found, and so is a lining whose board lies elsewhere on it.
func TestLinesThatMissAreFound(t *testing.T) {
	made := func(order string) slipcase.Case {
		j := slipcase.DefaultJob(geometry.MM)
		j.Books = []job.Book{{Height: readings(220), Width: readings(150), Thickness: readings(30)}}
		j.Lining.Order = order
		j.LiningPattern = slipcase.Pattern{Across: 12, Along: 12, Direction: slipcase.AnyWay, Match: slipcase.MatchMirrored, FromSpine: 4, FromTail: 5}
		c, err := slipcase.Make(j)
		require.NoError(t, err)
		return c
	}
	for _, order := range []string{slipcase.LinedBefore, slipcase.LinedAfter} {
		c := made(order)
		assert.Contains(t, c.Proof.Remarks, "lines of the linings meet at 8 of the 8 inner corners, to 0.00 mm", order)
		for i := range c.Faces {
			c = made(order)
			c.Faces[i].Pattern.First = c.Faces[i].Pattern.First.Add(geometry.Pt(0.3, 0.3))
			_, faults := slipcase.Meet(c)
			assert.Len(t, faults, map[bool]int{true: 3, false: 4}[c.Faces[i].FaceOf != "spine lining"], "%s %s", order, c.Faces[i].Name)
			for _, f := range faults {
				assert.Contains(t, f.What, "miss each other by 0.30 mm at the corner of ")
			}
		}
	}
	c := made(slipcase.LinedBefore)
	for i := range c.Pieces {
		if p := &c.Pieces[i]; p.Name == "spine lining" {
			p.Regions[0].Room = p.Regions[0].Room.Move(geometry.Pt(0.5, 0))
		}
	}
	_, faults := slipcase.Meet(c)
	assert.Len(t, faults, 2, "the spine wall with head and tail")
}

// In each compartment lines run round at one height, over a divider too; of a squared, mirrored
// paper they go on over its corners with head and tail. A drawing whose lines lie elsewhere is found.
func TestLinesOfDividers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := linedJob(t)
		j.Lining.Order, j.Compartments = slipcase.LinedBefore, slipcase.EachItsOwn
		for range rapid.IntRange(1, 2).Draw(t, "more books") {
			j.Books = append(j.Books, j.Books[0])
		}
		c, err := slipcase.Make(j)
		if err != nil {
			t.Skip(err)
		}
		q, trim := j.LiningPattern, j.Lining.Trim.MM()
		_, sy, _ := inRoom(t, c, "spine")
		_, _, hz := inRoom(t, c, "head")
		for _, side := range []string{"right", "left"} {
			f := face(t, c, side+" divider lining face")
			require.Equal(t, len(j.Books)-1, f.Count)
			w, _ := f.Size()
			y, z := f.Pattern.First.Y.MM()-trim, f.Pattern.First.X.MM()-trim // the board lies in the middle
			if side == "right" {                                             // seen from the right, the spine wall is at the right
				z = (w - f.Pattern.First.X).MM() - trim
			}
			require.True(t, f.Pattern.AtY)
			require.InDelta(t, 0, math.Remainder(y-sy, q.Along.MM()), 1e-6, "at the height of the spine wall")
			require.Equal(t, q.Match != slipcase.MatchHeight, f.Pattern.AtX)
			if !math.IsNaN(hz) {
				require.InDelta(t, 0, math.Remainder(z-hz, q.Across.MM()), 1e-6, "goes on at head and tail")
			}
		}
		_, faults := slipcase.Meet(c)
		require.Empty(t, faults)
		for i := range c.Faces {
			if f := &c.Faces[i]; f.FaceOf == "divider lining" {
				f.Pattern.First.Y += 0.3
			}
		}
		_, faults = slipcase.Meet(c)
		require.Len(t, faults, 2, "both faces with the spine wall")
	})
}
