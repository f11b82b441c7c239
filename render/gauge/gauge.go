// Package gauge draws the sheet that a printer is gauged by: a rule across the
// sheet and one along it, in millimetres on one side and inches on the other,
// and what to do with them.
package gauge

import (
	"fmt"
	"math"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/svg"
	"forel/render/typeset"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Options say what a gauge sheet is for.
type Options struct {
	document.Options      // the overlap of its Setup does not matter; the sheet asks for the unit of its Round
	Corrected        bool // draw corrected by Setup.Measured, to see that the rules are true now
}

// Margin is what a gauge sheet keeps white where nothing else is asked for:
// less than templates do, so that 200 mm find room across A4 (common practice,
// no source).
const Margin Length = 4.5

// The room that a gauge sheet needs between its margins.
const leastRoom Length = 80

// Check tells why no gauge sheet can be drawn, nil if it can.
func (o Options) Check() error {
	if o.enough() {
		return nil
	}
	room := o.setup().Printable(false)
	larger := o.Setup.Larger(func(s paper.Setup) bool {
		o := o
		o.Setup = s
		return o.enough()
	})
	return fmt.Errorf("%v with margins of %v leaves %.4g x %.4g mm to print on, of which at least %.4g x %.4g mm is needed; print on a larger sheet: --paper %s",
		o.Setup.Sheet, o.Setup.Margins, room.Width().MM(), room.Height().MM(), leastRoom.MM(), leastRoom.MM(), larger)
}

// enough tells whether there is room for the rules.
func (o Options) enough() bool {
	room := o.setup().Printable(false)
	return room.Width() >= leastRoom && room.Height() >= leastRoom
}

// setup returns the Setup that the sheet is drawn with: not corrected unless that
// is what is to be seen.
func (o Options) setup() paper.Setup {
	s := o.Setup
	if !o.Corrected {
		s.Measured = paper.Measured{}
	}
	return s
}

func (o Options) title() string { return "Gauge sheet for " + o.Setup.Sheet.String() }

// Document draws the sheet as a document of one page.
func Document(o Options) *document.Document {
	o.Setup = o.setup()
	d := &document.Document{Options: o.Options, Title: o.title(), TrueSize: true}
	Draw(d.AddPage(o.Setup.Sheet.Width, o.Setup.Sheet.Height), o)
	return d
}

// SVG returns the sheet as a drawing in millimetres, never corrected.
func SVG(o Options) []byte {
	o.Corrected = false
	s := svg.New(o.Setup.Sheet.Width, o.Setup.Sheet.Height, o.title(),
		"Rules to gauge a printer by. One user unit is one millimetre. For a printer or a pen: not to be cut from. "+wording.Careful(wording.Machine))
	Draw(s, o)
	return s.Bytes()
}

// Draw draws the sheet on a surface as large as the upright sheet.
func Draw(on render.Surface, o Options) {
	on.Begin(render.Legend)
	defer on.End()
	room := o.setup().Printable(false)
	half := (typeset.Ascent(render.NoteSize) + 2*typeset.Descent(render.NoteSize)) / 2 // of a number at the last tick
	across := o.rule(geometry.Pt(room.Min.X+endRoom, room.Min.Y+beside), room.Max.X-endRoom, false)
	left := room.Min.X + beside
	if room.Height() >= 1000 { // numbers of four digits
		left += typeset.Width("0", render.NoteSize, true)
	}
	along := o.rule(geometry.Pt(left, room.Min.Y+2*beside+endRoom+2), room.Max.Y-endRoom-half, true)
	across.draw(on)
	along.draw(on)
	beside := geometry.Bx(along.from.X+beside+4, along.from.Y, room.Max.X, room.Max.Y)
	o.words(on, beside, across, along)
}

// crosses are four marks at the corners of a rectangle, whose two diagonals are alike where
// the feed is square.
type crosses struct{ box geometry.Box }

// Of the crosses: the length of an arm, and the least side of their rectangle that tells
// anything.
const (
	crossArm  Length = 4
	leastSide Length = 50
)

// in returns the crosses in what is left of a box, whole centimetres apart, and whether there
// is room for them.
func (crosses) in(box geometry.Box) (crosses, bool) {
	box = box.Grow(-crossArm)
	whole := func(l Length) Length { return Length(math.Floor(float64(l/10))) * 10 }
	box = geometry.Bx(box.Min.X, box.Max.Y-whole(box.Height()), box.Min.X+whole(box.Width()), box.Max.Y)
	return crosses{box}, box.Width() >= leastSide && box.Height() >= leastSide
}

func (c crosses) draw(on render.Surface) {
	mid := c.box.Center()
	for _, m := range []struct {
		at   geometry.Point
		name string
	}{{c.box.Min, "A"}, {c.box.Max, "A"}, {geometry.Pt(c.box.Max.X, c.box.Min.Y), "B"}, {geometry.Pt(c.box.Min.X, c.box.Max.Y), "B"}} {
		for _, arm := range []geometry.Point{geometry.Pt(crossArm, 0), geometry.Pt(0, crossArm)} {
			on.Stroke(geometry.Line(m.at.Sub(arm), m.at.Add(arm)), tickStroke)
		}
		name := render.Text{At: m.at.Add(geometry.Pt(1.5, typeset.Ascent(render.BodySize)+1.5)), String: m.name, Size: render.BodySize, Bold: true, Color: render.Black}
		if m.at.X > mid.X {
			name.Align, name.At.X = render.End, m.at.X-1.5
		}
		if m.at.Y > mid.Y {
			name.At.Y = m.at.Y - 1.5
		}
		on.Text(name)
	}
}

// lean returns how far out of square 200 mm are for each millimetre between the diagonals.
func (c crosses) lean() Length {
	w, h := c.box.Width(), c.box.Height()
	return paper.Gauged * c.box.Min.Distance(c.box.Max) / (2 * w * h)
}

// beside is the room that ticks and numbers take on each side of a rule, endRoom
// that for half the width of its last tick.
const (
	beside  Length = 9.6
	endRoom Length = 0.2
)

// rule returns the rule from a place to another across (or down) the page: whole
// centimetres and half inches.
func (o Options) rule(from geometry.Point, end Length, down bool) rule {
	room := end - from.X
	if down {
		room = end - from.Y
	}
	r := rule{from: from, down: down, unit: o.Round.Unit}
	r.mm = Length(math.Floor(float64(room/10)+1e-9)) * 10
	r.inches = Length(math.Floor(float64(room/(geometry.Inch/2))+1e-9)) * geometry.Inch / 2
	r.toMM = min(r.mm, paper.Gauged)
	r.toInch = min(Length(math.Floor(float64(r.inches/geometry.Inch)+1e-9)), 8) * geometry.Inch
	return r
}
