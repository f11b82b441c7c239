package box

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"forel/geometry"
	"forel/geometry/job"
)

func book(height, width, thickness Length) []job.Book {
	return []job.Book{{Height: job.Readings{height}, Width: job.Readings{width}, Thickness: job.Readings{thickness}}}
}

// usualJob is a job of an invented book with every setting at its default.
func usualJob() Job {
	j := DefaultJob(geometry.MM)
	j.Books = book(220, 150, 30)
	return j
}

// sizesOf returns the width and the height of every piece.
func sizesOf(ps []geometry.Piece) map[string][2]float64 {
	out := map[string][2]float64{}
	for _, p := range ps {
		w, h := p.Size()
		out[p.Name] = [2]float64{w.MM(), h.MM()}
	}
	return out
}

func accepted(t require.TestingT, j Job) {
	_, refused, _ := j.Check()
	require.Empty(t, refused)
}

// The worked example of the design, worked out by hand.
func TestWorkedExample(t *testing.T) {
	j := usualJob()
	accepted(t, j)
	got := sizesOf(j.pieces())
	for name, want := range map[string][2]float64{
		"small base": {151.35, 222.2}, "small fore-edge wall": {222.2, 33.65}, "small side wall": {153.85, 33.65},
		"large base": {155.4, 229.8}, "large fore-edge wall": {229.8, 37.3}, "large side wall": {157.9, 37.3},
		"small tray cloth": {559.9, 97.3}, "large tray cloth": {575.6, 104.6},
		"small floor lining": {149.15, 219.8}, "large floor lining": {153.2, 227.4},
		"case board": {162.25, 243.5}, "case spine": {42.3, 243.5}, "case cloth": {414.9, 281.6}, "hinge": {106.8, 219.8},
	} {
		require.Contains(t, got, name)
		assert.InDelta(t, want[0], got[name][0], 0.05, name)
		assert.InDelta(t, want[1], got[name][1], 0.05, name)
	}
	near := func(want float64, is Length, what string) { assert.InDelta(t, want, is.MM(), 0.05, what) }
	small, large := j.covered(j.small()), j.covered(j.large())
	for i, want := range []float64{154.2, 227.9, 34.35} {
		near(want, [3]Length{small.Width, small.Height, small.Thickness}[i], "small tray, covered")
	}
	for i, want := range []float64{158.25, 235.5, 38} {
		near(want, [3]Length{large.Width, large.Height, large.Thickness}[i], "large tray, covered")
	}
	near(38.7, j.between(), "D")
	near(5, j.joint(), "j")
	near(4.8, j.clearJoint(), "j0")
	near(1.8, j.stand(), "x")
	near(11.85, j.beyondHinge(), "mh")
	near(17.35, j.leastTurnIn(), "e0")
	near(7, j.reaches(), "v0")
	out := j.outside()
	near(167.25, out.Width, "closed, width")
	near(244.2, out.Height, "closed, height")
	near(44.4, out.Thickness, "closed, thickness")
}

const inch = 25.4

// BPG Drop Spine Box, AIC wiki (2020), board of .098 in: their width and thickness are
// what the small tray has inside. Sizes in inches: base 5.5, side wall 5.598 by 1.098,
// large base 5.647, large wall 1.245, and 1/16 more than the book from head to tail.
func TestBPG(t *testing.T) {
	j := DefaultJob(geometry.MM)
	const k, f, tt = 0.35, 0.15, 0.098 * inch
	j.Board, j.Cloth, j.Lining = tt, k, f
	j.Clearance = job.Clearance{Height: inch/16 - 2*k, Width: 1, Thickness: 1}
	j.Room = Room{Height: 0.5, Width: tt/2 - 3*k, Depth: tt/2 - 2*k - f}
	const high = 8 * inch // any
	j.Books = book(high, 5.5*inch-1-k, 1*inch-1-f)
	accepted(t, j)
	got := sizesOf(j.pieces())
	near := func(want, is float64, what string) { assert.InDelta(t, want*inch, is, 1e-6, what) }
	near(5.5, got["small base"][0], "base")
	near(8+1./16, got["small base"][1], "base, head to tail")
	near(5.598, got["small side wall"][0], "side wall")
	near(1.098, got["small side wall"][1], "side wall, height")
	near(1.098, got["small fore-edge wall"][1], "fore-edge wall, height")
	near(5.647, got["large base"][0], "large base")
	near(1.245, got["large side wall"][1], "large side wall, height")
}

