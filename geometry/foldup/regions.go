package foldup

import (
	"cmp"
	"math"
	"slices"

	"forel/geometry"
)

// grid is how fine places in a piece are told apart, in mm: two nearer than
// this are one.
const grid = 1e-5

// line is what an edge between two regions is.
type line int

const (
	cut line = iota
	fold
	bend
	pleat
	give
	round
)

// region is a part of a piece between cuts, folds and creases.
type region struct {
	outline []geometry.Point // counterclockwise, no point repeated
	joins   []join
}

// join is an edge that two regions share.
type join struct {
	to       int // the other region
	from, at geometry.Point
	kind     line
}

// length of the join.
func (j join) length() Length { return j.from.Distance(j.at) }

// split parts a piece into its regions: the faces of the drawing that its
// outline, slits, folds and creases make.
func split(p geometry.Piece) []region {
	type edge struct {
		a, b geometry.Point
		kind line
	}
	var edges []edge
	add := func(path geometry.Path, kind line) {
		pts := path.Flatten(0.01)
		if path.Closed {
			pts = append(pts, pts[0])
		}
		for i := 1; i < len(pts); i++ {
			edges = append(edges, edge{pts[i-1], pts[i], kind})
		}
	}
	for _, c := range p.Cuts() {
		add(c, cut)
	}
	for _, f := range p.Folds {
		add(f, fold)
	}
	gives, cuts := snipEnds(p)
	for _, s := range cuts {
		add(s, cut)
	}
	for _, s := range gives {
		add(s, give)
	}
	kinds := map[geometry.CreaseKind]line{geometry.Bend: bend, geometry.Pleat: pleat, geometry.Give: give, geometry.Round: round}
	for _, c := range p.Creases {
		add(c.Path, kinds[c.Kind])
	}

	// Part every edge where another meets it. Of edges on one place a cut goes
	// before all, a crease before a fold.
	places := nodes{}
	kind := map[[2]node]line{}
	for i, e := range edges {
		stops := []float64{0, 1}
		for k, o := range edges {
			if k != i {
				stops = append(stops, meets(e.a, e.b, o.a, o.b)...)
			}
		}
		slices.Sort(stops)
		var last node
		for n, t := range stops {
			q := e.a.Add(e.b.Sub(e.a).Mul(t))
			here := places.at(q)
			if n > 0 && here != last {
				pair := [2]node{last, here}
				if cmp.Compare(last[0], here[0]) > 0 || last[0] == here[0] && last[1] > here[1] {
					pair = [2]node{here, last}
				}
				if old, ok := kind[pair]; !ok || old == fold || e.kind == cut {
					kind[pair] = e.kind
				}
			}
			last = here
		}
	}
	return faces(places, kind)
}

// meets gives where on the line from a to b another line touches or crosses
// it, as parts of its length.
func meets(a, b, c, d geometry.Point) []float64 {
	ab, cd, ac := b.Sub(a), d.Sub(c), c.Sub(a)
	cross := func(p, q geometry.Point) float64 { return float64(p.X*q.Y - p.Y*q.X) }
	dot := func(p, q geometry.Point) float64 { return float64(p.X*q.X + p.Y*q.Y) }
	size := math.Sqrt(dot(ab, ab))
	if size == 0 {
		return nil
	}
	var out []float64
	take := func(t float64) {
		if t > grid/size && t < 1-grid/size {
			out = append(out, t)
		}
	}
	// An end of the other on this line.
	for _, q := range []geometry.Point{c, d} {
		v := q.Sub(a)
		if math.Abs(cross(ab, v))/size < grid {
			take(dot(v, ab) / (size * size))
		}
	}
	if det := cross(ab, cd); math.Abs(det) > 1e-12 {
		t, u := cross(ac, cd)/det, cross(ac, ab)/det
		if u > -1e-9 && u < 1+1e-9 {
			take(t)
		}
	}
	return out
}

// faces walks round every face of a drawing, keeping it on the left.
func faces(places nodes, kind map[[2]node]line) []region {
	next := map[node][]node{}
	for pair := range kind {
		next[pair[0]] = append(next[pair[0]], pair[1])
		next[pair[1]] = append(next[pair[1]], pair[0])
	}
	angle := func(a, b node) float64 { return math.Atan2(float64(b[1]-a[1]), float64(b[0]-a[0])) }
	var starts []node
	for a, bs := range next {
		starts = append(starts, a)
		slices.SortFunc(bs, func(x, y node) int { return cmp.Compare(angle(a, x), angle(a, y)) })
	}
	slices.SortFunc(starts, func(a, b node) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })

	side := map[[2]node]int{} // which region lies left of a way from node to node
	var out []region
	var rings [][]node
	for _, a := range starts {
		for _, b := range next[a] {
			if _, seen := side[[2]node{a, b}]; seen {
				continue
			}
			var ring []node
			for from, to := a, b; ; {
				if _, seen := side[[2]node{from, to}]; seen {
					break
				}
				side[[2]node{from, to}] = -1
				ring = append(ring, from)
				// The next way out clockwise from the one just come by.
				ways := next[to]
				i := slices.Index(ways, from)
				from, to = to, ways[(i+len(ways)-1)%len(ways)]
			}
			pts := make([]geometry.Point, len(ring))
			for i, n := range ring {
				pts[i] = places[n]
			}
			if geometry.Polygon(pts...).SignedArea() <= 1e-9 {
				continue // outside, or no face
			}
			for i, n := range ring {
				side[[2]node{n, ring[(i+1)%len(ring)]}] = len(out)
			}
			rings = append(rings, ring)
			out = append(out, region{outline: withoutSpikes(ring, places)})
		}
	}
	for i, ring := range rings {
		for k, a := range ring {
			b := ring[(k+1)%len(ring)]
			other := side[[2]node{b, a}]
			pair := [2]node{a, b}
			if _, ok := kind[pair]; !ok {
				pair = [2]node{b, a}
			}
			if other >= 0 && other != i && kind[pair] != cut {
				out[i].joins = append(out[i].joins, join{other, places[a], places[b], kind[pair]})
			}
		}
	}
	return out
}

// withoutSpikes drops ways that go out and come straight back, as along a slit
// that ends inside a region.
func withoutSpikes(ring []node, places nodes) []geometry.Point {
	kept := slices.Clone(ring)
	for changed := true; changed && len(kept) > 2; {
		changed = false
		for i := range kept {
			n := len(kept)
			before, after := kept[(i+n-1)%n], kept[(i+1)%n]
			if before == after || kept[i] == after {
				kept = slices.Delete(kept, i, i+1)
				changed = true
				break
			}
		}
	}
	pts := make([]geometry.Point, len(kept))
	for i, n := range kept {
		pts[i] = places[n]
	}
	return pts
}

// only tells whether all joins of a region are of one kind.
func (r region) only(kind line) bool {
	return len(r.joins) > 0 && !slices.ContainsFunc(r.joins, func(j join) bool { return j.kind != kind })
}

// pinched tells whether a region is a web left over a corner, which is pinched
// where it is and lies on no face.
func (r region) pinched() bool { return r.only(give) }
