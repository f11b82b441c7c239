package fit

import (
	"forel/geometry/slipcase"
)

// knowledge is what is known of the lengths that the errors act on.
type knowledge struct {
	job   slipcase.Job // its uncertainties, books and limits count
	thick Length       // board or card
	card  bool
}

// errors gives every error there is with its effect on each spot, those that do
// nothing left out.
func (k knowledge) errors(a assembly, slopes [][]float64) []Error {
	out := k.ofBook(a)
	out = append(out, k.ofHand(a)...)
	out = append(out, k.ofMaterial(a, slopes)...)
	kept := out[:0]
	for _, e := range out {
		for _, f := range e.Effects {
			if f != (Effect{}) {
				kept = append(kept, e)
				break
			}
		}
	}
	return kept
}

// each makes an error of what it does to each spot.
func each(a assembly, name, key string, plusMinus Length, effect func(spot) Effect) Error {
	e := Error{Name: name, Key: key, PlusMinus: plusMinus}
	for _, s := range a.spots {
		e.Effects = append(e.Effects, effect(s))
	}
	return e
}

// rooms gives the number of compartments.
func (k knowledge) rooms() int {
	if k.card {
		return 1
	}
	return k.job.Dividers() + 1
}

// ofBook: measuring, and swelling when damp.
func (k knowledge) ofBook(a assembly) []Error {
	u, books := k.job.Uncertainty, k.job.Books
	if k.card {
		books = books[:1]
	}
	var heights, depths, thick []truth
	var high, deep Length
	for _, b := range books {
		heights, depths = append(heights, trueLargest(b.Height, u)), append(depths, trueLargest(b.Width, u))
		thick = append(thick, thickest(b, u))
		high, deep = max(high, b.Height.Largest()), max(deep, b.Width.Largest())
	}
	measuring := each(a, "measuring the book", "uncertainty.measuring", u.Measuring, func(s spot) Effect {
		switch {
		case s.dimension == Height:
			return over(heights...).opposed(high, -1)
		case s.dimension == Depth:
			return over(depths...).opposed(deep, -1)
		case k.rooms() > 1:
			return thick[s.room].opposed(books[s.room].Thick(), -1)
		}
		var sum Effect
		for i, t := range thick {
			sum = sum.plus(t.opposed(books[i].Thick(), -1))
		}
		return sum
	})
	if len(books) > 1 {
		measuring.Name = "measuring the volumes"
	}
	damp := each(a, "swelling when damp", "fit.swell", 0, func(s spot) Effect {
		l := k.swell(s)
		return Effect{Mean: -l, Low: -l} // it is reckoned with in full
	})
	return []Error{measuring, damp}
}

// swell gives how much thicker what stands at a spot grows when damp. Paper takes
// up water between its fibres and grows across its sheet first: the thickness of a
// book more than its height and width, which are left out (common practice, no
// source).
func (k knowledge) swell(s spot) (sum Length) {
	books := k.job.Books
	if k.card {
		books = books[:1]
	}
	for i, b := range books {
		if s.dimension == Thickness && (k.rooms() == 1 || i == s.room) {
			sum += b.Thick() * Length(k.job.Limits.Swell/100)
		}
	}
	return sum
}

