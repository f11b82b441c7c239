// Package handout makes the sheet a teacher gives out: the worksheet with every
// piece and its size, drawings of the pieces, and the steps in order, each with
// a figure drawn from the job's own geometry. It decides no sizes.
package handout

import (
	"forel/geometry"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a handout looks.
type Options struct {
	document.Options
	Tinted bool // with tints of colour beneath the hatching
	Short  bool // four pages: no drawings of the pieces, a figure a step
}
