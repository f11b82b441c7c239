// Package handout makes the sheet a teacher gives out: the worksheet with every
// piece and its size, drawings of the pieces, and the steps in order, each with
// a figure drawn from the job's own geometry. It decides no sizes.
package handout

import (
	"time"

	"forel/geometry"
	"forel/paper"
	"forel/render"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a handout looks.
type Options struct {
	Setup  paper.Setup // of the pages; only the sheet and its margin count
	Round  geometry.Rounding
	Tinted bool      // with tints of colour beneath the hatching
	Black  bool      // in black alone, without greys
	Date   time.Time // the document's; zero: none
}

// pages is a surface with pages; the last one is drawn on.
type pages interface {
	render.Surface
	AddPage(width, height geometry.Length)
	Bookmark(title string)
}
