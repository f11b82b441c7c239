package slipcase

import (
	"fmt"
	"math"
	"strings"

	"forel/geometry"
)

// looseBy is how much room beyond its clearance makes a volume stand loose.
const looseBy Length = 3

// suspects lists what is possible but more often a slip.
func (j Job) suspects() Problems {
	var ps Problems
	add := func(key, wrong, right string) { ps = append(ps, Problem{key, wrong, right}) }
	all := j.contents()
	for i, b := range j.Books {
		h, w, t := b.Height.Largest(), b.Width.Largest(), b.Thick()
		if w > h {
			add(BookKey(i, "width"), "greater than the height", "right for an oblong book; otherwise the two are swapped: height runs head to tail, width spine to fore-edge")
		}
		if t > w {
			add(BookKey(i, "thickness"), "greater than the width", "check that thickness runs through both covers and width from spine to fore-edge")
		}
		for _, f := range BookFields {
			r := *f.At(&b)
			if d := r.Spread(); d > max(3, r.Largest()/20) {
				add(BookKey(i, f.Key), "the readings differ by "+Show(d, j.Unit, 0), "measure again; the largest, "+Show(r.Largest(), j.Unit, 0)+", is used")
			}
		}
		if d := b.Taper(); d > looseBy {
			add(BookKey(i, "thickness_at_fore_edge"), "the book is thicker at one edge by "+Show(d, j.Unit, 0),
				"the case takes the thicker edge; the thin one has "+Show(d+j.Clearance.Thickness, j.Unit, 0)+" of play")
		}
		if low, shallow := all.Height-h, all.Width-w; low > looseBy || shallow > looseBy {
			var by []string
			if low > looseBy {
				by = append(by, Show(low, j.Unit, 0)+" lower")
			}
			if shallow > looseBy {
				by = append(by, Show(shallow, j.Unit, 0)+" shallower")
			}
			add(BookKey(i, "height"), fmt.Sprintf("volume %d stands loose: %s than the largest", i+1, strings.Join(by, " and ")),
				"pad its place, or make it a case of its own")
		}
	}
	if j.Compartments == EachItsOwn && len(j.Books) == 1 {
		add("compartments", "one book needs no divider", "add the other volumes, each a [[book]], or leave it out")
	}
	if name, ok := nominal(j.Board.Thickness); ok {
		add("board.thickness", "exactly "+name+" in, a size boards are sold by", "measure the board with a caliper: one sold by that name may be a quarter of a millimetre off")
	}
	if out := j.Outside().Height; j.Covering == ClothAndPaper && 2*j.Cloth.Overlap > out {
		add("cloth.overlap", "head and tail cloth overlap on the sides of so low a case", "at most "+Show(out/2, j.Unit, -1)+" keeps them apart")
	}
	return ps
}

// nominal tells whether a thickness is exactly a fraction of an inch that
// boards are sold by: a whole number of 32nds or 64ths.
func nominal(l Length) (name string, ok bool) {
	n := float64(l/geometry.Inch) * 64
	if math.Abs(n-math.Round(n)) > 1e-6 {
		return "", false
	}
	num, den := int(math.Round(n)), 64
	for num%2 == 0 && den > 1 {
		num, den = num/2, den/2
	}
	return fmt.Sprintf("%d/%d", num, den), true
}
