package bench

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"forel/paper/pack"
	"forel/paper/stock"
)

// layOut finds a place for every piece of the group: on the sheets there are, and
// what finds none there on the rolls.
func (g *group) layOut(ctx context.Context, jobs []Job, e pack.Effort, loose bool) (starts []start, kerf Length, err error) {
	for _, s := range g.Stock {
		kerf = max(kerf, s.Kerf)
	}
	left := make([]int, len(g.items)) // indices of the items not placed yet
	for i := range left {
		left[i] = i
	}
	for _, kinds := range g.turns() {
		if g.Stock[kinds[0]].Offcut > 0 {
			more, rest, err := g.onOffcuts(ctx, jobs, kinds, left, kerf, e, loose)
			if err != nil {
				return nil, 0, err
			}
			if starts, left = append(starts, more...), rest; len(left) == 0 {
				return starts, kerf, nil
			}
			continue
		}
		var now, later []int
		for _, i := range left {
			it := g.items[i]
			if slices.ContainsFunc(kinds, func(k int) bool { return g.rest(k).Takes(it.w, it.h, it.piece.Grain) }) {
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
		more, short, err := g.solve(ctx, jobs, kinds, now, kerf, e, loose)
		if err == nil && tooLong(more) {
			more, err = g.inLengths(ctx, jobs, kinds[0], now, kerf, e, loose, more)
		}
		if err != nil {
			return nil, 0, err
		}
		starts = append(starts, more...)
		left = append(later, short...)
		slices.Sort(left)
		if len(left) == 0 {
			return starts, kerf, nil
		}
	}
	if g.tried {
		return nil, 0, errRunsOut
	}
	return nil, 0, g.runOut(ctx, jobs, left, kerf, loose)
}

var errRunsOut = errors.New("stock runs out")

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
	var grained, free, offcuts, freeOffcuts []int
	var rolls [][]int
	for i, s := range g.Stock {
		switch {
		case !those(s) || g.usedUp(i):
		case s.Offcut > 0 && s.Grained():
			offcuts = append(offcuts, i)
		case s.Offcut > 0:
			freeOffcuts = append(freeOffcuts, i)
		case s.Roll:
			rolls = append(rolls, []int{i})
		case s.Grained():
			grained = append(grained, i)
		default:
			free = append(free, i)
		}
	}
	var out [][]int
	for _, kinds := range [][]int{offcuts, freeOffcuts, grained, free} {
		if kinds != nil {
			out = append(out, kinds)
		}
	}
	return append(out, rolls...)
}

// onOffcuts lays out on offcuts what finds a place there, on as little of them as can be
// found, and returns what does not as left. What comes off one strip is all on offcuts, or
// none of it.
func (g *group) onOffcuts(ctx context.Context, jobs []Job, kinds, which []int, kerf Length, e pack.Effort, loose bool) (starts []start, left []int, err error) {
	takes := func(k, i int) bool {
		it := g.items[i]
		return g.Stock[k].Takes(it.w, it.h, it.piece.Grain)
	}
	strip := func(i int) string {
		if loose {
			return ""
		}
		return g.items[i].together
	}
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
			return nil, which, nil
		}
		starts, short, err := g.solve(ctx, jobs, some, now, kerf, e, loose)
		if err != nil {
			return nil, nil, err
		}
		i := slices.IndexFunc(short, func(i int) bool { return strip(i) != "" })
		if i < 0 {
			return starts, slices.DeleteFunc(slices.Clone(which), func(i int) bool { return slices.Contains(now, i) && !slices.Contains(short, i) }), nil
		}
		apart[strip(short[i])] = true
	}
}

