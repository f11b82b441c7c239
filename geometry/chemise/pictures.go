package chemise

import (
	"slices"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// model is a chemise in space, as it lies flat.
type model struct {
	c    made
	hung draft.Folding // the covering
}

func (c made) model() model {
	p, _ := geometry.Find(c.pieces, coveringName)
	return model{c, c.proof.flat.Hung(p, "covering")}
}

// boards returns the boards as they lie on the covering.
func (m model) boards() []stage.Face {
	faces, _ := m.c.proof.flat.Slabs(0)
	return faces
}

// corner returns what is to be seen of the corner at the right end and the head.
func (m model) corner() []stage.Vec {
	f, e := m.c.proof.flat, m.c.job.turnIn()
	return draft.Corners(stage.Vec{X: max(0, f.Across-3*e), Y: max(0, f.High-2.4*e)}, stage.Vec{X: f.Across + e, Y: f.High + e, Z: e})
}

// laid is the boards on the covering.
func (m model) laid() []stage.Picture {
	f := m.c.proof.flat
	lift := 0.3 * f.High
	above, names := f.Slabs(lift)
	return []stage.Picture{{
		Faces: slices.Concat(m.hung.At(draft.Folded{}, false), above), View: draft.OnBench(42), Fresh: []string{"covering"},
		Arrows:  draft.Down(stage.Vec{Z: lift}, stage.Vec{X: f.Across * 0.2, Y: f.High * 0.15, Z: f.Thick}, stage.Vec{X: f.Across * 0.8, Y: f.High * 0.15, Z: f.Thick}),
		Notes:   append(names, stage.Note{Name: plan.Say("covering"), More: plan.Say("glued face up"), Spot: "head turn-in"}),
		Caption: plan.Say("the boards side by side, a joint between each two"),
	}}
}

// turnedIn is head and tail turned in, then the ends over them.
func (m model) turnedIn() (headAndTail, ends []stage.Picture) {
	view := draft.OnBench(40)
	first, all := draft.Folded{180}, draft.Folded{180, 180}
	going, last := draft.Folded{120}, draft.Folded{180, 120}
	focus := m.corner()
	headAndTail = []stage.Picture{
		{
			Faces: slices.Concat(m.hung.At(going, false), m.boards()), View: view, Fresh: []string{"covering"},
			Arrows:  m.hung.Swings(going, first, "head turn-in", "tail turn-in"),
			Notes:   []stage.Note{{Name: plan.Say("head"), More: plan.Say("over the edge, onto the inside"), Spot: "head turn-in"}, {Name: plan.Say("tail"), More: plan.Say("likewise"), Spot: "tail turn-in"}},
			Caption: plan.Say("a: head and tail first"),
		},
		{
			Faces: slices.Concat(m.hung.At(first, false), m.boards()), View: view, Fresh: []string{"covering"}, Focus: focus,
			Notes:   []stage.Note{{Name: plan.Say("pinch here"), More: plan.Say("with a fingernail, round the corner"), At: stage.Vec{X: m.c.proof.flat.Across, Y: m.c.proof.flat.High}}, {Name: plan.Say("waits"), Spot: "right turn-in"}},
			Caption: plan.Say("b: the cloth that stands past the corner is pinched in"),
		},
	}
	ends = []stage.Picture{
		{
			Faces: slices.Concat(m.hung.At(last, false), m.boards()), View: view, Fresh: []string{"covering"},
			Arrows:  m.hung.Swings(last, all, "left turn-in", "right turn-in"),
			Notes:   []stage.Note{{Name: plan.Say("left end"), Spot: "left turn-in"}, {Name: plan.Say("right end"), Spot: "right turn-in"}},
			Caption: plan.Say("a: both ends, over head and tail"),
		},
		{
			Faces: slices.Concat(m.hung.At(all, false), m.boards()), View: view, Fresh: []string{"covering"}, Focus: focus,
			Notes:   []stage.Note{{Name: plan.Say("mitre"), More: plan.Say("the end lies over the head"), At: stage.Vec{X: m.c.proof.flat.Across - m.c.job.turnIn()/2, Y: m.c.proof.flat.High - m.c.job.turnIn()/2, Z: m.c.proof.flat.Thick}}},
			Caption: plan.Say("b: at the corner they meet at an angle and lap a little"),
		},
	}
	return headAndTail, ends
}

// lined is the lining above the boards.
func (m model) lined() []stage.Picture {
	f, g := m.c.proof.flat, m.c.job.Margin
	lift := 0.28 * f.High
	sheet := draft.Flat("lining", g, g, f.Thick+lift, f.Across-2*g, f.High-2*g, stage.Lining)
	return []stage.Picture{{
		Faces: slices.Concat(m.hung.At(draft.Folded{180, 180}, true), m.boards(), []stage.Face{sheet}), View: draft.OnBench(42), Fresh: []string{"lining"},
		Arrows: draft.Down(stage.Vec{Z: lift}, stage.Vec{X: f.Across * 0.25, Y: f.High * 0.12, Z: f.Thick}, stage.Vec{X: f.Across * 0.75, Y: f.High * 0.12, Z: f.Thick}),
		Notes: []stage.Note{{Name: plan.Say("lining"), More: plan.Say("pasted face down"), Spot: "lining"},
			{Name: plan.Say("into each joint"), More: plan.Say("and up again"), At: m.joint()}},
		Caption: plan.Say("from the spine outward, the same border on every side"),
	}}
}

// joint returns a place in the joint right of the spine, at the tail.
func (m model) joint() stage.Vec {
	f := m.c.proof.flat
	return stage.Vec{X: f.From[boardAt(f.All, backCoverName)] - f.Joint/2, Y: f.High * 0.02}
}

// book returns the book as it lies on the back cover with its spine a distance from
// the left end of the cover, and so far above what it lies on.
func (m model) book(x, z Length) []stage.Face {
	b := m.c.job.Book().Size()
	return draft.LyingBook("book", stage.Vec{X: x, Y: (m.c.proof.flat.High - b.Height) / 2, Z: z}, b)
}

// hooking is the chemise with its hooks going over the covers of the open book.
func (m model) hooking() stage.Picture {
	j, f := m.c.job, m.c.proof.flat
	b, p := j.Book(), j.through()
	cover, wide, thick := j.BookCover, b.Width.Largest(), b.Thick()
	back := wide - 2                                             // a book's own cover, from its joint to the fore-edge
	left := -(2*f.Joint + f.All[boardAt(f.All, spineName)].Wide) // where the front cover ends
	middle := left / 2
	low := (f.High - b.Height.Largest()) / 2
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
		Faces: slices.Concat(open.faces(f.High), slab(2, back, cover, stage.Cover), slab(left-2-back, back, cover, stage.Cover),
			slab(middle-pages/2, pages, wide*0.96, stage.Pages)),
		View:  stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 20, Pitch: 30},
		Fresh: []string{"chemise"},
		Notes: []stage.Note{{Name: plan.Say("the book"), More: plan.Say("opened, pages up"), Spot: "book"},
			{Name: plan.Say("flap"), More: plan.Say("goes inside the book's cover"), Spot: backFlapName},
			{Name: plan.Say("flap"), More: plan.Say("likewise"), Spot: frontFlapName + ", inside"}},
		Caption: plan.Say("a hook goes over the fore-edge of each cover of the book"),
	}
}

// closing is the chemise being shut round the book, and shut.
func (m model) closing() (open []stage.Picture, done stage.Picture) {
	if m.c.job.ForeEdge == Hooks {
		return []stage.Picture{m.hooking()}, done
	}
	high, c := m.c.proof.flat.High, m.c
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
