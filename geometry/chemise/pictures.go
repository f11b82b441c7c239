package chemise

import (
	"slices"

	"forel/geometry"
	"forel/geometry/fold"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// model is a chemise in space, as it lies flat.
type model struct {
	c    made
	hung draft.Hung // the covering
	ok   bool
}

func (c made) model() model {
	m := model{c: c}
	for _, p := range c.pieces {
		if p.Name == coveringName {
			var sheet fold.Sheet
			sheet, m.ok = c.proof.flat.body().Hang(p, 0)
			m.hung = draft.Hung{Sheet: sheet, Piece: p, Object: "covering", Late: func(leaf int) bool { return m.end(leaf) }}
		}
	}
	return m
}

// end tells whether a leaf is turned in at an end of the covering.
func (m model) end(leaf int) bool {
	for ; m.hung.Leaves[leaf].On >= 0; leaf = m.hung.Leaves[leaf].On {
		if f := m.hung.Leaves[leaf].Face; f == LeftEdge || f == RightEdge {
			return true
		}
	}
	return false
}

// turned is how far the turn-ins are made, in degrees: over the edge of the board up
// to 90, onto its inside up to 180.
type turned struct{ headAndTail, ends float64 }

func (m model) angle(t turned) draft.Angle {
	return func(leaf int) float64 {
		l := m.hung.Leaves[leaf]
		if l.On < 0 {
			return 0
		}
		total := t.headAndTail
		if m.end(leaf) {
			total = t.ends
		}
		if l.Face == Inside { // it hangs on what lies on the edge
			return max(0, total-90)
		}
		return min(90, total)
	}
}

// sheet returns the covering at a stage.
func (m model) sheet(t turned, fresh bool) []stage.Face {
	if !m.ok {
		return nil
	}
	return m.hung.Faces(m.angle(t), 1, !fresh)
}

// swing returns the arrows of the flaps that hang on an edge, from a stage to
// another.
func (m model) swing(from, to turned, near []stage.Vec, edges ...geometry.Face) []stage.Arrow {
	if !m.ok {
		return nil
	}
	var out []stage.Arrow
	for _, edge := range edges {
		a, ok := m.hung.Swing(func(part float64) draft.Angle {
			mix := func(a, b float64) float64 { return a + (b-a)*part }
			return m.angle(turned{mix(from.headAndTail, to.headAndTail), mix(from.ends, to.ends)})
		}, near, func(leaf int) float64 {
			l := m.hung.Leaves[leaf]
			if l.On >= 0 && l.Face == Inside && m.hung.Leaves[l.On].Face == edge {
				return 1
			}
			return 0
		})
		if ok {
			out = append(out, a)
		}
	}
	return out
}

// boards returns the boards as they lie on the covering, moved up by a distance.
func (m model) boards(up Length) []stage.Face {
	f := m.c.proof.flat
	var out []stage.Face
	for n, p := range f.boards {
		out = append(out, draft.Slab(p.name, f.from[n], 0, up, p.wide, f.high, f.board, stage.Board)...)
	}
	return out
}

// names returns a note at each board.
func (m model) names(up Length) []stage.Note {
	f := m.c.proof.flat
	var out []stage.Note
	for n, p := range f.boards {
		out = append(out, stage.Note{Name: plan.Say(p.name), At: stage.Vec{X: f.from[n] + p.wide/2, Y: f.high * 0.5, Z: f.board + up}})
	}
	return out
}

// corner returns what is to be seen of the corner at the right end and the head.
func (m model) corner() []stage.Vec {
	f, e := m.c.proof.flat, m.c.job.turnIn()
	return draft.Corners(stage.Vec{X: max(0, f.across-3*e), Y: max(0, f.high-2.4*e)}, stage.Vec{X: f.across + e, Y: f.high + e, Z: e})
}

// laid is the boards on the covering.
func (m model) laid() []stage.Picture {
	f := m.c.proof.flat
	lift := 0.3 * f.high
	return []stage.Picture{{
		Faces: slices.Concat(m.sheet(turned{}, true), m.boards(lift)), View: draft.OnBench(42), Fresh: []string{"covering"},
		Arrows:  draft.Down(stage.Vec{Z: lift}, stage.Vec{X: f.across * 0.2, Y: f.high * 0.15, Z: f.board}, stage.Vec{X: f.across * 0.8, Y: f.high * 0.15, Z: f.board}),
		Notes:   append(m.names(lift), stage.Note{Name: plan.Say("covering"), More: plan.Say("glued face up"), Spot: "head turn-in"}),
		Caption: plan.Say("the boards side by side, a joint between each two"),
	}}
}

// turnedIn is head and tail turned in, then the ends over them.
func (m model) turnedIn() (headAndTail, ends []stage.Picture) {
	view := draft.OnBench(40)
	first, all := turned{headAndTail: 180}, turned{180, 180}
	going, last := turned{headAndTail: 120}, turned{180, 120}
	focus := m.corner()
	headAndTail = []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(going, true), m.boards(0)), View: view, Fresh: []string{"covering"},
			Arrows:  m.swing(going, first, nil, HeadEdge, TailEdge),
			Notes:   []stage.Note{{Name: plan.Say("head"), More: plan.Say("over the edge, onto the inside"), Spot: "head turn-in"}, {Name: plan.Say("tail"), More: plan.Say("likewise"), Spot: "tail turn-in"}},
			Caption: plan.Say("a: head and tail first"),
		},
		{
			Faces: slices.Concat(m.sheet(first, true), m.boards(0)), View: view, Fresh: []string{"covering"}, Focus: focus,
			Notes:   []stage.Note{{Name: plan.Say("pinch here"), More: plan.Say("with a fingernail, round the corner"), At: stage.Vec{X: m.c.proof.flat.across, Y: m.c.proof.flat.high}}, {Name: plan.Say("waits"), Spot: "right turn-in"}},
			Caption: plan.Say("b: the cloth that stands past the corner is pinched in"),
		},
	}
	ends = []stage.Picture{
		{
			Faces: slices.Concat(m.sheet(last, true), m.boards(0)), View: view, Fresh: []string{"covering"},
			Arrows:  m.swing(last, all, nil, LeftEdge, RightEdge),
			Notes:   []stage.Note{{Name: plan.Say("left end"), Spot: "left turn-in"}, {Name: plan.Say("right end"), Spot: "right turn-in"}},
			Caption: plan.Say("a: both ends, over head and tail"),
		},
		{
			Faces: slices.Concat(m.sheet(all, true), m.boards(0)), View: view, Fresh: []string{"covering"}, Focus: focus,
			Notes:   []stage.Note{{Name: plan.Say("mitre"), More: plan.Say("the end lies over the head"), At: stage.Vec{X: m.c.proof.flat.across - m.c.job.turnIn()/2, Y: m.c.proof.flat.high - m.c.job.turnIn()/2, Z: m.c.proof.flat.board}}},
			Caption: plan.Say("b: at the corner they meet at an angle and lap a little"),
		},
	}
	return headAndTail, ends
}

