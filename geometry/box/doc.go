// Package box works out a drop-spine box: two trays that close over each other,
// on a case of three boards.
//
// Each tray has a base and three walls and is open at the spine. The small tray
// holds the book and stands on the back board of the case; the large tray, on the
// front board, is turned over it. Laid open, inside up and head away, the large
// tray is at the left, the spine in the middle and the small tray at the right.
//
// Symbols: t, b the thickness of the trays' board and of the case's; k, K, q of the
// cloth on the trays, on the case and of the hinge; f, F of the lining on the floor of
// the small and of the large tray; B, L, d the inside of a tray from board to board,
// from the open edge to the fore-edge wall, from the head wall to the tail wall, and
// from floor to rim, with 1 of the small tray and 2 of the large one; Ws, Hs, Ds and Wl,
// Hl, Dl their outsides, covered; m the thicker of K and q; j a joint of the case and
// x = j - b - 2m what it leaves beside a board.
//
// A wall has one layer of cloth inside, and two near the open end, where the inside
// flap lies over the end flap, and in the corners at the fore-edge, where the fore-edge
// flap lies over the laps. So 2 x 2k are counted from head to tail and 2k at the
// fore-edge, and the book has the least room there. In the depth the cloth on the rim
// and the cloth under the lining cancel.
//
// Sources: two trays with walls around their bases, sizes and thickness of board, BPG
// Drop Spine Box, AIC wiki (2020); walls on the base, cloth onto the floor and width of
// the hinge, A Binding Passion (2020); the order of covering, mitres and a joint of two
// boards, Bibliocat (2007); turn-in and joint in inches, Reese; the square, Le Staret
// (2009); the spine over its joints, About the Binding (2011). Figures without a source
// are common practice, no source.
package box
