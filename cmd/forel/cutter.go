package main

import "forel/cmd/pipeline"

const aboutCutter = `
usage: forel cutter [JOB.toml ...] --bed WIDTHxHEIGHT [flags]

Lays every piece of the jobs out on the bed of a laser or a drag knife, each
material on beds of its own, and writes an SVG drawing a bed in real
millimetres: board-1.svg, cloth-1.svg and so on. Lines are in layers by what is
done, in the order it is done: Creasing (never cut through), CuttingInside
(slits and holes), Cutting (outlines). Pieces are turned by a quarter only where
their grain allows. For the bed and its distances a bare number is in millimetres.

A laser takes away a kerf: cut a square, measure it, and give the difference as
--kerf. Outlines then grow by half of it, and holes shrink, so that the pieces
come out as they should. A drag knife has none: leave it at 0; the offset of its
blade is for its driver.

take care: read the maker's manual, never put chlorinated plastics (PVC, some
coated cloths) under a laser, never leave a laser or a knife running alone, use
fume extraction, keep means to put out a fire at hand, keep hands off the bed
while it moves, and follow local rules.

example:
  forel cutter case.toml --bed 600x300 --kerf 0.18 --out cut/
  forel cutter case.toml other.toml --bed 24x12in --grain board=width --tabs 4
`

func flagsCutter(f *flags) action {
	c := pipeline.DefaultCutter()
	f.StringVar(&c.Bed, "bed", "", "`size` of the bed, width x height, such as 600x300 or 24x12in")
	f.StringVar(&c.Kerf, "kerf", c.Kerf, "`width` that the beam takes away, measured on a test cut; 0 for a knife")
	f.StringVar(&c.Spacing, "spacing", c.Spacing, "`distance` between neighbouring pieces")
	f.StringVar(&c.Margin, "margin", c.Margin, "`distance` kept from the bed's edges")
	f.StringArrayVar(&c.Grain, "grain", nil, "`direction` of the stock's grain on the bed: height, width or none (default height); or of one material, such as board=width")
	f.IntVar(&c.Tabs, "tabs", 0, "`number` of light tabs that hold each piece in its sheet")
	f.StringVar(&c.TabWidth, "tab-width", c.TabWidth, "`width` of a tab")
	f.BoolVar(&c.Labels, "labels", false, "names and lines to rule too, in layers of their own (Positions, Legend) that are not cut")
	f.StringArrayVar(&c.Colour, "colour", nil, "`line=#rrggbb`: colour of a kind of line, for software that goes by colour, such as cuttinginside=#0072b2")
	f.StringVar(&c.Effort, "effort", c.Effort, "how long to search for a layout: `steps`, or a time such as 20s; 0: the first good one")
	f.out("cutter", "cut/", "`folder` to write into; made if it is not there", nil)
	f.job(&c.Job)
	f.several = true
	return f.makes(&c)
}
