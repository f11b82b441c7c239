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
	next    []option
}

// shop cuts the sheets of one group and keeps count.
type shop struct {
	*group
	keep    Length  // what is narrower is not worth keeping
	parts   []*part // that can be cut now, those longest on the bench first
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

// settle notes which sides of a part are right already, and gives away a
// finished piece. It tells whether the part is to be cut on.
func (s *shop) settle(p *part) bool {
	for a := range axis(2) {
		p.settled[a] = p.settled[a] || a.extent(p.box)-p.cell.size[a] <= slack
	}
	if p.settled == [2]bool{true, true} && p.cell.item >= 0 {
		s.seen = append(s.seen, placedItem{p.sheet, p.cell.item, p.box, p.by, p.cut})
		return false
	}
	return true
}

// expect counts the sides that a cell and what is in it must be cut at yet, of the sides
// that are open. The length of a row is not one: it comes of itself when its cells are cut
// off.
func (c *cell) expect(open [2]bool, count map[key]int) {
	for a := range axis(2) {
		if open[a] && (c.item >= 0 || a != c.along) {
			count[keyOf(c.size[a])]++
		}
	}
	for _, k := range c.kids {
		cross := c.along.other()
		inner := [2]bool{true, true}
		inner[cross] = c.size[cross]-k.size[cross] > slack
		k.expect(inner, count)
	}
}

// note writes down a cut across a box, at a place along an axis.
func (s *shop) note(c Cut, a axis, at Length, b geometry.Box) *Cut {
	c.Number, c.AlongY = len(s.Cuts)+1, a == acrossX
	c.From, c.To = b.Min, b.Max
	*a.of(&c.From), *a.of(&c.To) = at, at
	s.Cuts = append(s.Cuts, c)
	return &s.Cuts[len(s.Cuts)-1]
}

// cutPart makes one cut and puts what comes of it among what is to be cut on.
func (s *shop) cutPart(p *part, o option) {
	a := o.along
	taken, rest := p.box, p.box
	edge := *a.of(&p.box.Min) + o.fence
	*a.of(&taken.Max), *a.of(&rest.Min) = edge, min(edge+s.kerf(), *a.of(&rest.Max))
	c := s.note(Cut{Kind: Rip, Setting: s.setting, Sheet: p.sheet, Part: p.name, Fence: o.fence, Takes: Result{Kind: APart, Part: p.name, Box: taken}}, a, edge, p.box)
	first, second := *p, *p
	first.box, second.box = taken, rest
	first.by[a], first.cut[a] = s.setting, c.Number
	if o.kid < 0 {
		c.Leaves = s.leave(p.sheet, rest)
	} else {
		first.cell, second.cell = p.cell.kids[o.kid], p.cell.without(o.kid, s.kerf())
		first.settled, second.settled = [2]bool{}, [2]bool{}
		second.by[a], second.cut[a] = 0, 0
		c.Leaves = Result{Kind: APart, Part: p.name, Box: rest}
	}
	switch {
	case !s.settle(&first):
		c.Kind, c.Takes = Finish, Result{Kind: APiece, Piece: len(s.seen) - 1, Box: taken}
	case o.kid < 0:
		c.Kind = Clear
		s.offer(&first)
	default:
		first.name = s.child(p.sheet)
		c.Takes.Part = first.name
		s.offer(&first)
	}
	if o.kid < 0 {
		return
	}
	if s.settle(&second) {
		s.offer(&second)
	} else {
		c.Leaves = Result{Kind: APiece, Piece: len(s.seen) - 1, Box: rest}
	}
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
