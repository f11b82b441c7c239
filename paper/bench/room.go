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

// tooLarge tells of the pieces that are larger than every sheet.
func (g *group) tooLarge(jobs []Job) job.Problems {
	var bad job.Problems
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
		bad = append(bad, job.Problem{
			Reason: fmt.Sprintf("%s, %s × %s with the %s along its %s, is larger than every sheet of %s: %s",
				it.name(jobs), r.PrettyNumber(it.w), r.Pretty(it.h), g.Material.Direction(), it.piece.Grain, g.describe(), strings.Join(have, ", ")),
			Fix: right,
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

// couldSave tells where keeping the walls of a case on one strip takes more
// sheets than a first layout without.
func (g *group) couldSave(ctx context.Context, jobs []Job) {
	if len(g.Sheets) < 2 || !slices.ContainsFunc(g.items, func(it item) bool { return it.together != "" }) {
		return
	}
	starts, _, err := g.layOut(ctx, jobs, pack.Effort{}, true)
	if err == nil && len(starts) < len(g.Sheets) {
		g.Remarks = append(g.Remarks, plan.Say(fmt.Sprintf("the three walls of each case come off one strip, which takes %s; on strips apart they would go on %d",
			wording.Count(len(g.Sheets), "sheet"), len(starts))))
	}
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
			right = fmt.Sprintf("%s more of %s would do", wording.Count(len(starts), "sheet"), s.Size())
		}
		break
	}
	return job.Problems{{Reason: fmt.Sprintf("%s runs out with %s left: %s", g.describe(), wording.Count(len(left), "piece"), strings.Join(names, ", ")), Fix: right}}
}
