package pack

// Layout is where every piece lies.
type Layout struct {
	Sheets []Sheet // fullest first within a kind
	Left   []int   // indices into Problem.Items of what found no place: the stock ran out

	// Value is what was made least, and Bound what it can't be less than: the
	// number of sheets with one kind of stock, their cost with several, the
	// length used in millimetres on a roll. Where the stock ran out, Bound is 0.
	Value, Bound float64
	Optimal      bool // Value is proved least
}

// Sheet is one sheet, or the used part of a roll, with what lies on it.
// Coordinates are from its upper left corner, Y downward.
type Sheet struct {
	Stock  int // index into Problem.Stock
	Places []Place
	Cuts   *Part // not of a free layout: the whole sheet, or the used part of the roll
}

// Place is where a piece lies.
type Place struct {
	Item   int // index into Problem.Items
	Box        // as it lies, turned or not
	Turned bool
}

// Box is a rectangle on a sheet: its upper left corner and its size.
type Box struct{ X, Y, Width, Height Length }

// Area returns the area in square millimetres.
func (b Box) Area() float64 { return float64(b.Width) * float64(b.Height) }

// Cut is which way the cuts run that part a Part.
type Cut int

const (
	None   Cut = iota // not cut any more
	AlongY            // the cuts run along Y: its Parts lie side by side in X
	AlongX            // the cuts run along X: its Parts lie one below the other in Y
)

// Part is a node of the tree of cuts: a rectangle that is a piece, an offcut, or
// is parted by cuts from edge to edge. Between two of its Parts lies the gap.
// What remains past the last of them is less than a gap wide, and lost.
type Part struct {
	Box
	Item  int // of a piece, its index into Problem.Items; else -1
	Cut   Cut
	Parts []Part // in the order they are cut off
}

// Piece tells whether the part is a finished piece.
func (p *Part) Piece() bool { return p.Item >= 0 }
