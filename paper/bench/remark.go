package bench

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

// rough tells of pieces that are cut larger than they are, for their pattern.
func (g *group) rough(jobs []Job) {
	told := map[string]bool{}
	for _, it := range g.items {
		if it.piece.Extra == (geometry.Point{}) || told[it.name(jobs)] {
			continue
		}
		told[it.name(jobs)] = true
		g.Remarks = append(g.Remarks, plan.Say(escaped(it.name(jobs))+" has a pattern: it is cut %s wider and %s higher here than it is, "+
			"then to size by its drawing named face", it.piece.Extra.X, it.piece.Extra.Y))
	}
}

// remark tells what could not be cut at one setting though it must be the same.
func (g *group) remark(jobs []Job) {
	g.rough(jobs)
	for _, n := range g.from {
		for _, e := range jobs[n].Plan.Equals {
			var by []int
			var length Length
			for _, sh := range g.Sheets {
				for _, p := range sh.Pieces {
					width, height := e.Has(p.Name)
					if p.Job != n || !width && !height {
						continue
					}
					set, l := p.HeightBy, p.Height
					if width {
						set, l = p.WidthBy, p.Width
					}
					length = l
					if !slices.Contains(by, set) {
						by = append(by, set)
					}
				}
			}
			if len(by) < 2 {
				continue
			}
			slices.Sort(by)
			g.Remarks = append(g.Remarks, plan.Say(escaped(jobs[n].Title())+": "+e.What+", %s, is cut "+times(by)+
				"; set the fence by the first piece, not by the rule, when it comes back", length))
		}
	}
}

// times says at which settings something is cut.
func times(by []int) string {
	var out []string
	for _, b := range by {
		if b == 0 {
			out = append(out, "by what is left of a strip")
		} else {
			out = append(out, fmt.Sprintf("at setting %d", b))
		}
	}
	return strings.Join(out, " and ")
}

// escaped keeps what a maker wrote from being read as a place for a length.
func escaped(s string) string { return strings.ReplaceAll(s, "%", "%%") }
