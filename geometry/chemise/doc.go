// Package chemise works out a chemise: a cover of thin board that a book wears
// inside its slipcase, or by itself.
//
// A flat back, two covers, and by choice walls and flaps at the fore-edge lie
// side by side with a joint between each two. They are covered outside in one
// piece and lined inside. Laid flat, inside up and head away, they stand from
// left to right: front flap, front wall, front cover, spine, back cover, back
// wall, back flap; those that are not there are left out.
//
// Symbols: b, k, l the thickness of board, covering and lining; i = k + l, what
// lies inside a board where a turn-in lies under the lining; P = b + i + k, a
// panel right through; j a joint; x = j - b - 2i, from the end of one board to
// the inner face of the board that stands across it; H', W', T' the book with
// its clearance.
//
// Two boards at a right angle: the one stands past the end of the other, and is
// recessed by 2i, so that what lies on its long edge comes level with the
// other's outer face. The cloth of the joint goes x, then b, then 2i.
//
// Sources: turn-in and hooks, Reliure d'art d'Are, "Fabrication d'une chemise"
// (2018); narrow walls at the fore-edge, E. Diehl, Bookbinding: Its Background
// and Technique (1946), "Chemises"; the mitre of the corners, one board off,
// Bibliocat, "Casing a tray" (2007). Figures without a source are common
// practice, no source.
package chemise
