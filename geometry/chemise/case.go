package chemise

import (
	"forel/geometry"
	"forel/geometry/plan"
)

// PieceNames lists the names that a piece can have.
var PieceNames = []string{frontFlapName, frontWallName, frontCoverName, spineName, backCoverName, backWallName, backFlapName, coveringName, liningName}

// Named lists the keys for what its materials are called.
var Named = []plan.Named{
	{Key: "chemise.board_name", Material: geometry.ThinBoard}, {Key: "chemise.covering_name", Material: geometry.ChemiseCloth},
	{Key: "chemise.lining_name", Material: geometry.ChemiseLining},
}

// made is a chemise worked out.
type made struct {
	job    Job
	pieces []geometry.Piece
	proof  report
}

// work works the chemise out and proves it.
func (j Job) work() (made, error) {
	pieces := j.pieces()
	proof := prove(pieces, j)
	if !proof.Sound() {
		return made{}, proof.Problems()
	}
	plan.MarkMistakable(pieces)
	return made{job: j, pieces: pieces, proof: proof}, nil
}

// Plan returns all that is rendered of the chemise.
func (c made) Plan() plan.Plan {
	j := c.job
	return plan.Plan{
		Title:    j.Title,
		Kind:     "chemise",
		Content:  "book",
		Pieces:   c.pieces,
		Shows:    "the chemise round its book: cloth",
		Mistaken: plan.Mistakable(c.pieces),
		Materials: []plan.Material{
			{Of: geometry.ThinBoard, Thickness: j.Board, Fitted: true},
			{Of: geometry.ChemiseCloth, Thickness: j.Covering, Fitted: true},
			{Of: geometry.ChemiseLining, Thickness: j.Lining, Fitted: true},
		},
		Equals:    []plan.Equal{{What: "the height of the boards of the chemise", Heights: PieceNames[:len(PieceNames)-2]}},
		Remarks:   j.remarks(),
		Runs:      "width runs from left to right as the chemise lies flat, inside up, height from tail to head",
		Facts:     j.facts(),
		Tools:     tools(),
		Worksheet: j.worksheet(),
		Steps:     c.steps(),
		Finished:  j.care(),
		Proof:     c.proof.Proof,
		Chain:     j.Chain(),
		Gauges:    j.gauges(),
		Load:      j.load(),
		Warnings:  j.Suspects().Sentences(),
	}
}

// facts returns what the chemise measures.
func (j Job) facts() []plan.Fact {
	_, _, spine, fore := j.outsides()
	outside := plan.SizeFact(plan.Outside, "outside, closed", "deep", j.outside())
	if !spine.Near(fore) {
		outside.Text += " at the fore-edge, %s at the spine"
		outside.Parts = append(outside.Parts, plan.Part{Key: "thickness_at_spine", Length: spine})
	}
	return []plan.Fact{
		plan.SizeFact(plan.Contents, "book", "wide", j.Book().Size()),
		plan.SizeFact("room", "room for the book", "deep", j.room()),
		outside,
		{Key: "flat", Name: "laid flat, over boards and joints", Text: "%s wide, %s high; every joint %s",
			Parts: []plan.Part{{Key: "width", Length: j.laid().Across}, {Key: "height", Length: j.room().Height}, {Key: "joint", Length: j.joint()}}},
	}
}

// remarks returns what is to be known of the sizes.
func (j Job) remarks() []plan.Remark {
	h, w, spine, fore := j.outsides()
	out := []plan.Remark{plan.Say("all boards have one height: cut them at one setting")}
	if spine.Near(fore) {
		out = append(out, plan.Say("its slipcase or box is made for the closed chemise: %s high, %s wide, %s thick; better measured on the finished chemise with the book in it", h, w, fore))
	} else {
		out = append(out, plan.Say("hooks make it thicker at the fore-edge: its slipcase or box is made for the closed chemise: %s high, %s wide, %s thick at the spine and %s at the fore-edge; better measured on the finished chemise with the book in it", h, w, spine, fore))
	}
	out = append(out, plan.Say("a book with an elaborately tooled leather binding should have its chemise before its case")) // E. Diehl, Bookbinding: Its Background and Technique (1946), "Chemises"
	if d := j.Book().Taper(); d > 0 {
		out = append(out, plan.Say("the book is %s thinner at one edge: there it has %s of play", d, d+j.Clearance.Thickness))
	}
	return append(out, plan.Say("left and right are as the chemise lies flat, inside up, head away: the front cover is at the left of the spine"))
}
