// Package proof shows what folding a case up has found: as words, as JSON, and
// as pictures of the case from outside at an angle and of every face with what
// lies on it. It knows no kind of case, decides no sizes and judges nothing; all
// that comes with the plan.
package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render/document"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say how the pictures are laid out.
type Options = document.Options

// leastAcross is what the tables of the picture take between the margins.
const leastAcross Length = 165

// Check tells why the picture can't be drawn on a sheet, nil if it can.
func Check(o Options) error {
	if room := o.Setup.Reach(false).Width(); room < leastAcross*0.97 {
		return fmt.Errorf("%v with margins of %v leaves %.4g mm across for the picture of the proof; at least %.4g mm are needed",
			o.Setup.Sheet, o.Setup.Margins, room.MM(), leastAcross.MM())
	}
	return nil
}

// name returns the job's title on one line, or what the thing is.
func name(p plan.Plan) string {
	if t := wording.OneLine(p.Title); t != "" {
		return t
	}
	return wording.Capital(p.Kind)
}
