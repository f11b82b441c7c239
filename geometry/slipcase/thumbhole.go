package slipcase

import (
	"math"
	"slices"

	"forel/geometry"
)

// How a thumb hole is made (common practice, no source).
const (
	leastHole   Length = 10  // radius that takes a thumb
	mostHole    Length = 16  // radius that looks right on a large case
	holeTurn    Length = 4   // covering beyond the board's edge, inside a hole
	holeChord   Length = 0.3 // how far the straight end of a tab may leave the arc
	snipShort   Length = 0.6 // how far a snip stops from the fold
	tabGap      Length = 1   // how far two tabs part over the thickness of the board, at most
	holeBorder  Length = 3   // between a hole and what must not be cut
	leastCenter Length = 1   // of the hole in a covering, before it is turned in
	linedShort  Length = 2   // what a lining put in afterwards stays back from the mouth
)

// hasHole tells whether the sides have a thumb hole.
func (j Job) hasHole() bool { return j.ThumbHole.Shape != NoHole && j.ThumbHole.Shape != "" }

// hole returns the radius of a semicircle, or the depth of a triangle that is
// twice as wide. "auto" is a fourteenth of the side's height, from 10 to 16 mm, or what
// fits.
func (j Job) hole() Length {
	if j.ThumbHole.Radius > 0 {
		return j.ThumbHole.Radius
	}
	suits := max(leastHole, min(mostHole, j.Outside().Height/14))
	return max(j.leastRadius(), min(suits, j.mostRadius()))
}

// mostRadius returns the largest hole that keeps off what must not be cut: the
// walls, a lining put in afterwards, the cloth that lies on the sides, the
// border of the side paper.
func (j Job) mostRadius() Length {
	between := j.Between()
	// Inside, the tabs keep off what lies on head and tail wall, a tab on two.
	height, depth := between.Height/2-max(holeBorder+linedShort, holeTurn+3*j.cover()), between.Width-linedShort-holeBorder
	out := j.Outside()
	switch j.Covering {
	case AllCloth, AllPaper:
		height = min(height, out.Height/2-j.wrapInset()-holeBorder)
	case SidesOnly:
		height = min(height, out.Height/2-j.SidePaper.Inset-holeBorder)
		depth = min(depth, out.Width-j.SidePaper.Inset-holeBorder)
	default: // cloth lies on the sides as far as the overlap
		height = min(height, out.Height/2-j.Cloth.Overlap-holeTurn)
		depth = min(depth, out.Width-j.Cloth.Overlap-holeBorder)
	}
	return min(height, depth)
}

// leastRadius returns the smallest hole whose edge a covering can be turned over.
func (j Job) leastRadius() Length {
	return leastCenter + j.holeShrink()
}

// holeShrink returns how much smaller a hole is cut in a covering than in the
// board, at the mouth edge, so that there is covering to turn over.
func (j Job) holeShrink() Length {
	turn := j.Edge() + holeTurn
	if j.ThumbHole.Shape == Triangle {
		return turn * Length(math.Sqrt2) // its edges lie at half a right angle
	}
	return turn
}

// holeAt returns the way round a hole of the given size in an upright edge at x,
// from below its middle to above, the piece on the left. Back lies the middle
// of the hole behind the edge.
func (j Job) holeAt(x, middle, size, back Length) []geometry.Vertex {
	vertex := func(x, y Length, bulge float64) geometry.Vertex {
		return geometry.Vertex{Point: geometry.Pt(x, y), Bulge: bulge}
	}
	if j.ThumbHole.Shape == Triangle {
		half := size - back
		return []geometry.Vertex{vertex(x, middle-half, 0), vertex(x-half, middle, 0), vertex(x, middle+half, 0)}
	}
	half := Length(math.Sqrt(float64(size*size - back*back)))
	sweep := 2 * math.Acos(float64(back/size))
	return []geometry.Vertex{vertex(x, middle-half, -math.Tan(sweep/4)), vertex(x, middle+half, 0)}
}

// holeLayer returns the thickness of the tabs of a round hole, which lie inside
// on the turn-in beside it; zero where there are none.
func (j Job) holeLayer() Length {
	if j.ThumbHole.Shape != Semicircle {
		return 0
	}
	if j.Covering == AllCloth {
		return j.Cloth.Thickness
	}
	return j.SidePaper.Thickness
}