// lined is the lining above the boards.
func (m model) lined() []stage.Picture {
	f, g := m.c.proof.flat, m.c.job.Margin
	lift := 0.28 * f.high
	sheet := draft.Flat("lining", g, g, f.board+lift, f.across-2*g, f.high-2*g, stage.Lining)
	return []stage.Picture{{
		Faces: slices.Concat(m.sheet(turned{180, 180}, false), m.boards(0), []stage.Face{sheet}), View: draft.OnBench(42), Fresh: []string{"lining"},
		Arrows: draft.Down(stage.Vec{Z: lift}, stage.Vec{X: f.across * 0.25, Y: f.high * 0.12, Z: f.board}, stage.Vec{X: f.across * 0.75, Y: f.high * 0.12, Z: f.board}),
		Notes: []stage.Note{{Name: plan.Say("lining"), More: plan.Say("pasted face down"), Spot: "lining"},
			{Name: plan.Say("into each joint"), More: plan.Say("and up again"), At: m.joint()}},
		Caption: plan.Say("from the spine outward, the same border on every side"),
	}}
}

// joint returns a place in the joint right of the spine, at the tail.
func (m model) joint() stage.Vec {
	f := m.c.proof.flat
	for n, p := range f.boards {
		if p.name == spineName {
			return stage.Vec{X: f.from[n] + p.wide + f.joint/2, Y: f.high * 0.02}
		}
	}
	return stage.Vec{}
}

// book returns the book as it lies on the back cover with its spine a distance from
// the left end of the cover, and so far above what it lies on.
func (m model) book(x, z Length) []stage.Face {
	b := m.c.job.Book()
	h, w, t := b.Height.Largest(), b.Width.Largest(), b.Thick()
	up := (m.c.proof.flat.high - h) / 2
	lying := func(v stage.Vec) stage.Vec { return stage.Vec{X: w - v.Z, Y: v.Y, Z: v.X} }
	faces := draft.Book("book", stage.Vec{}, t, h, w)
	for i, f := range faces {
		var points []stage.Vec
		for _, p := range f.Points {
			points = append(points, lying(p).Add(stage.Vec{X: x, Y: up, Z: z}))
		}
		faces[i].Points = points
		if f.Grain != (stage.Vec{}) {
			faces[i].Grain = stage.Vec{X: -f.Grain.Z, Y: f.Grain.Y, Z: f.Grain.X}
		}
	}
	return faces
}

