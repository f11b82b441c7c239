package bed

import (
	"fmt"
	"slices"

	"forel/geometry"
)

// tabClear is how far a tab keeps from a corner and from where a slit meets the
// outline: there it would be torn, not cut (common practice, no source).
const tabClear Length = 3

// tab is a stretch of a path that is left uncut: of its segment, from and to a
// distance along it.
type tab struct {
	segment  int
	from, to Length
}

// tabs returns where the tabs of a shape stand: on straight edges, the longest
// first, evenly along each. The path is left out for the tab's width and the
// kerf, since the beam reaches half of that past each end.
func (s Setup) tabs(sh shape) ([]tab, error) {
	if s.Tabs == 0 {
		return nil, nil
	}
	segs := sh.cut.Segments()
	gap := s.TabWidth + s.Kerf
	room := func(i, n int) bool { // for n tabs on a segment
		g := segs[i]
		length := g.From.Distance(g.To)
		if g.Bulge != 0 || length < Length(n)*(gap+2*tabClear) {
			return false
		}
		for _, t := range along(i, n, length, gap) {
			for _, c := range sh.piece.Slits {
				for _, v := range c.Vertices {
					u := g.To.Sub(g.From).Mul(1 / length.MM())
					if v.Point.ToLine(g.From.Add(u.Mul(t.from.MM())), g.From.Add(u.Mul(t.to.MM()))) < tabClear {
						return false
					}
				}
			}
		}
		return true
	}
	on := make([]int, len(segs))
	for range s.Tabs {
		best, most := -1, Length(0)
		for i, g := range segs {
			if share := g.From.Distance(g.To) / Length(on[i]+1); share > most+1e-6 && room(i, on[i]+1) {
				best, most = i, share
			}
		}
		if best < 0 {
			return nil, fmt.Errorf("its straight edges have no room for %d tabs of %.4g mm", s.Tabs, s.TabWidth.MM())
		}
		on[best]++
	}
	var out []tab
	for i, n := range on {
		out = append(out, along(i, n, segs[i].From.Distance(segs[i].To), gap)...)
	}
	return out, nil
}

// along returns n gaps evenly along a segment.
func along(segment, n int, length, gap Length) []tab {
	var out []tab
	for i := range n {
		mid := length * Length(2*i+1) / Length(2*n)
		out = append(out, tab{segment, mid - gap/2, mid + gap/2})
	}
	return out
}

// gapped returns a closed path without its tabs, as stretches in the order they
// are met; all of it where there are none.
func gapped(p geometry.Path, tabs []tab) []geometry.Path {
	if len(tabs) == 0 {
		return []geometry.Path{p}
	}
	segs := p.Segments()
	point := func(i int, at Length) geometry.Point {
		s := segs[i]
		return s.From.Add(s.To.Sub(s.From).Mul((at / s.From.Distance(s.To)).MM()))
	}
	tabs = slices.Clone(tabs)
	var out []geometry.Path
	for k, t := range tabs {
		next := tabs[(k+1)%len(tabs)]
		run := geometry.Path{Vertices: []geometry.Vertex{{Point: point(t.segment, t.to)}}}
		i := t.segment
		for first := true; i != next.segment || first && (next.from < t.to); first = false {
			i = (i + 1) % len(segs)
			run.Vertices = append(run.Vertices, geometry.Vertex{Point: segs[i].From, Bulge: segs[i].Bulge})
		}
		run.Vertices = append(run.Vertices, geometry.Vertex{Point: point(next.segment, next.from)})
		out = append(out, run)
	}
	return out
}
