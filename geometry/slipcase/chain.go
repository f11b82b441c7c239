package slipcase

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/job"
	"forel/geometry/plan"
)

// The places where room must be left: the body, and the mouth, where coverings are
// turned in.
const (
	InBody  = "body"
	AtMouth = "mouth"
)

// whereIs says the places in words.
var whereIs = map[string]string{InBody: "in the body", AtMouth: "at the mouth"}

// spot is a gap of the chain: which, and in which compartment, from 0.
type spot struct {
	dimension, place string
	room             int
}

// The first links of the chain; the books' and the walls' follow.
const (
	sideHeight = iota
	sideDepth
	boardThick
	liningThick
	clothThick
	paperThick
	bookHeight
	bookDepth
	volumes // thickness of each volume; then the wall's width, or each compartment as ruled
)

// Chain returns how the room in the case comes about. What was measured of a carcass that
// stands goes before what was cut for it, and no clearance can be set any more.
func (j Job) Chain() plan.Chain {
	s := j.standing()
	spots := s.spots()
	c := plan.Chain{
		Unit: j.Unit,
		Dimensions: []plan.Dimension{
			{Name: plan.Height, Key: "clearance.height", Clearance: s.Clearance.Height, Tight: "too tight"},
			{Name: plan.Depth, Key: "clearance.width", Clearance: s.Clearance.Width, Tight: "stands out"},
			{Name: plan.Thickness, Key: "clearance.thickness", Clearance: s.Clearance.Thickness, Tight: "too tight"},
		},
		Gaps:     j.gaps(spots),
		Links:    s.links(),
		Left:     s.left(spots),
		Off:      j.deviations(spots),
		Mends:    j.mends(),
		Remedies: j.remedies(), Early: "before it is covered", Open: InBody,
		With: func(changes []job.Change) plan.Chain {
			k := j
			k.Settings().Apply(changes)
			return k.Chain()
		},
		Limits: j.limits(),
	}
	for _, m := range j.measures() {
		c.Made = append(c.Made, m.MadeSize)
	}
	if j.AsBuilt.Measured() {
		for i := range c.Dimensions {
			c.Dimensions[i].Key = ""
		}
	}
	return c
}

// spots lists the places where room must be left, of each dimension and
// compartment from the widest to the tightest. The mouth is left out where it is no
// tighter than the body, as where nothing is turned in.
func (j Job) spots() []spot {
	m := j.Mouth()
	out := []spot{{plan.Height, InBody, 0}}
	if !m.Height.Near(j.Clearance.Height) {
		out = append(out, spot{plan.Height, AtMouth, 0})
	}
	out = append(out, spot{plan.Depth, InBody, 0})
	for i := range j.compartments() {
		out = append(out, spot{plan.Thickness, InBody, i})
		if !j.MouthThickness(i).Near(j.Clearance.Thickness) {
			out = append(out, spot{plan.Thickness, AtMouth, i})
		}
	}
	return out
}

// gaps returns the gaps at the spots with what is asked of them.
func (j Job) gaps(spots []spot) []plan.Gap {
	out := make([]plan.Gap, len(spots))
	for i, s := range spots {
		g := plan.Gap{Dimension: s.dimension, Place: s.place, Where: whereIs[s.place], Tight: j.Limits.Tight,
			Decides: i+1 == len(spots) || spots[i+1].place == InBody, Swell: j.swell(s)}
		switch {
		case s.dimension == plan.Depth:
			g.Where, g.Tight = "", 0 // a book that is too deep does not stick; its spine stands out
		case s.dimension == plan.Thickness && j.Dividers() > 0:
			g.Volume = j.Whose(s.room)
		}
		switch { // a book is held by the tightest place
		case g.Decides && s.dimension == plan.Height:
			g.Loose = j.Limits.LooseHeight
		case g.Decides && s.dimension == plan.Thickness:
			g.Loose = j.Limits.LooseBeside(j.thickAt(s.room))
		}
		out[i] = g
	}
	return out
}

// booksIn returns the books in a compartment, from 0.
func (j Job) booksIn(room int) []job.Book {
	if j.Dividers() == 0 {
		return j.Books
	}
	return j.Books[room : room+1]
}

// thickAt returns how thick the books in a compartment, from 0, are together.
func (j Job) thickAt(room int) (sum Length) {
	for _, b := range j.booksIn(room) {
		sum += b.Thick()
	}
	return sum
}

// limits says what is too tight and too loose; of several compartments, beside the
// thinnest volume.
func (j Job) limits() plan.Remark {
	thick := j.thickAt(0)
	for i := range j.compartments() {
		thick = min(thick, j.thickAt(i))
	}
	return plan.Limits(j.Common, thick, whereIs[AtMouth])
}

// swell returns how much thicker what stands at a spot grows when damp.
func (j Job) swell(s spot) (sum Length) {
	if s.dimension == plan.Thickness {
		for _, b := range j.booksIn(s.room) {
			sum += j.Limits.Grows(b)
		}
	}
	return sum
}

