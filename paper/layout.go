package paper

import (
	"cmp"
	"math"
	"slices"

	"forel/geometry"
)

// Layout is the templates of a case laid over sheets: small ones share a sheet,
// large ones are cut into tiles that are joined.
type Layout struct {
	Pages   []Page
	Tilings []Tiling // of the pieces in the order they were given
	AtLeast int      // the area of what is printed over the area of a sheet that takes it, rounded up: fewer would not hold it
	Blank   int      // tiles that would show nothing of their template, and are not printed
}

// Page is one printed sheet as it lies, and what of it can take templates.
type Page struct {
	Width, Height Length
	Area          geometry.Box // from the sheet's upper left corner, Y downward
	Parts         []Part       // in the order of the templates
	Corner        geometry.Box // of the first, where Options ask for it: room for words
}

// Part is a tile on a page: indices into Layout.Tilings and Tiling.Tiles.
type Part struct{ Tiling, Tile int }

// Tiling is one template cut into tiles. Rows count from the top, columns from
// the left. Neighbours overlap; they are joined on a line in the middle of the
// overlap. A template that is printed whole has one tile.
type Tiling struct {
	Piece      geometry.Piece // as it lies on the sheets
	Turned     bool           // by a quarter from how the piece was given
	Rows, Cols int
	Overlap    Length
	Tiles      []Tile   // row by row, without those that would be blank
	Blank      [][2]int // row and column of those
	Marks      []Mark
}

// Tile is the part of a template that is printed in one place.
type Tile struct {
	Row, Col int            // from 1
	Window   geometry.Box   // what is printed of the template, in the template's coordinates
	Core     geometry.Box   // what is left of it once the tiles are joined
	Page     int            // index into Layout.Pages
	At       geometry.Point // where the window's upper left corner lies on the page
	Room     geometry.Box   // of the page: this tile's alone, its window and more
}

// ToPage returns the step from template coordinates (Y upward) to the page's
// (Y downward): page = (x + dx, dy - y).
func (t Tile) ToPage() (dx, dy Length) {
	return t.At.X - t.Window.Min.X, t.At.Y + t.Window.Max.Y
}

// Neighbour returns the tile at a row and column, if it is printed.
func (t Tiling) Neighbour(row, col int) (Tile, bool) {
	for _, n := range t.Tiles {
		if n.Row == row && n.Col == col {
			return n, true
		}
	}
	return Tile{}, false
}

// Whole tells whether the template is printed in one.
func (t Tiling) Whole() bool { return t.Rows*t.Cols == 1 }

// Options say how templates are laid over sheets.
type Options struct {
	Set    func(geometry.Piece) string // templates of two sets share no sheet; nil: all are of one
	Corner geometry.Point              // width and height of what the first sheet keeps free in a corner for words
}

// Separate is a Set of its own for each template.
func Separate(p geometry.Piece) string { return p.Name }

// Lay lays the templates of pieces over as few sheets as it finds. Sheets lie
// upright or turned; so do templates. Joins and registration marks keep off the
// lines of a template where they can.
func (s Setup) Lay(pieces []geometry.Piece, o Options) Layout {
	return s.finish(s.lay(pieces, o))
}

// placed is a template cut up, and for each of its tiles the sheet and the place
// on it.
type placed struct {
	split
	on []spot
}

type spot struct {
	page  int
	lying bool
	at    geometry.Point // upper left corner, from that of the sheet's area
}

// pages returns how many sheets are used.
func pages(all []placed) int {
	most := -1
	for _, p := range all {
		for _, o := range p.on {
			most = max(most, o.page)
		}
	}
	return most + 1
}

// inOrder returns the sheets in the order they are printed: that of the pieces whose
// parts they show, so that the parts of one stand on consecutive pages, or else of the
// first piece on them.
func inOrder(all []placed) []spot {
	var sheets []spot
	rank := map[int]int{} // of a sheet: the piece
	if len(all) > 0 && all[0].words {
		rank[all[0].on[0].page], sheets = -1, append(sheets, all[0].on[0])
	}
	for _, parts := range []bool{true, false} {
		for i, p := range all {
			for _, o := range p.on {
				if _, ok := rank[o.page]; !ok && parts != p.whole() {
					rank[o.page], sheets = i, append(sheets, o)
				}
			}
		}
	}
	slices.SortStableFunc(sheets, func(a, b spot) int { return cmp.Compare(rank[a.page], rank[b.page]) })
	return sheets
}

