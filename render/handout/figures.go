package handout

import (
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/render/scene"
)

// The directions of a case.
var (
	toRight = scene.Vec{X: 1}
	toHead  = scene.Vec{Y: 1}
	toTail  = scene.Vec{Y: -1}
	toMouth = scene.Vec{Z: 1}
)

// onBench is the view of a case that lies on its right side: head away, mouth to
// the right, as the pattern of a side lies.
func (m model) onBench() scene.View {
	pitch := 40.0
	if m.w() > 0.4*m.d() {
		pitch = 52
	}
	return scene.Turned(toTail, toRight.Mul(-1), 24, pitch)
}

// onSpine is the view of a case that stands on its spine, head toward the viewer.
func (m model) onSpine() scene.View { return scene.Turned(toHead, toMouth, -36, 42) }

// intoMouth is the view of a case that stands on its tail, mouth toward the
// viewer, who stands yaw degrees to the right and pitch above it.
func (m model) intoMouth(yaw, pitch float64) scene.View {
	return scene.Turned(toMouth, toHead, yaw, pitch)
}

// lift is how far what is laid on is held above its place.
func (m model) lift() float64 { return max(18, 0.24*max(m.d(), m.h()*0.6)) }

// down gives an arrow for each place, from a lift away onto it.
func down(from scene.Vec, places ...scene.Vec) []arrow {
	var out []arrow
	for _, p := range places {
		out = append(out, arrow{path: []scene.Vec{p.Add(from.Mul(0.85)), p.Add(from.Mul(0.12))}})
	}
	return out
}

// joining gives the figures of the boards being joined, in their order.
func (m model) joining() (spine, walls, close []panel) {
	v, s, w, h, d := m.onBench(), m.s(), m.w(), m.h(), m.d()
	up := scene.Vec{X: -m.lift() - (w - 2*s)}
	ruled := m.ruled(m.board("right side"))
	spine = []panel{
		{
			faces: slices.Concat(ruled, scene.Moved(m.board("spine wall"), up)), view: v, fresh: []string{"spine wall"},
			arrows: down(up, scene.Vec{X: w - s, Y: h * 0.25, Z: s / 2}, scene.Vec{X: w - s, Y: h * 0.75, Z: s / 2}),
			notes: []note{
				{name: "spine wall", more: m.insideWord() + " to the right", spot: "spine wall"},
				{name: "a side", more: m.insideWord() + " up", spot: "right side"},
			},
			caption: "a: glue the long edge of the spine wall",
		},
		{
			faces: slices.Concat(ruled, m.board("spine wall")), view: v, fresh: []string{"spine wall"},
			notes: []note{
				{name: "head", at: scene.Vec{X: w - s, Y: h, Z: d / 2}},
				{name: "mouth", more: "stays open", at: scene.Vec{X: w - s, Y: h / 2, Z: d}},
				{name: "tail", at: scene.Vec{X: w - s, Y: 0, Z: d / 2}},
			},
			caption: "b: upright, flush with the edge of the side",
		},
	}
	base := slices.Concat(ruled, m.board("spine wall"))
	walls = []panel{
		{
			faces: slices.Concat(base, scene.Moved(m.boards("head wall", "tail wall"), up)), view: v, fresh: []string{"head wall", "tail wall"},
			arrows:  down(up, scene.Vec{X: w - s, Y: h - s/2, Z: d * 0.6}, scene.Vec{X: w - s, Y: s / 2, Z: d * 0.6}),
			notes:   []note{{name: "head wall", spot: "head wall"}, {name: "tail wall", spot: "tail wall"}},
			caption: "a: glue one long edge and the short edge that meets the spine wall",
		},
		{
			faces: slices.Concat(base, m.boards("head wall", "tail wall")), view: v, fresh: []string{"head wall", "tail wall"},
			notes: []note{
				{name: "butts", more: "against the spine wall", at: scene.Vec{X: s, Y: h - s/2, Z: s}},
				{name: "flush", more: "with the mouth edge", at: scene.Vec{X: (w) / 2, Y: s / 2, Z: d}},
			},
			caption: "b: upright on the ruled lines",
		},
	}
	all := slices.Concat(base, m.boards("head wall", "tail wall"))
	lid := scene.Vec{X: -m.lift() * 1.2}
	close = []panel{
		{
			faces: slices.Concat(all, scene.Moved(m.board("left side"), lid)), view: v, fresh: []string{"left side"},
			arrows:  down(lid, scene.Vec{X: 0, Y: s / 2, Z: d * 0.9}, scene.Vec{X: 0, Y: h * 0.5, Z: s / 2}),
			notes:   []note{{name: "the other side", more: m.insideWord() + " down", spot: "left side"}, {name: "glue", more: "on the edges of all three walls", at: scene.Vec{X: s, Y: s / 2, Z: d * 0.7}}},
			caption: "a: lower it straight down",
		},
		{
			faces: slices.Concat(all, m.board("left side")), view: v,
			notes:   []note{{name: "mouth", more: "the open side", at: scene.Vec{X: w / 2, Y: h * 0.4, Z: d}}},
			caption: "b: flush all round; then a weight on top",
		},
	}
	return spine, walls, close
}

