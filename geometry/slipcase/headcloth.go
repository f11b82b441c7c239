package slipcase

import (
	"fmt"
	"slices"

	"forel/geometry"
)

// How slits are cut (common practice, no source).
const (
	slitAngle      = 10.0 // degrees that a slit leans toward the middle tab
	leastSlitAngle = 1.0  // degrees, before the middle tab is shortened
	mostSlitAngle  = 20.0 // degrees, before a slit starts further in
	slitStart      = 1.0  // mm from the mouth edge to the start of a slit, at most
	tabGrip        = 1.0  // mm of middle tab inside, at least
	closes         = 1.9  // thicknesses of cloth that a gap over the edge may be broad
)

// tabs are the tabs of head or tail cloth at the mouth.
type tabs struct {
	inset  Length // from the outer face of the case to the start of a slit
	start  Length // from the mouth edge to the start of a slit
	lean   Length // how far a slit leans inward per length
	middle Length // length of the middle tab from the mouth edge
}

// tabs works out the slits of head and tail cloth. The rule is a slit that
// starts one lined board in, a third of that (1 mm at most) beyond the mouth
// edge, and leans 10° inward, less where that would lay the edge of the board
// bare beside it. Where the middle tab turns inside, past the
// board's edge, it must be narrower than the cavity by two thicknesses of
// cloth, and its tip keeps half its width at the start, or three quarters of
// its width inside where that is less:
//
//   - The lean is as much as the first needs, even where that is over 10°. Where
//     it would be over 20°, or leave less than 1 mm of the tab inside, the
//     slit starts further in instead.
//   - In a thin case the lean falls to what the first needs (or 1°), then the
//     middle tab is cut shorter than the side tabs.
//
// Side tabs fold in first. Each ends in the corner, where the inner faces of side
// and wall meet: tucked further, under the middle tab, it would take room from the
// book just where the case is tightest. From the inner edge of the boards on the
// cloth between side tab and slit is cut away. With dividers the middle tab is a row of
// tabs; the narrower outer one counts for half of the cavity.
func (j Job) tabs() tabs {
	s, k, t := j.Edge(), j.Cloth.Thickness, j.Cloth.MouthTurnIn
	between := j.tabRoom()
	v := tabs{inset: s, start: min(slitStart, s/3)}
	run := s - v.start      // from the slit's start to where the tab is inside
	inside := between - 2*k // the tab's width there, at most
	extra := max(0, k-run*min(slope(mostSlitAngle), inside/8/tabGrip))
	v.inset += extra
	base := between - 2*extra
	narrowing := (base - min(base/2, inside*3/4)) / 2 // on each side, from base to tip
	need := max((k-extra)/run, min(slope(leastSlitAngle), closes*k/run))
	v.lean = max(need, min(slope(slitAngle), narrowing/(t-v.start), closes*k/run))
	v.middle = min(t, v.start+narrowing/v.lean)
	return v
}

// tabRoom returns the room between the boards that a middle tab has, or twice that of the
// narrower of the outer tabs beside the dividers.
func (j Job) tabRoom() Length {
	room := j.Between().Thickness
	if slots := j.slots(j.Cloth.MouthTurnIn - j.Edge()); len(slots) > 0 {
		return 2 * min(slots[0][0], room-slots[len(slots)-1][1])
	}
	return room
}

