package handout

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/slipcase"
	"forel/render"
	"forel/render/document"
)

// cutsOf tells whether any piece is cut of a material.
func (b *book) cutsOf(m geometry.Material) bool {
	for _, p := range b.plan.Pieces {
		if p.Material == m {
			return true
		}
	}
	return false
}

// checkWords gives what to check of the finished case, and what to do when a
// check fails (common practice, no source).
func (b *book) checkWords() (good, bad []string) {
	if b.card != nil {
		return b.cardChecks()
	}
	mm, m, j := b.Round.Pretty, b.plan.Mouth, b.boards.Job
	what, goes, spine, each := "The book goes", "It does not fall out when the case is tipped, but comes with a tap.", "Its spine lies flush with the mouth, or a hair within.", ""
	sticks := "The book sticks"
	if len(j.Books) > 1 {
		what, goes, spine = "The books go", "They do not fall out when the case is tipped, but come with a tap.", "The spine of the deepest lies flush with the mouth, or a hair within."
		sticks = "A book sticks"
		if j.Dividers() > 0 {
			each = " for each"
		}
	}
	shows, lifts := "No board shows, no glue shows, no edge is loose.", "Cloth or paper lifts"
	switch j.Covering {
	case slipcase.SidesOnly:
		shows, lifts = "The papers lie evenly, no glue shows, no edge is loose.", "Paper lifts"
	case slipcase.AllPaper:
		lifts = "Paper lifts"
	case slipcase.AllCloth:
		lifts = "Cloth lifts"
	}
	good = []string{
		fmt.Sprintf("%s in without force: at the mouth, the tightest place, there is %s of play in height and %s in thickness%s. %s", what, mm(m.Height), mm(m.Thickness), each, goes),
		spine,
		"Corners are square: both diagonals of a side are the same length.",
		shows,
		"Inside, no tab or turn-in stands up where the book would catch it.",
	}
	bad = []string{
		sticks + " all the way: the case is too small. Measure the room inside and compare it with the worksheet: a wrong reading, a thicker board than measured, or a scaled print. The boards must be cut again.",
		"It sticks only at the mouth: covering is turned in there. Let it dry fully, rub the turn-ins down hard with a folder, pare a thick corner.",
		"It rattles: line the inside with one more paper, on one side only at first.",
		"A side is hollow: it dried without a weight. Damp the hollow face lightly and dry it again between boards.",
		lifts + ": it had too little adhesive at the edge. Lift it, paste or glue it again, rub it down, weight it.",
	}
	return good, bad
}

// cardChecks gives the same of a case of card.
func (b *book) cardChecks() (good, bad []string) {
	mm, m := b.Round.Pretty, b.plan.Mouth
	good = []string{
		fmt.Sprintf("The book goes in without force: it has %s of play in height and %s in thickness. It does not fall out when the case is tipped, but comes with a tap.", mm(m.Height), mm(m.Thickness)),
		"Its spine lies flush with the mouth, or a hair within.",
		"Corners are square: both diagonals of a side are the same length.",
		"At head and tail the spine flap and the outer flap lie flat and meet along their slanting line; no glue shows, no edge is loose.",
		"The card has not cracked along a fold.",
		"Inside, the inner flaps lie flat: no edge stands up where the book would catch it.",
	}
	bad = []string{
		"The book sticks all the way: the case is too small. Measure the room inside and compare it with the worksheet: a wrong reading, thicker card than measured, folds that take more than was allowed for them (card.bend in the job), or a scaled print. Mend the job, print again, score and cut a new blank.",
		"It sticks only at the mouth: a side leans in, or an inner flap stands up at its mouth edge. Rub the fold down with a folder; glue the flap again and press it flat.",
		"It rattles: line one side inside with paper.",
		"A side bulges: a flap is too long or was pushed in. Ease the flap while the glue is fresh.",
		"A flap lifts: it had too little glue at its end. Lift it, glue it again, weight it.",
		"A fold cracks: it runs across the grain, or its score is too shallow. Score deeper, the arrow along the grain of the card.",
	}
	return good, bad
}

// checks returns what to check, each with a box to tick, and what to do when a check
// fails.
func (b *book) checks() []document.Block {
	good, bad := b.checkWords()
	head := b.Heading("Check the finished case").After(blockGap)
	head.Bookmark = "Checks"
	blocks := []document.Block{head}
	for _, t := range good {
		blocks = append(blocks, document.Block{Stays: true, Draw: func(box geometry.Box) Length {
			document.Tick(b, geometry.Pt(box.Min.X, box.Min.Y+0.7+tick), tick)
			box.Min.X += 6
			return document.Paragraph(b, box, box.Min.Y, t, render.BodySize, false) + 1.4
		}})
	}
	return append(blocks, b.Points("When a check fails", bad)...)
}
