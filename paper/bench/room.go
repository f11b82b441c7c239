package bench

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper/pack"
	"forel/paper/stock"
)

// tooLarge tells of the pieces that are larger than every sheet, each with a sheet that
// takes all pieces of the material.
func (g *group) tooLarge(ctx context.Context) job.Problems {
	var bad job.Problems
	r := rounding(g.unit)
	told := map[string]bool{}
	for _, it := range g.items {
		if told[g.name(it)] || slices.ContainsFunc(g.Stock, it.fits) {
			continue
		}
		told[g.name(it)] = true
		var have []string
		for _, s := range g.Stock {
			if s.Offcut > 0 && !g.onlyOffcuts() {
				continue
			}
			size := s.Size()
			if s.Roll && s.Height > 0 { // it may be too short
				size = s.Has()
			}
			have = append(have, size+" ("+s.Along()+")")
		}
		bad = append(bad, job.Problem{
			Key: g.at().Key, At: g.at(),
			Reason: fmt.Sprintf("%s, %s × %s with the %s along its %s, is larger than every sheet of %s: %s",
				g.name(it), r.PrettyNumber(it.w), r.Pretty(it.h), g.Material.Direction(), it.piece.Grain, g.describe(), strings.Join(have, ", ")),
		})
	}
	if bad != nil {
		right := "add a " + g.enough(ctx) + ", which takes all pieces of it"
		for i := range bad {
			bad[i].Fix = right
		}
	}
	return bad
}

// at is where the last of the stock was read, offcuts left out: where more can be added.
func (g *group) at() job.Place {
	for _, s := range slices.Backward(g.Stock) {
		if s.Offcut == 0 {
			return s.At
		}
	}
	return job.Place{}
}

// onlyOffcuts tells whether there is nothing else.
func (g *group) onlyOffcuts() bool {
	return !slices.ContainsFunc(g.Stock, func(s stock.Stock) bool { return s.Offcut == 0 })
}

// enough says what stock all pieces of the group can be cut from, as a job file has it,
// with trim and grain left out. It is tried.
func (g *group) enough(ctx context.Context) string {
	r := rounding(g.unit)
	trim := max(stock.DefaultTrim(geometry.MM), stock.DefaultTrim(geometry.IN)) // by the unit of the file, which is not known here
	var wide, high Length
	for _, it := range g.items {
		across, along := it.w, it.h
		if it.piece.Grain == geometry.GrainWidth { // the grain of stock runs along its second side
			across, along = along, across
		}
		wide, high = max(wide, across+2*trim), max(high, along+2*trim)
	}
	side := func(l Length) Length { return ceil(max(l, stock.LeastSide), r) }
	sheet := stock.Stock{Material: g.Material, Width: side(wide), Height: side(high), Grain: geometry.GrainHeight, Trim: trim}
	roll := sheet
	roll.Roll, roll.Height = true, 0
	does := func(s stock.Stock) bool {
		trial := *g
		trial.Stock = append(slices.Clone(g.Stock), s)
		_, left := trial.layOut(ctx, pack.Effort{})
		return len(left) == 0
	}
	text := fmt.Sprintf("[[stock]] with material = %q and ", g.Material)
	if !slices.ContainsFunc(g.Stock, func(s stock.Stock) bool { return !s.Roll }) && does(roll) {
		return text + fmt.Sprintf("roll = %q", r.Format(roll.Width))
	}
	const tries = 4
	for range tries {
		if does(sheet) {
			break
		}
		sheet.Width, sheet.Height = side(sheet.Width*1.25), side(sheet.Height*1.25)
	}
	return text + fmt.Sprintf("size = %q", r.Number(sheet.Width)+" x "+r.Format(sheet.Height))
}

// hair is what does not count where a length is to do.
const hair Length = 1e-7

// ceil rounds a length up to what is shown.
func ceil(l Length, r geometry.Rounding) Length {
	up := l.Round(r.Step)
	if up < l-hair {
		up += r.Step
	}
	return up
}

// couldSave tells where keeping the walls of a case on one strip takes more
// sheets than a first layout without.
func (g *group) couldSave(ctx context.Context) {
	if len(g.Sheets) < 2 || !slices.ContainsFunc(g.items, func(it item) bool { return it.together != "" }) {
		return
	}
	apart := *g
	apart.items = loose(g.items)
	if starts, left := apart.layOut(ctx, pack.Effort{}); len(left) == 0 && len(starts) < len(g.Sheets) {
		g.Remarks = append(g.Remarks, plan.Say(fmt.Sprintf("the three walls of each case come off one strip, which takes %s; on strips apart they would go on %d",
			wording.Count(len(g.Sheets), "sheet"), len(starts))))
	}
}

// runOut tells how much more stock is needed for what found no place.
func (g *group) runOut(ctx context.Context, left []int) job.Problem {
	var names []string
	for n, i := range left {
		if n == 4 {
			names = append(names, fmt.Sprintf("and %d more", len(left)-n))
			break
		}
		names = append(names, g.name(g.items[i]))
	}
	right := ""
	for k, s := range g.Stock {
		if s.Offcut > 0 {
			continue
		}
		if g.lot { // what is lacking in later ones is not known yet
			right = g.uncounted(k, left)
		} else {
			right = g.more(ctx, k, left)
		}
		if right != "" {
			break
		}
	}
	if right == "" {
		right = "add a " + g.enough(ctx) + ", which takes all pieces of it"
	}
	return job.Problem{Key: g.at().Key, At: g.at(), Reason: fmt.Sprintf("%s runs out with %s left: %s", g.describe(), wording.Count(len(left), "piece"), strings.Join(names, ", ")), Fix: right}
}

// more says how much more of one kind of stock would do, having tried it; nothing where
// that kind can't do alone.
func (g *group) more(ctx context.Context, k int, left []int) string {
	r, s := rounding(g.unit), g.Stock[k]
	free := *g
	free.Stock = slices.Clone(g.Stock)
	free.Stock[k].Count = 0
	if s.Roll {
		free.Stock[k].Height = 0
	}
	if !g.allFit(left, free.Stock[k]) {
		return ""
	}
	starts, _ := free.solve(ctx, []int{k}, left, pack.Effort{})
	does := func() bool {
		_, still := free.layOut(ctx, pack.Effort{})
		return len(still) == 0
	}
	const tries = 12
	if !s.Roll {
		for n := len(starts); n < len(starts)+tries; n++ {
			if free.Stock[k].Count = s.Count + n; does() {
				return fmt.Sprintf("%s more of %s would do: count = %d", wording.Count(n, "sheet"), s.Size(), s.Count+n)
			}
		}
		return ""
	}
	var long Length
	for _, st := range starts {
		long += st.sheet.Height + g.kerf()
	}
	free.Stock[k].Count = s.Count
	for range tries {
		whole := ceil(s.Height+long+s.Trim, r)
		if free.Stock[k].Height = whole; whole <= stock.MostLength && does() {
			return fmt.Sprintf("another %s of %s would do: length = %q", r.Pretty(whole-s.Height), s.Size(), r.Format(whole))
		}
		long *= 1.25
	}
	return ""
}
