package proof

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/render"
	"forel/render/pdf"
	"forel/render/svg"
	"forel/render/typeset"
)

// CardDrawing is the picture of a folded case of card.
type CardDrawing struct {
	Case onepiece.Case
	Options
}

// SVG gives the picture as a drawing.
func (d CardDrawing) SVG() []byte {
	sheet := d.Setup.Sheet
	s := svg.New(sheet.Width, sheet.Height, cardTitle(d.Case), "Figures, not at true size.")
	drawCard(s, d.Case, d.Options)
	return s.Bytes()
}

// PDF gives the picture as a page.
func (d CardDrawing) PDF() ([]byte, error) {
	doc := pdf.New(cardTitle(d.Case))
	doc.Dated(d.Date)
	if d.Black {
		doc.BlackOnly()
	}
	doc.AddPage(d.Setup.Sheet.Width, d.Setup.Sheet.Height)
	drawCard(doc, d.Case, d.Options)
	return doc.Bytes()
}

func cardTitle(c onepiece.Case) string {
	if t := oneLine(c.Job.Title); t != "" {
		return "Proof: " + t
	}
	return "Proof of a case of card"
}

// drawCard draws the folded case at an angle, mouth toward the viewer, with the
// layers of each wall beside it.
func drawCard(s render.Surface, c onepiece.Case, o Options) {
	s.Begin(render.Legend)
	defer s.End()
	box := o.Setup.Printable(false)
	line := func(at geometry.Point, text string, size render.Points, bold bool) {
		s.Text(render.Text{At: at, String: text, Size: size, Bold: bold, Color: render.Black})
	}
	y := box.Min.Y + typeset.LineHeight(render.HeadSize)
	line(geometry.Pt(box.Min.X, y), typeset.Fit(cardTitle(c), render.HeadSize, true, box.Width()), render.HeadSize, true)
	for _, l := range typeset.Wrap(cardVerdict(c), render.BodySize, false, box.Width()) {
		y += typeset.LineHeight(render.BodySize)
		line(geometry.Pt(box.Min.X, y), l, render.BodySize, false)
	}

	// The case stands below the words, its mouth in front as it is, its depth
	// running back to the right and up at less than its length.
	const backX, backY = 0.45, 0.3
	out, in, card := c.Proof.Outside, c.Proof.Cavity, c.Job.Card.Thickness
	scale := min((box.Width()-20)/(out.Thickness+backX*out.Width), (box.Height()-120)/(out.Height+backY*out.Width), 1)
	foot := geometry.Pt(box.Min.X+(box.Width()-scale*(out.Thickness+backX*out.Width))/2, y+12+scale*(out.Height+backY*out.Width))
	at := func(x, up, back geometry.Length) geometry.Point {
		return foot.Add(geometry.Pt(scale*(x+backX*back), -scale*(up+backY*back)))
	}
	heavy := render.Stroke{Width: 0.5, Color: render.Black}
	light := render.Stroke{Width: 0.2, Color: render.Black}
	w, h, d := out.Thickness, out.Height, out.Width
	end := (h - in.Height) / 2 // head and tail: two layers
	opening := geometry.Polygon(at(card, end, 0), at(w-card, end, 0), at(w-card, h-end, 0), at(card, h-end, 0))
	s.Fill(opening, render.Color{R: 0xDD, G: 0xDD, B: 0xDD})
	s.Stroke(opening, light)
	for _, up := range []geometry.Length{card, h - card} { // between the layers of tail and head
		s.Stroke(geometry.Line(at(card, up, 0), at(w-card, up, 0)), light)
	}
	// The edge of left side and tail, as far as it is seen through the mouth.
	for _, seen := range geometry.Line(at(card, end, 0), at(card, end, in.Width)).Clip(opening.Bounds(), 0.01) {
		s.Stroke(seen.Path, light)
	}
	s.Stroke(geometry.Polygon(at(0, 0, 0), at(w, 0, 0), at(w, h, 0), at(0, h, 0)), heavy)
	s.Stroke(geometry.Polygon(at(w, 0, 0), at(w, 0, d), at(w, h, d), at(w, h, 0)), heavy)
	s.Stroke(geometry.Polygon(at(0, h, 0), at(w, h, 0), at(w, h, d), at(0, h, d)), heavy)
	s.Stroke(geometry.Line(at(w, h, d), at(max(0, w-d), h, max(0, d-w))), light) // the mitre of spine flap and outer flap

	y = foot.Y + 8
	for _, wall := range c.Proof.Walls {
		y += typeset.LineHeight(render.BodySize) + 1
		line(geometry.Pt(box.Min.X, y), string(wall.Face), render.BodySize, true)
		line(geometry.Pt(box.Min.X+62, y), typeset.Fit(layerText(wall), render.BodySize, false, box.Width()-62), render.BodySize, false)
	}
	y += typeset.LineHeight(render.BodySize) + 3
	line(geometry.Pt(box.Min.X, y), fmt.Sprintf("Layers are named from the inside out. Room inside: %s × %s × %s (height, depth, thickness).",
		o.Round.PrettyNumber(in.Height), o.Round.PrettyNumber(in.Width), o.Round.Pretty(in.Thickness)), render.BodySize, false)
	line(geometry.Pt(box.Min.X, box.Max.Y-1), "Seen from the mouth, from the right and above. A figure, not at true size: do not cut from this page.", render.NoteSize, false)
}
