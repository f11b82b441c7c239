package geometry

import "math"

// Point is a place on a flat piece. X runs along the piece's width, Y along
// its height, upward; the origin of a finished piece is the lower left corner
// of its bounding box.
type Point struct{ X, Y Length }

// Pt is short for a Point.
func Pt(x, y Length) Point { return Point{x, y} }

// Add returns the point moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Mul returns the point's coordinates times f.
func (p Point) Mul(f float64) Point { return Point{p.X * Length(f), p.Y * Length(f)} }

// Dot returns the scalar product of two steps.
func (p Point) Dot(q Point) Length { return p.X*q.X + p.Y*q.Y }

// Cross returns the cross product of two steps: positive where the second turns left.
func (p Point) Cross(q Point) Length { return p.X*q.Y - p.Y*q.X }

// Distance returns the straight distance between two points.
func (p Point) Distance(q Point) Length {
	return Length(math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y)))
}

// ToLine returns the distance from the point to the nearest place on the line
// from a to b.
func (p Point) ToLine(a, b Point) Length {
	d, v := b.Sub(a), p.Sub(a)
	size := d.Dot(d)
	if size == 0 {
		return p.Distance(a)
	}
	return p.Distance(a.Add(d.Mul(max(0, min(1, (v.Dot(d)/size).MM())))))
}

// Near tells whether two points are the same to a nanometre in X and in Y.
func (p Point) Near(q Point) bool { return p.X.Near(q.X) && p.Y.Near(q.Y) }

// In tells whether the point lies within an outline, or within one and outside its
// holes: a ray from it crosses the rings an odd number of times. No ring repeats its
// first point; a point on an edge may be in or out.
func (p Point) In(rings ...[]Point) bool {
	odd := false
	for _, ring := range rings {
		if len(ring) == 0 {
			continue
		}
		a := ring[len(ring)-1]
		for _, b := range ring {
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				odd = !odd
			}
			a = b
		}
	}
	return odd
}

// Box is an upright rectangle, Min its lower left corner.
type Box struct{ Min, Max Point }

// Bx is short for the Box from (x0, y0) to (x1, y1).
func Bx(x0, y0, x1, y1 Length) Box { return Box{Pt(x0, y0), Pt(x1, y1)} }

// Around returns the smallest box that holds all of the points, of which there is at
// least one.
func Around(points ...Point) Box {
	b := Box{points[0], points[0]}
	for _, p := range points[1:] {
		b.Min = Pt(min(b.Min.X, p.X), min(b.Min.Y, p.Y))
		b.Max = Pt(max(b.Max.X, p.X), max(b.Max.Y, p.Y))
	}
	return b
}

// Width returns the box's extent along X.
func (b Box) Width() Length { return b.Max.X - b.Min.X }

// Height returns the box's extent along Y.
func (b Box) Height() Length { return b.Max.Y - b.Min.Y }

// Center returns the box's middle.
func (b Box) Center() Point { return b.Min.Add(b.Max).Mul(0.5) }

// Empty tells whether the box holds no area.
func (b Box) Empty() bool { return b.Max.X <= b.Min.X || b.Max.Y <= b.Min.Y }

// Grow returns the box moved outward by d on every side; a negative d shrinks it.
func (b Box) Grow(d Length) Box {
	return Box{b.Min.Add(Pt(-d, -d)), b.Max.Add(Pt(d, d))}
}

// Move returns the box shifted by d.
func (b Box) Move(d Point) Box { return Box{b.Min.Add(d), b.Max.Add(d)} }

// Intersect returns what two boxes share; it is Empty where they share nothing.
func (b Box) Intersect(c Box) Box {
	return Box{
		Pt(max(b.Min.X, c.Min.X), max(b.Min.Y, c.Min.Y)),
		Pt(min(b.Max.X, c.Max.X), min(b.Max.Y, c.Max.Y)),
	}
}

// Overlaps tells whether two boxes share area.
func (b Box) Overlaps(c Box) bool { return !b.Intersect(c).Empty() }

// Contains tells whether c lies wholly in b, borders included.
func (b Box) Contains(c Box) bool {
	return c.Min.X >= b.Min.X && c.Min.Y >= b.Min.Y && c.Max.X <= b.Max.X && c.Max.Y <= b.Max.Y
}

