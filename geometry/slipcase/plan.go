package slipcase

import (
	"fmt"
	"strings"

	"forel/geometry/plan"
)

// Plan gives all that is rendered of the case.
func (c Case) Plan() plan.Plan {
	j := c.Job
	p := plan.Plan{
		Title:    j.Title,
		Kind:     "slipcase",
		Content:  "book",
		Pieces:   c.Pieces,
		Faces:    c.Faces,
		Contents: c.Contents,
		Cavity:   c.Cavity,
		Outside:  c.Outside,
		Fit:      c.Fit,
		Mouth:    c.Mouth,
		Mistaken: c.Mistakable(),
	}
	if n := len(j.Books); n > 1 {
		p.Content = fmt.Sprintf("%d volumes", n)
		if j.dividers() > 0 {
			p.Content += " with dividers"
		}
	}
	for _, s := range c.Suspects {
		p.Warnings = append(p.Warnings, j.said(s)+"; "+s.Right)
	}
	if j.dividers() > 0 {
		widths := make([]Length, len(j.Books))
		names := make([]string, len(j.Books))
		for i, b := range j.Books {
			widths[i] = b.Thick() + j.Clearance.Thickness
			names[i] = escaped(j.volume(i)) + " %s"
		}
		p.Remarks = append(p.Remarks, plan.Say("from left to right there is room for "+strings.Join(names, ", ")+"; dividers stand between, on the lines ruled on the walls", widths...))
	}
	p.Materials = append(p.Materials, plan.Material{Name: "board", Thickness: j.Board.Thickness})
	if j.Lining.Thickness > 0 {
		p.Materials = append(p.Materials, plan.Material{Name: "lining", Thickness: j.Lining.Thickness})
	}
	if j.Covering == ClothAndPaper || j.Covering == AllCloth || j.dividers() > 0 {
		p.Materials = append(p.Materials, plan.Material{Name: "cloth", Thickness: j.Cloth.Thickness})
	}
	if j.Covering != AllCloth {
		p.Materials = append(p.Materials, plan.Material{Name: j.PaperName(), Thickness: j.SidePaper.Thickness})
	}
	for i, b := range j.Books {
		if d := b.Taper(); d > 0 {
			p.Remarks = append(p.Remarks, plan.Say(escaped(j.volume(i))+" is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
		}
	}
	p.Remarks = append(p.Remarks, plan.Say("the three walls have one width, sides and spine wall one height: cut each at one setting"))
	if j.Lining.Thickness > 0 && j.linedBefore() && j.Lining.Trim > 0 {
		p.Remarks = append(p.Remarks, plan.Say("linings are cut %s beyond their board all round and trimmed flush when dry", j.Lining.Trim))
	}
	p.Remarks = append(p.Remarks, plan.Say("width runs from spine to mouth, on spine pieces and on head and tail pieces of the covering from side to side"))
	p.Remarks = append(p.Remarks, plan.Say("left and right are as you look into the mouth with the head up"))
	remarks, cutting := c.ofPattern()
	p.Remarks = append(p.Remarks, remarks...)
	p.Order = j.order()
	p.Cutting = []plan.Remark{
		plan.Say("Check with the book before cutting board: laid flush with its spine, a side shows %s beyond the fore-edge; laid flush with its tail, %s beyond the head.",
			c.Fit.ForeEdge, c.Fit.HeadOrTail),
		plan.Say("Keep the grain as the arrows show."),
	}
	p.Cutting = append(p.Cutting, cutting...)
	return p
}

// said gives what is wrong in words that stand without the key: "the width of
// volume 2: greater than the height".
func (j Job) said(p Problem) string {
	for i := range j.Books {
		for _, f := range BookFields {
			if p.Key == BookKey(i, f.Key) && !strings.HasPrefix(p.Wrong, "volume ") {
				return "the " + strings.ReplaceAll(f.Key, "_", " ") + " of " + j.volume(i) + ": " + p.Wrong
			}
		}
	}
	return p.Wrong
}

// volume names the nth book: "the book" where there is one.
func (j Job) volume(n int) string {
	switch {
	case len(j.Books) == 1:
		return "the book"
	case j.Books[n].Title != "":
		return j.Books[n].Title
	}
	return fmt.Sprintf("volume %d", n+1)
}

// Whose names the nth book, from 0, in a sentence: "the book" where there is
// one, its title or its number where there are several.
func (j Job) Whose(n int) string { return j.volume(n) }

// escaped keeps what a maker wrote from being read as a place for a length.
func escaped(s string) string { return strings.ReplaceAll(s, "%", "%%") }

// HoleStrip says what is done at a thumb hole before its tabs are turned over the
// edge of the board (common practice, no source).
const HoleStrip = "paste a narrow strip of the covering round the edge of the board, which shows between the tabs"

// order gives the order of work at the bench (common practice, no source).
func (j Job) order() []string {
	var out []string
	if j.Lining.Thickness > 0 && j.linedBefore() {
		out = append(out, "Paste the linings to the boards, let them dry under a weight, trim them flush.")
	}
	out = append(out, "Glue the spine wall, then head and tail wall, upright on one side, on its ruled lines; glue the other side on top. Try the book.")
	switch j.Covering {
	case AllCloth, AllPaper:
		out = append(out,
			"Glue the wrap: spine first, then both sides. At head and tail fold the side flaps over, then the spine flap.",
			"Turn the ends of the wrap in at the mouth. Glue the head and tail panels over the flaps and turn them in.")
	case SidesOnly:
	default:
		out = append(out,
			"Spine cloth: glue the spine, then the margins on the sides. At head and tail fold the side flaps over, then the spine flap.",
			"Head and tail cloth: glue the wall, then the margins. At the mouth turn the side tabs in, then the middle tab over them.")
	}
	if j.Covering == ClothAndPaper || j.Covering == SidesOnly {
		out = append(out, "Side papers: glue them on, inset all round, and turn them in at the mouth.")
	}
	if j.hasHole() {
		out = append(out, "At the thumb hole "+HoleStrip+"; then turn the tabs over it.")
	}
	if j.Lining.Thickness > 0 && !j.linedBefore() {
		out = append(out, "Paste the linings in: sides, spine, head and tail.")
	}
	if j.dividers() > 0 {
		out = append(out, "Line the dividers, wrap their mouth edges with the strips, glue them in last, on the ruled lines.")
	}
	return out
}
