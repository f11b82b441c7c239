package measuring

import (
	"math"

	"forel/geometry/stage"
)

// near is how near an edge of the book the outer readings are taken, as a part of its side.
const near = 0.1

// before looks at the bench from before it and above.
func before(pitch float64) stage.View {
	return stage.View{Toward: stage.Vec{Y: -1}, Up: stage.Vec{Z: 1}, Yaw: 14, Pitch: pitch}
}

// cover is how thick the covers are drawn.
func (s Size) cover() Length { return min(3, s.Thickness/6) }

// facets is how many flat faces a round spine is drawn with: few where it is slim, since each
// has its lines; an even number, so that its farthest point is drawn.
func (s Size) facets() int {
	const broad = 0.044 // of two of them, as a part of the book's longer side
	return 2 * max(2, min(5, int(float64(s.Thickness/max(s.Height, s.Width))/broad)))
}

// bent returns places along an arc from one height of the spine to another, that far out at
// its ends and in its middle.
func bent(low, high, ends, middle Length, steps int) (out []place) {
	half, rise := float64(high-low)/2, float64(middle-ends)
	for i := range steps + 1 {
		t := -1 + 2*float64(i)/float64(steps)
		u := ends
		if rise != 0 {
			r := (half*half + rise*rise) / (2 * math.Abs(rise)) // of the circle through ends and middle
			u = middle - Length(math.Copysign(r-math.Sqrt(max(0, r*r-t*t*half*half)), rise))
		}
		out = append(out, place{u, low + Length(half*(t+1))})
	}
	return out
}

// place is a place in the section of a book, from fore-edge to spine and from cover to cover.
type place struct{ u, w Length }

// lying returns the faces of a book with a round spine that lies on its lower cover: X from
// fore-edge to spine, Y from tail to head.
func (s Size) lying() []stage.Face {
	c := s.cover()
	square := min(3, s.Height/25)
	round := min(s.Thickness*0.18, s.Width*0.12)
	bars := func(object string, section []place, from, to Length, ends, edges stage.Stuff) []stage.Face {
		outline := make([]stage.Vec, len(section))
		for i, p := range section {
			outline[i] = stage.Vec{X: p.u, Y: from, Z: p.w}
		}
		return stage.Block(object, outline, stage.Vec{Y: to - from}, ends, ends, edges)
	}
	cover := func(name string, low, high Length) []stage.Face {
		faces := bars("book", []place{{0, low}, {s.Width - round, low}, {s.Width - round, high}, {0, high}}, 0, s.Height, stage.Cover, stage.Cover)
		for i := range faces {
			faces[i].Name = name
		}
		return faces
	}
	out := append(cover("book, lower cover", 0, c), cover("book, upper cover", s.Thickness-c, s.Thickness)...)
	outer, inner := bent(0, s.Thickness, s.Width-round, s.Width, s.facets()), bent(c, s.Thickness-c, s.Width-round, s.Width-c, s.facets())
	strip := outer
	for i := range inner {
		strip = append(strip, inner[len(inner)-1-i])
	}
	for _, f := range bars("book", strip, 0, s.Height, stage.Cover, stage.Cover) {
		f.Name = "book, spine"
		out = append(out, f)
	}
	leaves := inner[:len(inner):len(inner)]
	hollow := bent(c, s.Thickness-c, square, square+round, s.facets())
	for i := range hollow {
		leaves = append(leaves, hollow[len(hollow)-1-i])
	}
	for i, f := range bars("book", leaves, square, s.Height-square, stage.Pages, stage.Pages) {
		f.Name, f.Grain = "book, leaves", stage.Vec{Y: 1}
		if i < 2 { // at head and tail
			f.Grain = stage.Vec{X: 1}
		}
		out = append(out, f)
	}
	return out
}

// across draws on the upper cover where readings are taken: from head to tail, or from spine
// to fore-edge.
func across(faces []stage.Face, cover string, s Size, along bool) []stage.Face {
	for i, f := range faces {
		if f.Name != cover || len(f.Points) != 4 || f.Points[0].Z != s.Thickness || f.Points[1].Z != s.Thickness || f.Points[2].Z != s.Thickness {
			continue
		}
		lo, hi := f.Points[0], f.Points[0]
		for _, p := range f.Points {
			lo, hi = stage.Vec{X: min(lo.X, p.X), Y: min(lo.Y, p.Y), Z: p.Z}, stage.Vec{X: max(hi.X, p.X), Y: max(hi.Y, p.Y), Z: p.Z}
		}
		long, wide := s.Width, s.Height
		if along {
			long, wide = s.Height, s.Width
		}
		for _, part := range []Length{near, 0.5, 1 - near} {
			across := wide * part
			a, b := stage.Vec{X: long * 0.01, Y: across, Z: lo.Z}, stage.Vec{X: long * 0.99, Y: across, Z: lo.Z}
			b.X = min(b.X, hi.X)
			faces[i].Lines = append(faces[i].Lines, stage.Line{Points: []stage.Vec{a, b}, Kind: stage.Fold})
		}
	}
	return faces
}
