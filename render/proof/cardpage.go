package proof

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/onepiece"
	"forel/geometry/wording"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// DrawCard draws a folded case of card: the case at an angle, then every wall flat
// with its layers.
func DrawCard(c onepiece.Case, o Options) *document.Document {
	b := newCardBook(c, o)
	drawCard(b, b.NewPage(false, "The case"), c, o)
	b.cardWalls()
	return b.Document
}

// newCardBook starts the document of a case of card.
func newCardBook(c onepiece.Case, o Options) *book {
	s := Subject{Title: c.Job.Title, Lining: Unlined, Compartments: 1}
	named := map[string]bool{}
	for _, w := range c.Proof.Walls {
		s.Report.Faces = append(s.Report.Faces, w.Seen)
		for _, l := range w.Seen.Layers {
			if named[l.Piece] {
				continue
			}
			named[l.Piece] = true
			material := geometry.Paper // in looks, the walls apart from the flaps
			if strings.Contains(l.Piece, "flap") {
				material = geometry.Cloth
			}
			s.Pieces = append(s.Pieces, geometry.Piece{Name: l.Piece, Material: material})
		}
	}
	s.Report.Faults = c.Proof.Faults
	k := looksOf(s)
	b := &book{Subject: s, Document: newDocument(cardTitle(c), s, o), faces: study(s.Report), looks: k, base: k.board, pageOf: map[geometry.Face]int{}}
	b.caption = func(f face) string {
		size := o.Round.Number(f.Extent.Width()) + " × " + o.Round.Pretty(f.Extent.Height())
		for _, w := range c.Proof.Walls {
			if w.Face == f.Face {
				return size + "; from the inside out: " + layerText(w)
			}
		}
		return size
	}
	return b
}

// cardWalls draws every wall flat.
func (b *book) cardWalls() {
	sp := spreads[0]
	box := b.NewPage(false, "Walls")
	b.pageOf = map[geometry.Face]int{}
	y := b.heading(box, "The walls, each as you see it from outside",
		"A number says how many layers of card lie there, one on another; a name is that of the outermost. Between parts stand the reliefs.")
	low := b.legendTop(box)
	n := scales[len(scales)-1]
	for _, s := range scales {
		tall, fits := Length(0), true
		for _, r := range sp.rows {
			row := b.faceRow(r, box.Width(), Length(1/s))
			tall += row.tall() + rowGap
			for i, f := range row.faces {
				fits = fits && f.wide()+2*sideRoom <= row.cells[i]
			}
		}
		if fits && y+typeset.LineHeight(render.BodySize)+tall <= low {
			n = s
			break
		}
	}
	y = b.paragraph(box, y-2, fmt.Sprintf("Scale 1 : %g, and narrow walls drawn wider: not at true size.", n), render.BodySize, false) + 2
	for _, r := range sp.rows {
		row := b.faceRow(r, box.Width(), Length(1/n))
		b.drawRow(row, box.Min.X, y)
		y += row.tall() + rowGap
	}
	b.legend(box, box.Max.Y)
}

func cardTitle(c onepiece.Case) string {
	if t := wording.OneLine(c.Job.Title); t != "" {
		return "Proof: " + t
	}
	return "Proof of a case of card"
}

// drawCard draws the folded case at an angle, mouth toward the viewer, with the
// layers of each wall beside it.
func drawCard(s render.Surface, box geometry.Box, c onepiece.Case, o Options) {
	line := func(at geometry.Point, text string, size render.Points, bold bool) {
		s.Text(render.Text{At: at, String: text, Size: size, Bold: bold, Color: render.Black})
	}
	y := box.Min.Y + typeset.LineHeight(render.HeadSize)
	line(geometry.Pt(box.Min.X, y), typeset.Fit(cardTitle(c), render.HeadSize, true, box.Width()), render.HeadSize, true)
	for _, l := range typeset.Break(cardVerdict(c), render.BodySize, false, box.Width()) {
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
	line(geometry.Pt(box.Min.X, box.Max.Y-1), "Seen from the mouth, from the right and above.", render.NoteSize, false)
}
