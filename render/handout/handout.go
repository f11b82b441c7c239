// Package handout makes the sheet a teacher gives out: the worksheet with every
// piece and its size, drawings of the pieces, and the steps in order, each with
// a figure drawn from the job's own geometry. It decides no sizes.
package handout

import (
	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/plan"
	"forel/geometry/slipcase"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how a handout looks.
type Options struct {
	document.Options
	Tinted bool // with tints of colour beneath the hatching
}

// Subject is the case a handout is for: one of boards or one of card.
type Subject struct {
	plan   plan.Plan
	boards *slipcase.Case
	card   *onepiece.Case
}

// Of gives the subject of a case of boards.
func Of(c slipcase.Case) Subject { return Subject{plan: c.Plan(), boards: &c} }

// OfCard gives the subject of a case of card.
func OfCard(c onepiece.Case) Subject { return Subject{plan: c.Plan(), card: &c} }
