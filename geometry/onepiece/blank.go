package onepiece

import (
	"forel/geometry"
	"forel/geometry/walled"
)

// blank returns the case unfolded, its inside up and its head at the top.
func (j Job) blank() geometry.Piece {
	s, f := j.scores(), j.flaps()
	pt := geometry.Pt
	p := geometry.Piece{
		Name: PieceName, Material: j.Card.material(), Count: 1,
		Outline: outline(s, f),
		Slits:   slits(s, f),
		Folds: []geometry.Path{
			geometry.Line(pt(s.left, -s.inner), pt(s.left, s.inner)),
			geometry.Line(pt(s.right, -s.outer), pt(s.right, s.outer)),
		},
		Seats: []geometry.Seat{{Face: walled.SpineOutside, At: [2]geometry.Anchor{
			{At: pt(s.left, -s.inner), On: scoreAtTail}, {At: pt(s.left, s.inner), On: scoreAtHead},
		}}},
		Grain:  geometry.GrainHeight,
		FaceUp: "inside of the case up",
		Regions: []geometry.Region{
			{Name: "left side", Face: walled.LeftInside, Room: geometry.Bx(0, -s.inner, s.left, s.inner)},
			{Name: "spine", Face: walled.SpineInside, Room: geometry.Bx(s.left, -s.inner, s.right, s.inner)},
			{Name: "right side", Face: walled.RightInside, Room: geometry.Bx(s.right, -s.inner, s.width, s.inner)},
			{Name: "inner flap", Fold: "fold first", Face: walled.HeadInside, Room: f.inner.room},
			{Name: "spine flap", Fold: "fold second", Face: walled.HeadOutside, Room: f.spine.room},
			{Name: "outer flap", Fold: "fold last", Turn: 1, Face: walled.HeadOutside, Room: f.outer.room},
			{Name: "inner flap", Fold: "fold first", Face: walled.TailInside, Room: flipBox(f.inner.room)},
			{Name: "spine flap", Fold: "fold second", Face: walled.TailOutside, Room: flipBox(f.spine.room)},
			{Name: "outer flap", Fold: "fold last", Turn: 1, Face: walled.TailOutside, Room: flipBox(f.outer.room)},
		},
		Edges:   edges(s, f),
		Spine:   besideSpine,
		Margins: margins(s, f),
		Hand:    "held with the head up, its left is the left side of the case, looking into the mouth",
	}
	for _, l := range []flap{f.inner, f.spine, f.outer} {
		from, to := l.outline[0], l.outline[1]
		p.Folds = append(p.Folds, geometry.Line(from, to), geometry.Line(flip(from), flip(to)))
	}
	for _, y := range []Length{s.inside, -s.inside} {
		p.Guides = append(p.Guides, geometry.Guide{Name: "inside of the inner flap when folded", Named: true, Path: geometry.Line(pt(s.left, y), pt(s.width, y))})
	}
	p.Rule = j.sizeRule(f, p)
	low := p.Outline.Bounds().Min
	return p.Moved(func(q geometry.Point) geometry.Point { return q.Sub(low) }, func(q geometry.Path) geometry.Path { return q.Move(pt(-low.X, -low.Y)) })
}

// besideSpine is the edge nearest the spine in the list that edges returns.
const besideSpine = 2

func edges(s scores, f flaps) []geometry.Edge {
	pt := geometry.Pt
	end := s.inner + f.inner.length
	base := pt(s.left-f.slot, s.inner)
	corner := pt(s.left-f.slot-f.lean, end)
	return []geometry.Edge{
		{Name: "mouth edge", Meets: "stays open", From: pt(0, s.inner), To: pt(0, -s.inner)},
		{Name: "mouth edge", Meets: "stays open", From: pt(s.width, -s.outer), To: pt(s.width, s.outer)},
		{From: base, To: corner}, // of the inner flap; without a name
		{Name: "head", From: corner, To: pt(0, end)},
		{Name: "tail", From: pt(0, -end), To: flip(corner)},
	}
}

func margins(s scores, f flaps) []geometry.Margin {
	return []geometry.Margin{
		{Name: "from a mouth edge to the spine score beside it", Length: s.left},
		{Name: "between the spine scores", Length: s.right - s.left},
		{Name: "from head score to tail score, left side", Length: 2 * s.inner},
		{Name: "from head score to tail score, spine and right side", Length: 2 * s.outer},
		{Name: "length of the inner flap", Length: f.inner.length},
		{Name: "length of the outer flap", Length: f.outer.length},
		{Name: "cut away of the inner flap beside the spine score", Length: f.slot},
		{Name: "nick to each side of the right spine score, before the mitre", Length: f.nick},
	}
}

// outline returns the outline, counterclockwise.
func outline(s scores, f flaps) geometry.Path {
	head := headOutline(s, f)
	var tail []geometry.Point
	for i := len(head) - 1; i >= 0; i-- {
		tail = append(tail, flip(head[i]))
	}
	return geometry.Polygon(geometry.Distinct(append(tail, head...)...)...)
}

// headOutline returns the outline past the panels at the head, from the mouth edge
// of the right side to that of the left.
func headOutline(s scores, f flaps) []geometry.Point {
	var out []geometry.Point
	out = append(out, f.outer.around()...)
	spine, inner := f.spine.around(), f.inner.around()
	if f.slitOnly() {
		// Down the one flap to the end of the slit and up the other is one line.
		out = append(out, spine[:len(spine)-1]...)
		return append(out, inner[1:]...)
	}
	out = append(out, spine...)
	out = append(out, geometry.Pt(s.left, s.inner)) // the spine panel reaches higher than the left side
	return append(out, inner...)
}

// slits returns the slits beside the spine at head and tail where they take
// nothing away; where they do, they are part of the outline.
func slits(s scores, f flaps) []geometry.Path {
	if !f.slitOnly() {
		return nil
	}
	// Beyond the shorter of the two flaps the edge of the other is outline.
	spine := f.spine.outline
	from := geometry.Pt(s.left, min(s.inner+f.inner.length, spine[len(spine)-1].Y))
	to := geometry.Pt(s.left, s.inner)
	return []geometry.Path{geometry.Line(from, to), geometry.Line(flip(from), flip(to))}
}

// slitOnly tells whether inner flap and spine flap have an edge in common.
func (f flaps) slitOnly() bool { return f.slot < hair && f.lean < hair }

// around returns the outline from the right end of the score round to the left.
func (l flap) around() []geometry.Point {
	return append(append([]geometry.Point{}, l.outline[1:]...), l.outline[0])
}

// flip returns the place at the tail that mirrors one at the head.
func flip(p geometry.Point) geometry.Point { return geometry.Pt(p.X, -p.Y) }

func flipBox(b geometry.Box) geometry.Box {
	return geometry.Bx(b.Min.X, -b.Max.Y, b.Max.X, -b.Min.Y)
}
