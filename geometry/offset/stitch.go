package offset

import (
	"math"
	"slices"

	"forel/geometry"
)

// joined is how near the end of one part is to the start of the next.
const joined = 20 * same

// stitch joins the parts to closed loops, the largest first.
func (o outline) stitch(parts []part) ([]geometry.Path, error) {
	parts = pruned(parts)
	used := make([]bool, len(parts))
	var loops []geometry.Path
	for i := range parts {
		if used[i] {
			continue
		}
		run := []part{parts[i]}
		used[i] = true
		for run[len(run)-1].To.Distance(run[0].From) > joined {
			next := o.next(run[len(run)-1], parts, used)
			if next < 0 {
				return nil, errUnworked
			}
			used[next] = true
			run = append(run, parts[next])
		}
		if p := path(run); len(p.Vertices) > 1 && math.Abs(p.SignedArea()) > same.MM() {
			loops = append(loops, p)
		}
	}
	slices.SortStableFunc(loops, func(a, b geometry.Path) int {
		if math.Abs(a.SignedArea()) > math.Abs(b.SignedArea()) {
			return -1
		}
		return 1
	})
	return loops, nil
}

// pruned drops parts that lead nowhere or come from nowhere: beside a corner
// that is hardly one, both ends that overlap are near enough to the distance.
func pruned(parts []part) []part {
	for {
		kept := slices.DeleteFunc(slices.Clone(parts), func(p part) bool {
			return !slices.ContainsFunc(parts, func(q part) bool { return q.From.Distance(p.To) <= joined }) ||
				!slices.ContainsFunc(parts, func(q part) bool { return q.To.Distance(p.From) <= joined })
		})
		if len(kept) == len(parts) {
			return kept
		}
		parts = kept
	}
}

// next returns the part that goes on from another, the one that comes soonest
// after it round the outline where several do; -1 where none does.
func (o outline) next(from part, parts []part, used []bool) int {
	best := -1
	for i, p := range parts {
		if used[i] || p.From.Distance(from.To) > joined {
			continue
		}
		if best < 0 || o.after(from, p) < o.after(from, parts[best]) {
			best = i
		}
	}
	return best
}

// after returns how many segments of the outline lie from one part to another.
func (o outline) after(from, to part) int {
	n := len(o.segs)
	return ((to.of-from.of)%n + n) % n
}

// path makes one path of parts, those of one line or circle joined up.
func path(run []part) geometry.Path {
	first := 0 // start at the start of a segment
	for first > 1-len(run) && run[0].of == run[len(run)-1+first].of {
		first--
	}
	run = slices.Concat(run[len(run)+first:], run[:len(run)+first])
	p := geometry.Path{Closed: true}
	of := -1
	for _, s := range run {
		if n := len(p.Vertices); s.of == of && n > 0 {
			last := &p.Vertices[n-1]
			last.Bulge = math.Tan(math.Atan(last.Bulge) + math.Atan(s.Bulge))
			continue
		}
		p.Vertices = append(p.Vertices, geometry.Vertex{Point: s.From, Bulge: s.Bulge})
		of = s.of
	}
	return p
}
