// Package proof shows what folding a case up has found: as words, as JSON, and
// as pictures of the case from outside at an angle and of every face with what
// lies on it. It knows no kind of case, decides no sizes and judges nothing; all
// that comes with the plan.
package proof

import (
	"forel/geometry"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how the pictures are laid out.
type Options = document.Options