// ofHand: cutting, putting together, and how true the pieces are.
func (k knowledge) ofHand(a assembly) []Error {
	u, last := k.job.Uncertainty, k.rooms()-1
	together := u.Settings != slipcase.EachBySelf || k.card
	// The pieces whose smallest counts: sides and spine wall in height, sides in
	// depth, the walls in thickness. The spine wall is not at the mouth.
	alike := func(s spot) int {
		switch {
		case k.card:
			return 1
		case s.dimension == Depth || s.place != Body:
			return 2
		}
		return 3
	}
	ruled := func(s spot) bool { return s.dimension == Thickness && s.room < last }
	cutting := each(a, "cutting", "uncertainty.cutting", u.Cutting, func(s spot) Effect {
		switch {
		case ruled(s):
			return Effect{} // between lines ruled on the walls
		case together:
			return sym(u.Cutting, 1)
		}
		return least(alike(s), u.Cutting)
	})
	repeat := each(a, "from piece to piece at one setting", "uncertainty.repeat", u.Repeat, func(s spot) Effect {
		if ruled(s) || !together || k.card {
			return Effect{}
		}
		return least(alike(s), u.Repeat)
	})
	placing := each(a, "placing the walls", "uncertainty.placing", u.Placing, func(s spot) Effect {
		switch {
		case s.dimension == Height:
			return sym(u.Placing, 1).times(2)
		case s.dimension == Depth:
			return sym(u.Placing, 1)
		case k.card:
			return sym(u.Placing, 1).times(2)
		}
		dividers := 2
		if s.room == 0 {
			dividers--
		}
		if s.room == last {
			dividers--
		}
		return sym(u.Placing, 1).times(dividers)
	})
	if last > 0 {
		placing.Name = "placing walls and dividers"
	}
	if k.card {
		cutting.Name, placing.Name = "marking and scoring", "folding on the score"
	}
	square := each(a, "squareness", "uncertainty.squareness", u.Squareness, func(s spot) Effect {
		q := u.Squareness
		switch {
		case ruled(s):
			return Effect{}
		case s.dimension == Depth:
			return pinches(q) // the book touches the spine wall at one end only
		}
		both := sym(q, 0.5) // two edges that run together or apart from their middle
		if s.dimension == Height {
			both = both.times(2)
		}
		if s.place != Body {
			return both
		}
		p := pinches(2 * both.SD) // at one end or the other
		p.Low = both.Low
		return p
	})
	warp := each(a, "warp of the sides", "uncertainty.warp", u.Warp, func(s spot) Effect {
		if s.dimension != Thickness {
			return Effect{}
		}
		sides := 0
		if s.room == 0 {
			sides++
		}
		if s.room == last {
			sides++
		}
		return bows(u.Warp).times(sides)
	})
	return []Error{cutting, repeat, placing, square, warp}
}

// ofMaterial: thickness of board, lining and coverings, by the sensitivities of
// the assembly.
func (k knowledge) ofMaterial(a assembly, slopes [][]float64) []Error {
	u := k.job.Uncertainty
	thickness := func(name, key string, index int, low, high Length, flat bool) Error {
		e := Error{Name: name, Key: key}
		if flat {
			e.Low, e.High = k.thick+low, k.thick+high
		} else {
			e.PlusMinus = high
		}
		for s := range a.spots {
			c := Length(slopes[s][index])
			f := Effect{Low: min(c*low, c*high), High: max(c*low, c*high), Flat: flat && c != 0}
			f.Mean = (f.Low + f.High) / 2
			if flat {
				f.SD = (f.High - f.Low) / Length(root12)
			} else {
				f.SD = (f.High - f.Low) / 4
			}
			e.Effects = append(e.Effects, f)
		}
		return e
	}
	low, high, byName := boardRange(k.thick, u, k.card)
	if k.card {
		return []Error{thickness("the card's thickness", "uncertainty.board", 3, low-k.thick, high-k.thick, byName)}
	}
	return []Error{
		thickness("the board's thickness", "uncertainty.board", boardThick, low-k.thick, high-k.thick, byName),
		thickness("the lining's thickness", "uncertainty.lining", liningThick, -u.Lining, u.Lining, false),
		thickness("the cloth's thickness", "uncertainty.cloth", clothThick, -u.Cloth, u.Cloth, false),
		thickness("the "+k.job.PaperName()+"'s thickness", "uncertainty.side_paper", paperThick, -u.SidePaper, u.SidePaper, false),
	}
}

// root12 is the root of 12: a flat range has its width over this as deviation.
const root12 = 3.4641016151377544
