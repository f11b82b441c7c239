package scene

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"forel/geometry"
	"forel/render/shape"
)

// hair is how near places and edges of two regions count as one, in mm: more
// than straightening moves an edge, far less than a line is wide.
const hair Length = 2e-3

// overlay lays two regions on each other and gives the part of the plane that
// keep holds for, by whether it is in a and in b. All edges are broken where they
// meet, those that are kept on one side only are chained. ok is false where they
// make no closed rings.
func overlay(a, b Region, keep func(inA, inB bool) bool) (out Region, ok bool) {
	m := meshes.Get().(*mesh)
	defer meshes.Put(m)
	m.at = m.at[:0]
	for i, r := range []Region{a, b} {
		m.edges[i] = m.edgesOf(r, m.edges[i][:0])
	}
	boxes := [2]geometry.Box{a.Bounds().Grow(hair), b.Bounds().Grow(hair)}
	for i := range m.edges[0] {
		e := &m.edges[0][i]
		if !e.near(boxes[1]) {
			continue
		}
		for k := range m.edges[1] {
			m.crossing(e, &m.edges[1][k])
		}
	}
	for i := range m.bits {
		m.bits[i] = m.broken(m.edges[i], m.bits[i])
	}
	m.kept.clear(len(m.at))
	add := func(e bit, leftA, rightA, leftB, rightB bool) {
		switch left, right := keep(leftA, leftB), keep(rightA, rightB); {
		case left && !right:
			m.kept.add(e)
		case right && !left:
			m.kept.add(e.back())
		}
	}
	of, others := &m.bits[0], &m.bits[1]
	for _, e := range of.all {
		switch {
		case others.find(e) >= 0: // an edge of both
			add(e, true, false, true, false)
		case others.find(e.back()) >= 0:
			add(e, true, false, false, true)
		default:
			in := m.in(others.all, boxes[1], e)
			add(e, true, false, in, in)
		}
	}
	for _, e := range others.all {
		if of.find(e) < 0 && of.find(e.back()) < 0 {
			in := m.in(of.all, boxes[0], e)
			add(e, in, in, true, false)
		}
	}
	return m.chained()
}

// meshes are kept for use again: overlays are many and small.
var meshes = sync.Pool{New: func() any { return new(mesh) }}

// mesh is the places where edges of two regions end and meet, the edges, whole
// and broken, and those of them that are kept.
type mesh struct {
	at       []geometry.Point
	edges    [2][]meshEdge
	bits     [2]bits
	kept     bits
	position []int // of a place in the ring being made; -1: not in it
	ring     []int
}

// meshEdge is an edge from place to place, broken at others.
type meshEdge struct {
	bit
	p, q   geometry.Point
	box    geometry.Box // round it
	breaks []breakAt
}

type breakAt struct {
	t  float64
	at int
}

// bit is an edge that no other crosses.
type bit struct{ from, to int }

func (e bit) back() bit { return bit{e.to, e.from} }

// bits can be found by the place they start at.
type bits struct {
	all   []bit
	next  []int // of those that start at the same place
	first []int // by place; -1: none
}

func (b *bits) clear(places int) {
	b.all, b.next, b.first = b.all[:0], b.next[:0], b.first[:0]
	for range places {
		b.first = append(b.first, -1)
	}
}

func (b *bits) add(e bit) {
	b.next = append(b.next, b.first[e.from])
	b.first[e.from] = len(b.all)
	b.all = append(b.all, e)
}

func (b *bits) find(e bit) int {
	for i := b.first[e.from]; i >= 0; i = b.next[i] {
		if b.all[i].to == e.to {
			return i
		}
	}
	return -1
}

// place gives the number of a place.
func (m *mesh) place(p geometry.Point) int {
	for i, q := range m.at {
		if d := q.Sub(p); d.X < hair && d.X > -hair && d.Y < hair && d.Y > -hair {
			return i
		}
	}
	m.at = append(m.at, p)
	return len(m.at) - 1
}

