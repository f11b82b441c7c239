package bed

import "forel/geometry"

// micron is how far apart two edges may lie that are one: layouts are in steps of an
// eighth of it.
const micron Length = 0.001

// share leaves out of each outline what the outlines of earlier parts cut already.
func (b *Bed) share() {
	var cut []geometry.Segment
	for i := range b.Parts {
		p := &b.Parts[i]
		segments := p.Cut.Segments()
		var left []geometry.Segment
		for _, s := range segments {
			kept := s.Without(cut, micron)
			if gone := length(s) - length(kept...); gone > micron {
				p.shares, b.Shared = true, b.Shared+gone
			} else {
				kept = []geometry.Segment{s}
			}
			left = append(left, kept...)
		}
		if p.shares {
			p.outline = joined(left)
		}
		cut = append(cut, segments...)
	}
}

func length(segments ...geometry.Segment) (sum Length) {
	for _, s := range segments {
		if s.Bulge == 0 {
			sum += s.From.Distance(s.To)
		}
	}
	return sum
}

// joined returns segments, in the order of a closed path that some are missing of, as
// open paths.
func joined(segments []geometry.Segment) (out []geometry.Path) {
	for _, s := range segments {
		to := geometry.Vertex{Point: s.To}
		if n := len(out) - 1; n >= 0 {
			vs := out[n].Vertices
			if last := &vs[len(vs)-1]; last.Point.Distance(s.From) <= micron {
				last.Bulge = s.Bulge
				out[n].Vertices = append(vs, to)
				continue
			}
		}
		out = append(out, geometry.Path{Vertices: []geometry.Vertex{{Point: s.From, Bulge: s.Bulge}, to}})
	}
	if n := len(out) - 1; n > 0 { // the last goes on in the first
		first, last := out[0].Vertices, out[n].Vertices
		if end := len(last) - 1; last[end].Point.Distance(first[0].Point) <= micron {
			out[0].Vertices = append(last[:end:end], first...)
			out = out[:n]
		}
	}
	return out
}
