package bench

import (
	"context"
	"slices"

	"forel/paper/pack"
	"forel/paper/stock"
)

// layOut finds a place for the pieces of the group: on the sheets there are, and for
// what finds none there on the rolls. It returns the indices of the items that find none at
// all as left.
func (g *group) layOut(ctx context.Context, e pack.Effort) (starts []start, left []int) {
	left = numbers(len(g.items))
	for _, kinds := range g.turns() {
		if len(left) == 0 {
			break
		}
		if g.Stock[kinds[0]].Offcut > 0 {
			var more []start
			more, left = g.onOffcuts(ctx, kinds, left, e)
			starts = append(starts, more...)
			continue
		}
		var now, later []int
		for _, i := range left {
			if slices.ContainsFunc(kinds, func(k int) bool { return g.items[i].fits(g.rest(k)) }) {
				now = append(now, i)
			} else {
				later = append(later, i)
			}
		}
		if len(now) == 0 {
			continue
		}
		e := e
		if g.Stock[kinds[0]].Roll { // half for the roll as a whole, a quarter each for two ways in lengths
			e.Time /= 2
		}
		more, short := g.solve(ctx, kinds, now, e)
		if tooLong(more) {
			more = g.inLengths(ctx, kinds[0], now, e, more)
		}
		starts = append(starts, more...)
		left = append(later, short...)
		slices.Sort(left)
	}
	return starts, left
}

// kerf is what is lost between two pieces: the broadest blade's, whatever the sheet.
func (g *group) kerf() (most Length) {
	for _, s := range g.Stock {
		most = max(most, s.Kerf)
	}
	return most
}

// turns returns the kinds of stock that are laid out on together, one turn after
// the other: sheets with a grain, sheets without, then each roll; where more is bought
// first all that there is.
func (g *group) turns() [][]int {
	if !g.buys {
		return g.turnsOf(func(stock.Stock) bool { return true })
	}
	return append(g.turnsOf(stock.Stock.Owned), g.turnsOf(func(s stock.Stock) bool { return !s.Owned() })...)
}

// turnsOf returns the turns of some of the stock.
func (g *group) turnsOf(those func(stock.Stock) bool) [][]int {
	sheets := make([][]int, 4) // offcuts with a grain, offcuts without, other sheets likewise
	var rolls [][]int
	for i, s := range g.Stock {
		n := 0
		switch {
		case !those(s) || g.usedUp(i):
			continue
		case s.Offcut > 0:
		case s.Roll:
			rolls = append(rolls, []int{i})
			continue
		default:
			n = 2
		}
		if !s.Grained() {
			n++
		}
		sheets[n] = append(sheets[n], i)
	}
	return slices.DeleteFunc(append(sheets, rolls...), func(kinds []int) bool { return kinds == nil })
}

// onOffcuts lays out on offcuts what finds a place there, on as little of them as can be
// found, and returns what does not as left. What comes off one strip is all on offcuts, or
// none of it.
func (g *group) onOffcuts(ctx context.Context, kinds, which []int, e pack.Effort) (starts []start, left []int) {
	takes := func(k, i int) bool { return g.items[i].fits(g.Stock[k]) }
	strip := func(i int) string { return g.items[i].together }
	apart := map[string]bool{} // strips that find no place as a whole
	for _, i := range which {
		if !slices.ContainsFunc(kinds, func(k int) bool { return takes(k, i) }) {
			apart[strip(i)] = true
		}
	}
	for {
		now := slices.DeleteFunc(slices.Clone(which), func(i int) bool {
			return strip(i) != "" && apart[strip(i)] || !slices.ContainsFunc(kinds, func(k int) bool { return takes(k, i) })
		})
		some := slices.DeleteFunc(slices.Clone(kinds), func(k int) bool {
			return !slices.ContainsFunc(now, func(i int) bool { return takes(k, i) })
		})
		if len(now) == 0 {
			return nil, which
		}
		starts, short := g.solve(ctx, some, now, e)
		i := slices.IndexFunc(short, func(i int) bool { return strip(i) != "" })
		if i < 0 {
			return starts, slices.DeleteFunc(slices.Clone(which), func(i int) bool { return slices.Contains(now, i) && !slices.Contains(short, i) })
		}
		apart[strip(short[i])] = true
	}
}

