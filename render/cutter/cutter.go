// Package cutter draws the bed of a laser or a drag knife, for the maker a map of it, and
// for the machine hairlines at true size, a layer for each thing it does in the order it does them, and
// no transform, clip or dash that a machine's software could take wrongly.
package cutter

import (
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/wording"
	"forel/paper/bed"
	"forel/paper/stock"
	"forel/render"
	"forel/render/svg"
)

// layers has the layer of each kind of step.
var layers = map[bed.Kind]render.Layer{
	bed.Crease:  render.Creasing,
	bed.Inside:  render.InsideCuts,
	bed.Outside: render.Cutting,
}

// Options say what is drawn beside the cuts.
type Options struct {
	Title  string // of the work
	Beds   int    // of this bed's material
	Labels bool   // names and the lines to rule, in layers of their own
	Line   Length // the width of every line: what it means is its layer
	Theme  render.Theme
}

// FileName returns the name of a bed's drawing, such as "board-1.svg".
func FileName(b bed.Bed) string { return fmt.Sprintf("%s-%d.svg", stem(b.Material), b.Number) }

func stem(m geometry.Material) string { return strings.ReplaceAll(string(m), " ", "-") }

// SVG returns the drawing of a bed in real millimetres. The layers come in the order
// they are done, and so do the parts in each.
func SVG(b bed.Bed, s bed.Setup, o Options) []byte {
	title := fmt.Sprintf("%s, bed %d of %d of this material", b.Stock, b.Number, o.Beds)
	if o.Title != "" {
		title += " – " + o.Title
	}
	c := svg.New(b.Width, b.Height, title, describe(b, s, o))
	if o.Labels {
		label(c, b, o)
	}
	cuts(c, b, o)
	return c.Bytes()
}

// TestSVG returns the drawing of the test square.
func TestSVG(b bed.Bed, s bed.Setup, o Options) []byte {
	c := svg.New(b.Width, b.Height, "Test square for the kerf", strings.Join(testSteps(s), " ")+" One user unit is one millimetre. "+wording.Careful(wording.Machine))
	cuts(c, b, o)
	return c.Bytes()
}

// testSteps tells how the test square is used.
func testSteps(s bed.Setup) []string {
	mm := func(l Length) string { return fmt.Sprintf("%.4g mm", l.MM()) }
	kerf := fmt.Sprintf("kerf = (slot - square + %s) / 2", mm(bed.TestSide-bed.TestSlot))
	if s.Kerf > 0 {
		kerf = fmt.Sprintf("kerf = %s + (slot - square + %s) / 2", mm(s.Kerf), mm(bed.TestSide-bed.TestSlot))
	}
	return []string{
		"Cut the test square from the stock that you will cut, at the same settings.",
		"Measure the square and the width of its slot with a caliper, each at two places and the square both ways; take the mean of each.",
		fmt.Sprintf("%s. Give it as --kerf.", kerf),
		fmt.Sprintf("With the right kerf the square measures %s and the slot %s; a knife takes nothing away, and gives these with a kerf of 0.", mm(bed.TestSide), mm(bed.TestSlot)),
		"A square that is longer one way than the other is a fault of the machine's steps: see its manual.",
	}
}

// cuts draws what the tool does, in order.
func cuts(c *svg.Canvas, b bed.Bed, o Options) {
	for kind := bed.Crease; kind <= bed.Outside; kind++ {
		draw(c, b, kind, o)
	}
}

// draw draws one layer, a group for each part and each time the tool comes to it.
func draw(c *svg.Canvas, b bed.Bed, kind bed.Kind, o Options) {
	layer := layers[kind]
	line := render.Stroke{Width: o.Line, Color: o.Theme[layer].Color}
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
	d += "Layers, in the order they are done: "
	switch {
	case !Creases([]bed.Bed{b}):
	case b.Material.Crushed():
		d += "Creasing: crush, never cut. "
	default:
		d += "Creasing: score or crease, never through. "
	}
	d += "Inside-cuts: holes and slits. Cutting: outlines. "
	if b.Shared > 0 {
		d += "An edge that two pieces share is cut once. "
	}
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
	if c := Crushing(b); c != "" {
		d += wording.Sentence(c) + " "
	}
	if b.Register.Any() {
		d += "Patterned stock: " + Register(b.Register) + ". "
	}
	if s.Tabs > 0 {
		d += fmt.Sprintf("Each outline is held by %d tabs of %.4g mm: cut them by knife. ", s.Tabs, s.TabWidth.MM())
	}
	return d + "Each piece is drawn with the face up that its group names. " + wording.Careful(wording.Machine)
}

// Creases tells whether anything is creased on some beds.
func Creases(beds []bed.Bed) bool {
	return slices.ContainsFunc(beds, func(b bed.Bed) bool {
		return slices.ContainsFunc(b.Steps, func(s bed.Step) bool { return s.Kind == bed.Crease })
	})
}

// Crushing tells what is done about the folds of what must be crushed, and what it
// does under a laser (common practice, no source); nothing of other materials.
func Crushing(b bed.Bed) string {
	if !b.Material.Crushed() {
		return ""
	}
	name := string(b.Material)
	folds := "no fold is drawn: crush the folds by hand, from the printed template; a blade or a laser would cut them"
	if Creases([]bed.Bed{b}) {
		folds = "the layer Creasing is for a blunt creasing tool and nothing else: no knife, and no laser at any power; on a machine without one leave it out"
	}
	return name + ": " + folds + ". Under a laser it catches fire easily, since there is air in its flutes: stay beside it"
}

// grain tells how the stock is laid on the bed.
func grain(m geometry.Material, s bed.Setup) string {
	switch g := s.GrainOf(m); g {
	case stock.NoGrain:
		return "Stock without " + m.Direction() + ". "
	default:
		return fmt.Sprintf("Lay the stock with its %s along the %s of the bed. ", m.Direction(), g)
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
