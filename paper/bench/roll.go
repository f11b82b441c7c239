package bench

import (
	"context"
	"math"
	"slices"

	"forel/paper/pack"
	"forel/paper/stock"
)

// mostOff is the longest length that is cut off a roll, where the layout lets
// it be cut in several: what can be spread on a table.
const mostOff Length = 1500

// begin returns the sheet to cut a cell from; of a roll the lengths to cut off.
func (g *group) begin(kind int, c *cell) []start {
	s := g.Stock[kind]
	if !s.Roll {
		return []start{{Sheet{Stock: kind, Width: s.Width, Height: s.Height}, c}}
	}
	rows := []*cell{c}
	if c.item < 0 && c.along == acrossY {
		rows = c.kids
	}
	var out []start
	var now []*cell
	var long Length
	flush := func() {
		if len(now) > 0 {
			j := join(acrossY, now, s.Kerf)
			out = append(out, start{Sheet{Stock: kind, Width: s.Width, Height: j.size[acrossY], Roll: true}, j})
		}
		now, long = nil, 0
	}
	for _, r := range rows {
		if long+r.size[acrossY] > mostOff {
			flush()
		}
		now = append(now, r)
		long += r.size[acrossY] + s.Kerf
	}
	flush()
	return out
}

// tooLong tells of a length off a roll that no table takes.
func tooLong(starts []start) bool {
	return slices.ContainsFunc(starts, func(st start) bool { return st.sheet.Roll && st.sheet.Height > mostOff+slack })
}

// inLengths lays out on lengths of a roll that can be handled, where a layout on
// the roll as a whole can't be cut into such. That layout stays where a single
// piece is as long, or where lengths apart would take more than there is.
func (g *group) inLengths(ctx context.Context, kind int, which []int, e pack.Effort, whole []start) []start {
	e.Time /= 2
	s := g.rest(kind)
	longest := mostOff
	for _, i := range which {
		longest = max(longest, g.items[i].w, g.items[i].h)
	}
	apart := *g
	apart.Stock = slices.Clone(g.Stock)
	best, least := whole, Length(math.Inf(1))
	for _, part := range []Length{1, 0.8} {
		apart.Stock[kind] = stock.Stock{Material: s.Material, Width: s.Width, Height: longest*part + 2*s.Trim, Grain: s.Grain, Trim: s.Trim, Kerf: s.Kerf}
		if longest > mostOff && part < 1 {
			break
		}
		if part < 1 && !g.allFit(which, apart.Stock[kind]) {
			break
		}
		starts, short := apart.solve(ctx, []int{kind}, which, e)
		if len(short) > 0 {
			continue
		}
		long := s.Trim
		for i := range starts {
			c := starts[i].cell
			starts[i].sheet = Sheet{Stock: kind, Width: s.Width, Height: c.size[acrossY], Roll: true}
			long += c.size[acrossY] + g.kerf()
		}
		if long < least && (s.Endless() || long <= s.Height+g.kerf()) {
			best, least = starts, long
		}
	}
	return best
}
