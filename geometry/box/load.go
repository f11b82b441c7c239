package box

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// leastBoard is how thick the board of a tray must be for the weight that it carries
// when the box stands upright (common practice, no source).
var leastBoard = []plan.LeastThickness{{Most: 1000, Least: 1.5}, {Most: 2500, Least: 2}, {Most: 5000, Least: 2.5}, {Most: mostInBox, Least: 3}}

// mostInBox is the most that a box of glued boards should carry, in grams (common
// practice, no source).
const mostInBox = 8000

// load returns what carries the book when the box stands upright.
func (j Job) load() plan.Load {
	s := j.small()
	return plan.Load{Weights: []float64{j.Book().Weight}, On: "tail wall of the small tray", Seam: s.b + s.d, Holds: "that wall to the base and the fore-edge wall",
		Material: geometry.Board, Has: j.Board, Needs: leastBoard, Most: mostInBox,
		TooHeavy: "is more than glued walls should carry; keep the box lying, or laminate the boards"}
}
