package templates

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"forel/geometry"
	"forel/render"
	"forel/render/layout"
	"forel/render/typeset"
)

// cautions stand on the overview, where the knife comes next (common practice,
// no source).
const cautions = "Knives cut people: use a sharp blade and a heavy straightedge, keep fingers behind its edge, cut away from yourself in several light passes, " +
	"and put the cap back on. Adhesives: read the label, air the room. Laser or drag knife: read the maker's manual, never cut chlorinated plastics (PVC, some coated cloths) " +
	"with a laser, never leave one running alone, use extraction. Local rules and trained people come first."

// overview draws the first page: what is made, how to print it, every piece, the
// order of work; on further pages what has no room on it.
func (b *booklet) overview() {
	sheet := b.Setup.Sheet
	box := b.newPage(sheet.Width, sheet.Height)
	b.Bookmark("Overview")
	b.Label(render.Roman, 1)
	b.Begin(render.Legend)
	title := b.plan.Title
	if title == "" {
		title = capital(b.plan.Kind)
	}
	y := layout.Title(b, box, title, "Templates for a "+b.plan.Kind+", every piece at true size")
	y = b.facts(box, y+1.5) + 3

	f := &flow{b, box, y, layout.ParagraphUp(b, box, cautions, render.NoteSize)}
	f.howTo()
	f.lineKey()
	f.table()
	f.y += 3
	for _, w := range b.plan.Warnings {
		f.paragraph("Take care: "+oneCharacter.Replace(w)+".", render.NoteSize, true)
	}
	var order []string
	for _, s := range b.plan.Steps {
		if s.Short.Text != "" {
			order = append(order, s.Short.In(b.Round.Pretty))
		}
	}
	if len(order) > 0 {
		f.steps(orderHeading, order)
	}
	f.End()
}

// howTo tells in two columns how to print, on the left, and how to cut and join,
// on the right; where there is no room for columns one below the other.
func (f *flow) howTo() {
	printing := []string{
		fmt.Sprintf("Print on %s at actual size: scale 100 %%, no \"fit to page\".", f.Setup.Sheet),
		"Measure both rulers at the foot of a page: 100 mm and 4 in. If either is wrong, the printer has scaled the page: mend the setting and print again. If they are off by a hair, forel gauge has it corrected.",
		fmt.Sprintf("Two pieces are cut from a pattern that says cut 2. The key on page %d shows what is where.", f.keyPage),
	}
	cutting := []string{"A page with several patterns: cut it apart between them first. A pattern on several pages: cut the part below or to the right on its join line, lay it on its neighbour so that the circles with the same name meet, and tape it."}
	const printHeading, cutHeading = "Print", "Join and cut"
	const gutter = 8
	half := (f.box.Width() - gutter) / 2
	if f.y+max(layout.StepsHeight(printHeading, printing, half), layout.StepsHeight(cutHeading, cutting, half)) > f.bottom {
		f.steps(printHeading, printing)
		f.steps(cutHeading, cutting)
		return
	}
	left := geometry.Bx(f.box.Min.X, f.y, f.box.Min.X+half, f.box.Max.Y)
	right := geometry.Bx(f.box.Max.X-half, f.y, f.box.Max.X, f.box.Max.Y)
	f.y = max(layout.Steps(f, left, printHeading, printing), layout.Steps(f, right, cutHeading, cutting)) + 4
}

// facts draws the measurements that all sizes come from.
func (b *booklet) facts(box geometry.Box, y geometry.Length) geometry.Length {
	var names, thicknesses []string
	for _, m := range b.plan.Materials {
		names = append(names, m.Name)
		thicknesses = append(thicknesses, b.thick(m.Thickness))
	}
	var rows [][2]string
	for _, f := range b.plan.Facts {
		rows = append(rows, [2]string{capital(f.Name), f.Says().In(b.Round.Pretty)})
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
				layout.Write(b, geometry.Pt(box.Min.X, y), names[i], render.BodySize, false)
			}
			if i < len(values) {
				layout.Write(b, geometry.Pt(box.Min.X+half, y), values[i], render.BodySize, true)
			}
		}
	}
	return y + typeset.Descent(render.BodySize)
}

// sheetsText gives how many sheets show patterns, and how few could.
func (b *booklet) sheetsText() string {
	text := fmt.Sprintf("%d; their area alone would fill %d", len(b.layout.Pages), b.layout.AtLeast)
	if b.layout.Blank > 0 {
		text += fmt.Sprintf(", and %d that would be blank left out", b.layout.Blank)
	}
	return text
}

// sentence gives a remark a capital and a full stop.
func sentence(s string) string {
	return capital(s) + "."
}

func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// thick writes the thickness of a material, which is finer than any ruler.
func (b *booklet) thick(l geometry.Length) string {
	return fmt.Sprintf("%.3g %v", float64(l/b.Round.Unit.Length()), b.Round.Unit)
}

// paragraph sets text below y within a box's sides and gives where it ends.
func (b *booklet) paragraph(box geometry.Box, y geometry.Length, text string, size render.Points, bold bool) geometry.Length {
	return layout.Paragraph(b, box, y, text, size, bold)
}

// oneCharacter writes common fractions of an inch as the sizes beside them are.
var oneCharacter = strings.NewReplacer(" 1/2 in", " ½ in", " 1/4 in", " ¼ in", " 3/4 in", " ¾ in", " 1/8 in", " ⅛ in", " 3/8 in", " ⅜ in", " 5/8 in", " ⅝ in", " 7/8 in", " ⅞ in")

const orderHeading = "Order of work"

// lineKey shows what each line means.
func (f *flow) lineKey() {
	const rows = 3 // at most
	f.room(rows * typeset.LineHeight(render.NoteSize))
	x, y := f.box.Min.X, f.y+typeset.LineHeight(render.NoteSize)
	for _, k := range []struct {
		stroke render.Stroke
		text   string
	}{
		{f.Theme[render.Cutting], "cut"},
		{f.Theme[render.Creasing], "fold toward you"},
		{f.Theme[render.Positions], "rule: something lies here"},
		{joinStroke, "join of two parts"},
		{overlapStroke, "end of the overlap"},
	} {
		if x+24+typeset.Width(k.text, render.NoteSize, false) > f.box.Max.X {
			x, y = f.box.Min.X, y+typeset.LineHeight(render.NoteSize)
		}
		mid := y - typeset.Ascent(render.NoteSize)/2 + 0.3
		f.Stroke(geometry.Line(geometry.Pt(x, mid), geometry.Pt(x+22, mid)), k.stroke)
		f.Text(render.Text{At: geometry.Pt(x+24, y), String: k.text, Size: render.NoteSize, Color: render.Black})
		x += 24 + typeset.Width(k.text, render.NoteSize, false) + 6
	}
	f.y = y + typeset.Descent(render.NoteSize) + 3
}
