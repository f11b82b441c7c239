package templates

import (
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
func (d *doc) overview() {
	what := ", every piece at true size"
	if len(d.marked()) > 0 {
		what = ", shaped pieces at true size, rectangles by their sizes"
	}
	opening := d.Opening(wording.Titled(d.plan.Title, d.plan.Kind), "Templates for a "+d.plan.Kind+what)
	blocks := []document.Block{opening, {Above: 1.5, Draw: d.facts}}
	blocks = append(blocks, d.howTo()...)
	blocks = append(blocks, document.Block{Above: 4, Draw: d.lineKey})
	blocks = append(blocks, d.table()...)
	for i, w := range d.plan.Warnings {
		k := d.Paragraph("Take care: "+oneCharacter.Replace(w)+".", render.NoteSize, true)
		if i == 0 {
			k.Above = 3
		}
		blocks = append(blocks, k)
	}
	var order []string
	for _, s := range d.plan.Steps {
		order = append(order, strings.Join(append([]string{s.Short.In(d.Round.Pretty)}, d.checks(s)...), " "))
	}
	if len(order) > 0 {
		blocks = append(blocks, d.Steps("Order of work", order)...)
	}
	if t := d.found(); len(t.Rows) > 0 {
		blocks = append(blocks, d.Table("What a finding means", t)...)
	}
	blocks = append(blocks, d.markOut()...)
	care := wording.Careful(wording.Knife, wording.Adhesive, wording.Machine)
	if d.corner.Width() > 0 {
		d.Bookmark("Overview")
		d.Flow(func(int) geometry.Box { return d.corner }, append(blocks, d.Paragraph(care, render.NoteSize, false).After(3))...)
		return
	}
	d.Flow(func(page int) geometry.Box {
		box := d.NewPage(false, "")
		if page > 0 {
			return box
		}
		d.Bookmark("Overview")
		d.Label(render.Roman, 1)
		box.Max.Y -= document.ParagraphHeight(care, render.NoteSize, false, box.Width())
		document.Paragraph(d, box, box.Max.Y, care, render.NoteSize, false)
		return box
	}, blocks...)
}

// checks returns the checks of a step, a sentence each.
func (d *doc) checks(s plan.Step) []string {
	var out []string
	for _, c := range s.Checks {
		var see []string
		for _, w := range c.See {
			see = append(see, w.In(d.Round.Pretty))
		}
		out = append(out, "Check ("+c.Name+"): "+strings.Join(see, "; ")+".")
	}
	return out
}

// found lists what may be found at the checks, each with the number of its step.
func (d *doc) found() document.Table {
	t := document.Found(nil)
	t.Columns = append([]document.Column{{Head: "step", Right: true}}, t.Columns...)
	for _, c := range d.plan.Checks() {
		for _, row := range plan.Told(c.Found, d.Round.Pretty) {
			t.Rows = append(t.Rows, append([]string{fmt.Sprint(c.Step)}, row...))
		}
	}
	return t
}

// howTo tells in two columns how to print, on the left, and how to cut and join,
// on the right; on a narrow sheet one below the other.
func (d *doc) howTo() []document.Block {
	printing := []string{
		fmt.Sprintf("Print on %s at actual size: scale 100 %%, no \"fit to page\".", d.Setup.Sheet),
		"Print on one side of the sheet only: with both sides printed, cutting one template destroys the one behind it.",
		"Measure both rulers at the foot of a page: 100 mm and 4 in. If either is wrong, the printer has scaled the page: mend the setting and print again. If they are off by a hair, forel gauge has it corrected.",
	}
	if d.corner.Width() > 0 {
		printing = append(printing, "Two pieces are cut from a template that says cut 2. The key below shows what is where.")
	} else if len(d.layout.Tilings) > 0 {
		printing = append(printing, fmt.Sprintf("Two pieces are cut from a template that says cut 2. The key on page %d shows what is where.", d.keyPage))
	}
	if parts := d.parts(); len(parts) > 1 {
		printing = append(printing, "Print one part, make it and measure it before you print the next: "+strings.Join(parts, "; ")+".")
	}
	cutting := []string{
		"A page with several templates: cut it apart between them first. Leave the white and the circles about a template: some lie outside its outline.",
		"A template on several pages: cut the part below or to the right on its join line, lay it on its neighbour so that both circles meet those with the same name, and tape it. Hold both with a pin while you tape.",
		"Cut a template out only when all its parts are joined.",
	}
	if !slices.ContainsFunc(d.layout.Tilings, func(t paper.Tiling) bool { return !t.Whole() }) {
		cutting = []string{"A page with several templates: cut it apart between them first."}
	}
	if marked := len(d.marked()); marked == len(d.plan.Drawn()) {
		cutting = []string{"Every piece is a plain rectangle: mark it out with rule and square, by the sheet after the order of work."}
	} else if marked > 0 {
		cutting = append(cutting, "Plain rectangles are marked out with rule and square, by the sheet after the order of work.")
	}
	const printHeading, cutHeading = "Print", "Join and cut"
	if d.corner.Width() == 0 && d.Room(false).Width() < narrow {
		return append(d.Steps(printHeading, printing), d.Steps(cutHeading, cutting)...)
	}
	return []document.Block{{Above: 3, Draw: func(box geometry.Box) geometry.Length {
		left, right := box, box
		left.Max.X, right.Min.X = box.Center().X-4, box.Center().X+4
		return max(document.Below(left, d.Steps(printHeading, printing)...), document.Below(right, d.Steps(cutHeading, cutting)...))
	}}}
}

// parts names what is made one after the other, each with the pages that it is printed on.
func (d *doc) parts() (out []string) {
	for _, b := range d.plan.Batches {
		var of []paper.Tiling
		for _, t := range d.layout.Tilings {
			if d.plan.BatchOf(t.Piece) == b.Name {
				of = append(of, t)
			}
		}
		if len(of) > 0 {
			pages := d.pagesText(of...)
			word := "page "
			if strings.ContainsAny(pages, "–,") {
				word = "pages "
			}
			out = append(out, b.Name+", "+word+pages)
		}
	}
	return out
}

// facts draws the measurements that all sizes come from.
func (d *doc) facts(box geometry.Box) geometry.Length {
	y := box.Min.Y
	var names, thicknesses []string
	for _, m := range d.plan.Materials {
		names = append(names, string(m.Of))
		thicknesses = append(thicknesses, d.thick(m.Thickness))
	}
	var rows [][2]string
	for _, f := range d.plan.Facts {
		rows = append(rows, [2]string{wording.Capital(f.Name), f.Says().In(d.Round.Pretty)})
	}
	rows = append(rows,
		[2]string{"Sheets of templates", d.sheetsText()},
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
				document.Write(d, geometry.Pt(box.Min.X, y), names[i], render.BodySize, false)
				if i == 0 {
					document.Leader(d, box.Min.X+typeset.Width(names[i], render.BodySize, false), box.Min.X+half, y, render.BodySize)
				}
			}
			if i < len(values) {
				document.Write(d, geometry.Pt(box.Min.X+half, y), values[i], render.BodySize, true)
			}
		}
	}
	return y + typeset.Descent(render.BodySize)
}

