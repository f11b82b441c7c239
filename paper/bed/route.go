package bed

import (
	"slices"

	"forel/geometry"
)

// route cuts shared edges once where pieces lie without a spacing, and puts what is done on the bed in order: creases, then inside cuts, then
// outlines, those of each kind so that the tool's way between them is short.
func (b *Bed) route(s Setup) {
	if s.Gap == 0 {
		b.share()
	}
	at, plain := geometry.Point{}, geometry.Point{}
	var asLaid []Step
	for kind := Crease; kind <= Outside; kind++ {
		var stops []stop
		for i, p := range b.Parts {
			for _, run := range p.runs(kind) {
				stops = append(stops, stopsOf(run, i))
			}
		}
		var before, after Length
		before, plain = way(plain, stops)
		asLaid = append(asLaid, steps(kind, stops)...)
		stops = shortened(at, stops)
		after, at = way(at, stops)
		b.Travel.Before += before
		b.Travel.After += after
		b.Steps = append(b.Steps, steps(kind, stops)...)
	}
	if b.Travel.After > b.Travel.Before { // a kind of step may end far from where the next begins
		b.Steps, b.Travel.After = asLaid, b.Travel.Before
	}
}

func steps(kind Kind, stops []stop) (out []Step) {
	for _, s := range stops {
		out = append(out, Step{Kind: kind, Part: s.part, Paths: s.paths()})
	}
	return out
}

// runs returns what is done at a part in a kind of step, each in one go: every
// crease and inside cut alone, the outline with all its stretches, unless neighbours
// cut what lies between them.
func (p Part) runs(k Kind) [][]geometry.Path {
	each := func(paths []geometry.Path) [][]geometry.Path {
		var out [][]geometry.Path
		for _, path := range paths {
			out = append(out, []geometry.Path{path})
		}
		return out
	}
	switch k {
	case Crease:
		return each(p.creases)
	case Inside:
		return each(p.Inside)
	}
	if p.shares {
		return each(p.outline)
	}
	return [][]geometry.Path{p.outline}
}

// stop is a run with the ways it can be done: from either end, or where it is
// closed from any corner.
type stop struct {
	part int
	run  []geometry.Path
	ends [][2]geometry.Point // of each way: where it begins and where it ends
	way  int                 // which is chosen
}

func stopsOf(run []geometry.Path, part int) stop {
	s := stop{part: part, run: run}
	if len(run) == 1 && run[0].Closed {
		for _, v := range run[0].Vertices {
			s.ends = append(s.ends, [2]geometry.Point{v.Point, v.Point})
		}
		return s
	}
	for k := range run { // a run of several stretches may begin with any of them
		first, last := run[k].Vertices, run[(k+len(run)-1)%len(run)].Vertices
		s.ends = append(s.ends, [2]geometry.Point{first[0].Point, last[len(last)-1].Point})
	}
	for k := range run { // or be done backward
		e := s.ends[k]
		s.ends = append(s.ends, [2]geometry.Point{e[1], e[0]})
	}
	return s
}

func (s stop) from() geometry.Point { return s.ends[s.way][0] }
func (s stop) to() geometry.Point   { return s.ends[s.way][1] }

// backward returns the way that goes from the end of the chosen one to its start.
func (s stop) backward() stop {
	if n := len(s.run); !s.run[0].Closed {
		s.way = (s.way + n) % (2 * n)
	}
	return s
}

// paths returns the run as the chosen way does it.
func (s stop) paths() []geometry.Path {
	if s.run[0].Closed {
		vs := s.run[0].Vertices
		return []geometry.Path{{Vertices: slices.Concat(vs[s.way:], vs[:s.way]), Closed: true}}
	}
	k := s.way % len(s.run)
	out := slices.Concat(s.run[k:], s.run[:k])
	if s.way >= len(s.run) {
		slices.Reverse(out)
		for i := range out {
			out[i] = reversed(out[i])
		}
	}
	return out
}

// reversed returns an open path walked the other way.
func reversed(p geometry.Path) geometry.Path {
	n := len(p.Vertices)
	vs := make([]geometry.Vertex, n)
	for i, v := range p.Vertices {
		vs[n-1-i].Point = v.Point
		if i < n-1 {
			vs[n-2-i].Bulge = -v.Bulge
		}
	}
	return geometry.Path{Vertices: vs}
}

// way returns how far the tool goes between stops from a point, and where it
// is then. Between the stretches of an outline it crosses its tabs, however
// the run is done; that is no part of it.
func way(at geometry.Point, stops []stop) (Length, geometry.Point) {
	var sum Length
	for _, s := range stops {
		sum += at.Distance(s.from())
		at = s.to()
	}
	return sum, at
}