// holeWeb is the covering left round the corners where a hole meets the mouth.
func (j Job) holeWeb() Length { return min(mouthWeb, j.Edge()) / 2 }

// withHole adds to what is said of a piece what to do at its thumb hole.
func (j Job) withHole(hand, what string) string {
	if !j.hasHole() {
		return hand
	}
	return also(hand, what)
}

// also returns what is said of a piece with more after it.
func also(hand, more string) string {
	if hand == "" {
		return more
	}
	return hand + "; " + more
}

// cutHole cuts the thumb hole into the right edge of a rectangular piece, which stands
// so far back from the mouth.
func (j Job) cutHole(p *geometry.Piece, back Length) {
	w, h := p.Size()
	cutRight(p, j.holeAt(w, h/2, j.hole(), back))
}

// cutRight lets the right edge of a rectangular piece go another way, from below.
func cutRight(p *geometry.Piece, way []geometry.Vertex) {
	p.Outline.Vertices = slices.Insert(p.Outline.Vertices, 2, way...)
}

// holeInCovering is the thumb hole as a covering has it at a mouth line on its
// right: the way along its right edge, the fold round the hole, and the snips
// that part what is turned over into tabs.
type holeInCovering struct {
	edge  []geometry.Vertex // from the turn-in below the hole to that above it
	fold  geometry.Path
	snips []geometry.Path
}

// hole works out the hole in a covering. It is smaller than the board's
// by the edge of the board and 4 mm, which is turned over that edge. On the
// round it is snipped from the hole to just before the fold into as many tabs
// as keep the straight end of each within 0.3 mm of the arc, and let two part by
// no more than 1 mm over the thickness of the board; on a triangle one snip at the
// point will do. Past the mouth line the covering is cut away over
// the hole, where it has nothing to turn over, but for a web at each corner.
func (m mouthTurnIn) hole() holeInCovering {
	j, mouth, outer, middle := m.job, m.mouth, m.outer, m.middle
	r := j.hole()
	small := r - j.holeShrink()
	pt := func(x, y Length) geometry.Vertex { return geometry.Vertex{Point: geometry.Pt(x, y)} }
	var h holeInCovering
	web := j.holeWeb()
	h.edge = append(h.edge, pt(outer, middle-r), pt(mouth+web, middle-r), pt(mouth, middle-r+web))
	h.edge = append(h.edge, j.holeAt(mouth, middle, small, 0)...)
	h.edge = append(h.edge, pt(mouth, middle+r-web), pt(mouth+web, middle+r), pt(outer, middle+r))
	h.fold = geometry.Path{Vertices: j.holeAt(mouth, middle, r, 0)}
	center := geometry.Pt(mouth, middle)
	if j.ThumbHole.Shape == Triangle {
		h.snips = []geometry.Path{geometry.Line(geometry.Pt(mouth-small, middle), geometry.Pt(mouth-r+snipShort, middle))}
		return h
	}
	tabs := j.holeTabs()
	for i := 1; i < tabs; i++ {
		a := math.Pi/2 + math.Pi*float64(i)/float64(tabs)
		way := geometry.Pt(Length(math.Cos(a)), Length(math.Sin(a)))
		h.snips = append(h.snips, geometry.Line(center.Add(way.Mul(small.MM())), center.Add(way.Mul((r-snipShort).MM()))))
	}
	return h
}

// holeTabs returns how many tabs the covering of a semicircle is snipped into.
func (j Job) holeTabs() int {
	r := float64(j.hole())
	angle := 2 * math.Acos(1-float64(holeChord)/r) // whose chord leaves the arc by that much
	angle = min(angle, 2*math.Atan(float64(tabGap/(2*j.Edge()))))
	return int(math.Ceil(math.Pi/angle - 1e-9))
}

// holeGap returns how far two tabs part over the thickness of the board, at most:
// on a triangle each end of a tab leaves an edge at half a right angle.
func (j Job) holeGap() Length {
	if j.ThumbHole.Shape == Triangle {
		return 2 * j.Edge()
	}
	return tabGap
}
