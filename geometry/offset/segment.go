package offset

import (
	"math"

	"forel/geometry"
)

// tau is a full turn.
const tau = 2 * math.Pi

// circle is the circle an arc lies on, from the arc's start round its sweep.
type circle struct {
	center       geometry.Point
	radius       Length
	start, sweep float64
}

func circleOf(s geometry.Segment) circle {
	c, r, start, sweep := s.Arc()
	return circle{c, r, start, sweep}
}

// at returns the point of a circle at an angle.
func (c circle) at(a float64) geometry.Point {
	return c.center.Add(geometry.Pt(Length(math.Cos(a)), Length(math.Sin(a))).Mul(c.radius.MM()))
}

// param returns where on the arc a point of the circle lies, 0 at its start and
// 1 at its end; a point just before the start is just under 0.
func (c circle) param(p geometry.Point) float64 {
	turn := math.Atan2((p.Y-c.center.Y).MM(), (p.X-c.center.X).MM()) - c.start
	if c.sweep < 0 {
		turn = -turn
	}
	sweep := math.Abs(c.sweep)
	turn = math.Mod(math.Mod(turn, tau)+tau, tau)
	if turn > (sweep+tau)/2 { // nearer to the start than to the end
		turn -= tau
	}
	return turn / sweep
}

// pointAt returns the point of a segment at t, 0 at its start and 1 at its end.
func pointAt(s geometry.Segment, t float64) geometry.Point {
	switch {
	case t == 0:
		return s.From
	case t == 1:
		return s.To
	case s.Bulge == 0:
		return s.From.Add(s.To.Sub(s.From).Mul(t))
	}
	c := circleOf(s)
	return c.at(c.start + c.sweep*t)
}

// between returns the part of a segment from t to u.
func between(s geometry.Segment, t, u float64) geometry.Segment {
	part := geometry.Segment{From: pointAt(s, t), To: pointAt(s, u)}
	if s.Bulge != 0 {
		part.Bulge = math.Tan(math.Atan(s.Bulge) * (u - t))
	}
	return part
}

// size returns a segment's length along it.
func size(s geometry.Segment) Length {
	if s.Bulge == 0 {
		return s.From.Distance(s.To)
	}
	c := circleOf(s)
	return c.radius * Length(math.Abs(c.sweep))
}

// heading returns the direction of a segment at its start or its end.
func heading(s geometry.Segment, atEnd bool) geometry.Point {
	if s.Bulge == 0 {
		return s.To.Sub(s.From).Mul(1 / s.From.Distance(s.To).MM())
	}
	c := circleOf(s)
	a := c.start
	if atEnd {
		a += c.sweep
	}
	a += math.Copysign(math.Pi/2, c.sweep)
	return geometry.Pt(Length(math.Cos(a)), Length(math.Sin(a)))
}

// distance returns how far a point is from the nearest of some segments.
func distance(p geometry.Point, segs []geometry.Segment) Length {
	least := Length(math.Inf(1))
	for _, s := range segs {
		least = min(least, toSegment(p, s))
	}
	return least
}

func toSegment(p geometry.Point, s geometry.Segment) Length {
	if s.Bulge == 0 {
		return p.ToLine(s.From, s.To)
	}
	c := circleOf(s)
	if t := c.param(p); t >= 0 && t <= 1 {
		return (p.Distance(c.center) - c.radius).Abs()
	}
	return min(p.Distance(s.From), p.Distance(s.To))
}

// meet returns the points that two segments' lines and circles share.
func meet(a, b geometry.Segment) []geometry.Point {
	var points []geometry.Point
	switch {
	case a.Bulge == 0 && b.Bulge == 0:
		if p, ok := lines(a, b); ok {
			return []geometry.Point{p}
		}
	case a.Bulge == 0:
		points = lineCircle(a, circleOf(b))
	case b.Bulge == 0:
		points = lineCircle(b, circleOf(a))
	default:
		points = circles(circleOf(a), circleOf(b))
	}
	for i := range points {
		points[i] = polished(points[i], a, b)
	}
	return points
}

// polished returns a point nearer to where two lines or circles meet, by Newton's
// method: with a large circle, squares of its radius lose what counts.
func polished(p geometry.Point, a, b geometry.Segment) geometry.Point {
	for range 2 {
		f, u := beside(p, a)
		g, v := beside(p, b)
		den := (u.X*v.Y - u.Y*v.X).MM()
		if math.Abs(den) < 1e-9 {
			break // they only touch
		}
		step := geometry.Pt(f*v.Y-g*u.Y, g*u.X-f*v.X).Mul(1 / den)
		if math.Hypot(step.X.MM(), step.Y.MM()) > 1e-3 {
			break
		}
		p = p.Sub(step)
	}
	return p
}

// beside returns how far a point is off a segment's line or circle, and the
// direction in which that grows.
func beside(p geometry.Point, s geometry.Segment) (Length, geometry.Point) {
	if s.Bulge == 0 {
		u := heading(s, false)
		n := geometry.Pt(-u.Y, u.X)
		w := p.Sub(s.From)
		return w.X*n.X + w.Y*n.Y, n
	}
	c := circleOf(s)
	far := p.Distance(c.center)
	return far - c.radius, p.Sub(c.center).Mul(1 / far.MM())
}

// lines returns where two straight lines, carried on, meet; not where they are
// parallel to a billionth.
func lines(a, b geometry.Segment) (geometry.Point, bool) {
	u, v := heading(a, false), heading(b, false)
	den := (u.X*v.Y - u.Y*v.X).MM()
	if math.Abs(den) < 1e-9 {
		return geometry.Point{}, false
	}
	w := b.From.Sub(a.From)
	return a.From.Add(u.Mul((w.X*v.Y - w.Y*v.X).MM() / den)), true
}

func lineCircle(l geometry.Segment, c circle) []geometry.Point {
	u := heading(l, false)
	w := c.center.Sub(l.From)
	foot := l.From.Add(u.Mul((w.X*u.X + w.Y*u.Y).MM()))
	half := math.Pow(c.radius.MM(), 2) - math.Pow(foot.Distance(c.center).MM(), 2)
	if half < -same.MM()*c.radius.MM() {
		return nil
	}
	half = math.Sqrt(max(0, half))
	return []geometry.Point{foot.Sub(u.Mul(half)), foot.Add(u.Mul(half))}
}

func circles(a, b circle) []geometry.Point {
	if a.radius > b.radius {
		a, b = b, a
	}
	d := a.center.Distance(b.center).MM()
	if d < same.MM() {
		return nil
	}
	ra, rb := a.radius.MM(), b.radius.MM()
	x := (d*d + ra*ra - rb*rb) / (2 * d)
	half := ra*ra - x*x
	if half < -same.MM()*ra {
		return nil
	}
	half = math.Sqrt(max(0, half))
	u := b.center.Sub(a.center).Mul(1 / d)
	mid, across := a.center.Add(u.Mul(x)), geometry.Pt(-u.Y, u.X).Mul(half)
	return []geometry.Point{mid.Sub(across), mid.Add(across)}
}

// where returns how far along a segment a point of its line or circle lies.
func where(s geometry.Segment, p geometry.Point) float64 {
	if s.Bulge != 0 {
		return circleOf(s).param(p)
	}
	d, v := s.To.Sub(s.From), p.Sub(s.From)
	return ((v.X*d.X + v.Y*d.Y) / (d.X*d.X + d.Y*d.Y)).MM()
}