// solve lays some items out on some kinds of stock and returns those that found
// no place as short. A layout that has no room to spare, so that the last piece of a row
// would be what is left of it, is made again with some room about such pieces; it stays
// where that takes more than there is.
func (g *group) solve(ctx context.Context, kinds, which []int, e pack.Effort) (starts []start, short []int) {
	starts, short = g.solveWith(ctx, kinds, which, e, false)
	if !slices.ContainsFunc(starts, g.over) {
		return starts, short
	}
	if roomy, left := g.solveWith(ctx, kinds, which, e, true); len(left) <= len(short) {
		starts, short = roomy, left
	}
	for _, st := range starts {
		if g.over(st) {
			st.cell.tighten(g.kerf())
		}
	}
	return starts, short
}

// over tells whether a sheet has no room for all that its pieces are to be cut from. What
// is spare at its far edges may be trimmed away with them.
func (g *group) over(st start) bool {
	s := g.Stock[st.sheet.Stock]
	over := func(a axis, side Length) bool {
		return st.cell.size[a] > side-s.Trim+slack || st.cell.reach(a, s.Kerf) > side-2*s.Trim+slack
	}
	return over(acrossX, st.sheet.Width) || !st.sheet.Roll && over(acrossY, st.sheet.Height)
}

// roomy returns the size of a piece with room to cut it at the fence, where a sheet takes
// that: a piece as large as a sheet has none beside it.
func (g *group) roomy(it item, kinds []int) (w, h Length) {
	for a, side := range []*Length{&it.w, &it.h} {
		was := *side
		*side += g.kerf() + spare
		if !it.exact[a] || !slices.ContainsFunc(kinds, func(k int) bool { return it.fits(g.Stock[k]) }) {
			*side = was
		}
	}
	return it.w, it.h
}

// solveWith is solve with room about pieces that are cut at the fence, or without.
func (g *group) solveWith(ctx context.Context, kinds, which []int, e pack.Effort, roomy bool) (starts []start, short []int) {
	p := pack.Problem{Gap: g.kerf()}
	priced := !slices.ContainsFunc(kinds, func(k int) bool { return g.Stock[k].Price == nil }) &&
		slices.ContainsFunc(kinds, func(k int) bool { return g.Stock[k].Price.IsPositive() })
	// All are laid out with the grain of the first; sheets with another are laid
	// out turned, and turned back after.
	lead, flipped := g.Stock[kinds[0]], map[int]bool{}
	for _, k := range kinds {
		s := g.rest(k)
		ps := pack.Stock{Width: s.Width - 2*s.Trim, Height: s.Height - 2*s.Trim, Roll: s.Roll, Count: s.Count, Cost: float64(s.Width * s.Height)}
		switch {
		case s.Endless():
			ps.Height = 0
		case s.Roll: // where it is cut off last nothing is trimmed
			ps.Height, ps.Count = s.Height-s.Trim, max(1, s.Count)
		}
		if priced {
			ps.Cost = s.Price.InexactFloat64() // it only steers the search
		}
		if s.Grain != lead.Grain {
			flipped[len(p.Stock)] = true
			ps.Width, ps.Height = ps.Height, ps.Width
		}
		p.Stock = append(p.Stock, ps)
	}
	var pieces []bundle
	for _, i := range which {
		it := g.items[i]
		w, h := it.w, it.h
		if roomy {
			w, h = g.roomy(it, kinds)
		}
		turned, either := lead.Turned(it.piece.Grain)
		if turned {
			w, h = h, w
		}
		pieces = append(pieces, bundle{Item: pack.Item{Width: w, Height: h, Turn: either}, which: []int{i}, turned: []bool{turned}})
	}
	laid := g.bundles(pieces, p.Stock)
	for _, b := range laid {
		p.Items = append(p.Items, b.Item)
	}
	l := pack.Solve(ctx, p, e)
	for _, n := range l.Left {
		short = append(short, laid[n].which...)
	}
	slices.Sort(short)
	turned := make([]bool, len(laid))
	for _, sh := range l.Sheets {
		for _, pl := range sh.Places {
			turned[pl.Item] = pl.Turned
		}
		c := g.cellOf(sh.Cuts, laid, turned)
		if flipped[sh.Stock] {
			c.turn()
		}
		starts = append(starts, g.begin(kinds[sh.Stock], c)...)
	}
	return starts, short
}

// turn turns a cell with all that is in it by a quarter.
func (c *cell) turn() {
	c.size[0], c.size[1] = c.size[1], c.size[0]
	c.exact[0], c.exact[1] = c.exact[1], c.exact[0]
	c.along = c.along.other()
	for _, k := range c.kids {
		k.turn()
	}
}
