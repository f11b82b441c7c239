package labelled

import (
	"iter"
	"math"
	"slices"

	"forel/geometry"
	"forel/render"
	"forel/render/leader"
	"forel/render/record"
)

// labeller sets the words of one piece on one surface.
type labeller struct {
	placer
	surface render.Surface
	piece   geometry.Piece
	view    View
	bounds  geometry.Box // of the piece, on the surface
	missed  []string
	leaders []geometry.Segment // lines to words beside the piece
	drawn   geometry.Length    // how long they are, in all

	full, brief, short []way // titles, as titles returns them
}

func newLabeller(s render.Surface, p geometry.Piece, v View) *labeller {
	if v.Wider == 0 {
		v.Wider = 1
	}
	l := &labeller{surface: s, piece: p, view: v, bounds: v.box(p.Outline.Bounds())}
	l.safe = v.Safe
	l.full, l.brief, l.short = titles(p, v)
	l.Boxes = append(l.Boxes, v.Keep...)
	for _, path := range p.Lines() {
		for _, s := range path.Straight(0.1) {
			l.Lines = append(l.Lines, geometry.Segment{From: v.point(s.From), To: v.point(s.To)})
		}
	}
	return l
}

func (l *labeller) color() render.Color { return l.view.Theme[render.Legend].Color }

// fit sets a label the first way that finds room in a room, level or turned.
func (l *labeller) fit(ways []way, room geometry.Box) bool {
	room = room.Intersect(l.safe)
	near := l.near(room)
	for i := range ways {
		if l.setIn(near, &ways[i], room, false) || l.setIn(near, &ways[i], room, true) {
			return true
		}
	}
	return false
}

// fitLevel is fit with every way tried level before any is turned.
func (l *labeller) fitLevel(ways []way, room geometry.Box) bool {
	room = room.Intersect(l.safe)
	near := l.near(room)
	for _, turned := range []bool{false, true} {
		for i := range ways {
			if l.setIn(near, &ways[i], room, turned) {
				return true
			}
		}
	}
	return false
}

// setIn sets a label in a room, whose placer is near.
func (l *labeller) setIn(near placer, way *way, room geometry.Box, turned bool) bool {
	b, w, h := way.set(l.view.Wider)
	if turned {
		w, h = h, w
	}
	box, ok := near.first(within(room, w, h))
	if ok {
		l.Boxes = append(l.Boxes, box)
		b.Draw(l.surface, box, turned, l.color())
	}
	return ok
}

// led is a block to be set beside the piece with a line to a place in a box.
type led struct {
	words Block
	to    geometry.Box
}

// leads sets blocks beside the piece, in the order in which the fewest are missed, and
// their lines are then the shortest in all. Any of them is tried first, and both ways round.
func (l *labeller) leads(all []led) {
	var best *labeller
	var drawn *record.Surface
	for i := range 2 * len(all) {
		order := slices.Concat(all[i/2:], all[:i/2])
		if i%2 > 0 {
			slices.Reverse(order)
		}
		t, on := l.trial()
		t.drawn = 0
		var rest []led
		for _, a := range order {
			if !t.lead(a, true) {
				rest = append(rest, a)
			}
		}
		for _, a := range rest {
			if t.drawn += crossed; !t.lead(a, false) {
				t.missed = append(t.missed, a.words[0].Text)
			}
		}
		if best == nil || len(t.missed) < len(best.missed) || len(t.missed) == len(best.missed) && t.drawn < best.drawn-1e-6 {
			best, drawn = t, on
		}
	}
	if best != nil {
		l.keep(best, drawn)
	}
}

// crossed is what a line that crosses another counts for beyond its length.
const crossed geometry.Length = 1000

