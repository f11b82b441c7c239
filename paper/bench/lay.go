package bench

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper/pack"
	"forel/paper/stock"
)

// Lay plans the bench work for all jobs together. A plan that can't be made
// gives Problems, all of them. The search ends when ctx does, with what was
// best until then.
func Lay(ctx context.Context, jobs []Job, o Options) (Plan, error) {
	groups := gather(jobs)
	bad := supply(groups, jobs)
	for _, g := range groups {
		bad = append(bad, g.tooLarge(jobs)...)
	}
	if len(bad) > 0 {
		return Plan{}, bad
	}
	keep := o.Keep
	if keep == 0 {
		keep = DefaultKeep
	}
	out := Plan{Jobs: jobs}
	total := 0
	for _, g := range groups {
		total += len(g.items)
	}
	number, done := 1, 0
	for _, g := range groups {
		starts, kerf, err := g.layOut(ctx, jobs, share(o.Effort, len(g.items), done, total), o.Loose)
		done += len(g.items)
		var ps Problems
		if errors.As(err, &ps) {
			bad = append(bad, ps...)
			continue
		}
		if err != nil {
			return Plan{}, err
		}
		cutAll(g, starts, number, keep, kerf)
		number += len(starts)
		g.shop(kerf)
		if !o.Loose {
			g.couldSave(ctx, jobs)
		}
		g.remark(jobs)
		out.Groups = append(out.Groups, g.Group)
	}
	if len(bad) > 0 {
		return Plan{}, bad
	}
	return out, nil
}

// share gives a group its part of the effort, by its number of pieces; progress
// is told as that of all groups.
func share(e pack.Effort, items, done, total int) pack.Effort {
	part, before := float64(items)/float64(total), float64(done)/float64(total)
	if e.Time > 0 {
		e.Time = max(1, time.Duration(float64(e.Time)*part))
	}
	if tell := e.Progress; tell != nil {
		e.Progress = func(p pack.Progress) {
			p.Fraction = before + part*p.Fraction
			tell(p)
		}
	}
	return e
}

// tooLarge tells of the pieces that are larger than every sheet.
func (g *group) tooLarge(jobs []Job) Problems {
	var bad Problems
	r := rounding(g.unit)
	told := map[string]bool{}
	for _, it := range g.items {
		if slices.ContainsFunc(g.Stock, func(s stock.Stock) bool { return s.Takes(it.w, it.h, it.piece.Grain) }) {
			continue
		}
		if told[it.name(jobs)] {
			continue
		}
		told[it.name(jobs)] = true
		var have []string
		for _, s := range g.Stock {
			have = append(have, s.Size()+" ("+s.Along()+")")
		}
		s := g.Stock[0]
		across, along := it.w, it.h
		if turned, _ := s.Turned(it.piece.Grain); turned {
			across, along = along, across
		}
		need := r.PrettyNumber(ceil(across+2*s.Trim, r)) + " × " + r.Pretty(ceil(along+2*s.Trim, r))
		right := "a sheet of " + need + " would do"
		if s.Roll {
			right = "a roll " + r.Pretty(ceil(across+2*s.Trim, r)) + " wide would do"
		}
		bad = append(bad, Problem{
			Wrong: fmt.Sprintf("%s, %s × %s with the grain along its %s, is larger than every sheet of %s: %s",
				it.name(jobs), r.PrettyNumber(it.w), r.Pretty(it.h), it.piece.Grain, g.describe(), strings.Join(have, ", ")),
			Right: right,
		})
	}
	return bad
}

// ceil rounds a length up to what is shown.
func ceil(l Length, r geometry.Rounding) Length {
	up := l.Round(r.Step)
	if up < l-slack {
		up += r.Step
	}
	return up
}

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
		var now, later []int
		for _, i := range left {
			it := g.items[i]
			if slices.ContainsFunc(kinds, func(k int) bool { return g.Stock[k].Takes(it.w, it.h, it.piece.Grain) }) {
				now = append(now, i)
			} else {
				later = append(later, i)
			}
		}
		if len(now) == 0 {
			continue
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
	return nil, 0, g.runOut(ctx, jobs, left, kerf)
}

// couldSave tells where keeping the walls of a case on one strip takes more
// sheets than a first layout without.
func (g *group) couldSave(ctx context.Context, jobs []Job) {
	if len(g.Sheets) < 2 || !slices.ContainsFunc(g.items, func(it item) bool { return it.together != "" }) {
		return
	}
	starts, _, err := g.layOut(ctx, jobs, pack.Effort{}, true)
	if err == nil && len(starts) < len(g.Sheets) {
		g.Remarks = append(g.Remarks, plan.Say(fmt.Sprintf("the three walls of each case come off one strip, which takes %s; on strips apart they would go on %d",
			count(len(g.Sheets), "sheet"), len(starts))))
	}
}

