// Package kit makes the slips that are laid into, or stuck on, what each student of a class
// gets: whose it is, the pieces, and what they are cut from.
package kit

import (
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/labelled"
)

// Length is a distance in millimetres.
type Length = geometry.Length

// Kit is what one student gets.
type Kit struct {
	Name, Title string
	Pieces      []geometry.Piece
	Stock       map[geometry.Material]string // what each material is, in words
}

// Document draws slips in two columns, a frame round each to cut along.
func Document(kits []Kit, o document.Options) *document.Document {
	d := &document.Document{Options: o, Title: "Kit labels", Foot: "Kit labels: cut along the frames."}
	d.Labels(len(kits), func(n int, in geometry.Box) Length { return kits[n].slip(d, in) })
	return d
}

// slip sets the words of a slip.
func (k Kit) slip(d *document.Document, in geometry.Box) Length {
	y := document.Paragraph(d, in, in.Min.Y, wording.OneLine(k.Name), render.HeadSize, true)
	if k.Title != "" {
		y = document.Paragraph(d, in, y, wording.OneLine(k.Title), render.BodySize, false)
	}
	for _, m := range geometry.Materials {
		if names := named(k.Pieces, m); names != "" {
			y = document.Paragraph(d, in, y+0.6, wording.Capital(k.Stock[m]), render.NoteSize, true)
			y = document.Paragraph(d, in, y-0.5, names, render.NoteSize, false)
		}
	}
	return y
}

// named lists the pieces of a material: "2 sides" is written "side × 2".
func named(pieces []geometry.Piece, m geometry.Material) string {
	var out []string
	for _, p := range pieces {
		if p.Material == m {
			out = append(out, labelled.Name(p))
		}
	}
	return strings.Join(out, ", ")
}