// lead sets a block beside the piece with a line to it: the shortest that crosses no words
// nor, where it is to be apart, another such line.
func (l *labeller) lead(a led, apart bool) bool {
	w, h := a.words.Size(l.view.Wider)
	var box geometry.Box
	var line geometry.Segment
	shortest := geometry.Length(math.Inf(1))
	seen := visible(l.bounds, l.safe)
	for _, places := range []func(geometry.Point) iter.Seq[geometry.Box]{
		func(target geometry.Point) iter.Seq[geometry.Box] { return beside(seen, target, w, h) },
		func(target geometry.Point) iter.Seq[geometry.Box] { return about(target, w, h) },
	} {
		for _, target := range targets(a.to) {
			if !l.safe.Contains(geometry.Around(target)) {
				continue
			}
			for b := range places(target) {
				near := geometry.Pt(clamp(target.X, b.Min.X, b.Max.X), clamp(target.Y, b.Min.Y, b.Max.Y))
				s := geometry.Segment{From: near, To: target}
				if near.Distance(target) < shortest-1 && l.free(b) && l.clear(s, apart) { // what is nearly alike keeps its order
					box, line, shortest = b, s, near.Distance(target)
				}
			}
		}
		if !box.Empty() {
			break // on the piece, in another part's room, only where there is none beside it
		}
	}
	if box.Empty() {
		return false
	}
	l.Boxes = append(l.Boxes, box)
	l.Lines, l.leaders = append(l.Lines, line), append(l.leaders, line)
	l.drawn += shortest
	a.words.Draw(l.surface, box, false, l.color())
	l.surface.Stroke(geometry.Line(line.From, line.To), render.Stroke{Width: 0.12, Color: l.color()})
	l.surface.Fill(geometry.Circle(line.To, 0.5), l.color()) // a dot, so that it is no cut
	return true
}

// clear tells whether a line to a place crosses no words and, where it is to be apart,
// neither crosses nor touches another such line.
func (l *labeller) clear(s geometry.Segment, apart bool) bool {
	crosses := func(s geometry.Segment, b geometry.Box, by geometry.Length) bool {
		return b.Grow(by).Crossed(s.From, s.To)
	}
	return !slices.ContainsFunc(l.Boxes, func(b geometry.Box) bool { return crosses(s, b, offLines) }) &&
		!(apart && slices.ContainsFunc(l.leaders, func(o geometry.Segment) bool {
			return leader.Cross(s.From, s.To, o.From, o.To) || crosses(s, geometry.Around(o.To), 1) || crosses(o, geometry.Around(s.To), 1)
		}))
}

// targets are where a line to a box can end: in its middle, then along a long one, ever
// nearer its ends.
func targets(b geometry.Box) []geometry.Point {
	const fromEnd, apart = 3, 9
	c := b.Center()
	out := []geometry.Point{c}
	step, half := geometry.Pt(1, 0), b.Width()/2
	if b.Height() > b.Width() {
		step, half = geometry.Pt(0, 1), b.Height()/2
	}
	for off := geometry.Length(apart); off <= half-fromEnd; off += apart {
		out = append(out, c.Add(step.Mul(-off.MM())), c.Add(step.Mul(off.MM())))
	}
	return out
}

func clamp(x, lo, hi geometry.Length) geometry.Length { return max(lo, min(hi, x)) }

// trial returns a copy that draws on a surface of its own, which can be played on l.surface.
func (l *labeller) trial() (*labeller, *record.Surface) {
	t, on := *l, &record.Surface{}
	t.surface = on
	t.Boxes, t.Lines, t.leaders, t.missed = slices.Clone(l.Boxes), slices.Clone(l.Lines), slices.Clone(l.leaders), nil
	return &t, on
}

// keep takes over what a trial has set.
func (l *labeller) keep(t *labeller, on *record.Surface) {
	on.Play(l.surface, geometry.Point{})
	l.Boxes, l.Lines, l.leaders, l.missed = t.Boxes, t.Lines, t.leaders, append(l.missed, t.missed...)
}

// names sets what the piece is and the names of its parts. Those of the parts,
// which can stand nowhere else, are set first where more finds room then; the
// piece itself must be named all the same.
func (l *labeller) names() {
	best, on := l.trial()
	if best.main(false); len(best.missed) > 0 {
		parts, onParts := l.trial()
		parts.main(true)
		if len(parts.missed) < len(best.missed) && !slices.Contains(parts.missed, l.piece.Name) {
			best, on = parts, onParts
		}
	}
	l.keep(best, on)
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
		var beside []led
		for _, r := range l.piece.Regions {
			if to, ok := l.region(r); !ok {
				beside = append(beside, led{Block{{r.Label(), render.SmallSize, false}}, to})
			}
		}
		l.leads(beside)
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
	case l.lead(led{short[1].Block, visible(main, l.safe)}, true):
	default:
		l.missed = append(l.missed, l.piece.Name)
	}
}

// visible returns what of a box lies in another, or the box where nothing does.
func visible(b, in geometry.Box) geometry.Box {
	if v := b.Intersect(in); !v.Empty() {
		return v
	}
	return b
}

