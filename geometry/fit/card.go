package fit

import (
	"forel/geometry/job"
	"forel/geometry/onepiece"
)

// ofCard gives the assembly of a case of card. What is marked and scored stays;
// the card's thickness and the book are what they are. Nothing is turned in, so
// the mouth is as wide as the body.
func ofCard(j onepiece.Job) assembly {
	s := j.Scored()
	a := assembly{
		spots: []spot{{Height, Body, 0}, {Depth, Body, 0}, {Thickness, Body, 0}},
		names: []string{"from head score to tail score, left side", "from mouth edge to spine score", "between the spine scores", "card",
			"the book, head to tail", "the book, spine to fore-edge", "the book, thickness"},
		book:  func(i int) bool { return i > 3 },
		drawn: []Length{s.Height, s.Width, s.Thickness, j.Card.Thickness, j.Book().Height.Largest(), j.Book().Width.Largest(), j.Book().Thick()},
	}
	a.clear = func(v []Length) []Length {
		r := j // as it comes out
		r.Card.Thickness = v[3]
		r.Books = []job.Book{{Height: job.Readings{v[4]}, Width: job.Readings{v[5]}, Thickness: job.Readings{v[6]}}}
		was := r.Scored()
		return []Length{r.Clearance.Height + v[0] - was.Height, r.Clearance.Width + v[1] - was.Width, r.Clearance.Thickness + v[2] - was.Thickness}
	}
	return a
}
