package gauge

import (
	"fmt"
	"slices"

	"forel/geometry"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/record"
	"forel/render/typeset"
)

// block is a paragraph of the sheet.
type block struct {
	text   string
	number string // of a step, before it; a blank for what belongs to a step
	head   bool
	lesser bool // left out where there is little room
}

// words sets what to do beside the rules, as large as finds room.
func (o Options) words(on render.Surface, box geometry.Box, across, along rule) {
	blocks := o.blocks(across, along)
	for _, size := range []render.Points{render.BodySize, render.NoteSize} { // with the crosses below, where there is room
		left := box
		with := slices.Concat(blocks, crosses{}.blocks(1)) // the number does not change how tall it is
		left.Min.Y = set(&record.Surface{}, box, with, size) + 1
		if c, ok := (crosses{}).in(left); ok {
			set(on, box, slices.Concat(blocks, c.blocks(c.lean())), size)
			c.draw(on)
			return
		}
	}
	for _, try := range []struct {
		size render.Points
		all  bool
	}{{render.BodySize, true}, {render.NoteSize, true}, {render.SmallSize, true}, {render.NoteSize, false}, {render.SmallSize, false}} {
		kept := blocks
		if !try.all {
			kept = nil
			for _, b := range blocks {
				if !b.lesser {
					kept = append(kept, b)
				}
			}
		}
		last := try.size == render.SmallSize && !try.all
		if set(&record.Surface{}, box, kept, try.size) <= box.Max.Y || last {
			set(on, box, kept, try.size)
			return
		}
	}
}

// set sets blocks below each other and returns where they end.
func set(on render.Surface, box geometry.Box, blocks []block, size render.Points) Length {
	y := box.Min.Y
	const most = 150 // wider lines are hard to read
	wide := min(box.Width(), most)
	for _, b := range blocks {
		size, indent := size, Length(0)
		if b.head {
			size = max(size, render.HeadSize)
		}
		if b.number != "" {
			indent = 5
		}
		if b.number > " " {
			document.Write(on, geometry.Pt(box.Min.X, y+typeset.LineHeight(size)), b.number, size, false)
		}
		y = document.Paragraph(on, geometry.Bx(box.Min.X+indent, y, box.Min.X+wide, box.Max.Y), y, b.text, size, b.head) + Length(size)*0.13
	}
	return y
}

// blocks returns what the sheet says.
func (o Options) blocks(across, along rule) []block {
	if o.Corrected {
		return o.checkBlocks(across, along)
	}
	measure := fmt.Sprintf("across, on the rule at the top, from the arrow at 0 to the arrow at %s; then along, on the rule at the left, from 0 to %s.",
		across.to(), along.to())
	return []block{
		{text: o.title(), head: true},
		{number: "1.", text: `Print this sheet at actual size: scale 100 %, no "fit to page", no borderless printing. Feed it as you feed templates.`},
		{number: "2.", text: "With a steel rule measure " + measure + " Read it as finely as you can."},
		{number: "3.", text: "Type what you measured into the job file, below [print], such as:"},
		{number: " ", text: fmt.Sprintf(`measured_across = "%s"`, across.example(-0.004))},
		{number: " ", text: fmt.Sprintf(`measured_along = "%s"`, along.example(+0.002))},
		{number: "4.", text: "forel gauge with this job file and --check prints the sheet again, corrected: now the rules are true."},
		{text: "More than 3 % off (200 mm under 194 or over 206) is not the printer: a scaling setting in the print dialogue or the printer's own settings is on.", lesser: true},
		{text: `Where the end of a rule is missing, the printer does not reach so far. Measure to a number that is there, and type, say, "149.6 of 150 mm".`, lesser: true},
		{text: fmt.Sprintf("The printer's margins are then larger than those of this sheet, %v: measure what stays white at each edge, and type it a little larger as margin_left, margin_right, margin_top and margin_bottom below [print]. "+
			"Templates stay off them, and the next gauge too.", o.Setup.Margins), lesser: true},
		{text: "Across is the short way of the sheet. Another paper or another printer may measure otherwise. This sheet itself is not corrected.", lesser: true},
	}
}

// blocks tells what the crosses are for, where a millimetre between the diagonals is so far
// out of square.
func (c crosses) blocks(lean Length) []block {
	return []block{{text: fmt.Sprintf("Is the feed square? Measure slantwise from cross A to cross A, then from B to B. Both should be alike, whatever the scale. "+
		"Each millimetre between them is %.2f mm out of square in 200 mm: over half a millimetre, straighten the paper and the guides of its tray and print again. "+
		"What stays is the printer's: square the templates up with a set square before you cut.", lean.MM())}}
}

func (o Options) checkBlocks(across, along rule) []block {
	return []block{
		{text: o.title() + ", corrected", head: true},
		{number: "1.", text: `Print this sheet as before: actual size, scale 100 %, no "fit to page", no borderless printing.`},
		{number: "2.", text: fmt.Sprintf("With a steel rule measure both rules from 0: %s across and %s along should be just that.", across.to(), along.to())},
		{number: "3.", text: "If one is still off, print the sheet without --check, measure it again and mend the numbers in the job file."},
		{text: o.Setup.Measured.String() + "."},
	}
}

// to names the end of what is measured.
func (r rule) to() string {
	if r.unit == geometry.IN {
		return fmt.Sprintf("%.0f in", float64(r.toInch/geometry.Inch))
	}
	return fmt.Sprintf("%.0f mm", r.toMM.MM())
}

// example returns what a printer so far off would make a maker type.
func (r rule) example(off float64) string {
	if r.unit == geometry.IN {
		shown := geometry.To64th.Format(r.toInch * Length(1+off*1.7)) // enough for a 64th of an inch
		return fmt.Sprintf("%s of %s", shown, r.to())
	}
	was := fmt.Sprintf("%.1f", (r.toMM * Length(1+off)).MM())
	if r.toMM == paper.Gauged {
		return was + " mm"
	}
	return was + " of " + r.to()
}