// turns gives the kinds of stock that are laid out on together, one turn after
// the other: sheets with a grain, sheets without, then each roll.
func (g *group) turns() [][]int {
	var grained, free []int
	var rolls [][]int
	for i, s := range g.Stock {
		switch {
		case s.Roll:
			rolls = append(rolls, []int{i})
		case s.Grained():
			grained = append(grained, i)
		default:
			free = append(free, i)
		}
	}
	var out [][]int
	for _, kinds := range [][]int{grained, free} {
		if kinds != nil {
			out = append(out, kinds)
		}
	}
	return append(out, rolls...)
}

// solve lays some items out on some kinds of stock and gives those that found
// no place as short.
func (g *group) solve(ctx context.Context, jobs []Job, kinds, which []int, kerf Length, e pack.Effort, loose bool) (starts []start, short []int, err error) {
	p := pack.Problem{Gap: kerf, Mode: pack.Guillotine}
	priced := true
	for _, k := range kinds {
		priced = priced && g.Stock[k].Price != nil
	}
	for _, k := range kinds {
		s := g.Stock[k]
		ps := pack.Stock{Name: s.Name, Width: s.Width, Height: s.Height, Roll: s.Roll, Count: s.Count,
			Trim: pack.Trim{Left: s.Trim, Right: s.Trim, Top: s.Trim, Bottom: s.Trim}}
		if s.Roll {
			ps.Trim.Bottom = 0
			if s.Height > 0 {
				ps.Count = max(1, s.Count)
			}
		}
		if priced {
			ps.Cost = *s.Price
		}
		p.Stock = append(p.Stock, ps)
	}
	// All are laid out with the grain of the first; sheets with another are laid
	// out turned, and turned back after.
	lead := g.Stock[kinds[0]]
	turned := map[int]bool{}
	for n, i := range which {
		it := g.items[i]
		in := pack.Item{ID: it.name(jobs), Width: it.w, Height: it.h, Strip: it.together}
		if loose {
			in.Strip = ""
		}
		turned[n], in.Turn = lead.Turned(it.piece.Grain)
		if turned[n] {
			in.Width, in.Height = it.h, it.w
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
		if items[i].w, items[i].h = p.Items[n].Width, p.Items[n].Height; turned[n] {
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

// mostOff is the longest length that is cut off a roll, where the layout lets
// it be cut in several: what can be spread on a table.
const mostOff Length = 1500

// begin gives the sheet to cut a cell from; of a roll the lengths to cut off.
func (g *group) begin(kind int, s stock.Stock, c *cell) []start {
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
func (g *group) inLengths(ctx context.Context, jobs []Job, kind int, which []int, kerf Length, e pack.Effort, loose bool, whole []start) ([]start, error) {
	s := g.Stock[kind]
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
		starts, short, err := apart.solve(ctx, jobs, []int{kind}, which, kerf, e, loose)
		if err != nil {
			return nil, err
		}
		if len(short) > 0 {
			continue
		}
		long := s.Trim
		for i := range starts {
			c := starts[i].cell
			starts[i].sheet = Sheet{Stock: kind, Width: s.Width, Height: c.size[acrossY], Roll: true}
			long += c.size[acrossY] + kerf
		}
		if long < least && (s.Endless() || long <= s.Height+kerf) {
			best, least = starts, long
		}
	}
	return best, nil
}

// runOut tells how much more stock is needed for what found no place.
func (g *group) runOut(ctx context.Context, jobs []Job, left []int, kerf Length) error {
	r := rounding(g.unit)
	var names []string
	for n, i := range left {
		if n == 4 {
			names = append(names, fmt.Sprintf("and %d more", len(left)-n))
			break
		}
		names = append(names, g.items[i].name(jobs))
	}
	right := "give more in [[stock]]"
	for k, s := range g.Stock {
		free := *g
		free.Stock = slices.Clone(g.Stock)
		free.Stock[k].Count = 0
		if s.Roll {
			free.Stock[k].Height = 0
		}
		fits := !slices.ContainsFunc(left, func(i int) bool { return !free.Stock[k].Takes(g.items[i].w, g.items[i].h, g.items[i].piece.Grain) })
		if !fits {
			continue
		}
		starts, _, err := free.solve(ctx, jobs, []int{k}, left, kerf, pack.Effort{}, false)
		if err != nil {
			continue
		}
		if s.Roll {
			var long Length
			for _, st := range starts {
				long += st.sheet.Height + kerf
			}
			right = fmt.Sprintf("another %s of %s would do", r.Pretty(ceil(long+s.Trim, r)), s.Size())
		} else {
			right = fmt.Sprintf("%s more of %s would do", count(len(starts), "sheet"), s.Size())
		}
		break
	}
	return Problems{{Wrong: fmt.Sprintf("%s runs out with %s left: %s", g.describe(), count(len(left), "piece"), strings.Join(names, ", ")), Right: right}}
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