// endCloth returns the cloth over the head wall or over the tail wall, back up, mouth at the
// top. They are alike, but what is left on one is right on the other.
func (j Job) endCloth(e end) geometry.Piece {
	s, m, out, v := j.Edge(), j.Cloth.Overlap, j.Outside(), j.tabs()
	turnIn := j.Cloth.MouthTurnIn
	xl, xr := m, m+out.Thickness
	width := xr + m
	mouth := out.Width - j.Cloth.SpineGap
	tip := mouth + turnIn
	pt := geometry.Pt

	// Start and end of the slits; the right one mirrors the left.
	a := pt(xl+v.inset, mouth+v.start)
	b := pt(a.X+(v.middle-v.start)*v.lean, mouth+v.middle)
	mirror := func(q geometry.Point) geometry.Point { return pt(width-q.X, q.Y) }

	// Where the slit passes the inner edge of the boards, and the edge of the side
	// tab. From the left end of the cloth down the side tab, across to the slit and
	// along the middle tab.
	inner, tab := pt(a.X+(s-v.start)*v.lean, mouth+s), xl-s
	middle := j.turnInBetween(inner, b, mirror, xl+s, e.left == "right")
	way, parts := middle.cut()
	points := []geometry.Point{pt(0, 0), pt(width, 0), pt(width, tip), pt(width-tab, tip), pt(width-tab, inner.Y)}
	slices.Reverse(way)
	points = append(points, way...)
	points = append(points, pt(tab, inner.Y), pt(tab, tip), pt(0, tip))
	outline := geometry.Polygon(points...)
	outsides := map[string]geometry.Face{"left": LeftOutside, "right": RightOutside}
	insides := map[string]geometry.Face{"left": LeftInside, "right": RightInside}
	// What the cloth does at a corner of the mouth: it gives between the corner
	// and the slit, and is pleated flat on the edge of the side.
	creases := []geometry.Crease{
		{Path: geometry.Line(pt(xl, mouth), a), Kind: geometry.Give},
		{Path: geometry.Line(pt(xl, mouth), pt(xl, mouth+s)), Kind: geometry.Pleat},
		{Path: geometry.Line(pt(xr, mouth), mirror(a)), Kind: geometry.Give},
		{Path: geometry.Line(pt(xr, mouth), pt(xr, mouth+s)), Kind: geometry.Pleat},
	}
	p := geometry.Piece{
		Name: e.name + " cloth", Material: geometry.Cloth, Count: 1, Outline: outline,
		Slits: []geometry.Path{geometry.Line(a, inner), geometry.Line(mirror(a), mirror(inner))},
		Folds: []geometry.Path{
			geometry.Line(pt(xl, 0), pt(xl, mouth)),
			geometry.Line(pt(xr, 0), pt(xr, mouth)),
			geometry.Line(pt(0, mouth), pt(width, mouth)),
		},
		// The spine edge of the carcass lies beyond the cloth, by the gap.
		Guides: []geometry.Guide{{Name: e.name + " of the carcass", Path: geometry.Line(pt(xl, 0), pt(xl, mouth), pt(xr, mouth), pt(xr, 0))}},
		Grain:  geometry.GrainHeight,
		FaceUp: "back up (the face that is glued)",
		Rule:   geometry.SizeRule{Width: "To + 2m", Height: "Wo − g + u"},
		Regions: []geometry.Region{
			{Name: e.name, Face: e.outside, Room: geometry.Bx(xl, 0, xr, mouth)},
			{Name: e.left + " margin", Face: outsides[e.left], Room: geometry.Bx(0, 0, xl, mouth)},
			{Name: e.right + " margin", Face: outsides[e.right], Room: geometry.Bx(xr, 0, width, mouth)},
			{Name: "side tab", Fold: "fold first", Face: insides[e.left], Room: geometry.Bx(0, mouth+s, tab, tip)},
			{Name: "side tab", Fold: "fold first", Face: insides[e.right], Room: geometry.Bx(width-tab, mouth+s, width, tip)},
		},
		Margins: []geometry.Margin{
			{Name: "from the cloth's long edge to the carcass, each side", Length: m},
			{Name: "from the spine edge of the carcass to the cloth", Length: j.Cloth.SpineGap},
			{Name: "beyond the mouth edge, turned in", Length: turnIn},
			{Name: "from the outer face of the case to the start of a slit", Length: v.inset},
			{Name: "from the mouth edge to the start of a slit", Length: v.start},
		},
		Creases: creases,
		Seats:   []geometry.Seat{glued(e.outside, pt(xl, mouth), e.at(e.left, true), pt(xr, mouth), e.at(e.right, true))},
		Hand:    fmt.Sprintf("held with the mouth up, its left is at the %s side of the case", e.left),
	}
	p.Folds = append(p.Folds, geometry.Line(pt(0, mouth+s), pt(tab, mouth+s)))
	p.Folds = append(p.Folds, middle.folds()...)
	p.Folds = append(p.Folds, geometry.Line(pt(width-tab, mouth+s), pt(width, mouth+s)))
	for _, room := range rooms(parts) {
		p.Regions = append(p.Regions, geometry.Region{Name: "middle tab", Fold: "fold last", Face: e.inside, Room: room})
	}
	p.Margins = append(p.Margins, middle.margins()...)
	if v.middle < turnIn-1e-6 {
		p.Margins = append(p.Margins, geometry.Margin{Name: "middle tab, cut shorter in so thin a case", Length: v.middle})
	}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{bottom: {Name: "spine end", Meets: "from the spine edge", Off: j.Cloth.SpineGap}, top: {Name: "mouth"}})
	p.Spine = bottom
	return p
}
