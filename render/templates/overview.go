package templates

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
	"forel/geometry/wording"
	"forel/paper"
	"forel/render"
	"forel/render/document"
	"forel/render/typeset"
)

// overview draws the first page: what is made, how to print it, every piece, the
// order of work; on further pages what has no room on it. The cautions stand at the
// bottom of the first, where the knife comes next.
func (b *booklet) overview() {
	what := ", every piece at true size"
	if len(b.marked()) > 0 {
		what = ", shaped pieces at true size, rectangles by their sizes"
	}
	opening := b.Opening(cmp.Or(wording.OneLine(b.plan.Title), wording.Capital(b.plan.Kind)), "Templates for a "+b.plan.Kind+what)
	blocks := []document.Block{opening, {Above: 1.5, Draw: b.facts}}
	blocks = append(blocks, b.howTo()...)
	blocks = append(blocks, document.Block{Above: 4, Draw: b.lineKey})
	blocks = append(blocks, b.table()...)
	for i, w := range b.plan.Warnings {
		k := b.Paragraph("Take care: "+oneCharacter.Replace(w)+".", render.NoteSize, true)
		if i == 0 {
			k.Above = 3
		}
		blocks = append(blocks, k)
	}
	var order []string
	for _, s := range b.plan.Steps {
		order = append(order, strings.Join(append([]string{s.Short.In(b.Round.Pretty)}, b.checks(s)...), " "))
	}
	if len(order) > 0 {
		blocks = append(blocks, b.Steps("Order of work", order)...)
	}
	blocks = append(blocks, b.markOut()...)
	care := wording.Careful(wording.Knife, wording.Adhesive, wording.Machine)
	if b.corner.Width() > 0 {
		b.Bookmark("Overview")
		b.Flow(func(int) geometry.Box { return b.corner }, append(blocks, b.Paragraph(care, render.NoteSize, false).After(3))...)
		return
	}
	b.Flow(func(page int) geometry.Box {
		box := b.NewPage(false, "")
		if page > 0 {
			return box
		}
		b.Bookmark("Overview")
		b.Label(render.Roman, 1)
		box.Max.Y -= document.ParagraphHeight(care, render.NoteSize, false, box.Width())
		document.Paragraph(b, box, box.Max.Y, care, render.NoteSize, false)
		return box
	}, blocks...)
}

// checks returns the checks of a step, a sentence each.
func (b *booklet) checks(s plan.Step) []string {
	var out []string
	for _, c := range s.Checks {
		var see []string
		for _, w := range c.See {
			see = append(see, w.In(b.Round.Pretty))
		}
		out = append(out, "Check ("+c.Name+"): "+strings.Join(see, "; ")+".")
	}
	return out
}

// howTo tells in two columns how to print, on the left, and how to cut and join,
// on the right; on a narrow sheet one below the other.
func (b *booklet) howTo() []document.Block {
	printing := []string{
		fmt.Sprintf("Print on %s at actual size: scale 100 %%, no \"fit to page\".", b.Setup.Sheet),
		"Print on one side of the sheet only: with both sides printed, cutting one pattern destroys the one behind it.",
		"Measure both rulers at the foot of a page: 100 mm and 4 in. If either is wrong, the printer has scaled the page: mend the setting and print again. If they are off by a hair, forel gauge has it corrected.",
	}
	if b.corner.Width() > 0 {
		printing = append(printing, "Two pieces are cut from a pattern that says cut 2. The key below shows what is where.")
	} else if len(b.layout.Patterns) > 0 {
		printing = append(printing, fmt.Sprintf("Two pieces are cut from a pattern that says cut 2. The key on page %d shows what is where.", b.keyPage))
	}
	cutting := []string{
		"A page with several patterns: cut it apart between them first. Leave the white and the circles about a pattern: some lie outside its outline.",
		"A pattern on several pages: cut the part below or to the right on its join line, lay it on its neighbour so that both circles meet those with the same name, and tape it. Hold both with a pin while you tape.",
		"Cut a pattern out only when all its parts are joined.",
	}
	if !slices.ContainsFunc(b.layout.Patterns, func(t paper.Tiling) bool { return !t.Whole() }) {
		cutting = []string{"A page with several patterns: cut it apart between them first."}
	}
	if marked := len(b.marked()); marked == len(b.plan.Drawn()) {
		cutting = []string{"Every piece is a plain rectangle: mark it out with rule and square, by the sheet after the order of work."}
	} else if marked > 0 {
		cutting = append(cutting, "Plain rectangles are marked out with rule and square, by the sheet after the order of work.")
	}
	const printHeading, cutHeading = "Print", "Join and cut"
	if b.corner.Width() == 0 && b.Room(false).Width() < narrow {
		return append(b.Steps(printHeading, printing), b.Steps(cutHeading, cutting)...)
	}
	return []document.Block{{Above: 3, Draw: func(box geometry.Box) geometry.Length {
		left, right := box, box
		left.Max.X, right.Min.X = box.Center().X-4, box.Center().X+4
		return max(document.Steps(b, left, printHeading, printing), document.Steps(b, right, cutHeading, cutting))
	}}}
}

