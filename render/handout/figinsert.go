package handout

import (
	"slices"

	"forel/geometry"
	"forel/render/scene"
)

// contents gives the height and width of the tallest and deepest book, and the
// thickness of the first.
func (m model) contents() (tall, wide, thick float64) {
	for _, b := range m.job.Books {
		tall, wide = max(tall, b.Height.Largest().MM()), max(wide, b.Width.Largest().MM())
	}
	return tall, wide, m.job.Book().Thick().MM()
}

// insertFigure gives the figure of the books half way into a case.
func (m model) insertFigure(base []scene.Face, caption string, fresh bool) panel {
	p := panel{faces: slices.Concat(base, m.dividersIn(0)), view: m.mouthView(), caption: caption}
	books := m.booksAt(0.52)
	for _, b := range books {
		p.faces = append(p.faces, b...)
	}
	if fresh && len(books) == 1 { // of several, one may hide another
		p.fresh = append(p.fresh, books[0][0].Object)
	}
	return p
}

// mouthView is the view of a finished case: where the mouth is narrow the viewer
// stands more nearly before it.
func (m model) mouthView() scene.View {
	yaw := 34.0
	if m.w() > 0.7*m.d() {
		yaw = 28
	}
	return m.intoMouth(yaw, 22)
}

// booksAt gives the books in the case, pulled out by a part of their width.
func (m model) booksAt(out float64) [][]scene.Face {
	s := m.s()
	l := 0.0
	if !m.lined {
		l = m.job.Lining.Thickness.MM()
	}
	room := m.rooms()
	var faces [][]scene.Face
	for i, b := range m.job.Books {
		w, t := b.Width.Largest().MM(), b.Thick().MM()
		at := scene.Vec{X: room[i][0] + (room[i][1]-room[i][0]-t)/2, Y: s + l + 0.5, Z: s + l + w*(out+0.16*float64(len(m.job.Books)-1-i))}
		faces = append(faces, m.volume(bookName(i), at, t, b.Height.Largest().MM(), w))
	}
	return faces
}

func bookName(i int) string {
	if i == 0 {
		return "book"
	}
	return "book " + string(rune('1'+i))
}

// rooms gives from where to where each book has its room, along X.
func (m model) rooms() [][2]float64 {
	s := m.s()
	l := 0.0
	if !m.lined {
		l = m.job.Lining.Thickness.MM()
	}
	lines := m.dividerPlaces()
	n := len(m.job.Books)
	out := make([][2]float64, n)
	x := s + l
	for i, b := range m.job.Books {
		t := b.Thick().MM()
		switch {
		case len(lines) == n-1 && n > 1:
			to := m.w() - s - l
			if i < n-1 {
				to = lines[i][0]
			}
			out[i] = [2]float64{x, to}
			if i < n-1 {
				x = lines[i][1]
			}
		default: // side by side, the play shared out
			play := m.job.Clearance.Thickness.MM() / float64(n)
			out[i] = [2]float64{x, x + t + play}
			x += t + play
		}
	}
	return out
}

// dividerPlaces gives from where to where each divider stands, along X.
func (m model) dividerPlaces() [][2]float64 {
	var at []float64
	for _, g := range m.pieces["spine wall"].Guides {
		if g.Name == "divider" {
			at = append(at, m.s()+g.Path.Vertices[0].X.MM())
		}
	}
	slices.Sort(at)
	var out [][2]float64
	for i := 0; i+1 < len(at); i += 2 {
		out = append(out, [2]float64{at[i], at[i+1]})
	}
	return out
}

// dividersIn gives the dividers, drawn out of the mouth by a distance.
func (m model) dividersIn(out float64) []scene.Face {
	p, ok := m.pieces["divider"]
	if !ok {
		return nil
	}
	pw, ph := p.Size()
	deep, tall := pw.MM(), ph.MM()
	y := (m.h() - tall) / 2
	lap := min(m.job.Divider.Lap.MM(), deep*0.8)
	look := m.palette.board
	if m.job.Lining.Thickness > 0 {
		look = m.lining
	}
	strip := m.look(geometry.Cloth).face
	var faces []scene.Face
	for i, x := range m.dividerPlaces() {
		name := "divider"
		if i > 0 {
			name += " " + string(rune('1'+i))
		}
		z := m.s() + out
		faces = append(faces, scene.Box(name, scene.Vec{X: x[0], Y: y, Z: z}, scene.Vec{X: x[1], Y: y + tall, Z: z + deep - lap}, look)...)
		faces = append(faces, scene.Box(name+" strip", scene.Vec{X: x[0], Y: y, Z: z + deep - lap}, scene.Vec{X: x[1], Y: y + tall, Z: z + deep}, strip)...)
	}
	return faces
}
