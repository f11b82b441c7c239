package templates_test

import (
	"pgregory.net/rapid"

	"forel/geometry/plan"
	"forel/render"
	"forel/render/pagetest"
	"forel/render/templates"
)

// anyPlan draws a case of any kind, in millimetres or in inches, and a printer.
func anyPlan(t *rapid.T) (plan.Plan, templates.Options) {
	o := templates.Options{Setup: pagetest.AnySetup(t), Theme: render.DefaultTheme()}
	p, unit := pagetest.AnyPlan(t)
	o.Round = pagetest.Rounding(unit)
	return p, o
}