// finish numbers the pages and gives every tile its room on its page.
func (s Setup) finish(all []placed) Layout {
	l, areas := Layout{}, s.areas()
	number := map[int]int{} // of a sheet as it was found: its page
	for n, o := range inOrder(all) {
		number[o.page] = n
		page := Page{Area: areas[0]}
		if o.lying {
			page.Area = areas[1]
		}
		page.Width, page.Height = s.Size(o.lying)
		l.Pages = append(l.Pages, page)
	}
	if len(all) > 0 && all[0].words {
		corner := &l.Pages[0]
		at := corner.Area.Min.Add(all[0].on[0].at)
		corner.Corner = all[0].tiles[0].Window.Move(at)
		all = all[1:]
	}
	l.Tilings = make([]Tiling, len(all))
	var area float64
	join := 0
	for i, p := range all {
		t := Tiling{Piece: p.piece, Turned: p.turned, Rows: len(p.ys) + 1, Cols: len(p.xs) + 1, Overlap: p.overlap, Tiles: p.tiles, Blank: p.blank}
		l.Blank += len(p.blank)
		area += p.area()
		for k, o := range p.on {
			n := number[o.page]
			t.Tiles[k].Page = n
			// Found to a fraction of a micrometre: kept within the area.
			area, at := l.Pages[n].Area, l.Pages[n].Area.Min.Add(o.at)
			w, h := t.Tiles[k].Window.Width(), t.Tiles[k].Window.Height()
			t.Tiles[k].At = geometry.Pt(max(area.Min.X, min(at.X, area.Max.X-w)), max(area.Min.Y, min(at.Y, area.Max.Y-h)))
			l.Pages[n].Parts = append(l.Pages[n].Parts, Part{i, k})
		}
		join = t.addMarks(join)
		l.Tilings[i] = t
	}
	for _, p := range l.Pages {
		l.spread(p, s.Wide())
	}
	most := max(areas[0].Width()*areas[0].Height(), areas[1].Width()*areas[1].Height()).MM()
	l.AtLeast = int(math.Ceil(area/most - 1e-9))
	return l
}

// area returns the area of a template, in square millimetres, without what lies
// under tiles that are not printed.
func (s split) area() float64 {
	a := s.piece.Outline.SignedArea()
	for _, b := range s.blank {
		_, core := s.tile(b[0]-1, b[1]-1)
		if core.Center().In(s.piece.Outline.Flatten(0.1)) {
			a -= (core.Width() * core.Height()).MM()
		}
	}
	return a
}

// spread gives each tile of a page all the room that is free about it, and
// moves it to the middle of that, but where pieces are to stand close.
func (l *Layout) spread(p Page, close bool) {
	tiles := make([]*Tile, len(p.Parts), len(p.Parts)+1)
	for i, part := range p.Parts {
		tiles[i] = &l.Tilings[part.Tiling].Tiles[part.Tile]
	}
	own := tiles
	if p.Corner.Width() > 0 {
		tiles = append(tiles, &Tile{Room: p.Corner})
	}
	// Tiles that lay close together move apart, and share anew what is then between them.
	rounds := 16
	if close {
		rounds = 1
	}
	for range rounds {
		for _, t := range own {
			t.Room = geometry.Bx(t.At.X, t.At.Y, t.At.X+t.Window.Width(), t.At.Y+t.Window.Height())
		}
		// What lies between two tiles is shared between them before the rest is
		// given to whoever borders on it.
		for i, t := range own {
			t.Room = grown(t.Room, p.Area, tiles, i, i)
		}
		for i, t := range own {
			t.Room = grown(t.Room, p.Area, tiles, i, len(tiles))
		}
		if close {
			return
		}
		for _, t := range own {
			c := t.Room.Center()
			t.At = geometry.Pt(c.X-t.Window.Width()/2, c.Y-t.Window.Height()/2)
		}
	}
}

// grown returns a tile's room moved outward on each side as far as the area and the rooms
// of the others allow, or half of the way to those from a number on, which are to grow yet.
func grown(room, area geometry.Box, tiles []*Tile, self, yet int) geometry.Box {
	sides := func(b *geometry.Box) [4]*Length { return [4]*Length{&b.Min.X, &b.Max.X, &b.Min.Y, &b.Max.Y} }
	for k := range sides(&room) {
		now, side := *sides(&room)[k], sides(&room)[k]
		*side = *sides(&area)[k]
		for i, o := range tiles {
			if i == self || !o.Room.Overlaps(room) {
				continue
			}
			*side = *sides(&o.Room)[k^1] // the other's side that faces this one
			if i >= yet {
				*side = now + (*side-now)/2
			}
		}
	}
	return room
}