// region sets a region's name and where it lands. Where it has no room for them, it
// returns what of it can be seen.
func (l *labeller) region(r geometry.Region) (geometry.Box, bool) {
	room := l.view.box(r.Room)
	if l.fit(regionLabels(r), room) {
		return geometry.Box{}, true
	}
	seen := room.Intersect(l.safe)
	return seen, seen.Empty() // then it is on another sheet
}

// atEdge is how far outside the safe box a line may lie that has words beside
// it within the box.
const atEdge geometry.Length = 1.5

// verge is the part of a line of the surface that can be seen, to set words by.
type verge struct {
	seen   geometry.Box
	turned bool           // it runs upright
	inward geometry.Point // the step to its left (seen with Y upward), where what it borders is
	reach  geometry.Length
}

// verge returns the part of a line that can be seen: none where it is on another
// sheet.
func (l *labeller) verge(from, to geometry.Point) (v verge, ok bool) {
	v.seen = geometry.Around(from, to).Intersect(l.safe.Grow(atEdge))
	if v.seen.Width() < 0 || v.seen.Height() < 0 {
		return verge{}, false
	}
	v.turned = v.seen.Height() > v.seen.Width()
	// On a surface with Y downward the left is the right turned about.
	v.inward, v.reach = geometry.Pt(0, 1), l.bounds.Height()/2
	switch {
	case v.turned && from.Y > to.Y: // upward: the right edge
		v.inward = geometry.Pt(-1, 0)
	case v.turned:
		v.inward = geometry.Pt(1, 0)
	case from.X < to.X: // the bottom edge
		v.inward = geometry.Pt(0, -1)
	}
	if v.turned {
		v.reach = l.bounds.Width() / 2
	}
	return v, true
}

// slides are the places of a label along a verge, as parts of its room to
// either side of the middle.
var slides = [...]geometry.Length{0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6, 0.75, -0.75, 0.9, -0.9, 1, -1}

// boxes returns boxes of a size (w along, h across) beside a verge: first inward,
// then on its other side.
func (v verge) boxes(w, h geometry.Length, depths []geometry.Length) iter.Seq[geometry.Box] {
	slack := v.seen.Width() - w
	if v.turned {
		slack = v.seen.Height() - w
	}
	c := v.seen.Center()
	return func(yield func(geometry.Box) bool) {
		for _, deep := range depths {
			depth := deep + h/2
			switch {
			case deep < 0:
				depth = deep - h/2
			case slack < 0 || depth+h/2 > v.reach:
				continue // it would stand out at the ends, or nearer the edge across
			}
			m := c.Add(v.inward.Mul(depth.MM()))
			for _, slide := range slides {
				if slack < 0 && slide != 0 {
					break
				}
				box := around(m.Add(geometry.Pt(slack/2*slide, 0)), w, h)
				if v.turned {
					box = around(m.Add(geometry.Pt(0, slack/2*slide)), h, w)
				}
				if !yield(box) {
					return
				}
			}
		}
	}
}

// How far from a line the words beside it stand: hard by it, on its left then on
// its right, where they must not be taken for another's; or as far as it takes.
var (
	hard  = []geometry.Length{1.2, 2, 3}
	loose = []geometry.Length{1.2, 2, 3, 4, 5, 6, 8, 10, 13, 16, -1.2, -2, -3, -5, -8, -10}
)

// set sets the first block that finds room beside a line of the surface.
func (l *labeller) set(v verge, ways []way, depths []geometry.Length) bool {
	for i := range ways {
		b, w, h := ways[i].set(l.view.Wider)
		if box, ok := l.first(v.boxes(w, h, depths)); ok {
			b.Draw(l.surface, box, v.turned, l.color())
			return true
		}
	}
	return false
}

// joins sets what is to be done at each join.
func (l *labeller) joins() {
	for _, j := range l.view.Joins {
		ways := Block{{j.Text, render.SmallSize, false}}.ways(40, 28, 18)
		if v, ok := l.verge(j.From, j.To); !ok || !l.set(v, ways, hard) && !l.set(v, ways, loose) {
			l.missed = append(l.missed, j.Text)
		}
	}
}

// edge sets an edge's name and what it meets along it.
func (l *labeller) edge(e geometry.Edge) {
	v, ok := l.verge(l.view.point(e.From), l.view.point(e.To))
	if ok && !l.set(v, edgeLabels(e, l.view.Round), loose) {
		l.missed = append(l.missed, e.Name)
	}
}
