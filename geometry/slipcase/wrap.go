package slipcase

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// Covering in one material (common practice, no source).
const (
	mouthWeb  Length = 1   // covering left round a corner of the mouth, at most
	wallClear Length = 0.5 // between a turn-in and what lies on the wall beside it
)

// wrapMaterial returns what a one-material covering is cut from.
func (j Job) wrapMaterial() geometry.Material {
	if j.Covering == AllPaper {
		return geometry.Paper
	}
	return geometry.Cloth
}

// wrapInset returns how far the part of a wrap that is turned in at the mouth
// keeps from head and tail: clear of the walls and of what is turned over them.
func (j Job) wrapInset() Length { return j.Edge() + 2*j.cover() + wallClear }

// wrap returns the covering that goes round sides and spine in one piece, back
// up, head at the top, spine in the middle: left of the template is the left
// side. At head and tail it has the flaps of spine cloth, those of the sides
// as long as the sides are deep; at both ends a turn-in goes round the mouth
// edge and into the case. Where a flap and a turn-in meet, the corner is cut
// away but for a small web.
func (j Job) wrap() geometry.Piece {
	s, out, f := j.Edge(), j.Outside(), j.flaps()
	t, web, inset := j.Cloth.MouthTurnIn, min(mouthWeb, s/2), j.wrapInset()
	f.leanSide = min((f.side-f.apex)*slope(wedgeAngle), out.Width/4)
	x1 := t + out.Width
	x2 := x1 + out.Thickness
	mouth := x2 + out.Width // the mouth line at the right
	width := mouth + t
	lo, hi := f.spine, f.spine+out.Height
	end := hi + f.spine
	vertex := func(x, y Length) geometry.Vertex { return geometry.Vertex{Point: geometry.Pt(x, y)} }

	p := geometry.Piece{Name: "wrap", Material: j.wrapMaterial(), Count: 1, Grain: geometry.GrainHeight,
		FaceUp: "back up (the face that is glued)", Rule: geometry.SizeRule{Width: "To + 2Wo + 2u", Height: "Ho + 2e", Remark: j.thin(f)},
		Hand: j.withHole("held with the head up, left and right as in the template", "thumb hole: cut it smaller, snip its edge, turn the tabs over the board"), Spine: -1}
	turnIn := mouthTurnIn{job: j, mouth: mouth, edge: s, outer: width, from: lo, to: hi, middle: (lo + hi) / 2}
	// The largest part comes first: what the piece is stands on it.
	p.Regions = []geometry.Region{{Name: "right side", Face: RightOutside, Room: geometry.Bx(x2, lo, mouth-turnIn.depth(), hi)}}
	turnIn.put(&p, RightInside)
	for i := range p.Folds { // the fold inside ends where the turn-in is cut back
		if v := p.Folds[i].Vertices; len(v) == 2 && v[0].X.Near(mouth+s) && v[1].X.Near(mouth+s) {
			v[0].Y, v[1].Y = max(v[0].Y, lo+inset), min(v[1].Y, hi-inset)
		}
	}
	p.Creases = append(p.Creases,
		geometry.Crease{Path: geometry.Line(geometry.Pt(mouth, lo), geometry.Pt(mouth, lo-web)), Kind: geometry.Give},
		geometry.Crease{Path: geometry.Line(geometry.Pt(mouth, lo), geometry.Pt(mouth+web, lo)), Kind: geometry.Give},
		geometry.Crease{Path: geometry.Line(geometry.Pt(mouth, hi), geometry.Pt(mouth, hi+web)), Kind: geometry.Give},
		geometry.Crease{Path: geometry.Line(geometry.Pt(mouth, hi), geometry.Pt(mouth+web, hi)), Kind: geometry.Give},
		geometry.Crease{Path: geometry.Line(geometry.Pt(x2, hi), geometry.Pt(x2, hi+f.apex)), Kind: geometry.Give},
		geometry.Crease{Path: geometry.Line(geometry.Pt(x2, lo), geometry.Pt(x2, lo-f.apex)), Kind: geometry.Give},
	)
	p.Folds = append(p.Folds, geometry.Line(geometry.Pt(x2, lo-f.apex), geometry.Pt(x2, hi+f.apex)))
	p.Regions = append(p.Regions,
		geometry.Region{Name: "side flap", Fold: "fold first", Face: HeadOutside, Room: geometry.Bx(x2+f.leanSide, hi, mouth, hi+f.side)},
		geometry.Region{Name: "side flap", Fold: "fold first", Face: TailOutside, Room: geometry.Bx(x2+f.leanSide, lo-f.side, mouth, lo)},
	)
	mirrorPiece(&p, width)
	p.Folds = append(p.Folds,
		geometry.Line(geometry.Pt(t, lo), geometry.Pt(mouth, lo)),
		geometry.Line(geometry.Pt(t, hi), geometry.Pt(mouth, hi)),
	)
	p.Regions = append(p.Regions,
		geometry.Region{Name: "spine", Face: SpineOutside, Room: geometry.Bx(x1, lo, x2, hi)},
		geometry.Region{Name: "spine flap", Fold: "fold last", Face: HeadOutside, Room: geometry.Bx(x1+f.leanSpine, hi, x2-f.leanSpine, end)},
		geometry.Region{Name: "spine flap", Fold: "fold last", Face: TailOutside, Room: geometry.Bx(x1+f.leanSpine, 0, x2-f.leanSpine, lo)},
	)

	// The right half of the outline from the tail up, then its mirror image.
	half := []geometry.Vertex{
		vertex(x2-f.leanSpine, 0), vertex(x2, lo-f.apex), vertex(x2+f.leanSide, lo-f.side),
		vertex(mouth, lo-f.side), vertex(mouth, lo-web), vertex(mouth+web, lo), vertex(mouth+s, lo), vertex(mouth+s, lo+inset), vertex(width, lo+inset),
	}
	if j.hasHole() {
		half = append(half, turnIn.hole().edge...)
	}
	half = append(half,
		vertex(width, hi-inset), vertex(mouth+s, hi-inset), vertex(mouth+s, hi), vertex(mouth+web, hi), vertex(mouth, hi+web), vertex(mouth, hi+f.side),
		vertex(x2+f.leanSide, hi+f.side), vertex(x2, hi+f.apex), vertex(x2-f.leanSpine, end),
	)
	p.Outline = distinct(geometry.Path{Vertices: append(half, geometry.Path{Vertices: half}.FlipX(width).Vertices...), Closed: true})
	p.Guides = []geometry.Guide{
		{Name: "spine of the carcass", Path: geometry.Rectangle(geometry.Bx(x1, lo, x2, hi))},
		{Name: "right side", Path: geometry.Line(geometry.Pt(mouth, lo), geometry.Pt(x2, lo), geometry.Pt(x2, hi), geometry.Pt(mouth, hi))},
		{Name: "left side", Path: geometry.Line(geometry.Pt(t, lo), geometry.Pt(x1, lo), geometry.Pt(x1, hi), geometry.Pt(t, hi))},
	}
	p.Seats = []geometry.Seat{glued(SpineOutside, geometry.Pt(x1, lo), place{}, geometry.Pt(x1, hi), place{head: true})}
	p.Margins = []geometry.Margin{
		{Name: "beyond the mouth edges, turned in", Length: t},
		{Name: "from the spine flap's end to the carcass, head and tail", Length: f.spine},
		{Name: "side flaps over head and tail", Length: f.side},
		{Name: "from the corner of the board to the apex of a wedge", Length: f.apex},
		{Name: "what is turned in keeps from head and tail", Length: inset},
	}
	p.Edges = rectangleEdges(p, [4]geometry.Edge{bottom: {Name: "tail"}, top: {Name: "head"}})
	return p
}