// solve lays some items out on some kinds of stock and returns those that found
// no place as short. A layout that has no room to spare, so that the last piece of a row
// would be what is left of it, is made again with some room about such pieces; it stays
// where that takes more than there is.
func (g *group) solve(ctx context.Context, jobs []Job, kinds, which []int, kerf Length, e pack.Effort, loose bool) (starts []start, short []int, err error) {
	starts, short, err = g.solveWith(ctx, jobs, kinds, which, kerf, e, loose, false)
	if err != nil || !slices.ContainsFunc(starts, func(st start) bool { return g.over(st) }) {
		return starts, short, err
	}
	roomy, left, err := g.solveWith(ctx, jobs, kinds, which, kerf, e, loose, true)
	if err == nil && len(left) <= len(short) {
		starts, short = roomy, left
	}
	for i := range starts {
		if g.over(starts[i]) {
			starts[i].cell.tighten(kerf)
		}
	}
	return starts, short, err
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
func (g *group) roomy(it item, kinds []int, kerf Length) (w, h Length) {
	takes := func(w, h Length) bool {
		return slices.ContainsFunc(kinds, func(k int) bool { return g.Stock[k].Takes(w, h, it.piece.Grain) })
	}
	w, h = it.w, it.h
	if it.exact[0] && takes(w+kerf+spare, h) {
		w += kerf + spare
	}
	if it.exact[1] && takes(w, h+kerf+spare) {
		h += kerf + spare
	}
	return w, h
}

// solveWith is solve with room about pieces that are cut at the fence, or without.
func (g *group) solveWith(ctx context.Context, jobs []Job, kinds, which []int, kerf Length, e pack.Effort, loose, roomy bool) (starts []start, short []int, err error) {
	p := pack.Problem{Gap: kerf, Mode: pack.Guillotine}
	priced := true
	for _, k := range kinds {
		priced = priced && g.Stock[k].Price != nil
	}
	for _, k := range kinds {
		s := g.rest(k)
		ps := pack.Stock{Name: s.Name, Width: s.Width, Height: s.Height, Roll: s.Roll, Count: s.Count,
			Trim: pack.Trim{Left: s.Trim, Right: s.Trim, Top: s.Trim, Bottom: s.Trim}}
		if s.Roll {
			ps.Trim.Bottom = 0
			if s.Height > 0 {
				ps.Count = max(1, s.Count)
			}
		}
		if priced {
			ps.Cost = s.Price.InexactFloat64() // it only steers the search
		}
		p.Stock = append(p.Stock, ps)
	}
	// All are laid out with the grain of the first; sheets with another are laid
	// out turned, and turned back after.
	lead := g.Stock[kinds[0]]
	turned := map[int]bool{}
	for n, i := range which {
		it := g.items[i]
		w, h := it.w, it.h
		if roomy {
			w, h = g.roomy(it, kinds, kerf)
		}
		in := pack.Item{ID: it.name(jobs), Width: w, Height: h, Strip: it.together}
		if loose {
			in.Strip = ""
		}
		turned[n], in.Turn = lead.Turned(it.piece.Grain)
		if turned[n] {
			in.Width, in.Height = h, w
		}
		p.Items = append(p.Items, in)
	}
	flipped := map[int]bool{}
	for n, k := range kinds {
		if s := g.Stock[k]; s.Grain != lead.Grain {
			flipped[n] = true
			p.Stock[n].Width, p.Stock[n].Height = s.Height, s.Width
		}
	}
	l, err := pack.Solve(ctx, p, e)
	var ran *pack.ShortError
	switch {
	case errors.As(err, &ran):
		for _, n := range ran.Left {
			short = append(short, which[n])
		}
	case err != nil:
		return nil, nil, fmt.Errorf("laying out %s: %w", g.describe(), err)
	}
	// From here on the items are as they were given to the solver.
	items := make([]item, len(g.items))
	copy(items, g.items)
	for n, i := range which {
		if turned[n] {
			items[i].w, items[i].h = items[i].h, items[i].w
			items[i].exact[0], items[i].exact[1] = items[i].exact[1], items[i].exact[0]
		}
	}
	for _, sh := range l.Sheets {
		places := map[int]pack.Place{}
		for _, pl := range sh.Places {
			places[pl.Item] = pl
		}
		c := cellOf(sh.Cuts, places, items, which, kerf)
		if c == nil {
			continue
		}
		s := g.Stock[kinds[sh.Stock]]
		if flipped[sh.Stock] {
			c.turn()
		}
		starts = append(starts, g.begin(kinds[sh.Stock], s, c)...)
	}
	return starts, short, nil
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
