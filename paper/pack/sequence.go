package pack

import "sort"

// Step is one cut from edge to edge.
type Step struct {
	Sheet    int // index into Layout.Sheets
	Stage    int // from 1: the cuts of a stage part what the stage before left
	Part     *Part
	Cut      Cut    // which way it runs
	Distance Length // from the part's upper or left edge, as it then is, to the cut: the fence setting
	At       Length // where it runs, X or Y on the sheet: the near side of its gap
	Setting  int    // from 1: consecutive steps with one distance share a setting
	Takes    *Part  // what the cut takes off
}

// Sequence returns the order to cut a guillotine layout in, trimming of the sheets'
// edges left out: sheet by sheet, stage by stage, in a stage the larger
// distances first, so that cuts at one distance follow each other and
// the fence is set once for them.
func (l *Layout) Sequence() []Step {
	var all []Step
	for i := range l.Sheets {
		if l.Sheets[i].Cuts == nil {
			continue
		}
		at := []*Part{l.Sheets[i].Cuts}
		for stage := 1; len(at) > 0; stage++ {
			from := len(all)
			var next []*Part
			for _, p := range at {
				for j := range p.Parts {
					c := &p.Parts[j]
					s := Step{Sheet: i, Stage: stage, Part: p, Cut: p.Cut, Distance: c.Width, At: c.X + c.Width, Takes: c}
					end := p.X + p.Width
					if p.Cut == AlongX {
						s.Distance, s.At, end = c.Height, c.Y+c.Height, p.Y+p.Height
					}
					if whole(s.At) < whole(end) {
						all = append(all, s)
					}
					if c.Cut != None {
						next = append(next, c)
					}
				}
			}
			now := all[from:]
			sort.SliceStable(now, func(a, b int) bool { return whole(now[a].Distance) > whole(now[b].Distance) })
			at = next
		}
	}
	for i := range all {
		all[i].Setting = 1
		if i > 0 {
			all[i].Setting = all[i-1].Setting
			if whole(all[i].Distance) != whole(all[i-1].Distance) {
				all[i].Setting++
			}
		}
	}
	return all
}
