package templates

import (
	"forel/geometry"
	"forel/render"
	"forel/render/layout"
	"forel/render/typeset"
)

// flow sets one thing below the other, on a further page where one is full.
type flow struct {
	*booklet
	box    geometry.Box    // of the page
	y      geometry.Length // what is set ends here
	bottom geometry.Length // what is to be set ends here at the latest
}

// room makes sure that so much height is left, on a new page if need be. It tells
// whether it started one.
func (f *flow) room(height geometry.Length) bool {
	if f.y+height <= f.bottom || f.y == f.box.Min.Y {
		return false
	}
	f.End()
	f.box = f.newPage(f.Setup.Sheet.Width, f.Setup.Sheet.Height)
	f.Begin(render.Legend)
	f.y, f.bottom = f.box.Min.Y, f.box.Max.Y
	return true
}

// paragraph sets text, a line where there is room for one.
func (f *flow) paragraph(text string, size render.Points, bold bool) {
	for _, l := range typeset.Break(text, size, bold, f.box.Width()) {
		f.room(typeset.LineHeight(size) + typeset.Descent(size))
		f.y += typeset.LineHeight(size)
		layout.Write(f, geometry.Pt(f.box.Min.X, f.y), l, size, bold)
	}
	f.y += typeset.Descent(size)
}

// steps sets numbered steps under a heading: together, or where they are more
// than a page holds, each whole.
func (f *flow) steps(heading string, steps []string) {
	const above = 1
	if !f.room(above + layout.StepsHeight(heading, steps, f.box.Width())) {
		f.y += above
	}
	for i := range steps {
		f.room(layout.StepsHeight(heading, steps[i:i+1], f.box.Width()))
		f.y = layout.StepsFrom(f, geometry.Box{Min: geometry.Pt(f.box.Min.X, f.y), Max: f.box.Max}, heading, i+1, steps[i:i+1])
		heading = ""
	}
}
