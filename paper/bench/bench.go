// Package bench plans the work at the bench: it lays the pieces of one job or of
// many on the sheets and rolls there are, edge to edge as a board shear or a
// knife along a straightedge cuts, and gives the order of the cuts with the
// setting of the fence for each, what is left over, and what to buy.
package bench

import (
	"cmp"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/paper/pack"
	"forel/paper/stock"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Job is one case with what it is cut from.
type Job struct {
	Plan   plan.Plan
	Unit   geometry.Unit
	Stock  []stock.Stock                // any material may lack stock: it is laid on a usual size
	Names  map[geometry.Material]string // what the maker calls a material, where it has a name
	Source string                       // where the job comes from, for messages; may be empty
}

// Title names a job.
func (j Job) Title() string {
	return cmp.Or(j.Plan.Title, j.Source, "untitled")
}

// Options say how to plan. The zero value gives a first good plan.
type Options struct {
	Effort pack.Effort
	// Keep is the least shorter side of an offcut worth keeping, its area at
	// least that of Keep by three times Keep; 0 is DefaultKeep.
	Keep Length
	// Loose lets the walls of one case come off different strips where that saves
	// sheets. They are still cut at one setting of the fence where that can be.
	Loose bool
	// Exact cuts what is trimmed later to its own size too. Without, it is rounded up, to
	// be cut with others at one setting of the fence.
	Exact bool
	// Buy has more bought where what there is does not do: sheets that are counted and
	// lengths of rolls are used up first.
	Buy bool
	// Lot tells that the jobs are one lot of several, which are cut one after the other
	// from the same stock.
	Lot bool
	// Before are the plans of the lots that are cut earlier: what they use of sheets that are
	// counted, and of rolls of a length, is gone. Slim ones will do.
	Before []Plan
}

// DefaultKeep is the shorter side of the smallest offcut worth keeping: that of
// a wall (common practice, no source).
const DefaultKeep Length = 40

// Plan is the work at the bench for all jobs.
type Plan struct {
	Jobs   []Job
	Groups []Group // a material each, in the order board, card, lining, cloth, paper
}

// Group is all that is cut from one material of one thickness and name.
type Group struct {
	Material  geometry.Material
	Name      string // what the maker calls it; may be empty
	Thickness Length
	Stock     []stock.Stock // what sheets refer to
	Assumed   bool          // no job gave stock: the sizes are from the library
	Sheets    []Sheet
	Cuts      []Cut
	Settings  int // of the fence, trimming left out
	Used      []Use
	Weight    Weight
	Remarks   []plan.Remark // what could not be done as the trade does
}

// Sheet is one sheet, or a length cut off a roll, with what lies on it.
// Coordinates are from its upper left corner, Y downward.
type Sheet struct {
	Number        int // in the whole plan, from 1
	Stock         int // index into Group.Stock
	Width, Height Length
	Roll          bool // a length off the roll
	Pieces        []Placed
	Offcuts       []Offcut // the largest first; waste too
}

// Placed is one piece where it lies.
type Placed struct {
	Number        int // on its sheet, from 1
	Job           int // index into Plan.Jobs
	Name          string
	Copy, Of      int            // the second of two: 2, 2
	Width, Height Length         // that the piece is cut to, not turned
	Grain         geometry.Grain // of the piece, not turned
	Turned        bool           // by a quarter on the sheet
	Box           geometry.Box   // on the sheet
	Area          float64        // within its outline, in mm²
	WidthBy       int            // the setting its width is cut at; 0: by what is left
	HeightBy      int
	WidthCut      int // the number of that cut
	HeightCut     int
}

// Offcut is what is left over of a sheet.
type Offcut struct {
	Name  string       // of one worth keeping: a letter, then a number; empty for waste
	Box   geometry.Box // on the sheet, with any edge of the sheet that was not trimmed
	Clean geometry.Box // without such edges
}

// Kept tells whether the offcut is worth keeping.
func (o Offcut) Kept() bool { return o.Name != "" }

// Kind is what a cut is for.
type Kind string

// Kinds of cut.
const (
	CutOff Kind = "off the roll" // a length off a roll
	Square Kind = "trim"         // an edge of a sheet, to have a clean and square one to lay to the fence
	Rip    Kind = "strip"        // a strip, or a part that is cut on
	Finish Kind = "piece"        // a finished piece
	Clear  Kind = "clear"        // what is left over goes away
)

// Cut is one cut from edge to edge of the part it is made in.
type Cut struct {
	Number   int // in its group, from 1
	Setting  int // of the fence, in its group; 0 for trimming and for lengths off a roll
	Kind     Kind
	Sheet    int    // index into Group.Sheets
	Part     string // what is cut: "1" is sheet 1, "1B" the second part cut off it or off another part
	Fence    Length // from the fence to the blade; of a trim what goes away
	AlongY   bool   // the cut runs along the sheet's height
	From, To geometry.Point
	Takes    Result // what lies between fence and blade; nothing for a trim
	Leaves   Result // what lies beyond it
}

// Result is a part that a cut gives.
type Result struct {
	Kind  ResultKind
	Part  string       // the name of what is cut on
	Piece int          // index into Sheet.Pieces
	Off   int          // index into Sheet.Offcuts
	Box   geometry.Box // on the sheet
}

// ResultKind is what a Result is.
type ResultKind int

// Kinds of result.
const (
	Nothing   ResultKind = iota // no more than the blade takes away
	APart                       // it is cut on
	APiece                      // finished
	AnOffcut                    // worth keeping
	SomeWaste                   //
)

// Use is how much of one kind of stock is needed.
type Use struct {
	Stock  int     // index into Group.Stock
	Sheets int     // how many; of a roll 0
	Length Length  // of a roll
	Area   float64 // bought, in mm²
}

// Weight is what the material of a group weighs, in grams.
type Weight struct {
	Bought, Pieces float64
	Source         string // where the figure comes from
}

// Areas returns how much, in mm², is bought, goes into pieces (the rectangles
// they are cut as) and is left in offcuts worth keeping; the rest is waste.
func (g Group) Areas() (bought, pieces, kept float64) {
	for _, u := range g.Used {
		bought += u.Area
	}
	for _, s := range g.Sheets {
		for _, p := range s.Pieces {
			pieces += area(p.Box)
		}
		kept += s.kept()
	}
	return bought, pieces, kept
}

// kept returns the area of what is worth keeping.
func (s Sheet) kept() (sum float64) {
	for _, o := range s.Offcuts {
		if o.Kept() {
			sum += area(o.Clean)
		}
	}
	return sum
}

// UsedUp returns which part of what is bought of one stock is used up: what goes into
// pieces and waste. The rest is worth keeping.
func (g Group) UsedUp(u Use) float64 {
	var kept float64
	for _, s := range g.Sheets {
		if s.Stock == u.Stock {
			kept += s.kept()
		}
	}
	return min(1, max(0, 1-kept/u.Area))
}

// Label names a group: "board 2 mm", "blue cloth".
func (g Group) Label() string {
	return cmp.Or(g.Name, string(g.Material))
}

func area(b geometry.Box) float64 { return float64(b.Width()) * float64(b.Height()) }
