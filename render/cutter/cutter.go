// Package cutter draws the bed of a laser or a drag knife for the machine: hairlines
// at true size, a layer for each thing it does in the order it does them, and
// no transform, clip or dash that a machine's software could take wrongly.
package cutter

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/render"
	"forel/render/svg"
)

// hairline is the width of every line: what it means is its layer.
const hairline geometry.Length = 0.05

// layers gives the layer of each kind of step.
var layers = map[bed.Kind]render.Layer{
	bed.Crease:  render.Creasing,
	bed.Inside:  render.CuttingInside,
	bed.Outside: render.Cutting,
}

// Options say what is drawn beside the cuts.
type Options struct {
	Title  string // of the work
	Beds   int    // of this bed's material
	Labels bool   // names and the lines to rule, in layers of their own
	Theme  render.Theme
}

// FileName gives the name of a bed's drawing, such as "board-1.svg".
func FileName(b bed.Bed) string { return fmt.Sprintf("%s-%d.svg", b.Material, b.Number) }

// SVG gives the drawing of a bed in real millimetres. The layers come in the order
// they are done, and so do the parts in each.
func SVG(b bed.Bed, s bed.Setup, o Options) []byte {
	title := fmt.Sprintf("%s, bed %d of %d of this material", b.Stock, b.Number, o.Beds)
	if o.Title != "" {
		title += " – " + o.Title
	}
	c := svg.New(b.Width, b.Height, title, describe(b, s, o))
	if o.Labels {
		label(c, b, o.Theme)
	}
	for kind := bed.Crease; kind <= bed.Outside; kind++ {
		draw(c, b, kind, o.Theme)
	}
	return c.Bytes()
}

// draw draws one layer, a group for each part and each time the tool comes to it.
func draw(c *svg.Canvas, b bed.Bed, kind bed.Kind, theme render.Theme) {
	layer := layers[kind]
	line := render.Stroke{Width: hairline, Color: theme[layer].Color}
	begun := false
	part, times := -1, map[int]int{}
	for _, step := range b.Steps {
		if step.Kind != kind {
			continue
		}
		if !begun {
			c.Begin(layer)
			begun = true
		}
		if step.Part != part {
			if part >= 0 {
				c.EndPart()
			}
			part = step.Part
			times[part]++
			begin(c, b, layer, part, times[part])
		}
		for _, p := range step.Paths {
			c.Stroke(p, line)
		}
	}
	if begun {
		c.EndPart()
		c.End()
	}
}

// begin opens the group of a part: its number on the bed and its name; and which time it
// is, where the tool comes to it more than once.
func begin(c *svg.Canvas, b bed.Bed, layer render.Layer, part, time int) {
	p := b.Parts[part]
	id := fmt.Sprintf("%s.%d.%s", layer, part+1, strings.ReplaceAll(p.Piece.Name, " ", "-"))
	if time > 1 {
		id += fmt.Sprintf(".%d", time)
	}
	c.BeginPart(id, fmt.Sprintf("%d: %s; %s", part+1, p.Name(), p.Piece.FaceUp))
}

// describe tells what the drawing is and how to take care with it.
func describe(b bed.Bed, s bed.Setup, o Options) string {
	d := fmt.Sprintf("Pieces: %d, of %s, on a bed of %s. One user unit is one millimetre. ", len(b.Parts), b.Stock, s)
	d += "Layers, in the order they are done: Creasing: score or crease, never through; switch it off for what is folded by hand, as cloth and paper are. " +
		"CuttingInside: holes and slits. Cutting: outlines. "
	if o.Labels {
		d += "Positions and Legend are for a pen or to look at: never cut them. "
	}
	if s.Kerf > 0 {
		d += fmt.Sprintf("Kerf %.4g mm: outlines are grown and holes shrunk by half of it, slits are as drawn; do not compensate again. ", s.Kerf.MM())
		if short := shortest(b); short > 0.01 {
			d += fmt.Sprintf("In inward corners the beam leaves up to %.2f mm: clear it with a knife where it matters. ", short.MM())
		}
	} else {
		d += "Kerf 0: the tool follows the pieces' own outlines; a drag knife's blade offset is left to its driver. "
	}
	d += grain(b.Material, s)
	if b.Register.Any() {
		d += "Patterned stock: " + Register(b.Register) + ". "
	}
	if s.Tabs > 0 {
		d += fmt.Sprintf("Each outline is held by %d tabs of %.4g mm: cut them by knife. ", s.Tabs, s.TabWidth.MM())
	}
	return d + "Each piece is drawn with the face up that its group names. " + wording.Careful(wording.Machine)
}

// grain tells how the stock is laid on the bed.
func grain(m geometry.Material, s bed.Setup) string {
	switch g := s.GrainOf(m); g {
	case bed.NoGrain:
		return "Stock without grain. "
	default:
		return fmt.Sprintf("Lay the stock with its grain along the %s of the bed. ", g)
	}
}

// Register tells how patterned stock is laid on the bed.
func Register(r bed.Register) string {
	words := "lay it with the pattern up"
	if r.StepX > 0 {
		words += fmt.Sprintf(", a line of it %.2f mm from the bed's left edge (and every %.4g mm)", r.AtX.MM(), r.StepX.MM())
	}
	if r.StepY > 0 {
		words += fmt.Sprintf(", a line %.2f mm from its top edge (and every %.4g mm)", r.AtY.MM(), r.StepY.MM())
	}
	if r.Up != "" {
		words += ", the pattern's top toward the bed's " + r.Up
	}
	return words
}

func shortest(b bed.Bed) (most geometry.Length) {
	for _, p := range b.Parts {
		most = max(most, p.Short)
	}
	return most
}
