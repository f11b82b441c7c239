package bed

import (
	"math"
	"slices"

	"forel/geometry"
)

// gain is what a change must save to be made, so that the search ends.
const gain Length = 1e-6

// shortened returns stops in an order, and each done in a way, that keep the
// distance between them short: to the nearest first, then stretches of the order
// turned about (2-opt) or moved elsewhere as long as that saves anything,
// with the best way of each stop worked out exactly for the order in between.
// The result is never longer than the order given.
func shortened(from geometry.Point, stops []stop) []stop {
	best := slices.Clone(stops)
	least, _ := way(from, best)
	for _, tour := range [][]stop{nearest(from, stops), slices.Clone(stops)} {
		length, _ := way(from, tour)
		for {
			choose(from, tour)
			turnAbout(from, tour)
			tour = elsewhere(from, tour)
			now, _ := way(from, tour)
			if now > length-gain {
				break
			}
			length = now
		}
		choose(from, tour)
		if now, _ := way(from, tour); now < least-gain {
			best, least = slices.Clone(tour), now
		}
	}
	return best
}

// nearest returns the stops in the order of going to the nearest each time.
func nearest(at geometry.Point, stops []stop) []stop {
	left := slices.Clone(stops)
	out := make([]stop, 0, len(left))
	for len(left) > 0 {
		next, least := 0, Length(math.Inf(1))
		for i := range left {
			for w, e := range left[i].ends {
				if d := at.Distance(e[0]); d < least-1e-9 {
					next, least, left[i].way = i, d, w
				}
			}
		}
		out = append(out, left[next])
		at = left[next].to()
		left = slices.Delete(left, next, next+1)
	}
	return out
}

// choose gives every stop the way that is best for the order as it is, by
// dynamic programming.
func choose(from geometry.Point, tour []stop) {
	if len(tour) == 0 {
		return
	}
	came := make([][]int, len(tour))
	var cost []Length
	for i, s := range tour {
		now := make([]Length, len(s.ends))
		came[i] = make([]int, len(s.ends))
		for w, e := range s.ends {
			if i == 0 {
				now[w] = from.Distance(e[0])
				continue
			}
			now[w] = Length(math.Inf(1))
			for v, before := range tour[i-1].ends {
				if c := cost[v] + before[1].Distance(e[0]); c < now[w]-1e-9 {
					now[w], came[i][w] = c, v
				}
			}
		}
		cost = now
	}
	w := 0
	for v := range cost {
		if cost[v] < cost[w]-1e-9 {
			w = v
		}
	}
	for i := len(tour) - 1; i >= 0; i-- {
		tour[i].way = w
		w = came[i][w]
	}
}

// turnAbout turns stretches of the order about where that makes the way
// shorter: within a stretch every stop is then done backward, which changes
// nothing but the two ends.
func turnAbout(from geometry.Point, tour []stop) {
	start := func(i int) geometry.Point { // where the tool is before stop i
		if i == 0 {
			return from
		}
		return tour[i-1].to()
	}
	for again := true; again; {
		again = false
		for i := range tour {
			for j := i; j < len(tour); j++ {
				now, then := start(i).Distance(tour[i].from()), start(i).Distance(tour[j].to())
				if j+1 < len(tour) {
					now += tour[j].to().Distance(tour[j+1].from())
					then += tour[i].from().Distance(tour[j+1].from())
				}
				if then < now-gain {
					slices.Reverse(tour[i : j+1])
					for k := i; k <= j; k++ {
						tour[k] = tour[k].backward()
					}
					again = true
				}
			}
		}
	}
}

// elsewhere moves stretches of up to three stops to where they lengthen the way
// least, each once.
func elsewhere(from geometry.Point, tour []stop) []stop {
	for n := 1; n <= 3; n++ {
		for i := 0; i+n <= len(tour); i++ {
			rest := slices.Concat(tour[:i], tour[i+n:])
			head, tail := tour[i], tour[i+n-1]
			// link returns what it costs to have a stretch before a stop of the rest.
			link := func(j int) Length {
				at := from
				if j > 0 {
					at = rest[j-1].to()
				}
				cost := at.Distance(head.from())
				if j < len(rest) {
					cost += tail.to().Distance(rest[j].from()) - at.Distance(rest[j].from())
				}
				return cost
			}
			best, least := i, link(i)-gain
			for j := range len(rest) + 1 {
				if cost := link(j); cost < least {
					best, least = j, cost
				}
			}
			if best != i {
				tour = slices.Concat(rest[:best], tour[i:i+n], rest[best:])
			}
		}
	}
	return tour
}