// Vertex is a corner of a path and the way to the next one. Bulge is the
// tangent of a quarter of the arc's angle, positive counterclockwise; zero is
// a straight line and one a half circle.
type Vertex struct {
	Point
	Bulge float64
}

// Path is a run of straight lines and circular arcs. A closed path goes back
// from its last vertex to its first, which is not repeated.
type Path struct {
	Vertices []Vertex
	Closed   bool
}

// Line returns the open path through the points.
func Line(points ...Point) Path {
	vs := make([]Vertex, len(points))
	for i, p := range points {
		vs[i].Point = p
	}
	return Path{Vertices: vs}
}

// Polygon returns the closed path through the points.
func Polygon(points ...Point) Path {
	p := Line(points...)
	p.Closed = true
	return p
}

// Distinct leaves out each point of a closed outline that repeats the one before it, as
// where a flap ends in a point.
func Distinct(points ...Point) []Point {
	kept := points[:0:0]
	for _, q := range points {
		if len(kept) == 0 || !q.Near(kept[len(kept)-1]) {
			kept = append(kept, q)
		}
	}
	for len(kept) > 1 && kept[0].Near(kept[len(kept)-1]) {
		kept = kept[:len(kept)-1]
	}
	return kept
}

// Rectangle returns the outline of a box, counterclockwise from its lower left.
func Rectangle(b Box) Path {
	return Polygon(b.Min, Pt(b.Max.X, b.Min.Y), b.Max, Pt(b.Min.X, b.Max.Y))
}

// Circle returns a closed circle about a centre, counterclockwise.
func Circle(c Point, r Length) Path {
	return Path{Closed: true, Vertices: []Vertex{{c.Add(Pt(-r, 0)), 1}, {c.Add(Pt(r, 0)), 1}}}
}

// Segment is one straight line or arc of a path.
type Segment struct {
	From, To Point
	Bulge    float64
}

// Segments returns the path's lines and arcs in order, the closing one included.
func (p Path) Segments() []Segment {
	if p.sides() == 0 {
		return nil
	}
	segs := make([]Segment, p.sides())
	for i := range segs {
		segs[i] = p.side(i)
	}
	return segs
}

// sides returns the number of segments.
func (p Path) sides() int {
	n := len(p.Vertices)
	switch {
	case n < 2:
		return 0
	case p.Closed:
		return n
	}
	return n - 1
}

// side returns the ith segment.
func (p Path) side(i int) Segment {
	v := p.Vertices[i]
	return Segment{v.Point, p.Vertices[(i+1)%len(p.Vertices)].Point, v.Bulge}
}

// each returns the path with every vertex changed.
func (p Path) each(change func(Vertex) Vertex) Path {
	return Path{Each(p.Vertices, change), p.Closed}
}

// Move returns the path shifted by d.
func (p Path) Move(d Point) Path {
	return p.each(func(v Vertex) Vertex { return Vertex{v.Point.Add(d), v.Bulge} })
}

// Scale returns the path drawn f times as large about the origin.
func (p Path) Scale(f float64) Path {
	return p.each(func(v Vertex) Vertex { return Vertex{v.Point.Mul(f), v.Bulge} })
}

// QuarterTurn returns the path of a piece of height h, turned with it a quarter
// counterclockwise about the origin and moved right by h.
func (p Path) QuarterTurn(h Length) Path {
	return p.each(func(v Vertex) Vertex { return Vertex{Pt(h-v.Y, v.X), v.Bulge} })
}

// FlipX returns the path mirrored left to right within a width, as the other face
// of a piece shows it, and still counterclockwise where it was.
func (p Path) FlipX(w Length) Path {
	n := len(p.Vertices)
	vs := make([]Vertex, n)
	for i, v := range p.Vertices {
		vs[n-1-i].Point = Pt(w-v.X, v.Y)
		// The way on from a vertex was the way to it.
		vs[(2*n-2-i)%n].Bulge = v.Bulge
	}
	return Path{vs, p.Closed}
}

// FlipY returns the path mirrored top to bottom and then raised by h: template
// coordinates, upward, become page coordinates, downward. Arcs turn about.
func (p Path) FlipY(h Length) Path {
	return p.each(func(v Vertex) Vertex { return Vertex{Pt(v.X, h-v.Y), -v.Bulge} })
}

