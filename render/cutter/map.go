package cutter

import (
	"fmt"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/render"
	"forel/render/document"
	"forel/render/leader"
	"forel/render/record"
	"forel/render/shape"
	"forel/render/typeset"
)

// Map returns a document to print for the maker at the machine: each bed as it is cut with
// the numbers and names of its pieces, which face of each is up, and how to use the test
// square.
func Map(beds []bed.Bed, s bed.Setup, o Options, print document.Options) *document.Document {
	d := &document.Document{Options: print, Title: "Map of the beds", Running: o.Title, Foot: "Figures, not at true size."}
	about := fmt.Sprintf("%s of %s, as the machine cuts them", wording.Count(len(beds), "bed"), s)
	blocks := []document.Block{d.Opening("Map of the beds", about)}
	for i, b := range beds {
		head := d.Heading(fmt.Sprintf("%s: bed %d of %s", FileName(b), b.Number, b.Stock))
		head.Bookmark, head.Fresh = FileName(b), i > 0
		blocks = append(append(blocks, head), bedBlock(d, b, s), d.Paragraph(howToLay(b, s), render.BodySize, false).After(1))
		blocks = append(blocks, d.Table("", partTable(b, print.Round))...)
	}
	steps := d.Steps("The test square, kerf-test.svg", testSteps(s))
	steps[0].Above = 6
	blocks = append(append(blocks, steps...), d.Paragraph(wording.Careful(wording.Machine), render.NoteSize, true).After(3))
	d.Flow(nil, blocks...)
	return d
}

// howToLay tells how a bed is filled.
func howToLay(b bed.Bed, s bed.Setup) string {
	text := grain(b.Material, s) + "Each piece lies with the face up that the list names; a turned one lies a quarter turn counterclockwise from its template."
	if b.Register.Any() {
		text += " Patterned stock: " + Register(b.Register) + "."
	}
	if c := Crushing(b); c != "" {
		text += " " + wording.Sentence(c)
	}
	return text
}

// partTable lists the pieces of a bed by their numbers.
func partTable(b bed.Bed, r geometry.Rounding) document.Table {
	t := document.Table{Size: render.BodySize, Columns: []document.Column{
		{Head: "No.", Right: true, Bold: true}, {Head: "Piece"}, {Head: "Case", Broken: true}, {Head: "Width × height"}, {Head: "Face up", Broken: true}, {Head: "Lies"},
	}}
	for i, p := range b.Parts {
		of := p
		of.Job = ""
		lies := map[bool]string{false: "as its template", true: "turned"}[p.Turned]
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), of.Name(), p.Job, r.PrettySize(p.Piece.Size()), p.Piece.FaceUp, lies})
	}
	return t
}

// The room for the arrow of the grain, beside a bed or below it, and the length of its arms.
const (
	grainBand Length = 7
)

// bedBlock draws a bed as large as there is room for, and at most half as tall as a page.
func bedBlock(d *document.Document, b bed.Bed, s bed.Setup) document.Block {
	return document.Block{Stays: true, Above: 1.5, Draw: func(box geometry.Box) Length {
		m := mapOf(b, box, d.Room(false).Height()/2)
		if len(m.small) > 0 { // their numbers stand on the left
			box.Min.X += numberBand
			m = mapOf(b, box, d.Room(false).Height()/2)
		}
		end := box.Min.Add(geometry.Pt(b.Width, b.Height).Mul(1 / m.scale))
		low := m.draw(d, end)
		word := b.Material.Direction()
		middle := shape.GrainLong(word, shape.GrainArm)/2 + 2 // from the corner of the bed
		switch s.GrainOf(b.Material) {
		case geometry.GrainHeight:
			shape.Grain(d, geometry.Pt(end.X+grainBand/2, box.Min.Y+middle), true, word, shape.GrainArm)
		case geometry.GrainWidth:
			shape.Grain(d, geometry.Pt(box.Min.X+middle, end.Y+grainBand/2), false, word, shape.GrainArm)
			low = max(low, end.Y+grainBand)
		}
		return low + 1
	}}
}

// mapped is a bed on a page.
type mapped struct {
	bed.Bed
	at    geometry.Point
	scale float64
	names record.Surface
	small []int // the parts that are too small for their numbers
}

// mapOf finds the scale of a bed in a box, and room for the names of its parts.
func mapOf(b bed.Bed, box geometry.Box, tall Length) *mapped {
	m := &mapped{Bed: b, at: box.Min, scale: max(1, b.Width/(box.Width()-grainBand), b.Height/tall).MM()}
	for i, p := range b.Parts {
		var slits []geometry.Path
		for _, slit := range p.Inside {
			slits = append(slits, m.path(slit))
		}
		if !name(&m.names, names(i+1, p), m.path(p.Outline), slits, render.Black) {
			m.small = append(m.small, i)
		}
	}
	return m
}

func (m *mapped) path(p geometry.Path) geometry.Path { return p.Scale(1 / m.scale).Move(m.at) }

// draw draws a bed and its parts, pale beside what is left over, and returns where it ends.
func (m *mapped) draw(on render.Surface, end geometry.Point) Length {
	line, fine := render.Stroke{Width: 0.2, Color: render.Black}, render.Stroke{Width: 0.12, Color: render.Black}
	on.Stroke(geometry.Rectangle(geometry.Box{Min: m.at, Max: end}), render.Stroke{Width: 0.4, Color: render.Black})
	for _, p := range m.Parts {
		on.Fill(m.path(p.Outline), pale)
		on.Stroke(m.path(p.Outline), line)
		for _, slit := range p.Inside {
			on.Stroke(m.path(slit), fine)
		}
	}
	column := leader.Column{Edge: m.at.X - 1, Leftward: true, Top: m.at.Y, Gap: 0.5}
	column.Bottom = max(end.Y, m.at.Y+Length(len(m.small))*(typeset.LineHeight(render.SmallSize)+column.Gap))
	var labels []leader.Label
	for _, i := range m.small {
		labels = append(labels, leader.Label{Name: fmt.Sprint(i + 1), Size: render.SmallSize, Anchor: m.path(m.Parts[i].Outline).Bounds().Center()})
	}
	column.Draw(on, column.Arrange(labels))
	for _, t := range m.names.Texts { // off the lines to the numbers of others
		on.Fill(geometry.Rectangle(typeset.Box(t.Text)), pale)
		on.Text(t.Text)
	}
	if len(m.small) == 0 {
		return end.Y
	}
	return column.Bottom
}

// numberBand is the room for the numbers of small parts.
const numberBand Length = 7

// pale is the ground of a piece.
var pale = render.Color{R: 0xEC, G: 0xEC, B: 0xEC}
