// Package onepiece works out a slipcase that is cut, scored and folded from a
// single piece of card or corrugated board, and proves the blank by folding it
// up.
//
// # The blank
//
// It is drawn with the inside of the case up, head at the top: left of the
// template is the left side of the case for someone looking into the mouth.
//
//	 inner flap | spine flap \/ outer flap        head
//	------------+-----------+-------------
//	            |           |
//	 left side  |   spine   |  right side
//	            |           |
//	------------+-----------+-------------
//	 inner flap | spine flap /\ outer flap        tail
//
// Across lie the left side, the spine and the right side, with a score between
// each two. Past head and tail, each carries a flap as long as the book is
// thick. A slit along the left spine score parts the inner flap from the spine
// flap; a mitre that opens from the end of the right spine score parts the
// spine flap from the outer flap. Those six flaps are all there are; the mouth
// has none and stays open.
//
// # Which flap lies where
//
// The inner flap is whole: it is the inside of the head (or tail), smooth
// and without an edge that a book could catch on. On it lie the spine flap and
// the outer flap, side by side in one layer, meeting in the mitre. So head and tail
// are two layers everywhere, flat inside and out, and the case stands level on
// its tail. The outer flap's end shows along the left side, the mitre across the head.
//
// Order of folding: the sides up from the spine; both inner flaps; then, pasted
// on their inside, both spine flaps; last, pasted too, both outer flaps. (Which
// flap goes where is common practice in folded cases and cartons, no source: what
// faces the contents is one smooth flap, what is outermost is folded last.)
//
// # Allowance for the thickness of the card
//
// Scores are drawn where the layer of the card lies whose length folding
// leaves as it is. How deep it lies is Card.Bend, a fraction k of the thickness c
// measured from the inside face. A panel then needs k*c more than its inside
// measure at each of its folds, whatever side it is scored on:
//
//	side, spine score to mouth   W + cW + k*c
//	spine, between its scores    T + cT + 2*k*c
//	left side, between scores    H + cH + 2*k*c
//	spine and right side         H + cH + 2*k*c + 2*c
//
// The last is longer because its flaps lie on the inner flap, one thickness
// further out at head and tail each: the scores are stepped by c there.
//
// k = 1/2, the default, is the rule of half a thickness at each fold, one whole
// thickness for a panel between two (common practice, no source). A cut halfway
// through from the outside, folded away from the cut, bends at the inside face:
// k near 0. A groove cut or crushed from the inside, folded into itself, bends at
// the outer skin: k near 1. (Common practice, no source.) Fold a strip of the
// same card in a trial to find it.
//
// With c = 0 the allowance falls away. With no reliefs either, the blank is the
// height and two thicknesses of the book by two widths and a thickness, with 0.5 cm
// of clearance in height, as published for corrugated board: Cornell University
// Library, Conservation manual guide 11A (1999).
//
// # Corrugated board
//
// A fluted sheet between two liners. Its folds are crushed from the inside with a
// blunt tool and never cut, since a liner that is cut halfway tears. The fold goes
// into the crushed line. There the outer liner keeps its length, and goes round the
// corner in an arc, while the inner one and the flutes give way: were the corner
// sharp outside, k would be 1; with an arc of radius r it is 1 - (2 - π/2)*r/(2*c).
// An arc about the inner corner, r = c, comes to 0.79, one of r = 2c to 0.57. Makers
// of cartons count about half a thickness a fold (from memory; common practice, no
// source). So k = 1/2 stays the default, what a crushed fold can be off is reckoned
// in the fit, and a strip is tried first. Beside the fold the board keeps its
// thickness: steps, flaps and reliefs are the same as of card.
//
// Flutes run from head to tail in sides and spine. The case stands on its tail, and a
// wall bears most with its flutes upright. The blank is one piece, so that settles
// all of them: in inner and outer flaps they run from side to side, in spine flaps
// from spine to mouth. The folds at head and tail lie across the flutes and crease
// cleanly; the two beside the spine lie along them and can slip beside their line.
// (Common practice, no source.)
//
// # Reliefs
//
// So that no flap is pushed into a wall and bulges, Flaps.Relief is left
// wherever one ends near another part, and flaps grow narrower toward their ends
// by Flaps.Taper: see flaps.
package onepiece
