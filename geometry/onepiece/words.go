package onepiece

import (
	"forel/geometry/plan"
	"forel/geometry/stage"
)

// words is what differs in what a maker is told of the two kinds of card (common
// practice, no source).
type words struct {
	name    string      // "card"
	folder  string      // the tool for folds
	score   string      // what is done to a fold, as an order
	scoring string      // while it is done
	scored  string      // when it is done
	tried   string      // the same of a strip for a try
	gently  string      // how the caliper is held
	strip   string      // the strip for a try, a sentence without its end
	short   string      // all folds, likewise
	folds   string      // all folds, in full
	slowly  string      // how it is folded
	whole   string      // a good fold
	mended  []stage.Say // bad folds
}

// words returns the words for the card.
func (c Card) words() words {
	if c.Kind == Corrugated {
		return words{
			name:   c.name(),
			folder: "bone folder or creasing wheel with a blunt edge about as broad as the board is thick",
			score:  "crush", scoring: "crushing", scored: "crushed", tried: "crushed along its flutes",
			gently: "; the jaws only just touch it, since pressed it measures thinner",
			strip:  "Crush a strip of the same board along its flutes",
			short:  "Crush every fold from the inside, never cut it",
			folds:  "Crush every fold from the inside along a straightedge, with a bone folder or a creasing wheel, in several passes, until the flutes lie flat and the line is about as broad as the board is thick. Never cut a fold, not even half through: a cut liner tears. The folds beside the spine run along the flutes and like to slip into a hollow between two of them: crush these twice, with the straightedge held firm.",
			slowly: "Fold slowly, a straightedge held along the crushed line, so that the board bends there and nowhere else. ",
			whole:  "The outer liner has not split along a fold, and each fold lies on its line.",
			mended: []stage.Say{
				plan.Say("A liner splits along a fold: it was cut, or crushed with too sharp a tool. Glue a strip of paper over it, and crush the next blank broader."),
				plan.Say("A spine fold lies beside its line: it slipped into a hollow between two flutes. Measure the room inside. Where there is room enough, leave it; else crush a new blank, twice along the spine."),
			},
		}
	}
	return words{
		name:   c.name(),
		folder: "bone folder or another blunt point for scoring",
		score:  "score", scoring: "scoring", scored: "scored", tried: "scored",
		strip: "Score a strip of the same card",
		short: "Score every fold",
		folds: "Score every fold with a folder along a straightedge.",
		whole: "The card has not cracked along a fold.",
		mended: []stage.Say{
			plan.Say("A fold cracks: it runs across the grain, or its score is too shallow. Score deeper, the arrow along the grain of the card."),
		},
	}
}
