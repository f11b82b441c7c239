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
		Contents: c.Contents,
		Cavity:   c.Cavity,
		Outside:  c.Outside,
		Fit:      c.Fit,
		Mouth:    c.Mouth,
		Mistaken: c.Mistakable(),
	}
	if n := len(j.Books); n > 1 {
		p.Content = fmt.Sprintf("%d volumes together", n)
	}
	p.Materials = append(p.Materials, plan.Material{Name: "board", Thickness: j.Board.Thickness})
	if j.Lining.Thickness > 0 {
		p.Materials = append(p.Materials, plan.Material{Name: "lining", Thickness: j.Lining.Thickness})
	}
	if j.Covering == ClothAndPaper || j.Covering == AllCloth || j.dividers() > 0 {
		p.Materials = append(p.Materials, plan.Material{Name: "cloth", Thickness: j.Cloth.Thickness})
	}
	if j.Covering != AllCloth {
		p.Materials = append(p.Materials, plan.Material{Name: "side paper", Thickness: j.SidePaper.Thickness})
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
	p.Cutting = []plan.Remark{
		plan.Say("Check with the book before cutting board: laid flush with its spine, a side shows %s beyond the fore-edge; laid flush with its tail, %s beyond the head.",
			c.Fit.ForeEdge, c.Fit.HeadOrTail),
		plan.Say("Keep the grain as the arrows show."),
	}
	return p
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

// escaped keeps what a maker wrote from being read as a place for a length.
func escaped(s string) string { return strings.ReplaceAll(s, "%", "%%") }
