package slipcase

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// leastBoard is how thick a board a case needs for the weight that it carries
// (common practice, no source). Heavier still is more than a case with butted
// walls should carry.
var leastBoard = []plan.LeastThickness{{Most: 500, Least: 1.5}, {Most: 1500, Least: 2}, {Most: 3000, Least: 2.5}, {Most: mostInBoard, Least: 3}}

// mostInBoard is the most that a case with butted walls should carry, in grams
// (common practice, no source).
const mostInBoard = 6000

// load returns what carries the books.
func (j Job) load() plan.Load {
	in := j.Cavity()
	l := plan.Load{On: "tail wall", Seam: 2*in.Width + in.Thickness, Holds: "that wall to the sides and the spine wall",
		Material: geometry.Board, Has: j.Board.Thickness, Needs: leastBoard, Most: mostInBoard,
		TooHeavy: "is more than butted walls should carry; make two cases, or laminate the boards and line the seams with cloth"}
	for _, b := range j.Books {
		l.Weights = append(l.Weights, b.Weight)
	}
	return l
}
