package bench

import (
	"math"

	"forel/geometry"
)

// slack is what is taken for nothing: no fence is set to it.
const slack Length = 1e-3

// key is a setting of the fence as a whole number of nanometres, so that one
// length reached by two ways of calculating is one setting.
type key int64

func keyOf(l Length) key { return key(math.Round(float64(l) * 1e6)) }

// part is a piece of material on the bench with what is still to be cut from it.
type part struct {
	sheet   int
	name    string
	box     geometry.Box
	cell    *cell
	by, cut [2]int  // the setting and the number of the cut each of its sides was cut at
	settled [2]bool // the side is what its cell needs
	keep    Length  // what is narrower is not worth keeping
	next    []option
}

// shop cuts the sheets of one group and keeps count.
type shop struct {
	*group
	kerf    Length
	keep    Length
	ready   map[key]*bucket // parts that can be cut now, by the settings that would do
	future  map[key]int     // how many cells still need a side of that length
	setting int
	fence   key
	seen    []placedItem
	given   map[int]int // names given to parts, by sheet
}

// placedItem is a piece that has been cut.
type placedItem struct {
	sheet, item int
	box         geometry.Box
	by, cut     [2]int
}

// expect counts the sides that a cell and what is in it must be cut at. The
// length of a row is not one: it comes of itself when its cells are cut off.
func (s *shop) expect(c *cell, need [2]bool) {
	if c.item < 0 {
		need[c.along] = false
	}
	c.need = need
	for a := range 2 {
		if need[a] {
			s.future[keyOf(c.size[a])]++
		}
	}
	for _, k := range c.kids {
		inner := [2]bool{}
		inner[c.along] = true
		cross := c.along.other()
		inner[cross] = c.size[cross]-k.size[cross] > slack
		s.expect(k, inner)
	}
}

// settle notes which sides of a part are right already, and gives away a
// finished piece. It tells whether the part is to be cut on.
func (s *shop) settle(p *part) bool {
	done := true
	for a := range 2 {
		if !p.settled[a] && axis(a).extent(p.box)-p.cell.size[a] <= slack {
			p.settled[a] = true
			if p.cell.need[a] {
				p.cell.need[a] = false
				s.future[keyOf(p.cell.size[a])]--
			}
		}
		if !p.settled[a] && !p.cell.need[a] && (p.cell.item >= 0 || axis(a) != p.cell.along) {
			p.cell.need[a] = true
			s.future[keyOf(p.cell.size[a])]++
		}
		done = done && p.settled[a]
	}
	if done && p.cell.item >= 0 {
		s.seen = append(s.seen, placedItem{p.sheet, p.cell.item, p.box, p.by, p.cut})
		return false
	}
	return true
}

// cutPart makes one cut and returns what is to be cut on.
func (s *shop) cutPart(p *part, o option) []*part {
	a := o.along
	taken, rest := p.box, p.box
	edge := p.box.Min.X + o.fence
	c := Cut{Number: len(s.Cuts) + 1, Setting: s.setting, Sheet: p.sheet, Part: p.name, Fence: o.fence, AlongY: a == acrossX}
	if a == acrossX {
		taken.Max.X, rest.Min.X = edge, min(edge+s.kerf, rest.Max.X)
		c.From, c.To = geometry.Pt(edge, p.box.Min.Y), geometry.Pt(edge, p.box.Max.Y)
	} else {
		edge = p.box.Min.Y + o.fence
		taken.Max.Y, rest.Min.Y = edge, min(edge+s.kerf, rest.Max.Y)
		c.From, c.To = geometry.Pt(p.box.Min.X, edge), geometry.Pt(p.box.Max.X, edge)
	}
	first := &part{sheet: p.sheet, name: p.name, box: taken, cell: p.cell, by: p.by, cut: p.cut, settled: p.settled, keep: s.keep}
	var second *part
	if o.kid < 0 {
		c.Leaves = s.leave(p.sheet, rest)
	} else {
		first.cell = p.cell.kids[o.kid]
		first.settled = [2]bool{}
		left := p.cell.without(o.kid, s.kerf)
		second = &part{sheet: p.sheet, name: p.name, box: rest, cell: left, by: p.by, cut: p.cut, keep: s.keep}
		second.by[a], second.cut[a] = 0, 0
		c.Leaves = Result{Kind: APart, Part: p.name, Box: rest}
	}
	first.by[a], first.cut[a] = s.setting, c.Number
	at := len(s.Cuts)
	s.Cuts = append(s.Cuts, c)
	var next []*part
	made := &s.Cuts[at]
	made.Takes = Result{Kind: APart, Part: p.name, Box: taken}
	if s.settle(first) {
		if o.kid >= 0 {
			first.name = s.child(p.sheet)
			made.Takes.Part = first.name
		}
		made.Kind = Rip
		if o.kid < 0 {
			made.Kind = Clear
		}
		next = append(next, first)
	} else {
		made.Takes = Result{Kind: APiece, Piece: len(s.seen) - 1, Box: taken}
		made.Kind = Finish
	}
	if second != nil {
		if s.settle(second) {
			next = append(next, second)
		} else {
			made.Leaves = Result{Kind: APiece, Piece: len(s.seen) - 1, Box: rest}
		}
	}
	return next
}

// leave keeps what is left over, or throws it away.
func (s *shop) leave(sheet int, b geometry.Box) Result {
	if b.Width() <= slack || b.Height() <= slack {
		return Result{Kind: Nothing}
	}
	sh := &s.Sheets[sheet]
	clean := b.Intersect(s.clean(*sh))
	o := Offcut{Box: b, Clean: clean}
	kind := SomeWaste
	if short := min(clean.Width(), clean.Height()); short >= s.keep && area(clean) >= 3*float64(s.keep*s.keep) {
		kind = AnOffcut
		o.Name = "?" // named when all are known
	}
	sh.Offcuts = append(sh.Offcuts, o)
	return Result{Kind: kind, Off: len(sh.Offcuts) - 1, Box: b}
}

// clean returns what lies within the trim of a sheet; a length off a roll has
// its ends cut already.
func (s *shop) clean(sh Sheet) geometry.Box {
	t := s.Stock[sh.Stock].Trim
	if sh.Roll {
		return geometry.Bx(t, 0, sh.Width-t, sh.Height)
	}
	return geometry.Bx(t, t, sh.Width-t, sh.Height-t)
}

// child names the next part that is cut off on a sheet, wherever on it: the sheet's number
// and a letter, short enough to write on a strip.
func (s *shop) child(sheet int) string {
	s.given[sheet]++
	return s.sheetName(sheet) + letters(s.given[sheet])
}

// letters counts A to Z, then AA, AB and on.
func letters(n int) string {
	text := ""
	for ; n > 0; n = (n - 1) / 26 {
		text = string(rune('A'+(n-1)%26)) + text
	}
	return text
}