// sheetsText returns how many sheets show templates, and how few could.
func (d *doc) sheetsText() string {
	if len(d.layout.Pages) == 0 {
		return "none: every piece is marked out"
	}
	text := fmt.Sprintf("%d; their area alone would fill %d", len(d.layout.Pages), d.layout.AtLeast)
	if d.layout.Blank > 0 {
		text += fmt.Sprintf(", and %d that would be blank left out", d.layout.Blank)
	}
	return text
}

// thick writes the thickness of a material, which is finer than any ruler.
func (d *doc) thick(l geometry.Length) string {
	return fmt.Sprintf("%.3g %v", float64(l/d.Round.Unit.Length()), d.Round.Unit)
}

// oneCharacter writes common fractions of an inch as the sizes beside them are.
var oneCharacter = strings.NewReplacer(" 1/2 in", " ½ in", " 1/4 in", " ¼ in", " 3/4 in", " ¾ in", " 1/8 in", " ⅛ in", " 3/8 in", " ⅜ in", " 5/8 in", " ⅝ in", " 7/8 in", " ⅞ in")

// lineKey shows what each line means.
func (d *doc) lineKey(box geometry.Box) geometry.Length {
	fold := "fold toward you"
	if slices.ContainsFunc(d.plan.Pieces, func(p geometry.Piece) bool { return p.Material.Crushed() }) {
		fold += "; crush " + string(geometry.Corrugated) + ", never cut it"
	}
	rule := "rule: something lies here"
	if slices.ContainsFunc(d.plan.Pieces, geometry.Piece.FoldsAway) {
		rule += ", or a fold away from you"
	}
	var samples []document.Sample
	for _, k := range []struct {
		stroke render.Stroke
		text   string
	}{
		{d.Theme[render.Cutting], "cut"},
		{d.Theme[render.Creasing], fold},
		{d.Theme[render.Positions], rule},
		{joinStroke, "join of two parts"},
		{overlapStroke, "end of the overlap"},
	} {
		samples = append(samples, document.Sample{Text: k.text, Draw: func(at geometry.Box) {
			d.Stroke(geometry.Line(at.Min, geometry.Pt(at.Max.X, at.Min.Y)), k.stroke)
		}})
	}
	return document.Key(d, box, 22, 0, samples)
}
