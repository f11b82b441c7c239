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

// overview draws the first page: what is made, how to print it, every piece. It
// tells whether the order of work found room on it.
func (b *booklet) overview() (ordered bool) {
	sheet := b.Setup.Sheet
	box := b.newPage(sheet.Width, sheet.Height)
	b.Bookmark("Overview")
	b.Begin(render.Legend)
	defer b.End()
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
	y = b.table(box, y) + 3
	bottom := layout.ParagraphUp(b, box, cautions, render.NoteSize)
	return b.work(geometry.Bx(box.Min.X, y, box.Max.X, bottom))
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
		y += typeset.LineHeight(render.BodySize) + 0.4
		b.Text(render.Text{At: geometry.Pt(box.Min.X, y), String: f[0], Size: render.BodySize, Color: render.Black})
		b.Text(render.Text{At: geometry.Pt(box.Min.X+88, y), String: f[1], Size: render.BodySize, Bold: true, Color: render.Black})
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

// work sets the warnings and the order of work in what is left of the page. It
// tells whether the order fitted.
func (b *booklet) work(box geometry.Box) bool {
	y := box.Min.Y
	for _, w := range b.plan.Warnings {
		y = b.paragraph(box, y, "Take care: "+oneCharacter.Replace(w)+".", render.NoteSize, true)
	}
	if len(b.plan.Order) == 0 {
		return true
	}
	need := typeset.LineHeight(render.HeadSize) + 4
	for _, o := range b.plan.Order {
		need += geometry.Length(len(typeset.Wrap(o, render.BodySize, false, box.Width()-5)))*typeset.LineHeight(render.BodySize) + typeset.Descent(render.BodySize) + 0.8
	}
	if y+1+need > box.Max.Y {
		return false
	}
	b.steps(geometry.Bx(box.Min.X, y+1, box.Max.X, box.Max.Y), orderHeading, b.plan.Order)
	return true
}

// oneCharacter writes common fractions of an inch as the sizes beside them are.
var oneCharacter = strings.NewReplacer(" 1/2 in", " ½ in", " 1/4 in", " ¼ in", " 3/4 in", " ¾ in", " 1/8 in", " ⅛ in", " 3/8 in", " ⅜ in", " 5/8 in", " ⅝ in", " 7/8 in", " ⅞ in")

const orderHeading = "Order of work"

// orderPage draws the order of work on a page of its own.
func (b *booklet) orderPage() {
	box := b.newPage(b.Setup.Sheet.Width, b.Setup.Sheet.Height)
	b.Begin(render.Legend)
	defer b.End()
	b.steps(box, orderHeading, b.plan.Order)
}

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
func (b *booklet) table(box geometry.Box, y geometry.Length) geometry.Length {
	w := box.Width()
	columns := []column{
		{head: "piece", left: 0, cell: func(i int) string { return b.plan.Drawn()[i].Name }},
		{head: "cut", right: 44, cell: func(i int) string { return b.cut(b.plan.Drawn()[i]) }},
		{head: "of", left: 50, cell: func(i int) string { return of(b.plan.Drawn()[i]) }},
		{head: "width", right: w - 86, cell: func(i int) string { w, _ := b.plan.Drawn()[i].Size(); return b.Round.Pretty(w) }},
		{head: "height", right: w - 58, cell: func(i int) string { _, h := b.plan.Drawn()[i].Size(); return b.Round.Pretty(h) }},
		{head: "grain along", left: w - 50, cell: func(i int) string { return string(b.plan.Drawn()[i].Grain) }},
		{head: "pages", right: w, cell: func(i int) string { return b.pagesText(b.layout.Patterns[i]) }},
	}
	row := func(bold bool, text func(column) string) {
		y += typeset.LineHeight(render.BodySize) + 1.6
		for _, c := range columns {
			t := render.Text{At: geometry.Pt(box.Min.X+c.left, y), String: text(c), Size: render.BodySize, Bold: bold, Color: render.Black}
			if c.right > 0 {
				t.At.X, t.Align = box.Min.X+c.right, render.End
			}
			b.Text(t)
		}
	}
	row(true, func(c column) string { return c.head })
	y += 1.6
	b.rule(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
	for i := range b.plan.Drawn() {
		row(false, func(c column) string { return c.cell(i) })
	}
	y += 2
	b.rule(geometry.Pt(box.Min.X, y), geometry.Pt(box.Max.X, y))
	y += 0.8
	note := "Sizes here are rounded " + b.Round.String() + "; the patterns are exact."
	for _, r := range b.plan.Remarks {
		note += " " + sentence(r.In(b.Round.Pretty))
	}
	for _, m := range b.plan.Mistaken {
		note += " Take care: " + m + "."
	}
	return b.paragraph(box, y, note, render.NoteSize, false)
}
