package handout

import "fmt"

// cardSteps gives the steps of a case of card (common practice, no source).
func (b *book) cardSteps(m cardModel) []step {
	mm := b.Round.Pretty
	blank, sides, flaps, done := m.figures()
	j := m.c.Job
	bk := j.Book()
	size := [3]float64{bk.Height.Largest().MM(), bk.Width.Largest().MM(), bk.Thick().MM()}
	return []step{
		{
			title: "Measure the book",
			text: []string{
				"Shut the book and press it lightly. Measure height, width with the round of the spine, and thickness at three places each. Write every reading on the worksheet; the largest counts.",
				"Measure the card with a caliper: several layers together, divided by their number.",
			},
			rows: [][]panel{{m.measures(size, [3]string{"here " + mm(Length(size[0])), "here " + mm(Length(size[1])), "here " + mm(Length(size[2]))})}},
		},
		{
			title: "Print the pattern, score and cut",
			text: []string{
				"Print templates.pdf at actual size, 100 %, and measure its rulers: 100 mm and 4 in. Join its sheets at their circles and prick the corners through onto the inside of the card, the arrow along the grain.",
				"Score a strip of the same card first, fold it and measure it: if an inside measure is off, change card.bend in the job and print again.",
				"Score every fold with a folder along a straightedge. Then cut the outline and the slits, in light strokes, fingers behind the edge of the straightedge.",
			},
			rows: [][]panel{{blank}},
		},
		{
			title: "Fold the sides and the inner flaps",
			text: []string{
				fmt.Sprintf("Fold both sides up from the spine, inside in, and try the book between them: it must lie there with %s of play.", mm(j.Clearance.Thickness)),
				"Fold the inner flaps of the left side in, at head and at tail. They make the smooth inside.",
			},
			rows: [][]panel{sides},
		},
		{
			title: "Glue the spine flaps, then the outer flaps",
			text: []string{
				"Glue the inside of the spine flap and fold it onto the inner flap; press. Glue the inside of the outer flap and fold it down beside it. They meet in a slanting line. Do the same at the tail.",
				"Fill the case with something as thick as the book, wrapped in release paper, and put a weight on it, mouth open, " + dries + ".",
			},
			rows: [][]panel{flaps},
		},
		{
			title: "Try the book",
			text: []string{
				fmt.Sprintf("Slide the book in, spine outward. It has %s of play in height and %s in thickness. If it sticks, look for glue inside; if a flap stands in the way, the case was folded in another order than the figures show.", mm(j.Clearance.Height), mm(j.Clearance.Thickness)),
			},
			rows: [][]panel{{done}},
		},
	}
}
