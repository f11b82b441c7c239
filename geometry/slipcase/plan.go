package slipcase

import (
	"fmt"
	"strings"

	"forel/geometry"
	"forel/geometry/plan"
)

// Plan returns all that is rendered of the case.
func (c Case) Plan() plan.Plan {
	j := c.Job
	p := plan.Plan{
		Title:     j.Title,
		Kind:      "slipcase",
		Content:   "book",
		Pieces:    c.Pieces,
		Faces:     c.Faces,
		Mistaken:  plan.Mistakable(c.Pieces),
		Materials: j.materials(),
		Proof:     c.Proof.Proof,
		Chain:     j.Chain(),
		Gauges:    j.gauges(),
		Load:      j.load(),
		Warnings:  j.suspects().Sentences(),
	}
	if j.Wears != "" {
		p.Content += " in its " + j.Wears
	}
	if n := len(j.Books); n > 1 {
		p.Content = fmt.Sprintf("%d volumes", n)
		if j.Dividers() > 0 {
			p.Content += " with dividers"
		}
	}
	if j.Dividers() > 0 {
		widths := make([]Length, len(j.Books))
		names := make([]string, len(j.Books))
		for i, b := range j.Books {
			widths[i] = b.Thick() + j.Clearance.Thickness
			names[i] = escaped(j.Whose(i)) + " %s"
		}
		p.Remarks = append(p.Remarks, plan.Say("from left to right there is room for "+strings.Join(names, ", ")+"; dividers stand between, on the lines ruled on the walls", widths...))
	}
	for i, b := range j.Books {
		if d := b.Taper(); d > 0 {
			p.Remarks = append(p.Remarks, plan.Say(escaped(j.Whose(i))+" is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
		}
	}
	p.Remarks = append(p.Remarks, plan.Say("the three walls have one width, sides and spine wall one height: cut each at one setting"))
	if j.Lining.Thickness > 0 && j.linedBefore() && j.Lining.Trim > 0 {
		p.Remarks = append(p.Remarks, plan.Say("linings are cut %s beyond their board all round and trimmed flush when dry", j.Lining.Trim))
	}
	p.Remarks = append(p.Remarks, plan.Say("left and right are as you look into the mouth with the head up"))
	if j.hasHole() && j.Wears == "" { // M. T. Roberts and D. Etherington, Bookbinding and the Conservation of Books (1982), "slipcase"
		p.Remarks = append(p.Remarks, plan.Say("many binders leave the thumb hole out of a simple case: a slipcase without an inner box or chemise should not be notched (Roberts and Etherington 1982, \"slipcase\")"))
	}
	p.Remarks = append(p.Remarks, c.ofPattern()...)
	p.Runs = "width runs from spine to mouth; on spine pieces, and on head and tail pieces of the covering, from side to side"
	p.Equals = []plan.Equal{
		{What: "the width of the three walls", Widths: []string{"spine wall"}, Heights: []string{"head wall", "tail wall"}, Strip: true},
		{What: "the height of sides and spine wall", Heights: []string{"side", "spine wall"}},
	}
	built, mouth, fit := "", c.Stands.Mouth(), j.Fit()
	if j.AsBuilt.Measured() {
		built = " as built"
	}
	p.Facts = []plan.Fact{
		plan.SizeFact(plan.Contents, p.Content, "wide", j.Contents()),
		plan.SizeFact("cavity", "room inside"+built, "deep", c.Stands.Cavity()),
		plan.SizeFact(plan.Outside, "outside"+built+", without covering", "deep", c.Stands.Outside()),
		{
			Key: "mouth_clearance", Name: "left at the mouth, the tightest place", Text: "height %s, thickness %s",
			Parts: []plan.Part{{Key: "height", Length: mouth.Height}, {Key: "thickness", Length: mouth.Thickness}},
		},
		{
			Key: "fit_check", Name: "fit check, a side beyond " + j.inCase(), Text: "%s past the fore-edge, %s past the tail",
			Parts: []plan.Part{{Key: "fore_edge", Length: fit.ForeEdge}, {Key: "head_or_tail", Length: fit.HeadOrTail}},
		},
	}
	p.Shows = j.shows()
	p.Tools = c.tools()
	p.Worksheet = j.worksheet(c.Stands)
	p.Steps = c.steps()
	p.Finished = c.care()
	return p
}

// materials lists what a case is cut from.
func (j Job) materials() []plan.Material {
	out := []plan.Material{{Of: geometry.Board, Thickness: j.Board.Thickness, Fitted: true}}
	if j.Lining.Thickness > 0 {
		out = append(out, plan.Material{Of: geometry.Lining, Thickness: j.Lining.Thickness})
	}
	if j.Covering == ClothAndPaper || j.Covering == AllCloth || j.Dividers() > 0 {
		out = append(out, plan.Material{Of: geometry.Cloth, Thickness: j.Cloth.Thickness})
	}
	if j.Covering != AllCloth {
		out = append(out, plan.Material{Of: geometry.Paper, Thickness: j.SidePaper.Thickness})
	}
	return out
}

// escaped keeps what a maker wrote from being read as a place for a length.
func escaped(s string) string { return strings.ReplaceAll(s, "%", "%%") }

// shows says what is seen of the finished case.
func (j Job) shows() string {
	covering := map[string]string{
		ClothAndPaper: "cloth, paper on the sides", AllCloth: "cloth", AllPaper: "paper", SidesOnly: "bare board, paper on the sides",
	}[j.Covering]
	if j.hasHole() {
		covering += ", a thumb hole"
	}
	return "the case seen from its mouth: " + covering
}
