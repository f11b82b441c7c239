package offset

import (
	"math"
	"slices"

	"forel/geometry"
)

// part is a stretch of the result: a segment moved, or a corner gone round.
type part struct {
	geometry.Segment
	of int // the segment it comes from; the corners come after
}

// raw returns each segment of the outline moved, and what goes round the corners
// that need it. What lies too near the outline is still among it.
func (o outline) raw() []part {
	n := len(o.segs)
	parts := make([]part, n)
	for i, s := range o.segs {
		parts[i] = part{o.moved(s), i}
	}
	var rounds []part
	for i, s := range o.segs {
		next := (i + 1) % n
		u, v := heading(s, true), heading(o.segs[next], false)
		turn := math.Atan2((u.X*v.Y - u.Y*v.X).MM(), (u.X*v.X + u.Y*v.Y).MM())
		a, b := &parts[i], &parts[next]
		// Half a turn either way is a spike or its opposite; taken as outward.
		if turn*o.sign <= 1e-9 && math.Abs(turn) < math.Pi-1e-9 || a.To.Distance(b.From) < same {
			continue
		}
		both := s.Bulge == 0 && o.segs[next].Bulge == 0
		if p, ok := lines(a.Segment, b.Segment); both && ok && 1 <= MitreLimit*math.Cos(turn/2)+1e-9 {
			a.To, b.From = p, p
			continue
		}
		rounds = append(rounds, part{geometry.Segment{From: a.To, To: b.From, Bulge: math.Tan(math.Abs(turn)/4) * o.sign}, n + i})
	}
	return slices.DeleteFunc(append(parts, rounds...), func(p part) bool { return p.From.Distance(p.To) < same && p.Bulge == 0 })
}

// moved returns a segment beside itself: to its right by the distance outward,
// to its left inward. An arc that the distance is too great for becomes a
// straight line, which lies too near the outline to be kept.
func (o outline) moved(s geometry.Segment) geometry.Segment {
	d := o.d.MM() * o.sign
	aside := func(p, u geometry.Point) geometry.Point { return p.Add(geometry.Pt(u.Y, -u.X).Mul(d)) }
	m := geometry.Segment{From: aside(s.From, heading(s, false)), To: aside(s.To, heading(s, true)), Bulge: s.Bulge}
	if s.Bulge != 0 {
		if _, r, _, sweep := s.Arc(); r.MM()+d*math.Copysign(1, sweep) <= same.MM() {
			m.Bulge = 0
		}
	}
	return m
}

// split cuts every part where it meets or touches another.
func (o outline) split(parts []part) []part {
	var out []part
	for i, a := range parts {
		ts := []float64{0, 1}
		slack := (same / size(a.Segment)).MM()
		take := func(p geometry.Point) {
			if toSegment(p, a.Segment) > same {
				return
			}
			if t := where(a.Segment, p); t > slack && t < 1-slack {
				ts = append(ts, t)
			}
		}
		for j, b := range parts {
			if i == j {
				continue
			}
			for _, p := range append(meet(a.Segment, b.Segment), b.From, b.To) {
				if toSegment(p, b.Segment) <= same {
					take(p)
				}
			}
		}
		slices.Sort(ts)
		last := 0.0
		for _, t := range ts[1:] {
			if t-last > slack {
				out = append(out, part{between(a.Segment, last, t), a.of})
				last = t
			}
		}
	}
	return out
}

// valid keeps the parts that are as far from the outline as they must be, on
// the side they must be, each once.
func (o outline) valid(parts []part) []part {
	var out []part
	for _, p := range parts {
		mid := pointAt(p.Segment, 0.5)
		if distance(mid, o.segs) < o.d-same || mid.In(o.chords) == (o.sign > 0) {
			continue
		}
		if !slices.ContainsFunc(out, func(q part) bool {
			return q.From.Distance(p.From) < 2*same && q.To.Distance(p.To) < 2*same && pointAt(q.Segment, 0.5).Distance(mid) < 2*same
		}) {
			out = append(out, p)
		}
	}
	return out
}