// edgesOf adds the edges of a region.
func (m *mesh) edgesOf(r Region, out []meshEdge) []meshEdge {
	for _, a := range r {
		for _, ring := range a.Rings {
			last := m.place(ring[len(ring)-1])
			for _, p := range ring {
				k := m.place(p)
				if k == last {
					continue
				}
				if n := len(out); n < cap(out) { // with what it holds room for breaks in
					out = out[:n+1]
				} else {
					out = append(out, meshEdge{})
				}
				e := &out[len(out)-1]
				e.bit, e.p, e.q, e.breaks = bit{last, k}, m.at[last], m.at[k], e.breaks[:0]
				e.box = geometry.Bx(min(e.p.X, e.q.X), min(e.p.Y, e.q.Y), max(e.p.X, e.q.X), max(e.p.Y, e.q.Y))
				last = k
			}
		}
	}
	return out
}

// near tells whether the box round an edge meets another.
func (e *meshEdge) near(b geometry.Box) bool {
	return e.box.Max.X >= b.Min.X && b.Max.X >= e.box.Min.X && e.box.Max.Y >= b.Min.Y && b.Max.Y >= e.box.Min.Y
}

// crossing breaks two edges where they meet.
func (m *mesh) crossing(e, f *meshEdge) {
	if e.box.Max.X+hair < f.box.Min.X || f.box.Max.X+hair < e.box.Min.X || e.box.Max.Y+hair < f.box.Min.Y || f.box.Max.Y+hair < e.box.Min.Y {
		return
	}
	touch := e.touched(f.from, f.p)
	touch = e.touched(f.to, f.q) || touch
	touch = f.touched(e.from, e.p) || touch
	touch = f.touched(e.to, e.q) || touch
	if touch {
		return
	}
	d, g, v := e.q.Sub(e.p), f.q.Sub(f.p), f.p.Sub(e.p)
	det := float64(d.X*g.Y - d.Y*g.X)
	if det == 0 {
		return
	}
	t, u := float64(v.X*g.Y-v.Y*g.X)/det, float64(v.X*d.Y-v.Y*d.X)/det
	if t <= 0 || t >= 1 || u <= 0 || u >= 1 {
		return
	}
	k := m.place(e.p.Add(d.Mul(t)))
	e.breaks = append(e.breaks, breakAt{t, k})
	f.breaks = append(f.breaks, breakAt{u, k})
}

// touched breaks an edge at a place that lies on it; it is true also where that
// is one of its ends.
func (e *meshEdge) touched(k int, p geometry.Point) bool {
	if k == e.from || k == e.to {
		return true
	}
	d, v := e.q.Sub(e.p), p.Sub(e.p)
	t := float64(v.X*d.X+v.Y*d.Y) / float64(d.X*d.X+d.Y*d.Y)
	if t <= 0 || t >= 1 || size(e.p.Add(d.Mul(t)).Sub(p)) > hair {
		return false
	}
	e.breaks = append(e.breaks, breakAt{t, k})
	return true
}

// broken gives the bits of edges, without those that go out and come back.
func (m *mesh) broken(edges []meshEdge, out bits) bits {
	out.clear(len(m.at))
	twice := false
	for _, e := range edges {
		slices.SortFunc(e.breaks, func(a, b breakAt) int { return cmp.Compare(a.t, b.t) })
		last := e.from
		for i := range len(e.breaks) + 1 {
			at := e.to
			if i < len(e.breaks) {
				at = e.breaks[i].at
			}
			if at != last {
				b := bit{last, at}
				twice = twice || out.find(b.back()) >= 0
				out.add(b)
				last = at
			}
		}
	}
	if twice {
		all := slices.Clone(out.all)
		var left []bit
		for _, e := range all {
			if i := slices.Index(left, e.back()); i >= 0 {
				left = slices.Delete(left, i, i+1)
				continue
			}
			left = append(left, e)
		}
		out.clear(len(m.at))
		for _, e := range left {
			out.add(e)
		}
	}
	return out
}

// in tells whether the middle of a bit lies in what others, all in a box, go round.
func (m *mesh) in(ring []bit, box geometry.Box, e bit) bool {
	p := m.at[e.from].Add(m.at[e.to]).Mul(0.5)
	if p.X < box.Min.X || p.X > box.Max.X || p.Y < box.Min.Y || p.Y > box.Max.Y {
		return false
	}
	in := false
	for _, f := range ring {
		q, r := m.at[f.from], m.at[f.to]
		if (q.Y > p.Y) != (r.Y > p.Y) && p.X < q.X+(p.Y-q.Y)/(r.Y-q.Y)*(r.X-q.X) {
			in = !in
		}
	}
	return in
}