// facts draws the measurements that all sizes come from.
func (b *booklet) facts(box geometry.Box) geometry.Length {
	y := box.Min.Y
	var names, thicknesses []string
	for _, m := range b.plan.Materials {
		names = append(names, string(m.Of))
		thicknesses = append(thicknesses, b.thick(m.Thickness))
	}
	var rows [][2]string
	for _, f := range b.plan.Facts {
		rows = append(rows, [2]string{wording.Capital(f.Name), f.Says().In(b.Round.Pretty)})
	}
	rows = append(rows,
		[2]string{"Sheets of patterns", b.sheetsText()},
		[2]string{"Thickness: " + strings.Join(names, ", "), strings.Join(thicknesses, ", ")})
	for _, f := range rows {
		const gutter = 2
		half := min(88, box.Width()*0.52)
		names := typeset.Break(f[0], render.BodySize, false, half-gutter)
		values := typeset.Break(f[1], render.BodySize, true, box.Width()-half)
		for i := range max(len(names), len(values)) {
			y += typeset.LineHeight(render.BodySize)
			if i == 0 {
				y += 0.4
			}
			if i < len(names) {
				document.Write(b, geometry.Pt(box.Min.X, y), names[i], render.BodySize, false)
			}
			if i < len(values) {
				document.Write(b, geometry.Pt(box.Min.X+half, y), values[i], render.BodySize, true)
			}
		}
	}
	return y + typeset.Descent(render.BodySize)
}

// sheetsText returns how many sheets show patterns, and how few could.
func (b *booklet) sheetsText() string {
	if len(b.layout.Pages) == 0 {
		return "none: every piece is marked out"
	}
	text := fmt.Sprintf("%d; their area alone would fill %d", len(b.layout.Pages), b.layout.AtLeast)
	if b.layout.Blank > 0 {
		text += fmt.Sprintf(", and %d that would be blank left out", b.layout.Blank)
	}
	return text
}

// thick writes the thickness of a material, which is finer than any ruler.
func (b *booklet) thick(l geometry.Length) string {
	return fmt.Sprintf("%.3g %v", float64(l/b.Round.Unit.Length()), b.Round.Unit)
}

// oneCharacter writes common fractions of an inch as the sizes beside them are.
var oneCharacter = strings.NewReplacer(" 1/2 in", " ½ in", " 1/4 in", " ¼ in", " 3/4 in", " ¾ in", " 1/8 in", " ⅛ in", " 3/8 in", " ⅜ in", " 5/8 in", " ⅝ in", " 7/8 in", " ⅞ in")

// lineKey shows what each line means.
func (b *booklet) lineKey(box geometry.Box) geometry.Length {
	x, y := box.Min.X, box.Min.Y+typeset.LineHeight(render.NoteSize)
	fold := "fold toward you"
	if slices.ContainsFunc(b.plan.Pieces, func(p geometry.Piece) bool { return p.Material.Crushed() }) {
		fold += "; crush " + string(geometry.Corrugated) + ", never cut it"
	}
	for _, k := range []struct {
		stroke render.Stroke
		text   string
	}{
		{b.Theme[render.Cutting], "cut"},
		{b.Theme[render.Creasing], fold},
		{b.Theme[render.Positions], "rule: something lies here"},
		{joinStroke, "join of two parts"},
		{overlapStroke, "end of the overlap"},
	} {
		if x+24+typeset.Width(k.text, render.NoteSize, false) > box.Max.X {
			x, y = box.Min.X, y+typeset.LineHeight(render.NoteSize)
		}
		mid := y - typeset.Ascent(render.NoteSize)/2 + 0.3
		b.Stroke(geometry.Line(geometry.Pt(x, mid), geometry.Pt(x+22, mid)), k.stroke)
		document.Write(b, geometry.Pt(x+24, y), k.text, render.NoteSize, false)
		x += 24 + typeset.Width(k.text, render.NoteSize, false) + 6
	}
	return y + typeset.Descent(render.NoteSize)
}
