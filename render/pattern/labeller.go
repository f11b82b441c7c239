package pattern

import (
	"slices"

	"forel/geometry"
	"forel/render"
)

// labeller sets the words of one piece on one surface.
type labeller struct {
	placer
	surface render.Surface
	piece   geometry.Piece
	view    View
	bounds  geometry.Box // of the piece, on the surface
	missed  []string

	full, brief, short []block // titles, as titles gives them
}

func newLabeller(s render.Surface, p geometry.Piece, v View) *labeller {
	if v.Wider == 0 {
		v.Wider = 1
	}
	l := &labeller{surface: s, piece: p, view: v, bounds: v.box(p.Outline.Bounds())}
	l.safe = v.Safe
	l.full, l.brief, l.short = titles(p, v)
	l.taken = append(l.taken, v.Keep...)
	for _, path := range p.Lines() {
		flat := path.Flatten(0.1)
		if path.Closed {
			flat = append(flat, flat[0])
		}
		for i := 1; i < len(flat); i++ {
			l.lines = append(l.lines, geometry.Segment{From: v.point(flat[i-1]), To: v.point(flat[i])})
		}
	}
	return l
}

func (l *labeller) color() render.Color { return l.view.Theme[render.Legend].Color }

// fit sets the first block that finds room in a room, level or turned.
func (l *labeller) fit(blocks []block, room geometry.Box) bool {
	room = room.Intersect(l.safe)
	for _, b := range blocks {
		w, h := b.size(l.view.Wider)
		if box, ok := l.first(within(room, w, h)); ok {
			b.draw(l.surface, box, false, l.color())
			return true
		}
		if box, ok := l.first(within(room, h, w)); ok {
			b.draw(l.surface, box, true, l.color())
			return true
		}
	}
	return false
}

// fitLevel is fit for ways to break the same words into lines: all of them are
// tried level before any is turned.
func (l *labeller) fitLevel(blocks []block, room geometry.Box) bool {
	room = room.Intersect(l.safe)
	for _, turned := range []bool{false, true} {
		for _, b := range blocks {
			w, h := b.size(l.view.Wider)
			if turned {
				w, h = h, w
			}
			if box, ok := l.first(within(room, w, h)); ok {
				b.draw(l.surface, box, turned, l.color())
				return true
			}
		}
	}
	return false
}

// lead sets a block beside the piece with a line to a target.
func (l *labeller) lead(b block, target geometry.Point) bool {
	if !l.safe.Contains(geometry.Box{Min: target, Max: target}) {
		return false
	}
	w, h := b.size(l.view.Wider)
	for box := range beside(l.bounds, target, w, h) {
		near := geometry.Pt(clamp(target.X, box.Min.X, box.Max.X), clamp(target.Y, box.Min.Y, box.Max.Y))
		leader := geometry.Segment{From: near, To: target}
		if !l.free(box) || slices.ContainsFunc(l.taken, func(t geometry.Box) bool { return crosses(leader, t.Grow(offLines)) }) {
			continue
		}
		l.taken = append(l.taken, box)
		l.lines = append(l.lines, leader)
		b.draw(l.surface, box, false, l.color())
		l.surface.Stroke(geometry.Line(near, target), render.Stroke{Width: 0.12, Color: l.color()})
		l.surface.Fill(geometry.Circle(target, 0.5), l.color()) // a dot, so that it is no cut
		return true
	}
	return false
}

func clamp(x, lo, hi geometry.Length) geometry.Length { return max(lo, min(hi, x)) }

// onlyTrying gives a copy that sets its words nowhere, to find out what fits.
func (l *labeller) onlyTrying() *labeller {
	t := *l
	t.surface = render.Discard{}
	t.taken, t.lines, t.missed = slices.Clone(l.taken), slices.Clone(l.lines), nil
	return &t
}

// partsFirst tells whether more finds room when the names of a piece's parts,
// which can stand nowhere else, are set before what the piece is; the piece
// itself must be named all the same.
func (l *labeller) partsFirst() bool {
	title, parts := l.onlyTrying(), l.onlyTrying()
	if title.main(false); len(title.missed) == 0 {
		return false
	}
	parts.main(true)
	return len(parts.missed) < len(title.missed) && !slices.Contains(parts.missed, l.piece.Name)
}

// main sets what the piece is and the names of its parts, in that order or with
// the parts first.
func (l *labeller) main(partsFirst bool) {
	parts := func() {
		// A piece that is neither folded nor laid on another is one part, which
		// its title names.
		if len(l.piece.Folds) == 0 && (l.piece.Over == "" || len(l.piece.Guides) == 0) {
			return
		}
		for _, r := range l.piece.Regions {
			l.region(r)
		}
	}
	if partsFirst {
		parts()
		l.title()
	} else {
		l.title()
		parts()
	}
}

