// Package figure draws a picture of a stage: as large as a box takes, its labels beside it,
// arrows over it and its caption below.
package figure

import (
	"slices"

	"forel/geometry"
	"forel/geometry/stage"
	"forel/render"
	"forel/render/leader"
	"forel/render/scene"
	"forel/render/shape"
	"forel/render/staging"
	"forel/render/typeset"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Panel is one picture as it is drawn.
type Panel struct {
	faces   []scene.Face
	view    scene.View
	fresh   []string    // objects to be noticed
	focus   []stage.Vec // what must be seen; nil: everything
	notes   []note
	arrows  []stage.Arrow
	caption string
}

// note is words with a line to a place: one in space, or where most is seen of
// the faces with a name.
type note struct {
	name, more string
	spot       string
	at         stage.Vec
}

// Of returns a picture as it is drawn: how stuffs look, and how lengths are written.
func Of(p stage.Picture, looks staging.Looks, round func(Length) string) Panel {
	out := Panel{faces: looks.Faces(p.Faces), view: staging.View(p.View), fresh: p.Fresh, focus: p.Focus, arrows: p.Arrows, caption: p.Caption.In(round)}
	for _, n := range p.Notes {
		out.notes = append(out.notes, note{n.Name.In(round), n.More.In(round), n.Spot, n.At})
	}
	return out
}

// Widths of the labels beside a panel, and the white between it and them.
const (
	labelsWide Length = 25
	labelsOff  Length = 2.5
	captionGap Length = 1.2
	leastLead  Length = 9 // from a picture to its labels, where there is room
)

// See sees the panel's scene, and tells which part of the view is shown.
func (p Panel) See() (scene.Seen, geometry.Box) {
	if p.focus != nil {
		window := boundsOf(p.view, p.focus)
		return scene.SeeIn(p.faces, p.view, window), window
	}
	seen := scene.See(p.faces, p.view)
	window := seen.Bounds()
	for _, a := range p.arrows {
		b := boundsOf(p.view, a.Path)
		window = geometry.Around(window.Min, window.Max, b.Min, b.Max)
	}
	return seen, window
}

func boundsOf(v scene.View, at []stage.Vec) geometry.Box {
	on := make([]geometry.Point, len(at))
	for i, q := range at {
		on[i] = v.Flat(q)
	}
	return geometry.Around(on...)
}

// within tells whether all of a path is seen in a window.
func within(window geometry.Box, v scene.View, path []stage.Vec) bool {
	return window.Contains(boundsOf(v, path))
}

// Side tells where labels stand.
type Side int

// The sides where labels stand.
const (
	AtBoth Side = iota
	AtLeft
	AtRight
)

// Fresh returns the objects that are to be noticed.
func (p Panel) Fresh() []string { return p.fresh }

// Uncaptioned returns the panel without its caption.
func (p Panel) Uncaptioned() Panel {
	p.caption = ""
	return p
}

// Draw draws a panel in a box: labels beside it, its caption below. It returns how the view
// is laid on the box.
func (p Panel) Draw(on render.Surface, box geometry.Box, labels Side) (to func(geometry.Point) geometry.Point) {
	seen, window := p.See()
	room := box
	if p.caption != "" {
		lines := typeset.Break(p.caption, render.NoteSize, false, box.Width()-4)
		room.Max.Y -= Length(len(lines))*typeset.LineHeight(render.NoteSize) + captionGap
		y := room.Max.Y + captionGap
		for _, l := range lines {
			y += typeset.LineHeight(render.NoteSize)
			on.Text(render.Text{At: geometry.Pt(box.Center().X, y-typeset.Descent(render.NoteSize)), String: l, Size: render.NoteSize, Align: render.Middle, Color: render.Black})
		}
	}
	picture := room
	if len(p.notes) > 0 {
		if labels != AtRight {
			picture.Min.X += labelsWide + labelsOff
		}
		if labels != AtLeft {
			picture.Max.X -= labelsWide + labelsOff
		}
	}
	to, _ = scene.Fitted(window, picture.Grow(-0.6))
	lo, hi := to(window.Min), to(window.Max)
	seen.Draw(on, to, func(o string) bool { return slices.Contains(p.fresh, o) })
	if p.focus != nil {
		on.Stroke(geometry.Rectangle(geometry.Bx(lo.X, hi.Y, hi.X, lo.Y)), render.Stroke{Width: 0.2, Dash: []Length{1, 0.8}, Color: render.Grey})
	}
	for _, a := range p.arrows {
		if p.focus != nil && !within(window, p.view, a.Path) {
			continue
		}
		drawArrow(on, a, p.view, to)
	}
	// Labels stand near what is drawn.
	picture.Min.X, picture.Max.X = max(picture.Min.X, lo.X-leastLead), min(picture.Max.X, hi.X+leastLead)
	p.drawNotes(on, seen, to, room, picture, labels)
	return to
}

// drawNotes sets the labels of a panel beside its picture.
func (p Panel) drawNotes(on render.Surface, seen scene.Seen, to func(geometry.Point) geometry.Point, room, picture geometry.Box, where Side) {
	var all []leader.Label
	for _, n := range p.notes {
		at := p.view.Flat(n.at)
		if n.spot != "" {
			var ok bool
			if at, ok = seen.Spot(n.spot); !ok {
				continue
			}
		}
		l := leader.Label{Size: render.NoteSize, Anchor: to(at)}
		name := typeset.Break(n.name, render.NoteSize, true, labelsWide)
		l.Name = name[0]
		l.Notes = append(l.Notes, name[1:]...)
		l.Notes = append(l.Notes, typeset.Break(n.more, render.NoteSize, false, labelsWide)...)
		all = append(all, l)
	}
	left, right := leader.TwoSides(all)
	switch where {
	case AtLeft:
		left, right = all, nil
	case AtRight:
		left, right = nil, all
	}
	for _, s := range []struct {
		leader.Column
		labels []leader.Label
	}{
		{leader.Column{Edge: picture.Min.X - labelsOff + 0.8, Leftward: true, Top: room.Min.Y, Bottom: room.Max.Y, Gap: 1.6}, left},
		{leader.Column{Edge: picture.Max.X + labelsOff - 0.8, Top: room.Min.Y, Bottom: room.Max.Y, Gap: 1.6}, right},
	} {
		c, kept := s.Fit(s.labels)
		c.Draw(on, c.Arrange(kept))
	}
}

// How arrows look.
var (
	arrowLine = render.Stroke{Width: 0.55, Color: render.Black}
	arrowHalo = render.Stroke{Width: 1.3, Color: render.White}
)

// drawArrow draws an arrow with a white border, so that it stands out.
func drawArrow(on render.Surface, a stage.Arrow, v scene.View, to func(geometry.Point) geometry.Point) {
	pts := make([]geometry.Point, len(a.Path))
	for i, q := range a.Path {
		pts[i] = to(v.Flat(q))
	}
	if a.Twin {
		shape.Thin.Twin(on, pts[0], pts[len(pts)-1])
		return
	}
	var long Length
	for i := 1; i < len(pts); i++ {
		long += pts[i-1].Distance(pts[i])
	}
	head := min(3, long*0.6)
	if long < 0.5 {
		return
	}
	// The line ends within the head.
	tip := pts[len(pts)-1]
	line := pts
	for len(line) > 2 && line[len(line)-2].Distance(tip) < head*0.7 {
		line = line[:len(line)-1]
	}
	from := line[len(line)-2]
	if n := line[len(line)-1]; n != tip {
		from = n
		line = append(slices.Clone(line), tip)
	}
	way := tip.Sub(from).Mul(1 / max(1e-9, tip.Distance(from).MM()))
	line = append(slices.Clone(line[:len(line)-1]), tip.Sub(way.Mul(head.MM()*0.7)))
	on.Stroke(geometry.Line(line...), arrowHalo)
	on.Stroke(geometry.Line(line...), arrowLine)
	shape.Arrow{Line: arrowLine, Long: head, Half: 0.33 * head}.Head(on, tip, from)
}
