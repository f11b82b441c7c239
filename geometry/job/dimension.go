package job

import "fmt"

// Dimension is one dimension of a book as a setting of its readings.
type Dimension struct {
	Key      string // within its [[book]]
	Name     string // in a sentence: "the width of the book"
	What     string // what it is, for messages
	Min, Max Length
	At       func(*Book) *Readings
	Optional bool
}

// Dimensions lists the dimensions of a book with their limits.
var Dimensions = []Dimension{height, width, thickness, foreEdge}

var (
	height    = Dimension{"height", "height", "the book from head to tail", 40, 700, func(b *Book) *Readings { return &b.Height }, false}
	width     = Dimension{"width", "width", "the book from spine to fore-edge", 20, 700, func(b *Book) *Readings { return &b.Width }, false}
	thickness = Dimension{"thickness", "thickness", "the book's thickness", 1, 300, func(b *Book) *Readings { return &b.Thickness }, false}
	foreEdge  = Dimension{"thickness_at_fore_edge", "thickness at the fore-edge", "the book's thickness at the fore-edge", 1, 300,
		func(b *Book) *Readings { return &b.ForeEdge }, true}
)

// MostBooks is how many volumes one case takes.
const MostBooks = 12

// CheckRanges holds the books and each setting by itself against its limits.
func (c Common) CheckRanges(settings Settings) Problems {
	var ps Problems
	switch {
	case len(c.Books) == 0:
		ps = append(ps, Problem{Key: "book", Reason: "no book", Fix: "add a [[book]] with height, width and thickness"})
	case len(c.Books) > MostBooks:
		ps = append(ps, Problem{Key: "book", Reason: fmt.Sprintf("more than %d books", MostBooks), Fix: "make two cases"})
	}
	for i, b := range c.Books {
		for _, d := range Dimensions {
			key, readings := BookKey(i, d.Key), *d.At(&b)
			if len(readings) == 0 && !d.Optional {
				ps = append(ps, Problem{Key: key, Reason: "missing", Fix: "measure " + d.What})
			}
			for _, l := range readings {
				if p, ok := CheckRange(key, d.What, l, d.Min, d.Max, c.Unit, b.Far(d)); !ok {
					ps = append(ps, p)
				}
			}
		}
	}
	for _, s := range settings {
		if p, ok := s.Check(c.Unit); !ok {
			ps = append(ps, p)
		}
	}
	return ps
}

// farApart is how far two readings of one dimension may lie apart, in millimetres,
// before one is taken for a slip (common practice, no source).
const farApart = 2

// swapped tells whether two numbers differ by two digits beside each other that have
// changed places.
func swapped(a, b string) bool {
	for i := 0; len(a) == len(b) && i+1 < len(a); i++ {
		if a[:i]+a[i+1:i+2]+a[i:i+1]+a[i+2:] == b {
			return true
		}
	}
	return false
}

// Suspects lists what of the books is possible but more often a slip.
func (c Common) Suspects() Problems {
	var ps Problems
	for i, b := range c.Books {
		add := func(d Dimension, reason, fix string) {
			ps = append(ps, Problem{Key: BookKey(i, d.Key), Of: c.dimension(d, i), Reason: reason, Fix: fix})
		}
		h, w, t := b.Height.Largest(), b.Width.Largest(), b.Thick()
		if w > h {
			add(width, "greater than the height", "right for an oblong book; otherwise the two are swapped: height runs head to tail, width spine to fore-edge")
		}
		if t > w {
			add(thickness, "greater than the width", "check that thickness runs through both covers and width from spine to fore-edge")
		}
		for _, d := range Dimensions {
			r := *d.At(&b)
			if r.Spread() <= Round(c.Unit, farApart, 3./32)+hair {
				continue
			}
			low, high := Show(r.Largest()-r.Spread(), c.Unit, 0), Show(r.Largest(), c.Unit, 0)
			what := "likely a slip"
			if swapped(low, high) {
				what = "likely two digits swapped"
			}
			add(d, "the readings run from "+low+" to "+high+", "+what, "measure again; "+high+", the largest, is used")
		}
	}
	return ps
}

// Taper says of the nth book, from 0, that it is thicker at one edge than at the
// other: the case has to take the thicker edge.
func (c Common) Taper(n int) Problem {
	d := c.Books[n].Taper()
	return Problem{Key: BookKey(n, foreEdge.Key), Of: c.dimension(foreEdge, n), Reason: "the book is thicker at one edge by " + Show(d, c.Unit, 0),
		Fix: "the case takes the thicker edge; the thin one has " + Show(d+c.Clearance.Thickness, c.Unit, 0) + " of play"}
}

// dimension names a dimension of the nth book in a sentence.
func (c Common) dimension(d Dimension, n int) string { return "the " + d.Name + " of " + c.Whose(n) }
