// Package proof shows what folding a case up has found: as words, as JSON, and
// as pictures of the case from outside at an angle and of every face with what
// lies on it. It knows no kind of case, decides no sizes and judges nothing; all
// that comes with the plan.
package proof

import (
	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how the pictures are laid out.
type Options = document.Options

// name returns the job's title on one line, or what the thing is.
func name(p plan.Plan) string {
	if t := wording.OneLine(p.Title); t != "" {
		return t
	}
	return wording.Capital(p.Kind)
}
