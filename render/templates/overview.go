package templates

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"forel/geometry"
	"forel/geometry/plan"
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
		title = "Slipcase"
	}
	y := layout.Title(b, box, title, "Templates for a "+b.plan.Kind+", every piece at true size")
	y = b.facts(box, y+1.5) + 3

	// Two columns: how to print on the left, how to cut and join on the right.
	const gutter = 8
	half := (box.Width() - gutter) / 2
	left := geometry.Bx(box.Min.X, y, box.Min.X+half, box.Max.Y)
	right := geometry.Bx(box.Max.X-half, y, box.Max.X, box.Max.Y)
	cutting := []string{"A page with several patterns: cut it apart between them first. A pattern on several pages: cut the part below or to the right on its join line, lay it on its neighbour so that the circles with the same name meet, and tape it."}
	for _, c := range b.plan.Cutting {
		cutting = append(cutting, c.In(b.Round.Pretty))
	}
	y = max(
		b.steps(left, "Print", []string{
			fmt.Sprintf("Print on %s at actual size: scale 100 %%, no \"fit to page\".", sheet),
			"Measure both rulers at the foot of a page: 100 mm and 4 in. If either is wrong, the printer has scaled the page: mend the setting and print again. If they are off by a hair, forel gauge has it corrected.",
			fmt.Sprintf("Two pieces are cut from a pattern that says cut 2. The key on page %d shows what is where.", b.keyPage),
		}),
		b.steps(right, "Join and cut", cutting),
	) + 4
	y = b.lineKey(box, y) + 3
	f := &flow{b, box, y, layout.ParagraphUp(b, box, cautions, render.NoteSize)}
	f.table()
	f.y += 3
	for _, w := range b.plan.Warnings {
		f.paragraph("Take care: "+oneCharacter.Replace(w)+".", render.NoteSize, true)
	}
	if len(b.plan.Order) > 0 {
		f.steps(orderHeading, b.plan.Order)
	}
	f.End()
}

