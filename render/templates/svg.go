// Package templates makes the files a maker cuts from: one drawing a piece,
// and a document with every piece at true size on printed sheets.
package templates

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/hairline"
	"forel/render/labelled"
	"forel/render/svg"
	"forel/render/typeset"
)

// Options say how templates look.
type Options = document.Options

// border is the white around a piece in its drawing, where words may stand.
const border geometry.Length = 14

// FileName returns the name of a piece's drawing.
func FileName(p geometry.Piece) string { return strings.ReplaceAll(p.Name, " ", "-") + ".svg" }

// PieceSVG returns the drawing of one piece in real millimetres.
func PieceSVG(c plan.Plan, p geometry.Piece, o Options) []byte {
	w, h := p.Size()
	page := geometry.Bx(0, 0, w+2*border, h+2*border)
	s := svg.New(page.Width(), page.Height(), titleOf(c, p), describe(p))
	var on render.Surface = s
	if o.Line > 0 {
		on = hairline.Surface{Surface: s, Width: o.Line}
	}
	labelled.Draw(on, p, labelled.View{
		DX: border, DY: border + h,
		Window: page, Safe: page.Grow(-1),
		Wider: typeset.Substitute, Theme: o.Theme, Round: o.Round,
	})
	return s.Bytes()
}

func titleOf(c plan.Plan, p geometry.Piece) string {
	if c.Title == "" {
		return labelled.Name(p)
	}
	return labelled.Name(p) + " – " + c.Title
}

func describe(p geometry.Piece) string {
	w, h := p.Size()
	d := fmt.Sprintf("%s: %s; %.3f x %.3f mm; %s along the %s; %s. ",
		p.Name, labelled.Cut(p), w.MM(), h.MM(), p.Material.Direction(), p.Grain, p.FaceUp)
	if p.Hand != "" {
		d += "Hand: " + p.Hand + ". "
	}
	if p.Material.Crushed() {
		d += "Its folds are crushed with a folder or a creasing wheel: no knife and no laser follows them. "
	}
	return d + "One user unit is one millimetre. " + wording.Careful(wording.Machine)
}