// insideWord names the face of a board that comes inside.
func (m model) insideWord() string {
	if m.lined {
		return "lined face"
	}
	return "inside"
}

// ruled draws on the right side the lines on which the walls stand.
func (m model) ruled(faces []scene.Face) []scene.Face {
	x := m.w() - m.s()
	for _, g := range m.pieces["side"].Guides {
		v := g.Path.Vertices
		at := func(p geometry.Point) scene.Vec { return scene.Vec{X: x, Y: p.Y.MM(), Z: p.X.MM()} }
		faces[0].Lines = append(faces[0].Lines, scene.Line{Points: []scene.Vec{at(v[0].Point), at(v[1].Point)}, Stroke: foldLine})
	}
	return faces
}

// swing gives the arrow that the tip of a leaf moves along from one stage of its
// covering to another. The leaf is the one that most holds for.
// near is where the arrow is wanted; nil: in the middle.
func (m model) swing(c covering, from, to stage, near []scene.Vec, pick func(hung fold.Sheet, i int) float64) (arrow, bool) {
	hung, ok := m.hang(c)
	if !ok {
		return arrow{}, false
	}
	best, most := -1, 0.0
	for i := range hung.Leaves {
		if n := pick(hung, i); n > most {
			best, most = i, n
		}
	}
	if best < 0 {
		return arrow{}, false
	}
	tip := tipOf(hung, best, from.angle(hung), near)
	const steps = 14
	var a arrow
	for k := range steps + 1 {
		part := 0.04 + 0.82*float64(k)/steps
		q := hung.Pose(from.between(to, part).angle(hung))[best]
		v := q.At(tip)
		a.path = append(a.path, scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()})
	}
	return a, true
}

// tipOf gives the middle of the edge of a leaf that is farthest from its hinge.
// With places that it is to be near, it is the place on that edge, as the sheet is
// posed, nearest their middle.
func tipOf(hung fold.Sheet, i int, angle func(int) float64, near []scene.Vec) geometry.Point {
	l := hung.Leaves[i]
	from, to := l.Hinge()
	far := geometry.Length(0)
	for _, p := range l.Outline {
		far = max(far, offLine(p, from, to))
	}
	var edge []geometry.Point
	for _, p := range l.Outline {
		if offLine(p, from, to) > far-0.01 {
			edge = append(edge, p)
		}
	}
	var sum geometry.Point
	for _, p := range edge {
		sum = sum.Add(p)
	}
	best := sum.Mul(1 / float64(len(edge)))
	if near == nil || len(edge) < 2 {
		return best
	}
	var want scene.Vec
	for _, q := range near {
		want = want.Add(q.Mul(1 / float64(len(near))))
	}
	posed := hung.Pose(angle)[i]
	least := math.Inf(1)
	const samples = 20
	a, b := edge[0], edge[len(edge)-1]
	for k := 2; k <= samples-2; k++ {
		p := a.Add(b.Sub(a).Mul(float64(k) / samples))
		v := posed.At(p)
		if d := (scene.Vec{X: v.X.MM(), Y: v.Y.MM(), Z: v.Z.MM()}).Sub(want).Size(); d < least {
			best, least = p, d
		}
	}
	return best
}

// offLine gives how far a point is from the endless line through two others.
func offLine(p, a, b geometry.Point) geometry.Length {
	d, v := b.Sub(a), p.Sub(a)
	return ((d.X*v.Y - d.Y*v.X) / a.Distance(b)).Abs()
}

// hangsOn gives a pick for swing: the largest leaf in a face that hangs on one
// of another face.
func hangsOn(face, on func(geometry.Face) bool, also func(fold.Sheet, int) bool) func(fold.Sheet, int) float64 {
	return func(hung fold.Sheet, i int) float64 {
		l := hung.Leaves[i]
		if l.On < 0 || !face(l.Face) || !on(hung.Leaves[l.On].Face) || also != nil && !also(hung, i) {
			return 0
		}
		return geometry.Polygon(l.Outline...).SignedArea()
	}
}

func is(faces ...geometry.Face) func(geometry.Face) bool {
	return func(f geometry.Face) bool { return slices.Contains(faces, f) }
}

// swings gives the arrows for several picks that there are.
func (m model) swings(c covering, from, to stage, near []scene.Vec, picks ...func(fold.Sheet, int) float64) []arrow {
	var out []arrow
	for _, p := range picks {
		if a, ok := m.swing(c, from, to, near, p); ok {
			out = append(out, a)
		}
	}
	return out
}