// links returns the lengths that the room comes from, of a job as it stands.
func (j Job) links() []plan.Link {
	u := j.Uncertainty
	outside := func(cut, measured, dimension string) string {
		if len(j.built(dimension)) > 0 {
			return "carcass, " + measured + ", outside as built"
		}
		return cut
	}
	in, out := j.Contents(), j.Outside()
	tallest, deepest := j.Whose(0), j.Whose(0)
	if len(j.Books) > 1 {
		tallest, deepest = "tallest volume", "deepest volume"
	}
	all := []plan.Link{
		sideHeight:  {Name: outside("side, head to tail", "head to tail", plan.Height), Length: out.Height},
		sideDepth:   {Name: outside("side, spine to mouth", "spine to mouth", plan.Depth), Length: out.Width},
		boardThick:  plan.BoardLink("board", "board.known", j.Board.Thickness, u, j.Board.Known),
		liningThick: plan.MaterialLink("lining", "uncertainty.lining", j.Lining.Thickness, u.Lining),
		clothThick:  plan.MaterialLink("cloth", "uncertainty.cloth", j.Cloth.Thickness, u.Cloth),
		paperThick:  plan.MaterialLink(geometry.Paper.Words(), "uncertainty.side_paper", j.SidePaper.Thickness, u.SidePaper),
		bookHeight:  {Name: tallest + ", head to tail", Length: in.Height, Book: true},
		bookDepth:   {Name: deepest + ", spine to fore-edge", Length: in.Width, Book: true},
	}
	for i, b := range j.Books {
		all = append(all, plan.Link{Name: j.Whose(i) + ", thickness", Length: b.Thick(), Book: true})
	}
	built := j.standsAt(spot{dimension: plan.Thickness})
	switch {
	case j.Dividers() == 0 && built:
		return append(all, plan.Link{Name: outside("", "side to side", plan.Thickness), Length: out.Thickness})
	case j.Dividers() == 0:
		return append(all, plan.Link{Name: "walls, side to side", Length: j.Between().Thickness})
	}
	for i, b := range j.Books {
		l := plan.Link{Name: fmt.Sprintf("compartment %d as ruled, to the middle of its dividers", i+1), Length: b.Thick() + j.Clearance.Thickness + j.beside(i)}
		if built {
			l.Name = fmt.Sprintf("compartment %d, its share of the carcass outside as built", i+1)
			l.Length += j.sharedEdge()
		}
		all = append(all, l)
	}
	return all
}

// sharedEdge returns a compartment's share of both sides of the case.
func (j Job) sharedEdge() Length { return 2 * j.Edge() / Length(j.compartments()) }

// left returns the room at the spots, and then the measures, as a function of the links. A finished case
// is a job too, with true lengths in place of the measured ones, and with the
// clearance that makes it draw the pieces that were cut, or the carcass that was
// measured. What that has more across than planned is shared out to the compartments.
func (j Job) left(spots []spot) func([]Length) []Length {
	built := j.standsAt(spot{dimension: plan.Thickness})
	return func(v []Length) []Length {
		r := j // as it comes out
		r.Board.Thickness, r.Lining.Thickness, r.Cloth.Thickness, r.SidePaper.Thickness = v[boardThick], v[liningThick], v[clothThick], v[paperThick]
		r.Books = make([]job.Book, len(j.Books))
		for i := range r.Books {
			r.Books[i] = job.Book{Height: job.Readings{v[bookHeight]}, Width: job.Readings{v[bookDepth]}, Thickness: job.Readings{v[volumes+i]}}
		}
		walls := v[volumes+len(j.Books):]
		r.Clearance.Height += v[sideHeight] - r.Outside().Height
		r.Clearance.Width += v[sideDepth] - r.Outside().Width
		switch {
		case j.Dividers() > 0:
		case built:
			r.Clearance.Thickness += walls[0] - r.Outside().Thickness
		default:
			r.Clearance.Thickness += walls[0] - r.Between().Thickness
		}
		m := r.Mouth()
		out := make([]Length, len(spots))
		for i, s := range spots {
			if s.dimension == plan.Thickness && j.Dividers() > 0 {
				r.Clearance.Thickness = walls[s.room] - r.beside(s.room) - v[volumes+s.room]
				if built {
					r.Clearance.Thickness -= r.sharedEdge()
				}
			}
			switch {
			case s.dimension == plan.Depth:
				out[i] = r.Clearance.Width
			case s.dimension == plan.Height && s.place == InBody:
				out[i] = r.Clearance.Height
			case s.dimension == plan.Height:
				out[i] = m.Height
			case s.place == InBody:
				out[i] = r.Clearance.Thickness
			default:
				out[i] = r.MouthThickness(s.room)
			}
		}
		for _, m := range j.measures() {
			out = append(out, m.size(r, spots, out[:len(spots)], walls, built))
		}
		return out
	}
}

// beside returns what of a compartment's ruled length is not room: half of each
// divider beside it.
func (j Job) beside(room int) Length {
	return j.dividerThickness() / 2 * Length(2-j.sidesOf(room))
}