// chained joins the bits that are kept to rings. What is kept is on their left.
func (m *mesh) chained() (Region, bool) {
	bits, next, first := m.kept.all, m.kept.next, m.kept.first
	m.position = m.position[:0]
	for range m.at {
		m.position = append(m.position, -1)
	}
	position := m.position
	take := func(from, at int) (to int, ok bool) {
		best, link, least := -1, -1, math.Inf(1)
		for i, before := first[at], -1; i >= 0; i, before = next[i], i {
			turn := 0.0
			if next[first[at]] >= 0 {
				turn = m.turn(at, from, bits[i].to)
			}
			if turn < least {
				best, link, least = i, before, turn
			}
		}
		if best < 0 {
			return 0, false
		}
		if link < 0 {
			first[at] = next[best]
		} else {
			next[link] = next[best]
		}
		return bits[best].to, true
	}
	var rings [][]geometry.Point
	for _, e := range bits {
		for first[e.from] >= 0 {
			ring := append(m.ring[:0], e.from)
			position[e.from] = 0
			from, at := -1, e.from
			for len(ring) > 0 {
				to, ok := take(from, at)
				if !ok {
					return nil, false
				}
				from, at = at, to
				k := position[at]
				if k < 0 {
					position[at] = len(ring)
					ring = append(ring, at)
					continue
				}
				// Back at a place it was at: that is a ring for itself.
				pts := make([]geometry.Point, 0, len(ring)-k)
				for _, r := range ring[k:] {
					pts = append(pts, m.at[r])
					position[r] = -1
				}
				rings = append(rings, pts)
				m.ring = ring
				if ring = ring[:k]; k > 0 {
					position[at] = k
					ring = append(ring, at)
				}
			}
		}
	}
	return regionOf(rings), true
}

// turn gives by how much one turns clockwise at a place, from looking back to
// where one comes from to where one goes: what is between is on the left of the
// way. Where one comes from nowhere every way is alike.
func (m *mesh) turn(at, from, to int) float64 {
	if from < 0 {
		return 0
	}
	a, b := m.at[from].Sub(m.at[at]), m.at[to].Sub(m.at[at])
	angle := math.Atan2(float64(a.Y), float64(a.X)) - math.Atan2(float64(b.Y), float64(b.X))
	if angle <= 0 {
		angle += 2 * math.Pi
	}
	return angle
}

// regionOf gives the region that rings go round, outlines counterclockwise and
// holes clockwise, without what is too thin to be drawn. Where two rings touch
// both have a point, by which what is laid on them is broken there too.
func regionOf(rings [][]geometry.Point) Region {
	var out Region
	var sizes []float64
	var holes [][]geometry.Point
	for n, ring := range rings {
		size := signed(ring)
		if 2*math.Abs(size) <= speck*around(ring) {
			continue
		}
		ring = straightened(ring, func(p geometry.Point) bool {
			for i, other := range rings {
				if i != n && slices.Contains(other, p) {
					return true
				}
			}
			return false
		})
		if rings[n] = ring; size < 0 {
			holes = append(holes, ring)
			continue
		}
		out = append(out, shape.Area{Rings: [][]geometry.Point{ring}})
		sizes = append(sizes, size)
	}
	for _, hole := range holes {
		mid := hole[0].Add(hole[1]).Mul(0.5)
		in := -1
		for i, a := range out {
			if (in < 0 || sizes[i] < sizes[in]) && (shape.Area{Rings: a.Rings[:1]}).Holds(mid) {
				in = i
			}
		}
		if in >= 0 {
			out[in].Rings = append(out[in].Rings, hole)
		}
	}
	return out
}

// signed gives the area a ring goes round, counterclockwise being positive.
func signed(ring []geometry.Point) float64 {
	var sum Length
	for i, p := range ring[1:] {
		sum += (ring[i].X-ring[0].X)*(p.Y-ring[0].Y) - (p.X-ring[0].X)*(ring[i].Y-ring[0].Y)
	}
	return sum.MM() / 2
}

func around(ring []geometry.Point) float64 {
	var sum Length
	last := ring[len(ring)-1]
	for _, p := range ring {
		sum += size(p.Sub(last))
		last = p
	}
	return sum.MM()
}
