package bench

import (
	"slices"

	"forel/geometry"
	"forel/paper/pack"
)

// axis is a direction on a sheet.
type axis int

const (
	acrossX axis = iota // parts lie side by side, cuts run along the height
	acrossY             // parts lie one below the other, cuts run along the width
)

// other returns the axis at right angles.
func (a axis) other() axis { return 1 - a }

// of returns a point's coordinate along an axis.
func (a axis) of(p *geometry.Point) *Length {
	if a == acrossX {
		return &p.X
	}
	return &p.Y
}

// side returns an item's side along an axis.
func (a axis) side(i *pack.Item) *Length {
	if a == acrossX {
		return &i.Width
	}
	return &i.Height
}

// extent returns a box's length along an axis.
func (a axis) extent(b geometry.Box) Length { return *a.of(&b.Max) - *a.of(&b.Min) }

// cell is what is cut from a part: one piece, or cells side by side. Where it
// lies is settled when it is cut.
type cell struct {
	item  int // of a piece, its index; else -1
	size  [2]Length
	along axis // of several, the axis they lie along
	kids  []*cell
	exact [2]bool // its sides that are cut at the fence: not left to what a strip leaves
}

// cellOf takes what is to be cut from a layout: which bundles lie in which strip
// of which part. Positions and what is left over are worked out again, so
// that every strip is as narrow as its pieces and what is left over stays in
// one. It returns nil for a part without a piece.
func (g *group) cellOf(p *pack.Part, laid []bundle, turned []bool) *cell {
	along := acrossX
	if p.Cut == pack.AlongX {
		along = acrossY
	}
	var kids []*cell
	if p.Piece() {
		along = laid[p.Item].along
		for n, i := range laid[p.Item].which {
			it := g.items[i]
			c := &cell{item: i, size: [2]Length{it.w, it.h}, exact: it.exact}
			if laid[p.Item].turned[n] {
				c.turn()
			}
			kids = append(kids, c)
		}
	}
	for i := range p.Parts {
		if c := g.cellOf(&p.Parts[i], laid, turned); c != nil {
			kids = append(kids, c)
		}
	}
	c := join(along, kids, g.kerf())
	if p.Piece() && turned[p.Item] {
		c.turn()
	}
	return c
}

// join puts cells side by side.
func join(along axis, kids []*cell, kerf Length) *cell {
	if len(kids) == 0 {
		return nil
	}
	if len(kids) == 1 {
		return kids[0]
	}
	c := &cell{item: -1, along: along}
	cross, broad := along.other(), Length(0)
	for _, k := range kids {
		broad = max(broad, k.size[cross])
	}
	for _, k := range kids {
		// A row in a row the same way is one row, unless it is narrower: then it is
		// cut to its breadth as a whole.
		if k.item < 0 && k.along == along && broad-k.size[cross] <= slack {
			c.kids = append(c.kids, k.kids...)
		} else {
			c.kids = append(c.kids, k)
		}
	}
	c.measure(kerf)
	return c
}

// spare is what a row of pieces is longer than they are, where none of them may be what is
// left of it: less can't be cut off well (common practice, no source).
const spare Length = 3

// flexible returns how many cells of a row may be what is left of it.
func (c *cell) flexible() (n int) {
	for _, k := range c.kids {
		if !k.exact[c.along] {
			n++
		}
	}
	return n
}

// measure works out the size of several cells side by side.
func (c *cell) measure(kerf Length) {
	var long, broad Length
	for i, k := range c.kids {
		if i > 0 {
			long += kerf
		}
		long += k.size[c.along]
		broad = max(broad, k.size[c.along.other()])
	}
	if c.flexible() == 0 {
		long += kerf + spare
	}
	cross := c.along.other()
	c.size[c.along], c.size[cross] = long, broad
	c.exact = [2]bool{}
	for _, k := range c.kids {
		c.exact[cross] = c.exact[cross] || k.exact[cross] && broad-k.size[cross] <= slack
	}
}

// without returns the cell less one of its kids.
func (c *cell) without(kid int, kerf Length) *cell {
	rest := append(append([]*cell{}, c.kids[:kid]...), c.kids[kid+1:]...)
	if len(rest) == 1 {
		return rest[0]
	}
	out := &cell{item: -1, along: c.along, kids: rest}
	out.measure(kerf)
	return out
}

// tighten lets pieces be what is left of a row.
func (c *cell) tighten(kerf Length) {
	c.exact = [2]bool{}
	for _, k := range c.kids {
		k.tighten(kerf)
	}
	if c.item < 0 {
		c.measure(kerf)
	}
}

// reach returns how far along an axis the pieces of a cell lie: its size, less what is
// spare at its end.
func (c *cell) reach(a axis, kerf Length) Length {
	switch {
	case c.item >= 0 || c.along == a && c.flexible() > 0:
		return c.size[a]
	case c.along == a:
		return c.size[a] - kerf - spare
	}
	var most Length
	for _, k := range c.kids {
		most = max(most, k.reach(a, kerf))
	}
	return most
}

// stacksExact tells whether some of a row's cells are stacks, across the row, of
// pieces that are cut at the fence: to clear the row first is a setting that makes none of
// them.
func (c *cell) stacksExact() bool {
	cross := c.along.other()
	return slices.ContainsFunc(c.kids, func(k *cell) bool {
		return k.item < 0 && k.along == cross && slices.ContainsFunc(k.kids, func(in *cell) bool { return in.exact[cross] })
	})
}
