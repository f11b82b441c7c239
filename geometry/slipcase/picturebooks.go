package slipcase

import (
	"slices"

	"forel/geometry/plan"
	"forel/geometry/stage"
	"forel/geometry/stage/draft"
)

// insertFigure returns the figure of the books half way into a case.
func (m model) insertFigure(base []stage.Face, caption string, fresh bool) stage.Picture {
	p := stage.Picture{Faces: slices.Clone(base), View: m.mouthView(), Caption: plan.Say(caption)}
	books := m.booksAt(0.52)
	for _, b := range books {
		p.Faces = append(p.Faces, b...)
	}
	if fresh && len(books) == 1 { // of several, one may hide another
		p.Fresh = append(p.Fresh, books[0][0].Object)
	}
	return p
}

// betweenFigure returns the figure of the books between the walls on the first side.
func (m model) betweenFigure() stage.Picture {
	p := stage.Picture{Faces: slices.Concat(m.onFirstSide(), m.dividersIn()), View: m.onBench()}
	for i := range m.job.Books {
		p.Faces = append(p.Faces, m.bookOnBench(i)...)
	}
	if len(m.job.Books) == 1 {
		p.Fresh = append(p.Fresh, bookName(0))
	}
	p.Notes = []stage.Note{
		{Name: plan.Say(m.job.inCase()), More: plan.Say("spine at the mouth"), Spot: bookName(0)},
		{Name: plan.Say("head wall"), Spot: "head wall"}, {Name: plan.Say("spine wall"), More: plan.Say("at the fore-edge"), Spot: "spine wall"},
	}
	return p
}

// onFirstSide returns the walls on the right side, which lies on the bench.
func (m model) onFirstSide() []stage.Face {
	return slices.Concat(m.ruled(m.board("right side")), m.boards("spine wall", "head wall", "tail wall"))
}

// bookOnBench returns a book in a case that lies on its right side.
func (m model) bookOnBench(i int) []stage.Face {
	b := m.job.Books[i]
	w, h, t := b.Width.Largest(), b.Height.Largest(), b.Thick()
	x := m.w() - m.s()
	for k := len(m.job.Books) - 1; k > i && m.job.Dividers() == 0; k-- {
		x -= m.job.Books[k].Thick()
	}
	if m.job.Dividers() > 0 {
		x = m.rooms()[i][1]
	}
	return draft.Book(bookName(i), stage.Vec{X: x - t, Y: m.s() + (m.h()-2*m.s()-h)/2, Z: m.s()}, t, h, w)
}

// mouthView is the view of a finished case: where the mouth is narrow the viewer
// stands more nearly before it.
func (m model) mouthView() stage.View {
	yaw := 34.0
	if m.w() > 0.7*m.d() {
		yaw = 28
	}
	return m.intoMouth(yaw, 22)
}

// booksAt returns the books in the case, pulled out by a part of their width.
func (m model) booksAt(out Length) [][]stage.Face {
	s, l := m.s(), m.job.liningAfter()
	room := m.rooms()
	var faces [][]stage.Face
	for i, b := range m.job.Books {
		w, t := b.Width.Largest(), b.Thick()
		at := stage.Vec{X: room[i][0] + (room[i][1]-room[i][0]-t)/2, Y: s + l + 0.5, Z: s + l + w*(out+0.16*Length(len(m.job.Books)-1-i))}
		faces = append(faces, draft.Book(bookName(i), at, t, b.Height.Largest(), w))
	}
	return faces
}

func bookName(i int) string { return numbered("book", i) }

// rooms returns from where to where each book has its room, along X.
func (m model) rooms() [][2]Length {
	x, end := m.s()+m.job.liningAfter(), m.w()-m.s()-m.job.liningAfter()
	out := make([][2]Length, len(m.job.Books))
	if m.job.Dividers() > 0 {
		for i, d := range m.dividerPlaces() {
			out[i], x = [2]Length{x, d[0]}, d[1]
		}
		out[len(out)-1] = [2]Length{x, end}
		return out
	}
	for i, b := range m.job.Books { // side by side, the play shared out
		to := x + b.Thick() + m.job.Clearance.Thickness/Length(len(m.job.Books))
		out[i], x = [2]Length{x, to}, to
	}
	return out
}

// dividerPlaces returns from where to where each divider stands, along X.
func (m model) dividerPlaces() [][2]Length {
	out := m.job.dividerLines()
	for i := range out {
		out[i][0], out[i][1] = m.s()+out[i][0], m.s()+out[i][1]
	}
	return out
}