// title sets what the piece is: in its main region, else anywhere on it, else
// beside it.
func (l *labeller) title() {
	full, brief, short := l.full, l.brief, l.short
	main := l.view.box(l.piece.Regions[0].Room)
	switch {
	case l.fitLevel(full, main), l.fitLevel(brief, main):
	case l.fitLevel(full, l.bounds), l.fitLevel(brief, l.bounds):
	case l.fit(short, main):
	case l.fit(short, l.bounds):
	case l.lead(short[1], visible(main, l.safe).Center()):
	default:
		l.missed = append(l.missed, l.piece.Name)
	}
}

// visible gives what of a box lies in another, or the box where nothing does.
func visible(b, in geometry.Box) geometry.Box {
	if v := b.Intersect(in); !v.Empty() {
		return v
	}
	return b
}

// region sets a region's name and where it lands.
func (l *labeller) region(r geometry.Region) {
	room := l.view.box(r.Room)
	blocks := regionLabels(r)
	if l.fit(blocks, room) {
		return
	}
	seen := room.Intersect(l.safe)
	if seen.Empty() {
		return // it is on another sheet
	}
	if !l.lead(block{{r.Name, render.SmallSize, false}}, seen.Center()) {
		l.missed = append(l.missed, r.Name)
	}
}

// atEdge is how far outside the safe box a line may lie that has words beside
// it within the box.
const atEdge geometry.Length = 1.5

// beside gives boxes of a size (w along, h across) beside the part of a line
// of the surface that can be seen: first on its left (seen with Y upward),
// where what it borders is, then on its right.
func (l *labeller) beside(from, to geometry.Point, w, h geometry.Length, depths []geometry.Length) (boxes []geometry.Box, turned bool) {
	seen := geometry.Box{
		Min: geometry.Pt(min(from.X, to.X), min(from.Y, to.Y)),
		Max: geometry.Pt(max(from.X, to.X), max(from.Y, to.Y)),
	}.Intersect(l.safe.Grow(atEdge))
	if seen.Width() < 0 || seen.Height() < 0 {
		return nil, false // on another sheet
	}
	turned = seen.Height() > seen.Width()
	// The step into the piece: it lies on the left of the edge, which on a
	// surface with Y downward is the right turned about.
	inward := geometry.Pt(0, 1)
	switch {
	case turned && from.Y > to.Y: // upward: the right edge
		inward = geometry.Pt(-1, 0)
	case turned:
		inward = geometry.Pt(1, 0)
	case from.X < to.X: // the bottom edge
		inward = geometry.Pt(0, -1)
	}
	slack, reach := seen.Width()-w, l.bounds.Height()/2
	if turned {
		slack, reach = seen.Height()-w, l.bounds.Width()/2
	}
	c := seen.Center()
	for _, deep := range depths {
		for _, slide := range []geometry.Length{0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6, 0.75, -0.75, 0.9, -0.9, 1, -1} {
			depth := deep + h/2
			switch {
			case deep < 0:
				depth = deep - h/2
			case slack < 0 || depth+h/2 > reach:
				continue // it would stand out at the ends, or nearer the edge across
			}
			if slack < 0 && slide != 0 {
				continue
			}
			m := c.Add(inward.Mul(depth.MM()))
			if turned {
				boxes = append(boxes, around(m.Add(geometry.Pt(0, slack/2*slide)), h, w))
			} else {
				boxes = append(boxes, around(m.Add(geometry.Pt(slack/2*slide, 0)), w, h))
			}
		}
	}
	return boxes, turned
}

// How far from a line the words beside it stand: hard by it, on its left then on
// its right, where they must not be taken for another's; or as far as it takes.
var (
	hard  = []geometry.Length{1.2, 2, 3}
	loose = []geometry.Length{1.2, 2, 3, 4, 5, 6, 8, 10, 13, 16, -1.2, -2, -3, -5, -8, -10}
)

// set sets the first block that finds room beside a line of the surface.
func (l *labeller) set(from, to geometry.Point, blocks []block, depths []geometry.Length) bool {
	for _, b := range blocks {
		w, h := b.size(l.view.Wider)
		boxes, turned := l.beside(from, to, w, h, depths)
		if box, ok := l.first(slices.Values(boxes)); ok {
			b.draw(l.surface, box, turned, l.color())
			return true
		}
	}
	return false
}

// joins sets what is to be done at each join.
func (l *labeller) joins() {
	for _, j := range l.view.Joins {
		text := block{{j.Text, render.SmallSize, false}}
		ways := []block{text, text.wrapped(40), text.wrapped(28), text.wrapped(18)}
		if !l.set(j.From, j.To, ways, hard) && !l.set(j.From, j.To, ways, loose) {
			l.missed = append(l.missed, j.Text)
		}
	}
}

// edge sets an edge's name and what it meets along it.
func (l *labeller) edge(e geometry.Edge) {
	from, to := l.view.point(e.From), l.view.point(e.To)
	if seen, _ := l.beside(from, to, 0, 0, loose); seen == nil {
		return // it is on another sheet
	}
	if !l.set(from, to, edgeLabels(e, l.view.Round), loose) {
		l.missed = append(l.missed, e.Name)
	}
}
