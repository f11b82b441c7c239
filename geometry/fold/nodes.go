package fold

import (
	"math"

	"forel/geometry"
)

// node numbers a place: the square of the grid that it lies in.
type node [2]int64

// nodes are the places of a drawing, none nearer to another than the grid is
// fine.
type nodes map[node]geometry.Point

// at returns the node of a place: that of a place noted before which is as good
// as there, on either side of a border between two squares, or a new one.
func (n nodes) at(p geometry.Point) node {
	own := node{int64(math.Floor(float64(p.X) / grid)), int64(math.Floor(float64(p.Y) / grid))}
	best, near := own, Length(grid)
	for x := own[0] - 1; x <= own[0]+1; x++ {
		for y := own[1] - 1; y <= own[1]+1; y++ {
			if q, ok := n[node{x, y}]; ok && q.Distance(p) < near {
				best, near = node{x, y}, q.Distance(p)
			}
		}
	}
	switch _, taken := n[own]; {
	case near < grid:
		return best
	case !taken:
		n[own] = p
	}
	return own
}