// A Binding Passion (2020), walls on the base: the base is the book and a board at the
// fore-edge, two from head to tail, where cloth and clearance are not counted; the inside
// of the lid is 1/16 in larger than the small tray outside, and its back wall with the
// board under it a board higher.
func TestWallsOnTheBase(t *testing.T) {
	j := usualJob()
	j.Walls, j.Cloth, j.CaseCloth, j.Lining, j.Clearance = On, 0, 0.35, 0, job.Clearance{}
	got := sizesOf(j.pieces())
	assert.InDelta(t, 150+2.5, got["small base"][0], 1e-9)
	assert.InDelta(t, 220+5, got["small base"][1], 1e-9)

	j = usualJob()
	j.Walls, j.Lining = On, 0
	j.Room = Room{Height: 0.1875, Width: 0.8875, Depth: 0}
	small, large := j.covered(j.small()), j.large()
	assert.InDelta(t, small.Width.MM()+inch/16, large.b.MM(), 1e-9)
	assert.InDelta(t, small.Height.MM()+inch/16, large.l.MM(), 1e-9)
	assert.InDelta(t, (small.Thickness + j.Board).MM(), sizesOf(j.pieces())["large fore-edge wall"][1]+j.Board.MM(), 1e-9)
}

// Outside a tray is alike whether its walls stand round the base or on it, and so is
// its cloth.
func TestWallsAreAlikeOutside(t *testing.T) {
	around, on := usualJob(), usualJob()
	on.Walls = On
	a, o := sizesOf(around.pieces()), sizesOf(on.pieces())
	for name, size := range a {
		switch name {
		case "small base", "large base", "small fore-edge wall", "large fore-edge wall", "small side wall", "large side wall":
			assert.NotEqual(t, size, o[name], name)
		default:
			assert.Equal(t, size, o[name], name)
		}
	}
	assert.Equal(t, [2]float64{153.85, 227.2}, [2]float64{round(o["small base"][0]), round(o["small base"][1])})
}

func round(v float64) float64 { return float64(int(v*1e6+0.5)) / 1e6 }

// Reese: a joint of 5/32 in with board of 3/32 in. With thin cloth it keeps the spine off
// the walls; with the usual cloth it counts on cloth that gives way, which is told.
func TestJointOfReese(t *testing.T) {
	j := usualJob()
	j.Board, j.Joint = 3*inch/32, 5*inch/32
	j.Cloth = 0.2
	accepted(t, j)
	assert.InDelta(t, 3.78, j.clearJoint().MM(), 0.005)
	j.Cloth = 0.35
	accepted(t, j)
	assert.InDelta(t, 4.68, j.clearJoint().MM(), 0.005)
	assert.Less(t, j.joint(), j.clearJoint())
	j.Joint = 3.4
	_, refused, _ := j.Check()
	require.Len(t, refused, 1)
	assert.Equal(t, "box.joint", refused[0].Key)
}

// Bibliocat (2007): a joint of two boards, a hinge that lies 2 in on each floor.
func TestJointAndHingeOfBibliocat(t *testing.T) {
	j := usualJob()
	j.Joint, j.Hinge = 2*j.Board, 2*inch
	accepted(t, j)
	assert.InDelta(t, (2*2*inch + 2*(2.5+0.35+0.35) + 4*2.5 + 2*5 + 42.3), sizesOf(j.pieces())["hinge"][0], 1e-6)
}

// Le Staret (2009): a square of about 4 mm.
func TestSquareOfLeStaret(t *testing.T) {
	assert.InDelta(t, 4, DefaultJob(geometry.MM).Square.MM(), 1e-9)
}

// Every measure in inches as a maker sets it: taken for an ordinary book, the joint 7/32.
func TestInchDefaults(t *testing.T) {
	j := DefaultJob(geometry.IN)
	j.Books = book(220, 150, 30)
	accepted(t, j)
	assert.InDelta(t, 7./32*inch, j.joint().MM(), 1e-6)
	assert.InDelta(t, 3./4*inch, j.turnIn().MM(), 1e-6)
	assert.InDelta(t, 3./8*inch, j.endFlap(j.small()).MM(), 1e-6)
}

// About the Binding (2011): the spine is trays and two boards, measured finished over its
// joints, which take the thicker cloth twice on each side. Invariant 8: the large tray
// less the small one is alike whatever the book.
func TestAlikeForEveryBook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := mended(t, anyJob(t))
		b, m, k := j.caseBoard(), max(j.caseCloth(), j.hingeCloth()), j.Cloth
		assert.InDelta(t, (j.between() + 2*b).MM(), (j.spine() + 4*m).MM(), 1e-9)
		small, large := j.small(), j.large()
		assert.InDelta(t, (j.Board + 3*k + j.Room.Width).MM(), (large.b - small.b).MM(), 1e-9)
		assert.InDelta(t, (2*j.Board + 6*k + j.Room.Height).MM(), (large.l - small.l).MM(), 1e-9)
		assert.InDelta(t, (j.Board + 2*k + j.lidLining() + j.Room.Depth).MM(), (large.d - small.d).MM(), 1e-9)
	})
}