// facts draws the measurements that all sizes come from.
func (b *booklet) facts(box geometry.Box, y geometry.Length) geometry.Length {
	c := b.plan
	three := func(s plan.Size) string {
		return b.Round.PrettyNumber(s.Height) + " × " + b.Round.PrettyNumber(s.Width) + " × " + b.Round.Pretty(s.Thickness)
	}
	var names, thicknesses []string
	for _, m := range c.Materials {
		names = append(names, m.Name)
		thicknesses = append(thicknesses, b.thick(m.Thickness))
	}
	for _, f := range [][2]string{
		{capital(c.Content) + ": height × width × thickness", three(c.Contents)},
		{"Room inside the case", three(c.Cavity)},
		{"Outside, without covering", three(c.Outside)},
		{"Left at the mouth, the tightest place", fmt.Sprintf("height %s (in the corners %s), thickness %s", b.Round.Pretty(c.Mouth.Height), b.Round.Pretty(c.Mouth.HeightCorners), b.Round.Pretty(c.Mouth.Thickness))},
		{"Sheets of patterns", b.sheetsText()},
		{"Thickness: " + strings.Join(names, ", "), strings.Join(thicknesses, ", ")},
	} {
		const half, gutter = 88, 2
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

// steps draws numbered steps under a heading.
func (b *booklet) steps(box geometry.Box, heading string, steps []string) geometry.Length {
	return layout.Steps(b, box, heading, steps)
}

// paragraph sets text below y within a box's sides and gives where it ends.
func (b *booklet) paragraph(box geometry.Box, y geometry.Length, text string, size render.Points, bold bool) geometry.Length {
	return layout.Paragraph(b, box, y, text, size, bold)
}

// oneCharacter writes common fractions of an inch as the sizes beside them are.
var oneCharacter = strings.NewReplacer(" 1/2 in", " ½ in", " 1/4 in", " ¼ in", " 3/4 in", " ¾ in", " 1/8 in", " ⅛ in", " 3/8 in", " ⅜ in", " 5/8 in", " ⅝ in", " 7/8 in", " ⅞ in")

const orderHeading = "Order of work"

// lineKey shows what each line means.
func (b *booklet) lineKey(box geometry.Box, y geometry.Length) geometry.Length {
	x := box.Min.X
	y += typeset.LineHeight(render.NoteSize)
	for _, k := range []struct {
		stroke render.Stroke
		text   string
	}{
		{b.Theme[render.Cutting], "cut"},
		{b.Theme[render.Creasing], "fold toward you"},
		{b.Theme[render.Positions], "rule: something lies here"},
		{joinStroke, "join of two parts"},
		{overlapStroke, "end of the overlap"},
	} {
		if x+24+typeset.Width(k.text, render.NoteSize, false) > box.Max.X {
			x, y = box.Min.X, y+typeset.LineHeight(render.NoteSize)
		}
		mid := y - typeset.Ascent(render.NoteSize)/2 + 0.3
		b.Stroke(geometry.Line(geometry.Pt(x, mid), geometry.Pt(x+22, mid)), k.stroke)
		b.Text(render.Text{At: geometry.Pt(x+24, y), String: k.text, Size: render.NoteSize, Color: render.Black})
		x += 24 + typeset.Width(k.text, render.NoteSize, false) + 6
	}
	return y + typeset.Descent(render.NoteSize)
}

// column is one column of the table of pieces.
type column struct {
	head  string
	right geometry.Length // of its text, from the table's left; 0: starts at left
	left  geometry.Length
	wrap  geometry.Length    // where its text is broken; 0: nowhere
	cell  func(i int) string // of the ith piece
}

// cut gives how many of a pattern are cut: none of one that is a piece seen from
// its other face.
func (b *booklet) cut(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "–"
	}
	return fmt.Sprint(p.Count)
}

// of gives what a pattern is cut from.
func of(p geometry.Piece) string {
	if p.FaceOf != "" {
		return "drawing"
	}
	return string(p.Material)
}

// table lists every piece with its size and pages.
func (f *flow) table() {
	w := f.box.Width()
	const pages = 28 // wide at most
	drawn := f.plan.Drawn()
	columns := []column{
		{head: "piece", left: 0, cell: func(i int) string { return drawn[i].Name }},
		{head: "cut", right: 44, cell: func(i int) string { return f.cut(drawn[i]) }},
		{head: "of", left: 50, cell: func(i int) string { return of(drawn[i]) }},
		{head: "width", right: w - 86, cell: func(i int) string { w, _ := drawn[i].Size(); return f.Round.Pretty(w) }},
		{head: "height", right: w - 58, cell: func(i int) string { _, h := drawn[i].Size(); return f.Round.Pretty(h) }},
		{head: "grain along", left: w - 50, cell: func(i int) string { return string(drawn[i].Grain) }},
		{head: "pages", right: w, wrap: pages, cell: func(i int) string { return f.pagesText(f.layout.Patterns[i]) }},
	}
	line := typeset.LineHeight(render.BodySize)
	row := func(bold bool, cells [][]string) {
		f.y += 1.6
		for i, c := range columns {
			for k, text := range cells[i] {
				t := render.Text{At: geometry.Pt(f.box.Min.X+c.left, f.y+geometry.Length(k+1)*line), String: text, Size: render.BodySize, Bold: bold, Color: render.Black}
				if c.right > 0 {
					t.At.X, t.Align = f.box.Min.X+c.right, render.End
				}
				f.Text(t)
			}
		}
		f.y += geometry.Length(tallest(cells)) * line
	}
	head := func() {
		var cells [][]string
		for _, c := range columns {
			cells = append(cells, []string{c.head})
		}
		row(true, cells)
		f.y += 1.6
		f.rule(geometry.Pt(f.box.Min.X, f.y), geometry.Pt(f.box.Max.X, f.y))
	}
	const below = 2 // the last row, to the rule
	f.room(2 * (1.6 + line + below))
	head()
	for i := range drawn {
		var cells [][]string
		for _, c := range columns {
			text := []string{c.cell(i)}
			if c.wrap > 0 {
				text = typeset.Break(text[0], render.BodySize, false, c.wrap)
			}
			cells = append(cells, text)
		}
		if f.room(1.6 + geometry.Length(tallest(cells))*line + below) {
			head()
		}
		row(false, cells)
	}
	f.y += below
	f.rule(geometry.Pt(f.box.Min.X, f.y), geometry.Pt(f.box.Max.X, f.y))
	f.y += 0.8
	note := "Sizes here are rounded " + f.Round.String() + "; the patterns are exact."
	for _, r := range f.plan.Remarks {
		note += " " + sentence(r.In(f.Round.Pretty))
	}
	for _, m := range f.plan.Mistaken {
		note += " Take care: " + m + "."
	}
	f.paragraph(note, render.NoteSize, false)
}

// tallest gives how many lines a row of a table takes.
func tallest(cells [][]string) (lines int) {
	for _, c := range cells {
		lines = max(lines, len(c))
	}
	return lines
}
