package bench

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

// rough tells of pieces that are cut larger than they are, for their pattern.
func (g *group) rough() {
	told := map[string]bool{}
	for _, it := range g.items {
		if it.piece.Extra == (geometry.Point{}) || told[g.name(it)] {
			continue
		}
		told[g.name(it)] = true
		g.Remarks = append(g.Remarks, plan.Say(escaped(g.name(it))+" has a pattern: it is cut %s wider and %s higher here than it is, "+
			"then to size by its drawing named face", it.piece.Extra.X, it.piece.Extra.Y))
	}
}

// enlarged tells of what is cut larger, to be trimmed later.
func (g *group) enlarged() {
	for _, it := range g.items {
		if w, h := it.piece.Rough(); it.w > w+slack || it.h > h+slack {
			g.Remarks = append(g.Remarks, plan.Say("pieces are cut up to %s larger each way, so that many share a setting of the fence; later they are trimmed flush, or cut to their pattern",
				round(g.jobs[it.job].Unit).Step))
			return
		}
	}
}

// remainders tells of pieces that decide the fit and are what is left of a strip.
func (g *group) remainders() {
	for _, sh := range g.Sheets {
		for _, p := range sh.Pieces {
			x, y := p.WidthBy, p.HeightBy
			if p.Turned {
				x, y = y, x
			}
			left := x == 0 && sh.Width-p.Box.Width() > slack || y == 0 && sh.Height-p.Box.Height() > slack
			if left && slices.ContainsFunc(g.items, func(it item) bool {
				return it.job == p.Job && it.piece.Name == p.Name && it.exact == [2]bool{true, true}
			}) {
				g.Remarks = append(g.Remarks, plan.Say(escaped(p.Name+" of "+g.jobs[p.Job].Title())+
					fmt.Sprintf(" on sheet %d is what is left of a strip, since the sheet has no room for a cut: measure it before use", sh.Number)))
			}
		}
	}
}

// remark tells what could not be cut at one setting though it must be the same.
func (g *group) remark() {
	g.rough()
	g.enlarged()
	g.remainders()
	for _, n := range g.from {
		for _, e := range g.jobs[n].Plan.Equals {
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
			g.Remarks = append(g.Remarks, plan.Say(escaped(g.jobs[n].Title())+": "+e.What+", %s, is cut "+times(by)+
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