// hooking is the chemise with its hooks going over the covers of the open book.
func (m model) hooking() stage.Picture {
	j, f := m.c.job, m.c.proof.flat
	b, p := j.Book(), j.through()
	cover, wide, thick := j.BookCover, b.Width.Largest(), b.Thick()
	back := wide - 2                                 // a book's own cover, from its joint to the fore-edge
	left := -(2*f.joint + f.boards[spineAt(f)].wide) // where the front cover ends
	middle := left / 2
	low := (f.high - b.Height.Largest()) / 2
	slab := func(x, wide, thick Length, s stage.Stuff) []stage.Face {
		return draft.Slab("book", x, low, p, wide, b.Height.Largest(), thick, s)
	}
	pages := max(1, thick-2*cover)
	open := m.c.opened(func(left, right string) float64 {
		switch {
		case left == frontFlapName || right == backFlapName:
			return 50
		case left == frontWallName || right == backWallName:
			return 90
		}
		return 0
	})
	return stage.Picture{
		Faces: slices.Concat(open.faces(f.high), slab(2, back, cover, stage.Cover), slab(left-2-back, back, cover, stage.Cover),
			slab(middle-pages/2, pages, wide*0.96, stage.Pages)),
		View:  stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 20, Pitch: 30},
		Fresh: []string{"chemise"},
		Notes: []stage.Note{{Name: plan.Say("the book"), More: plan.Say("opened, pages up"), Spot: "book"},
			{Name: plan.Say("flap"), More: plan.Say("goes inside the book's cover"), Spot: backFlapName},
			{Name: plan.Say("flap"), More: plan.Say("likewise"), Spot: frontFlapName + ", inside"}},
		Caption: plan.Say("a hook goes over the fore-edge of each cover of the book"),
	}
}

// spineAt returns which of the boards is the spine.
func spineAt(f flat) int {
	return slices.IndexFunc(f.boards, func(p panel) bool { return p.name == spineName })
}

// closing is the chemise being shut round the book, and shut.
func (m model) closing() (open []stage.Picture, done stage.Picture) {
	if m.c.job.ForeEdge == Hooks {
		return []stage.Picture{m.hooking()}, done
	}
	high, c := m.c.proof.flat.high, m.c
	view := stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 28, Pitch: 26}
	lies := m.book(c.job.through()*0.5, c.job.through())
	upTo := func(back, spine, front, wall float64) posed {
		return c.opened(func(left, right string) float64 {
			switch {
			case left == backCoverName, left == backWallName:
				return back
			case left == spineName:
				return spine
			case right == spineName:
				return front
			}
			return wall
		})
	}
	frontName := stage.Note{Name: plan.Say("front cover"), Spot: frontCoverName + ", inside"}
	book := stage.Note{Name: plan.Say("the book"), More: plan.Say("spine against the spine"), Spot: "book"}
	first := stage.Picture{
		Faces: slices.Concat(upTo(0, 90, 25, 0).faces(high), lies), View: view, Fresh: []string{"book"},
		Notes: []stage.Note{book, frontName}, Caption: plan.Say("a: the book on the back cover"),
	}
	second := stage.Picture{View: view, Fresh: []string{"chemise"}, Notes: []stage.Note{frontName}}
	switch c.job.ForeEdge {
	case Lapped:
		second.Faces = slices.Concat(upTo(88, 90, 50, 0).faces(high), lies)
		second.Notes = append(second.Notes, stage.Note{Name: plan.Say("back wall"), Spot: backWallName}, stage.Note{Name: plan.Say("flap"), More: plan.Say("on the book"), Spot: backFlapName})
		second.Caption = plan.Say("b: wall and flap over the fore-edge, then the front cover over the flap")
	case LappedOnly, Walls:
		second.Faces = slices.Concat(upTo(88, 90, 50, 40).faces(high), lies)
		second.Notes = append(second.Notes, stage.Note{Name: plan.Say("back wall"), Spot: backWallName}, stage.Note{Name: plan.Say("front wall"), Spot: frontWallName + ", inside"})
		second.Caption = plan.Say("b: the back wall up, then the front cover over the book")
	default:
		second.Faces = slices.Concat(upTo(0, 90, 60, 0).faces(high), lies)
		second.Caption = plan.Say("b: the front cover over the book")
	}
	shut := c.proof.closed
	down := shut.dressed(backCoverName).Min.Y
	done = stage.Picture{
		Faces: slices.Concat(c.closed().faces(high), m.book(shut.i, shut.dressed(backCoverName).Max.Y-down)), View: view,
		Notes: []stage.Note{{Name: plan.Say("front cover"), Spot: frontCoverName}, {Name: plan.Say("the book"), Spot: "book"}},
	}
	switch c.job.ForeEdge {
	case Lapped, LappedOnly:
		done.Notes = append(done.Notes, stage.Note{Name: plan.Say("front wall"), More: plan.Say("over the back wall"), Spot: frontWallName})
	case Walls:
		done.Notes = append(done.Notes, stage.Note{Name: plan.Say("the walls"), More: plan.Say("meet in the middle"), Spot: frontWallName})
	}
	return []stage.Picture{first, second}, done
}