// distinct drops a vertex that repeats the one before it.
func distinct(p geometry.Path) geometry.Path {
	p.Vertices = slices.CompactFunc(p.Vertices, func(a, b geometry.Vertex) bool { return a.Bulge == 0 && a.Point.Near(b.Point) })
	if n := len(p.Vertices); n > 1 && p.Vertices[0].Point.Near(p.Vertices[n-1].Point) && p.Vertices[n-1].Bulge == 0 {
		p.Vertices = p.Vertices[:n-1]
	}
	return p
}

// mirrorPiece adds to a piece the mirror image of its folds, slits, creases
// and regions, left for right.
func mirrorPiece(p *geometry.Piece, width Length) {
	m := p.Moved(func(q geometry.Point) geometry.Point { return geometry.Pt(width-q.X, q.Y) }, func(path geometry.Path) geometry.Path { return path.FlipX(width) })
	p.Folds, p.Slits, p.Creases = append(p.Folds, m.Folds...), append(p.Slits, m.Slits...), append(p.Creases, m.Creases...)
	other := map[geometry.Face]geometry.Face{RightOutside: LeftOutside, RightInside: LeftInside}
	for _, r := range m.Regions {
		r.Face = cmp.Or(other[r.Face], r.Face)
		if r.Name == "right side" {
			r.Name = "left side"
		}
		p.Regions = append(p.Regions, r)
	}
}

