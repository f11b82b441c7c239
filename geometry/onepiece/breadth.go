package onepiece

import (
	"math"

	"forel/geometry/foldup"
	"forel/geometry/polygon"
)

// sliver is what still counts as rounding, in mm: how broad a strip, how far
// apart two planes.
const sliver = foldup.Sliver

// breadth returns how wide the narrowest straight passage is that a shape fits
// through: the least distance of two parallels that hold it between them, one of
// which lies along an edge of its hull.
func breadth(a polygon.Area) Length {
	at := polygon.Hull(a.Rings[0])
	if len(at) < 3 {
		return 0
	}
	at = append(at, at[0])
	least := Length(math.Inf(1))
	for i := 1; i < len(at); i++ {
		from, edge := at[i-1], at[i].Sub(at[i-1])
		long := at[i].Distance(from)
		if long == 0 {
			continue
		}
		var most Length
		for _, q := range at {
			d := q.Sub(from)
			most = max(most, ((edge.X*d.Y - edge.Y*d.X) / long).Abs())
		}
		least = min(least, most)
	}
	return least
}
