package fit

import (
	"fmt"

	"forel/geometry/slipcase"
)

// The first lengths of an assembly of boards; the books' and the walls' follow.
const (
	sideHeight = iota
	sideDepth
	boardThick
	liningThick
	clothThick
	paperThick
	bookHeight
	bookDepth
	volumes // thickness of each volume; then the wall's width, or each compartment as ruled
)

// ofBoards gives the assembly of a case of boards. A finished case is a job
// too, with true lengths in place of the measured ones, and with the clearance
// that makes it draw the pieces that were cut.
func ofBoards(j slipcase.Job) assembly {
	n := len(j.Books)
	rooms := j.Dividers() + 1
	in := plainContents(j)
	out, between := j.Outside(), j.Between()
	a := assembly{
		names: []string{"side, head to tail", "side, spine to mouth", "board", "lining", "cloth", j.PaperName(), j.Whose(0) + ", head to tail", j.Whose(0) + ", spine to fore-edge"},
		drawn: []Length{out.Height, out.Width, j.Board.Thickness, j.Lining.Thickness, j.Cloth.Thickness, j.SidePaper.Thickness, in.Height, in.Width},
	}
	if n > 1 {
		a.names[bookHeight], a.names[bookDepth] = "tallest volume, head to tail", "deepest volume, spine to fore-edge"
	}
	for i, b := range j.Books {
		a.names = append(a.names, j.Whose(i)+", thickness")
		a.drawn = append(a.drawn, b.Thick())
	}
	walls := volumes + n
	a.book = func(i int) bool { return i >= bookHeight && i < walls }
	if rooms == 1 {
		a.names = append(a.names, "walls, side to side")
		a.drawn = append(a.drawn, between.Thickness)
	}
	for i := range rooms {
		if rooms > 1 {
			a.names = append(a.names, fmt.Sprintf("compartment %d as ruled, to the middle of its dividers", i+1))
			a.drawn = append(a.drawn, j.Books[i].Thick()+j.Clearance.Thickness+beside(j, i))
		}
	}

	a.spots = []spot{{Height, Body, 0}, {Height, Mouth, 0}, {Height, Corners, 0}, {Depth, Body, 0}}
	for i := range rooms {
		a.spots = append(a.spots, spot{Thickness, Body, i}, spot{Thickness, Mouth, i})
	}
	// What the tabs in the corners were cut to, they are, whatever room is left.
	drawn := j.Mouth()
	tucked := (drawn.Height - drawn.HeightCorners) / j.Cloth.Thickness
	a.clear = func(v []Length) []Length {
		r := j // as it comes out
		r.Board.Thickness, r.Lining.Thickness, r.Cloth.Thickness, r.SidePaper.Thickness = v[boardThick], v[liningThick], v[clothThick], v[paperThick]
		r.Books = make([]slipcase.Book, n)
		for i := range r.Books {
			r.Books[i] = slipcase.Book{Height: slipcase.Readings{v[bookHeight]}, Width: slipcase.Readings{v[bookDepth]}, Thickness: slipcase.Readings{v[volumes+i]}}
		}
		r.Clearance.Height += v[sideHeight] - r.Outside().Height
		r.Clearance.Width += v[sideDepth] - r.Outside().Width
		if rooms == 1 {
			r.Clearance.Thickness += v[walls] - r.Between().Thickness
		}
		m := r.Mouth()
		left := []Length{r.Clearance.Height, m.Height, m.Height - tucked*v[clothThick], r.Clearance.Width}
		for i := range rooms {
			if rooms > 1 {
				r.Clearance.Thickness = v[walls+i] - beside(r, i) - v[volumes+i]
			}
			left = append(left, r.Clearance.Thickness, r.MouthThickness(i))
		}
		return left
	}
	return a.distinct()
}

// plainContents gives the largest height and depth of the books.
func plainContents(j slipcase.Job) slipcase.Size {
	var s slipcase.Size
	for _, b := range j.Books {
		s.Height, s.Width = max(s.Height, b.Height.Largest()), max(s.Width, b.Width.Largest())
	}
	return s
}

// beside gives what of a compartment's ruled length is not room: half of each
// divider beside it, and a lining pasted on the side afterwards.
func beside(j slipcase.Job, room int) Length {
	half, l := j.DividerThickness()/2, Length(0)
	if j.Lining.Order == slipcase.LinedAfter {
		l = j.Lining.Thickness
	}
	left, right := half, half
	if room == 0 {
		left = l
	}
	if room == j.Dividers() {
		right = l
	}
	return left + right
}

// distinct drops a clearance at the mouth or in its corners that is that of the
// place before it, as where nothing is turned in.
func (a assembly) distinct() assembly {
	at, all := a.clear(a.drawn), a.clear
	var keep []int
	for s, p := range a.spots {
		if p.place != Body && at[s].Near(at[s-1]) {
			continue
		}
		keep = append(keep, s)
	}
	pick := make([]spot, len(keep))
	for i, s := range keep {
		pick[i] = a.spots[s]
	}
	a.spots = pick
	a.clear = func(v []Length) []Length {
		from := all(v)
		out := make([]Length, len(keep))
		for i, s := range keep {
			out[i] = from[s]
		}
		return out
	}
	return a
}