// endPanel returns the panel that goes over head or tail wall on top of the flaps of a
// wrap, back up, mouth at the top. It is as wide as the cavity, so that its turn-in fits
// between the sides; inside it is narrower by what is turned in on both.
func (j Job) endPanel(e end) geometry.Piece {
	s, k := j.Edge(), j.cover()
	w := j.Between().Thickness
	mouth := j.Outside().Width - j.Cloth.SpineGap
	tip := mouth + j.Cloth.MouthTurnIn
	pt := geometry.Pt
	turned := j.turnInBetween(pt(k, mouth+s), pt(k, tip), func(q geometry.Point) geometry.Point { return pt(w-q.X, q.Y) }, 0, e.left == "right")
	way, parts := turned.cut()
	slices.Reverse(way)
	outline := append([]geometry.Point{pt(0, 0), pt(w, 0), pt(w, mouth)}, way...)
	p := geometry.Piece{
		Name: e.name + " panel", Material: j.wrapMaterial(), Count: 1, Grain: geometry.GrainHeight,
		FaceUp:  "back up (the face that is glued)",
		Rule:    geometry.SizeRule{Width: "To − 2s", Height: "Wo − g + u"},
		Hand:    "goes on last, over the flaps of the wrap",
		Outline: geometry.Polygon(append(outline, pt(0, mouth))...),
		Folds:   append([]geometry.Path{geometry.Line(pt(0, mouth), pt(w, mouth))}, turned.folds()...),
		Guides:  []geometry.Guide{{Name: "mouth edge of the wall", Path: geometry.Line(pt(0, mouth), pt(w, mouth))}},
		Regions: []geometry.Region{
			{Name: e.name, Face: e.outside, Room: geometry.Bx(0, 0, w, mouth)},
		},
		Seats: []geometry.Seat{glued(e.outside, pt(-s, mouth), e.at(e.left, true), pt(w+s, mouth), e.at(e.right, true))},
		Margins: []geometry.Margin{
			{Name: "from the outer faces of the case to the panel, each side", Length: s},
			{Name: "from the spine edge of the carcass to the panel", Length: j.Cloth.SpineGap},
			{Name: "beyond the mouth edge, turned in", Length: j.Cloth.MouthTurnIn},
		},
		Spine: bottom,
	}
	for _, room := range rooms(parts) {
		p.Regions = append(p.Regions, geometry.Region{Name: "turn-in", Face: e.inside, Room: room})
	}
	p.Margins = append(p.Margins, turned.margins()...)
	p.Edges = rectangleEdges(p, [4]geometry.Edge{bottom: {Name: "spine end", Meets: "from the spine edge", Off: j.Cloth.SpineGap}, top: {Name: "mouth"}})
	return p
}