// Flatten returns the path's points with each arc replaced by chords that leave
// it by no more than tolerance. A closed path's first point is not repeated.
func (p Path) Flatten(tolerance Length) []Point {
	if len(p.Vertices) == 0 {
		return nil
	}
	pts := make([]Point, 1, len(p.Vertices)+1)
	pts[0] = p.Vertices[0].Point
	for i := range p.sides() {
		s := p.side(i)
		if s.Bulge != 0 {
			pts = append(pts, s.chords(tolerance)...)
		}
		pts = append(pts, s.To)
	}
	if p.Closed {
		pts = pts[:len(pts)-1]
	}
	return pts
}

// Straight returns the path's segments as Flatten has them: without arcs.
func (p Path) Straight(tolerance Length) []Segment {
	path := Line(p.Flatten(tolerance)...)
	path.Closed = p.Closed
	return path.Segments()
}

// Arc returns the centre, the radius, and the start and sweep angles in radians
// (sweep positive counterclockwise) of a segment whose Bulge is not zero.
func (s Segment) Arc() (center Point, radius Length, start, sweep float64) {
	sweep = 4 * math.Atan(s.Bulge)
	chord := s.From.Distance(s.To)
	radius = Length(float64(chord) / 2 / math.Abs(math.Sin(sweep/2)))
	// From the chord's middle to the centre, along the chord's left normal.
	h := float64(chord) / 2 / math.Tan(sweep/2)
	mid := s.From.Add(s.To).Mul(0.5)
	d := s.To.Sub(s.From).Mul(h / float64(chord))
	center = mid.Add(Pt(-d.Y, d.X))
	start = math.Atan2(float64(s.From.Y-center.Y), float64(s.From.X-center.X))
	return center, radius, start, sweep
}

// chords returns the points between the ends of an arc.
func (s Segment) chords(tolerance Length) []Point {
	c, r, start, sweep := s.Arc()
	most := math.Pi / 2
	if tolerance < r {
		most = min(most, 2*math.Acos(1-float64(tolerance/r)))
	}
	n := max(1, int(math.Ceil(math.Abs(sweep)/most-1e-9)))
	pts := make([]Point, 0, n-1)
	for i := 1; i < n; i++ {
		a := start + sweep*float64(i)/float64(n)
		pts = append(pts, c.Add(Pt(Length(math.Cos(a)), Length(math.Sin(a))).Mul(float64(r))))
	}
	return pts
}

// Bounds returns the smallest upright box around the path, arcs included.
func (p Path) Bounds() Box {
	if len(p.Vertices) == 0 {
		return Box{}
	}
	b := Box{p.Vertices[0].Point, p.Vertices[0].Point}
	take := func(q Point) {
		b.Min = Pt(min(b.Min.X, q.X), min(b.Min.Y, q.Y))
		b.Max = Pt(max(b.Max.X, q.X), max(b.Max.Y, q.Y))
	}
	for _, v := range p.Vertices {
		take(v.Point)
	}
	for i := range p.sides() {
		s := p.side(i)
		if s.Bulge == 0 {
			continue
		}
		c, r, start, sweep := s.Arc()
		if sweep < 0 {
			start, sweep = start+sweep, -sweep
		}
		// The arc reaches furthest where it crosses a quarter turn.
		for q := math.Ceil(start / (math.Pi / 2)); q*math.Pi/2 <= start+sweep; q++ {
			a := q * math.Pi / 2
			take(c.Add(Pt(Length(math.Cos(a)), Length(math.Sin(a))).Mul(float64(r))))
		}
	}
	return b
}

// SignedArea returns the area in mm² that a closed path encloses, positive when
// it runs counterclockwise. It is exact for arcs too.
func (p Path) SignedArea() float64 {
	var twice float64
	for _, s := range p.Segments() {
		twice += float64(s.From.X*s.To.Y - s.To.X*s.From.Y)
		if s.Bulge != 0 {
			_, r, _, sweep := s.Arc()
			twice += float64(r*r) * (sweep - math.Sin(sweep))
		}
	}
	return twice / 2
}
