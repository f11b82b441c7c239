// Package pack lays rectangles out on sheets or on a roll: boards on stock to
// be cut edge to edge on a board shear, pieces on the bed of a machine that
// cuts freely. It knows nothing of what the pieces are for.
//
// Solve returns a layout; package check, which shares no code with the solver,
// tells whether a layout is sound.
package pack

import "forel/geometry"

// Length is a distance in millimetres. Inside, every length is a whole number
// of eighths of a micrometre, so that sums are exact: a micrometre and a 64th of
// an inch are both whole. A length given is taken to the nearest such unit.
type Length = geometry.Length

// Mode is how pieces may lie.
type Mode int

const (
	// Guillotine: every cut runs edge to edge of what it cuts, as on a board
	// shear or a plough. The layout carries the tree of cuts.
	Guillotine Mode = iota
	// Free: any places that do not overlap, as for a knife or laser on a bed.
	Free
)

// String returns "guillotine" or "free".
func (m Mode) String() string {
	if m == Free {
		return "free"
	}
	return "guillotine"
}

// Item is one piece to be laid out.
type Item struct {
	ID            string // the caller's, for messages; need not be unique
	Width, Height Length // over 0
	Turn          bool   // a quarter turn is allowed

	// Strip, where it is not empty, joins pieces that must come off one strip
	// at one fence setting: in Guillotine mode all pieces with this key lie side
	// by side in a strip as broad as the side they have in common. Where
	// the strip is longer than any sheet it goes on in another strip of the
	// same breadth, in as few as will do. Pieces with no side in common
	// are an error. Free mode has no fence, and takes no notice.
	Strip string
}

// Trim is what is lost along each edge of a sheet, kerf included.
type Trim struct{ Left, Right, Top, Bottom Length }

// Stock is one kind of sheet, or a roll.
type Stock struct {
	Name          string // for messages
	Width, Height Length // the whole sheet, trim included
	// Roll tells that Width is the roll's and Height what is on it, 0 for as
	// much as is needed. As little of the length is used as can be found.
	Roll bool
	// Count is how many there are, 0 for as many as are needed.
	Count int
	// Cost is that of one sheet, of a roll that of one metre, in any unit. If
	// it is 0 for every kind, sheets cost their area in square metres: of
	// one kind, then, the fewest sheets are the cheapest.
	Cost float64
	Trim Trim
}

// Problem is what is to be laid out on what. Kinds of sheet may be mixed, but
// a roll is alone.
type Problem struct {
	Items []Item
	Stock []Stock
	Gap   Length // between neighbouring pieces: kerf of a saw, room for a knife; 0 for a shear
	Mode  Mode
}
