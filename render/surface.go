// Package render holds what every drawing is made with: one small surface to
// draw on, the layers of a template, and how a line of each layer looks. A
// format is a subpackage that implements Surface; it decides no sizes.
package render

import "forel/geometry"

// Length is a distance in millimetres.
type Length = geometry.Length

// Layer groups what a machine or a maker does in one step. The names are those
// of the processing steps of ISO 19593-1 (from memory).
type Layer string

// The layers of a template.
const (
	Cutting   Layer = "Cutting"   // cut through
	Creasing  Layer = "Creasing"  // fold
	Positions Layer = "Positions" // rule; neither cut nor fold
	Legend    Layer = "Legend"    // words, arrows and marks to read

	// InsideCuts is what of Cutting a machine does before the outlines: holes
	// and slits. The name is our own.
	InsideCuts Layer = "Inside-cuts"
)

// Layers lists the layers in the order they are drawn.
var Layers = []Layer{InsideCuts, Cutting, Creasing, Positions, Legend}

// Surface is a flat sheet to draw on, in millimetres from its upper left
// corner, Y downward. A backend is one implementation.
type Surface interface {
	// Begin opens a layer, End closes it. Layers do not nest.
	Begin(Layer)
	End()
	// Stroke draws along a path; arcs are kept where the format has them.
	Stroke(geometry.Path, Stroke)
	// Fill fills a closed path.
	Fill(geometry.Path, Color)
	// Text sets one line of text.
	Text(Text)
}

// Stroke is how a line looks. Dash lists lengths on and off in turn; Phase is
// how far into its dashes the line starts.
type Stroke struct {
	Width Length
	Dash  []Length
	Phase Length
	Color Color
}

// Align is where a text's anchor lies along its baseline.
type Align int

// Alignments of text.
const (
	Start Align = iota
	Middle
	End
)

// Text is one line of text. At is on the baseline. Turned text reads upward.
type Text struct {
	At     geometry.Point
	String string
	Size   Points
	Bold   bool
	Align  Align
	Turned bool
	Color  Color
}

// Points is a type size in points of 1/72 in.
type Points float64

// The type scale: every text of every output has one of these sizes.
const (
	TitleSize Points = 20
	HeadSize  Points = 12
	BodySize  Points = 9
	NoteSize  Points = 7.5
	SmallSize Points = 6.5
)

// Numerals are how page labels are numbered.
type Numerals string

// Numerals of page labels.
const (
	Decimal Numerals = "D" // 1, 2, 3
	Roman   Numerals = "r" // i, ii, iii
)
