package fold

import (
	"cmp"
	"math"
	"slices"

	"forel/geometry"
	"forel/geometry/polygon"
)

// grid is how fine places in a piece are told apart, in mm: two nearer than
// this are one.
const grid = 1e-5

// Kind is what an edge between two parts is.
type Kind int

// Kinds of edges. A fold, a bend and Away are hinges, a pleat lays a part back on itself;
// the covering gives at Give, and a tab is turned over the edge of a hole at Round.
const (
	Cut Kind = iota
	Fold
	Bend
	Pleat
	Give
	Round
	Away
)

// Part is a part of a piece between cuts, folds and creases.
type Part struct {
	Outline []geometry.Point // counterclockwise, no point repeated
	Joins   []Join           // to other parts; this part lies left of each
	Idle    []Join           // folds that end in this part and part nothing
	Web     bool             // it is left over a corner and pinched there: it hangs on nothing
	Tab     bool             // it is turned over the edge of a hole; webs may be pinched at its ends
}

// Join is a straight edge that two parts share.
type Join struct {
	To       int // the other part
	From, At geometry.Point
	Kind     Kind
}

// Length returns the length of the join.
func (j Join) Length() Length { return j.From.Distance(j.At) }

// Split parts a piece: into the faces of the drawing that its outline, slits, folds
// and creases make. Arcs are parted into chords a hundredth of a millimetre off them.
func Split(p geometry.Piece) []Part {
	type edge struct {
		a, b geometry.Point
		kind Kind
	}
	var edges []edge
	add := func(path geometry.Path, kind Kind) {
		for _, s := range path.Straight(0.01) {
			edges = append(edges, edge{s.From, s.To, kind})
		}
	}
	for _, c := range p.Cuts() {
		add(c, Cut)
	}
	for _, f := range p.Folds {
		add(f, Fold)
	}
	gives, cuts := snipEnds(p)
	for _, s := range cuts {
		add(s, Cut)
	}
	for _, s := range gives {
		add(s, Give)
	}
	kinds := map[geometry.CreaseKind]Kind{geometry.Bend: Bend, geometry.Pleat: Pleat, geometry.Give: Give, geometry.Round: Round, geometry.Away: Away, geometry.Toward: Fold}
	for _, c := range p.Creases {
		add(c.Path, kinds[c.Kind])
	}

	// Part every edge where another meets it. Of edges on one place a cut goes
	// before all, a crease before a fold.
	places := nodes{}
	kind := map[[2]node]Kind{}
	for i, e := range edges {
		stops := []float64{0, 1}
		for k, o := range edges {
			if k != i {
				stops = append(stops, Meets(e.a, e.b, o.a, o.b)...)
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
				if old, ok := kind[pair]; !ok || old == Fold || e.kind == Cut {
					kind[pair] = e.kind
				}
			}
			last = here
		}
	}
	return faces(places, kind)
}

// Meets returns where on the line from a to b another line touches or crosses
// it, as parts of its length.
func Meets(a, b, c, d geometry.Point) []float64 {
	ab, cd, ac := b.Sub(a), d.Sub(c), c.Sub(a)
	size := math.Sqrt(ab.Dot(ab).MM())
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
		if ab.Cross(v).Abs().MM()/size < grid {
			take(v.Dot(ab).MM() / (size * size))
		}
	}
	if det := ab.Cross(cd).MM(); math.Abs(det) > 1e-12 {
		t, u := ac.Cross(cd).MM()/det, ac.Cross(ab).MM()/det
		if u > -1e-9 && u < 1+1e-9 {
			take(t)
		}
	}
	return out
}

// faces walks round every face of a drawing, keeping it on the left.
func faces(places nodes, kind map[[2]node]Kind) []Part {
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

	side := map[[2]node]int{} // which part lies left of a way from node to node
	var out []Part
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
			out = append(out, Part{Outline: polygon.Tidy(pts, grid, false)})
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
			j := Join{other, places[a], places[b], kind[pair]}
			switch {
			case other < 0 || j.Kind == Cut:
			case other == i:
				out[i].Idle = append(out[i].Idle, j)
			default:
				out[i].Joins = append(out[i].Joins, j)
			}
		}
		out[i].Web = out[i].only(Give)
		out[i].Tab = !out[i].Web && out[i].only(Round, Give)
	}
	return out
}

// only tells whether all joins of a part are of some kinds.
func (p Part) only(kinds ...Kind) bool {
	return len(p.Joins) > 0 && !slices.ContainsFunc(p.Joins, func(j Join) bool { return !slices.Contains(kinds, j.Kind) })
}
