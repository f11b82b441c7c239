package polygon

import (
	"cmp"
	"slices"

	"forel/geometry"
)

// one is how near two corners, or a corner and an edge, count as one on the other, in
// mm: more than rounding moves them, far less than anything that is cut.
const one Length = 1e-5

// joined returns shapes with the corners that lie on each other made one, and with a
// corner in every edge that another shape's corner lies on. Neighbours then share their
// whole border, and no gap of rounding stays between them.
func joined(shapes []Shape) []Shape {
	var corners []geometry.Point
	corner := func(p geometry.Point) geometry.Point {
		for _, q := range corners {
			if (q.X-p.X).Abs() < one && (q.Y-p.Y).Abs() < one {
				return q
			}
		}
		corners = append(corners, p)
		return p
	}
	all := make([]Shape, len(shapes))
	for i, s := range shapes {
		all[i] = s.Moved(corner)
	}
	for _, s := range all {
		for _, a := range s {
			for k, ring := range a.Rings {
				a.Rings[k] = Tidy(broken(ring, corners), one, false)
			}
		}
	}
	return all
}

// broken returns a ring with a corner in each edge that one lies on.
func broken(ring, corners []geometry.Point) []geometry.Point {
	var out []geometry.Point
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if p == q {
			continue
		}
		out = append(out, p)
		d, first := q.Sub(p), len(out)
		along := func(c geometry.Point) Length { return c.Sub(p).Dot(d) }
		lo, hi := geometry.Pt(min(p.X, q.X)-one, min(p.Y, q.Y)-one), geometry.Pt(max(p.X, q.X)+one, max(p.Y, q.Y)+one)
		for _, c := range corners {
			if c.X > lo.X && c.X < hi.X && c.Y > lo.Y && c.Y < hi.Y && c != p && c != q && c.ToLine(p, q) < one {
				out = append(out, c)
			}
		}
		slices.SortFunc(out[first:], func(a, b geometry.Point) int { return cmp.Compare(along(a), along(b)) })
	}
	return out
}

// Tidy returns a ring without needles, where it goes out and comes back no farther off
// than given, and, if straight, without points that stand out no more between their
// neighbours.
func Tidy(ring []geometry.Point, off Length, straight bool) []geometry.Point {
	kept := slices.Clone(ring)
	for at, still := 0, 0; still < len(kept) && len(kept) > 3; {
		n := len(kept)
		a, q, b := kept[(at+n-1)%n], kept[at%n], kept[(at+1)%n]
		if b.ToLine(a, q) >= off && a.ToLine(q, b) >= off && (!straight || q.ToLine(a, b) >= off) {
			at, still = (at+1)%n, still+1
			continue
		}
		kept = slices.Delete(kept, at%n, at%n+1)
		at, still = (at+n-2)%(n-1), 0
	}
	return kept
}
